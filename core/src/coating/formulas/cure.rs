//! A cure that runs on equivalent age over a temperature log.
//!
//! Method: the Arrhenius form of maturity (ASTM C1074, written for concrete). Carrying it over to paint is an
//! assumption: it is stated wherever an answer rests on it, and two times of the same sheet at two temperatures replace
//! its default.

use layshaft_wire::wire;

use super::climate::ClimateLog;
use crate::record::{Coat, CureState, Product};
use crate::units::HOUR_MS;

/// A state with the moment at which it is or was reached.
#[wire]
pub struct Milestone {
    /// The state that begins there.
    pub state: CureState,
    /// Hours on the can, at the reference temperature.
    pub hours: f64,
    /// When, milliseconds since 1970 (UTC); none when it stands still for as far as can be seen.
    pub due_ms: Option<i64>,
    /// Already reached.
    pub reached: bool,
}

/// Reference temperature when the can does not say, °C: the standard climate for paints, and the cautious choice.
pub(crate) const USUAL_REFERENCE: f64 = 23.0;
/// Nothing cures faster than at this temperature, °C, or at 20 K above the can's where that is more.
const NO_FASTER_FROM: f64 = 40.0;
/// How far ahead is looked, days.
const HORIZON_DAYS: f64 = 180.0;

const ZERO_CELSIUS: f64 = 273.15;

/// How fast a cure runs against the reference temperature.
///
/// `r = exp(-Q (1/T - 1/Ts))`, T and Ts in kelvin (given in °C), Q = Ea/R in kelvin. Source: ASTM C1074, equation of
/// the equivalent age (from memory; second-hand restatements agree), with Q = 5,000 K where nothing better is known.
/// Range: about 0 to 40 °C and 20 K around the reference; written for concrete, carried over to paint as an assumption.
///
/// ```
/// use layshaft_core::coating::rate_factor;
/// assert_eq!(rate_factor(20.0, 20.0, 5000.0), 1.0);
/// assert!((rate_factor(10.0, 20.0, 5000.0) - 0.54751).abs() < 0.00001);
/// ```
pub fn rate_factor(celsius: f64, at_celsius: f64, activation_kelvin: f64) -> f64 {
    (-activation_kelvin * (1.0 / (celsius + ZERO_CELSIUS) - 1.0 / (at_celsius + ZERO_CELSIUS))).exp()
}

/// The same for a product that stands still below a temperature: [`rate_factor`], nothing below it.
///
/// ```
/// use layshaft_core::coating::paced_rate;
/// assert_eq!((paced_rate(4.0, 5.0, 20.0, 5000.0), paced_rate(20.0, 5.0, 20.0, 5000.0)), (0.0, 1.0));
/// ```
pub fn paced_rate(celsius: f64, lowest_celsius: f64, at_celsius: f64, activation_kelvin: f64) -> f64 {
    if celsius < lowest_celsius { 0.0 } else { rate_factor(celsius, at_celsius, activation_kelvin) }
}

/// Equivalent age of spells at one temperature each, given as (hours, °C), in hours at the reference temperature.
///
/// `te = sum of exp(-Q (1/T - 1/Ts)) x dt`, dt in hours, else as [`rate_factor`], where source and range stand.
///
/// ```
/// use layshaft_core::coating::equivalent_age;
/// let day = [(12.0, 10.0), (12.0, 25.0)];
/// assert!((equivalent_age(&day, 20.0, 5000.0) - 22.544).abs() < 0.0005);
/// ```
pub fn equivalent_age(spells: &[(f64, f64)], at_celsius: f64, activation_kelvin: f64) -> f64 {
    spells.iter().map(|(hours, celsius)| hours * rate_factor(*celsius, at_celsius, activation_kelvin)).sum()
}

/// How fast a product cures at a temperature, with its limits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Pace {
    pub(crate) at_celsius: f64,
    pub(crate) activation_kelvin: f64,
    pub(crate) lowest_celsius: Option<f64>,
}

impl Pace {
    pub(crate) fn of(product: &Product) -> Self {
        Self {
            at_celsius: product.at_celsius.unwrap_or(USUAL_REFERENCE),
            activation_kelvin: super::activation::activation_of(product).0,
            lowest_celsius: product.lowest_celsius,
        }
    }

    /// Hours at the reference temperature for an hour here; nothing below the lowest temperature.
    pub(crate) fn rate(&self, celsius: f64) -> f64 {
        let counted = celsius.min(self.no_faster_from());
        match self.lowest_celsius {
            Some(lowest) => paced_rate(counted, lowest, self.at_celsius, self.activation_kelvin),
            None => rate_factor(counted, self.at_celsius, self.activation_kelvin),
        }
    }

    pub(crate) fn stands_still(&self, celsius: f64) -> bool {
        self.lowest_celsius.is_some_and(|lowest| celsius < lowest)
    }

    /// Above this the law is not trusted to speed a cure up any further: heat may dry the skin and trap what is below.
    pub(crate) fn no_faster_from(&self) -> f64 {
        NO_FASTER_FROM.max(self.at_celsius + 20.0)
    }
}

