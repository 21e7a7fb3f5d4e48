//! The plan against brute force: small bikes made up by dice of a fixed seed, each planned and solved beside that by code
//! that knows nothing of the planner: every order, and every beginning of a job that can be put off on purpose, on a
//! grid of quarters of an hour.

use super::checker::{broken, hours_in};
use super::example::{bike, part, tuesday_noon};
use crate::plan::schedule::schedule;
use crate::plan::search::Dice;
use crate::record::{BenchTime, Bike, DayHours, Job, JobPlace, JobState, PartState, Span, SpotTaken, Wait, WorkSpot};
use crate::time::{DAY_MS, Day, HOUR_MS, MINUTE_MS, Zone};

const GRAIN_MS: i64 = 15 * MINUTE_MS;
/// Five weeks of quarters.
const HORIZON: i64 = 5 * 7 * 96;
const CASES: u32 = 200;
const SPOTS: [WorkSpot; 3] = [WorkSpot::Stand, WorkSpot::SprayPlace, WorkSpot::Oven];

/// A job as brute force sees it, in quarters of an hour from now on.
struct Piece {
    work: usize,
    in_one_go: bool,
    begun: bool,
    wait: i64,
    limit: Option<i64>,
    after: Vec<usize>,
    from: i64,
    by: i64,
    hours: Vec<i64>,
    /// Quarters that each spot stays taken after the work.
    spots: [Option<i64>; 3],
}

struct Brute<'a> {
    pieces: &'a [Piece],
    best: i64,
}

impl Brute<'_> {
    /// Tries every job next, at every beginning that could help.
    fn go(&mut self, placed: &mut Vec<Option<(i64, i64)>>, free: i64, spots: [i64; 3], over: i64) {
        if placed.iter().all(Option::is_some) {
            self.best = over.min(self.best);
            return;
        }
        // What is begun goes on first, in the order of the list.
        let goes_on = (0..placed.len()).find(|one| self.pieces[*one].begun && placed[*one].is_none());
        for next in 0..placed.len() {
            let piece = &self.pieces[next];
            let ready = piece.after.iter().all(|need| placed[*need].is_some());
            if placed[next].is_some() || !ready || goes_on.is_some_and(|one| one != next) {
                continue;
            }
            let over_of = |need: &usize| placed[*need].map_or(0, |(_, end)| end) + self.pieces[*need].wait;
            let earliest = piece.after.iter().map(over_of).max().unwrap_or(0).max(piece.from).max(free);
            let taken = (0..3).filter(|spot| piece.spots[*spot].is_some()).map(|spot| spots[spot]);
            let earliest = taken.fold(earliest, i64::max);
            let closes = piece.after.iter().filter_map(|need| Some(placed[*need]?.1 + self.pieces[*need].limit?));
            let by = closes.min().unwrap_or(i64::MAX).min(piece.by);
            let first = piece.hours.partition_point(|hour| *hour < earliest);
            for at in first..piece.hours.len() {
                let begin = piece.hours[at];
                let Some(last) = piece.hours.get(at + piece.work - 1) else { break };
                let end = last + 1;
                if begin > by || end + piece.wait >= self.best {
                    break;
                }
                if piece.in_one_go && end - begin != piece.work as i64 {
                    continue;
                }
                placed[next] = Some((begin, end));
                let left = std::array::from_fn(|spot| piece.spots[spot].map_or(spots[spot], |after| end + after));
                self.go(placed, end, left, over.max(end + piece.wait));
                placed[next] = None;
                if piece.limit.is_none() {
                    break;
                }
            }
        }
    }
}

