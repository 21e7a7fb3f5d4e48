//! Findings, workings and sources: what the program says about a bike, and why one may believe it.

use layshaft_wire::wire;

use crate::message::Message;

use super::codes::FindingCode;

/// How heavy a finding weighs.
#[wire]
pub enum Weight {
    /// Worth knowing.
    Note,
    /// Look at this before going on.
    Care,
    /// Forbids riding, or would fail the inspection today.
    Stopper,
}

/// Something worth saying about the bike. A bad bike is a finding, never an error.
#[wire]
pub struct Finding {
    /// What it is about.
    pub code: FindingCode,
    /// How heavy it weighs.
    pub weight: Weight,
    /// The finding in one or two sentences.
    pub text: Message,
}

impl Finding {
    /// A finding from its parts.
    pub fn new(code: FindingCode, weight: Weight, text: impl Into<Message>) -> Self {
        Self { code, weight, text: text.into() }
    }
}
