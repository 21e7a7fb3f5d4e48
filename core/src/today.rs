//! Today: what to do next with the time at hand, what cures, when the bike will be ready, what stops it.

use std::cmp::Reverse;

use layshaft_wire::wire;

use crate::bounds;
use crate::coating::{CureAnswer, ProcessAnswer, running_cures, running_processes};
use crate::error::Refused;
use crate::events::{Due, since};
use crate::inspection::{InspectionAsk, Readiness, Verdict, inspection_answer};
use crate::message::Message;
use crate::plan::{PlanRow, Scheduled, air_words};
use crate::record::{Bike, Job, JobPlace, JobState, Part, PartState};
use crate::time::Moment;

/// What to answer for.
#[wire(lenient)]
pub struct TodayAsk {
    /// Minutes at hand; left out: 60.
    pub minutes_at_hand: Option<f64>,
    /// When the app was last open, milliseconds since 1970 (UTC); left out: nothing is said of what came about since.
    pub last_seen_ms: Option<i64>,
}

/// A job that can be done now.
#[wire]
pub struct NextJob {
    /// Id of the job.
    pub job: String,
    /// Title.
    pub title: String,
    /// Hands-on minutes left.
    pub minutes_left: f64,
    /// It fits into the time at hand.
    pub fits: bool,
    /// Why this one, in a few words.
    pub why: Message,
    /// Jobs that it frees.
    pub frees: u32,
    /// It holds the ready date: left undone at the next bench time, it would move it.
    pub critical: bool,
}

/// A part on its way.
#[wire]
pub struct PartDue {
    /// Id.
    pub id: String,
    /// The part.
    pub part: Part,
}

/// The page that the app opens with.
#[wire]
pub struct TodayAnswer {
    /// Name of the bike.
    pub bike: String,
    /// When everything is done and every wait is over; none when it cannot be planned.
    pub ready_ms: Option<i64>,
    /// What holds the date, in one sentence.
    pub held_by: Message,
    /// Jobs that can be done now, best first.
    pub next: Vec<NextJob>,
    /// Running cures, the next to end first.
    pub cures: Vec<CureAnswer>,
    /// Paint jobs in several coats that run.
    pub processes: Vec<ProcessAnswer>,
    /// What came about by itself since the app was last open, earliest first.
    pub while_away: Vec<Due>,
    /// Parts on their way.
    pub parts_due: Vec<PartDue>,
    /// The inspection as of today.
    pub readiness: Readiness,
    /// Jobs done and in all.
    pub jobs_done: u32,
    /// All jobs.
    pub jobs: u32,
}

/// Minutes at hand when nothing is said.
const USUAL_MINUTES: f64 = 60.0;

/// Everything for the page that the app opens with, from the schedule of the bike.
pub fn today_answer(
    bike: &Bike,
    ask: &TodayAsk,
    moment: &Moment,
    scheduled: &Scheduled,
) -> Result<TodayAnswer, Refused> {
    let minutes_at_hand = bounds::TIME_AT_HAND.check(ask.minutes_at_hand.unwrap_or(USUAL_MINUTES))?;
    let Scheduled { rows, ready_ms, held_by, .. } = scheduled;
    Ok(TodayAnswer {
        bike: bike.identity.name.clone(),
        ready_ms: *ready_ms,
        held_by: held_by.clone(),
        next: next_jobs(bike, moment, rows, minutes_at_hand),
        cures: running_cures(bike, moment),
        processes: running_processes(bike, moment),
        while_away: ask.last_seen_ms.map(|seen_ms| since(bike, rows, seen_ms, moment)).unwrap_or_default(),
        parts_due: parts_due(bike),
        readiness: readiness_today(bike),
        jobs_done: rows.iter().map(|row| u32::from(row.state == JobState::Done)).sum(),
        jobs: u32::try_from(rows.len()).unwrap_or(u32::MAX),
    })
}