/// Equivalent age at each of the moments (in order), hours at the reference temperature.
pub(crate) fn ages_at(pace: &Pace, applied_ms: i64, moments: &[i64], climate: &ClimateLog) -> Vec<f64> {
    let Some(last) = moments.last() else { return Vec::new() };
    let mut waiting = moments.iter().peekable();
    let mut ages = Vec::with_capacity(moments.len());
    let mut age = 0.0;
    for spell in climate.spells(applied_ms, *last) {
        let rate = pace.rate(spell.celsius);
        while let Some(moment) = waiting.next_if(|moment| **moment < spell.to_ms) {
            ages.push(age + rate * hours_between(spell.from_ms, *moment).max(0.0));
        }
        age += rate * hours_between(spell.from_ms, spell.to_ms);
    }
    ages.resize(moments.len(), age);
    ages
}

/// When each of the ages (in order, hours at the reference temperature) is reached; none beyond the horizon.
pub(crate) fn when_reached(pace: &Pace, applied_ms: i64, ages: &[f64], climate: &ClimateLog) -> Vec<Option<i64>> {
    let mut waiting = ages.iter().peekable();
    let mut reached = Vec::with_capacity(ages.len());
    let mut age = 0.0;
    for spell in climate.spells(applied_ms, horizon_ms(applied_ms, climate)) {
        let rate = pace.rate(spell.celsius);
        let grown = age + rate * hours_between(spell.from_ms, spell.to_ms);
        while let Some(wanted) = waiting.next_if(|wanted| **wanted <= grown) {
            let wait_ms = if *wanted <= age { 0.0 } else { (wanted - age) / rate * HOUR_MS };
            reached.push(Some(spell.from_ms.saturating_add(wait_ms.ceil() as i64)));
        }
        let never_again =
            rate == 0.0 && climate.warmest_from(spell.from_ms).is_some_and(|most| pace.stands_still(most));
        if never_again || waiting.peek().is_none() {
            break;
        }
        age = grown;
    }
    reached.resize(ages.len(), None);
    reached
}

/// When a product put on at a moment is fully cured, milliseconds since 1970 (UTC).
///
/// None when its full cure is not on the sheet, or when it stands still for as far as is looked: 180 days from now or
/// from the application, whichever is later.
pub fn cure_end_ms(product: &Product, applied_ms: i64, climate: &ClimateLog) -> Option<i64> {
    let full = product.full_cure_hours?;
    when_reached(&Pace::of(product), applied_ms, &[full], climate).into_iter().next().flatten()
}

pub(crate) fn horizon_ms(applied_ms: i64, climate: &ClimateLog) -> i64 {
    applied_ms.max(climate.now_ms()).saturating_add((HORIZON_DAYS * 24.0 * HOUR_MS) as i64)
}

pub(crate) fn hours_between(from_ms: i64, to_ms: i64) -> f64 {
    to_ms.saturating_sub(from_ms) as f64 / HOUR_MS
}

impl Coat {
    /// When it is fully cured where it stands, milliseconds since 1970 (UTC); none as for [`cure_end_ms`].
    pub fn cured_ms(&self, climate: &ClimateLog) -> Option<i64> {
        if self.stays.is_empty() {
            return cure_end_ms(&self.product, self.applied_ms, climate);
        }
        cure_end_ms(&self.product, self.applied_ms, &climate.with_stays(&self.stays))
    }
}

#[cfg(test)]
mod tests {
    use crate::record::activation;
    use proptest::prelude::*;

    use super::*;
    use crate::record::{Climate, Place};
    use crate::time::Moment;

    const START: i64 = 1_775_000_000_000;
    const HOUR: i64 = 3_600_000;

    fn log(readings: &[(i64, f64)], place: (Option<f64>, Option<f64>)) -> ClimateLog {
        let readings: Vec<Climate> = readings
            .iter()
            .map(|&(hours, celsius)| Climate { from_ms: START + hours * HOUR, celsius, humidity: None })
            .collect();
        let place = Place { night_celsius: place.0, day_celsius: place.1, humidity: None };
        ClimateLog::new(&readings, &place, &Moment { now_ms: START, ..Moment::default() })
    }

    fn steady(celsius: f64) -> ClimateLog {
        log(&[], (Some(celsius), None))
    }

    fn liner() -> Product {
        crate::ready_made::typical_product("tank-liner").unwrap()
    }

    #[test]
    fn the_rate_factors_of_the_default_activation_are_the_checked_ones() {
        for (celsius, rate) in [(30.0, 1.75528), (10.0, 0.54751), (0.0, 0.28684)] {
            assert!((rate_factor(celsius, 20.0, 5000.0) - rate).abs() < 0.000_006);
        }
        // Ten kelvin do not always do the same: 1.755 from 20 to 30 °C, 1.826 from 10 to 20 °C.
        assert!((rate_factor(20.0, 10.0, 5000.0) - 1.826).abs() < 0.0005);
    }

