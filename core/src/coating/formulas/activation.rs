//! How strongly a cure depends on temperature: from two temperatures of one sheet, as entered, or assumed.

use layshaft_wire::wire;

use crate::record::{Product, from_two};

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
/// use layshaft_core::coating::{ActivationFrom, activation_of};
/// use layshaft_core::record::Product;
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

/// Activation temperature when the sheet does not give two temperatures, kelvin. An assumption.
const USUAL_ACTIVATION: f64 = 5000.0;

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::coating::formulas::cure::rate_factor;
    use crate::error::{Code, Refusal};
    use crate::record::CureState;

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