/// Jobs that nothing stands in the way of, best first: those that fit the time before those that do not; of these the
/// ones that hold the date, then those that free most others, then as planned.
fn next_jobs(bike: &Bike, moment: &Moment, rows: &[PlanRow], minutes_at_hand: f64) -> Vec<NextJob> {
    let sitting_ends_ms = bike.bench_time.next_ends_ms(moment);
    let planned_next = |row: &PlanRow| row.work.first().is_none_or(|span| Some(span.from_ms) < sitting_ends_ms);
    let free = rows.iter().filter(|row| row.state != JobState::Done && row.blocked_by.is_empty());
    let mut next: Vec<NextJob> = free
        .map(|row| {
            let (fits, frees) = (row.minutes_left <= minutes_at_hand, frees(rows, &row.job));
            let critical = row.critical && planned_next(row);
            let why = why(bike, row, fits, frees, critical);
            let (job, title, minutes_left) = (row.job.clone(), row.title.clone(), row.minutes_left);
            NextJob { job, title, minutes_left, fits, why: why.into(), frees, critical }
        })
        .collect();
    next.sort_by_key(|job| Reverse((job.fits, job.critical, job.frees)));
    next
}

/// How many jobs have this one as the last that is not done before them.
fn frees(rows: &[PlanRow], mark: &str) -> u32 {
    let open = |need: &str| rows.iter().any(|row| row.job == need && row.state != JobState::Done);
    let freed = rows.iter().filter(|row| row.state != JobState::Done && row.after.iter().any(|need| need == mark));
    freed.map(|row| u32::from(row.after.iter().all(|need| need == mark || !open(need)))).sum()
}

/// Why this job, in a few words: at most two reasons.
fn why(bike: &Bike, row: &PlanRow, fits: bool, frees: u32, critical: bool) -> String {
    let mut reasons = Vec::new();
    if !fits {
        reasons.push("longer than the time at hand".to_owned());
    }
    reasons.extend(bike.jobs.get(&row.job).and_then(asks));
    if critical {
        reasons.push("holds the ready date".to_owned());
    }
    match frees {
        0 => {}
        1 => reasons.push("frees one job".to_owned()),
        more => reasons.push(format!("frees {more} jobs")),
    }
    if row.state == JobState::Begun {
        reasons.push("begun already".to_owned());
    }
    if let Some(wait) = &row.wait_name {
        reasons.push(format!("then time works for you: {wait}"));
    }
    if bike.jobs.get(&row.job).is_some_and(|job| job.parts.iter().any(|part| bike.parts.contains_key(part))) {
        reasons.push("its parts are here".to_owned());
    }
    if reasons.is_empty() {
        reasons.push("nothing stands in its way".to_owned());
    }
    reasons.truncate(2);
    reasons.join(", ")
}

/// What a job asks of the hour in which it is done.
fn asks(job: &Job) -> Option<String> {
    let place = match job.place {
        Some(JobPlace::Daylight) => Some("daylight"),
        Some(JobPlace::SprayPlace) => Some("the spray place in daylight"),
        Some(JobPlace::Bench) | None => None,
    };
    let helper = job.helper.filter(|asks| *asks).map(|_| "a helper");
    let asks: Vec<String> =
        place.into_iter().chain(helper).map(str::to_owned).chain(air_words(job.air.as_ref())).collect();
    (!asks.is_empty()).then(|| format!("needs {}", asks.join(" and ")))
}

/// Parts that are ordered, the first to come first; those without a day last.
fn parts_due(bike: &Bike) -> Vec<PartDue> {
    let mut due: Vec<PartDue> = bike
        .parts
        .iter()
        .filter(|(_, part)| part.state == PartState::Ordered)
        .map(|(id, part)| PartDue { id: id.clone(), part: part.clone() })
        .collect();
    due.sort_by_key(|due| (due.part.expected.is_none(), due.part.expected.clone()));
    due
}

