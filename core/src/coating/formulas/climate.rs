//! The temperature where things cure, as a log of the past and a forecast by the usual pattern of the place.
//!
//! A reading holds until the next one, but for 24 hours at most; then the place's usual nights and days take over, as a
//! wave that is warmest at 15:00 on the local clock, in steps of an hour. The pattern is our own, an assumption.

use std::f64::consts::TAU;

use crate::coating::message::CoatingMessage;
use crate::message::{ListStyle, Message};
use crate::record::{Bike, Climate, Place, Stay};
use crate::time::{Moment, ZoneShift};
use crate::units::Unit;

/// Temperature when nothing at all is known, °C. An assumption that is said wherever it serves.
pub(crate) const UNKNOWN_PLACE: f64 = 15.0;
/// How long a reading holds where the place's usual temperatures are known, milliseconds.
const HOLDS_MS: i64 = 24 * HOUR_MS;
const HOUR_MS: i64 = 3_600_000;
const MINUTE_MS: i64 = 60_000;
/// Moments are drawn in to these, 1970 and 2201, milliseconds: no log is walked through the ages, hour by hour.
const EARLIEST_MS: i64 = 0;
const LATEST_MS: i64 = 7_289_654_400_000;
/// Local hour of the day at which a place is warmest.
const WARMEST_HOUR: f64 = 15.0;

/// Temperature and humidity against time, past and to come.
#[derive(Clone, Debug, PartialEq)]
pub struct ClimateLog {
    readings: Vec<Climate>,
    usual: Usual,
    usual_humidity: Option<f64>,
    /// Temperatures that stand in for the log, earliest first.
    set: Vec<Set>,
    /// Shifts of the local clock, earliest first.
    shifts: Vec<ZoneShift>,
    now_ms: i64,
}

/// What is known of a place beside readings.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Usual {
    /// A daily wave, °C: by night, by day, and in each hour of the local day.
    Wave { night: f64, day: f64, hours: [f64; 24] },
    /// One temperature, °C.
    Steady(f64),
    /// Nothing: the readings hold on, and without readings 15 °C is assumed.
    Unknown,
}

/// From a moment on one temperature stands in for the log, or the log holds again.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Set {
    from_ms: i64,
    celsius: Option<f64>,
    /// It is only tried, not told.
    tried: bool,
}

/// A stretch of time at one temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Spell {
    pub(crate) from_ms: i64,
    pub(crate) to_ms: i64,
    pub(crate) celsius: f64,
}

impl ClimateLog {
    /// The log of a bike's place, as known at a moment.
    pub fn of(bike: &Bike, moment: &Moment) -> Self {
        Self::new(&bike.climate, &bike.place, moment)
    }

    /// The log from readings and the usual temperatures of a place.
    pub fn new(readings: &[Climate], place: &Place, moment: &Moment) -> Self {
        let mut readings: Vec<Climate> =
            readings.iter().filter(|reading| reading.celsius.is_finite()).cloned().collect();
        readings.sort_by_key(|reading| reading.from_ms);
        let usual = match (place.night_celsius, place.day_celsius) {
            (Some(night), Some(day)) => Usual::Wave { night, day, hours: wave(night, day) },
            (Some(steady), None) | (None, Some(steady)) => Usual::Steady(steady),
            (None, None) => Usual::Unknown,
        };
        let mut shifts = moment.zone.shifts.clone();
        shifts.sort_by_key(|shift| shift.from_ms);
        let now_ms = moment.now_ms.clamp(EARLIEST_MS, LATEST_MS);
        Self { readings, usual, usual_humidity: place.humidity, set: Vec::new(), shifts, now_ms }
    }

    /// The same log with one temperature from now on.
    pub fn with_from_now(mut self, celsius: f64) -> Self {
        self.set.retain(|set| set.from_ms < self.now_ms);
        self.set.push(Set { from_ms: self.now_ms, celsius: Some(celsius), tried: true });
        self
    }

    /// The same log for something that is carried to other places.
    pub fn with_stays(&self, stays: &[Stay]) -> Self {
        let told = |stay: &Stay| Set { from_ms: stay.from_ms, celsius: stay.holds(), tried: false };
        let mut set: Vec<Set> = self.set.iter().copied().chain(stays.iter().map(told)).collect();
        set.sort_by_key(|set| set.from_ms);
        Self { set, ..self.clone() }
    }

    /// The same log as seen at another moment.
    pub(crate) fn seen_at(self, now_ms: i64) -> Self {
        Self { now_ms: now_ms.clamp(EARLIEST_MS, LATEST_MS), ..self }
    }

