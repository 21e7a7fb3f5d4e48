//! Priority rules: which of the tasks that could begin is drawn next, and an order with one task moved.

use super::outline::Outline;

/// The earlier in the list, the more urgent.
pub(crate) fn by_rank(outlines: &[Outline]) -> Vec<f64> {
    (0..outlines.len()).map(|place| -(place as f64)).collect()
}

/// The order with each task that sets a time limit right before the first that follows it, and the others that follow
/// it as soon after as their needs allow.
pub(crate) fn together(outlines: &[Outline], order: &[usize]) -> Vec<usize> {
    let mut order = order.to_vec();
    for task in order.clone().into_iter().rev().filter(|task| outlines.get(*task).is_some_and(|one| one.limits)) {
        let follows = |other: &usize| outlines.get(*other).is_some_and(|outline| outline.after.contains(&task));
        let (Some(own), Some(first)) = (order.iter().position(|other| *other == task), order.iter().position(follows))
        else {
            continue;
        };
        if let Some(moved) = order.get_mut(own..first) {
            moved.rotate_left(1);
        }
        for place in first + 1..order.len() {
            if order.get(place).is_some_and(follows) {
                order = drawn_forward(outlines, &order, place);
            }
        }
    }
    order
}

/// Tail of each task: the longest way from its beginning to the end of everything, hours.
///
/// ```text
/// tail = work · pace + wait + the longest tail of those that follow
/// ```
pub(crate) fn tails(outlines: &[Outline], pace: f64) -> Vec<f64> {
    let mut following = vec![0.0_f64; outlines.len()];
    let mut tails = vec![0.0_f64; outlines.len()];
    for (task, outline) in outlines.iter().enumerate().rev() {
        let tail = outline.work_hours * pace + outline.wait_hours + following.get(task).copied().unwrap_or(0.0);
        if let Some(own) = tails.get_mut(task) {
            *own = tail;
        }
        for need in &outline.after {
            if let Some(longest) = following.get_mut(*need) {
                *longest = longest.max(tail);
            }
        }
    }
    tails
}

/// Draws the tasks one by one, the most urgent of those that could begin. With a pace, a wait holds a task back and
/// another is done meanwhile; without, only the needs count.
pub(crate) fn paced(outlines: &[Outline], urgency: &[f64], pace: Option<f64>) -> Vec<usize> {
    let mut over: Vec<Option<f64>> = vec![None; outlines.len()];
    let mut left: Vec<usize> = (0..outlines.len()).collect();
    let mut order = Vec::with_capacity(left.len());
    let mut now = 0.0_f64;
    while !left.is_empty() {
        let free: Vec<(usize, f64)> = left
            .iter()
            .filter_map(|&task| {
                let outline = outlines.get(task)?;
                let mut from = outline.from_hours;
                for need in &outline.after {
                    from = from.max((*over.get(*need)?)?);
                }
                Some((task, if pace.is_some() { from } else { 0.0 }))
            })
            .collect();
        let earliest = free.iter().map(|(_, from)| *from).fold(f64::INFINITY, f64::min);
        now = now.max(earliest);
        let urgent = |task: usize| urgency.get(task).copied().unwrap_or(0.0);
        let next = free
            .iter()
            .filter(|(_, from)| *from <= now)
            .map(|(task, _)| *task)
            .reduce(|best, task| if urgent(task) > urgent(best) { task } else { best });
        let Some((task, outline)) = next.and_then(|task| Some((task, outlines.get(task)?))) else { break };
        now += outline.work_hours * pace.unwrap_or(0.0);
        if let Some(over) = over.get_mut(task) {
            *over = Some(now + outline.wait_hours);
        }
        left.retain(|other| *other != task);
        order.push(task);
    }
    order
}

/// The urgencies with a task, and all that must be done before it, raised above the others.
pub(crate) fn raised(outlines: &[Outline], urgency: &[f64], task: usize) -> Vec<f64> {
    let mut raised = urgency.to_vec();
    let mut open = vec![task];
    while let Some(next) = open.pop() {
        if let Some(own) = raised.get_mut(next).filter(|own| **own <= 0.0) {
            *own += urgency.len() as f64 + 1.0;
            open.extend(outlines.get(next).into_iter().flat_map(|outline| &outline.after));
        }
    }
    raised
}

/// The order with the task at a place drawn forward to where its needs allow it.
pub(crate) fn drawn_forward(outlines: &[Outline], base: &[usize], place: usize) -> Vec<usize> {
    let mut order = base.to_vec();
    let Some(outline) = base.get(place).and_then(|task| outlines.get(*task)) else { return order };
    let earliest = order.iter().take(place).rposition(|task| outline.after.contains(task)).map_or(0, |need| need + 1);
    if let Some(drawn) = order.get_mut(earliest..=place) {
        drawn.rotate_right(1);
    }
    order
}
