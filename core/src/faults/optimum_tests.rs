//! The order of checks against the best of all plans when answers may be mistaken: six planted faults of the whole machine.
//!
//! The optimum is worked out by brute force over the tree of beliefs: at each belief every check is tried, after each check
//! every answer, until one cure holds 95 %. Only what cannot change the result is left out: of checks with the same lines,
//! which is exchanged for which; and a check whose cost cannot fall below the best found already. Where a path has become
//! very unlikely, the optimum pays one check more and ours pays dearly, so that the ratio can only be too great.

use std::collections::BTreeMap;

use super::circuit_tests::{six, whole_machine};
use super::cures::Cures;
use super::next::ENOUGH;
use super::*;
use crate::record::Evidence;

/// Paths less likely than this are cut off in ours.
const CUT: f64 = 1e-5;
/// What ours pays beyond a path that is cut off, checks or minutes.
const BEYOND: f64 = 100.0;
/// Checks of a kind that are kept: a fourth would be of use after several mistakes at the earliest.
const COPIES: usize = 3;

/// Probability of each suspect and the answers so far.
type Joint = [f64; 6];
/// Kind of a check and its answer.
type Answer = (u8, u8);

/// Checks with the same lines and the same trouble.
struct Kind {
    one: Check,
    copies: usize,
    /// The covers in the way, a bit each.
    covers: u32,
    /// For each answer, its probability under each suspect.
    answers: Vec<Joint>,
}

/// Every plan for a case.
struct Plans {
    kinds: Vec<Kind>,
    /// Paths less likely than this are not followed: they pay for one check more.
    cut: f64,
    /// For each cure, its suspects.
    cures: Vec<Vec<usize>>,
    /// Minutes of each cover.
    minutes: Vec<f64>,
    /// The least trouble of any check, covers apart.
    cheapest: f64,
    /// The answers in order, with the least cost from there on.
    known: BTreeMap<Vec<Answer>, f64>,
}

/// A kind of check at a belief: the least that it can cost, and the answers after which it goes on.
struct Way {
    least: f64,
    kind: u8,
    goes_on: Vec<(u8, Joint)>,
}

impl Plans {
    fn of(case: &TroubleCase, cut: f64) -> Self {
        let mut kinds: Vec<Kind> = Vec::new();
        for check in &case.checks {
            if let Some(kind) = kinds.iter_mut().find(|kind| alike(&kind.one, check)) {
                kind.copies += 1;
                continue;
            }
            let answer = |outcome: usize| std::array::from_fn(|at| check.likelihoods[at][outcome]);
            let answers = (0..check.outcomes.len()).map(answer).collect();
            let bit = |(cover, at): (&Cover, u32)| u32::from(check.covers.contains(&cover.id)) << at;
            let covers = case.covers.iter().zip(0..).map(bit).sum();
            kinds.push(Kind { one: check.clone(), copies: 1, covers, answers });
        }
        let mut cures = BTreeMap::<String, Vec<usize>>::new();
        for (at, suspect) in case.suspects.iter().enumerate() {
            cures.entry(suspect.cure.english()).or_default().push(at);
        }
        let cheapest = kinds.iter().map(|kind| kind.one.minutes).fold(f64::INFINITY, f64::min);
        let minutes = case.covers.iter().map(|cover| cover.minutes).collect();
        Self { kinds, cut, cures: cures.into_values().collect(), minutes, cheapest, known: BTreeMap::new() }
    }

    /// The least that must be paid from here on, times the probability of being here.
    fn least(&mut self, joint: &Joint, given: &[Answer]) -> f64 {
        if let Some(cost) = self.known.get(given) {
            return *cost;
        }
        let mut ways = self.ways(joint, given);
        ways.sort_by(|one, other| one.least.total_cmp(&other.least));
        let mut best = f64::INFINITY;
        for way in ways {
            if way.least >= best {
                break;
            }
            // Before any plan is followed, each answer is reckoned at the check that leaves least unsettled after it.
            let mut cost = way.least;
            let mut goes_on = Vec::new();
            for (outcome, then) in way.goes_on {
                let sum: f64 = then.iter().sum();
                if sum < self.cut / 10.0 {
                    continue;
                }
                let answers = with(given, (way.kind, outcome));
                let next = self.ways(&then, &answers);
                let reckoned = next.iter().map(|way| way.least).fold(f64::INFINITY, f64::min);
                cost += reckoned - sum * self.cheapest;
                if sum >= self.cut {
                    goes_on.push((answers, reckoned, then));
                }
            }
            for (answers, reckoned, then) in goes_on {
                if cost >= best {
                    break;
                }
                cost += self.least(&then, &answers) - reckoned;
            }
            best = best.min(cost);
        }
        assert!(best.is_finite(), "no check is left");
        self.known.insert(given.to_vec(), best);
        best
    }