/// Readiness against the bike's own pack. Where there is no such pack nothing is known, and that is no pass.
fn readiness_today(bike: &Bike) -> Readiness {
    match inspection_answer(bike, &InspectionAsk::default()) {
        Ok(sheet) => sheet.readiness,
        Err(refused) => Readiness {
            verdict: Verdict::Unknown,
            passes: 0,
            fails: 0,
            unknowns: 0,
            does_not_apply: 0,
            stoppers: Vec::new(),
            sentence: format!("Nothing can be said about the inspection: {refused}.").into(),
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Step;

    #[test]
    fn what_a_job_asks_of_the_hour_is_said_beside_it() {
        let outdoors = Job { place: Some(JobPlace::Daylight), helper: Some(true), ..job("ride", 0.5, &[]) };
        let sheet = today(&bike(vec![outdoors, Job { helper: Some(false), ..job("tyre", 0.5, &[]) }]), 60.0);
        let why =
            |title: &str| sheet.next.iter().find(|next| next.title == title).map(|next| next.why.clone()).unwrap();
        assert!(why("ride").english().starts_with("needs daylight and a helper"), "{}", why("ride"));
        assert!(!why("tyre").english().contains("needs"), "{}", why("tyre"));
    }
    use crate::plan::schedule;
    use crate::plan::tests::example::{at, bike, done, job, needing, part, tuesday_noon, waiting};
    use crate::ready_made::typical_product;
    use crate::record::Coat;

    fn asked(bike: &Bike, ask: &TodayAsk) -> Result<TodayAnswer, Refused> {
        today_answer(bike, ask, &tuesday_noon(), &schedule(bike, &tuesday_noon()))
    }

    fn today(bike: &Bike, minutes_at_hand: f64) -> TodayAnswer {
        asked(bike, &TodayAsk { minutes_at_hand: Some(minutes_at_hand), ..TodayAsk::default() }).unwrap()
    }

    fn titles(sheet: &TodayAnswer) -> Vec<&str> {
        sheet.next.iter().map(|next| next.title.as_str()).collect()
    }

    #[test]
    fn what_fits_and_holds_the_date_comes_first_then_what_frees_most() {
        let jobs = vec![
            job("Label a plug", 0.25, &[]),
            job("Fit the rear tyre", 0.75, &[]),
            job("Fit the chain", 0.5, &["Fit the rear tyre"]),
            job("Set the rear brake", 0.5, &["Fit the rear tyre"]),
            waiting(job("Reline the tank", 1.0, &[]), "liner cures", 160.0),
            job("Refit the tank", 2.0, &["Reline the tank"]),
            job("Strip the engine", 2.0, &[]),
        ];
        let sheet = today(&bike(jobs), 60.0);
        assert_eq!(titles(&sheet), ["Reline the tank", "Fit the rear tyre", "Label a plug", "Strip the engine"]);
        let [reline, tyre, label, strip] = sheet.next.as_slice() else { panic!("{:?}", sheet.next) };
        assert!(reline.critical && reline.fits && reline.frees == 1);
        assert_eq!(reline.why, "holds the ready date, frees one job");
        assert_eq!((tyre.frees, tyre.why.english().as_str()), (2, "frees 2 jobs"));
        assert_eq!(label.why, "nothing stands in its way");
        assert!(!strip.fits && strip.why.english().starts_with("longer than the time at hand"));
    }

    #[test]
    fn a_job_is_not_offered_while_a_job_a_wait_or_a_part_stands_in_its_way() {
        let noon_ms = tuesday_noon().now_ms;
        let mut bike = bike(vec![
            job("Strip", 1.0, &[]),
            job("After a job", 1.0, &["Strip"]),
            done(waiting(job("Seal", 1.0, &[]), "sealant sets", 24.0), noon_ms - 3_600_000),
            job("After a wait", 1.0, &["Seal"]),
            needing(job("With a part", 1.0, &[]), &["kit"]),
        ]);
        bike.parts.insert("kit".to_owned(), part("Chain kit", PartState::Ordered, Some("2026-03-24")));
        assert_eq!(titles(&today(&bike, 60.0)), ["Strip"]);
        // A day later the sealant has set, and the kit has come.
        bike.parts.get_mut("kit").unwrap().state = PartState::Here;
        bike.jobs.get_mut("Seal").unwrap().done_ms = Some(noon_ms - 25 * 3_600_000);
        let sheet = today(&bike, 60.0);
        assert_eq!(titles(&sheet), ["Strip", "After a wait", "With a part"]);
        assert!(sheet.next[2].why.english().contains("its parts are here"));
    }

    #[test]
    fn a_begun_job_counts_with_what_is_left_of_it() {
        let steps = vec![Step { text: "One step".to_owned(), ..Step::default() }; 4];
        let begun = crate::record::Job { steps, steps_done: 3, state: JobState::Begun, ..job("Strip", 2.0, &[]) };
        let sheet = today(&bike(vec![begun]), 30.0);
        assert_eq!((sheet.next[0].minutes_left, sheet.next[0].fits), (30.0, true));
    }

    #[test]
    fn parts_on_their_way_and_running_cures_stand_in_the_order_of_their_days() {
        let mut bike = bike(vec![done(job("Strip", 1.0, &[]), 0), job("Build", 1.0, &["Strip"])]);
        for (mark, state, expected) in [
            ("a", PartState::Ordered, None),
            ("b", PartState::Ordered, Some("2026-04-02")),
            ("c", PartState::Ordered, Some("2026-03-26")),
            ("d", PartState::Here, Some("2026-03-01")),
            ("e", PartState::Wanted, Some("2026-03-30")),
        ] {
            bike.parts.insert(mark.to_owned(), part(mark, state, expected));
        }
        for (mark, hours) in [("first", 20), ("second", 10)] {
            let product = typical_product("tank-liner").unwrap();
            let applied_ms = tuesday_noon().now_ms - hours * 3_600_000;
            bike.coats.insert(mark.to_owned(), Coat { title: mark.to_owned(), product, applied_ms, ..Coat::default() });
        }
        let sheet = today(&bike, 60.0);
        assert_eq!(sheet.parts_due.iter().map(|due| due.id.as_str()).collect::<Vec<_>>(), ["c", "b", "a"]);
        assert_eq!(sheet.cures.iter().map(|cure| cure.title.as_str()).collect::<Vec<_>>(), ["first", "second"]);
        assert_eq!((sheet.jobs_done, sheet.jobs), (1, 2));
        assert!(sheet.ready_ms > Some(at("2026-03-27", 0)));
    }

    #[test]
    fn an_empty_bike_has_a_page_and_no_pass() {
        let sheet = asked(&Bike::default(), &TodayAsk::default()).unwrap();
        assert_eq!((sheet.ready_ms, sheet.jobs, sheet.next.len()), (None, 0, 0));
        assert_ne!(sheet.readiness.verdict, Verdict::Pass);
    }

    #[test]
    fn an_unknown_pack_is_no_pass_and_no_error() {
        let mut bike = Bike::default();
        bike.identity.pack = Some("never there".to_owned());
        let sheet = asked(&bike, &TodayAsk::default()).unwrap();
        assert_eq!(sheet.readiness.verdict, Verdict::Unknown);
    }

    #[test]
    fn a_time_at_hand_outside_its_range_is_refused() {
        for minutes in [0.0, 1441.0, f64::NAN] {
            let ask = TodayAsk { minutes_at_hand: Some(minutes), ..TodayAsk::default() };
            let refused = asked(&Bike::default(), &ask).unwrap_err().english();
            assert!(refused.starts_with("Time at hand") && refused.contains("1 to 1 440 min"), "{refused}");
        }
    }
}
