//! Values against limits in trade words: “148 /min is above 120 /min”.
//!
//! Readings and limits are shown as exact as they were entered. A worked-out value is rounded to the decimals of its unit,
//! and to more where fewer would hide which side of a limit it lies on: 0.96 mm against 1.0 mm must not read “1 mm is below
//! 1 mm”.

use super::Limit;
use super::message::{InspectionMessage, PackMessage};
use crate::message::{Measure, Message};
use crate::units::Unit;

/// Most decimals shown.
const MOST_DECIMALS: u32 = 4;

/// A worked-out value, rounded as far as its limit allows.
pub(super) fn derived(value: f64, unit: Unit, limit: &Limit) -> Measure {
    let rounded = |decimals: u32| {
        let scale = 10.0_f64.powi(decimals as i32);
        (value * scale).round() / scale
    };
    let close_enough = |rounded: &f64| limit.keeps(*rounded) == limit.keeps(value);
    let least = unit.card().decimals;
    unit.of((least..MOST_DECIMALS).map(rounded).find(close_enough).unwrap_or_else(|| rounded(MOST_DECIMALS)))
}

/// How a value lies against a limit. It is shown as `shown`, which may be rounded.
pub(super) fn against(shown: Measure, value: f64, limit: &Limit) -> Message {
    let (unit, of) = (shown.unit, shown);
    match (limit.min, limit.max) {
        (Some(min), _) if value < min => InspectionMessage::Below { value: of, limit: unit.of(min) },
        (_, Some(max)) if value > max => InspectionMessage::Above { value: of, limit: unit.of(max) },
        (Some(min), Some(max)) => InspectionMessage::Within { value: of, min: unit.of(min), max: unit.of(max) },
        (Some(min), None) => InspectionMessage::KeepsLeast { value: of, limit: unit.of(min) },
        (None, Some(max)) => InspectionMessage::KeepsMost { value: of, limit: unit.of(max) },
        (None, None) => InspectionMessage::Unlimited { value: of },
    }
    .into()
}

/// The limit by itself: “at least 1 mm”, “60 to 120 /min”.
pub(super) fn limit_in_words(unit: Unit, limit: &Limit) -> Message {
    match (limit.min, limit.max) {
        (Some(min), Some(max)) => InspectionMessage::LimitBetween { min: unit.of(min), max: unit.of(max) },
        (Some(min), None) => InspectionMessage::LimitLeast { limit: unit.of(min) },
        (None, Some(max)) => InspectionMessage::LimitMost { limit: unit.of(max) },
        (None, None) => InspectionMessage::LimitNone,
    }
    .into()
}

/// The unit where no number stands before it.
pub(super) fn unit_name(unit: Unit) -> Message {
    match unit {
        Unit::FlashesMinute => PackMessage::UnitFlashes.into(),
        Unit::Percent => PackMessage::UnitPercent.into(),
        Unit::Minute => PackMessage::UnitMinutes.into(),
        other => Message::as_entered(other.symbol()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TREAD: Limit = Limit { min: Some(1.0), max: None };
    const FLASHES: Limit = Limit { min: Some(60.0), max: Some(120.0) };

    #[test]
    fn a_value_that_fails_by_a_hair_is_not_rounded_onto_the_limit() {
        assert_eq!(against(Unit::Millimetre.of(0.96), 0.96, &TREAD), "0.96 mm is below 1 mm");
        let shown = derived(0.96, Unit::Millimetre, &TREAD);
        assert_eq!(against(shown, 0.96, &TREAD), "0.96 mm is below 1 mm");
        let shown = derived(120.04, Unit::FlashesMinute, &FLASHES);
        assert_eq!(against(shown, 120.04, &FLASHES), "120.04 /min is above 120 /min");
    }

    #[test]
    fn a_worked_out_value_is_rounded_to_its_unit() {
        assert_eq!(derived(86.352_7, Unit::KilometreHour, &Limit::default()), Unit::KilometreHour.of(86.0));
        assert_eq!(derived(147.8, Unit::FlashesMinute, &FLASHES), Unit::FlashesMinute.of(148.0));
    }

    #[test]
    fn limits_are_said_as_the_trade_says_them() {
        assert_eq!(limit_in_words(Unit::Millimetre, &TREAD), "at least 1 mm");
        assert_eq!(limit_in_words(Unit::FlashesMinute, &FLASHES), "60 to 120 /min");
        assert_eq!(limit_in_words(Unit::Millimetre, &Limit { min: None, max: Some(4.5) }), "at most 4.5 mm");
        let shown = Unit::FlashesMinute.of(90.0);
        assert_eq!(against(shown, 90.0, &FLASHES), "90 /min is within 60 to 120 /min");
    }
}
