//! Which product sheets are accepted, and why others are refused.

use super::message::PaintMessage;
use super::product::Product;
use super::second_time;
use crate::bounds;
use crate::check;
use crate::error::Refused;
use crate::message::{FieldMessage, Measure};
use crate::units::Unit;

impl Product {
    /// The product with its texts trimmed, or the first field that cannot be accepted.
    ///
    /// Refused: a sheet without any time to go by, a window that closes before it opens, a coat that is handled before
    /// it is touch dry or cured before it is handled, and a lowest temperature above the one at which the times hold.
    ///
    /// ```
    /// use layshaft_core::record::Product;
    /// let can = Product { name: " Black ".to_owned(), full_cure_hours: Some(96.0), ..Product::default() };
    /// assert_eq!(can.clone().checked().unwrap().name, "Black");
    /// let shut = Product { recoat_from_hours: Some(24.0), recoat_to_hours: Some(2.0), ..can };
    /// assert!(shut.checked().is_err());
    /// ```
    pub fn checked(mut self) -> Result<Self, Refused> {
        self.name = check::check_title("name", FieldMessage::Product, &self.name)?;
        let hours = |field, label, value| bounds::CURE_HOURS.named(field, label).check_known(value);
        hours("touchDryHours", FieldMessage::TouchDry, self.touch_dry_hours)?;
        hours("recoatFromHours", FieldMessage::RecoatFrom, self.recoat_from_hours)?;
        hours("recoatToHours", FieldMessage::RecoatUntil, self.recoat_to_hours)?;
        hours("handleHours", FieldMessage::Handle, self.handle_hours)?;
        hours("fullCureHours", FieldMessage::FullCure, self.full_cure_hours)?;
        let degrees = |field, label, value| bounds::TEMPERATURE.named(field, label).check_known(value);
        degrees("atCelsius", FieldMessage::TemperatureOfTheTimes, self.at_celsius)?;
        degrees("lowestCelsius", FieldMessage::LowestTemperature, self.lowest_celsius)?;
        bounds::HUMIDITY.named("highestHumidity", FieldMessage::HighestHumidity).check_known(self.highest_humidity)?;
        bounds::ACTIVATION.check_known(self.activation_kelvin)?;
        if self.end_hours().is_none() {
            return Err(Refused::Missing {
                field: "fullCureHours".to_owned(),
                label: FieldMessage::HowLongItTakes.into(),
                help: PaintMessage::EnterATime.into(),
            });
        }
        self.check_order()?;
        second_time::check(&self)?;
        self.check_mixing()?;
        if let Some(text) = self.forbids.take().filter(|text| !text.trim().is_empty()) {
            self.forbids = Some(check::check_text("forbids", FieldMessage::WhatMustWait, &text, 200)?);
        }
        Ok(self)
    }

    /// Times that a coat cannot have.
    fn check_order(&self) -> Result<(), Refused> {
        type Reason = fn(Measure, Measure) -> PaintMessage;
        let in_order = |first: Option<f64>, then: Option<f64>, field: &str, reason: Reason| match (first, then) {
            (Some(first), Some(then)) if then < first => {
                let reason = reason(Unit::Hour.of(first), Unit::Hour.of(then)).into();
                Err(Refused::Conflict { field: field.to_owned(), reason })
            }
            _ => Ok(()),
        };
        in_order(self.recoat_from_hours, self.recoat_to_hours, "recoatToHours", |first, then| {
            PaintMessage::WindowShutFirst { first, then }
        })?;
        in_order(self.touch_dry_hours, self.handle_hours, "handleHours", |first, then| PaintMessage::HandledWet {
            first,
            then,
        })?;
        in_order(self.touch_dry_hours, self.full_cure_hours, "fullCureHours", |first, then| PaintMessage::CuredWet {
            first,
            then,
        })?;
        in_order(self.handle_hours, self.full_cure_hours, "fullCureHours", |first, then| {
            PaintMessage::CuredUnhandled { first, then }
        })?;
        match (self.lowest_celsius, self.at_celsius) {
            (Some(lowest), Some(at)) if lowest > at => Err(Refused::Conflict {
                field: "lowestCelsius".to_owned(),
                reason: PaintMessage::LowestAboveTimes { lowest: Unit::Celsius.of(lowest), at: Unit::Celsius.of(at) }
                    .into(),
            }),
            _ => Ok(()),
        }
    }

