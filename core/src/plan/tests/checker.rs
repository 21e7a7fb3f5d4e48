//! The checker of a plan: whether it keeps the calendars, the waits, the time limits, the parcels and the one mechanic.
//! It shares no code with what makes plans: it reads the rows and the records, and looks at the work minute by minute.

use crate::coating::ClimateLog;
use crate::plan::explain::PlanRow;
use crate::plan::schedule::Scheduled;
use crate::record::{Air, Bike, DayHours, Job, JobPlace, JobState, Span, WorkSpot};
use crate::time::{HOUR_MS, MINUTE_MS, Moment};

/// When a row lets those that follow it begin.
pub(crate) fn over_ms(row: &PlanRow) -> Option<i64> {
    row.wait_until_ms.or_else(|| row.work.last().map(|span| span.to_ms))
}

/// What a plan breaks, one sentence each; nothing when it holds.
pub(crate) fn broken(bike: &Bike, moment: &Moment, plan: &Scheduled) -> Vec<String> {
    let mut broken = Vec::new();
    let mut worked: Vec<(i64, i64, &str)> = Vec::new();
    let climate = ClimateLog::of(bike, moment);
    for row in plan.rows.iter().filter(|row| row.state != JobState::Done) {
        let job = &bike.jobs[&row.job];
        let (Some(first), Some(last)) = (row.work.first(), row.work.last()) else {
            if row.minutes_left > 0.0 && plan.ready_ms.is_some() {
                broken.push(format!("{} is not planned and there is a date", row.title));
            }
            continue;
        };
        worked.extend(row.work.iter().map(|span| (span.from_ms, span.to_ms, row.title.as_str())));
        let placed_ms: i64 = row.work.iter().map(|span| span.to_ms - span.from_ms).sum();
        if (placed_ms as f64 / MINUTE_MS as f64 - minutes_left(job)).abs() > 0.001 {
            broken.push(format!("{}: {placed_ms} ms are placed of {} min", row.title, minutes_left(job)));
        }
        if first.from_ms < moment.now_ms {
            broken.push(format!("{} begins before now", row.title));
        }
        for span in &row.work {
            let minutes = (span.from_ms..span.to_ms).step_by(MINUTE_MS as usize);
            let suits = |at_ms: i64| job.air.as_ref().is_none_or(|air| airy(air, climate.celsius_at(at_ms)));
            let mut minutes = minutes.chain([span.to_ms - 1]);
            if let Some(at_ms) = minutes.find(|at_ms| !allowed(bike, moment, job, *at_ms) || !suits(*at_ms)) {
                broken.push(format!("{} is done at {at_ms}, out of its hours", row.title));
            }
        }
        let limited = job.wait.as_ref().is_some_and(|wait| wait.at_most_hours.is_some());
        if !job.splittable.unwrap_or(!limited) && row.work.windows(2).any(|pair| pair[0].to_ms < pair[1].from_ms) {
            broken.push(format!("{} is split", row.title));
        }
        for need in &job.after {
            broken.extend(link_broken(bike, moment, plan, row, need, first.from_ms));
        }
        for part in job.parts.iter().filter_map(|id| bike.parts.get(id)) {
            if part.expected.as_ref().is_none_or(|day| *day > moment.zone.day_text_at(first.from_ms)) {
                broken.push(format!("{} begins before {} is here", row.title, part.title));
            }
        }
        let waited_ms =
            job.wait.as_ref().and_then(|wait| wait.hours).map_or(0, |hours| (hours * HOUR_MS as f64) as i64);
        if over_ms(row) != Some(last.to_ms + waited_ms) {
            broken.push(format!("{} is over at {:?}", row.title, over_ms(row)));
        }
    }
    broken.extend(spots_broken(bike, moment, plan));
    worked.sort_unstable();
    for pair in worked.windows(2).filter(|pair| pair[0].1 > pair[1].0) {
        broken.push(format!("{} and {} are done at once", pair[0].2, pair[1].2));
    }
    if let Some(ready_ms) = plan.ready_ms {
        let last_ms = plan.rows.iter().filter_map(|row| over_ms(row).max(done_over_ms(&bike.jobs[&row.job], moment)));
        let nothing_left = plan.rows.iter().all(|row| row.state != JobState::Done && row.minutes_left > 0.0);
        if last_ms.clone().any(|over_ms| over_ms > ready_ms) || (nothing_left && last_ms.max() != Some(ready_ms)) {
            broken.push(format!("ready at {ready_ms} is not when all is over"));
        }
        if plan.bound_ms.is_none_or(|bound_ms| bound_ms > ready_ms) {
            broken.push(format!("the bound {:?} lies after the ready date", plan.bound_ms));
        }
    }
    broken
}

