//! A filling: what it is, how much of it, and on what occasion.

use layshaft_wire::wire;

use crate::bounds;
use crate::check;
use crate::error::Refused;
use crate::message::FieldMessage;

/// On what occasion a filling takes its volume: they differ, because some of the old oil stays behind.
#[wire(stored)]
pub enum FillKind {
    /// After letting the old filling run out.
    Drain,
    /// After letting it run out and changing the filter.
    WithFilter,
    /// After a strip-down, everything dry.
    AfterStripDown,
}

/// A filling.
#[wire(lenient, stored)]
pub struct Fluid {
    /// What is filled: “Engine oil, with filter”.
    pub name: String,
    /// Volume, litres.
    pub litres: Option<f64>,
    /// Grade as the manual says.
    pub grade: Option<String>,
    /// On what occasion it takes that volume.
    pub fill: Option<FillKind>,
}

impl Fluid {
    /// The filling with its name trimmed, or the first field that cannot be accepted.
    pub fn checked(mut self) -> Result<Self, Refused> {
        self.name = check::check_title("name", FieldMessage::Filling, &self.name)?;
        bounds::LITRES.check_known(self.litres)?;
        Ok(self)
    }
}
