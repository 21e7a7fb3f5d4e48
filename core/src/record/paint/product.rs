//! What is on the can or the data sheet.

use layshaft_wire::wire;

/// How far a coat is.
#[wire(stored)]
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
#[wire(stored)]
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
#[wire(lenient, stored)]
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
