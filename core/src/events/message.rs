//! What is said of something that comes about: a line for a list, and the sentence behind it.

use layshaft_wire::message;

use crate::message::Message;

/// A sentence about something that comes about.
#[message("events")]
pub(crate) enum EventsMessage {
    /// A coat is dry to the touch.
    TouchDry { product: String },
    /// A coat may be recoated.
    RecoatOpen { product: String },
    /// A recoat window has closed.
    RecoatShut { product: String },
    /// A coat may be handled.
    Handle { product: String },
    /// A coat is fully cured.
    Cured { product: String },
    /// A wait with a name is over.
    WaitOver { wait: Message },
    /// A wait is over.
    AWaitOver,
    /// A part should be here.
    PartExpected,
}

/// The same in a few words, after what it is about.
#[message("event")]
pub(crate) enum EventMessage {
    /// A coat is dry to the touch.
    TouchDry { title: String },
    /// A coat may be recoated.
    RecoatOpen { title: String },
    /// A recoat window closes.
    RecoatShut { title: String },
    /// A coat may be handled.
    Handle { title: String },
    /// A coat is fully cured.
    Cured { title: String },
    /// A wait is over.
    WaitOver { title: String },
    /// A part should be here.
    PartExpected { title: String },
}
