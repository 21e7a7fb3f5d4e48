//! The working of the gearing page: every equation with the numbers of this bike in it, and where it comes from.

use crate::gearing::formulas::{
    EngineSpeed, OverallRatio, RoadSpeed, chain_dimensions, chain_size_source, geometry, kinematics,
};
use crate::gearing::judge::{
    Axle, ChainFit, Corrector, GearTrain, Sender, SpeedometerShift, production_source, speedometer_source,
};
use crate::gearing::message::{GearingMessage, GearingSource};
use crate::message::{Joint, Message};
use crate::quantity::{Evaluate, Source, Standing, WorkLine, Working};
use crate::record::{ChainSize, Drive, TyreSize, Wheel};
use crate::tyres::tyre_source;
use crate::units::Unit;

/// The lines on gears and speeds; `wheel` is the rear one that is fitted.
pub(crate) fn on_gears(drive: &Drive, wheel: &Wheel, train: &GearTrain, road_speed_kmh: f64) -> Vec<WorkLine> {
    let (front, rear, mm) = (train.front_teeth, train.rear_teeth, train.circumference_mm);
    let mut lines = vec![
        WorkLine::new("Final drive ratio", format!("{rear} / {front}"), train.final_ratio, Unit::None),
        WorkLine::new(
            "Rolling circumference, rear",
            circumference_equation(wheel, mm, train.circumference_measured),
            mm,
            Unit::Millimetre,
        ),
    ];
    let (Some(top), Some(primary), Some(gear)) = (train.top(), drive.primary_ratio, drive.gear_ratios.last()) else {
        return lines;
    };
    let overall_ratio = top.overall_ratio;
    let overall = OverallRatio { primary_ratio: primary, gear_ratio: *gear, front_teeth: front, rear_teeth: rear };
    let speed = |engine_rpm| RoadSpeed { engine_rpm, overall_ratio, circumference_mm: mm };
    lines.extend(overall.line("Overall ratio in top"));
    lines.extend(speed(1000.0).line("Speed in top at 1,000 rpm"));
    lines.extend(drive.rev_limit_rpm.and_then(|limit| speed(limit).line("Speed in top at the engine speed limit")));
    let engine = EngineSpeed { road_speed_kmh, overall_ratio, circumference_mm: mm };
    lines.extend(engine.line("Engine speed in top at the comparison speed"));
    lines
}

fn circumference_equation(wheel: &Wheel, mm: f64, measured: bool) -> String {
    let size = wheel.tyre.as_deref().and_then(|code| TyreSize::read(code).ok());
    match size {
        Some(size) if !measured && (size.circumference_mm() - mm).abs() < 1e-6 => {
            format!("π × {:.1} ({size})", size.outer_diameter_mm())
        }
        // The other tyre was rolled out; see how two wheels are compared.
        Some(size) if !measured => format!("roll-out of the standard tyre, scaled by the sizes to {size}"),
        _ => format!("roll-out: {mm} mm"),
    }
}

/// The line on engine speed against standard.
pub(crate) fn on_change(standard: &GearTrain, proposed: &GearTrain, percent: f64) -> Option<WorkLine> {
    let (before, after) = (standard.top()?.overall_ratio, proposed.top()?.overall_ratio);
    let equation = format!(
        "(({after:.4} / {:.1}) / ({before:.4} / {:.1}) − 1) × 100",
        proposed.circumference_mm, standard.circumference_mm
    );
    Some(WorkLine::new("Engine speed against standard, same road speed", equation, percent, Unit::Percent))
}

