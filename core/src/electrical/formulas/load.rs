//! The load in each riding state.
//!
//! Method: every consumer's watts at the voltage of the state, added up over those that draw current in it. Filament
//! lamps follow the re-rating law of the electrical handbooks; everything else is taken at its rated watts.

use super::volts::Volts;
use crate::electrical::RidingState;
use crate::record::{Consumer, ConsumerRole, LightSource, Slot, Use};

/// Share of the time that an indicator is lit. Rules fix the rate, not the share; half is what flashers are made for.
const INDICATOR_DUTY: f64 = 0.5;
/// Current of a filament goes with this power of its voltage; watts with one more.
pub(super) const FILAMENT_CURRENT: f64 = 0.55;

/// Watts of a filament lamp off its test voltage.
///
/// `P = P0 (V / V0)^1.55`, P and P0 in watts, V and V0 in volts. Source: Fink and Beaty, *Standard Handbook for
/// Electrical Engineers*, 11th edition, page 22-8 (second-hand); current goes with `V^0.55`. Range: 0.8 to 1.2 times the
/// test voltage; halogen lamps only near it. A lamp of 6 W at 13.5 V is one of 5 W at 12 V (UN R37 gives both):
///
/// ```
/// use layshaft_core::electrical::lamp_watts;
/// assert!((lamp_watts(6.0, 13.5, 12.0) - 5.0).abs() < 0.005);
/// assert!((lamp_watts(25.0, 13.5, 14.4) - 27.63).abs() < 0.005);
/// ```
pub fn lamp_watts(watts: f64, test_volts: f64, volts: f64) -> f64 {
    watts * (volts / test_volts).powf(1.0 + FILAMENT_CURRENT)
}

/// Watts of a consumer, all of its count, at a voltage.
///
/// `P = n P1(V)`: filament lamps by [`lamp_watts`]; LED lamps hold their power by their driver; motors and electronics,
/// and whatever does not say its kind, are taken at their rated watts (an assumption). `test_volts` serves where the
/// consumer does not say at which voltage its watts hold.
///
/// ```
/// use layshaft_core::record::{Consumer, LightSource};
/// use layshaft_core::electrical::consumer_watts;
/// let lamp = Consumer { watts: 10.0, count: 2, source: Some(LightSource::Filament), ..Consumer::default() };
/// assert!((consumer_watts(&lamp, 13.5, 12.6) - 17.97).abs() < 0.005);
/// let led = Consumer { source: Some(LightSource::Led), ..lamp };
/// assert_eq!(consumer_watts(&led, 13.5, 12.6), 20.0);
/// ```
pub fn consumer_watts(consumer: &Consumer, test_volts: f64, volts: f64) -> f64 {
    let one = match consumer.source {
        Some(LightSource::Filament) => lamp_watts(consumer.watts, consumer.test_volts.unwrap_or(test_volts), volts),
        Some(LightSource::Led | LightSource::Motor | LightSource::Electronics) | None => consumer.watts,
    };
    one * f64::from(consumer.count)
}

/// Share of the time that a consumer draws current in a riding state, 0 to 1.
///
/// Indicators count for half (see the duty above); what is used now and then (horn, starter) is left out of every
/// balance, and so is what does not say when it is used.
///
/// ```
/// use layshaft_core::record::Use;
/// use layshaft_core::electrical::{RidingState, share_of_time};
/// assert_eq!(share_of_time(Some(Use::Lights), RidingState::Day), 0.0);
/// assert_eq!(share_of_time(Some(Use::Indicating), RidingState::Busy), 0.5);
/// ```
pub fn share_of_time(used: Option<Use>, state: RidingState) -> f64 {
    use RidingState::{Busy, Day};
    match (used, state) {
        (Some(Use::Steady), _) | (Some(Use::Braking), Busy) => 1.0,
        (Some(Use::Lights), state) if state != Day => 1.0,
        (Some(Use::Indicating), Busy) => INDICATOR_DUTY,
        _ => 0.0,
    }
}

