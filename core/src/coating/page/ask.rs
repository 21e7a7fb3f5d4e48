//! What the page of one coat is asked, what it is about, and what it answers.

use layshaft_wire::wire;

use crate::coating::formulas::{ActivationFrom, ClimateLog, Milestone};
use crate::coating::judge::OnHold;
use crate::error::Refused;
use crate::message::Message;
use crate::quantity::{Finding, Working};
use crate::record::{Bike, Coat, CureState, PaintedPart, Product, Stay};

/// What to work out: a coat of the bike by its id, or a product to try.
#[wire(lenient)]
pub struct CureAsk {
    /// A coat of the bike.
    pub coat: Option<String>,
    /// A product to try, put on now.
    pub product: Option<Product>,
    /// Temperature to try from now on, °C; left out: the log and the usual temperatures of the place.
    pub celsius: Option<f64>,
    /// Relative humidity to try, per cent.
    pub humidity: Option<f64>,
    /// Temperature of the surface, for the dew point only, °C; left out: that of the air.
    pub surface_celsius: Option<f64>,
}

/// A point of the cure curve.
#[wire]
pub struct CurePoint {
    /// When, milliseconds since 1970 (UTC).
    pub at_ms: i64,
    /// Equivalent age there, hours at the reference temperature.
    pub equivalent_hours: f64,
    /// Temperature there, °C.
    pub celsius: f64,
}

/// A cure.
#[wire]
pub struct CureAnswer {
    /// Id of the coat, when it is one of the bike.
    pub coat: Option<String>,
    /// On what.
    pub title: String,
    /// The product.
    pub product: Product,
    /// When it went on, milliseconds since 1970 (UTC).
    pub applied_ms: i64,
    /// State now.
    pub state: CureState,
    /// Equivalent age now, hours at the reference temperature.
    pub equivalent_hours: f64,
    /// Share of the full cure, per cent, 0 to 100.
    pub percent: f64,
    /// Every milestone in order of its time, with when it is or was reached.
    pub milestones: Vec<Milestone>,
    /// Hours left on the can at its reference temperature.
    pub left_hours_reference: f64,
    /// Hours left here; none when it stands still for as far as can be seen.
    pub left_hours_here: Option<f64>,
    /// Temperature that it has now, °C.
    pub celsius_now: f64,
    /// Temperature at which the times on the can hold, °C.
    pub at_celsius: f64,
    /// Below the lowest temperature: it stands still.
    pub stands_still: bool,
    /// Activation temperature that the clock runs on, kelvin.
    pub activation_kelvin: f64,
    /// Where that comes from.
    pub activation_from: ActivationFrom,
    /// Where it stands, as far as that was told.
    pub stay: Option<Stay>,
    /// What must not be done yet, and until when.
    pub on_hold: Vec<OnHold>,
    /// The process that it belongs to, by its id.
    pub process: Option<String>,
    /// The reason in one sentence: “31 h on the can at 20 °C; 53 h here at 13 °C”.
    pub reason: Message,
    /// Dew point of the air, °C, where the humidity is known.
    pub dew_point_celsius: Option<f64>,
    /// The curve from application to full cure.
    pub curve: Vec<CurePoint>,
    /// What is worth saying.
    pub findings: Vec<Finding>,
    /// How it was worked out.
    pub working: Working,
}

/// What a sheet is about.
pub(crate) struct Subject {
    pub(crate) coat: Option<String>,
    pub(crate) title: String,
    pub(crate) product: Product,
    pub(crate) applied_ms: i64,
    /// The clock was ended: the next coat is on it, or nobody asks any more.
    pub(crate) ended: bool,
    /// It is the last paint of its process: nothing is to be recoated.
    pub(crate) topmost: bool,
    pub(crate) part: PaintedPart,
    pub(crate) process: Option<String>,
    /// Where it stood and stands, earliest first.
    pub(crate) stays: Vec<Stay>,
}

/// The air and the surface as they are now.
pub(crate) struct Air {
    pub(crate) celsius: f64,
    pub(crate) humidity: Option<f64>,
    pub(crate) surface_celsius: f64,
}

impl Air {
    /// The air now. Away from the garage its humidity is not known.
    pub(crate) fn of(climate: &ClimateLog) -> Self {
        let now_ms = climate.now_ms();
        let celsius = climate.celsius_at(now_ms);
        let humidity = climate.humidity_at(now_ms).filter(|_| !climate.is_elsewhere_at(now_ms));
        Self { celsius, humidity, surface_celsius: celsius }
    }
}

impl Subject {
    /// A product that would be put on at a moment.
    pub(crate) fn of_product(product: Product, applied_ms: i64) -> Self {
        Self {
            coat: None,
            title: product.name.clone(),
            product,
            applied_ms,
            ended: false,
            topmost: false,
            part: PaintedPart::Other,
            process: None,
            stays: Vec::new(),
        }
    }

    pub(crate) fn of_coat(bike: &Bike, id: &str, coat: &Coat) -> Result<Self, Refused> {
        let process = coat.process.as_ref().and_then(|process| bike.processes.get(process));
        let coat_checked = coat.clone().checked()?;
        Ok(Self {
            coat: Some(id.to_owned()),
            title: coat_checked.title,
            product: coat_checked.product,
            applied_ms: coat_checked.applied_ms,
            ended: coat.ended_ms.is_some(),
            topmost: process.zip(coat.step).is_some_and(|(process, step)| !process.paint_follows(step)),
            part: process.map(|process| process.part).unwrap_or_default(),
            process: coat_checked.process,
            stays: sorted(coat_checked.stays),
        })
    }
}

fn sorted(mut stays: Vec<Stay>) -> Vec<Stay> {
    stays.sort_by_key(|stay| stay.from_ms);
    stays
}
