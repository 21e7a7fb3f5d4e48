//! Where ready-made figures come from.

use layshaft_wire::message;

/// Where ready-made figures come from.
#[message("ready-made-source")]
pub(crate) enum ReadyMadeSource {
    /// Of a wait without a product.
    CommonPractice,
    /// Of a typical sheet that the owner changed.
    ChangedSheet,
    /// Of the product of the owner.
    OwnCan,
}