/// Sum of watts, each for its share of the time.
///
/// ```
/// assert_eq!(layshaft_core::electrical::load_sum(&[1.0, 0.5], &[10.0, 8.0]), 14.0);
/// ```
pub fn load_sum(shares: &[f64], watts: &[f64]) -> f64 {
    shares.iter().zip(watts).map(|(share, watts)| share * watts).sum()
}

/// Load in a riding state, watts at the voltage of that state.
///
/// `P = sum of share x n x P1(V)` over the consumers. One side of the machine indicates at a time: an indicating
/// consumer stands for the lamps that flash together, on one side.
///
/// ```
/// use layshaft_core::record::{Consumer, LightSource, Slot, Supply, Use};
/// use layshaft_core::electrical::{RidingState, Volts, load_watts};
/// let lamp = |id: &str, watts, used| Slot {
///     id: id.to_owned(),
///     consumer: Consumer { watts, count: 1, used: Some(used), source: Some(LightSource::Led), ..Consumer::default() },
/// };
/// let fitted = [lamp("head", 12.0, Use::Lights), lamp("stop", 3.0, Use::Braking), lamp("left", 4.0, Use::Indicating)];
/// let volts = Volts::of(&Supply::default());
/// assert_eq!(load_watts(&fitted, RidingState::Lights, &volts), 12.0);
/// assert_eq!(load_watts(&fitted, RidingState::Busy, &volts), 17.0);
/// ```
pub fn load_watts(consumers: &[Slot], state: RidingState, volts: &Volts) -> f64 {
    let (shares, watts) = drawn(consumers, state, volts);
    load_sum(&shares, &watts)
}

/// Share of the time and watts of every consumer that draws current in a riding state; of all of them where none does.
pub(crate) fn drawn(consumers: &[Slot], state: RidingState, volts: &Volts) -> (Vec<f64>, Vec<f64>) {
    let watts = |slot: &Slot| consumer_watts(&slot.consumer, volts.test, volts.in_state(state));
    let beam = |role| consumers.iter().find(|slot| slot.consumer.role == Some(role));
    // Of two beams one is lit: the one that draws more counts.
    let dark = match (beam(ConsumerRole::DippedBeam), beam(ConsumerRole::MainBeam)) {
        (Some(dipped), Some(main)) => Some(if watts(dipped) < watts(main) { &dipped.id } else { &main.id }),
        _ => None,
    };
    let each = |slot: &Slot| (share_of_time(slot.consumer.used, state), watts(slot));
    let all: Vec<(f64, f64)> = consumers.iter().filter(|slot| Some(&slot.id) != dark).map(each).collect();
    let draws = all.iter().any(|(share, _)| *share > 0.0);
    all.into_iter().filter(|(share, _)| *share > 0.0 || !draws).unzip()
}

