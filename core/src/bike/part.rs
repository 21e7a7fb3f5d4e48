//! Parts: wanted, on their way, here, fitted, and what they cost.

use layshaft_wire::wire;

use crate::bounds;
use crate::changes::Record;
use crate::error::Refused;

/// Where a part is.
#[wire]
#[derive(Default)]
pub enum PartState {
    /// Not ordered yet.
    #[default]
    Wanted,
    /// Ordered, not here.
    Ordered,
    /// Here.
    Here,
    /// On the bike.
    Fitted,
}

/// A part.
#[wire(lenient)]
pub struct Part {
    /// What it is.
    pub title: String,
    /// Where it is.
    pub state: PartState,
    /// Price in the smallest unit of the currency (cents, pence).
    pub price_minor: Option<i32>,
    /// Currency by its ISO 4217 code.
    pub currency: Option<String>,
    /// Day on which it should come, `YYYY-MM-DD`.
    pub expected: Option<String>,
    /// Anything else.
    pub note: Option<String>,
}

impl Record for Part {
    const KIND: &'static str = "part";
}

impl Part {
    /// The part with its title trimmed, or the first field that cannot be accepted.
    pub fn checked(mut self) -> Result<Self, Refused> {
        self.title = bounds::check_title("title", "Part", &self.title)?;
        bounds::MONEY.check_known(self.price_minor.map(f64::from))?;
        if let Some(day) = &self.expected {
            crate::plan::check_day("expected", "Expected day", day)?;
        }
        Ok(self)
    }
}