/// The wait and the time limit between two jobs.
fn link_broken(
    bike: &Bike,
    moment: &Moment,
    plan: &Scheduled,
    row: &PlanRow,
    need: &str,
    begins_ms: i64,
) -> Vec<String> {
    let mut broken = Vec::new();
    let (before, job) = (&bike.jobs[need], &bike.jobs[&row.job]);
    let before_row = plan.rows.iter().find(|row| row.job == need).unwrap();
    let ended_ms = match before.state {
        JobState::Done => before.done_ms,
        _ => before_row.work.last().map(|span| span.to_ms),
    };
    let wait = before.wait.clone().unwrap_or_default();
    if let Some(ended_ms) = ended_ms {
        if begins_ms < ended_ms + (wait.hours.unwrap_or(0.0) * HOUR_MS as f64) as i64 {
            broken.push(format!("{} begins before {} is over", row.title, before.title));
        }
        let closes_ms = wait.at_most_hours.map(|hours| ended_ms + (hours * HOUR_MS as f64) as i64);
        let late = closes_ms.is_some_and(|closes_ms| begins_ms > closes_ms) && job.state == JobState::Open;
        let code = if closes_ms < Some(moment.now_ms) { "plan.limit-passed" } else { "plan.limit-missed" };
        let said = plan
            .findings
            .iter()
            .any(|finding| finding.code.as_str() == code && finding.text.english().contains(&job.title));
        if late && !(before.state == JobState::Done && said) {
            broken.push(format!("{} begins after the time limit of {}", row.title, before.title));
        }
        if late && code == "plan.limit-missed" && plan.ready_ms.is_some() {
            broken.push(format!("{} misses its limit and there is a date", row.title));
        }
    } else if before_row.minutes_left > 0.0 {
        broken.push(format!("{} is planned and {} is not", row.title, before.title));
    }
    broken
}

/// Two jobs in one spot at once.
fn spots_broken(bike: &Bike, moment: &Moment, plan: &Scheduled) -> Vec<String> {
    let mut broken = Vec::new();
    for spot in [WorkSpot::Stand, WorkSpot::SprayPlace, WorkSpot::Oven] {
        let mut held: Vec<(i64, i64, &str)> = Vec::new();
        for row in &plan.rows {
            let job = &bike.jobs[&row.job];
            let Some(hours) = hours_in(job, spot) else { continue };
            let (from_ms, ended_ms) = match (job.state, row.work.first(), row.work.last()) {
                (JobState::Done, ..) => (i64::MIN, job.done_ms.unwrap_or(moment.now_ms)),
                (_, Some(first), Some(last)) => (first.from_ms, last.to_ms),
                _ => continue,
            };
            held.push((from_ms, ended_ms + (hours * HOUR_MS as f64) as i64, &row.title));
        }
        held.sort_unstable();
        for pair in held.windows(2).filter(|pair| pair[0].0 > i64::MIN && pair[0].1 > pair[1].0) {
            broken.push(format!("{} and {} are in one spot at once", pair[0].2, pair[1].2));
        }
        let left_ms = held.iter().filter(|one| one.0 == i64::MIN).map(|one| one.1).max().unwrap_or(i64::MIN);
        for one in held.iter().filter(|one| one.0 > i64::MIN && one.0 < left_ms) {
            broken.push(format!("{} takes a spot that is not free yet", one.2));
        }
    }
    broken
}

/// How many hours a job keeps a spot after its work; none where it does not take it.
pub(crate) fn hours_in(job: &Job, spot: WorkSpot) -> Option<f64> {
    let said = job.spots.iter().flatten().filter(|taken| taken.spot == spot);
    let hours = said.map(|taken| taken.hours_after.unwrap_or(0.0)).reduce(f64::max);
    hours.or((spot == WorkSpot::SprayPlace && job.place == Some(JobPlace::SprayPlace)).then_some(0.0))
}

/// When the wait after a job that is done is over.
fn done_over_ms(job: &Job, moment: &Moment) -> Option<i64> {
    let hours = job.wait.as_ref().and_then(|wait| wait.hours).unwrap_or(0.0);
    let done_ms = job.done_ms.unwrap_or(moment.now_ms);
    (job.state == JobState::Done).then_some(done_ms + (hours * HOUR_MS as f64) as i64)
}

fn minutes_left(job: &Job) -> f64 {
    match job.state {
        JobState::Begun if !job.steps.is_empty() => {
            job.hands_on_minutes * (1.0 - (f64::from(job.steps_done) / job.steps.len() as f64).min(1.0))
        }
        _ => job.hands_on_minutes,
    }
}

