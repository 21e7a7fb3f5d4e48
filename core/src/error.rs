//! Refusals: what cannot be accepted, said so that the person can mend it.
//!
//! A refusal names the field, the value, the range and the unit. A bad *bike* is no refusal but a finding.

use layshaft_wire::wire;
use thiserror::Error;

use crate::bounds::BoundId;

/// Why something was not accepted. Nothing is stored when one of these comes back.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum Refused {
    /// The number lies outside what is accepted.
    #[error("{label}: {} is outside {min} to {}", with_unit(*value, unit), with_unit(*max, unit))]
    OutOfRange {
        /// The range.
        bound: BoundId,
        /// Field as the caller named it.
        field: String,
        /// Field in words.
        label: String,
        /// What was given.
        value: f64,
        /// Least accepted.
        min: f64,
        /// Most accepted.
        max: f64,
        /// Symbol of the unit.
        unit: String,
    },
    /// Not a finite number.
    #[error("{label}: this is not a number; give {min} to {}", with_unit(*max, unit))]
    NotANumber {
        /// The range.
        bound: BoundId,
        /// Field as the caller named it.
        field: String,
        /// Field in words.
        label: String,
        /// Least accepted.
        min: f64,
        /// Most accepted.
        max: f64,
        /// Symbol of the unit.
        unit: String,
    },
    /// A text that must say something is empty, or too long.
    #[error("{}", bad_text(label, *given, *most))]
    BadText {
        /// Field as the caller named it.
        field: String,
        /// Field in words.
        label: String,
        /// Characters given.
        given: usize,
        /// Most characters accepted.
        most: usize,
    },
    /// A value that the calculation needs is not known.
    #[error("{label} is not known yet: {help}")]
    Missing {
        /// Field as the caller named it.
        field: String,
        /// Field in words.
        label: String,
        /// What to do about it.
        help: String,
    },
    /// Values that cannot go together.
    #[error("{reason}")]
    Conflict {
        /// Field to mend first.
        field: String,
        /// The reason, in trade words.
        reason: String,
    },
    /// Something that is not in the bike.
    #[error("there is no {what} with the id {id}")]
    Unknown {
        /// Kind of thing.
        what: String,
        /// Its id.
        id: String,
    },
    /// A text in a form that cannot be read.
    #[error("{label}: {reason}")]
    Unreadable {
        /// Field as the caller named it.
        field: String,
        /// Field in words.
        label: String,
        /// What could not be read.
        reason: String,
    },
}

fn bad_text(label: &str, given: usize, most: usize) -> String {
    let now = if given == 0 { "nothing stands there".to_owned() } else { format!("{given} are too many") };
    format!("{label}: write 1 to {most} characters; {now}")
}

impl Refused {
    /// The same refusal of a text or number, told of another field: for a value that one reader reads in several places.
    pub(crate) fn named(mut self, new_field: &str, new_label: &str) -> Self {
        if let Self::OutOfRange { field, label, .. }
        | Self::NotANumber { field, label, .. }
        | Self::BadText { field, label, .. }
        | Self::Missing { field, label, .. }
        | Self::Unreadable { field, label, .. } = &mut self
        {
            new_field.clone_into(field);
            new_label.clone_into(label);
        }
        self
    }
}

/// A number with its unit, or alone where it has none.
fn with_unit(value: f64, unit: &str) -> String {
    if unit.is_empty() { value.to_string() } else { format!("{value} {unit}") }
}

/// Stable codes of refusals, the same in every language.
#[wire]
pub enum Code {
    /// A number outside its range.
    OutOfRange,
    /// Not a finite number.
    NotANumber,
    /// An empty or too long text.
    BadText,
    /// A value that is needed is not known.
    Missing,
    /// Values that cannot go together.
    Conflict,
    /// No such thing.
    Unknown,
    /// A text that cannot be read.
    Unreadable,
    /// The file is no bundle.
    NotABundle,
    /// The bundle is cut short or damaged.
    DamagedBundle,
    /// The bundle or database comes from a newer program.
    NewerSchema,
    /// The bundle holds another bike.
    OtherBike,
    /// The device could not store or read.
    Storage,
    /// The request itself was not understood.
    BadRequest,
}

/// A refusal as it crosses the door.
#[wire]
pub struct Refusal {
    /// Stable code.
    pub code: Code,
    /// What was wrong, in a sentence, with value, range and unit.
    pub message: String,
    /// The field to mend, as the caller named it.
    pub field: Option<String>,
    /// The range that was missed, for a number.
    pub bound: Option<BoundId>,
}

impl Refusal {
    /// A refusal that belongs to no field.
    pub fn new(code: Code, message: impl Into<String>) -> Self {
        Self { code, message: message.into(), field: None, bound: None }
    }
}

impl std::fmt::Display for Refusal {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.message)
    }
}

impl std::error::Error for Refusal {}

impl From<Refused> for Refusal {
    fn from(refused: Refused) -> Self {
        let message = refused.to_string();
        let bound = match &refused {
            Refused::OutOfRange { bound, .. } | Refused::NotANumber { bound, .. } => Some(*bound),
            _ => None,
        };
        let (code, field) = match refused {
            Refused::OutOfRange { field, .. } => (Code::OutOfRange, Some(field)),
            Refused::NotANumber { field, .. } => (Code::NotANumber, Some(field)),
            Refused::BadText { field, .. } => (Code::BadText, Some(field)),
            Refused::Missing { field, .. } => (Code::Missing, Some(field)),
            Refused::Conflict { field, .. } => (Code::Conflict, Some(field)),
            Refused::Unreadable { field, .. } => (Code::Unreadable, Some(field)),
            Refused::Unknown { .. } => (Code::Unknown, None),
        };
        Self { code, message, field, bound }
    }
}
