//! Whether what was given lies inside its range: numbers and texts. A refusal names field, value, range and unit.

use crate::bounds::Bound;
use crate::error::{Refused, RefusedMessage};
use crate::message::Message;

impl Bound {
    /// The value itself when it lies inside the range.
    ///
    /// ```
    /// use layshaft_core::bounds::FRONT_TEETH;
    /// assert_eq!(FRONT_TEETH.check(15.0), Ok(15.0));
    /// assert!(FRONT_TEETH.check(0.0).is_err());
    /// assert!(FRONT_TEETH.check(f64::NAN).is_err());
    /// ```
    pub fn check(&self, value: f64) -> Result<f64, Refused> {
        if (self.min..=self.max).contains(&value) { Ok(value) } else { Err(self.refused(value)) }
    }

    fn refused(&self, value: f64) -> Refused {
        let (bound, field, label) = (self.id, self.field.to_owned(), self.label.into());
        let (min, max, unit) = (self.min, self.max, self.unit);
        if value.is_finite() {
            Refused::OutOfRange { bound, field, label, value, min, max, unit }
        } else {
            Refused::NotANumber { bound, field, label, min, max, unit }
        }
    }

    /// Like [`check`](Self::check) for a value that may be unknown.
    pub fn check_known(&self, value: Option<f64>) -> Result<Option<f64>, Refused> {
        value.map(|known| self.check(known)).transpose()
    }

    /// The value, checked; when it is unknown, a refusal that says which value to enter.
    pub fn need(&self, value: Option<f64>) -> Result<f64, Refused> {
        match value {
            Some(known) => self.check(known),
            None => Err(Refused::Missing {
                field: self.field.to_owned(),
                label: self.label.into(),
                help: RefusedMessage::EnterIt.into(),
            }),
        }
    }
}

/// A title or name: 1 to 120 characters, not only spaces. Returns it trimmed.
pub fn check_title(field: &str, label: impl Into<Message>, text: &str) -> Result<String, Refused> {
    check_text(field, label, text, TITLE)
}

/// A text as a title: what is too long ends between two words, with an ellipsis.
///
/// ```
/// use layshaft_core::check::cut_to_title;
/// assert_eq!(cut_to_title(" Fork seals "), "Fork seals");
/// let long = cut_to_title(&"seals and ".repeat(20));
/// assert!(long.ends_with(" and…") || long.ends_with(" seals…"));
/// assert!(long.chars().count() <= 120);
/// ```
pub fn cut_to_title(text: &str) -> String {
    let text = text.trim();
    if text.chars().count() <= TITLE {
        return text.to_owned();
    }
    let kept: String = text.chars().take(TITLE - 1).collect();
    let whole = kept.rsplit_once(' ').map_or(kept.as_str(), |(words, _)| words);
    format!("{}…", whole.trim_end_matches([',', ';', ':', '.', ' ']))
}

/// Most characters of a title.
const TITLE: usize = 120;

/// A text of 1 to `most` characters, not only spaces. Returns it trimmed.
pub fn check_text(field: &str, label: impl Into<Message>, text: &str, most: usize) -> Result<String, Refused> {
    let trimmed = text.trim();
    let given = trimmed.chars().count();
    if given == 0 || given > most {
        return Err(Refused::BadText { field: field.to_owned(), label: label.into(), given, most });
    }
    Ok(trimmed.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bounds::{ALL, REAR_TEETH};
    use crate::message::FieldMessage;

    #[test]
    fn every_range_is_in_order_and_takes_its_ends() {
        for bound in ALL {
            assert!(bound.min < bound.max, "{bound:?}");
            assert!(bound.check(bound.min).is_ok() && bound.check(bound.max).is_ok());
            assert!(bound.check(bound.min - 1e-6).is_err() && bound.check(bound.max + 1e-3).is_err());
            assert!(bound.check(f64::NAN).is_err() && bound.check(f64::INFINITY).is_err());
        }
    }

    #[test]
    fn a_refusal_names_field_value_range_and_unit() {
        let text = REAR_TEETH.check(200.0).unwrap_err().english();
        assert_eq!(text, "Wheel sprocket: 200 teeth is outside 20 to 80 teeth");
    }

    #[test]
    fn an_empty_title_is_refused_and_a_good_one_is_trimmed() {
        assert!(check_title("title", FieldMessage::Title, "  ").is_err());
        assert_eq!(check_title("title", FieldMessage::Title, " Fork seals "), Ok("Fork seals".to_owned()));
    }
}
