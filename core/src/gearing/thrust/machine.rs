//! What thrust and top speed are worked out with: the ask, what the bike knows, and what is taken where neither says.

use layshaft_wire::wire;

use super::at_wheel::power_at_wheel;
use super::power::Engine;
use super::road_load::{Resistance, RoadLoad, RollingLaw, thrust};
use super::top_speed::{HeldBy, TopSpeed, highest_held};
use super::{air_density, torque_of};
use crate::bounds;
use crate::error::Refused;
use crate::gearing::formulas::{engine_speed, road_speed};
use crate::gearing::judge::{GearTrain, gear_train};
use crate::gearing::message::{GearingRefused, ThrustMessage};
use crate::message::{FieldMessage, Message};
use crate::record::{Bike, Identity, PowerPoint, Spec, USUAL_LOAD_KG};
use crate::tyres::rolling_pair;
use crate::units::Unit;

/// What to work out. What is left out is taken from the fitted bike, or is as said.
#[wire(lenient)]
pub struct ThrustAsk {
    /// Teeth of the gearbox sprocket.
    pub front_teeth: Option<u32>,
    /// Teeth of the wheel sprocket.
    pub rear_teeth: Option<u32>,
    /// Points of the power curve; empty: the bike's, else its peaks.
    pub power_curve: Vec<PowerPoint>,
    /// Peak power tried instead of the bike's, kW; a peak that is tried takes the place of the bike's points.
    pub peak_power_kw: Option<f64>,
    /// Engine speed of peak power, revolutions a minute.
    pub peak_power_rpm: Option<f64>,
    /// Peak torque tried instead of the bike's, N m.
    pub peak_torque_nm: Option<f64>,
    /// Engine speed of peak torque, revolutions a minute.
    pub peak_torque_rpm: Option<f64>,
    /// The power was measured at the wheel; left out: at the crankshaft.
    pub power_at_wheel: Option<bool>,
    /// Share of the power that reaches the wheel; left out: the bike's, else 0.9.
    pub drive_efficiency: Option<f64>,
    /// Rider, luggage and fluids, kg; left out: 90.
    pub load_kg: Option<f64>,
    /// Drag area, m²; left out: the bike's, else 0.6.
    pub drag_area_m2: Option<f64>,
    /// Rolling coefficient; left out: 0.02, unless the tyre pressure is given.
    pub rolling_coefficient: Option<f64>,
    /// Tyre pressure, bar: rolling then goes by pressure and speed.
    pub tyre_bar: Option<f64>,
    /// Grade, per cent; left out: level.
    pub grade_percent: Option<f64>,
    /// Head wind, km/h; left out: none.
    pub head_wind_kmh: Option<f64>,
    /// Height above the sea, m; left out: 0.
    pub altitude_metres: Option<f64>,
    /// Temperature of the air, °C; left out: that of the standard day at that height.
    pub celsius: Option<f64>,
    /// Speeds to cruise at, km/h; empty: 50, 70, 90 and 110.
    pub cruise_kmh: Vec<f64>,
}

/// Drag area where none is known, m²: the middle of 0.5 to 0.7 for a rider sitting up (from memory).
pub(super) const USUAL_DRAG_AREA_M2: f64 = 0.6;
/// Share of the power that reaches the wheel where it is not known (from memory).
pub(super) const USUAL_EFFICIENCY: f64 = 0.9;
/// Rolling coefficient where it is not known: the upper end of 0.015 to 0.02 (from memory).
pub(super) const USUAL_ROLLING: f64 = 0.02;
/// Engine speed from which on a gear is drawn and searched, as a share of the limit.
pub(super) const LOWEST_SHARE: f64 = 0.2;

impl ThrustAsk {
    /// The papers of the bike with the peaks that are tried.
    fn peaks_over(&self, papers: &Identity) -> Identity {
        Identity {
            peak_power_kw: self.peak_power_kw.or(papers.peak_power_kw),
            peak_power_rpm: self.peak_power_rpm.or(papers.peak_power_rpm),
            peak_torque_nm: self.peak_torque_nm.or(papers.peak_torque_nm),
            peak_torque_rpm: self.peak_torque_rpm.or(papers.peak_torque_rpm),
            ..papers.clone()
        }
    }
}

/// Engine, gears and load, ready to be asked.
pub(super) struct Machine {
    pub engine: Engine,
    pub train: GearTrain,
    pub load: RoadLoad,
    /// Share of the engine's power that reaches the wheel.
    pub efficiency: f64,
    /// What was taken without being entered, in words.
    pub assumptions: Vec<Message>,
}

