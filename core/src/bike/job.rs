//! Jobs: pieces of work with steps, hands-on time, what they follow, and the wait after them.

use layshaft_wire::wire;

use crate::bounds;
use crate::changes::Record;
use crate::error::Refused;

/// Where in the rebuild a job belongs.
#[wire]
#[derive(Default)]
pub enum Stage {
    /// Looking, cataloguing, taking apart.
    StripDown,
    /// Cleaning, repairing, painting parts.
    #[default]
    Repair,
    /// Putting together.
    Build,
    /// Wiring and lamps.
    Electrics,
    /// First start, tests, inspection.
    Prove,
}

/// How far a job is.
#[wire]
#[derive(Default)]
pub enum JobState {
    /// Not begun.
    #[default]
    Open,
    /// Begun.
    Begun,
    /// Done.
    Done,
}

/// One instruction of a job, one screen at the bench.
#[wire(lenient)]
pub struct Step {
    /// What to do, in one or two sentences.
    pub text: String,
    /// A caution that stands at this step.
    pub caution: Option<String>,
    /// A clock that starts from this step, minutes.
    pub clock_minutes: Option<f64>,
}

/// Time that passes without hands after the work.
#[wire(lenient)]
pub struct Wait {
    /// What passes: “liner cures”.
    pub name: String,
    /// Hours when no cure is named.
    pub hours: Option<f64>,
    /// The coating product whose full cure is waited for.
    pub product: Option<String>,
}

/// A piece of work.
#[wire(lenient)]
pub struct Job {
    /// What is done.
    pub title: String,
    /// Where it belongs.
    pub stage: Stage,
    /// Instructions in order.
    pub steps: Vec<Step>,
    /// Hands-on time, minutes.
    pub hands_on_minutes: f64,
    /// How far it is.
    pub state: JobState,
    /// Steps already done.
    pub steps_done: u32,
    /// Jobs, by their marks, that must be done (with their wait over) before.
    pub after: Vec<String>,
    /// Parts, by their marks, that must be here before.
    pub parts: Vec<String>,
    /// Wait after the work.
    pub wait: Option<Wait>,
    /// When it was done, milliseconds since 1970 (UTC).
    pub done_ms: Option<i64>,
    /// Place in the list, smaller first; ties go by mark.
    pub rank: f64,
}

impl Record for Job {
    const KIND: &'static str = "job";
}

impl Job {
    /// The job with its texts trimmed, or the first field that cannot be accepted.
    pub fn checked(mut self) -> Result<Self, Refused> {
        self.title = bounds::check_title("title", "Job", &self.title)?;
        bounds::HANDS_ON.check(self.hands_on_minutes)?;
        for step in &mut self.steps {
            step.text = bounds::check_text("steps", "Step", &step.text, 600)?;
        }
        if let Some(wait) = &mut self.wait {
            wait.name = bounds::check_title("wait", "Wait", &wait.name)?;
            bounds::WAIT_HOURS.check_known(wait.hours)?;
        }
        Ok(self)
    }
}
