//! Orders in which jobs could be done, to be tried one by one on the calendar.
//!
//! None of them looks at the bench time. That is on purpose: an order that stays the same when bench time is added can
//! only end earlier then, so the best of a fixed set of orders can only end earlier too. A rule that looks at the
//! calendar has no such promise (more hours can tempt it into a worse order; Graham, “Bounds on multiprocessing timing
//! anomalies”, SIAM Journal on Applied Mathematics 17, 1969, standing: from memory).
//!
//! Method: list scheduling by several priorities, the longest tail foremost, at several assumed paces of work; a search
//! at each pace (see `rcpsp`); each order with one job drawn forward; and all orders where there are few. What is begun
//! and can go on stands first in each of them.

use std::collections::BTreeSet;

use super::Outline;
use super::priority_rules::{by_rank, drawn_forward, paced, raised, tails, together};
use super::rcpsp::{Activity, After, Dice, Project, Search};

/// Assumed paces: hours that pass for one hour at the bench. A week has 168 hours, of which 5 to 168 are bench time.
const PACES: [f64; 6] = [1.0, 3.0, 6.0, 10.0, USUAL_PACE, SLOWEST_PACE];
/// The pace of about ten hours of bench time a week.
const USUAL_PACE: f64 = 16.0;
/// The pace of about five hours a week.
pub(crate) const SLOWEST_PACE: f64 = 32.0;
/// Up to so many tasks every order is tried.
const FEW: usize = 6;
/// So many orders with shuffled priorities: many for a short list, fewer for a long one, which takes longer to schedule.
const SHUFFLES: (u64, u64) = (160, 40);
/// So many schedules a search may generate at each pace.
const SEARCHED: u64 = 300;
/// A list is long from so many tasks on.
const LONG: usize = 32;

/// Whether every order of so many tasks is tried.
pub(crate) fn tries_all(tasks: usize) -> bool {
    tasks <= FEW
}

/// The orders, without repeats, in batches that are made when they are asked for: the cheap ones come first, and where one
/// of them is proven best, the others are never made. The first is the list as it stands: dependency order, then rank,
/// then id; those that differ from it by one task come next, so that of equally good orders one near the list is taken.
pub(crate) struct Orders<'a> {
    all: Collected<'a>,
    /// How urgent each task was in the plan before.
    before: Option<&'a [f64]>,
    batch: usize,
}

impl<'a> Orders<'a> {
    /// The orders of tasks, none made yet. Where a plan stood before, those near it come first.
    pub(crate) fn of(outlines: &'a [Outline], before: Option<&'a [f64]>) -> Orders<'a> {
        Orders { before, all: Collected { outlines, orders: Vec::new(), seen: BTreeSet::new() }, batch: 0 }
    }

    /// All that were made so far.
    pub(crate) fn made(&self) -> &[Vec<usize>] {
        &self.all.orders
    }

    /// Makes the next batch; none after the last.
    pub(crate) fn next_batch(&mut self) -> Option<Vec<Vec<usize>>> {
        let made = self.all.orders.len();
        let outlines = self.all.outlines;
        if let Some(before) = self.before.take() {
            return Some(near(outlines, before));
        }
        let batches: &[fn(&mut Collected)] = if tries_all(outlines.len()) {
            &[|all| all.add((0..all.outlines.len()).collect()), |all| all.add_every(&mut Vec::new())]
        } else {
            &[near_the_list, by_urgency, shuffled, by_search]
        };
        batches.get(self.batch)?(&mut self.all);
        self.batch += 1;
        Some(self.all.orders.get(made..).unwrap_or_default().to_vec())
    }
}

/// All the orders.
pub(crate) fn orders(outlines: &[Outline]) -> Vec<Vec<usize>> {
    let mut orders = Orders::of(outlines, None);
    while orders.next_batch().is_some() {}
    orders.all.orders
}

/// The order that stood before, and what differs from it by one task. They are kept apart from the others, so that these
/// stay the same whatever stood before.
fn near(outlines: &[Outline], before: &[f64]) -> Vec<Vec<usize>> {
    let mut all = Collected { outlines, orders: Vec::new(), seen: BTreeSet::new() };
    let mut stood = paced(all.outlines, before, None);
    all.begun_first(&mut stood);
    all.add_as_it_is(stood.clone());
    all.add(stood.clone());
    for task in stood.iter().rev() {
        all.add(paced(all.outlines, &raised(all.outlines, before, *task), Some(USUAL_PACE)));
    }
    all.add_drawn_forward(&stood);
    all.orders
}

