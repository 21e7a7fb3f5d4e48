//! What the ripple of a proposal is asked, and what it answers.

use layshaft_wire::wire;

use crate::message::Message;
use crate::quantity::{Finding, Quantity};
use crate::record::JobReason;
use crate::ripple::proposal::Proposal;

/// One quantity before and after.
#[wire]
pub struct Shift {
    /// The quantity after (or before, when it can no longer be derived).
    pub quantity: Quantity,
    /// Value before; none when it could not be derived.
    pub before: Option<f64>,
    /// Value after; none when it can no longer be derived.
    pub after: Option<f64>,
    /// Change in per cent of the value before.
    pub change_percent: Option<f64>,
    /// It crossed a limit.
    pub crossed: bool,
}

/// An inspection item whose verdict the proposal changes.
#[wire]
pub struct ItemShift {
    /// Id of the pack.
    pub pack: String,
    /// Id of the item.
    pub item: String,
    /// Its title.
    pub title: String,
    /// Verdict before.
    pub before: crate::inspection::Verdict,
    /// Verdict after.
    pub after: crate::inspection::Verdict,
}

/// What to try: several proposals together.
#[wire(lenient)]
pub struct RippleAsk {
    /// The proposals.
    pub proposals: Vec<Proposal>,
}

/// What the proposal does to everything else.
#[wire]
pub struct RippleAnswer {
    /// What is proposed, in one sentence.
    pub proposal: Message,
    /// Quantities that change, limits crossed first.
    pub shifts: Vec<Shift>,
    /// Findings that were not there before.
    pub new_findings: Vec<Finding>,
    /// Inspection items that it touches.
    pub items: Vec<ItemShift>,
    /// Parts and jobs that follow, one sentence each.
    pub follows: Vec<Message>,
    /// What each proposal is kept under, where a job makes it; in their order.
    pub changes: Vec<JobReason>,
}
