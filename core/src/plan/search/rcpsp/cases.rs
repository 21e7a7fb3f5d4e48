//! Projects made up at random, against brute force and against the checker.

use proptest::prelude::*;

use super::bound::{critical_path, lower_bound};
use super::check::check;
use super::model::{Activity, After, Project};
use super::search::Search;

fn any_project(most: usize) -> impl Strategy<Value = Project> {
    let one = |place: usize| {
        let links = prop::collection::vec((0..place.max(1), 0_u32..5), 0..3);
        (0_u32..6, prop::collection::vec(0_u32..4, 2), links, 0_u32..4).prop_map(
            move |(duration, demand, links, release)| {
                let after = links.into_iter().filter(|(need, _)| *need < place);
                let after = after.map(|(activity, lag)| After { activity, lag }).collect();
                Activity { duration, demand, after, release }
            },
        )
    };
    (1..=most)
        .prop_flat_map(move |count| (0..count).map(one).collect::<Vec<_>>())
        .prop_map(|activities| Project::new(activities, vec![4, 3]).unwrap())
}

/// The shortest length of all, by trying every beginning of each activity in turn.
fn by_brute_force(project: &Project, begins: &mut Vec<u32>, used: &mut Vec<[u32; 2]>, best: &mut u32) {
    let place = begins.len();
    let Some(one) = project.activities().get(place) else {
        let length =
            begins.iter().zip(project.activities()).map(|(begin, one)| begin + one.duration).max().unwrap_or(0);
        *best = length.min(*best);
        return;
    };
    let ready =
        one.after.iter().map(|need| begins[need.activity] + project.activities()[need.activity].duration + need.lag);
    let earliest = ready.max().unwrap_or(0).max(one.release);
    let mut begin = earliest;
    while begin + one.duration < *best {
        let time = begin as usize..(begin + one.duration) as usize;
        let fits =
            time.clone().all(|at| (0..2).all(|kind| used[at][kind] + one.demand[kind] <= project.capacity()[kind]));
        if fits {
            time.clone().for_each(|at| (0..2).for_each(|kind| used[at][kind] += one.demand[kind]));
            begins.push(begin);
            by_brute_force(project, begins, used, best);
            begins.pop();
            time.for_each(|at| (0..2).for_each(|kind| used[at][kind] -= one.demand[kind]));
        }
        begin += 1;
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn small_projects_are_planned_as_short_as_brute_force_can(project in any_project(5), seed in 0_u64..1000) {
        let mut search = Search::new(&project, seed);
        search.run(3_000);
        let mut best = search.length() + 1;
        by_brute_force(&project, &mut Vec::new(), &mut vec![[0; 2]; 200], &mut best);
        prop_assert_eq!(search.length(), best);
        prop_assert!(critical_path(&project) <= lower_bound(&project) && lower_bound(&project) <= best);
    }

    #[test]
    fn every_plan_holds_before_the_checker_and_comes_again_the_same(project in any_project(25), seed in 0_u64..1000) {
        let mut search = Search::new(&project, seed);
        let first = search.length();
        prop_assert_eq!(check(&project, &search.begins()), Vec::<String>::new());
        search.run(600);
        prop_assert_eq!(check(&project, &search.begins()), Vec::<String>::new());
        prop_assert!(search.length() <= first && search.length() >= search.bound());
        let mut again = Search::new(&project, seed);
        again.run(300);
        again.run(300 - (again.schedules() % 3));
        let mut whole = Search::new(&project, seed);
        whole.run(600);
        prop_assert_eq!(whole.begins(), search.begins());
    }
}

#[test]
fn the_checker_finds_each_kind_of_fault() {
    let hands = |after: &[usize], release| Activity {
        duration: 2,
        demand: vec![1],
        after: after.iter().map(|&activity| After { activity, lag: 3 }).collect(),
        release,
    };
    let project = Project::new(vec![hands(&[], 0), hands(&[0], 0), hands(&[], 9)], vec![1]).unwrap();
    assert!(check(&project, &[0, 5, 9]).is_empty());
    assert!(check(&project, &[0, 4, 9])[0].contains("is over at 5"));
    assert!(check(&project, &[0, 5, 8])[0].contains("free from 9"));
    assert!(check(&project, &[9, 14, 10]).iter().any(|fault| fault.contains("2 are wanted")));
    assert!(check(&project, &[0])[0].contains("1 of 3"));
}
