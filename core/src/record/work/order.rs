//! The order of jobs around one that was put away: what followed it follows what it followed, until it comes back.

use std::collections::{BTreeMap, BTreeSet};

use super::Job;

/// The jobs that are there, each following only jobs that are there. What goes through a job that was put away is kept: `after` in the
/// stored record stays as it is, so the order is the old one when the job comes back.
///
/// `away` holds what each job that was put away follows, by its id.
pub fn closed_up(mut jobs: BTreeMap<String, Job>, away: &BTreeMap<String, Vec<String>>) -> BTreeMap<String, Job> {
    if !away.is_empty() {
        for job in jobs.values_mut() {
            job.after = through(&job.after, away);
        }
    }
    jobs
}

/// What a job follows, in place of those put away what they follow, each once and in the order of the list.
fn through(after: &[String], away: &BTreeMap<String, Vec<String>>) -> Vec<String> {
    let mut open: Vec<&String> = after.iter().rev().collect();
    let (mut seen, mut found) = (BTreeSet::new(), Vec::new());
    while let Some(next) = open.pop() {
        // Two devices may have put away jobs that came to follow each other: each is looked at once.
        if !seen.insert(next) {
            continue;
        }
        match away.get(next) {
            Some(before) => open.extend(before.iter().rev()),
            None => found.push(next.clone()),
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ids(ids: &[&str]) -> Vec<String> {
        ids.iter().map(|id| (*id).to_owned()).collect()
    }

    fn away(jobs: &[(&str, &[&str])]) -> BTreeMap<String, Vec<String>> {
        jobs.iter().map(|(id, after)| ((*id).to_owned(), ids(after))).collect()
    }

    #[test]
    fn what_followed_a_job_put_away_follows_what_it_followed() {
        let chain = away(&[("paint", &["sand", "prime"]), ("prime", &["sand"])]);
        assert_eq!(through(&ids(&["paint", "clean"]), &chain), ids(&["sand", "clean"]));
        assert_eq!(through(&ids(&["clean"]), &chain), ids(&["clean"]));
        assert_eq!(through(&ids(&["paint"]), &away(&[("paint", &[])])), ids(&[]));
    }

    #[test]
    fn jobs_put_away_that_follow_each_other_end() {
        let circle = away(&[("a", &["b", "start"]), ("b", &["a"])]);
        assert_eq!(through(&ids(&["a"]), &circle), ids(&["start"]));
    }

    #[test]
    fn jobs_stay_as_they_are_when_none_is_away() {
        let job = Job { after: ids(&["never-there"]), ..Job::default() };
        let jobs = BTreeMap::from([("one".to_owned(), job)]);
        assert_eq!(closed_up(jobs.clone(), &BTreeMap::new()), jobs);
    }
}
