//! The working of the gearing page: every equation with the numbers of this bike in it, and where it comes from.

use crate::gearing::formulas::{
    AdjusterUsed, CentreDistance, ChainLength, EngineSpeed, EngineSpeedChange, FinalRatio, FreeChain, OverallRatio,
    RoadSpeed, ShownSpeed, WornCentreDistance, chain_length, chain_size_source, geometry, kinematics, pitch,
};
use crate::gearing::judge::{
    AllowedReading, Axle, ChainFit, Corrector, CorrectorRatio, GearTrain, Sender, SpeedometerFactor, SpeedometerShift,
    production_source, speedometer_source,
};
use crate::gearing::message::{GearingMessage, GearingSource, GearingWorking};
use crate::message::{ListStyle, Message};
use crate::quantity::{Difference, Line, PercentChange, Source, Standing, WorkLine, Working};
use crate::record::{ChainSize, Drive, Wheel};
use crate::tyres::{rolling_line, tyre_source};
use crate::units::Unit;

/// Engine speed at which the speed of a gear is usually given, rpm.
const COMMON_RPM: f64 = 1000.0;

/// True speed of the comparison of speedometers, km/h.
const TRUE_KMH: f64 = 80.0;

/// The lines on gears and speeds; `wheel` is the rear one that is fitted, `standard` the one as made.
pub(crate) fn on_gears(
    drive: &Drive,
    (standard, wheel): (&Wheel, &Wheel),
    train: &GearTrain,
    road_speed_kmh: f64,
) -> Vec<WorkLine> {
    let (front_teeth, rear_teeth, mm) = (train.front_teeth, train.rear_teeth, train.circumference_mm);
    let mut lines = Vec::from_iter(FinalRatio { front_teeth, rear_teeth }.line(GearingWorking::FinalRatio));
    lines.extend(rolling_line(true, standard, wheel, (mm, train.circumference_measured)));
    let (Some(top), Some(primary_ratio), Some(gear)) = (train.top(), drive.primary_ratio, drive.gear_ratios.last())
    else {
        return lines;
    };
    let overall_ratio = top.overall_ratio;
    let overall = OverallRatio { primary_ratio, gear_ratio: *gear, front_teeth, rear_teeth };
    let speed = |engine_rpm| RoadSpeed { engine_rpm, overall_ratio, circumference_mm: mm };
    lines.extend(overall.line(GearingWorking::OverallRatio));
    let rpm = Unit::Rpm.of(COMMON_RPM);
    lines.extend(speed(COMMON_RPM).line(GearingWorking::SpeedInTop { rpm }));
    lines.extend(drive.rev_limit_rpm.and_then(|limit| speed(limit).line(GearingWorking::SpeedAtLimit)));
    let engine = EngineSpeed { road_speed_kmh, overall_ratio, circumference_mm: mm };
    lines.extend(engine.line(GearingWorking::EngineSpeed));
    lines
}

/// The line on engine speed against standard.
pub(crate) fn on_change(standard: &GearTrain, proposed: &GearTrain) -> Option<WorkLine> {
    let change = EngineSpeedChange {
        overall_ratio: standard.top()?.overall_ratio,
        new_overall_ratio: proposed.top()?.overall_ratio,
        circumference_mm: standard.circumference_mm,
        new_circumference_mm: proposed.circumference_mm,
    };
    change.line(GearingWorking::EngineSpeedChange)
}

