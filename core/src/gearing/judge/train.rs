//! A pair of sprockets with everything that follows in each gear.

use layshaft_wire::wire;

use super::fit::teeth;
use crate::bounds;
use crate::error::Refused;
use crate::gearing::formulas::{engine_speed, final_ratio, overall_ratio, road_speed};
use crate::gearing::message::GearingRefused;
use crate::record::Drive;
use crate::tyres::Rolling;

/// One gear.
#[wire]
pub struct GearLine {
    /// Gear, first is 1.
    pub gear: u32,
    /// Crankshaft turns for one turn of the wheel.
    pub overall_ratio: f64,
    /// Road speed at 1,000 rpm, km/h.
    pub kmh_per_1000_rpm: f64,
    /// Road speed at the engine speed limit, km/h.
    pub kmh_at_limit: Option<f64>,
    /// Engine speed at the comparison speed, revolutions a minute.
    pub rpm_at_road_speed: f64,
}

/// A pair of sprockets with everything that follows in each gear.
#[wire]
pub struct GearTrain {
    /// Teeth of the gearbox sprocket.
    pub front_teeth: u32,
    /// Teeth of the wheel sprocket.
    pub rear_teeth: u32,
    /// Final drive ratio, rear over front.
    pub final_ratio: f64,
    /// The gears.
    pub gears: Vec<GearLine>,
    /// Rolling circumference of the rear wheel, millimetres.
    pub circumference_mm: f64,
    /// Whether the circumference was measured by roll-out (else from the size code).
    pub circumference_measured: bool,
}

/// Works out every gear of a drive on a rear wheel, or refuses with the value that is missing.
pub(crate) fn gear_train(drive: &Drive, rear: Rolling, road_speed_kmh: f64) -> Result<GearTrain, Refused> {
    let (front_teeth, rear_teeth) = teeth(drive)?;
    let primary = bounds::PRIMARY_RATIO.need(drive.primary_ratio)?;
    let limit = bounds::REV_LIMIT.check_known(drive.rev_limit_rpm)?;
    if drive.gear_ratios.is_empty() {
        return Err(Refused::Missing {
            field: bounds::GEAR_RATIO.field.to_owned(),
            label: GearingRefused::LabelGearRatios.into(),
            help: GearingRefused::EnterGearRatios.into(),
        });
    }
    let mut gears = Vec::with_capacity(drive.gear_ratios.len());
    for (gear, ratio) in (1..).zip(&drive.gear_ratios) {
        let overall = overall_ratio(primary, bounds::GEAR_RATIO.check(*ratio)?, front_teeth, rear_teeth);
        gears.push(GearLine {
            gear,
            overall_ratio: overall,
            kmh_per_1000_rpm: road_speed(1000.0, overall, rear.circumference_mm),
            kmh_at_limit: limit.map(|rpm| road_speed(rpm, overall, rear.circumference_mm)),
            rpm_at_road_speed: engine_speed(road_speed_kmh, overall, rear.circumference_mm),
        });
    }
    Ok(GearTrain {
        front_teeth,
        rear_teeth,
        final_ratio: final_ratio(front_teeth, rear_teeth),
        gears,
        circumference_mm: rear.circumference_mm,
        circumference_measured: rear.measured,
    })
}

impl GearTrain {
    /// The highest gear.
    pub fn top(&self) -> Option<&GearLine> {
        self.gears.last()
    }
}
