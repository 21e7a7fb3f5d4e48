//! What the mechanic said about an item.

use super::message::PackMessage;
use super::{Item, Limit, wording};
use crate::bounds;
use crate::check;
use crate::error::Refused;
use crate::record::{AnswerWord, ItemAnswer};
use crate::units::Unit;

impl ItemAnswer {
    /// The answer with its remark trimmed, or the first field that cannot be accepted for this item.
    ///
    /// ```
    /// use layshaft_core::error::Refused;
    /// use layshaft_core::inspection::packs;
    /// use layshaft_core::record::ItemAnswer;
    /// let pack = packs().into_iter().find(|pack| pack.id == "gb").unwrap();
    /// let tread = pack.items.iter().find(|item| item.id == "tyre.front.tread").unwrap();
    /// let answer = |value| ItemAnswer { value: Some(value), ..ItemAnswer::default() };
    /// assert!(answer(3.5).checked(tread).is_ok());
    /// assert!(matches!(answer(35.0).checked(tread), Err(Refused::OutOfRange { max: 25.0, .. })));
    /// ```
    pub fn checked(mut self, item: &Item) -> Result<Self, Refused> {
        if let Some(value) = self.value {
            let Some((unit, limit)) = item.measure.value() else {
                return Err(conflict(PackMessage::InWords { item: item.title.clone() }));
            };
            if matches!(self.word, Some(AnswerWord::NotChecked | AnswerWord::DoesNotApply)) {
                return Err(conflict(PackMessage::MeasuredAndNot { value: unit.of(value) }));
            }
            plausible(unit, limit).check(value)?;
        } else if self.word.is_none() {
            return Err(Refused::Missing {
                field: "word".to_owned(),
                label: PackMessage::Answer.into(),
                help: match item.measure.value() {
                    Some((unit, _)) => PackMessage::ChooseWordOrReading { unit: wording::unit_name(unit) },
                    None => PackMessage::ChooseWord,
                }
                .into(),
            });
        }
        self.note = match self.note.as_deref().map(str::trim) {
            None | Some("") => None,
            Some(note) => Some(check::check_text("note", PackMessage::Remark, note, 600)?),
        };
        Ok(self)
    }
}

/// The range in which a reading of an item can be true at all. It catches slips of the thumb: what lies outside is
/// refused on entry, and never judged where it comes from elsewhere.
///
/// The ranges are our own; no source. A value far above a *least* is the dangerous slip, since it would pass: nothing
/// above 25 times the least is accepted (35 mm for 3.5 mm of tread).
pub(super) fn plausible(unit: Unit, limit: &Limit) -> bounds::Bound {
    let bound = match unit {
        Unit::Millimetre => bounds::LENGTH_READING,
        Unit::Percent => bounds::SHARE_READING,
        Unit::FlashesMinute => bounds::FLASH_READING,
        Unit::KilometreHour | Unit::MileHour => bounds::SPEED_READING,
        Unit::Minute => bounds::TIME_READING,
        Unit::Volt => bounds::VOLTAGE_READING,
        Unit::Rpm => bounds::ENGINE_READING,
        _ => bounds::READING.of("value"),
    };
    let roof = match limit.min {
        Some(least) if least > 0.0 => bound.max.min(least * 25.0),
        _ => bound.max,
    };
    // A user's own limit may lie beyond the table: what fails it must still be possible to enter.
    let ends = || [limit.min, limit.max].into_iter().flatten();
    let least = ends().fold(bound.min, f64::min);
    let most = ends().map(|end| end * 2.0).fold(roof, f64::max);
    bound.narrowed(least, most).measured_in(unit)
}

fn conflict(reason: PackMessage) -> Refused {
    Refused::Conflict { field: "value".to_owned(), reason: reason.into() }
}

#[cfg(test)]
#[path = "answer_tests.rs"]
mod tests;
