//! Cycles: jobs that wait for each other. Each job of a cycle is shown in a cycle that it is on.

use std::collections::btree_map::Entry;
use std::collections::{BTreeMap, VecDeque};

/// The cycles in "must follow", each the shortest way round its first job; together they show every job that is on any cycle.
///
/// `after[job]` lists the jobs that `job` must follow. A cycle `[a, b, c]` reads: a must follow b, b must follow c, and c
/// must follow a.
pub(crate) fn cycles(after: &[Vec<usize>]) -> Vec<Vec<usize>> {
    let mut found: Vec<Vec<usize>> = Vec::new();
    let mut shown = vec![false; after.len()];
    for job in 0..after.len() {
        if shown.get(job) == Some(&true) {
            continue;
        }
        if let Some(round) = way_back(after, job) {
            for &member in &round {
                if let Some(seen) = shown.get_mut(member) {
                    *seen = true;
                }
            }
            found.push(round);
        }
    }
    found
}

/// The shortest way from a job along "must follow" back to itself.
fn way_back(after: &[Vec<usize>], start: usize) -> Option<Vec<usize>> {
    let mut came_from: BTreeMap<usize, usize> = BTreeMap::new();
    let mut open = VecDeque::from([start]);
    while let Some(job) = open.pop_front() {
        for &next in after.get(job)? {
            if next == start {
                let mut way = vec![job];
                while let Some(&before) = way.last().filter(|&&last| last != start).and_then(|last| came_from.get(last))
                {
                    way.push(before);
                }
                way.reverse();
                return Some(way);
            }
            if let Entry::Vacant(first) = came_from.entry(next) {
                first.insert(job);
                open.push_back(next);
            }
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn without_a_cycle_there_is_none() {
        assert!(cycles(&[vec![], vec![0], vec![0, 1], vec![2]]).is_empty());
    }

    #[test]
    fn a_job_that_must_follow_itself_is_a_loop_of_one() {
        assert_eq!(cycles(&[vec![0], vec![0]]), [[0]]);
    }

    #[test]
    fn a_loop_is_shown_once_and_in_the_order_of_the_needs() {
        // 0 follows 2, 2 follows 1, 1 follows 0; 3 hangs on the loop but is not on it.
        assert_eq!(cycles(&[vec![2], vec![0], vec![1], vec![1]]), [[0, 2, 1]]);
    }

    #[test]
    fn two_loops_through_one_job_are_both_shown() {
        // 0 and 1 follow each other; 0 also follows 2 and 2 follows 0.
        assert_eq!(cycles(&[vec![1, 2], vec![0], vec![0]]), [[0, 1], [2, 0]]);
    }
}