/// Whether a job may be worked on at an instant.
fn allowed(bike: &Bike, moment: &Moment, job: &Job, at_ms: i64) -> bool {
    let bench_time = &bike.bench_time;
    let outdoors = matches!(job.place, Some(JobPlace::Daylight | JobPlace::SprayPlace));
    let usual = DayHours { from_minute: 480, to_minute: 1080 };
    let off = bench_time.days_off.iter().any(|off| off.day == moment.zone.day_text_at(at_ms));
    weekly(&bench_time.spans, moment, at_ms)
        && !off
        && (!outdoors || daily(bench_time.daylight.as_ref().unwrap_or(&usual), moment, at_ms))
        && (job.helper != Some(true) || bench_time.helper.as_deref().is_none_or(|hours| weekly(hours, moment, at_ms)))
        && !(job.noisy == Some(true) && bench_time.quiet.as_ref().is_some_and(|quiet| daily(quiet, moment, at_ms)))
}

/// Whether it is neither too cold nor too warm, to a tenth.
fn airy(air: &Air, celsius: f64) -> bool {
    air.lowest_celsius.is_none_or(|lowest| celsius >= lowest - 0.05)
        && air.highest_celsius.is_none_or(|highest| celsius <= highest + 0.05)
}

fn weekly(spans: &[Span], moment: &Moment, at_ms: i64) -> bool {
    let day = moment.zone.day_at(at_ms);
    spans.iter().filter(|span| span.weekday == day.weekday()).any(|span| {
        let instant = |minute| moment.zone.instant_of(day, minute);
        (instant(span.from_minute)..instant(span.to_minute)).contains(&at_ms)
    })
}

fn daily(hours: &DayHours, moment: &Moment, at_ms: i64) -> bool {
    let day = moment.zone.day_at(at_ms);
    let from_ms = |days| moment.zone.instant_of(day.plus(days), hours.from_minute);
    let to_ms = |days| moment.zone.instant_of(day.plus(days), hours.to_minute);
    if hours.from_minute < hours.to_minute {
        return (from_ms(0)..to_ms(0)).contains(&at_ms);
    }
    hours.from_minute > hours.to_minute && ((from_ms(-1)..to_ms(0)).contains(&at_ms) || at_ms >= from_ms(0))
}

#[test]
fn the_checker_sees_each_rule_that_is_broken() {
    use super::example::{bike, job, tuesday_noon, waiting};
    use crate::plan::hours::WorkSpan;
    use crate::plan::schedule::schedule;
    let mut coat = waiting(job("coat", 1.0, &[]), "flash off", 1.0);
    coat.wait.as_mut().unwrap().at_most_hours = Some(3.0);
    let clear = Job { place: Some(JobPlace::Daylight), ..job("clear", 1.0, &["coat"]) };
    let bike = bike(vec![coat, clear, job("tyre", 3.0, &[])]);
    let plan = schedule(&bike, &tuesday_noon());
    assert_eq!(broken(&bike, &tuesday_noon(), &plan), Vec::<String>::new());
    let moved = |title: &str, change: &dyn Fn(&mut Vec<WorkSpan>)| {
        let mut plan = plan.clone();
        let row = plan.rows.iter_mut().find(|row| row.title == title).unwrap();
        change(&mut row.work);
        broken(&bike, &tuesday_noon(), &plan).join("; ")
    };
    let later = |hours: i64| {
        move |work: &mut Vec<WorkSpan>| {
            for span in work {
                span.from_ms += hours * HOUR_MS;
                span.to_ms += hours * HOUR_MS;
            }
        }
    };
    assert!(moved("clear", &later(168)).contains("after the time limit"));
    assert!(moved("clear", &later(-1)).contains("before coat is over"));
    assert!(moved("clear", &later(10)).contains("out of its hours"));
    assert!(moved("tyre", &later(-72)).contains("out of its hours"));
    assert!(moved("coat", &|work| work[0].to_ms -= HOUR_MS / 2).contains("are placed of"));
    let split = |work: &mut Vec<WorkSpan>| {
        let half = work[0].from_ms + HOUR_MS / 2;
        let rest = WorkSpan { from_ms: half + HOUR_MS, to_ms: work[0].to_ms + HOUR_MS };
        work[0].to_ms = half;
        work.push(rest);
    };
    assert!(moved("coat", &split).contains("is split"));
    let on_top = plan.rows.iter().find(|row| row.title == "clear").unwrap().work.clone();
    assert!(moved("tyre", &move |work| *work = on_top.clone()).contains("are done at once"));
    let mut crowded = bike.clone();
    for title in ["coat", "tyre"] {
        let taken = crate::record::SpotTaken { spot: WorkSpot::Oven, hours_after: Some(2000.0) };
        crowded.jobs.get_mut(title).unwrap().spots = Some(vec![taken]);
    }
    assert!(broken(&crowded, &tuesday_noon(), &plan).join("; ").contains("in one spot at once"));
}
