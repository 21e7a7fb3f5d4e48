//! The charging tests: rested, at idle, at 5,000 rpm, with their limits and what each pattern of failures means.
//!
//! Limits: service manuals (14.0 to 15.5 V at 5,000 rpm seen; “above the rested voltage” seen), halved for 6 V.

use layshaft_wire::wire;

use super::message::ChargingMessage;
use crate::bounds;
use crate::message::Message;
use crate::quantity::{Source, Standing};

/// Least rested voltage of a good battery, for every 12 V: three quarters full in the table of rested voltages.
const RESTED_FROM: f64 = 12.4;
/// Voltage of six cells below which a rested battery is flat.
const RESTED_FLAT: f64 = 11.9;
/// Limits at 5,000 rpm, for every 12 V.
const FAST: (f64, f64) = (14.0, 15.5);
/// How much the voltage must rise from idle to 5,000 rpm to show that the alternator gives anything, for every 12 V.
const RISES: f64 = 0.3;
/// Greatest current with the key off, milliamperes: a service manual allows 1.5 mA.
pub(crate) const DRAIN_MILLIAMPERES: f64 = 1.5;

/// Most that a battery of so many cells shows at rest, volts. More is another battery: a full cell rests at 2.12 V (0.84 + 1.28),
/// and fresh from the charger it falls from 2.4 V, at which it gasses (from memory).
pub(crate) fn most_at_rest(cells: u32) -> f64 {
    bounds::CELL_VOLTS.max * f64::from(cells)
}

/// One of the tests.
#[wire]
pub enum ChargingTest {
    /// Hours after the last ride or charge, everything off.
    Rested,
    /// Engine at idle, lights off.
    Idle,
    /// Engine at 5,000 rpm, lights off.
    Fast,
    /// Current from the battery with the key off.
    Drain,
}

/// How a test came out.
#[wire]
pub enum TestVerdict {
    /// Inside its limits.
    Good,
    /// Below.
    Low,
    /// Above.
    High,
    /// Not measured: never a pass.
    Unknown,
}

/// A test with its limits and its outcome.
#[wire]
pub struct TestLine {
    /// Which.
    pub test: ChargingTest,
    /// How to take it.
    pub how: Message,
    /// The reading, volts (milliamperes for the drain); none when not measured.
    pub reading: Option<f64>,
    /// Least that is good.
    pub from: Option<f64>,
    /// Most that is good.
    pub to: Option<f64>,
    /// Outcome.
    pub verdict: TestVerdict,
    /// A caution with it.
    pub caution: Option<Message>,
}

/// What the outcomes mean together.
#[wire]
pub enum ChargingPattern {
    /// Everything measured is good.
    Healthy,
    /// Rested too low, charging good: the battery or a drain.
    BatteryOrDrain,
    /// The voltage does not rise with the engine: nothing is charged.
    NotCharging,
    /// It rises, but not enough.
    WeakCharging,
    /// Too high at speed: it overcharges.
    Overcharging,
    /// No battery: the lamps get the voltage that they are rated for.
    LampsRight,
    /// No battery: the lamps get too much.
    LampsTooBright,
    /// No battery: the lamps get too little.
    LampsTooDim,
    /// Too little was measured.
    NotEnoughKnown,
}

/// The rested, idle and fast voltages as measured, for a system voltage.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Readings {
    pub(crate) rested: Option<f64>,
    pub(crate) idle: Option<f64>,
    pub(crate) fast: Option<f64>,
    pub(crate) scale: f64,
}

/// The limits of a test, volts: rested at least 12.4, idle above rested, 5,000 rpm 14.0 to 15.5, all for 12 V.
///
/// ```
/// use layshaft_core::electrical::{ChargingTest, charging_limits};
/// assert_eq!(charging_limits(ChargingTest::Fast, 12.0, None), (Some(14.0), Some(15.5)));
/// assert_eq!(charging_limits(ChargingTest::Fast, 6.0, None), (Some(7.0), Some(7.75)));
/// assert_eq!(charging_limits(ChargingTest::Idle, 12.0, Some(12.5)), (Some(12.5), Some(15.5)));
/// ```
pub fn charging_limits(test: ChargingTest, system_volts: f64, rested: Option<f64>) -> (Option<f64>, Option<f64>) {
    let scale = system_volts / 12.0;
    match test {
        ChargingTest::Rested => (Some(RESTED_FROM * scale), None),
        ChargingTest::Idle => (rested, Some(FAST.1 * scale)),
        ChargingTest::Fast => (Some(FAST.0 * scale), Some(FAST.1 * scale)),
        ChargingTest::Drain => (None, Some(DRAIN_MILLIAMPERES)),
    }
}

