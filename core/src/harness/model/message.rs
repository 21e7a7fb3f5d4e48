//! What is said of a circuit as it was entered: what cannot be worked out, what hangs in the air.

use layshaft_wire::message;

use crate::message::{List, Measure, Message};

/// What is said of a circuit as it was entered.
#[message("harness")]
pub(crate) enum ModelMessage {
    /// The frame has no way back to the battery.
    NoWayBack { frame: String, earth: String },
    /// Points that lead nowhere.
    ConnectedToNothing { points: List },
    /// Two sources work against each other.
    SourcesInConflict { one: String, other: String },
    /// An id stands twice.
    SameId { id: String },
    /// What is missing in a circuit without a source.
    ABattery,
    /// What to do about it.
    AddBattery,
    /// Nothing ends where voltages are measured from.
    NothingAtEarth { earth: String },
    /// Both ends are one.
    SamePoint { point: String },
    /// A coil whose voltages are the wrong way round.
    LetsGoAbovePullIn { lets_go: Measure, pulls_in: Measure },
    /// An element is told what is wrong with it.
    OfElement { element: String, reason: Message },
    /// What was asked for: a switch.
    WhatSwitch,
    /// What was asked for: a position of a switch.
    WhatPosition { switch: String },
    /// What was asked for: a coil.
    WhatCoil,
    /// A field: colour of a wire.
    FieldColour,
    /// A field: name of the element.
    FieldName,
    /// A field: point.
    FieldPoint,
    /// A field: id of the element.
    FieldId,
    /// A field: plug.
    FieldPlug,
    /// A field: where it begins.
    FieldFrom,
    /// A field: where it ends.
    FieldTo,
    /// A field: what it is.
    FieldComponent,
    /// How an element is added.
    NotInCircuit { element: String },
    /// A section for what is no wire.
    NoWire { element: String },
    /// A resistance for what has none.
    NoResistance { element: String },
    /// A plug for what is no joint.
    NoJoint { element: String },
    /// A rating for what is no fuse.
    NoFuse { element: String },
    /// A code that is none.
    NoColourCode { code: String, known: String },
    /// A colour with a tracer.
    WithTracer { base: Message, tracer: Message },
    /// Every switch rests.
    AtRest,
}

/// Colour of a wire.
#[message("harness-colour")]
#[derive(Copy)]
pub enum WireColour {
    /// BK.
    Black,
    /// BN.
    Brown,
    /// RD.
    Red,
    /// OG.
    Orange,
    /// YE.
    Yellow,
    /// GN.
    Green,
    /// BU.
    Blue,
    /// VT.
    Violet,
    /// GY.
    Grey,
    /// WH.
    White,
    /// PK.
    Pink,
    /// TQ.
    Turquoise,
    /// SR.
    Silver,
}
