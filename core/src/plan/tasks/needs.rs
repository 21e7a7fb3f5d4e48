//! What each job needs before it can begin: jobs with their waits over, parts that are here. From it come the tasks
//! that can be planned, and a finding for each root cause of those that cannot.

use std::collections::{BTreeMap, BTreeSet};

use super::cycles::cycles;
use super::limits::{at_most_ms, limit_passed, link_limits};
use super::notes::{assumed_bench_time, assumed_helper, note_part_day, unknown_wait};
use super::painting::{NextCoat, Painting, paintings};
use super::resources::{Takes, left_taken};
use super::running::Running;
use super::running_waits::running_waits;
use super::waits::{Clockwork, WaitRule};
use super::{ReleaseCause, Task};
use crate::message::{List, ListStyle};
use crate::plan::hours::{HoursAsked, unknown_air};
use crate::plan::message::PlanFindingMessage;
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{Bike, Job, JobState, Part, PartState, WorkSpot};
use crate::time::{Day, MINUTE_MS, Moment};

/// A parcel counts as here from this minute of its day on.
pub(crate) const MORNING_MINUTE: u32 = 8 * 60;

/// Everything that planning has to respect.
pub(crate) struct Needs<'a> {
    /// What can be planned, each after all that it must follow, else by rank, then by id; begun jobs first.
    pub(crate) tasks: Vec<Task<'a>>,
    /// Ids of jobs that cannot be planned.
    pub(crate) stuck: BTreeSet<&'a str>,
    /// Waits that run already, and waits that are over.
    pub(crate) running: Vec<Running>,
    /// Paint jobs that run coat by coat.
    pub(crate) paintings: Vec<Painting>,
    /// Spots that jobs which are done left taken: the spot, the job's title, until when.
    pub(crate) taken: Vec<(WorkSpot, &'a str, i64)>,
    /// When the last job was done, where all are done.
    pub(crate) last_done_ms: Option<i64>,
    /// What is worth saying.
    pub(crate) findings: Vec<Finding>,
}

impl<'a> Needs<'a> {
    /// Reads the needs of every job of the bike.
    pub(crate) fn of(bike: &'a Bike, moment: &Moment, clockwork: &Clockwork) -> Needs<'a> {
        let now_ms = moment.at_ms();
        let mut findings = Vec::new();
        assumed_bench_time(&bike.bench_time, &mut findings);
        assumed_helper(bike, &mut findings);
        unknown_air(bike, clockwork.climate(), now_ms, &mut findings);
        let paintings = paintings(bike, moment);
        let running = running_waits(bike, now_ms, clockwork, &paintings, &mut findings);
        let taken = left_taken(bike.jobs.values(), now_ms);
        let open = in_order(bike);
        let mut stuck = BTreeSet::new();
        circles(bike, &open, &mut stuck, &mut findings);
        let over: BTreeMap<&str, &Running> = running.iter().map(|wait| (wait.id.as_str(), wait)).collect();
        let mut tasks: Vec<Task> = Vec::new();
        let mut place_of: BTreeMap<&str, usize> = BTreeMap::new();
        for &id in &open {
            let Some(job) = bike.jobs.get(id).filter(|_| !stuck.contains(id)) else { continue };
            let mut task = Task {
                id,
                job,
                work_ms: work_left_ms(job),
                after: Vec::new(),
                not_before_ms: now_ms,
                fixed_ms: now_ms,
                set_by: ReleaseCause::Now,
                freed_ms: None,
                wait: WaitRule::of(job.wait.as_ref(), bike),
                kind: HoursAsked::of(job),
                takes: Takes::of(job),
                in_one_go: !job.splittable.unwrap_or(at_most_ms(job).is_none()),
                within: Vec::new(),
                limits: false,
                begin_by_ms: None,
                never: false,
            };
            if let Some(painting) = paintings.iter().find(|painting| painting.job.as_deref() == Some(id)) {
                painting.holds(&mut task, moment, &mut findings);
            }
            task.needs_spots(&taken);
            let mut can = task.needs_parts(bike, moment, &mut findings);
            for need in &job.after {
                match (place_of.get(need.as_str()), over.get(need.as_str())) {
                    (Some(&place), _) => {
                        can &= tasks.get(place).is_some_and(|before| before.wait != WaitRule::Unknown);
                        task.after.push(place);
                    }
                    (None, Some(wait)) => {
                        can &= wait.over_ms.is_some();
                        task.after_running(wait, moment, &mut findings);
                    }
                    (None, None) => can &= !bike.jobs.contains_key(need),
                }
            }
            if can {
                unknown_wait(&task, &mut findings);
                place_of.insert(id, tasks.len());
                tasks.push(task);
            } else {
                stuck.insert(id);
            }
        }
        link_limits(&mut tasks);
        let last_done_ms = bike.jobs.values().filter_map(|job| job.done_ms).max().filter(|_| open.is_empty());
        Needs { tasks, stuck, running, paintings, taken, last_done_ms, findings }
    }
}

impl Needs<'_> {
    /// When the last wait that runs already is over.
    pub(crate) fn running_until_ms(&self) -> Option<i64> {
        self.running.iter().filter_map(|wait| wait.over_ms).max()
    }

