//! How strongly a cure depends on temperature: from two temperatures of one sheet, as entered, or assumed.

use layshaft_wire::wire;

use super::Product;
use super::cure::{USUAL_ACTIVATION, activation};
use crate::bounds::{self, Bound};
use crate::error::Refused;

/// Two temperatures of a sheet closer than this say nothing about how it depends on temperature, kelvin.
const APART: f64 = 3.0;

/// Where an activation temperature comes from.
#[wire]
pub enum ActivationFrom {
    /// Worked out from two temperatures of the sheet.
    TwoTemperatures,
    /// Entered as such.
    Entered,
    /// 5,000 K, an assumption.
    Assumed,
}

/// The activation temperature of a product, kelvin, and where it comes from.
///
/// ```
/// use layshaft_core::coating::{ActivationFrom, Product, activation_of};
/// let bare = Product { name: "Liner".to_owned(), full_cure_hours: Some(24.0), at_celsius: Some(20.0), ..Product::default() };
/// assert_eq!(activation_of(&bare), (5000.0, ActivationFrom::Assumed));
/// let sheet = Product { second_celsius: Some(10.0), second_hours: Some(48.0), ..bare };
/// let (kelvin, from) = activation_of(&sheet);
/// assert!((kelvin - 5753.5).abs() < 0.1 && from == ActivationFrom::TwoTemperatures);
/// ```
pub fn activation_of(product: &Product) -> (f64, ActivationFrom) {
    if let Some(entered) = product.activation_kelvin {
        return (entered, ActivationFrom::Entered);
    }
    match from_two(product) {
        Some(kelvin) => (kelvin, ActivationFrom::TwoTemperatures),
        None => (USUAL_ACTIVATION, ActivationFrom::Assumed),
    }
}

fn from_two(product: &Product) -> Option<f64> {
    let second = (product.second_hours?, product.second_celsius?);
    activation((first_hours(product)?, product.at_celsius?), second)
}

/// The time at the reference temperature that the second one is compared with, hours.
fn first_hours(product: &Product) -> Option<f64> {
    match product.second_of {
        Some(state) => product.hours_to(state),
        None => product.end_hours(),
    }
}