/// The list, and what differs from it by one task.
fn near_the_list(all: &mut Collected) {
    let listed: Vec<usize> = (0..all.outlines.len()).collect();
    all.add(listed.clone());
    let by_rank = by_rank(all.outlines);
    all.add(paced(all.outlines, &by_rank, Some(USUAL_PACE)));
    for task in listed.iter().rev() {
        all.add(paced(all.outlines, &raised(all.outlines, &by_rank, *task), Some(USUAL_PACE)));
    }
    all.add_drawn_forward(&listed);
}

/// List scheduling by rank, by the longest tail and by what comes after.
fn by_urgency(all: &mut Collected) {
    let by_rank = by_rank(all.outlines);
    for pace in PACES {
        let tail = tails(all.outlines, pace);
        let rest: Vec<f64> =
            tail.iter().zip(all.outlines).map(|(tail, outline)| tail - outline.work_hours * pace).collect();
        for urgency in [&by_rank, &tail, &rest] {
            all.add(paced(all.outlines, urgency, Some(pace)));
            all.add(paced(all.outlines, urgency, None));
        }
    }
}

fn shuffled(all: &mut Collected) {
    for shuffle in 0..if all.outlines.len() < LONG { SHUFFLES.0 } else { SHUFFLES.1 } {
        let pace = PACES.get(shuffle as usize % PACES.len()).copied().unwrap_or(1.0);
        let mut dice = Dice::of(shuffle + 1);
        let urgency: Vec<f64> = tails(all.outlines, pace).into_iter().map(|tail| tail * (0.4 + dice.roll())).collect();
        all.add(paced(all.outlines, &urgency, Some(pace)));
    }
}

/// A search at each pace, and the order of the longest tails with one task drawn forward.
fn by_search(all: &mut Collected) {
    for order in PACES.iter().filter_map(|pace| searched(all.outlines, *pace)) {
        all.add(order);
    }
    all.add_drawn_forward(&paced(all.outlines, &tails(all.outlines, USUAL_PACE), Some(USUAL_PACE)));
}

/// Orders found so far.
pub(crate) struct Collected<'a> {
    outlines: &'a [Outline],
    orders: Vec<Vec<usize>>,
    seen: BTreeSet<Vec<usize>>,
}

impl Collected<'_> {
    /// The order, with what is begun before all others; where time limits run, also with what they bind together.
    fn add(&mut self, mut order: Vec<usize>) {
        self.begun_first(&mut order);
        if self.outlines.iter().any(|outline| outline.limits) {
            self.add_as_it_is(together(self.outlines, &order));
        }
        self.add_as_it_is(order);
    }

    fn begun_first(&self, order: &mut [usize]) {
        let first = |task: usize| self.outlines.get(task).is_some_and(|outline| outline.first);
        order.sort_by_key(|task| if first(*task) { *task } else { usize::MAX });
    }

    fn add_as_it_is(&mut self, order: Vec<usize>) {
        if self.seen.insert(order.clone()) {
            self.orders.push(order);
        }
    }

    /// The order with each of its tasks drawn forward, one at a time.
    fn add_drawn_forward(&mut self, base: &[usize]) {
        for place in 1..base.len() {
            self.add(drawn_forward(self.outlines, base, place));
        }
    }

    /// Every order that the needs allow.
    fn add_every(&mut self, begun: &mut Vec<usize>) {
        if begun.len() == self.outlines.len() {
            self.add(begun.clone());
        }
        for (task, outline) in self.outlines.iter().enumerate() {
            if !begun.contains(&task) && outline.after.iter().all(|need| begun.contains(need)) {
                begun.push(task);
                self.add_every(begun);
                begun.pop();
            }
        }
    }
}