    /// The paint job that runs within a job.
    pub(crate) fn painting_of(&self, job: &str) -> Option<&Painting> {
        self.paintings.iter().find(|painting| painting.job.as_deref() == Some(job))
    }

    /// The next coat of the paint job that runs within a job.
    pub(crate) fn coat_below(&self, job: &str) -> Option<&NextCoat> {
        self.painting_of(job)?.next.as_ref()
    }
}

impl Task<'_> {
    /// Waits for the spots that jobs which are done left taken.
    fn needs_spots(&mut self, taken: &[(WorkSpot, &str, i64)]) {
        for (spot, title, until_ms) in taken {
            if self.takes.each().any(|(own, _)| own == *spot) {
                self.fixed_ms = self.fixed_ms.max(*until_ms);
                self.wait_for(*until_ms, ReleaseCause::Spot(*spot, (*title).to_owned()));
            }
        }
    }

    /// Waits until a wait that runs is over, and begins before its time limit has passed.
    fn after_running(&mut self, wait: &Running, moment: &Moment, findings: &mut Vec<Finding>) {
        if let Some(over_ms) = wait.over_ms {
            self.fixed_ms = self.fixed_ms.max(over_ms);
            self.wait_for(over_ms, ReleaseCause::Wait(wait.id.clone()));
        }
        let Some(closes_ms) = wait.closes_ms.filter(|_| self.job.state == JobState::Open) else { return };
        if closes_ms >= moment.at_ms() {
            self.begin_by_ms = Some(self.begin_by_ms.map_or(closes_ms, |other| other.min(closes_ms)));
        } else {
            findings.push(limit_passed(self.job, &wait.title, closes_ms, &moment.zone));
        }
    }

    /// Waits for the parts; false when a part has no day.
    fn needs_parts(&mut self, bike: &Bike, moment: &Moment, findings: &mut Vec<Finding>) -> bool {
        let mut can = true;
        for part in self.job.parts.iter().filter_map(|id| bike.parts.get(id)).filter(|part| missing(part)) {
            match part.expected.as_deref().and_then(Day::read).or_else(|| likely_day(part, moment)) {
                Some(day) => {
                    let comes_ms = counted_on_ms(day, moment);
                    if part.delivery.is_none() {
                        self.fixed_ms = self.fixed_ms.max(comes_ms);
                    }
                    self.wait_for(comes_ms, ReleaseCause::Part(part.title.clone()));
                    note_part_day(part, day, moment, findings);
                }
                None => {
                    can = false;
                    let said = PlanFindingMessage::PartWithoutDay {
                        job: self.job.title.clone(),
                        part: part.title.clone(),
                        ordered: part.state == PartState::Ordered,
                    };
                    findings.push(Finding::new(FindingCode::PlanPartWithoutDay, Weight::Care, said));
                }
            }
        }
        can
    }
}

