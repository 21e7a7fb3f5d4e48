//! Where the figures of the harness come from, each with its standing.

use super::message::CircuitMessage;
use crate::quantity::{Source, Standing};

/// What the harness is computed with.
pub fn harness_sources() -> Vec<Source> {
    vec![
        Source::new(CircuitMessage::SourceOperatingPoint, Standing::Computed),
        Source::new(CircuitMessage::SourceFilament, Standing::SecondHand),
        Source::new(CircuitMessage::SourceColdFilament, Standing::SecondHand),
        Source::new(CircuitMessage::SourceFuse, Standing::SecondHand),
        Source::new(CircuitMessage::SourceTypicalValues, Standing::CommonPractice),
    ]
}