    /// Whether it stands elsewhere at a moment, so that the air of the garage says nothing.
    pub(crate) fn is_elsewhere_at(&self, at_ms: i64) -> bool {
        self.set_at(at_ms).is_some_and(|set| set.celsius.is_some() && !set.tried)
    }

    fn set_at(&self, at_ms: i64) -> Option<&Set> {
        let begun = self.set.partition_point(|set| set.from_ms <= at_ms);
        begun.checked_sub(1).and_then(|place| self.set.get(place))
    }

    /// Now, milliseconds since 1970 (UTC).
    pub fn now_ms(&self) -> i64 {
        self.now_ms
    }

    /// Temperature at a moment, °C.
    pub fn celsius_at(&self, at_ms: i64) -> f64 {
        self.spell_from(at_ms).celsius
    }

    /// Relative humidity at a moment, per cent, where it is known: from a reading of the 24 hours before, else as is
    /// usual at the place.
    pub fn humidity_at(&self, at_ms: i64) -> Option<f64> {
        let fresh = self.reading_before(at_ms).filter(|reading| at_ms.saturating_sub(reading.from_ms) < HOLDS_MS);
        fresh.and_then(|reading| reading.humidity).or(self.usual_humidity)
    }

    /// What the temperatures rest on where no reading holds, in words for the working.
    pub fn basis(&self) -> Message {
        let at = |celsius| Unit::Celsius.of(celsius);
        let mut said: Vec<Message> = vec![
            match self.usual {
                Usual::Wave { night, day, .. } => CoatingMessage::BasisWave { night: at(night), day: at(day) },
                Usual::Steady(steady) => CoatingMessage::BasisSteady { celsius: at(steady) },
                Usual::Unknown if self.readings.is_empty() => {
                    CoatingMessage::BasisAssumed { celsius: at(UNKNOWN_PLACE) }
                }
                Usual::Unknown => CoatingMessage::BasisReadings,
            }
            .into(),
        ];
        if self.set.iter().any(|set| set.celsius.is_some() && !set.tried) {
            said.push(CoatingMessage::BasisElsewhere.into());
        }
        if let Some(celsius) = self.set.last().filter(|set| set.tried).and_then(|set| set.celsius) {
            said.push(CoatingMessage::BasisTried { celsius: at(celsius) }.into());
        }
        Message::joined(ListStyle::Sentences, said)
    }

    /// Nothing is known: neither a reading, nor the usual temperatures, nor one that is tried.
    pub fn is_guessed(&self) -> bool {
        self.readings.is_empty() && self.usual == Usual::Unknown && !self.set.iter().any(|set| set.celsius.is_some())
    }

    /// The stretches at one temperature from one moment to another, without a gap.
    pub(crate) fn spells(&self, from_ms: i64, to_ms: i64) -> impl Iterator<Item = Spell> {
        let (mut at_ms, to_ms) = (from_ms.max(EARLIEST_MS), to_ms.min(LATEST_MS));
        std::iter::from_fn(move || {
            if at_ms >= to_ms {
                return None;
            }
            let spell = self.spell_from(at_ms);
            at_ms = spell.to_ms;
            Some(Spell { to_ms: spell.to_ms.min(to_ms), ..spell })
        })
    }

    /// The stretches between two moments in which temperature and humidity suit, in order.
    pub(crate) fn suits(&self, (from_ms, to_ms): (i64, i64), ok: impl Fn(f64, Option<f64>) -> bool) -> Vec<(i64, i64)> {
        let mut found: Vec<(i64, i64)> = Vec::new();
        for spell in self.spells(from_ms, to_ms) {
            // A reading of the humidity may hold for a shorter time than the temperature.
            let mut at_ms = spell.from_ms;
            while at_ms < spell.to_ms {
                let ends_ms = at_ms.saturating_add(HOUR_MS).min(spell.to_ms);
                match (ok(spell.celsius, self.humidity_at(at_ms)), found.last_mut()) {
                    (true, Some(last)) if last.1 == at_ms => last.1 = ends_ms,
                    (true, _) => found.push((at_ms, ends_ms)),
                    (false, _) => {}
                }
                at_ms = ends_ms;
            }
        }
        found
    }

    /// The warmest that it gets from a moment on, °C; none while readings still have a say.
    ///
    /// With it a coat that the usual temperatures never wake is known to stand still, without walking on.
    pub(crate) fn warmest_from(&self, at_ms: i64) -> Option<f64> {
        let readings_end_ms = self.readings.last().map_or(EARLIEST_MS, |last| last.from_ms.saturating_add(HOLDS_MS));
        let set_has_a_say = self.set.last().is_some_and(|last| last.celsius.is_some() || last.from_ms > at_ms);
        if at_ms < readings_end_ms || set_has_a_say {
            return None;
        }
        Some(match self.usual {
            Usual::Wave { night, day, .. } => night.max(day),
            Usual::Steady(steady) => steady,
            Usual::Unknown => self.celsius_at(at_ms),
        })
    }