/// The lines on the chain.
pub(crate) fn on_chain(
    size: ChainSize,
    (front_teeth, rear_teeth): (u32, u32),
    axle: &Axle,
    fit: &ChainFit,
) -> Vec<WorkLine> {
    let (pitch_mm, chain_links, centre_distance_mm) = (pitch(size), fit.links, fit.centre_distance_mm);
    let present = ChainLength { front_teeth, rear_teeth, centre_distance_mm: axle.present_mm, pitch_mm };
    let needed = |mm| chain_length(front_teeth, rear_teeth, mm, pitch_mm).ok();
    let mut lines = Vec::from_iter(present.line(GearingWorking::Links { measured: axle.measured }));
    let fitted = CentreDistance { front_teeth, rear_teeth, chain_links, pitch_mm };
    lines.extend(fitted.line(GearingWorking::CentreDistance));
    let moves = Difference { start: axle.present_mm, end: centre_distance_mm };
    lines.extend(moves.line(GearingWorking::AxleMoves).map(|line| line.measured_in(Unit::Millimetre)));
    if let (Some(adjuster_from_mm), Some(adjuster_to_mm)) = (axle.from_mm, axle.to_mm) {
        let used = AdjusterUsed { centre_distance_mm, adjuster_from_mm, adjuster_to_mm };
        lines.extend(used.line(GearingWorking::AdjusterUsed));
    }
    lines.extend(axle.to_mm.and_then(needed).and_then(|after| {
        let room = PercentChange { before: f64::from(chain_links), after };
        room.line(GearingWorking::WearRoom)
    }));
    lines.extend(
        axle.from_mm
            .and_then(needed)
            .and_then(|links_exact| FreeChain { chain_links, links_exact, pitch_mm }.line(GearingWorking::FreeChain)),
    );
    lines.extend(fit.worn.iter().filter_map(|worn| {
        let elongation_percent = worn.wear_percent;
        let worn = WornCentreDistance { front_teeth, rear_teeth, chain_links, pitch_mm, elongation_percent };
        worn.line(GearingWorking::WornCentreDistance { wear: Unit::Percent.of(elongation_percent) })
    }));
    lines
}

/// The line on what a corrector must do.
pub(crate) fn on_corrector(corrector: &Corrector) -> Option<WorkLine> {
    let ratio = CorrectorRatio { reading_factor: corrector.reading_factor };
    ratio.line(GearingWorking::CorrectorRatio)
}

/// The lines on the speedometer.
pub(crate) fn on_speedometer(drive: &Drive, sender: &Sender, shift: &SpeedometerShift) -> Vec<WorkLine> {
    let (circumference_mm, new_circumference_mm) = sender.circumferences_mm;
    let (final_ratio, new_final_ratio) = sender.ratios.unwrap_or((1.0, 1.0));
    let (speedometer_corrector, new_speedometer_corrector) = sender.correctors;
    let factor = SpeedometerFactor {
        circumference_mm,
        new_circumference_mm,
        final_ratio,
        new_final_ratio,
        speedometer_corrector,
        new_speedometer_corrector,
    };
    let shown = ShownSpeed {
        road_speed_kmh: TRUE_KMH,
        speedometer_over_percent: drive.speedometer_over_percent.unwrap_or(0.0),
        reading_factor: shift.factor,
    };
    let speed = Unit::KilometreHour.of(TRUE_KMH);
    let reading = match drive.speedometer_over_percent {
        Some(_) => GearingWorking::Reading { speed },
        None => GearingWorking::ReadingIfExact { speed },
    };
    let lines = [
        factor.line(GearingWorking::ReadingFactor),
        shown.line(reading),
        AllowedReading { road_speed_kmh: TRUE_KMH }.line(GearingWorking::AllowedReading),
    ];
    lines.into_iter().flatten().collect()
}

/// Source of the rule that a count of links is even, and of the wear limits.
fn chain_practice() -> Source {
    Source::new(GearingSource::EvenCounts, Standing::SecondHand)
}

/// The whole working.
pub(crate) fn working(lines: Vec<WorkLine>, measured: bool, chain: bool, speedometer: bool) -> Working {
    let mut sources = vec![kinematics(), tyre_source(measured)];
    if chain {
        sources.extend([geometry(), chain_practice(), chain_size_source()]);
    }
    if speedometer {
        sources.extend([speedometer_source(), production_source()]);
    }
    let tyre = if measured { GearingMessage::RangeMeasured } else { GearingMessage::RangeBySize };
    let range = [GearingMessage::Range, tyre, GearingMessage::RangeTaut].map(Message::from).to_vec();
    Working { lines, sources, range: Message::joined(ListStyle::Sentences, range) }
}
