//! What a fault is called, where it cannot be, and what is seen of it.

use layshaft_wire::message;

use crate::message::{Measure, Message};

/// A fault in words, and where it cannot be.
#[message("harness-fault")]
pub(crate) enum FaultMessage {
    /// Broken, unplugged or burnt out.
    Open { element: String },
    /// A bad joint.
    BadJoint { element: String, ohms: Measure },
    /// A point on the frame.
    ShortToFrame { point: String },
    /// Two contacts exchanged.
    Swapped { one: String, other: String },
    /// The wrong way round.
    Reversed { element: String },
    /// A lamp of other watts.
    WrongLamp { element: String, watts: Measure },
    /// An earth without contact.
    MissingEarth { element: String },
    /// A contact always made.
    StuckContact { element: String },
    /// A contact never made.
    DeadContact { element: String },
    /// A weak battery.
    WeakBattery { element: String },
    /// What has no contacts cannot stick.
    CannotStick { element: String },
    /// What is no lamp holds none.
    NoLamp { element: String },
    /// What is no battery cannot be flat.
    NoBattery { element: String },
    /// The frame cannot touch itself.
    FrameItself { point: String },
    /// What was asked for: a point.
    WhatPoint,
    /// What was asked for: an element.
    WhatElement,
}

/// What is seen of a fault.
#[message("harness-symptom")]
pub(crate) enum SymptomMessage {
    /// Something does more or less than it should.
    Instead { element: String, now: Message, sound: Message },
    /// A fuse blows.
    Blows { element: String },
    /// A relay chatters.
    Chatters { element: String },
    /// A flasher does not flash.
    DoesNotFlash { element: String },
    /// Dark or silent.
    LookOff,
    /// Only glowing.
    LookGlow,
    /// Dim.
    LookDim,
    /// As it should be.
    LookFull,
    /// Far too bright.
    LookTooBright,
}
