//! What the inspection says.

use layshaft_wire::message;

use crate::message::Message;

/// A sentence of the inspection.
#[message("inspection")]
pub(crate) enum InspectionMessage {
    /// A reading that cannot be.
    MeasureAgain { reason: Message },
}
