//! A search for a fault, kept with the bike: what is wrong, what was answered, how it ended.

use layshaft_wire::wire;

/// What is wrong.
#[wire(stored)]
pub enum Trouble {
    /// Something in a circuit of the bike.
    Wiring {
        /// Id of the circuit.
        #[words("Circuit")]
        circuit: String,
        /// Whether somebody has worked on the wiring lately.
        #[words("Wiring was worked on")]
        reworked: Option<bool>,
    },
    /// Trouble that a table of experience describes.
    Table {
        /// Id of the table.
        #[words("Table")]
        table: String,
    },
}

/// How a search ended.
#[wire(stored)]
pub enum FaultClosing {
    /// This put it right.
    Cured {
        /// What put it right.
        #[words("What put it right")]
        cure: String,
    },
    /// Left as it is.
    GivenUp,
}

/// A search. What is left out is not known.
#[wire(lenient, stored)]
pub struct FaultSearch {
    /// What is wrong.
    #[words("What is wrong")]
    pub trouble: Option<Trouble>,
    /// When it began, milliseconds since 1970 (UTC).
    #[words("Begun at")]
    pub started_ms: Option<i64>,
    /// The answers, oldest first.
    #[words("Answers")]
    pub evidence: Vec<Evidence>,
    /// When it ended, milliseconds since 1970 (UTC).
    #[words("Ended at")]
    pub closed_ms: Option<i64>,
    /// How it ended.
    #[words("How it ended")]
    pub closing: Option<FaultClosing>,
}

/// One answer. A session is the list of them; taking the last one back undoes it.
#[wire(stored)]
pub enum Evidence {
    /// An outcome was seen.
    Seen {
        /// Id of the check.
        #[words("Check")]
        check: String,
        /// Id of the outcome.
        #[words("Seen")]
        outcome: String,
    },
    /// A voltage was read.
    Read {
        /// Id of the check.
        #[words("Check")]
        check: String,
        /// The reading, volts.
        #[words("Read, V")]
        volts: f64,
    },
}

impl Evidence {
    /// Id of the check that was answered.
    pub fn check(&self) -> &str {
        match self {
            Self::Seen { check, .. } | Self::Read { check, .. } => check,
        }
    }
}
