//! The answer of the page on thrust and top speed.

use layshaft_wire::wire;

use super::curves::{GearCurve, gear_curves, resistance_curve};
use super::findings;
use super::gears::{Cruise, GearDrop, GearingMatch, cruise, drops, gearing_match};
use super::machine::{LOWEST_SHARE, Machine, ThrustAsk};
use super::power::Shape;
use super::road_load::{Resistance, RollingLaw};
use super::top_speed::TopSpeed;
use super::working::working;
use crate::bounds;
use crate::error::Refused;
use crate::gearing::message::{GearingRefused, ThrustMessage};
use crate::message::{FieldMessage, Message};
use crate::quantity::{Finding, Working};
use crate::record::{Bike, PowerPoint};

/// Where the engine's power comes from.
#[wire]
pub enum PowerSource {
    /// Points of a curve.
    Points,
    /// Peak power and peak torque, with an assumed shape.
    Peaks,
    /// Peak power alone, with an assumed shape.
    PeakPower,
}

/// The page on thrust and top speed.
#[wire]
pub struct ThrustAnswer {
    /// Teeth of the gearbox sprocket.
    pub front_teeth: u32,
    /// Teeth of the wheel sprocket.
    pub rear_teeth: u32,
    /// Where the power comes from.
    pub power_source: PowerSource,
    /// Peak power, kW.
    pub peak_kw: f64,
    /// Engine speed of peak power, revolutions a minute.
    pub peak_rpm: f64,
    /// Engine speed limit, revolutions a minute.
    pub limit_rpm: f64,
    /// The power curve that was used, for the picture.
    pub power_curve: Vec<PowerPoint>,
    /// Machine, rider, luggage and fluids, kg.
    pub mass_kg: f64,
    /// Rolling.
    pub rolling: RollingLaw,
    /// Drag area, m².
    pub drag_area_m2: f64,
    /// Share of the power that reaches the wheel.
    pub drive_efficiency: f64,
    /// Density of the air, kg/m³.
    pub air_density: f64,
    /// Grade, per cent.
    pub grade_percent: f64,
    /// Head wind, km/h.
    pub head_wind_kmh: f64,
    /// Thrust in each gear.
    pub gears: Vec<GearCurve>,
    /// Resistance against speed.
    pub resistance: Vec<Resistance>,
    /// Highest speed in any gear.
    pub top: Option<TopSpeed>,
    /// The same with the sprockets that are fitted, on the same road.
    pub fitted_top: Option<TopSpeed>,
    /// Top gear against peak power.
    pub gearing: Option<GearingMatch>,
    /// Drops from gear to gear.
    pub drops: Vec<GearDrop>,
    /// Cruising.
    pub cruises: Vec<Cruise>,
    /// What was taken without being entered.
    pub assumptions: Vec<Message>,
    /// What to mind.
    pub cautions: Vec<Message>,
    /// What is worth saying.
    pub findings: Vec<Finding>,
    /// How it was worked out.
    pub working: Working,
}

const USUAL_CRUISE_KMH: [f64; 4] = [50.0, 70.0, 90.0, 110.0];
/// Speeds to cruise at are no more than these.
const MOST_CRUISES: usize = 12;
/// Points of the power curve in the picture.
const POWER_POINTS: u32 = 32;

/// Works thrust, resistance and top speed out.
///
/// Refused: unknown gears, sprockets, tyre, dry mass or power; peaks that no engine has together; a number outside its range.
pub fn thrust_answer(bike: &Bike, ask: &ThrustAsk) -> Result<ThrustAnswer, Refused> {
    let speeds = cruise_speeds(&ask.cruise_kmh)?;
    let spec = &bike.fitted;
    let machine = Machine::of(bike, spec, ask)?;
    let fitted = Machine::of(bike, spec, &ThrustAsk { front_teeth: None, rear_teeth: None, ..ask.clone() });
    let fitted_top = fitted.ok().and_then(|machine| machine.top());
    let top = machine.top();
    let gearing = gearing_match(&machine, &spec.drive);
    let mut found = findings::on_top(top.as_ref(), fitted_top.as_ref(), gearing.as_ref(), machine.train.gears.len());
    found.extend(findings::on_tyre(&spec.rear_wheel, top.as_ref()));
    found.extend(findings::on_rolling(&machine.load.rolling, top.as_ref()));
    Ok(ThrustAnswer {
        front_teeth: machine.train.front_teeth,
        rear_teeth: machine.train.rear_teeth,
        power_source: match machine.engine.shape {
            Shape::Points(_) => PowerSource::Points,
            Shape::Peaks { .. } => PowerSource::Peaks,
            Shape::PeakOnly => PowerSource::PeakPower,
        },
        peak_kw: machine.engine.peak.0,
        peak_rpm: machine.engine.peak.1,
        limit_rpm: machine.engine.limit_rpm,
        power_curve: power_curve(&machine),
        mass_kg: machine.load.mass_kg,
        rolling: machine.load.rolling.clone(),
        drag_area_m2: machine.load.drag_area_m2,
        drive_efficiency: machine.efficiency,
        air_density: machine.load.air_density,
        grade_percent: machine.load.grade_percent,
        head_wind_kmh: machine.load.head_wind_kmh,
        gears: gear_curves(&machine),
        resistance: resistance_curve(&machine),
        working: working(&machine, &spec.drive, top.as_ref(), gearing.as_ref()),
        top,
        fitted_top,
        gearing,
        drops: drops(&machine),
        cruises: speeds.into_iter().filter_map(|kmh| cruise(&machine, kmh)).collect(),
        assumptions: machine.assumptions.clone(),
        cautions: [ThrustMessage::CautionRoad, ThrustMessage::CautionTyres].map(Into::into).to_vec(),
        findings: found,
    })
}

fn cruise_speeds(asked: &[f64]) -> Result<Vec<f64>, Refused> {
    if asked.is_empty() {
        return Ok(USUAL_CRUISE_KMH.to_vec());
    }
    if asked.len() > MOST_CRUISES {
        return Err(Refused::Conflict {
            field: "cruiseKmh".to_owned(),
            reason: GearingRefused::Cruises { speeds: asked.len(), most: MOST_CRUISES }.into(),
        });
    }
    let bound = bounds::MOVING_SPEED.named("cruiseKmh", FieldMessage::CruisingSpeed);
    asked.iter().map(|kmh| bound.check(*kmh)).collect()
}

fn power_curve(machine: &Machine) -> Vec<PowerPoint> {
    let rpm = |step: u32| {
        let share = LOWEST_SHARE + (1.0 - LOWEST_SHARE) * f64::from(step) / f64::from(POWER_POINTS);
        machine.engine.limit_rpm * share
    };
    (0..=POWER_POINTS).map(|step| PowerPoint { rpm: rpm(step), kw: machine.engine.kw_at(rpm(step)) }).collect()
}