/// The lines on the chain.
pub(crate) fn on_chain(size: ChainSize, (front, rear): (u32, u32), axle: &Axle, fit: &ChainFit) -> Vec<WorkLine> {
    let pitch = chain_dimensions(size).pitch_mm;
    let distance = fit.centre_distance_mm;
    let present = if axle.measured { "measured" } else { "from the chain that is fitted" };
    let mut lines = vec![
        WorkLine::new(
            "Links at the present centre distance",
            format!(
                "sin α = {} / (2π × C), 2 × C × cos α + ({front} + {rear}) / 2 + {} × α / π with C = {:.1} mm ({present}) / {pitch} mm",
                rear.abs_diff(front),
                rear.abs_diff(front),
                axle.present_mm
            ),
            fit.links_exact,
            Unit::Links,
        ),
        WorkLine::new(
            "Centre distance with that chain",
            format!("the same equation solved for C at {} links, × {pitch} mm", fit.links),
            distance,
            Unit::Millimetre,
        ),
        WorkLine::new(
            "Axle moves (back is positive)",
            format!("{distance:.1} − {:.1}", axle.present_mm),
            fit.axle_shift_mm,
            Unit::Millimetre,
        ),
    ];
    if let (Some(from), Some(to), Some(used)) = (axle.from_mm, axle.to_mm, fit.travel_used_percent) {
        let equation = format!("({distance:.1} − {from}) / ({to} − {from}) × 100");
        lines.push(WorkLine::new("Adjuster travel used", equation, used, Unit::Percent));
    }
    if let (Some(to), Some(room)) = (axle.to_mm, fit.wear_room_percent) {
        let equation = format!("(links at {to} mm / {} − 1) × 100", fit.links);
        lines.push(WorkLine::new("Wear that the adjuster takes up", equation, room, Unit::Percent));
    }
    if let (Some(from), Some(free)) = (axle.from_mm, fit.free_forward_mm) {
        let equation = format!("({} − links at {from} mm) × {pitch} mm", fit.links);
        lines.push(WorkLine::new("Free chain with the wheel forward", equation, free, Unit::Millimetre));
    }
    lines.extend(fit.worn.iter().map(|worn| {
        let equation =
            format!("the same equation solved for C at {} × (1 + {} / 100) links", fit.links, worn.wear_percent);
        let label = format!("Centre distance at {} % wear", worn.wear_percent);
        WorkLine::new(&label, equation, worn.centre_distance_mm, Unit::Millimetre)
    }));
    lines
}

/// The line on what a corrector must do.
pub(crate) fn on_corrector(corrector: &Corrector) -> WorkLine {
    let equation = format!(
        "1 / {:.4}; inside the band from {:.4} to {:.4}, so {} : {}",
        corrector.reading_factor,
        corrector.band_from,
        corrector.band_to,
        corrector.driving_teeth,
        corrector.driven_teeth
    );
    WorkLine::new("Ratio of a corrector for a true reading", equation, corrector.to_true, Unit::None)
}

/// The lines on the speedometer.
pub(crate) fn on_speedometer(drive: &Drive, sender: &Sender, shift: &SpeedometerShift) -> Vec<WorkLine> {
    let (before, after) = sender.circumferences_mm;
    let wheel = format!("{before:.1} / {after:.1}");
    let mut factor = match sender.ratios {
        Some((before, after)) => format!("({wheel}) × ({after:.4} / {before:.4})"),
        None => wheel,
    };
    if sender.correctors != (1.0, 1.0) {
        let (before, after) = sender.correctors;
        factor = format!("{factor} × (corrector {after:.4} / {before:.4})");
    }
    let over = drive.speedometer_over_percent;
    let as_made = over.map_or("exact as made, not measured".to_owned(), |over| format!("{over} % high as made"));
    vec![
        WorkLine::new("New reading over the reading as made", factor, shift.factor, Unit::None),
        WorkLine::new(
            "Reading at a true 80 km/h",
            format!("80 × (1 + {} / 100) × {:.4} ({as_made})", over.unwrap_or(0.0), shift.factor),
            shift.shown_at_80_kmh,
            Unit::KilometreHour,
        ),
        WorkLine::new(
            "Most that type approval allows there",
            "80 + 0.1 × 80 + 4",
            shift.allowed_to_at_80_kmh,
            Unit::KilometreHour,
        ),
    ]
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
    Working { lines, sources, range: Message::joined(Joint::Sentences, range) }
}
