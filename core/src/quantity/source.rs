//! Where a number or a rule comes from, and how it came to be known.

use layshaft_wire::wire;

use crate::message::Message;

/// How a number came to be known.
#[wire]
pub enum Standing {
    /// The text of the source itself was read.
    Seen,
    /// Read in somebody else's restatement. Shown as unconfirmed.
    SecondHand,
    /// Recalled, not read. Shown as unconfirmed.
    Memory,
    /// Follows from the formula.
    Computed,
    /// Common practice of the trade, no source.
    CommonPractice,
    /// Entered by the owner.
    Entered,
    /// Invented for the demo bike.
    Invented,
}

/// Where a number or a rule comes from.
#[wire]
pub struct Source {
    /// Title and place: standard and clause, book and page, law and article.
    pub text: Message,
    /// How it came to be known.
    pub standing: Standing,
}

impl Source {
    /// A source from its parts.
    pub fn new(text: impl Into<Message>, standing: Standing) -> Self {
        Self { text: text.into(), standing }
    }
}
