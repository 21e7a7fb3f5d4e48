//! What was done about jobs.

use layshaft_core::record::{
    Air, Job, JobPlace, JobReason, JobState, Product, SpotTaken, Stage, StayPlace, Step, Wait,
};
use layshaft_core::ripple::Proposal;
use layshaft_wire::wire;

/// Adds a job.
#[wire]
pub struct AddJob {
    /// The job.
    pub job: NewJob,
}

/// A job that nobody has begun: a title and minutes are enough. How far it is and its place in the list come by themselves.
#[wire(lenient)]
pub struct NewJob {
    /// What is done.
    pub title: String,
    /// Hands-on time, minutes.
    pub hands_on_minutes: f64,
    /// If all goes well, minutes.
    pub least_minutes: Option<f64>,
    /// If much goes wrong, minutes.
    pub most_minutes: Option<f64>,
    /// Where it belongs; left out: repair.
    pub stage: Option<Stage>,
    /// Instructions in order.
    pub steps: Vec<Step>,
    /// Tools to lay out; left out: those of the ready-made job.
    pub tools: Option<Vec<String>>,
    /// Mark of the ready-made job that names its tools and supplies.
    pub ready_made: Option<String>,
    /// Marks of the parts that it needs.
    pub parts: Vec<String>,
    /// Marks of the jobs to finish before it.
    pub after: Vec<String>,
    /// What passes after the work, without hands.
    pub wait: Option<Wait>,
    /// It can be left and taken up again; left out: yes, unless what follows has a time limit.
    pub splittable: Option<bool>,
    /// Where it has to be done; left out: at the bench.
    pub place: Option<JobPlace>,
    /// What there is only one of and it takes; left out: the spray place where it is done there, else nothing.
    pub spots: Option<Vec<SpotTaken>>,
    /// What the air has to be like; left out: it does not matter.
    pub air: Option<Air>,
    /// It takes a second pair of hands; left out: no.
    pub helper: Option<bool>,
    /// The neighbours hear it; left out: no.
    pub noisy: Option<bool>,
}

impl From<NewJob> for Job {
    /// Every field is named, so that one that `Job` gains cannot be forgotten here.
    fn from(new: NewJob) -> Self {
        Job {
            title: new.title,
            stage: new.stage.unwrap_or_default(),
            steps: new.steps,
            hands_on_minutes: new.hands_on_minutes,
            state: JobState::Open,
            steps_done: 0,
            after: new.after,
            parts: new.parts,
            wait: new.wait,
            done_ms: None,
            rank: 0.0,
            least_minutes: new.least_minutes,
            most_minutes: new.most_minutes,
            splittable: new.splittable,
            place: new.place,
            helper: new.helper,
            ready_made: new.ready_made,
            noisy: new.noisy,
            spots: new.spots,
            air: new.air,
            tools: new.tools,
            begun_ms: None,
            minutes_taken: None,
            note: None,
            reasons: Vec::new(),
        }
    }
}

/// Adds a ready-made job.
#[wire]
pub struct AddReadyMade {
    /// Its id.
    pub ready_made: String,
}

/// Makes a job of what was found: the ready-made one where there is one that suits, else a plain one. A job that is open
/// and was made from the same ready-made one takes it on instead; one that is open for the same reason refuses it.
#[wire]
pub struct PutRight {
    /// What was found.
    pub reason: JobReason,
    /// What the job is called where no ready-made one is known; left out: as what was found. What is too long for a title is
    /// cut between two words.
    pub title: Option<String>,
    /// For a change that was tried: the proposals. Its parts come in the sizes that they ask for.
    pub proposals: Vec<Proposal>,
}

/// Puts the part for what was found on the list: those of the ready-made job where there is one that suits, else a plain one.
/// The job for it waits for them, where it is there and not done.
#[wire]
pub struct WantPart {
    /// What was found.
    pub reason: JobReason,
    /// What the part is called where no ready-made job names one; left out: as what was found.
    pub title: Option<String>,
}

/// Adds every job of some packages that suits the bike and is not in its plan, each job once.
#[wire]
pub struct AddPackages {
    /// Their ids.
    pub packages: Vec<String>,
    /// Ready-made jobs of them, by their ids, that are not added; left out: none.
    pub leave_out: Option<Vec<String>>,
}

/// Changes a job.
#[wire]
pub struct ChangeJob {
    /// Its id.
    pub id: String,
    /// The job as it shall be.
    pub job: Job,
}

/// Puts a job away.
#[wire]
pub struct PutJobAway {
    /// Its id.
    pub id: String,
}

/// Begins a job.
#[wire]
pub struct BeginJob {
    /// Its id.
    pub id: String,
}

/// Ticks steps of a job off.
#[wire]
pub struct TickStep {
    /// Its id.
    pub id: String,
    /// Steps done, from the first.
    pub steps_done: u32,
}

/// Puts a tool that is not at hand on the list of parts: the job waits for it as for any part.
#[wire]
pub struct LackTool {
    /// The job's id.
    pub id: String,
    /// The tool, as the job names it.
    pub tool: String,
}

/// Finishes a job, with all that is worth keeping of it; whatever is left out is not known or not done.
#[wire(lenient)]
pub struct FinishJob {
    /// Its id.
    pub id: String,
    /// The clock of the coat that it put on.
    pub start_clock: Option<StartClock>,
    /// Parts of the job, by their ids, that are on the bike now.
    pub parts_fitted: Vec<String>,
    /// How long it took, minutes.
    pub minutes_taken: Option<f64>,
    /// What is worth knowing about how it went.
    pub note: Option<String>,
}

/// The clock of a coat that a job put on.
#[wire]
pub struct StartClock {
    /// What went on.
    pub product: Product,
    /// On what; left out: what the job is called.
    pub title: Option<String>,
    /// Where it cures; left out: in the garage.
    pub place: Option<StayPlace>,
    /// Temperature there, °C, where the place needs one.
    pub celsius: Option<f64>,
    /// When it went on, milliseconds since 1970 (UTC); left out: now.
    pub started_ms: Option<i64>,
}

/// Opens a finished job again.
#[wire]
pub struct ReopenJob {
    /// Its id.
    pub id: String,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_title_and_minutes_are_a_job_and_how_far_it_is_does_not_come_from_outside() {
        let said = r#"{"title":"Clean the tank","handsOnMinutes":90,"state":"done","stepsDone":3,"rank":-1}"#;
        let new: NewJob = serde_json::from_str(said).unwrap();
        let plain = Job { title: "Clean the tank".to_owned(), hands_on_minutes: 90.0, ..Job::default() };
        assert_eq!(Job::from(new), plain);
    }
}
