//! The pilot lamp of the indicators, and why all four flash with LED lamps.
//!
//! A single pilot between the two circuits finds its earth through the lamps of the other side. Filaments of 10 or 21 W
//! are as good as a wire for it and stay dark. LED lamps take its few hundred milliamperes as their own current: the
//! other side flashes too. Two diodes and an earth of its own cure it. The harness solver tells how much of each.

use layshaft_wire::wire;

use super::message::IndicatorMessage;
use crate::harness::model::{Harness, Setting};
use crate::harness::solver::{LampLook, OperatingPoint, solve};
use crate::harness::templates::bike_circuit;
use crate::quantity::{Source, Standing};
use crate::record::Spec;

/// What is seen while one side is lit; of the two sides the worse.
#[wire]
pub struct PilotBehaviour {
    /// Light of the pilot against its rated one, per cent.
    pub pilot_percent: f64,
    /// What the pilot looks like.
    pub pilot: LampLook,
    /// Light of the brighter lamp of the side that should be dark, per cent of its rated one.
    pub other_percent: f64,
    /// What that side looks like.
    pub other_side: LampLook,
    /// Light of the dimmer lamp of the side that should be lit, per cent.
    pub own_percent: f64,
    /// Current through the flasher, amperes.
    pub amperes: f64,
}

/// What pilot and other side do while one side is lit, by the solver, of left and right the worse (an LED pilot between
/// the sides lights for one of them only); none where the circuit does not settle.
///
/// ```
/// use layshaft_core::record::Spec;
/// use layshaft_core::harness::{pilot_behaviour, LampLook};
/// let filament = pilot_behaviour(&Spec::default(), &Spec::default()).unwrap();
/// assert_eq!((filament.pilot, filament.other_side), (LampLook::Full, LampLook::Off));
/// ```
pub fn pilot_behaviour(standard: &Spec, spec: &Spec) -> Option<PilotBehaviour> {
    let harness = bike_circuit(standard, spec, "indicators-one-pilot")?;
    let left = of_side(&harness, "left", "right")?;
    let right = of_side(&harness, "right", "left")?;
    Some(PilotBehaviour {
        pilot_percent: left.pilot_percent.min(right.pilot_percent),
        pilot: left.pilot.min(right.pilot),
        other_percent: left.other_percent.max(right.other_percent),
        other_side: left.other_side.max(right.other_side),
        own_percent: left.own_percent.min(right.own_percent),
        amperes: left.amperes.max(right.amperes),
    })
}

fn of_side(harness: &Harness, side: &str, other: &str) -> Option<PilotBehaviour> {
    let point = solve(harness, &Setting::of(&[("key", "on"), ("indicators", side)])).ok()?;
    let (pilot_share, pilot) = seen(&point, &["pilot", &format!("pilot.{side}")], f64::max)?;
    let (front, rear) = (format!("{other}.front"), format!("{other}.rear"));
    let (other_share, other_side) = seen(&point, &[&front, &rear], f64::max)?;
    let (front, rear) = (format!("{side}.front"), format!("{side}.rear"));
    let (own_share, _) = seen(&point, &[&front, &rear], f64::min)?;
    Some(PilotBehaviour {
        pilot_percent: 100.0 * pilot_share,
        pilot,
        other_percent: 100.0 * other_share,
        other_side,
        own_percent: 100.0 * own_share,
        amperes: point.flow("flasher").map_or(0.0, |flow| flow.amperes),
    })
}

fn seen(point: &OperatingPoint, ids: &[&str], pick: fn(f64, f64) -> f64) -> Option<(f64, LampLook)> {
    let lamps = || point.lamps.iter().filter(|lamp| ids.contains(&lamp.element.as_str()));
    let share = lamps().map(|lamp| lamp.share).reduce(pick)?;
    let look = lamps().find(|lamp| lamp.share == share)?.look;
    Some((share, look))
}

