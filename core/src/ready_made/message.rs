//! Where ready-made figures come from.

use layshaft_wire::message;

/// Where ready-made figures come from.
#[message("ready-made")]
pub(crate) enum ReadyMadeMessage {
    /// Of a wait without a product.
    SourceCommonPractice,
    /// Of a typical sheet that the owner changed.
    SourceChangedSheet,
    /// Of the product of the owner.
    SourceOwnCan,
}