impl Machine {
    /// Resolves an ask on a spec of a bike.
    pub fn of(bike: &Bike, spec: &Spec, ask: &ThrustAsk) -> Result<Self, Refused> {
        let mut drive = spec.drive.clone();
        drive.front_teeth = ask.front_teeth.or(drive.front_teeth);
        drive.rear_teeth = ask.rear_teeth.or(drive.rear_teeth);
        let rear = rolling_pair(&bike.standard.rear_wheel, &spec.rear_wheel).1?;
        let train = gear_train(&drive, rear, 80.0)?;
        let identity = ask.peaks_over(&bike.identity);
        let peaks_tried = identity != bike.identity;
        let points = if ask.power_curve.is_empty() && !peaks_tried { &drive.power_curve } else { &ask.power_curve };
        let engine = Engine::of(&identity, points, drive.rev_limit_rpm)?;
        let dry = bounds::DRY_MASS.need(identity.dry_mass_kg)?;
        let load_kg = bounds::LOAD_MASS.check(ask.load_kg.unwrap_or(USUAL_LOAD_KG))?;
        let mut assumptions = vec![engine.assumption()];
        if !engine.limit_known {
            assumptions.push(ThrustMessage::AssumedLimit { limit: Unit::Rpm.of(engine.limit_rpm) });
        }
        let area = bounds::DRAG_AREA.check_known(ask.drag_area_m2.or(drive.drag_area_m2))?;
        if area.is_none() {
            assumptions.push(ThrustMessage::AssumedDragArea { area: Unit::SquareMetre.of(USUAL_DRAG_AREA_M2) });
        }
        let share = bounds::DRIVE_EFFICIENCY.check_known(ask.drive_efficiency.or(drive.drive_efficiency))?;
        let at_wheel = ask.power_at_wheel.unwrap_or(false);
        if share.is_none() && !at_wheel {
            assumptions.push(ThrustMessage::AssumedEfficiency { share: Unit::None.of(USUAL_EFFICIENCY) });
        }
        let load = RoadLoad {
            mass_kg: dry + load_kg,
            rolling: rolling(ask, &mut assumptions)?,
            drag_area_m2: area.unwrap_or(USUAL_DRAG_AREA_M2),
            air_density: density(ask)?,
            grade_percent: bounds::GRADE.check(ask.grade_percent.unwrap_or(0.0))?,
            head_wind_kmh: bounds::HEAD_WIND.check(ask.head_wind_kmh.unwrap_or(0.0))?,
        };
        let efficiency = if at_wheel { 1.0 } else { share.unwrap_or(USUAL_EFFICIENCY) };
        Ok(Self { engine, train, load, efficiency, assumptions: assumptions.into_iter().map(Into::into).collect() })
    }

    /// Radius on which the wheel rolls, mm.
    pub fn radius_mm(&self) -> f64 {
        self.train.circumference_mm / std::f64::consts::TAU
    }

    /// Engine speed in a gear at a road speed.
    pub fn rpm(&self, overall: f64, kmh: f64) -> f64 {
        engine_speed(kmh, overall, self.train.circumference_mm)
    }

    /// Road speed in a gear at an engine speed.
    pub fn kmh(&self, overall: f64, rpm: f64) -> f64 {
        road_speed(rpm, overall, self.train.circumference_mm)
    }

    /// Power at the wheel, kW.
    pub fn wheel_kw(&self, rpm: f64) -> f64 {
        power_at_wheel(self.engine.kw_at(rpm), self.efficiency)
    }

    /// Thrust in a gear at an engine speed, N.
    pub fn thrust(&self, overall: f64, rpm: f64) -> f64 {
        thrust(torque_of(self.engine.kw_at(rpm), rpm), overall, self.efficiency, self.radius_mm())
    }

    /// Power at the wheel in a gear at a road speed, less what resistance takes, W.
    pub fn spare_watts(&self, overall: f64, kmh: f64) -> f64 {
        self.wheel_kw(self.rpm(overall, kmh)) * 1000.0 - self.load.at(kmh).total_newtons * kmh / 3.6
    }

    /// The highest speed of a gear; none where it cannot hold any.
    pub fn top_of(&self, gear: u32, overall: f64) -> Option<TopSpeed> {
        let high = self.kmh(overall, self.engine.limit_rpm);
        let (kmh, at_limit) = highest_held(high * LOWEST_SHARE, high, |kmh| self.spare_watts(overall, kmh))?;
        let held_by = if at_limit { HeldBy::EngineLimit } else { HeldBy::Power };
        Some(TopSpeed { gear, kmh, rpm: self.rpm(overall, kmh), held_by, resistance: self.load.at(kmh) })
    }

    /// The highest speed in any gear; of equal ones the higher gear.
    pub fn top(&self) -> Option<TopSpeed> {
        let tops = self.train.gears.iter().filter_map(|line| self.top_of(line.gear, line.overall_ratio));
        tops.max_by(|a, b| a.kmh.total_cmp(&b.kmh))
    }

    /// Resistance at a speed.
    pub fn resistance(&self, kmh: f64) -> Resistance {
        self.load.at(kmh)
    }
}

fn rolling(ask: &ThrustAsk, assumptions: &mut Vec<ThrustMessage>) -> Result<RollingLaw, Refused> {
    let coefficient = bounds::ROLLING.check_known(ask.rolling_coefficient)?;
    let bar = bounds::TYRE_PRESSURE.check_known(ask.tyre_bar)?;
    match (coefficient, bar) {
        (Some(_), Some(_)) => Err(Refused::Conflict {
            field: "rollingCoefficient".to_owned(),
            reason: GearingRefused::RollingTwice.into(),
        }),
        (None, Some(tyre_bar)) => Ok(RollingLaw::ByPressure { tyre_bar }),
        (Some(rolling_coefficient), None) => Ok(RollingLaw::Constant { rolling_coefficient }),
        (None, None) => {
            assumptions.push(ThrustMessage::AssumedRolling { coefficient: Unit::None.of(USUAL_ROLLING) });
            Ok(RollingLaw::Constant { rolling_coefficient: USUAL_ROLLING })
        }
    }
}

fn density(ask: &ThrustAsk) -> Result<f64, Refused> {
    let altitude = bounds::ALTITUDE.check(ask.altitude_metres.unwrap_or(0.0))?;
    let celsius = bounds::TEMPERATURE.named("celsius", FieldMessage::TemperatureOfTheAir).check_known(ask.celsius)?;
    Ok(air_density(altitude, celsius))
}
