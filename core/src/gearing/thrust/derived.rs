//! The quantities of thrust that take part in ripple and readiness. Only from what is on the bike: without its drag area, its
//! mass and its power there is no top speed, because a guess would look like a figure.

use super::findings::tyre_limit;
use super::gears::gearing_match;
use super::machine::{Machine, ThrustAsk};
use super::sources::road_load;
use crate::gearing::message::ThrustMessage;
use crate::quantity::{Judgement, Quantity};
use crate::record::{Bike, Spec};
use crate::units::Unit;

/// Top speed and what goes with it, with the usual load on a level road.
pub(in crate::gearing) fn derive_thrust(bike: &Bike, spec: &Spec) -> Vec<Quantity> {
    if spec.drive.drag_area_m2.is_none() {
        return Vec::new();
    }
    let Ok(machine) = Machine::of(bike, spec, &ThrustAsk::default()) else { return Vec::new() };
    let Some(top) = machine.top() else { return Vec::new() };
    let quantity = |id: &str, label: ThrustMessage, value: f64, unit: Unit| {
        Quantity::new(id, label, value, unit, (Judgement::Open, None), road_load())
    };
    let mut speed = quantity("speed.top", ThrustMessage::TopSpeed, top.kmh, Unit::KilometreHour);
    if let Some(limit) = tyre_limit(&spec.rear_wheel) {
        speed.judgement = if top.kmh <= limit { Judgement::Fine } else { Judgement::Outside };
        speed.why = Some(ThrustMessage::TyreRated { limit: Unit::KilometreHour.of(limit) }.into());
    }
    let mut quantities = vec![speed, quantity("rpm.at-top-speed", ThrustMessage::EngineSpeedThere, top.rpm, Unit::Rpm)];
    let off = gearing_match(&machine, &spec.drive).and_then(|matched| matched.off_percent);
    quantities.extend(
        off.map(|off| quantity("gearing.top-against-peak-power", ThrustMessage::AgainstPeakPower, off, Unit::Percent)),
    );
    quantities
}