    /// The coldest that a usual day gets, °C; none where one temperature is usual, or tried.
    pub(crate) fn coldest_of_day(&self) -> Option<f64> {
        match self.usual {
            Usual::Wave { night, day, .. } if self.set_at(self.now_ms).and_then(|set| set.celsius).is_none() => {
                Some(night.min(day))
            }
            Usual::Wave { .. } | Usual::Steady(_) | Usual::Unknown => None,
        }
    }

    /// The stretch at one temperature that begins at a moment.
    fn spell_from(&self, at_ms: i64) -> Spell {
        let begun = self.set.partition_point(|set| set.from_ms <= at_ms);
        let next_ms = self.set.get(begun).map_or(i64::MAX, |set| set.from_ms);
        if let Some(celsius) = self.set_at(at_ms).and_then(|set| set.celsius) {
            return Spell { from_ms: at_ms, to_ms: next_ms, celsius };
        }
        let unset = self.unset_from(at_ms);
        Spell { to_ms: unset.to_ms.min(next_ms), ..unset }
    }

    fn unset_from(&self, at_ms: i64) -> Spell {
        let spell = |to_ms, celsius| Spell { from_ms: at_ms, to_ms, celsius };
        let begun = self.readings.partition_point(|reading| reading.from_ms <= at_ms);
        let next_ms = self.readings.get(begun).map_or(i64::MAX, |reading| reading.from_ms);
        let last = begun.checked_sub(1).and_then(|place| self.readings.get(place));
        if self.usual == Usual::Unknown {
            // Nothing better is known than the reading before, or else the first one to come.
            let held = last.or_else(|| self.readings.first());
            return spell(next_ms, held.map_or(UNKNOWN_PLACE, |reading| reading.celsius));
        }
        let fresh = last.filter(|reading| at_ms < reading.from_ms.saturating_add(HOLDS_MS));
        if let Some(reading) = fresh {
            return spell(next_ms.min(reading.from_ms.saturating_add(HOLDS_MS)), reading.celsius);
        }
        match self.usual {
            Usual::Wave { day, hours, .. } => {
                let (hour, hour_ends_ms) = self.local_hour(at_ms);
                spell(next_ms.min(hour_ends_ms), hours.get(hour).copied().unwrap_or(day))
            }
            Usual::Steady(steady) => spell(next_ms, steady),
            Usual::Unknown => spell(next_ms, UNKNOWN_PLACE),
        }
    }

    fn reading_before(&self, at_ms: i64) -> Option<&Climate> {
        let begun = self.readings.partition_point(|reading| reading.from_ms <= at_ms);
        begun.checked_sub(1).and_then(|place| self.readings.get(place))
    }

    /// The hour of the local day at a moment, and the moment at which it ends.
    fn local_hour(&self, at_ms: i64) -> (usize, i64) {
        let begun = self.shifts.partition_point(|shift| shift.from_ms <= at_ms);
        let shift = begun.checked_sub(1).and_then(|place| self.shifts.get(place)).or(self.shifts.first());
        let ahead_ms = shift.map_or(0, |shift| i64::from(shift.offset_minutes) * MINUTE_MS);
        let hours = at_ms.saturating_add(ahead_ms).div_euclid(HOUR_MS);
        let ends_ms = (hours + 1).saturating_mul(HOUR_MS).saturating_sub(ahead_ms);
        let next_shift_ms = self.shifts.get(begun).map_or(i64::MAX, |shift| shift.from_ms);
        let hour = usize::try_from(hours.rem_euclid(24)).unwrap_or_default();
        (hour, ends_ms.min(next_shift_ms).max(at_ms.saturating_add(1)))
    }
}