    #[test]
    fn an_activation_of_51_2_kilojoule_a_mole_doubles_the_rate_from_20_to_30_degrees() {
        let doubling = activation((2.0, 20.0), (1.0, 30.0)).unwrap();
        assert!((doubling * 8.314_462_618 / 1000.0 - 51.2).abs() < 0.05);
    }

    #[test]
    fn half_a_day_cold_and_half_a_day_warm_age_as_the_sum_of_both() {
        let pace = Pace { at_celsius: 20.0, activation_kelvin: 5000.0, lowest_celsius: None };
        let climate = log(&[(0, 10.0), (12, 25.0)], (None, None));
        let ages = ages_at(&pace, START, &[START - HOUR, START, START + 12 * HOUR, START + 24 * HOUR], &climate);
        assert_eq!(ages[..2], [0.0, 0.0]);
        assert!((ages[2] - 12.0 * 0.54751).abs() < 0.0002);
        assert!((ages[3] - 22.544).abs() < 0.0005);
    }

    #[test]
    fn at_the_reference_temperature_the_hours_on_the_can_are_hours_on_the_wall() {
        assert_eq!(cure_end_ms(&liner(), START, &steady(20.0)), Some(START + 96 * HOUR));
    }

    #[test]
    fn below_its_lowest_temperature_a_coat_stands_still_and_goes_on_when_it_is_warm_again() {
        assert_eq!(cure_end_ms(&liner(), START, &steady(9.0)), None);
        let a_cold_day_first = log(&[(0, 5.0), (24, 20.0)], (None, None));
        assert_eq!(cure_end_ms(&liner(), START, &a_cold_day_first), Some(START + 120 * HOUR));
    }

    #[test]
    fn heat_beyond_what_the_law_holds_for_does_not_speed_a_cure_up_any_further() {
        assert_eq!(cure_end_ms(&liner(), START, &steady(40.0)), cure_end_ms(&liner(), START, &steady(60.0)));
        assert!(cure_end_ms(&liner(), START, &steady(39.0)) > cure_end_ms(&liner(), START, &steady(40.0)));
    }

    #[test]
    fn a_sheet_without_full_cure_has_no_end() {
        let unknown = Product { full_cure_hours: None, ..liner() };
        assert_eq!(cure_end_ms(&unknown, START, &steady(20.0)), None);
    }

    #[test]
    fn moments_out_of_all_reason_are_answered() {
        let wave = log(&[], (Some(12.0), Some(20.0)));
        for applied_ms in [i64::MIN, 0, i64::MAX] {
            let _ = cure_end_ms(&liner(), applied_ms, &wave);
        }
        assert_eq!(cure_end_ms(&liner(), i64::MAX, &wave), None);
    }

    fn any_readings() -> impl Strategy<Value = Vec<(i64, f64)>> {
        prop::collection::vec((-100_i64..400, -5.0..45.0), 0..12)
    }

    fn any_place() -> impl Strategy<Value = (Option<f64>, Option<f64>)> {
        (prop::option::of(-5.0..20.0), prop::option::of(5.0..35.0))
    }

    proptest! {
        #[test]
        fn warmer_is_never_later(readings in any_readings(), place in any_place(), by in 0.0..10.0) {
            let warmer: Vec<(i64, f64)> = readings.iter().map(|(hours, celsius)| (*hours, celsius + by)).collect();
            let warmer_place = (place.0.map(|night| night + by), place.1.map(|day| day + by));
            let end = |readings: &[(i64, f64)], place| cure_end_ms(&liner(), START, &log(readings, place)).unwrap_or(i64::MAX);
            prop_assert!(end(&warmer, warmer_place) <= end(&readings, place));
        }

        #[test]
        fn age_never_falls_and_a_milestone_is_reached_when_it_is_due(
            readings in any_readings(), place in any_place(), hours in 1.0..300.0, after in 0_i64..1000,
        ) {
            let climate = log(&readings, place);
            let pace = Pace::of(&liner());
            let moments: Vec<i64> = (0..40).map(|step| START + step * 7 * HOUR + step * after).collect();
            let ages = ages_at(&pace, START, &moments, &climate);
            prop_assert!(ages.windows(2).all(|pair| pair[0] <= pair[1]));
            if let Some(due_ms) = when_reached(&pace, START, &[hours], &climate)[0] {
                let at_due = ages_at(&pace, START, &[due_ms], &climate)[0];
                let just_before = ages_at(&pace, START, &[due_ms - 2], &climate)[0];
                prop_assert!((at_due - hours).abs() < 1e-5 && just_before < hours, "{at_due} {just_before} {hours}");
            }
        }

        #[test]
        fn many_moments_at_once_age_as_each_alone(readings in any_readings(), place in any_place()) {
            let climate = log(&readings, place);
            let pace = Pace::of(&liner());
            let moments: Vec<i64> = (0..10).map(|step| START + step * 13 * HOUR).collect();
            let together = ages_at(&pace, START, &moments, &climate);
            for (moment, age) in moments.iter().zip(together) {
                prop_assert!((ages_at(&pace, START, &[*moment], &climate)[0] - age).abs() < 1e-9);
            }
        }
    }
}