/// Where it comes from.
pub(crate) fn pilot_source() -> Source {
    Source::new(IndicatorMessage::SourcePilot, Standing::Computed)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{Consumer, ConsumerRole, Indication, LightSource, PilotFitting, Slot, Use};

    fn spec(source: LightSource, watts: f64, indication: Indication) -> Spec {
        let lamp = |watts, count, source| Consumer {
            name: "Lamp".to_owned(),
            watts,
            count,
            used: Some(Use::Indicating),
            source: Some(source),
            ..Consumer::default()
        };
        let slot =
            |id: &str, role, consumer| Slot { id: id.to_owned(), consumer: Consumer { role: Some(role), ..consumer } };
        let consumers = vec![
            slot("0a", ConsumerRole::Indicators, lamp(watts, 2, source)),
            slot("0b", ConsumerRole::IndicatorPilot, lamp(3.0, 1, LightSource::Filament)),
        ];
        Spec { consumers, indication, ..Spec::default() }
    }

    fn behaviour(spec: &Spec) -> PilotBehaviour {
        pilot_behaviour(spec, spec).unwrap()
    }

    #[test]
    fn with_led_lamps_both_sides_flash_and_the_pilot_is_weak() {
        let led = behaviour(&spec(LightSource::Led, 2.0, Indication::default()));
        assert!(led.other_side >= LampLook::Dim, "{led:?}");
        assert!(led.pilot < LampLook::Full, "{led:?}");
        let filament = behaviour(&spec(LightSource::Filament, 10.0, Indication::default()));
        assert!(filament.other_side == LampLook::Off && filament.pilot == LampLook::Full, "{filament:?}");
    }

    #[test]
    fn two_diodes_and_an_earth_cure_it() {
        let diodes = Indication { pilot: Some(PilotFitting::OneWithDiodes), ..Indication::default() };
        let cured = behaviour(&spec(LightSource::Led, 2.0, diodes));
        assert!(cured.other_side == LampLook::Off && cured.pilot == LampLook::Full, "{cured:?}");
        let each = Indication { pilot: Some(PilotFitting::OneEachSide), ..Indication::default() };
        let cured = behaviour(&spec(LightSource::Led, 2.0, each));
        assert!(cured.other_side == LampLook::Off && cured.pilot == LampLook::Full, "{cured:?}");
    }

    #[test]
    fn load_resistors_give_the_pilot_most_of_its_light_back() {
        let resistors = Indication { resistor_ohms: Some(22.0), resistors_per_side: Some(2), ..Indication::default() };
        let with = behaviour(&spec(LightSource::Led, 2.0, resistors));
        let without = behaviour(&spec(LightSource::Led, 2.0, Indication::default()));
        assert!(with.other_side == LampLook::Off && with.pilot_percent > 3.0 * without.pilot_percent, "{with:?}");
    }

    #[test]
    fn an_led_pilot_between_the_sides_is_dark_for_one_of_them() {
        let mut with = spec(LightSource::Filament, 10.0, Indication::default());
        with.consumers[1].consumer.source = Some(LightSource::Led);
        assert!(behaviour(&with).pilot < LampLook::Dim, "{:?}", behaviour(&with));
        with.indication.pilot = Some(PilotFitting::OneWithDiodes);
        assert_eq!(behaviour(&with).pilot, LampLook::Full);
    }

    #[test]
    fn six_volts_behave_alike() {
        let six = |spec: Spec| Spec {
            supply: crate::record::Supply { system_volts: Some(6.0), ..crate::record::Supply::default() },
            ..spec
        };
        let filament = behaviour(&six(spec(LightSource::Filament, 10.0, Indication::default())));
        assert!(filament.other_side == LampLook::Off && filament.pilot == LampLook::Full, "{filament:?}");
        let led = behaviour(&six(spec(LightSource::Led, 2.0, Indication::default())));
        assert!(led.other_side >= LampLook::Dim, "{led:?}");
    }
}
