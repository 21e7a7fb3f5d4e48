//! A second time of a data sheet at another temperature, and how strongly the cure then depends on temperature.

use super::message::PaintMessage;
use super::product::Product;
use crate::bounds::{self, Bound};
use crate::error::Refused;
use crate::message::FieldMessage;
use crate::units::Unit;

/// 0 °C, kelvin.
const ZERO_CELSIUS: f64 = 273.15;

/// Activation temperature from two times of one sheet at two temperatures, kelvin.
///
/// `Q = ln(t1/t2) / (1/T1 - 1/T2)`, t in hours, T in kelvin (given in °C): the inverse of [`rate_factor`]. None unless
/// the warmer time is the shorter one.
///
/// ```
/// use layshaft_core::record::activation;
/// use layshaft_core::coating::rate_factor;
/// let found = activation((48.0, 10.0), (24.0, 20.0)).unwrap();
/// assert!((rate_factor(10.0, 20.0, found) - 0.5).abs() < 1e-12);
/// assert_eq!(activation((24.0, 10.0), (24.0, 20.0)), None);
/// ```
pub fn activation((hours, celsius): (f64, f64), (other_hours, other_celsius): (f64, f64)) -> Option<f64> {
    let inverse = 1.0 / (celsius + ZERO_CELSIUS) - 1.0 / (other_celsius + ZERO_CELSIUS);
    let found = (hours / other_hours).ln() / inverse;
    (found.is_finite() && found > 0.0).then_some(found)
}

/// Two temperatures of a sheet closer than this say nothing about how it depends on temperature, kelvin.
const APART: f64 = 3.0;

/// The activation temperature from the two temperatures of a sheet, kelvin; none without a second one.
pub(crate) fn from_two(product: &Product) -> Option<f64> {
    let second = (product.second_hours?, product.second_celsius?);
    activation((first_hours(product)?, product.at_celsius?), second)
}

/// The time at the reference temperature that the second one is compared with, hours.
pub(crate) fn first_hours(product: &Product) -> Option<f64> {
    match product.second_of {
        Some(state) => product.hours_to(state),
        None => product.end_hours(),
    }
}

/// Refuses a second temperature that says nothing or that no paint can have.
pub(crate) fn check(product: &Product) -> Result<(), Refused> {
    let second = |field, label, bound: Bound, value| bound.named(field, label).check_known(value);
    let celsius =
        second("secondCelsius", FieldMessage::SecondTemperature, bounds::TEMPERATURE, product.second_celsius)?;
    let hours =
        second("secondHours", FieldMessage::TimeAtTheSecondTemperature, bounds::CURE_HOURS, product.second_hours)?;
    let missing = |field: &str, label: FieldMessage, help: PaintMessage| {
        Err(Refused::Missing { field: field.to_owned(), label: label.into(), help: help.into() })
    };
    let (celsius, hours) = match (celsius, hours) {
        (None, None) => return Ok(()),
        (Some(_), None) => {
            return missing("secondHours", FieldMessage::TimeAtTheSecondTemperature, PaintMessage::EnterFromSheet);
        }
        (None, Some(_)) => {
            return missing("secondCelsius", FieldMessage::SecondTemperature, PaintMessage::EnterFromSheet);
        }
        (Some(celsius), Some(hours)) => (celsius, hours),
    };
    let Some(at) = product.at_celsius else {
        return missing("atCelsius", FieldMessage::TemperatureOfTheTimes, PaintMessage::EnterFirstTemperature);
    };
    let Some(first) = first_hours(product) else {
        return missing("secondHours", FieldMessage::TimeAtTheFirstTemperature, PaintMessage::EnterFirstTime);
    };
    let conflict =
        |field: &str, reason: PaintMessage| Err(Refused::Conflict { field: field.to_owned(), reason: reason.into() });
    let (second_celsius, first_celsius) = (Unit::Celsius.of(celsius), Unit::Celsius.of(at));
    let (second_hours, first_hours) = (Unit::Hour.of(hours), Unit::Hour.of(first));
    if (celsius - at).abs() < APART {
        return conflict(
            "secondCelsius",
            PaintMessage::TooClose { second: second_celsius, first: first_celsius, apart: Unit::Kelvin.of(APART) },
        );
    }
    match activation((first, at), (hours, celsius)) {
        None => conflict(
            "secondHours",
            PaintMessage::WarmIsQuicker { hours: second_hours, celsius: second_celsius, first_hours, first_celsius },
        ),
        Some(kelvin) if bounds::ACTIVATION.check(kelvin).is_err() => conflict(
            "secondHours",
            PaintMessage::NoPaintSo {
                hours: second_hours,
                celsius: second_celsius,
                first_hours,
                first_celsius,
                found: Unit::Kelvin.of(kelvin),
                min: Unit::Kelvin.of(bounds::ACTIVATION.min),
                max: Unit::Kelvin.of(bounds::ACTIVATION.max),
            },
        ),
        Some(_) => Ok(()),
    }
}