/// A reading against limits; what is not measured is unknown, and so is a limit that is not known on either side.
pub(crate) fn verdict(reading: Option<f64>, (from, to): (Option<f64>, Option<f64>)) -> TestVerdict {
    let Some(reading) = reading else { return TestVerdict::Unknown };
    if from.is_some_and(|from| reading < from - 1e-9) {
        TestVerdict::Low
    } else if to.is_some_and(|to| reading > to + 1e-9) {
        TestVerdict::High
    } else {
        TestVerdict::Good
    }
}

impl Readings {
    /// What they mean together, and what to do next.
    pub(crate) fn pattern(&self) -> (ChargingPattern, ChargingMessage) {
        use ChargingPattern::{BatteryOrDrain, Healthy, NotCharging, NotEnoughKnown, Overcharging, WeakCharging};
        let scaled = |volts: f64| volts * self.scale;
        let Some(fast) = self.fast else { return (NotEnoughKnown, ChargingMessage::FastNotMeasured) };
        if fast > scaled(FAST.1) {
            return (Overcharging, ChargingMessage::TooHigh);
        }
        if fast < scaled(FAST.0) {
            return match self.idle.or(self.rested) {
                None => (NotEnoughKnown, ChargingMessage::TooLow),
                Some(from) if fast < from + scaled(RISES) => (NotCharging, ChargingMessage::DoesNotRise),
                Some(_) => (WeakCharging, ChargingMessage::RisesTooLittle),
            };
        }
        match self.rested {
            None => (NotEnoughKnown, ChargingMessage::RestedNotMeasured),
            Some(rested) if rested < scaled(RESTED_FLAT) => (BatteryOrDrain, ChargingMessage::RestsFlat),
            Some(rested) if rested < scaled(RESTED_FROM) => (BatteryOrDrain, ChargingMessage::RestsLow),
            Some(_) if self.idle.is_none() => (NotEnoughKnown, ChargingMessage::IdleNotMeasured),
            Some(rested) if self.idle.is_some_and(|idle| idle < rested) => (WeakCharging, ChargingMessage::FallsAtIdle),
            Some(_) => (Healthy, ChargingMessage::Healthy),
        }
    }
}

/// Where the limits come from.
pub(crate) fn limit_sources() -> Vec<Source> {
    vec![
        crate::electrical::formulas::sources::regulated_volts(),
        Source::new(ChargingMessage::SourceManual, Standing::Seen),
        Source::new(ChargingMessage::SourceRested, Standing::CommonPractice),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pattern(rested: Option<f64>, idle: Option<f64>, fast: Option<f64>) -> ChargingPattern {
        Readings { rested, idle, fast, scale: 1.0 }.pattern().0
    }

    #[test]
    fn each_pattern_of_failures_has_its_meaning() {
        use ChargingPattern::*;
        for (rested, idle, fast, means) in [
            (Some(12.6), Some(13.2), Some(14.4), Healthy),
            (Some(11.6), Some(13.0), Some(14.4), BatteryOrDrain),
            (Some(12.5), Some(12.3), Some(12.4), NotCharging),
            (Some(12.5), Some(12.6), Some(13.4), WeakCharging),
            (Some(12.5), Some(12.2), Some(14.2), WeakCharging),
            (Some(12.5), Some(14.0), Some(16.2), Overcharging),
        ] {
            assert_eq!(pattern(rested, idle, fast), means, "{rested:?} {idle:?} {fast:?}");
        }
    }

    #[test]
    fn what_was_not_measured_is_never_healthy() {
        for (rested, idle, fast) in [
            (None, Some(13.2), Some(14.4)),
            (Some(12.6), None, Some(14.4)),
            (Some(12.6), Some(13.2), None),
            (None, None, Some(13.0)),
            (None, None, None),
        ] {
            assert_eq!(pattern(rested, idle, fast), ChargingPattern::NotEnoughKnown);
        }
        assert_eq!(verdict(None, (Some(14.0), Some(15.5))), TestVerdict::Unknown);
    }

    #[test]
    fn six_volts_have_half_the_limits() {
        let six = Readings { rested: Some(6.3), idle: Some(6.6), fast: Some(7.2), scale: 0.5 };
        assert_eq!(six.pattern().0, ChargingPattern::Healthy);
        assert_eq!(Readings { fast: Some(7.9), ..six }.pattern().0, ChargingPattern::Overcharging);
    }
}
