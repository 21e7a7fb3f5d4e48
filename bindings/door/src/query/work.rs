//! One job, and what was found and became work.

use layshaft_core::coating::{CureAnswer, ProcessAnswer};
use layshaft_core::message::Message;
use layshaft_core::plan::{Arrival, PlanRow};
use layshaft_core::record::{Job, JobLink, JobReason, PartState};
use layshaft_wire::wire;

/// One job at the bench.
#[wire]
pub struct JobAnswer {
    /// Its id.
    pub id: String,
    /// The job.
    pub job: Job,
    /// Where it stands in the plan.
    pub row: Option<PlanRow>,
    /// Its running cures.
    pub cures: Vec<CureAnswer>,
    /// Names of the coating products that are on when it is done: what it waits for first, then what else it lays.
    pub lays: Vec<String>,
    /// Minutes from its beginning at the bench until now, rounded to five: what it took, if nothing came between. None where it
    /// was not begun, has only just begun, or was begun so long ago that something did.
    pub minutes_since_begun: Option<f64>,
    /// Tools to lay out before it begins.
    pub tools: Vec<JobTool>,
    /// Parts and supplies that it usually takes.
    pub supplies: Vec<String>,
    /// The coats that it is done in; none once that paint job was ended.
    pub process: Option<ProcessAnswer>,
    /// Whether coats can be chosen for it: it paints.
    pub paints: bool,
    /// What it puts right, with its name.
    pub reasons: Vec<ReasonCard>,
}

/// What a job puts right.
#[wire]
pub struct ReasonCard {
    /// What was found.
    pub reason: JobReason,
    /// In words.
    pub name: Message,
}

/// Asks what came of what was found.
#[wire(lenient)]
pub struct FoundAsk {
    /// What was found. What no work follows from is left out of the answer.
    pub reasons: Vec<JobReason>,
}

/// What came of what was found.
#[wire]
pub struct FoundAnswer {
    /// Each with its work, in their order.
    pub found: Vec<FoundCard>,
}

/// Something that was found, with what came of it.
#[wire]
pub struct FoundCard {
    /// What was found.
    pub reason: JobReason,
    /// In words.
    pub name: Message,
    /// The job that puts it right, or did so last.
    pub job: Option<JobLink>,
    /// That job is done, and nobody has taken the reading since.
    pub again: bool,
    /// Parts that are on the list for it.
    pub parts: Vec<FoundPart>,
    /// The kind and the mark under which its photos are kept.
    pub photos: PhotosOf,
}

/// A part that is on the list for what was found.
#[wire]
pub struct FoundPart {
    /// Its id.
    pub part: String,
    /// What it is.
    pub title: String,
    /// Its size, where that is known.
    pub size: Option<String>,
    /// Where it is.
    pub state: PartState,
    /// When it comes.
    pub arrival: Option<Arrival>,
}

/// Under what photos of something are kept.
#[wire]
pub struct PhotosOf {
    /// The kind of what they show.
    pub of_kind: String,
    /// Its mark.
    pub of: String,
}

/// A tool of a job.
#[wire]
pub struct JobTool {
    /// What it is called.
    pub name: String,
    /// The part, by its id, that stands for it where it is not at hand.
    pub part: Option<String>,
    /// Where that part is.
    pub state: Option<PartState>,
}
