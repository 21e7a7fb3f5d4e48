//! Jobs: pieces of work with steps, hands-on time, what they follow, and the wait after them.

use layshaft_wire::wire;

use super::message::JobMessage;
use super::reason::JobReason;
use crate::bounds;
use crate::check;
use crate::error::Refused;
use crate::message::FieldMessage;
use crate::units::Unit;

/// Where in the rebuild a job belongs.
#[wire(stored)]
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
#[wire(stored)]
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

/// What a step asks for beside the work.
#[wire(stored)]
pub enum StepAsk {
    /// A photo, before something comes apart or as a proof.
    Photo,
    /// The clock of the coat that this step puts on.
    Cure,
    /// The maker's torque of a joint.
    Torque,
}

/// One instruction of a job, one screen at the bench.
#[wire(lenient, stored)]
pub struct Step {
    /// What to do, in one or two sentences.
    pub text: String,
    /// A caution that stands at this step.
    pub caution: Option<String>,
    /// A clock that starts from this step, minutes.
    pub clock_minutes: Option<f64>,
    /// What it asks for: the bench shows a button for each.
    pub asks: Option<Vec<StepAsk>>,
}

/// Time that passes without hands after the work.
#[wire(lenient, stored)]
pub struct Wait {
    /// What passes: “liner cures”.
    pub name: String,
    /// Hours when no cure is named.
    pub hours: Option<f64>,
    /// The coating product whose full cure is waited for.
    pub product: Option<String>,
    /// What follows must begin within so many hours after the work: a recoat window, a pot life.
    pub at_most_hours: Option<f64>,
}

/// Where a job has to be done.
#[wire(stored)]
#[derive(Default)]
pub enum JobPlace {
    /// At the bench, at any hour.
    #[default]
    Bench,
    /// By daylight.
    Daylight,
    /// Where spraying is allowed: aired, and by daylight.
    SprayPlace,
}

/// What there is only one of.
#[wire(stored)]
#[derive(Default)]
pub enum WorkSpot {
    /// The stand that holds the bike up.
    #[default]
    Stand,
    /// The place where spraying is allowed.
    SprayPlace,
    /// The oven or the heat lamp.
    Oven,
}

/// A spot that a job takes from its beginning on.
#[wire(lenient, stored)]
pub struct SpotTaken {
    /// Which.
    pub spot: WorkSpot,
    /// How long it stays taken after the work, hours; left out: it is free when the work is done.
    pub hours_after: Option<f64>,
}

/// What the air has to be like while a job is done; what is left out does not matter.
#[wire(lenient, stored)]
pub struct Air {
    /// Not colder than this, °C.
    pub lowest_celsius: Option<f64>,
    /// Not warmer than this, °C.
    pub highest_celsius: Option<f64>,
    /// Not damper than this relative humidity, per cent.
    pub highest_humidity: Option<f64>,
}

/// A piece of work.
#[wire(lenient, stored)]
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
    /// Jobs, by their ids, that must be done (with their wait over) before.
    pub after: Vec<String>,
    /// Parts, by their ids, that must be here before.
    pub parts: Vec<String>,
    /// Wait after the work.
    pub wait: Option<Wait>,
    /// When it was done, milliseconds since 1970 (UTC).
    pub done_ms: Option<i64>,
    /// Place in the list, smaller first; ties go by id.
    pub rank: f64,
    /// Hands-on time if all goes well, minutes; left out: as the hands-on time.
    pub least_minutes: Option<f64>,
    /// Hands-on time if much goes wrong, minutes; left out: as the hands-on time.
    pub most_minutes: Option<f64>,
    /// Whether it can be left and taken up again; left out: yes, unless what follows has a time limit.
    pub splittable: Option<bool>,
    /// Where it has to be done; left out: at the bench.
    pub place: Option<JobPlace>,
    /// Whether it takes a second pair of hands; left out: no.
    pub helper: Option<bool>,
    /// The ready-made job, by its id, that it was made from: it names tools and supplies.
    pub ready_made: Option<String>,
    /// Whether it makes noise that the neighbours hear; left out: no.
    pub noisy: Option<bool>,
    /// What it takes that there is only one of; left out: the spray place where it is done there, else nothing.
    pub spots: Option<Vec<SpotTaken>>,
    /// What the air has to be like; left out: it does not matter.
    pub air: Option<Air>,
    /// Tools to lay out before it begins; left out: those of the ready-made job that it was made from.
    pub tools: Option<Vec<String>>,
    /// When it was begun at the bench, milliseconds since 1970 (UTC).
    pub begun_ms: Option<i64>,
    /// How long it took in the end, minutes; left out: nobody knows.
    pub minutes_taken: Option<f64>,
    /// What is worth knowing about how it went.
    pub note: Option<String>,
    /// What it puts right.
    pub reasons: Vec<JobReason>,
}

impl Air {
    fn check(&self) -> Result<(), Refused> {
        bounds::LOWEST_AIR.check_known(self.lowest_celsius)?;
        bounds::HIGHEST_AIR.check_known(self.highest_celsius)?;
        bounds::DAMPEST_AIR.check_known(self.highest_humidity)?;
        match self.lowest_celsius.zip(self.highest_celsius) {
            Some((lowest, highest)) if lowest > highest => Err(Refused::Conflict {
                field: bounds::LOWEST_AIR.field.to_owned(),
                reason: JobMessage::AirOrder { lowest: Unit::Celsius.of(lowest), highest: Unit::Celsius.of(highest) }
                    .into(),
            }),
            _ => Ok(()),
        }
    }
}

