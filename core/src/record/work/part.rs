//! Parts: wanted, on their way, here, fitted, and what they cost.

use layshaft_wire::wire;

use super::message::JobMessage;
use super::reason::JobReason;
use crate::bounds;
use crate::check;
use crate::error::Refused;
use crate::message::FieldMessage;
use crate::units::Unit;

/// Where a part is.
#[wire(stored)]
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

/// How long a delivery takes, by what the seller says and by what was seen before.
#[wire(lenient, stored)]
pub struct Delivery {
    /// Day on which it was ordered, `YYYY-MM-DD`; left out: today.
    pub ordered: Option<String>,
    /// At best, days.
    pub least_days: f64,
    /// As a rule, days.
    pub likely_days: f64,
    /// At worst, days.
    pub most_days: f64,
    /// One in ten takes longer than that, with no end to it (a customs office, another continent); left out: no.
    pub long_tail: Option<bool>,
}

impl Delivery {
    /// Where somebody begins who has no better number: a week, give or take. Judgement of our own.
    pub fn usual() -> Self {
        Self { least_days: 3.0, likely_days: 7.0, most_days: 14.0, ..Self::default() }
    }
}

/// A part.
#[wire(lenient, stored)]
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
    /// How long it may take.
    pub delivery: Option<Delivery>,
    /// Anything else.
    pub note: Option<String>,
    /// Whether it is a tool, which stays in the garage; left out: no.
    pub tool: Option<bool>,
    /// Its size as the trade writes it: `3.25-18`, `428 × 118`.
    pub size: Option<String>,
    /// What it puts right.
    pub reasons: Vec<JobReason>,
}

impl Part {
    /// Whether it is wanted and not ordered yet.
    pub fn is_to_order(&self) -> bool {
        self.state == PartState::Wanted
    }

    /// The part with its title trimmed, or the first field that cannot be accepted.
    pub fn checked(mut self) -> Result<Self, Refused> {
        self.title = check::check_title("title", FieldMessage::Part, &self.title)?;
        self.size = match self.size.as_deref().map(str::trim).filter(|size| !size.is_empty()) {
            Some(size) => Some(check::check_title("size", FieldMessage::PartSize, size)?),
            None => None,
        };
        bounds::MONEY.check_known(self.price_minor.map(f64::from))?;
        if let Some(day) = &self.expected {
            crate::time::check_day("expected", FieldMessage::ExpectedDay, day)?;
        }
        if let Some(delivery) = &self.delivery {
            delivery.check()?;
        }
        Ok(self)
    }
}

impl Delivery {
    fn check(&self) -> Result<(), Refused> {
        if let Some(day) = &self.ordered {
            crate::time::check_day("ordered", FieldMessage::DayOfTheOrder, day)?;
        }
        let least = bounds::LEAST_DAYS.check(self.least_days)?;
        let likely = bounds::LIKELY_DAYS.check(self.likely_days)?;
        let most = bounds::MOST_DAYS.check(self.most_days)?;
        if self.long_tail == Some(true) && likely <= 0.0 {
            return Err(Refused::Conflict {
                field: bounds::LIKELY_DAYS.field.to_owned(),
                reason: JobMessage::DeliveryTail.into(),
            });
        }
        if least <= likely && likely <= most {
            return Ok(());
        }
        Err(Refused::Conflict {
            field: bounds::LIKELY_DAYS.field.to_owned(),
            reason: JobMessage::DeliveryOrder {
                least: Unit::Day.of(least),
                likely: Unit::Day.of(likely),
                most: Unit::Day.of(most),
            }
            .into(),
        })
    }
}
