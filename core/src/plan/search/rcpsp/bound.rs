//! What no plan can be shorter than: the critical path, and the work that a resource has to do.
//!
//! ```text
//! critical path  = max over ways of Σ (duration + lag)          (Kelley, Operations Research 9, 1961, from memory)
//! energy of S    = least head in S + ⌈Σ demand · duration / units⌉ + least tail in S,  S ⊆ activities of a resource
//! ```
//!
//! S runs over all activities whose head and tail reach a pair of thresholds. The second bound follows from counting.

use super::model::Project;

/// When all is over if every resource were without end.
///
/// ```
/// use layshaft_core::plan::rcpsp::{Activity, After, Project, critical_path};
/// let prime = Activity { duration: 2, ..Activity::default() };
/// let paint = Activity { duration: 3, after: vec![After { activity: 0, lag: 24 }], ..Activity::default() };
/// assert_eq!(critical_path(&Project::new(vec![prime, paint], vec![]).unwrap()), 29);
/// ```
pub fn critical_path(project: &Project) -> u32 {
    let (heads, _) = heads_and_tails(project);
    heads.iter().zip(project.activities()).map(|(head, one)| head + one.duration).max().unwrap_or(0)
}

/// What no plan of the project can be shorter than.
pub fn lower_bound(project: &Project) -> u32 {
    let (heads, tails) = heads_and_tails(project);
    let mut bound = critical_path(project);
    for (resource, &units) in project.capacity().iter().enumerate().filter(|(_, units)| **units > 0) {
        let mut users: Vec<(u32, u32, u64)> = (project.activities().iter().zip(&heads).zip(&tails))
            .map(|((one, head), tail)| {
                let wanted = one.demand.get(resource).copied().unwrap_or(0);
                (*head, *tail, u64::from(wanted) * u64::from(one.duration))
            })
            .filter(|(_, _, energy)| *energy > 0)
            .collect();
        users.sort_by_key(|user| std::cmp::Reverse(user.1));
        let mut head_limits: Vec<u32> = users.iter().map(|user| user.0).collect();
        head_limits.sort_unstable();
        head_limits.dedup();
        for head in head_limits {
            let mut energy = 0;
            for user in users.iter().filter(|user| user.0 >= head) {
                energy += user.2;
                let long = u32::try_from(energy.div_ceil(u64::from(units))).unwrap_or(u32::MAX);
                bound = bound.max(head.saturating_add(long).saturating_add(user.1));
            }
        }
    }
    bound
}

/// Earliest beginning of each activity, and the time that must pass after its end, resources left aside.
pub(crate) fn heads_and_tails(project: &Project) -> (Vec<u32>, Vec<u32>) {
    let count = project.activities().len();
    let (mut heads, mut tails) = (vec![0_u32; count], vec![0_u32; count]);
    let ordered = || {
        project
            .order()
            .iter()
            .filter_map(|place| Some((usize::from(*place), project.activities().get(usize::from(*place))?)))
    };
    for (place, one) in ordered() {
        let ready = one.after.iter().map(|need| {
            let long = project.activities().get(need.activity).map_or(0, |before| before.duration);
            heads.get(need.activity).copied().unwrap_or(0) + long + need.lag
        });
        let head = ready.max().unwrap_or(0).max(one.release);
        if let Some(own) = heads.get_mut(place) {
            *own = head;
        }
    }
    for (place, one) in ordered().rev() {
        let through = one.duration + tails.get(place).copied().unwrap_or(0);
        for need in &one.after {
            if let Some(tail) = tails.get_mut(need.activity) {
                *tail = (*tail).max(through + need.lag);
            }
        }
    }
    (heads, tails)
}
