//! The choice of checks against the optimum by brute force, on small random cases.

use std::collections::BTreeSet;

use super::cures::Cures;
use super::next::ENOUGH;
use super::*;
use crate::message::Message;
use crate::record::Evidence;

struct Draw(u64);

impl Draw {
    fn below(&mut self, below: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % below
    }
}

/// Five suspects, six certain checks with two answers, two covers.
fn random_case(draw: &mut Draw) -> TroubleCase {
    let suspect = |at: u64, weight: u64| Suspect {
        id: at.to_string(),
        label: Message::as_entered(at.to_string()),
        weight: 1.0 + weight as f64,
        cure: Message::as_entered(at.to_string()),
        try_minutes: 5.0,
        job: None,
        caution: None,
    };
    let suspects: Vec<Suspect> = (0..5).map(|at| suspect(at, draw.below(30))).collect();
    let covers = ["seat", "tank"].map(|id| Cover {
        id: id.to_owned(),
        label: Message::as_entered(id),
        minutes: draw.below(15) as f64,
    });
    let checks = (0..6).map(|at| {
        // Each check clears or convicts a set of suspects that is neither empty nor all of them.
        let convicts = 1 + draw.below(30);
        let behind = draw.below(3);
        Check {
            id: at.to_string(),
            label: Message::as_entered(at.to_string()),
            outcomes: ["yes", "no"]
                .map(|id| CheckOutcome { id: id.to_owned(), label: Message::as_entered(id) })
                .to_vec(),
            minutes: 1.0 + draw.below(12) as f64,
            danger_minutes: 0.0,
            place: None,
            position: None,
            covers: covers
                .iter()
                .take(behind as usize)
                .skip(usize::from(behind == 2))
                .map(|cover| cover.id.clone())
                .collect(),
            free_look: false,
            after: Vec::new(),
            caution: None,
            likelihoods: (0..5)
                .map(|at| if convicts >> at & 1 == 1 { vec![1.0, 0.0] } else { vec![0.0, 1.0] })
                .collect(),
            metering: None,
        }
    });
    TroubleCase { name: Message::as_entered("random"), checks: checks.collect(), covers: covers.to_vec(), suspects }
}

fn shares(case: &TroubleCase, evidence: &[Evidence]) -> Vec<f64> {
    beliefs(case, evidence).unwrap().iter().map(|belief| belief.probability).collect()
}

/// Whether any check that is left could still tell something.
fn tells(check: &Check, shares: &[f64]) -> Vec<(usize, f64)> {
    let probability =
        |outcome: usize| check.likelihoods.iter().zip(shares).map(|(line, share)| line[outcome] * share).sum();
    (0..check.outcomes.len()).map(|at| (at, probability(at))).filter(|(_, p): &(usize, f64)| *p > 1e-9).collect()
}

/// Expected minutes of a policy (or of the best one, when `policy` gives every check that is left).
fn expected(case: &TroubleCase, evidence: &[Evidence], policy: &dyn Fn(&[Evidence]) -> Vec<String>) -> f64 {
    let now = shares(case, evidence);
    if Cures::of(case).settled_share(&now) >= ENOUGH {
        return 0.0;
    }
    let off: BTreeSet<&str> = evidence
        .iter()
        .flat_map(|answer| case.check(answer.check()).unwrap().covers.iter().map(String::as_str))
        .collect();
    let mut best = f64::INFINITY;
    for id in policy(evidence) {
        let check = case.check(&id).unwrap();
        let outcomes = tells(check, &now);
        if outcomes.len() < 2 {
            continue;
        }
        let mut minutes = trouble_minutes(case, check, &off);
        for (outcome, probability) in outcomes {
            let mut then = evidence.to_vec();
            then.push(Evidence::Seen { check: id.clone(), outcome: check.outcomes[outcome].id.clone() });
            minutes += probability * expected(case, &then, policy);
        }
        best = best.min(minutes);
    }
    if best.is_finite() { best } else { 0.0 }
}

#[test]
fn a_hundred_random_searches_cost_at_most_a_tenth_more_than_the_best_and_two_per_cent_on_the_mean() {
    let mut draw = Draw(4711);
    let (mut ours_sum, mut best_sum, mut worst) = (0.0, 0.0, 1.0_f64);
    for _ in 0..100 {
        let case = random_case(&mut draw);
        let ours = expected(&case, &[], &|evidence| {
            next_check(&case, evidence).unwrap().map(|next| next.check).into_iter().collect()
        });
        let best = expected(&case, &[], &|evidence| {
            let done = |id: &str| evidence.iter().any(|answer| answer.check() == id);
            case.checks.iter().map(|check| check.id.clone()).filter(|id| !done(id)).collect()
        });
        assert!(ours >= best - 1e-9, "nothing is better than the best: {ours} {best}");
        if best > 0.0 {
            worst = worst.max(ours / best);
        }
        (ours_sum, best_sum) = (ours_sum + ours, best_sum + best);
    }
    println!("mean {:.4} of the optimum, worst {worst:.3}", ours_sum / best_sum);
    assert!(ours_sum / best_sum <= 1.02, "{}", ours_sum / best_sum);
    assert!(worst <= 1.1, "{worst}");
}