/// The earliest ready date by brute force, quarters from now; none where there is none in five weeks.
fn by_brute_force(bike: &Bike) -> Option<i64> {
    let now_ms = tuesday_noon().now_ms;
    let quarters = |ms: i64| (ms + GRAIN_MS - 1).div_euclid(GRAIN_MS);
    let open: Vec<(&String, &Job)> = bike.jobs.iter().filter(|(_, job)| job.state != JobState::Done).collect();
    let place = |id: &String| open.iter().position(|(own, _)| *own == id);
    let wait_of = |job: &Job| job.wait.as_ref().and_then(|wait| wait.hours).map_or(0, |hours| (hours * 4.0) as i64);
    let limit_of = |job: &Job| job.wait.as_ref().and_then(|wait| wait.at_most_hours).map(|hours| (hours * 4.0) as i64);
    let mut last_over = 0;
    let left = SPOTS.map(|spot| {
        let done = bike.jobs.values().filter(|job| job.state == JobState::Done);
        let kept = done.filter_map(|job| {
            Some((job.done_ms.unwrap() - now_ms).div_euclid(GRAIN_MS) + (hours_in(job, spot)? * 4.0) as i64)
        });
        kept.max().unwrap_or(0)
    });
    let mut pieces: Vec<Piece> = Vec::new();
    for (_, job) in &open {
        let limit = limit_of(job);
        let mut piece = Piece {
            work: (job.hands_on_minutes / 15.0) as usize,
            in_one_go: !job.splittable.unwrap_or(limit.is_none()),
            begun: false,
            wait: wait_of(job),
            limit,
            after: job.after.iter().filter_map(place).collect(),
            from: 0,
            by: i64::MAX,
            hours: (0..HORIZON).filter(|at| may_work(bike, job, *at)).collect(),
            spots: SPOTS.map(|spot| hours_in(job, spot).map(|hours| (hours * 4.0) as i64)),
        };
        for id in &job.parts {
            let day = bike.parts[id].expected.as_deref().and_then(Day::read).unwrap();
            piece.from = piece.from.max(quarters(day.0 * DAY_MS + 8 * HOUR_MS - now_ms));
        }
        for done in job.after.iter().map(|id| &bike.jobs[id]).filter(|job| job.state == JobState::Done) {
            let ended = (done.done_ms.unwrap() - now_ms).div_euclid(GRAIN_MS);
            piece.from = piece.from.max(ended + wait_of(done));
            if let Some(limit) = limit_of(done).filter(|limit| ended + limit >= 0) {
                piece.by = piece.by.min(ended + limit);
            }
        }
        let plain = job.place.is_none() && job.helper.is_none() && job.noisy.is_none() && !piece.in_one_go;
        let spots_free = (0..3).all(|spot| piece.spots[spot].is_none() || left[spot] <= 0);
        let free = piece.after.is_empty() && piece.from <= 0 && spots_free;
        piece.begun = job.state == JobState::Begun && plain && free;
        pieces.push(piece);
    }
    // What is not followed has nobody whose time it limits; between two limits a job is done in one go.
    for place in 0..pieces.len() {
        let followed = pieces.iter().any(|piece| piece.after.contains(&place));
        if !followed {
            pieces[place].limit = None;
        }
        pieces[place].begun &= pieces[place].limit.is_none();
        let bound = pieces[place].after.iter().any(|need| pieces[*need].limit.is_some()) || pieces[place].by < i64::MAX;
        pieces[place].in_one_go |= bound && pieces[place].limit.is_some();
    }
    for done in bike.jobs.values().filter(|job| job.state == JobState::Done) {
        last_over = last_over.max((done.done_ms.unwrap() - now_ms).div_euclid(GRAIN_MS) + wait_of(done));
    }
    let mut brute = Brute { pieces: &pieces, best: i64::MAX };
    brute.go(&mut vec![None; pieces.len()], 0, left, last_over);
    (brute.best < i64::MAX).then_some(brute.best)
}

/// Whether a job may be worked on in a quarter of an hour from now on; the clock shows UTC.
fn may_work(bike: &Bike, job: &Job, at: i64) -> bool {
    let at_ms = tuesday_noon().now_ms + at * GRAIN_MS;
    let (weekday, minute) = (Day(at_ms.div_euclid(DAY_MS)).weekday(), (at_ms.rem_euclid(DAY_MS) / MINUTE_MS) as u32);
    let there = |spans: &[Span]| {
        spans.iter().any(|span| span.weekday == weekday && (span.from_minute..span.to_minute).contains(&minute))
    };
    let within = |hours: &DayHours| {
        if hours.from_minute < hours.to_minute {
            (hours.from_minute..hours.to_minute).contains(&minute)
        } else {
            minute >= hours.from_minute || minute < hours.to_minute
        }
    };
    let hours = &bike.bench_time;
    there(&hours.spans)
        && (job.place.is_none() || within(hours.daylight.as_ref().unwrap()))
        && (job.helper.is_none() || there(hours.helper.as_deref().unwrap()))
        && (job.noisy.is_none() || !within(hours.quiet.as_ref().unwrap()))
}

