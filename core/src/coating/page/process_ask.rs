//! What the page of a paint job is asked, and what it answers.

use layshaft_wire::wire;

use crate::coating::judge::{OnHold, PaintNeed};
use crate::message::Message;
use crate::quantity::Finding;
use crate::record::{Layer, Process};

/// A process of the bike by its id, or a plan to try.
#[wire(lenient)]
pub struct ProcessAsk {
    /// A process of the bike.
    pub process: Option<String>,
    /// A plan to try, begun now.
    pub plan: Option<Process>,
}

/// How far a process is.
#[wire]
pub enum ProcessState {
    /// Nothing is on yet.
    Ready,
    /// The coat below is not ready for the next.
    TooSoon,
    /// The next may go on.
    Open,
    /// The window closed unused: sand, then recoat.
    SandFirst,
    /// Sanded after the window closed: the next may go on.
    Sanded,
    /// All coats are on, the last ones cure.
    AllOn,
    /// All coats are fully cured.
    Cured,
}

/// A step with its window.
#[wire]
pub struct StepAnswer {
    /// What it is called.
    pub name: String,
    /// What it lays.
    pub layer: Layer,
    /// Name of its product; none for a decal.
    pub product: Option<String>,
    /// Id of its coat, when it is on.
    pub coat: Option<String>,
    /// When it went on, milliseconds since 1970 (UTC).
    pub laid_ms: Option<i64>,
    /// From when it may go on, milliseconds since 1970 (UTC): by the coat below, or as foreseen when each step before it
    /// goes on as early as it may.
    pub from_ms: Option<i64>,
    /// Until when it may go on without sanding; none where the can names no end or none is in sight.
    pub until_ms: Option<i64>,
    /// Why this window, in one sentence: what the can says of the coat below, and what it comes to here. None on the
    /// first step.
    pub reason: Option<Message>,
    /// It is the next.
    pub next: bool,
}

/// A process.
#[wire]
pub struct ProcessAnswer {
    /// Its id, when it is one of the bike.
    pub id: Option<String>,
    /// The process.
    pub process: Process,
    /// How far it is.
    pub state: ProcessState,
    /// The same in one sentence, with the next coat and its window.
    pub sentence: Message,
    /// Each step with its window.
    pub steps: Vec<StepAnswer>,
    /// When all of it is fully cured, each step laid as early as it may; none when that cannot be known.
    pub cured_ms: Option<i64>,
    /// What must not be done yet, and until when.
    pub on_hold: Vec<OnHold>,
    /// Jobs that wait for it, by their titles.
    pub jobs_waiting: Vec<String>,
    /// What speaks against putting the next coat on here and now: too cold to cure, too damp, too near the dew point. It
    /// is asked about before the coat is noted.
    pub against: Vec<Finding>,
    /// What else to look at before the next coat goes on: what is not known of the air, the caution of the product.
    pub before: Vec<Finding>,
    /// What is worth saying about the rest.
    pub findings: Vec<Finding>,
    /// Area, m², where it was measured.
    pub square_metres: Option<f64>,
    /// Paint that it takes.
    pub paint: Vec<PaintNeed>,
}
