//! The checker: whether a plan keeps every lag, release and resource. It shares no code with what makes plans, and
//! counts the units of each resource time by time.

use super::model::Project;

/// What a plan breaks, one sentence each; nothing when it holds. `begins` tells when each activity begins.
///
/// ```
/// use layshaft_core::plan::rcpsp::{Activity, Project, check};
/// let hands = Activity { duration: 2, demand: vec![1], ..Activity::default() };
/// let project = Project::new(vec![hands.clone(), hands], vec![1]).unwrap();
/// assert!(check(&project, &[0, 2]).is_empty());
/// assert_eq!(check(&project, &[0, 1]), ["at 1, resource 0 has 1 and 2 are wanted"]);
/// ```
pub fn check(project: &Project, begins: &[u32]) -> Vec<String> {
    let activities = project.activities();
    if begins.len() != activities.len() {
        return vec![format!("{} of {} activities are planned", begins.len(), activities.len())];
    }
    let mut broken = Vec::new();
    let mut events = Vec::new();
    for (place, (one, begin)) in activities.iter().zip(begins).enumerate() {
        if *begin < one.release {
            broken.push(format!("{place} begins at {begin} and is free from {}", one.release));
        }
        for need in &one.after {
            let over = begins.get(need.activity).zip(activities.get(need.activity));
            let over = over.map_or(u32::MAX, |(begin, before)| begin + before.duration + need.lag);
            if *begin < over {
                broken.push(format!("{place} begins at {begin}, {} is over at {over}", need.activity));
            }
        }
        if one.duration > 0 {
            events.push(*begin);
        }
    }
    events.sort_unstable();
    events.dedup();
    for time in events {
        for (resource, there) in project.capacity().iter().enumerate() {
            let runs =
                activities.iter().zip(begins).filter(|(one, begin)| **begin <= time && time < **begin + one.duration);
            let wanted: u32 = runs.map(|(one, _)| one.demand.get(resource).copied().unwrap_or(0)).sum();
            if wanted > *there {
                broken.push(format!("at {time}, resource {resource} has {there} and {wanted} are wanted"));
            }
        }
    }
    broken
}
