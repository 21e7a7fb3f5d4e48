//! A search for a fault, kept with the bike: what is wrong, what was answered, how it ended.

use layshaft_wire::wire;

/// What is wrong.
#[wire(stored)]
pub enum Trouble {
    /// Something in a circuit of the bike.
    Wiring {
        /// Id of the circuit.
        circuit: String,
        /// Whether somebody has worked on the wiring lately.
        reworked: Option<bool>,
    },
    /// Trouble that a table of experience describes.
    Table {
        /// Id of the table.
        table: String,
    },
}

/// How a search ended.
#[wire(stored)]
pub enum FaultClosing {
    /// This put it right.
    Cured {
        /// What put it right.
        cure: String,
    },
    /// Left as it is.
    GivenUp,
}

/// A search. What is left out is not known.
#[wire(lenient, stored)]
pub struct FaultSearch {
    /// What is wrong.
    pub trouble: Option<Trouble>,
    /// When it began, milliseconds since 1970 (UTC).
    pub started_ms: Option<i64>,
    /// The answers, oldest first.
    pub evidence: Vec<Evidence>,
    /// When it ended, milliseconds since 1970 (UTC).
    pub closed_ms: Option<i64>,
    /// How it ended.
    pub closing: Option<FaultClosing>,
    /// What was learned, for the next time.
    pub learned: Option<String>,
}

/// One answer. A session is the list of them; taking the last one back undoes it.
#[wire(stored)]
pub enum Evidence {
    /// An outcome was seen.
    Seen {
        /// Id of the check.
        check: String,
        /// Id of the outcome.
        outcome: String,
    },
    /// A voltage was read.
    Read {
        /// Id of the check.
        check: String,
        /// The reading, volts.
        volts: f64,
    },
    /// Nobody could tell, or would look: another check is asked instead.
    Skipped {
        /// Id of the check.
        check: String,
    },
}

impl Evidence {
    /// Whether the check was done, whatever came of it.
    pub fn was_done(&self) -> bool {
        !matches!(self, Self::Skipped { .. })
    }

    /// Id of the check that was answered.
    pub fn check(&self) -> &str {
        match self {
            Self::Seen { check, .. } | Self::Read { check, .. } | Self::Skipped { check } => check,
        }
    }
}
