//! What the owner changed in a circuit: colours, lengths, sections, joints, wires of their own.

use layshaft_wire::wire;

use super::component::Component;

/// A change to one element of a circuit, or an element that is added (then ends and component are needed).
#[wire(lenient, stored)]
pub struct ElementChange {
    /// What it is called.
    pub label: Option<String>,
    /// The point it begins at.
    pub from: Option<String>,
    /// The point it ends at.
    pub to: Option<String>,
    /// What it is.
    pub component: Option<Component>,
    /// Colour code of a wire.
    pub colour: Option<String>,
    /// Section of a wire, mm².
    pub section_mm2: Option<f64>,
    /// Length of a wire, metres.
    pub length_metres: Option<f64>,
    /// Resistance of a joint, contact, strap, fuse or resistor, ohms.
    pub ohms: Option<f64>,
    /// Plug that a joint belongs to.
    pub plug: Option<String>,
    /// Rating of a fuse, amperes.
    pub rated_amperes: Option<f64>,
    /// Whether it is not there on this bike.
    pub taken_off: Option<bool>,
}
