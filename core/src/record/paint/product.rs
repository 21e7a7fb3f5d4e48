//! What is on the can or the data sheet.

use layshaft_wire::wire;

use crate::bounds::{self, Bound};
use crate::error::Refused;

/// How far a coat is.
#[wire]
pub enum CureState {
    /// Just put on.
    Wet,
    /// Dry to the touch.
    TouchDry,
    /// May be recoated.
    RecoatOpen,
    /// Must be sanded before it is recoated.
    RecoatShut,
    /// May be handled.
    Handle,
    /// Fully cured.
    Cured,
}

/// What a product is.
#[wire]
#[derive(Default)]
pub enum ProductKind {
    /// Colour coat.
    #[default]
    Paint,
    /// Primer.
    Primer,
    /// Clear coat.
    Clear,
    /// Rust converter.
    RustConverter,
    /// Tank liner.
    TankLiner,
    /// Gasket sealant.
    Sealant,
    /// Two-part epoxy or adhesive.
    Epoxy,
    /// Thread lock.
    ThreadLock,
}

/// A product's data. Times hold at the reference temperature.
#[wire(lenient)]
pub struct Product {
    /// What it is called.
    pub name: String,
    /// What it is.
    pub product: ProductKind,
    /// Touch dry after, hours.
    pub touch_dry_hours: Option<f64>,
    /// May be recoated from, hours.
    pub recoat_from_hours: Option<f64>,
    /// May be recoated until, hours; after that it must be sanded first.
    pub recoat_to_hours: Option<f64>,
    /// May be handled after, hours.
    pub handle_hours: Option<f64>,
    /// Fully cured after, hours.
    pub full_cure_hours: Option<f64>,
    /// Temperature at which these times hold, °C.
    pub at_celsius: Option<f64>,
    /// Below this it does not cure, °C.
    pub lowest_celsius: Option<f64>,
    /// Above this humidity it must not be put on, per cent.
    pub highest_humidity: Option<f64>,
    /// Activation temperature Q = Ea/R from two temperatures of the sheet, kelvin; left out: 5,000 K, an assumption.
    pub activation_kelvin: Option<f64>,
    /// What must not be done before full cure: “Do not fit, fill or paint the tank”.
    pub forbids: Option<String>,
    /// Where the figures come from: the can, a data sheet, or a typical sheet of this program.
    pub typical: bool,
    /// A second temperature of the sheet, °C: with it the activation temperature is worked out, not assumed.
    pub second_celsius: Option<f64>,
    /// How long it takes there, hours.
    pub second_hours: Option<f64>,
    /// To which state that time runs; left out: to full cure, or to the last time that is known.
    pub second_of: Option<CureState>,
    /// Once mixed it must be used within, minutes.
    pub pot_life_minutes: Option<f64>,
    /// Parts of base.
    pub parts_base: Option<f64>,
    /// Parts of hardener.
    pub parts_hardener: Option<f64>,
    /// The parts are by weight; left out: by volume.
    pub by_weight: Option<bool>,
    /// Thinner, per cent.
    pub thinner_percent: Option<f64>,
    /// Solids by volume, per cent.
    pub solids_percent: Option<f64>,
    /// Dry film of one coat, µm.
    pub dry_micrometres: Option<f64>,
    /// What a litre covers in one coat, as printed, m²/L.
    pub spreading_rate: Option<f64>,
    /// What is in the can, mL.
    pub can_ml: Option<f64>,
}

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
        self.name = bounds::check_title("name", "Product", &self.name)?;
        let hours = |field, label, value| Bound { field, label, ..bounds::CURE_HOURS }.check_known(value);
        hours("touchDryHours", "Touch dry", self.touch_dry_hours)?;
        hours("recoatFromHours", "Recoat from", self.recoat_from_hours)?;
        hours("recoatToHours", "Recoat until", self.recoat_to_hours)?;
        hours("handleHours", "Handle", self.handle_hours)?;
        hours("fullCureHours", "Full cure", self.full_cure_hours)?;
        let degrees = |field, label, value| Bound { field, label, ..bounds::TEMPERATURE }.check_known(value);
        degrees("atCelsius", "Temperature of the times", self.at_celsius)?;
        degrees("lowestCelsius", "Lowest temperature", self.lowest_celsius)?;
        Bound { field: "highestHumidity", label: "Highest humidity", ..bounds::HUMIDITY }
            .check_known(self.highest_humidity)?;
        bounds::ACTIVATION.check_known(self.activation_kelvin)?;
        if self.end_hours().is_none() {
            return Err(Refused::Missing {
                field: "fullCureHours".to_owned(),
                label: "How long it takes".to_owned(),
                help: "enter at least one time from the can: touch dry, recoat from, handle or full cure".to_owned(),
            });
        }
        self.check_order()?;
        super::second_time::check(&self)?;
        self.check_mixing()?;
        if let Some(text) = self.forbids.take().filter(|text| !text.trim().is_empty()) {
            self.forbids = Some(bounds::check_text("forbids", "What must wait", &text, 200)?);
        }
        Ok(self)
    }

    /// Times that a coat cannot have.
    fn check_order(&self) -> Result<(), Refused> {
        let in_order = |first: Option<f64>, then: Option<f64>, field: &str, reason: &str| match (first, then) {
            (Some(first), Some(then)) if then < first => {
                let reason = format!("{reason}: {then} h is before {first} h");
                Err(Refused::Conflict { field: field.to_owned(), reason })
            }
            _ => Ok(()),
        };
        let window = "The recoat window closes before it opens";
        in_order(self.recoat_from_hours, self.recoat_to_hours, "recoatToHours", window)?;
        in_order(
            self.touch_dry_hours,
            self.handle_hours,
            "handleHours",
            "It cannot be handled before it is touch dry",
        )?;
        in_order(
            self.touch_dry_hours,
            self.full_cure_hours,
            "fullCureHours",
            "It cannot be cured before it is touch dry",
        )?;
        in_order(
            self.handle_hours,
            self.full_cure_hours,
            "fullCureHours",
            "It cannot be cured before it can be handled",
        )?;
        match (self.lowest_celsius, self.at_celsius) {
            (Some(lowest), Some(at)) if lowest > at => Err(Refused::Conflict {
                field: "lowestCelsius".to_owned(),
                reason: format!(
                    "The lowest temperature, {lowest} °C, is above the {at} °C at which the times on the can hold"
                ),
            }),
            _ => Ok(()),
        }
    }

    /// Pot life, ratio, thinner, solids, film and can: each in its range, and a ratio with both of its sides.
    fn check_mixing(&self) -> Result<(), Refused> {
        bounds::POT_LIFE.check_known(self.pot_life_minutes)?;
        bounds::MIX_PARTS.check_known(self.parts_base)?;
        Bound { field: "partsHardener", label: "Parts of hardener", ..bounds::MIX_PARTS }
            .check_known(self.parts_hardener)?;
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
            label: "Mixing ratio".to_owned(),
            help: "enter both sides of the ratio, base and hardener".to_owned(),
        })
    }

    /// The hours on the sheet at which a state begins, at the reference temperature.
    pub(crate) fn hours_to(&self, state: CureState) -> Option<f64> {
        match state {
            CureState::Wet => None,
            CureState::TouchDry => self.touch_dry_hours,
            CureState::RecoatOpen => self.recoat_from_hours,
            CureState::RecoatShut => self.recoat_to_hours,
            CureState::Handle => self.handle_hours,
            CureState::Cured => self.full_cure_hours,
        }
    }

    /// The time at which the clock ends: full cure, or the last time on the sheet when that is not known; hours.
    pub fn end_hours(&self) -> Option<f64> {
        let others = [self.handle_hours, self.recoat_from_hours, self.touch_dry_hours];
        self.full_cure_hours.or_else(|| others.into_iter().flatten().reduce(f64::max))
    }

    /// The states of a coat with the hours at which they begin, in order of time.
    pub(crate) fn stages(&self) -> Vec<(CureState, f64)> {
        let known = [
            (CureState::TouchDry, self.touch_dry_hours),
            (CureState::RecoatOpen, self.recoat_from_hours),
            (CureState::RecoatShut, self.recoat_to_hours),
            (CureState::Handle, self.handle_hours),
            (CureState::Cured, self.full_cure_hours),
        ];
        let mut stages = vec![(CureState::Wet, 0.0)];
        stages.extend(known.into_iter().filter_map(|(state, hours)| Some((state, hours?))));
        stages.sort_by(|(state, hours), (other, other_hours)| hours.total_cmp(other_hours).then(state.cmp(other)));
        stages
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::error::{Code, Refusal};

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
        let text = Product { touch_dry_hours: Some(-1.0), ..can() }.checked().unwrap_err().to_string();
        assert_eq!(text, "Touch dry: -1 h is outside 0.02 to 2000 h");
        let out = |field: &str| (Code::OutOfRange, Some(field.to_owned()));
        assert_eq!(refusal(Product { highest_humidity: Some(0.0), ..can() }), out("highestHumidity"));
        assert_eq!(refusal(Product { activation_kelvin: Some(5.0), ..can() }), out("activationKelvin"));
        let not_a_number = Product { full_cure_hours: Some(f64::NAN), ..can() };
        assert_eq!(refusal(not_a_number), (Code::NotANumber, Some("fullCureHours".to_owned())));
        assert_eq!(refusal(Product { name: " ".to_owned(), ..can() }), (Code::BadText, Some("name".to_owned())));
    }
}