/// Refuses a second temperature that says nothing or that no paint can have.
pub(super) fn check(product: &Product) -> Result<(), Refused> {
    let second = |field, label, bound: Bound, value| Bound { field, label, ..bound }.check_known(value);
    let celsius = second("secondCelsius", "Second temperature", bounds::TEMPERATURE, product.second_celsius)?;
    let hours = second("secondHours", "Time at the second temperature", bounds::CURE_HOURS, product.second_hours)?;
    let missing = |field: &str, label: &str, help: &str| {
        Err(Refused::Missing { field: field.to_owned(), label: label.to_owned(), help: help.to_owned() })
    };
    let (celsius, hours) = match (celsius, hours) {
        (None, None) => return Ok(()),
        (Some(_), None) => return missing("secondHours", "Time at the second temperature", "enter it from the sheet"),
        (None, Some(_)) => return missing("secondCelsius", "Second temperature", "enter it from the sheet"),
        (Some(celsius), Some(hours)) => (celsius, hours),
    };
    let Some(at) = product.at_celsius else {
        return missing("atCelsius", "Temperature of the times", "enter it, to compare the second temperature with");
    };
    let Some(first) = first_hours(product) else {
        return missing("secondHours", "The same time at the first temperature", "enter it, to compare the two");
    };
    let conflict = |field: &str, reason: String| Err(Refused::Conflict { field: field.to_owned(), reason });
    if (celsius - at).abs() < APART {
        return conflict(
            "secondCelsius",
            format!("{celsius} °C is too close to {at} °C: two temperatures at least {APART} K apart are needed"),
        );
    }
    match activation((first, at), (hours, celsius)) {
        None => conflict(
            "secondHours",
            format!("Warm is quicker: {hours} h at {celsius} °C does not go with {first} h at {at} °C"),
        ),
        Some(kelvin) if bounds::ACTIVATION.check(kelvin).is_err() => conflict(
            "secondHours",
            format!(
                "{hours} h at {celsius} °C against {first} h at {at} °C gives an activation temperature of {kelvin:.0} K, \
                 outside {:.0} to {:.0} K: look at both times again",
                bounds::ACTIVATION.min,
                bounds::ACTIVATION.max
            ),
        ),
        Some(_) => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::coating::{CureState, rate_factor};
    use crate::error::{Code, Refusal};

    fn liner() -> Product {
        Product {
            name: "Liner".to_owned(),
            handle_hours: Some(24.0),
            full_cure_hours: Some(96.0),
            at_celsius: Some(20.0),
            ..Product::default()
        }
    }

    fn refusal(product: Product) -> (Code, String) {
        let refusal = Refusal::from(product.checked().unwrap_err());
        (refusal.code, refusal.field.unwrap_or_default())
    }

    #[test]
    fn the_second_temperature_belongs_to_the_state_that_the_sheet_names() {
        let to_handle = Product {
            second_celsius: Some(10.0),
            second_hours: Some(48.0),
            second_of: Some(CureState::Handle),
            ..liner()
        };
        let (kelvin, from) = activation_of(&to_handle);
        assert_eq!(from, ActivationFrom::TwoTemperatures);
        assert!((rate_factor(10.0, 20.0, kelvin) - 0.5).abs() < 1e-12);
        // The same hours read as full cure would make cold quicker.
        assert_eq!(refusal(Product { second_of: None, ..to_handle }), (Code::Conflict, "secondHours".to_owned()));
    }

    #[test]
    fn an_entered_activation_wins() {
        let both = Product {
            activation_kelvin: Some(7000.0),
            second_celsius: Some(10.0),
            second_hours: Some(192.0),
            ..liner()
        };
        assert_eq!(activation_of(&both), (7000.0, ActivationFrom::Entered));
    }

    #[test]
    fn half_a_second_temperature_and_one_that_says_nothing_are_refused() {
        let with = |celsius, hours| Product { second_celsius: celsius, second_hours: hours, ..liner() };
        assert_eq!(refusal(with(Some(10.0), None)), (Code::Missing, "secondHours".to_owned()));
        assert_eq!(refusal(with(None, Some(10.0))), (Code::Missing, "secondCelsius".to_owned()));
        assert_eq!(refusal(with(Some(21.0), Some(90.0))), (Code::Conflict, "secondCelsius".to_owned()));
        assert_eq!(refusal(with(Some(30.0), Some(97.0))), (Code::Conflict, "secondHours".to_owned()));
        assert_eq!(refusal(with(Some(30.0), Some(1.0))), (Code::Conflict, "secondHours".to_owned()));
        assert_eq!(refusal(with(Some(99.0), Some(40.0))), (Code::OutOfRange, "secondCelsius".to_owned()));
        let unplaced = Product { at_celsius: None, ..with(Some(10.0), Some(192.0)) };
        assert_eq!(refusal(unplaced), (Code::Missing, "atCelsius".to_owned()));
        let unnamed = Product { second_of: Some(CureState::TouchDry), ..with(Some(10.0), Some(192.0)) };
        assert_eq!(refusal(unnamed), (Code::Missing, "secondHours".to_owned()));
    }

    proptest! {
        #[test]
        fn a_cure_at_the_second_temperature_takes_what_the_sheet_says(celsius in -5.0..35.0_f64, factor in 1.15..1.9_f64) {
            prop_assume!((celsius - 20.0).abs() >= 4.0);
            let hours = if celsius < 20.0 { 96.0 * factor } else { 96.0 / factor };
            let product = Product { second_celsius: Some(celsius), second_hours: Some(hours), ..liner() };
            let Ok(product) = product.checked() else { return Ok(()) };
            let (kelvin, _) = activation_of(&product);
            prop_assert!((hours * rate_factor(celsius, 20.0, kelvin) - 96.0).abs() < 1e-6);
        }
    }
}
