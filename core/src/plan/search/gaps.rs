//! Filling gaps: tasks are drawn forward into time in which the mechanic would stand idle.

use super::timetable::{Placement, Problem, Timetable, by_begin};

impl Problem<'_> {
    /// Draws tasks forward into idle time, where they fit between the work of the others. One task keeps its place: the
    /// one that sets the ready date, so that filling gaps is no way round the fixed set of orders.
    pub(crate) fn fill_gaps(&self, plan: &mut Timetable, keeps_its_place: Option<usize>) {
        let mut taken = Taken::by(self, plan);
        let mut moved = true;
        while moved {
            moved = false;
            for place in by_begin(plan) {
                if Some(place) == keeps_its_place {
                    continue;
                }
                let Some(drawn) = self.drawn_forward(place, plan, &taken) else { continue };
                taken.replace(self, place, Some(&drawn));
                if let Some(own) = plan.get_mut(place) {
                    *own = Some(drawn);
                }
                moved = true;
            }
        }
    }

    /// The task earlier than it lies, in the first gap that holds it; none where there is no such gap.
    fn drawn_forward(&self, place: usize, plan: &Timetable, taken: &Taken) -> Option<Placement> {
        let placed = plan.get(place)?.as_ref()?;
        let release_ms = self.release_ms(place, plan)?;
        let floor_ms = self.floor_ms(place, plan);
        let works = self.tasks.get(place).is_some_and(|task| task.work_ms > 0);
        let gaps =
            taken.gaps(place).filter(|(_, to_ms)| *to_ms > release_ms).take_while(|(from, _)| *from < placed.end_ms);
        for (from_ms, to_ms) in gaps {
            let mut drawn = self.set(place, release_ms, from_ms, floor_ms)?;
            while let Some(until_ms) = self.spot_taken_until(place, plan, (drawn.begin_ms, drawn.end_ms)) {
                drawn = self.set(place, release_ms.max(until_ms), from_ms, floor_ms)?;
            }
            if (drawn.begin_ms, drawn.end_ms) >= (placed.begin_ms, placed.end_ms) {
                return None;
            }
            if !works || drawn.end_ms <= to_ms {
                return Some(drawn);
            }
        }
        None
    }

    /// The end that a task must not fall below, so that what follows it begins in time.
    pub(crate) fn floor_ms(&self, place: usize, plan: &Timetable) -> i64 {
        let limits = self.tasks.get(place).is_some_and(|task| task.limits);
        let followers = self.tasks.iter().zip(plan).filter(|_| limits);
        let floors = followers.filter_map(|(follower, placed)| {
            let at_most_ms = follower.within.iter().find(|(need, _)| *need == place)?.1;
            Some(placed.as_ref()?.begin_ms - at_most_ms)
        });
        floors.max().unwrap_or(i64::MIN)
    }
}

/// The time in which the mechanic works, and on which task.
#[derive(Default)]
pub(crate) struct Taken(Vec<(i64, i64, usize)>);

impl Taken {
    /// The time that a plan takes.
    pub(crate) fn by(problem: &Problem, plan: &Timetable) -> Taken {
        let mut taken = Taken(Vec::new());
        for (place, placed) in plan.iter().enumerate() {
            taken.push(problem, place, placed.as_ref());
        }
        taken.0.sort_unstable();
        taken
    }

    /// Puts a task elsewhere.
    pub(crate) fn replace(&mut self, problem: &Problem, place: usize, placed: Option<&Placement>) {
        self.0.retain(|(_, _, owner)| *owner != place);
        self.push(problem, place, placed);
        self.0.sort_unstable();
    }

    fn push(&mut self, problem: &Problem, place: usize, placed: Option<&Placement>) {
        let task = problem.tasks.get(place).filter(|task| task.work_ms > 0);
        if let (Some(task), Some(placed)) = (task, placed) {
            let work = problem.axes.axis(task.kind).work_between(placed.begin_ms, placed.end_ms);
            self.0.extend(work.iter().map(|span| (span.from_ms, span.to_ms, place)));
        }
    }

    /// The gaps between the work on all tasks but one, in order, the first and the last without end.
    pub(crate) fn gaps(&self, place: usize) -> impl DoubleEndedIterator<Item = (i64, i64)> {
        let others: Vec<(i64, i64)> =
            self.0.iter().filter(|(_, _, owner)| *owner != place).map(|(from, to, _)| (*from, *to)).collect();
        let begins: Vec<i64> = [i64::MIN].into_iter().chain(others.iter().map(|(_, to)| *to)).collect();
        let ends: Vec<i64> = others.iter().map(|(from, _)| *from).chain([i64::MAX]).collect();
        begins.into_iter().zip(ends).filter(|(from, to)| from < to)
    }
}