/// Usual temperature in each hour of the local day: a cosine through the coldest and the warmest, warmest at 15:00.
fn wave(night: f64, day: f64) -> [f64; 24] {
    std::array::from_fn(|hour| {
        let from_warmest = hour as f64 + 0.5 - WARMEST_HOUR;
        0.5 * (night + day) + 0.5 * (day - night) * (TAU * from_warmest / 24.0).cos()
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::time::Zone;

    /// Thursday 1 January 2026, 00:00 UTC.
    const NEW_YEAR: i64 = 1_767_225_600_000;

    fn log(readings: &[(i64, f64)], place: (Option<f64>, Option<f64>), ahead_minutes: i32) -> ClimateLog {
        let readings: Vec<Climate> = readings
            .iter()
            .map(|&(hours, celsius)| Climate { from_ms: NEW_YEAR + hours * HOUR_MS, celsius, humidity: Some(60.0) })
            .collect();
        let place = Place { night_celsius: place.0, day_celsius: place.1, humidity: Some(75.0) };
        let shifts = vec![ZoneShift { from_ms: 0, offset_minutes: ahead_minutes }];
        let zone = Zone { name: "Somewhere".to_owned(), shifts };
        ClimateLog::new(&readings, &place, &Moment { now_ms: NEW_YEAR, zone })
    }

    fn at(log: &ClimateLog, hours: f64) -> f64 {
        log.celsius_at(NEW_YEAR + (hours * HOUR_MS as f64) as i64)
    }

    #[test]
    fn a_reading_holds_until_the_next_but_for_a_day_at_most_and_then_the_usual_pattern_takes_over() {
        let log = log(&[(0, 11.0), (6, 13.0)], (Some(5.0), Some(5.0)), 0);
        assert_eq!(
            [-0.1, 0.0, 5.99, 6.0, 29.99, 30.0].map(|hours| at(&log, hours)),
            [5.0, 11.0, 11.0, 13.0, 13.0, 5.0]
        );
    }

    #[test]
    fn without_usual_temperatures_the_nearest_reading_holds_on() {
        let log = log(&[(0, 11.0), (6, 13.0)], (None, None), 0);
        assert_eq!([-50.0, 3.0, 6.0, 500.0].map(|hours| at(&log, hours)), [11.0, 11.0, 13.0, 13.0]);
        assert!(!log.is_guessed());
    }

    #[test]
    fn when_nothing_is_known_15_degrees_are_assumed_and_it_is_said() {
        let log = log(&[], (None, None), 0);
        assert_eq!(at(&log, 3.0), 15.0);
        assert!(log.is_guessed() && log.basis().english().contains("15 °C assumed"));
        assert!(!log.with_from_now(20.0).is_guessed());
    }

    #[test]
    fn the_daily_wave_is_warmest_at_three_by_the_local_clock_and_has_the_usual_temperatures_as_its_ends() {
        for ahead_minutes in [0, 330, -480] {
            let log = log(&[], (Some(4.0), Some(16.0)), ahead_minutes);
            let local = |hours: f64| at(&log, hours - f64::from(ahead_minutes) / 60.0);
            let warmest = local(14.75);
            assert!((15.9..=16.0).contains(&warmest) && (4.0..=4.1).contains(&local(2.75)));
            assert!((0..24).all(|hour| local(f64::from(hour) + 0.25) <= warmest));
            let mean: f64 = (0..24).map(|hour| local(f64::from(hour) + 0.25)).sum::<f64>() / 24.0;
            assert!((mean - 10.0).abs() < 1e-9);
        }
    }

    #[test]
    fn a_temperature_that_is_tried_holds_from_now_on_and_leaves_the_past_alone() {
        let log = log(&[(-10, 8.0)], (Some(5.0), Some(5.0)), 0).with_from_now(22.0);
        assert_eq!([-1.0, 0.0, 100.0].map(|hours| at(&log, hours)), [8.0, 22.0, 22.0]);
    }

    #[test]
    fn humidity_comes_from_a_reading_of_the_day_before_else_from_what_is_usual() {
        let log = log(&[(0, 11.0)], (None, None), 0);
        let humidity = |hours: i64| log.humidity_at(NEW_YEAR + hours * HOUR_MS);
        assert_eq!([-1, 0, 23, 24].map(humidity), [Some(75.0), Some(60.0), Some(60.0), Some(75.0)]);
    }

    #[test]
    fn spells_follow_each_other_without_a_gap_and_end_where_asked_even_where_the_clock_is_put_forward() {
        let mut log = log(&[(40, 11.0), (90, 3.0)], (Some(5.0), Some(15.0)), 60);
        log.shifts.push(ZoneShift { from_ms: NEW_YEAR + 20 * HOUR_MS + 1_800_000, offset_minutes: 120 });
        let (from_ms, to_ms) = (NEW_YEAR + 123, NEW_YEAR + 200 * HOUR_MS + 7);
        let spells: Vec<Spell> = log.spells(from_ms, to_ms).collect();
        assert_eq!((spells[0].from_ms, spells[spells.len() - 1].to_ms), (from_ms, to_ms));
        assert!(spells.windows(2).all(|pair| pair[0].to_ms == pair[1].from_ms && pair[0].from_ms < pair[0].to_ms));
        for spell in spells {
            assert_eq!(log.celsius_at(spell.to_ms - 1), spell.celsius);
        }
    }
}
