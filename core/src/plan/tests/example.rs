//! Invented bikes for the tests of the plan.

use crate::plan::explain::PlanRow;
use crate::plan::schedule::Scheduled;
use crate::record::{BenchTime, Bike, Job, JobState, Part, PartState, Span, Wait};
use crate::time::{Day, Moment, Zone};

/// Tuesday, 24 March 2026, noon, UTC.
pub(crate) fn tuesday_noon() -> Moment {
    Moment { now_ms: at("2026-03-24", 12 * 60), zone: Zone::default() }
}

/// An instant in UTC.
pub(crate) fn at(day: &str, minute: u32) -> i64 {
    Zone::default().instant_of(Day::read(day).unwrap(), minute)
}

/// Tuesday and Thursday 19 to 21, Saturday 9 to 16.
pub(crate) fn evenings_and_saturday() -> BenchTime {
    let span =
        |weekday, from_hour: u32, to_hour: u32| Span { weekday, from_minute: from_hour * 60, to_minute: to_hour * 60 };
    BenchTime { spans: vec![span(2, 19, 21), span(4, 19, 21), span(6, 9, 16)], ..BenchTime::default() }
}

/// A job that takes so many hours and follows others.
pub(crate) fn job(title: &str, hours: f64, after: &[&str]) -> Job {
    let after = after.iter().map(|id| (*id).to_owned()).collect();
    Job { title: title.to_owned(), hands_on_minutes: hours * 60.0, after, ..Job::default() }
}

/// The job with a wait of fixed hours after it.
pub(crate) fn waiting(job: Job, name: &str, hours: f64) -> Job {
    Job { wait: Some(Wait { name: name.to_owned(), hours: Some(hours), product: None, ..Wait::default() }), ..job }
}

/// The job when it was done.
pub(crate) fn done(job: Job, done_ms: i64) -> Job {
    Job { state: JobState::Done, done_ms: Some(done_ms), ..job }
}

/// The job when it needs parts.
pub(crate) fn needing(job: Job, parts: &[&str]) -> Job {
    Job { parts: parts.iter().map(|id| (*id).to_owned()).collect(), ..job }
}

/// A part in a state, expected on a day.
pub(crate) fn part(title: &str, state: PartState, expected: Option<&str>) -> Part {
    Part { title: title.to_owned(), state, expected: expected.map(str::to_owned), ..Part::default() }
}

/// A bike with these jobs, ranked as listed, marked by their titles.
pub(crate) fn bike(jobs: Vec<Job>) -> Bike {
    let ranked = (1..).zip(jobs).map(|(rank, job)| (job.title.clone(), Job { rank: f64::from(rank), ..job }));
    Bike { jobs: ranked.collect(), bench_time: evenings_and_saturday(), ..Bike::default() }
}

/// The row of a job.
pub(crate) fn row<'a>(scheduled: &'a Scheduled, job: &str) -> &'a PlanRow {
    scheduled.rows.iter().find(|row| row.job == job).unwrap()
}

/// When the work of a job begins and ends.
pub(crate) fn work_ms(scheduled: &Scheduled, job: &str) -> (i64, i64) {
    let work = &row(scheduled, job).work;
    (work.first().unwrap().from_ms, work.last().unwrap().to_ms)
}

/// Codes of the findings.
pub(crate) fn codes(scheduled: &Scheduled) -> Vec<&str> {
    scheduled.findings.iter().map(|finding| finding.code.as_str()).collect()
}