/// A bike of two to six jobs, with three stretches of bench time a week.
fn made_up(seed: u64) -> Bike {
    let mut dice = Dice::of(seed);
    let count = 2 + dice.below(5);
    let mut jobs = Vec::new();
    let mut limited = 0;
    for place in 0..count {
        let mut after: Vec<String> = Vec::new();
        if place > 0 {
            let links = dice.below(3);
            after.extend((0..links).map(|_| format!("job {}", dice.below(place))));
            after.sort();
            after.dedup();
        }
        let one_in = |dice: &mut Dice, sides: usize| dice.below(sides) == 0;
        let hours = dice.below(8) as f64 * 0.5 + if one_in(&mut dice, 6) { 30.0 } else { 0.0 };
        let limit = (limited < 3 && one_in(&mut dice, 3)).then(|| hours + 0.5 * (1 + dice.below(140)) as f64);
        limited += usize::from(limit.is_some());
        let wait = one_in(&mut dice, 2).then(|| Wait { hours: Some(hours), ..Wait::default() });
        let wait =
            limit.map(|limit| Wait { hours: Some(hours), at_most_hours: Some(limit), ..Wait::default() }).or(wait);
        let state = match dice.below(9) {
            // Something is left to do: a bike that is done has been ready since some day in the past.
            0 if place < 2 && place + 1 < count && after.is_empty() => JobState::Done,
            1 if after.is_empty() => JobState::Begun,
            _ => JobState::Open,
        };
        let done_ms = tuesday_noon().now_ms - dice.below(40) as i64 * 2 * GRAIN_MS;
        jobs.push(Job {
            title: format!("job {place}"),
            hands_on_minutes: (1 + dice.below(9)) as f64 * 15.0,
            after,
            wait,
            state,
            done_ms: (state == JobState::Done).then_some(done_ms),
            place: one_in(&mut dice, 5).then_some(JobPlace::Daylight),
            helper: one_in(&mut dice, 6).then_some(true),
            noisy: one_in(&mut dice, 5).then_some(true),
            splittable: if one_in(&mut dice, 3) { Some(one_in(&mut dice, 2)) } else { None },
            spots: one_in(&mut dice, 2).then(|| {
                let hours_after = (!one_in(&mut dice, 3)).then(|| dice.below(200) as f64 * 0.5);
                vec![SpotTaken { spot: SPOTS[dice.below(2)], hours_after }]
            }),
            parts: if one_in(&mut dice, 8) { vec!["kit".to_owned()] } else { Vec::new() },
            ..Job::default()
        });
    }
    let mut made = bike(jobs);
    let hour = |dice: &mut Dice, from: usize, sides: usize| 30 * (from + dice.below(sides)) as u32;
    let mut spans = Vec::new();
    for _ in 0..3 {
        let from_minute = hour(&mut dice, 16, 22);
        let to_minute = from_minute + hour(&mut dice, 2, 8);
        spans.push(Span { weekday: 1 + dice.below(7) as u32, from_minute, to_minute });
    }
    let helper =
        (0..4).map(|_| Span { weekday: 1 + dice.below(7) as u32, from_minute: 540, to_minute: 1320 }).collect();
    let daylight = DayHours { from_minute: hour(&mut dice, 12, 6), to_minute: hour(&mut dice, 32, 10) };
    let quiet = DayHours { from_minute: hour(&mut dice, 38, 8), to_minute: hour(&mut dice, 12, 8) };
    let (daylight, quiet, helper) = (Some(daylight), Some(quiet), Some(helper));
    made.bench_time = BenchTime { spans, helper, daylight, quiet, ..BenchTime::default() };
    let expected = Zone::default().day_at(tuesday_noon().now_ms).plus(1 + dice.below(8) as i64).text();
    made.parts.insert("kit".to_owned(), part("Kit", PartState::Ordered, Some(&expected)));
    made
}

/// The same bike without time limits; what was to be done in one go because of one still is.
fn without_limits(bike: &Bike) -> Bike {
    let mut free = bike.clone();
    for job in free.jobs.values_mut() {
        let limit = job.wait.as_mut().and_then(|wait| wait.at_most_hours.take());
        job.splittable = Some(job.splittable.unwrap_or(limit.is_none()));
    }
    free
}

/// The same bike with room for everything.
fn without_spots(bike: &Bike) -> Bike {
    let mut free = bike.clone();
    free.jobs.values_mut().for_each(|job| job.spots = None);
    free
}

#[test]
fn two_hundred_small_bikes_are_ready_exactly_when_brute_force_says() {
    let (mut dated, mut put_off, mut crowded, mut dateless) = (0, 0, 0, 0);
    for seed in 0.. {
        let bike = made_up(seed);
        let plan = schedule(&bike, &tuesday_noon());
        let ready = plan.ready_ms.map(|ready_ms| (ready_ms - tuesday_noon().now_ms) as f64 / GRAIN_MS as f64);
        let Some(best) = by_brute_force(&bike) else {
            dateless += 1;
            assert!(ready.is_none_or(|ready| ready > HORIZON as f64), "seed {seed}: {ready:?} {bike:#?}");
            continue;
        };
        dated += 1;
        assert_eq!(ready, Some(best as f64), "seed {seed}: {bike:#?}");
        assert_eq!(plan.bound_ms, plan.ready_ms, "proven best");
        assert_eq!(broken(&bike, &tuesday_noon(), &plan), Vec::<String>::new(), "seed {seed}");
        put_off += u32::from(schedule(&without_limits(&bike), &tuesday_noon()).ready_ms < plan.ready_ms);
        crowded += u32::from(schedule(&without_spots(&bike), &tuesday_noon()).ready_ms < plan.ready_ms);
        if dated == CASES {
            break;
        }
    }
    println!(
        "{dated} with a date, {put_off} of them later for a time limit, {crowded} for a spot; {dateless} without one in \
         five weeks"
    );
    assert!(put_off >= 15 && crowded >= 10, "{put_off} {crowded}");
}
