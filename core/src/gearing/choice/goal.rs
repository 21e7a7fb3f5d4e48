//! What is wanted of other sprockets, as the final drive ratio that would give it exactly.

use layshaft_wire::wire;

use crate::bounds;
use crate::error::Refused;
use crate::gearing::formulas::{TallerRatio, WantedRatio, taller_ratio, wanted_ratio};
use crate::gearing::message::{GearingRefused, SprocketChoiceWorking};
use crate::quantity::{Line, WorkLine};
use crate::record::Drive;

/// What is wanted.
#[wire]
pub enum SprocketGoal {
    /// A road speed at an engine speed in a gear.
    SpeedAtRpm {
        /// Road speed, km/h.
        road_speed_kmh: f64,
        /// Engine speed, revolutions a minute.
        engine_rpm: f64,
        /// Gear, first is 1; left out: top.
        gear: Option<u32>,
    },
    /// Taller than what is fitted (more speed at the same engine speed), or shorter below zero.
    Taller {
        /// By so many per cent.
        taller_percent: f64,
    },
    /// The speedometer inside what type approval allows.
    Speedometer,
}

/// The final drive ratio that meets a goal exactly; none for the speedometer, which has a band.
pub(super) fn ratio_for(
    goal: &SprocketGoal,
    drive: &Drive,
    fitted_ratio: f64,
    circumference_mm: Result<f64, Refused>,
) -> Result<Option<f64>, Refused> {
    match goal {
        SprocketGoal::Speedometer => Ok(None),
        SprocketGoal::Taller { taller_percent } => {
            let taller = bounds::TALLER.check(*taller_percent)?;
            Ok(Some(taller_ratio(fitted_ratio, taller)))
        }
        SprocketGoal::SpeedAtRpm { road_speed_kmh, engine_rpm, gear } => {
            let kmh = bounds::MOVING_SPEED.check(*road_speed_kmh)?;
            let rpm = bounds::TURNING_SPEED.check(*engine_rpm)?;
            let primary = bounds::PRIMARY_RATIO.need(drive.primary_ratio)?;
            let ratio = gear_ratio(drive, *gear)?;
            Ok(Some(wanted_ratio(rpm, kmh, primary, ratio, circumference_mm?)))
        }
    }
}

/// The line on the ratio that is wanted; none for the speedometer.
pub(super) fn ratio_line(
    goal: &SprocketGoal,
    drive: &Drive,
    final_ratio: f64,
    circumference_mm: Option<f64>,
) -> Option<WorkLine> {
    let label = SprocketChoiceWorking::WantedRatio;
    match *goal {
        SprocketGoal::Speedometer => None,
        SprocketGoal::Taller { taller_percent } => TallerRatio { final_ratio, taller_percent }.line(label),
        SprocketGoal::SpeedAtRpm { road_speed_kmh, engine_rpm, gear } => {
            let gear_ratio = gear_ratio(drive, gear).ok()?;
            let (primary_ratio, circumference_mm) = (drive.primary_ratio?, circumference_mm?);
            WantedRatio { engine_rpm, road_speed_kmh, primary_ratio, gear_ratio, circumference_mm }.line(label)
        }
    }
}

/// The ratio of a gear; of the top one where none is said.
pub(super) fn gear_ratio(drive: &Drive, gear: Option<u32>) -> Result<f64, Refused> {
    let gears = drive.gear_ratios.len();
    let Some(top) = drive.gear_ratios.last() else {
        return Err(Refused::Missing {
            field: bounds::GEAR_RATIO.field.to_owned(),
            label: GearingRefused::LabelGearRatios.into(),
            help: GearingRefused::EnterGearRatios.into(),
        });
    };
    let Some(gear) = gear else { return bounds::GEAR_RATIO.check(*top) };
    bounds::GEAR.narrowed(bounds::GEAR.min, gears as f64).check(f64::from(gear))?;
    let at = usize::try_from(gear).unwrap_or(0).wrapping_sub(1);
    bounds::GEAR_RATIO.check(drive.gear_ratios.get(at).copied().unwrap_or(*top))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gearing::sample::demo_drive;

    #[test]
    fn a_goal_becomes_the_ratio_that_meets_it() {
        let drive = demo_drive();
        let ratio = |goal| ratio_for(&goal, &drive, 3.0, Ok(2000.0));
        assert_eq!(ratio(SprocketGoal::Taller { taller_percent: 50.0 }), Ok(Some(2.0)));
        assert_eq!(ratio(SprocketGoal::Speedometer), Ok(None));
        let goal = SprocketGoal::SpeedAtRpm { road_speed_kmh: 60.0, engine_rpm: 6000.0, gear: Some(4) };
        assert!((ratio(goal).unwrap().unwrap() - 6000.0 * 0.12 / 60.0 / 3.333).abs() < 1e-12);
    }

    #[test]
    fn a_gear_that_is_not_there_and_a_goal_out_of_range_are_refused_by_field() {
        let drive = demo_drive();
        let field = |goal| match ratio_for(&goal, &drive, 3.0, Ok(2000.0)) {
            Err(Refused::OutOfRange { field, .. } | Refused::Missing { field, .. }) => field,
            other => panic!("{other:?}"),
        };
        let at = |kmh, rpm, gear| SprocketGoal::SpeedAtRpm { road_speed_kmh: kmh, engine_rpm: rpm, gear };
        assert_eq!(field(at(60.0, 6000.0, Some(6))), "gear");
        assert_eq!(field(at(60.0, 6000.0, Some(0))), "gear");
        assert_eq!(field(at(0.0, 6000.0, None)), "roadSpeedKmh");
        assert_eq!(field(at(60.0, 0.0, None)), "engineRpm");
        assert_eq!(field(SprocketGoal::Taller { taller_percent: -80.0 }), "tallerPercent");
    }
}