    /// What can be done at a belief. An answer that settles nothing is reckoned at the cheapest check.
    fn ways(&self, joint: &Joint, given: &[Answer]) -> Vec<Way> {
        let off = given.iter().map(|(kind, _)| self.kinds[usize::from(*kind)].covers).fold(0, |off, more| off | more);
        let here: f64 = joint.iter().sum();
        let mut ways = Vec::new();
        for (kind, id) in self.kinds.iter().zip(0_u8..) {
            if given.iter().filter(|(done, _)| *done == id).count() == kind.copies {
                continue;
            }
            let on = (0..self.minutes.len()).filter(|cover| (kind.covers & !off) >> cover & 1 == 1);
            let minutes = kind.one.minutes + on.map(|cover| self.minutes[cover]).sum::<f64>();
            let mut way = Way { least: here * minutes, kind: id, goes_on: Vec::new() };
            for (answer, outcome) in kind.answers.iter().zip(0_u8..) {
                let then: Joint = std::array::from_fn(|at| joint[at] * answer[at]);
                let sum: f64 = then.iter().sum();
                if self.settled(&then, sum) {
                    continue;
                }
                way.least += sum * self.cheapest;
                way.goes_on.push((outcome, then));
            }
            ways.push(way);
        }
        ways
    }

    /// Fewest checks, summed over the faults that are left, when each answers as it does and is believed as far as answers
    /// are: any plan may be made, one that knows that nothing is mistaken too.
    fn fewest_for(&mut self, joint: &Joint, left: &[usize], given: &[Answer]) -> u32 {
        if let Some(cost) = self.known.get(given) {
            return *cost as u32;
        }
        let mut best = u32::MAX;
        for (kind, id) in (0..self.kinds.len()).zip(0_u8..) {
            if given.iter().filter(|(done, _)| *done == id).count() == self.kinds[kind].copies {
                continue;
            }
            let mut cost = left.len() as u32;
            let mut goes_on = Vec::new();
            for (answer, outcome) in self.kinds[kind].answers.iter().zip(0_u8..) {
                let part: Vec<usize> = left
                    .iter()
                    .copied()
                    .filter(|at| says(&self.kinds[kind].one, *at) == usize::from(outcome))
                    .collect();
                let then: Joint = std::array::from_fn(|at| joint[at] * answer[at]);
                if !part.is_empty() && !self.settled(&then, then.iter().sum()) {
                    cost += part.len() as u32;
                    goes_on.push((outcome, then, part));
                }
            }
            for (outcome, then, part) in goes_on {
                if cost >= best {
                    break;
                }
                cost = cost - part.len() as u32 + self.fewest_for(&then, &part, &with(given, (id, outcome)));
            }
            best = best.min(cost);
        }
        self.known.insert(given.to_vec(), f64::from(best));
        best
    }

    fn settled(&self, joint: &Joint, sum: f64) -> bool {
        self.cures.iter().any(|cure| cure.iter().map(|at| joint[*at]).sum::<f64>() >= ENOUGH * sum)
    }
}

fn with(given: &[Answer], answer: Answer) -> Vec<Answer> {
    let mut answers = given.to_vec();
    answers.insert(answers.partition_point(|other| *other < answer), answer);
    answers
}

fn alike(one: &Check, other: &Check) -> bool {
    one.likelihoods == other.likelihoods
        && (one.minutes, &one.covers, one.free_look) == (other.minutes, &other.covers, other.free_look)
}

