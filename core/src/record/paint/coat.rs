//! A coat that was put on: the record behind a running cure.

use layshaft_wire::wire;

use super::message::PaintMessage;
use super::product::Product;
use super::stay::Stay;
use crate::check;
use crate::error::Refused;
use crate::message::FieldMessage;
use crate::time::{Moment, check_written};

/// So far may the clocks of two devices differ, milliseconds.
const CLOCKS_DIFFER_MS: i64 = 60_000;

/// A coat on something.
#[wire(lenient, stored)]
pub struct Coat {
    /// On what: “Fuel tank, inside”.
    pub title: String,
    /// The product as it was when the coat went on.
    pub product: Product,
    /// When it went on, milliseconds since 1970 (UTC).
    pub applied_ms: i64,
    /// Job that put it on, by its id.
    pub job: Option<String>,
    /// When the next coat went on or the clock was ended, milliseconds since 1970 (UTC).
    pub ended_ms: Option<i64>,
    /// Where it stood and stands, if not in the garage all the time.
    pub stays: Vec<Stay>,
    /// The process that it belongs to, by its id.
    pub process: Option<String>,
    /// Which step of that process it is, from 0.
    pub step: Option<u32>,
}

impl Coat {
    /// The coat with its texts trimmed, or the first field that cannot be accepted.
    ///
    /// ```
    /// use layshaft_core::record::Coat;
    /// use layshaft_core::ready_made::typical_product;
    /// let product = typical_product("tank-liner").unwrap();
    /// let coat = Coat { title: "Fuel tank, inside".to_owned(), product, applied_ms: 1_775_000_000_000, ..Coat::default() };
    /// assert!(coat.clone().checked().is_ok());
    /// assert!(Coat { ended_ms: Some(0), ..coat }.checked().is_err());
    /// ```
    pub fn checked(mut self) -> Result<Self, Refused> {
        self.title = check::check_title("title", FieldMessage::OnWhat, &self.title)?;
        self.product = self.product.checked()?;
        check_written("appliedMs", FieldMessage::WhenItWentOn, Some(self.applied_ms))?;
        if self.ended_ms.is_some_and(|ended_ms| ended_ms < self.applied_ms) {
            return Err(Refused::Conflict {
                field: "endedMs".to_owned(),
                reason: PaintMessage::CoatEndsTooSoon.into(),
            });
        }
        self.stays = self.stays.into_iter().map(Stay::checked).collect::<Result<_, _>>()?;
        Ok(self)
    }
}

/// When a coat went on that is told now: just now where nothing is said; refused where it lies ahead. A minute is let
/// pass, by which two clocks may differ.
///
/// ```
/// use layshaft_core::record::went_on;
/// use layshaft_core::time::Moment;
/// let now = Moment { now_ms: 1_775_000_000_000, ..Moment::default() };
/// assert_eq!(went_on(None, &now).unwrap(), now.now_ms);
/// assert!(went_on(Some(now.now_ms + 3_600_000), &now).is_err());
/// ```
pub fn went_on(told_ms: Option<i64>, moment: &Moment) -> Result<i64, Refused> {
    let at_ms = told_ms.unwrap_or(moment.now_ms);
    if at_ms > moment.now_ms.saturating_add(CLOCKS_DIFFER_MS) {
        return Err(Refused::Unreadable {
            field: "appliedMs".to_owned(),
            label: FieldMessage::WhenItWentOn.into(),
            reason: PaintMessage::LiesAhead {
                at: moment.zone.local_time(at_ms),
                now: moment.zone.local_time(moment.now_ms),
            }
            .into(),
        });
    }
    Ok(at_ms)
}