fn two_suspects(check: impl Fn(&str, f64, &[&str], bool) -> Check) -> TroubleCase {
    let suspect = |id: &str| Suspect {
        id: id.to_owned(),
        label: Message::as_entered(id),
        weight: 1.0,
        cure: Message::as_entered(id),
        try_minutes: 5.0,
        job: None,
        caution: None,
    };
    TroubleCase {
        name: Message::as_entered("two"),
        suspects: vec![suspect("a"), suspect("b")],
        covers: vec![Cover { id: "seat".to_owned(), label: Message::as_entered("Seat"), minutes: 9.0 }],
        checks: vec![
            check("behind", 1.0, &["seat"], false),
            check("open", 5.0, &[], false),
            check("look", 8.0, &[], true),
            check("look behind", 1.0, &["seat"], true),
        ],
    }
}

fn weak_check(id: &str, minutes: f64, covers: &[&str], free_look: bool) -> Check {
    Check {
        id: id.to_owned(),
        label: Message::as_entered(id),
        place: None,
        position: None,
        outcomes: ["yes", "no"].map(|id| CheckOutcome { id: id.to_owned(), label: Message::as_entered(id) }).to_vec(),
        minutes,
        danger_minutes: 0.0,
        covers: covers.iter().map(|cover| (*cover).to_owned()).collect(),
        free_look,
        after: Vec::new(),
        caution: None,
        likelihoods: vec![vec![0.8, 0.2], vec![0.2, 0.8]],
        metering: None,
    }
}

#[test]
fn a_look_comes_first_and_a_cover_that_is_off_costs_nothing_more() {
    let case = two_suspects(weak_check);
    let seen = |check: &str, outcome: &str| Evidence::Seen { check: check.to_owned(), outcome: outcome.to_owned() };
    assert_eq!(next_check(&case, &[]).unwrap().unwrap().check, "look");
    // The seat has come off for the look behind it: now the check behind it is the cheapest.
    let next = next_check(&case, &[seen("look", "yes"), seen("look behind", "no")]).unwrap().unwrap();
    assert_eq!((next.check.as_str(), next.trouble_minutes), ("behind", 1.0));
    let sheet = standing(&case, &[seen("look", "yes"), seen("look behind", "no")]).unwrap();
    assert_eq!(sheet.spent_minutes, 8.0 + 1.0 + 9.0);
}

#[test]
fn the_search_ends_at_95_per_cent_or_when_all_that_is_left_has_one_cure() {
    let mut case = two_suspects(weak_check);
    let seen = |check: &str| Evidence::Seen { check: check.to_owned(), outcome: "yes".to_owned() };
    assert!(next_check(&case, &[seen("look"), seen("open")]).unwrap().is_some(), "16 to 1 is 94 %");
    let sheet = standing(&case, &[seen("look"), seen("open"), seen("behind")]).unwrap();
    assert!(sheet.next.is_none());
    assert_eq!(sheet.settled.unwrap().cure, "a");
    case.suspects[1].cure = Message::as_entered("a");
    let sheet = standing(&case, &[]).unwrap();
    assert_eq!(sheet.settled.unwrap().suspects.len(), 2);
}

#[test]
fn when_no_check_tells_more_the_cures_come_in_an_order_to_try() {
    let mut case = two_suspects(weak_check);
    case.checks.clear();
    case.suspects[0].try_minutes = 50.0;
    let sheet = standing(&case, &[]).unwrap();
    assert_eq!((sheet.next, sheet.settled), (None, None));
    assert_eq!(sheet.try_in_order, ["b", "a"]);
}

#[test]
fn a_case_with_impossible_numbers_is_refused_by_name() {
    let refuses = |change: &dyn Fn(&mut TroubleCase)| {
        let mut case = two_suspects(weak_check);
        change(&mut case);
        next_check(&case, &[]).unwrap_err().english()
    };
    assert!(refuses(&|case| case.suspects.clear()).contains("at least one suspect"));
    assert!(refuses(&|case| case.suspects[0].weight = 0.0).contains("a weight must be above zero, 0 given"));
    assert!(refuses(&|case| case.checks[0].likelihoods[0][0] = 0.9).contains("add up to 1"));
    assert!(refuses(&|case| case.covers.clear()).contains("no cover with the id seat"));
    assert!(refuses(&|case| case.checks[0].minutes = -3.0).contains("−3 min"));
}
