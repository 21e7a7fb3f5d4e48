//! The model: activities, what they follow and with which lag, and the resources that they share.

/// Up to so many kinds of resource; each takes one byte of a word, so that one subtraction looks at all of them.
pub(crate) const MOST_RESOURCES: usize = 8;
/// Up to so many units of a resource: seven bits, the eighth guards.
const MOST_UNITS: u32 = 127;
/// Up to so many activities.
const MOST_ACTIVITIES: usize = 1_000;
/// The longest time that all durations and lags may sum up to.
const MOST_TIME: u64 = 1_000_000;
/// The guard bits: one above each resource.
pub(crate) const GUARD: u64 = 0x8080_8080_8080_8080;

/// One piece of work.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Activity {
    /// How long it takes, in the project's unit of time.
    pub duration: u32,
    /// Units of each resource that it holds meanwhile.
    pub demand: Vec<u32>,
    /// What it must follow.
    pub after: Vec<After>,
    /// Not before this time.
    pub release: u32,
}

/// A link to an activity that comes before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct After {
    /// The activity that must be over, by its place in the list.
    pub activity: usize,
    /// Time that must pass after it: a cure, a drying.
    pub lag: u32,
}

/// Why a project cannot be planned.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ProjectError {
    /// It is larger than the planner takes.
    #[error("the project has {given} {what}; at most {most} can be planned")]
    TooLarge {
        /// Of what there is too much.
        what: &'static str,
        /// How much there is.
        given: u64,
        /// How much may be.
        most: u64,
    },
    /// An activity follows one that is not there.
    #[error("activity {activity} follows one that does not exist")]
    NoSuchActivity {
        /// The activity.
        activity: usize,
    },
    /// An activity wants more of a resource than there is.
    #[error("activity {activity} wants {wanted} of resource {resource}, which has {there}")]
    NeverEnough {
        /// The activity.
        activity: usize,
        /// The resource.
        resource: usize,
        /// Units wanted.
        wanted: u32,
        /// Units there.
        there: u32,
    },
    /// Activities follow each other in a circle.
    #[error("these activities follow each other in a circle: {0:?}")]
    Circle(Vec<usize>),
}

/// A project that can be planned: checked, and packed for speed.
#[derive(Clone, Debug)]
pub struct Project {
    activities: Vec<Activity>,
    capacity: Vec<u32>,
    order: Vec<u16>,
}

impl Project {
    /// Checks a project.
    ///
    /// ```
    /// use layshaft_core::plan::rcpsp::{Activity, After, Project, ProjectError};
    /// let first = Activity { duration: 2, ..Activity::default() };
    /// let then = Activity { duration: 3, after: vec![After { activity: 0, lag: 4 }], ..Activity::default() };
    /// assert!(Project::new(vec![first, then.clone()], vec![]).is_ok());
    /// let turning = Activity { after: vec![After { activity: 0, lag: 0 }], ..then };
    /// assert_eq!(Project::new(vec![turning], vec![]).unwrap_err(), ProjectError::Circle(vec![0]));
    /// ```
    ///
    /// # Errors
    /// Names what is too large, missing, never enough, or going round in a circle.
    pub fn new(activities: Vec<Activity>, capacity: Vec<u32>) -> Result<Project, ProjectError> {
        within("activities", activities.len() as u64, MOST_ACTIVITIES as u64)?;
        within("resources", capacity.len() as u64, MOST_RESOURCES as u64)?;
        for units in &capacity {
            within("units of a resource", u64::from(*units), u64::from(MOST_UNITS))?;
        }
        let mut time = 0;
        for (place, activity) in activities.iter().enumerate() {
            let lags = activity.after.iter().map(|after| after.lag).max().unwrap_or(0);
            time += u64::from(activity.duration) + u64::from(lags) + u64::from(activity.release);
            if activity.after.iter().any(|after| after.activity >= activities.len()) {
                return Err(ProjectError::NoSuchActivity { activity: place });
            }
            for (resource, &wanted) in activity.demand.iter().enumerate() {
                let there = capacity.get(resource).copied().unwrap_or(0);
                if wanted > there {
                    return Err(ProjectError::NeverEnough { activity: place, resource, wanted, there });
                }
            }
        }
        within("units of time", time, MOST_TIME)?;
        let order = in_order(&activities)?;
        Ok(Project { activities, capacity, order })
    }

    /// The activities.
    pub fn activities(&self) -> &[Activity] {
        &self.activities
    }

    /// Units of each resource.
    pub fn capacity(&self) -> &[u32] {
        &self.capacity
    }

    /// The activities, each after all that it follows.
    pub(crate) fn order(&self) -> &[u16] {
        &self.order
    }
}

fn within(what: &'static str, given: u64, most: u64) -> Result<(), ProjectError> {
    if given <= most { Ok(()) } else { Err(ProjectError::TooLarge { what, given, most }) }
}

/// The activities in the order of the list, each after all that it follows.
fn in_order(activities: &[Activity]) -> Result<Vec<u16>, ProjectError> {
    let after = |place: usize| activities.get(place).map(|activity| activity.after.as_slice()).unwrap_or_default();
    let mut open: Vec<usize> = (0..activities.len()).map(|place| after(place).len()).collect();
    let mut followers: Vec<Vec<usize>> = vec![Vec::new(); activities.len()];
    for place in 0..activities.len() {
        for need in after(place) {
            if let Some(list) = followers.get_mut(need.activity) {
                list.push(place);
            }
        }
    }
    let mut order: Vec<usize> =
        open.iter().enumerate().filter(|(_, open)| **open == 0).map(|(place, _)| place).collect();
    let mut next = 0;
    while let Some(&place) = order.get(next) {
        next += 1;
        for &follower in followers.get(place).map(Vec::as_slice).unwrap_or_default() {
            if let Some(left) = open.get_mut(follower) {
                *left -= 1;
                if *left == 0 {
                    order.push(follower);
                }
            }
        }
    }
    if order.len() == activities.len() {
        return Ok(order.into_iter().map(|place| place as u16).collect());
    }
    let links: Vec<Vec<usize>> =
        (0..activities.len()).map(|place| after(place).iter().map(|need| need.activity).collect()).collect();
    Err(ProjectError::Circle(crate::plan::tasks::cycles(&links).into_iter().next().unwrap_or_default()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn activity(duration: u32, demand: &[u32], after: &[usize]) -> Activity {
        let after = after.iter().map(|&activity| After { activity, lag: 0 }).collect();
        Activity { duration, demand: demand.to_vec(), after, release: 0 }
    }

    #[test]
    fn what_cannot_be_planned_is_refused_and_named() {
        let refused = |activities, capacity| Project::new(activities, capacity).unwrap_err().to_string();
        assert!(refused(vec![activity(1, &[3], &[])], vec![2]).contains("wants 3 of resource 0, which has 2"));
        assert!(refused(vec![activity(1, &[], &[5])], vec![]).contains("follows one that does not exist"));
        let round = vec![activity(1, &[], &[1]), activity(1, &[], &[0])];
        assert_eq!(Project::new(round, vec![]).unwrap_err(), ProjectError::Circle(vec![0, 1]));
        assert!(refused(vec![activity(2_000_000, &[], &[])], vec![]).contains("at most 1000000"));
        assert!(refused(vec![], vec![1; 9]).contains("9 resources"));
    }
}
