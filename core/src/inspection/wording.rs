//! Numbers and limits in trade words: “148 /min is above 120 /min”.
//!
//! A number is shown with the decimals of its unit, and with more where fewer would hide which side of a limit it
//! lies on: 0.96 mm against 1.0 mm must not read “1.0 mm is below 1.0 mm”.

use super::Limit;
use crate::units::Unit;

/// Most decimals shown.
const MOST_DECIMALS: u32 = 4;

/// A measured value as it was read.
pub(super) fn reading(value: f64, unit: Unit) -> String {
    with_unit(value, unit, |rounded| (rounded - value).abs() < 1e-9)
}

/// A worked-out value, rounded as far as its limit allows.
pub(super) fn derived(value: f64, unit: Unit, limit: &Limit) -> String {
    with_unit(value, unit, |rounded| limit.keeps(rounded) == limit.keeps(value))
}

/// How a value lies against a limit.
pub(super) fn against(shown: &str, value: f64, unit: Unit, limit: &Limit) -> String {
    match (limit.min, limit.max) {
        (Some(min), _) if value < min => format!("{shown} is below {}", reading(min, unit)),
        (_, Some(max)) if value > max => format!("{shown} is above {}", reading(max, unit)),
        _ if limit.min.is_some() && limit.max.is_some() => format!("{shown} is within {}", limit_in_words(unit, limit)),
        _ => format!("{shown} is {}", limit_in_words(unit, limit)),
    }
}

/// The limit by itself: “at least 1.0 mm”, “60 to 120 /min”.
pub(super) fn limit_in_words(unit: Unit, limit: &Limit) -> String {
    match (limit.min, limit.max) {
        (Some(min), Some(max)) => format!("{} to {}", bare(min, unit), reading(max, unit)),
        (Some(min), None) => format!("at least {}", reading(min, unit)),
        (None, Some(max)) => format!("at most {}", reading(max, unit)),
        (None, None) => "no limit".to_owned(),
    }
}

/// The unit where no number stands before it.
pub(super) fn unit_name(unit: Unit) -> String {
    match unit {
        Unit::FlashesMinute => "flashes a minute".to_owned(),
        Unit::Percent => "per cent".to_owned(),
        Unit::Minute => "minutes".to_owned(),
        other => other.symbol().to_owned(),
    }
}

fn bare(value: f64, unit: Unit) -> String {
    reading(value, unit).trim_end_matches(unit.symbol()).trim_end().to_owned()
}

fn with_unit(value: f64, unit: Unit, close_enough: impl Fn(f64) -> bool) -> String {
    let least = unit.card().decimals;
    let text = (least..MOST_DECIMALS)
        .map(|decimals| format!("{value:.*}", decimals as usize))
        .find(|text| text.parse().is_ok_and(&close_enough))
        .unwrap_or_else(|| format!("{value:.*}", MOST_DECIMALS as usize));
    format!("{text} {}", unit.symbol()).trim_end().to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    const TREAD: Limit = Limit { min: Some(1.0), max: None };
    const FLASHES: Limit = Limit { min: Some(60.0), max: Some(120.0) };

    #[test]
    fn a_value_that_fails_by_a_hair_is_not_rounded_onto_the_limit() {
        let shown = reading(0.96, Unit::Millimetre);
        assert_eq!(against(&shown, 0.96, Unit::Millimetre, &TREAD), "0.96 mm is below 1.0 mm");
        let shown = derived(120.04, Unit::FlashesMinute, &FLASHES);
        assert_eq!(against(&shown, 120.04, Unit::FlashesMinute, &FLASHES), "120.04 /min is above 120 /min");
    }

    #[test]
    fn a_worked_out_value_is_rounded_to_its_unit() {
        assert_eq!(derived(86.352_7, Unit::KilometreHour, &Limit::default()), "86 km/h");
        assert_eq!(derived(147.8, Unit::FlashesMinute, &FLASHES), "148 /min");
    }

    #[test]
    fn limits_are_said_as_the_trade_says_them() {
        assert_eq!(limit_in_words(Unit::Millimetre, &TREAD), "at least 1.0 mm");
        assert_eq!(limit_in_words(Unit::FlashesMinute, &FLASHES), "60 to 120 /min");
        assert_eq!(limit_in_words(Unit::Millimetre, &Limit { min: None, max: Some(4.0) }), "at most 4.0 mm");
        assert_eq!(against("90 /min", 90.0, Unit::FlashesMinute, &FLASHES), "90 /min is within 60 to 120 /min");
    }
}