    /// Pot life, ratio, thinner, solids, film and can: each in its range, and a ratio with both of its sides.
    fn check_mixing(&self) -> Result<(), Refused> {
        bounds::POT_LIFE.check_known(self.pot_life_minutes)?;
        bounds::MIX_PARTS.check_known(self.parts_base)?;
        bounds::MIX_PARTS.named("partsHardener", FieldMessage::PartsOfHardener).check_known(self.parts_hardener)?;
        bounds::THINNER.check_known(self.thinner_percent)?;
        bounds::SOLIDS.check_known(self.solids_percent)?;
        bounds::FILM.check_known(self.dry_micrometres)?;
        bounds::SPREADING.check_known(self.spreading_rate)?;
        bounds::CAN.check_known(self.can_ml)?;
        let missing = match (self.parts_base, self.parts_hardener) {
            (Some(_), None) => "partsHardener",
            (None, Some(_)) => "partsBase",
            _ => return Ok(()),
        };
        Err(Refused::Missing {
            field: missing.to_owned(),
            label: FieldMessage::MixingRatio.into(),
            help: PaintMessage::EnterRatio.into(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::error::{Code, Refusal};
    use crate::record::CureState;

    fn can() -> Product {
        Product {
            name: "Satin black".to_owned(),
            touch_dry_hours: Some(1.0),
            recoat_from_hours: Some(2.0),
            recoat_to_hours: Some(24.0),
            handle_hours: Some(12.0),
            full_cure_hours: Some(168.0),
            at_celsius: Some(20.0),
            lowest_celsius: Some(10.0),
            ..Product::default()
        }
    }

    fn refusal(product: Product) -> (Code, Option<String>) {
        let refusal = Refusal::from(product.checked().unwrap_err());
        (refusal.code, refusal.field)
    }

    #[test]
    fn a_whole_sheet_is_accepted_and_its_stages_come_in_order_of_time() {
        let states: Vec<CureState> = can().checked().unwrap().stages().into_iter().map(|(state, _)| state).collect();
        use CureState::{Cured, Handle, RecoatOpen, RecoatShut, TouchDry, Wet};
        assert_eq!(states, [Wet, TouchDry, RecoatOpen, Handle, RecoatShut, Cured]);
    }

    #[test]
    fn sheets_that_no_coat_can_have_are_refused_at_the_field_to_mend() {
        let conflict = |field: &str| (Code::Conflict, Some(field.to_owned()));
        assert_eq!(refusal(Product { recoat_to_hours: Some(1.5), ..can() }), conflict("recoatToHours"));
        assert_eq!(refusal(Product { handle_hours: Some(0.5), ..can() }), conflict("handleHours"));
        assert_eq!(refusal(Product { full_cure_hours: Some(6.0), ..can() }), conflict("fullCureHours"));
        assert_eq!(refusal(Product { lowest_celsius: Some(25.0), ..can() }), conflict("lowestCelsius"));
    }

    #[test]
    fn a_sheet_without_any_time_is_refused_and_one_with_only_a_window_end_too() {
        let empty = Product { name: "Mystery".to_owned(), ..Product::default() };
        let missing = (Code::Missing, Some("fullCureHours".to_owned()));
        assert_eq!(refusal(empty.clone()), missing);
        assert_eq!(refusal(Product { recoat_to_hours: Some(24.0), ..empty }), missing);
    }

    #[test]
    fn numbers_outside_their_range_are_refused_with_field_range_and_unit() {
        let text = Product { touch_dry_hours: Some(-1.0), ..can() }.checked().unwrap_err().english();
        assert_eq!(text, "Touch dry: −1 h is outside 0.02 to 2 000 h");
        let out = |field: &str| (Code::OutOfRange, Some(field.to_owned()));
        assert_eq!(refusal(Product { highest_humidity: Some(0.0), ..can() }), out("highestHumidity"));
        assert_eq!(refusal(Product { activation_kelvin: Some(5.0), ..can() }), out("activationKelvin"));
        let not_a_number = Product { full_cure_hours: Some(f64::NAN), ..can() };
        assert_eq!(refusal(not_a_number), (Code::NotANumber, Some("fullCureHours".to_owned())));
        assert_eq!(refusal(Product { name: " ".to_owned(), ..can() }), (Code::BadText, Some("name".to_owned())));
    }
}