/// The day on which a part comes as a rule, where only its delivery is known.
pub(crate) fn likely_day(part: &Part, moment: &Moment) -> Option<Day> {
    let delivery = part.delivery.as_ref()?;
    let ordered = delivery.ordered.as_deref().and_then(Day::read);
    Some(ordered.unwrap_or(moment.zone.day_at(moment.at_ms())).plus(delivery.likely_days.round() as i64))
}

/// Whether a part still has to come.
pub(crate) fn missing(part: &Part) -> bool {
    matches!(part.state, PartState::Wanted | PartState::Ordered)
}

/// Hands-on minutes left: the whole time, less the share of the steps that are done where the job is begun.
///
/// ```text
/// left = hands-on · (1 − steps done / steps)
/// ```
pub(crate) fn minutes_left(job: &Job) -> f64 {
    let whole = if job.hands_on_minutes.is_finite() { job.hands_on_minutes.clamp(0.0, 1e6) } else { 0.0 };
    match (job.state, job.steps.len()) {
        (JobState::Done, _) => 0.0,
        (JobState::Begun, steps) if steps > 0 => whole * (1.0 - (f64::from(job.steps_done) / steps as f64).min(1.0)),
        _ => whole,
    }
}

fn work_left_ms(job: &Job) -> i64 {
    (minutes_left(job) * MINUTE_MS as f64).round() as i64
}

/// The instant from which the plan counts on a parcel: the morning of its day; when that day has passed, tomorrow's.
fn counted_on_ms(day: Day, moment: &Moment) -> i64 {
    let today = moment.zone.day_at(moment.at_ms());
    let counted = if day < today { today.plus(1) } else { day };
    moment.zone.instant_of(counted, MORNING_MINUTE)
}

/// Ids of the jobs that are not done: each after all that it must follow, else begun ones first, then by rank, then
/// by id. Jobs on circles, and what hangs on them, come last.
fn in_order(bike: &Bike) -> Vec<&str> {
    let mut left: Vec<(&str, &Job)> =
        bike.jobs.iter().filter(|(_, job)| job.state != JobState::Done).map(|(id, job)| (id.as_str(), job)).collect();
    left.sort_by(|(a_mark, a), (b_mark, b)| {
        let begun = |job: &Job| job.state != JobState::Begun;
        begun(a).cmp(&begun(b)).then(a.rank.total_cmp(&b.rank)).then(a_mark.cmp(b_mark))
    });
    let mut waiting: BTreeSet<&str> = left.iter().map(|(id, _)| *id).collect();
    let mut order = Vec::with_capacity(left.len());
    while let Some(place) =
        left.iter().position(|(_, job)| job.after.iter().all(|need| !waiting.contains(need.as_str())))
    {
        let (id, _) = left.remove(place);
        waiting.remove(id);
        order.push(id);
    }
    order.extend(left.into_iter().map(|(id, _)| id));
    order
}

/// Finds circles; their jobs are stuck.
fn circles<'a>(bike: &'a Bike, open: &[&'a str], stuck: &mut BTreeSet<&'a str>, findings: &mut Vec<Finding>) {
    let place: BTreeMap<&str, usize> = open.iter().enumerate().map(|(place, id)| (*id, place)).collect();
    let title = |place: &usize| {
        let job = open.get(*place).and_then(|id| bike.jobs.get(*id));
        job.map_or_else(String::new, |job| job.title.clone())
    };
    let after: Vec<Vec<usize>> = open
        .iter()
        .filter_map(|id| bike.jobs.get(*id))
        .map(|job| job.after.iter().filter_map(|need| place.get(need.as_str()).copied()).collect())
        .collect();
    for round in cycles(&after) {
        stuck.extend(round.iter().filter_map(|place| open.get(*place).copied()));
        let links = round.iter().zip(round.iter().cycle().skip(1));
        let needs = links
            .map(|(job, need)| PlanFindingMessage::MustFollow { job: title(job), before: title(need) }.into())
            .collect();
        let said = PlanFindingMessage::Circle { needs: List(ListStyle::Comma, needs) };
        findings.push(Finding::new(FindingCode::PlanCircle, Weight::Care, said));
    }
}