/// Watts that flash together on one side while they are lit, at the regulated voltage; none without indicators.
///
/// ```
/// use layshaft_core::record::{Consumer, Slot, Supply, Use};
/// use layshaft_core::electrical::{Volts, indicating_watts};
/// let pair = Consumer { watts: 2.0, count: 2, used: Some(Use::Indicating), ..Consumer::default() };
/// let slots = [Slot { id: "indicators".to_owned(), consumer: pair }];
/// assert_eq!(indicating_watts(&slots, &Volts::of(&Supply::default())), Some(4.0));
/// assert_eq!(indicating_watts(&[], &Volts::of(&Supply::default())), None);
/// ```
pub fn indicating_watts(consumers: &[Slot], volts: &Volts) -> Option<f64> {
    let watts = |slot: &Slot| consumer_watts(&slot.consumer, volts.test, volts.charging);
    consumers.iter().filter(|slot| slot.consumer.used == Some(Use::Indicating)).map(watts).reduce(|sum, one| sum + one)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::record::Supply;

    #[test]
    fn the_lamp_law_gives_the_handbook_values_of_a_25_watt_lamp() {
        // Watts at 12.0, 12.6 and 14.4 V, and the current law I ~ V^0.55 that must agree with P/V.
        for (volts, watts, amperes) in [(12.0, 20.83, 1.7357), (12.6, 22.46, 1.7829), (14.4, 27.63, 1.9188)] {
            let at = lamp_watts(25.0, 13.5, volts);
            assert!((at - watts).abs() < 0.0051, "{at}");
            assert!((at / volts - amperes).abs() < 0.00006);
            assert!((25.0 / 13.5 * (volts / 13.5_f64).powf(0.55) - amperes).abs() < 0.00006);
        }
    }

    #[test]
    fn the_rated_and_test_watts_of_the_double_filament_lamp_imply_the_exponent() {
        // UN R37, 5 W and 21 W as marked (12 V) against 6 W and 25 W at the test voltage: exponents 1.548 and 1.480.
        assert!((lamp_watts(6.0, 13.5, 12.0) - 5.0).abs() < 0.01);
        assert!((lamp_watts(25.0, 13.5, 12.0) - 21.0).abs() < 0.2);
    }

    #[test]
    fn what_does_not_say_when_it_is_used_and_what_is_used_now_and_then_draw_nothing_in_any_state() {
        for state in RidingState::ALL {
            assert_eq!(share_of_time(None, state), 0.0);
            assert_eq!(share_of_time(Some(Use::Moment), state), 0.0);
        }
    }

    #[test]
    fn a_six_volt_lamp_without_a_test_voltage_is_rated_at_6_75_volts() {
        let lamp = Consumer {
            watts: 15.0,
            count: 1,
            used: Some(Use::Lights),
            source: Some(LightSource::Filament),
            ..Consumer::default()
        };
        let supply = Supply { system_volts: Some(6.0), charging_volts: Some(6.75), ..Supply::default() };
        let slots = [Slot { id: "head".to_owned(), consumer: lamp }];
        assert!((load_watts(&slots, RidingState::Lights, &Volts::of(&supply)) - 15.0).abs() < 1e-12);
    }

    fn any_slot() -> impl Strategy<Value = Slot> {
        let used = prop::sample::select(vec![Use::Steady, Use::Lights, Use::Braking, Use::Indicating, Use::Moment]);
        let source = prop::sample::select(vec![LightSource::Filament, LightSource::Led, LightSource::Motor]);
        (0.0..100.0, 1_u32..5, used, source).prop_map(|(watts, count, used, source)| Slot {
            id: "any".to_owned(),
            consumer: Consumer { watts, count, used: Some(used), source: Some(source), ..Consumer::default() },
        })
    }

    proptest! {
        #[test]
        fn busy_is_never_less_than_lights_nor_lights_than_day(slots in prop::collection::vec(any_slot(), 0..8)) {
            let volts = Volts::of(&Supply::default());
            let load = |state| load_watts(&slots, state, &volts);
            prop_assert!(load(RidingState::Day) <= load(RidingState::Lights) + 1e-9);
            prop_assert!(load(RidingState::Lights) <= load(RidingState::Busy) + 1e-9);
        }

        #[test]
        fn one_more_consumer_never_lowers_the_load(slots in prop::collection::vec(any_slot(), 1..8)) {
            let volts = Volts::of(&Supply::default());
            for state in RidingState::ALL {
                let all = load_watts(&slots, state, &volts);
                prop_assert!(load_watts(&slots[1..], state, &volts) <= all + 1e-9);
            }
        }
    }

    #[test]
    fn of_two_beams_the_one_that_draws_more_counts() {
        let beam = |id: &str, role, watts| Slot {
            id: id.to_owned(),
            consumer: Consumer {
                role: Some(role),
                watts,
                count: 1,
                used: Some(Use::Lights),
                source: Some(LightSource::Led),
                ..Consumer::default()
            },
        };
        let both = [beam("a", ConsumerRole::DippedBeam, 40.0), beam("b", ConsumerRole::MainBeam, 45.0)];
        let volts = Volts::of(&Supply::default());
        assert_eq!(load_watts(&both, RidingState::Lights, &volts), 45.0);
        assert_eq!(load_watts(&both[..1], RidingState::Lights, &volts), 40.0);
    }
}
