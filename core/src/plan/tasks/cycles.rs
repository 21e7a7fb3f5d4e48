//! Cycles: jobs that wait for each other. Each job of a cycle is shown in a cycle that it is on.

use petgraph::algo::{astar, toposort};
use petgraph::graph::{DiGraph, NodeIndex};

/// Jobs and what each must follow.
type Links = DiGraph<(), (), usize>;

/// The cycles in "must follow", each the shortest way round its first job; together they show every job that is on any cycle.
///
/// `after[job]` lists the jobs that `job` must follow. A cycle `[a, b, c]` reads: a must follow b, b must follow c, and c
/// must follow a.
pub(crate) fn cycles(after: &[Vec<usize>]) -> Vec<Vec<usize>> {
    let links = after.iter().enumerate().flat_map(|(job, after)| after.iter().map(move |before| (job, *before)));
    // The graph hands out the last link first, and the first is wanted.
    let links = Links::from_edges(links.collect::<Vec<_>>().into_iter().rev());
    let mut found: Vec<Vec<usize>> = Vec::new();
    if toposort(&links, None).is_ok() {
        return found;
    }
    for job in links.node_indices() {
        if !found.iter().flatten().any(|shown| *shown == job.index()) {
            found.extend(way_back(&links, job));
        }
    }
    found
}

/// The shortest way from a job along "must follow" back to itself.
fn way_back(links: &Links, start: NodeIndex<usize>) -> Option<Vec<usize>> {
    let ways = links.neighbors(start).filter_map(|next| astar(links, next, |job| job == start, |_| 1_u32, |_| 0));
    let (_, way) = ways.min_by_key(|(length, _)| *length)?;
    let mut round: Vec<usize> = way.into_iter().map(NodeIndex::index).collect();
    // It ends at the job with which it is to begin.
    round.rotate_right(1);
    Some(round)
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