/// The order of the plan that a search finds where an hour at the bench takes so many hours; none when that is too long
/// to search.
///
/// Time is counted in quarters of an hour at the bench at the slow paces, in hours at the fast ones: what a wait is
/// rounded up by is then small beside the work that is done meanwhile.
fn searched(outlines: &[Outline], pace: f64) -> Option<Vec<usize>> {
    let unit_hours = (pace / 4.0).max(1.0);
    let whole = |hours: f64| (hours / unit_hours).ceil().clamp(0.0, 1e6) as u32;
    let lag = |need: usize| outlines.get(need).map_or(0, |outline| whole(outline.wait_hours));
    let activity = |outline: &Outline| Activity {
        duration: whole(outline.work_hours * pace),
        demand: vec![1],
        after: outline.after.iter().map(|&need| After { activity: need, lag: lag(need) }).collect(),
        release: whole(outline.from_hours),
    };
    let project = Project::new(outlines.iter().map(activity).collect(), vec![1]).ok()?;
    let mut search = Search::new(&project, 1);
    search.run(SEARCHED);
    Some(search.list())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn outline(work_hours: f64, wait_hours: f64, after: &[usize]) -> Outline {
        Outline { work_hours, wait_hours, from_hours: 0.0, after: after.to_vec(), limits: false, first: false }
    }

    fn follows_its_needs(outlines: &[Outline], order: &[usize]) -> bool {
        let place = |task: usize| order.iter().position(|other| *other == task);
        order.len() == outlines.len()
            && outlines
                .iter()
                .enumerate()
                .all(|(task, outline)| outline.after.iter().all(|need| place(*need) < place(task)))
    }

    #[test]
    fn few_tasks_are_tried_in_every_order_that_the_needs_allow() {
        let free = [outline(1.0, 0.0, &[]), outline(1.0, 0.0, &[]), outline(1.0, 0.0, &[])];
        assert_eq!(orders(&free).len(), 6);
        let chain = [outline(1.0, 0.0, &[]), outline(1.0, 0.0, &[0]), outline(1.0, 0.0, &[])];
        let tried = orders(&chain);
        assert_eq!(tried.len(), 3);
        assert_eq!(tried[0], [0, 1, 2]);
        assert!(tried.iter().all(|order| follows_its_needs(&chain, order)));
    }

    #[test]
    fn many_tasks_are_tried_in_orders_that_all_keep_the_needs() {
        let outlines: Vec<Outline> = (0..20)
            .map(|task| outline(1.0 + (task % 3) as f64, (task % 5) as f64 * 10.0, if task >= 4 { &[0] } else { &[] }))
            .collect();
        let tried = orders(&outlines);
        assert!(tried.len() > 50, "{}", tried.len());
        assert!(tried.iter().all(|order| follows_its_needs(&outlines, order)));
        assert_eq!(tried, orders(&outlines));
    }

    #[test]
    fn the_work_before_a_long_wait_comes_first_by_tail() {
        let outlines = [outline(2.0, 0.0, &[]), outline(1.0, 96.0, &[]), outline(1.0, 0.0, &[1])];
        assert_eq!(tails(&outlines, 2.0), [4.0, 100.0, 2.0]);
        assert_eq!(paced(&outlines, &tails(&outlines, 2.0), Some(2.0)), [1, 0, 2]);
    }

    #[test]
    fn what_is_begun_stays_first_in_every_order() {
        let begun = Outline { first: true, ..outline(1.0, 0.0, &[]) };
        let few = [begun.clone(), outline(1.0, 9.0, &[]), outline(1.0, 0.0, &[])];
        assert_eq!(orders(&few), [[0, 1, 2], [0, 2, 1]]);
        let many: Vec<Outline> =
            (0..12).map(|task| if task < 2 { begun.clone() } else { outline(1.0, f64::from(task), &[]) }).collect();
        assert!(orders(&many).iter().all(|order| order[..2] == [0, 1]));
    }

    #[test]
    fn a_time_limit_binds_a_task_to_those_that_follow_it() {
        let coat = |after: &[usize]| Outline { limits: true, ..outline(1.0, 1.0, after) };
        let outlines = [coat(&[]), outline(1.0, 0.0, &[]), coat(&[0]), outline(1.0, 0.0, &[]), outline(1.0, 0.0, &[2])];
        assert_eq!(together(&outlines, &[0, 1, 2, 3, 4]), [1, 3, 0, 2, 4]);
        let outlines = [coat(&[]), outline(1.0, 0.0, &[0]), outline(1.0, 0.0, &[]), outline(1.0, 0.0, &[0])];
        assert_eq!(together(&outlines, &[0, 1, 2, 3]), [0, 3, 1, 2]);
    }

    #[test]
    fn drawing_forward_stops_behind_the_last_need() {
        let outlines = [outline(1.0, 0.0, &[]), outline(1.0, 0.0, &[]), outline(1.0, 0.0, &[0])];
        assert_eq!(drawn_forward(&outlines, &[0, 1, 2], 2), [0, 2, 1]);
        assert_eq!(drawn_forward(&outlines, &[0, 1, 2], 1), [1, 0, 2]);
    }
}