impl Job {
    /// Minutes from its beginning at the bench until `now_ms`, rounded to five; none where it was not begun, has only just begun,
    /// or was begun longer ago than a job can take.
    ///
    /// ```
    /// use layshaft_core::record::Job;
    /// let job = Job { begun_ms: Some(0), ..Job::default() };
    /// assert_eq!(job.minutes_since_begun(93 * 60_000), Some(95.0));
    /// assert_eq!(job.minutes_since_begun(60_000), None);
    /// assert_eq!(job.minutes_since_begun(48 * 3_600_000), None);
    /// ```
    pub fn minutes_since_begun(&self, now_ms: i64) -> Option<f64> {
        let minutes = (now_ms - self.begun_ms?) as f64 / 60_000.0;
        bounds::MINUTES_TAKEN.check(5.0 * (minutes / 5.0).round()).ok()
    }

    /// The job with its texts trimmed, or the first field that cannot be accepted.
    pub fn checked(mut self) -> Result<Self, Refused> {
        self.title = check::check_title("title", FieldMessage::Job, &self.title)?;
        bounds::HANDS_ON.check(self.hands_on_minutes)?;
        for step in &mut self.steps {
            step.text = check::check_text("steps", FieldMessage::Step, &step.text, 600)?;
            bounds::CLOCK_MINUTES.check_known(step.clock_minutes)?;
        }
        if let Some(wait) = &mut self.wait {
            wait.name = check::check_title("wait", FieldMessage::Wait, &wait.name)?;
            bounds::WAIT_HOURS.check_known(wait.hours)?;
            bounds::AT_MOST_HOURS.check_known(wait.at_most_hours)?;
        }
        bounds::LEAST_MINUTES.check_known(self.least_minutes)?;
        bounds::MOST_MINUTES.check_known(self.most_minutes)?;
        for taken in self.spots.iter().flatten() {
            bounds::SPOT_HOURS.check_known(taken.hours_after)?;
        }
        for tool in self.tools.iter_mut().flatten() {
            *tool = check::check_title("tools", FieldMessage::Tool, tool)?;
        }
        if let Some(air) = &self.air {
            air.check()?;
        }
        self.check_order()?;
        self.checked_how_it_went()
    }

    /// The job once it is done, or why what is said of it cannot be accepted. A job whose estimate does not add up, as two devices
    /// can make it between them, is done all the same.
    pub fn done(self, now_ms: i64, minutes_taken: Option<f64>, note: Option<String>) -> Result<Self, Refused> {
        let (minutes_taken, note) = (minutes_taken.or(self.minutes_taken), note.or(self.note));
        Job { state: JobState::Done, done_ms: Some(now_ms), minutes_taken, note, ..self }.checked_how_it_went()
    }

    /// The job with its note trimmed, or which word on how it went cannot be accepted.
    fn checked_how_it_went(mut self) -> Result<Self, Refused> {
        bounds::MINUTES_TAKEN.check_known(self.minutes_taken)?;
        self.note = match self.note.as_deref().map(str::trim).filter(|note| !note.is_empty()) {
            Some(note) => Some(check::check_text("note", FieldMessage::Note, note, 600)?),
            None => None,
        };
        Ok(self)
    }

    /// Least, usual and most hands-on time stand in this order; a wait ends before its time limit.
    fn check_order(&self) -> Result<(), Refused> {
        let usual = self.hands_on_minutes;
        if self.least_minutes.is_some_and(|least| least > usual) {
            return Err(Refused::Conflict {
                field: bounds::LEAST_MINUTES.field.to_owned(),
                reason: JobMessage::LeastAboveUsual { usual: Unit::Minute.of(usual) }.into(),
            });
        }
        if self.most_minutes.is_some_and(|most| most < usual) {
            return Err(Refused::Conflict {
                field: bounds::MOST_MINUTES.field.to_owned(),
                reason: JobMessage::MostBelowUsual { usual: Unit::Minute.of(usual) }.into(),
            });
        }
        let limits = self.wait.as_ref().and_then(|wait| Some((wait.hours?, wait.at_most_hours?)));
        if let Some((hours, at_most)) = limits.filter(|(hours, at_most)| at_most < hours) {
            return Err(Refused::Conflict {
                field: bounds::AT_MOST_HOURS.field.to_owned(),
                reason: JobMessage::WaitBeyondLimit { limit: Unit::Hour.of(at_most), wait: Unit::Hour.of(hours) }
                    .into(),
            });
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn job(least: Option<f64>, most: Option<f64>, wait: Option<Wait>) -> Job {
        let (least_minutes, most_minutes) = (least, most);
        Job { title: "Coat".to_owned(), hands_on_minutes: 60.0, least_minutes, most_minutes, wait, ..Job::default() }
    }

    #[test]
    fn times_out_of_order_are_refused_and_times_in_order_are_taken() {
        assert!(job(Some(30.0), Some(180.0), None).checked().is_ok());
        let refused = |job: Job| job.checked().unwrap_err().english();
        assert!(refused(job(Some(90.0), None, None)).contains("not be more than the usual 60 min"));
        assert!(refused(job(None, Some(30.0), None)).contains("not be less than the usual 60 min"));
        assert!(refused(job(Some(-5.0), None, None)).contains("−5 min is outside"));
        let wait = Wait { name: "flash off".to_owned(), hours: Some(8.0), at_most_hours: Some(4.0), ..Wait::default() };
        assert!(refused(job(None, None, Some(wait))).contains("within 4 h"));
    }

    #[test]
    fn a_job_of_an_older_program_is_read_without_the_newer_fields() {
        let old: Job = serde_json::from_str(r#"{"title":"Old","handsOnMinutes":30}"#).unwrap();
        assert_eq!((old.least_minutes, old.place, old.helper), (None, None, None));
        assert!(old.checked().is_ok());
    }
}
