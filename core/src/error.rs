//! Refusals: what cannot be accepted, said so that the person can mend it.
//!
//! A refusal names the field, the value, the range and the unit. A bad *bike* is no refusal but a finding.

use layshaft_wire::{message, wire};

use crate::bounds::BoundId;
use crate::message::{List, ListStyle, Measure, Message};
use crate::units::Unit;

/// Why something was not accepted. Nothing is stored when one of these comes back.
#[derive(Clone, Debug, PartialEq)]
pub enum Refused {
    /// The number lies outside what is accepted.
    OutOfRange {
        /// The range.
        bound: BoundId,
        /// Field as the caller named it.
        field: String,
        /// Field in words.
        label: Message,
        /// What was given.
        value: f64,
        /// Least accepted.
        min: f64,
        /// Most accepted.
        max: f64,
        /// Unit of all three.
        unit: Unit,
    },
    /// Not a finite number.
    NotANumber {
        /// The range.
        bound: BoundId,
        /// Field as the caller named it.
        field: String,
        /// Field in words.
        label: Message,
        /// Least accepted.
        min: f64,
        /// Most accepted.
        max: f64,
        /// Unit of both.
        unit: Unit,
    },
    /// A text that must say something is empty, or too long.
    BadText {
        /// Field as the caller named it.
        field: String,
        /// Field in words.
        label: Message,
        /// Characters given.
        given: usize,
        /// Most characters accepted.
        most: usize,
    },
    /// A value that the calculation needs is not known.
    Missing {
        /// Field as the caller named it.
        field: String,
        /// Field in words.
        label: Message,
        /// What to do about it.
        help: Message,
    },
    /// Values that cannot go together.
    Conflict {
        /// Field to mend first.
        field: String,
        /// The reason, in trade words.
        reason: Message,
    },
    /// Something that is not in the bike.
    Unknown {
        /// Kind of thing.
        what: Message,
        /// Its id.
        id: String,
    },
    /// A text in a form that cannot be read.
    Unreadable {
        /// Field as the caller named it.
        field: String,
        /// Field in words.
        label: Message,
        /// What could not be read.
        reason: Message,
    },
}

/// How a refusal is said.
#[message("refused")]
pub(crate) enum RefusedMessage {
    /// The number lies outside what is accepted.
    OutOfRange { label: Message, value: Measure, min: Measure, max: Measure },
    /// Not a finite number.
    NotANumber { label: Message, min: Measure, max: Measure },
    /// Nothing stands where a text must.
    NoText { label: Message, most: usize },
    /// A text is too long.
    LongText { label: Message, given: usize, most: usize },
    /// A value that is needed is not known.
    Missing { label: Message, help: Message },
    /// There is no such thing.
    Unknown { what: Message, id: String },
    /// A text that cannot be read.
    Unreadable { label: Message, reason: Message },
    /// A word that is no choice.
    NoneOf { given: String, choices: List },
    /// What to do about a value that stands on the bike.
    EnterIt,
    /// A field of one element of a circuit.
    OfElement { element: String, label: Message },
}

/// Why a word is refused where only some are known.
pub(crate) fn none_of<'a>(given: &str, choices: impl IntoIterator<Item = &'a str>) -> Message {
    let choices = choices.into_iter().map(Message::as_entered).collect();
    RefusedMessage::NoneOf { given: given.to_owned(), choices: List(ListStyle::Comma, choices) }.into()
}

impl Refused {
    /// The same refusal of a text or number, told of another field: for a value that one reader reads in several places.
    pub(crate) fn named(mut self, new_field: &str, new_label: impl Into<Message>) -> Self {
        if let Self::OutOfRange { field, label, .. }
        | Self::NotANumber { field, label, .. }
        | Self::BadText { field, label, .. }
        | Self::Missing { field, label, .. }
        | Self::Unreadable { field, label, .. } = &mut self
        {
            new_field.clone_into(field);
            *label = new_label.into();
        }
        self
    }

    /// What was wrong, with value, range and unit.
    pub fn message(&self) -> Message {
        let said = match self.clone() {
            Self::OutOfRange { label, value, min, max, unit, .. } => {
                let (value, min, max) = (unit.of(value), unit.of(min), unit.of(max));
                RefusedMessage::OutOfRange { label, value, min, max }
            }
            Self::NotANumber { label, min, max, unit, .. } => {
                RefusedMessage::NotANumber { label, min: unit.of(min), max: unit.of(max) }
            }
            Self::BadText { label, given: 0, most, .. } => RefusedMessage::NoText { label, most },
            Self::BadText { label, given, most, .. } => RefusedMessage::LongText { label, given, most },
            Self::Missing { label, help, .. } => RefusedMessage::Missing { label, help },
            Self::Conflict { reason, .. } => return reason,
            Self::Unknown { what, id } => RefusedMessage::Unknown { what, id },
            Self::Unreadable { label, reason, .. } => RefusedMessage::Unreadable { label, reason },
        };
        said.into()
    }
}

#[cfg(test)]
impl Refused {
    /// The refusal as an English reader sees it.
    pub(crate) fn english(&self) -> String {
        self.message().english()
    }
}

impl std::fmt::Display for Refused {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}", self.message())
    }
}

impl std::error::Error for Refused {}

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
    pub message: Message,
    /// The field to mend, as the caller named it.
    pub field: Option<String>,
    /// The range that was missed, for a number.
    pub bound: Option<BoundId>,
}

impl Refusal {
    /// A refusal that belongs to no field.
    pub fn new(code: Code, message: impl Into<Message>) -> Self {
        Self { code, message: message.into(), field: None, bound: None }
    }
}

impl std::fmt::Display for Refusal {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}", self.message)
    }
}

impl std::error::Error for Refusal {}

impl From<Refused> for Refusal {
    fn from(refused: Refused) -> Self {
        let message = refused.message();
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