/// What our order pays from here on, times the probability of being here, from above: checks and minutes.
fn ours(case: &TroubleCase, joint: &[f64], evidence: &mut Vec<Evidence>) -> [f64; 2] {
    let here: f64 = joint.iter().sum();
    if here < CUT {
        return [here * BEYOND; 2];
    }
    let Some(next) = next_check(case, evidence).unwrap() else {
        assert!(Cures::of(case).settled_share(joint) >= ENOUGH * here, "gives up after {evidence:?}");
        return [0.0; 2];
    };
    let check = case.check(&next.check).unwrap();
    let mut cost = [here, here * next.trouble_minutes];
    for (at, outcome) in check.outcomes.iter().enumerate() {
        let then: Vec<f64> = joint.iter().zip(&check.likelihoods).map(|(share, line)| share * line[at]).collect();
        evidence.push(Evidence::Seen { check: check.id.clone(), outcome: outcome.id.clone() });
        let more = ours(case, &then, evidence);
        cost = [cost[0] + more[0], cost[1] + more[1]];
        evidence.pop();
    }
    cost
}

/// The six faults as the only suspects, each as likely as the next, with few checks of a kind.
fn case_of_six(change: impl Fn(&mut Check)) -> TroubleCase {
    let mut case = circuit::case_of_faults(&whole_machine(), &six()).unwrap();
    case.suspects.iter_mut().for_each(|suspect| suspect.weight = 1.0);
    for mut check in std::mem::take(&mut case.checks) {
        check.metering = None;
        change(&mut check);
        if case.checks.iter().filter(|other| alike(other, &check)).count() < COPIES {
            case.checks.push(check);
        }
    }
    case
}

fn case_in_checks() -> TroubleCase {
    // Every check as much trouble as the next: then the least trouble is the least number of checks.
    case_of_six(|check| {
        (check.minutes, check.free_look) = (1.0, false);
        check.covers.clear();
    })
}

/// Our mean and the best of all plans, both in checks or both in minutes.
fn against_the_best(case: &TroubleCase, cut: f64, which: usize, unit: &str) -> (f64, f64) {
    let mut plans = Plans::of(case, cut);
    let priors: Joint = case.priors().try_into().unwrap();
    let best = plans.least(&priors, &[]);
    let mean = ours(case, &priors, &mut Vec::new())[which];
    println!(
        "answers that may be mistaken, {} checks of {} kinds: ours {mean:.3} {unit}, the best of all plans {best:.3}, ratio {:.3}",
        case.checks.len(),
        plans.kinds.len(),
        mean / best
    );
    (mean, best)
}

#[test]
fn with_answers_that_may_be_mistaken_six_faults_take_at_most_a_tenth_more_checks_than_the_best_plan() {
    let (mean, best) = against_the_best(&case_in_checks(), 5e-3, 0, "checks");
    assert!(best > 1.0 && mean >= best && mean <= 1.1 * best, "{mean} {best}");
}

#[test]
fn in_minutes_the_six_faults_cost_at_most_a_fifth_more_than_the_best_plan_although_looks_come_first() {
    let (mean, best) = against_the_best(&case_of_six(|_| {}), 2e-2, 1, "minutes");
    assert!(best > 1.0 && mean >= best && mean <= 1.2 * best, "{mean} {best}");
}

/// The answer that a machine with this fault gives.
fn says(check: &Check, suspect: usize) -> usize {
    let line = &check.likelihoods[suspect];
    (0..line.len()).max_by(|one, other| line[*one].total_cmp(&line[*other])).unwrap()
}

#[test]
fn a_machine_that_answers_as_its_fault_does_is_seen_through_in_at_most_a_tenth_more_checks_than_by_the_best_plan() {
    let case = case_in_checks();
    let count = |planted: usize| {
        let mut evidence = Vec::new();
        while let Some(next) = next_check(&case, &evidence).unwrap() {
            let check = case.check(&next.check).unwrap();
            let outcome = check.outcomes[says(check, planted)].id.clone();
            evidence.push(Evidence::Seen { check: next.check, outcome });
        }
        assert!(beliefs(&case, &evidence).unwrap()[planted].probability >= ENOUGH);
        evidence.len()
    };
    let counts: Vec<usize> = (0..6).map(count).collect();
    let mean = counts.iter().sum::<usize>() as f64 / 6.0;
    let mut plans = Plans::of(&case, 0.0);
    let best = f64::from(plans.fewest_for(&case.priors().try_into().unwrap(), &[0, 1, 2, 3, 4, 5], &[])) / 6.0;
    println!(
        "each fault's own answers: {counts:?} checks, mean {mean:.3}, the best plan {best:.3}, ratio {:.3}",
        mean / best
    );
    assert!(best > 1.0 && mean >= best && mean <= 1.1 * best, "{mean} {best}");
}
