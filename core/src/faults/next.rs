//! What to check next: most information for the least trouble, looks before tools, and when to stop.
//!
//! Method: expected information over trouble (Breese and Heckerman 1996, *Decision-theoretic troubleshooting*), which alone
//! misjudges shared covers and ends of the search; so checks behind the same covers are weighed as a bundle, and where the
//! case is small the best few are played through to the end. No optimum is promised; the tests compare with the optimum.

use std::collections::BTreeSet;

use layshaft_wire::wire;

use super::belief::{after, gain, weigh};
use super::case::{Check, CheckOutcome, Cover, TroubleCase, check_case};
use super::cures::Cures;
use super::trouble::{access_minutes, covers_off, trouble_minutes};
use crate::error::Refused;
use crate::message::Message;
use crate::record::Evidence;

/// The search ends when one suspect, or one cure, holds this share.
pub(super) const ENOUGH: f64 = 0.95;
/// A check that tells less than this is not worth doing, bits.
const TELLS_SOMETHING: f64 = 0.005;
/// A look that tells less than this does not come before a measurement, bits.
const LOOK_TELLS: f64 = 0.05;
/// Least trouble that is reckoned with, minutes: a look over the shoulder.
const LEAST_MINUTES: f64 = 0.1;
/// Suspects below this share are left out when checks are played through.
const ALIVE: f64 = 0.002;
/// Cases up to this many live suspects are played through.
const SMALL: usize = 12;
/// Beliefs that are looked at in one playing-through before it is broken off.
const BUDGET: usize = 1000;
/// How many unlike checks a playing-through chooses from.
const MOST_PLAYED: usize = 24;
/// How many of the best checks are played through.
const PLAYED: usize = 6;

/// The check to do next.
#[wire]
pub struct NextCheck {
    /// Id of the check.
    pub check: String,
    /// What it is expected to tell, bits.
    pub gain_bits: f64,
    /// Its trouble, minutes.
    pub trouble_minutes: f64,
}

/// Where a search stands: shares of the suspects, checks done, covers off.
#[derive(Clone)]
struct Position<'a> {
    shares: Vec<f64>,
    done: BTreeSet<&'a str>,
    off: BTreeSet<&'a str>,
}

/// What is played through.
struct Played {
    case: TroubleCase,
    cures: Cures,
}

/// The next check after these answers; none when one cure holds 95 % or no check tells anything more.
///
/// ```
/// use layshaft_core::faults::{knowledge_case, next_check};
/// let case = knowledge_case("turns-but-does-not-start").unwrap();
/// let first = next_check(&case, &[]).unwrap().unwrap();
/// assert!(case.check(&first.check).unwrap().free_look, "looks come first");
/// ```
pub fn next_check(case: &TroubleCase, evidence: &[Evidence]) -> Result<Option<NextCheck>, Refused> {
    check_case(case)?;
    let shares = weigh(case, evidence)?.shares;
    let done = case.checks.iter().map(|check| check.id.as_str());
    let done = done.filter(|id| evidence.iter().any(|answer| answer.check() == *id)).collect();
    let at = Position { shares, done, off: covers_off(case, evidence) };
    let cures = Cures::of(case);
    if cures.settled_share(&at.shares) >= ENOUGH {
        return Ok(None);
    }
    let leaned_on = |id: &String| evidence.iter().any(|answer| answer.was_done() && answer.check() == id);
    let mut open = useful(case, &at);
    open.retain(|(check, _)| check.after.iter().all(leaned_on));
    let looks = free_looks(case, &at, &open);
    let chosen = choose(case, &cures, &at, if looks.is_empty() { &open } else { &looks }, &open);
    Ok(chosen.map(|check| NextCheck {
        check: check.id.clone(),
        gain_bits: gain(check, &at.shares),
        trouble_minutes: trouble_minutes(case, check, &at.off),
    }))
}

/// The checks that would tell something, with what they tell.
fn useful<'a>(case: &'a TroubleCase, at: &Position<'_>) -> Vec<(&'a Check, f64)> {
    let open = case.checks.iter().filter(|check| !at.done.contains(check.id.as_str()));
    open.map(|check| (check, gain(check, &at.shares))).filter(|(_, gain)| *gain >= TELLS_SOMETHING).collect()
}

/// The looks that tell enough and need nothing taken off.
fn free_looks<'a>(case: &TroubleCase, at: &Position<'_>, open: &[(&'a Check, f64)]) -> Vec<(&'a Check, f64)> {
    let looks = open.iter().filter(|(check, gain)| {
        check.free_look && *gain >= LOOK_TELLS && access_minutes(&case.covers, check, &at.off) == 0.0
    });
    looks.copied().collect()
}

fn per_minute(case: &TroubleCase, at: &Position<'_>, (check, gain): &(&Check, f64)) -> f64 {
    gain / trouble_minutes(case, check, &at.off).max(LEAST_MINUTES)
}

/// The best of the few best among these, played through with all that is open where the case is small.
fn choose<'a>(
    case: &'a TroubleCase,
    cures: &Cures,
    at: &Position<'a>,
    among: &[(&'a Check, f64)],
    open: &[(&'a Check, f64)],
) -> Option<&'a Check> {
    let candidates = ranked(case, at, among);
    let first = *candidates.first()?;
    let alive = at.shares.iter().filter(|share| **share > ALIVE).count();
    if alive > SMALL || candidates.len() == 1 {
        return Some(first);
    }
    let mut candidates = unlike(at, candidates);
    candidates.truncate(PLAYED);
    let mut played = candidates.clone();
    let others = unlike(at, ranked(case, at, open));
    played.extend(others.into_iter().filter(|check| !candidates.iter().any(|other| other.id == check.id)));
    let small = without_the_dead(case, cures, at, &played);
    let shares = at.shares.iter().copied().filter(|share| *share > ALIVE).collect();
    let start = Position { shares, done: BTreeSet::new(), off: at.off.clone() };
    let mut best = (first, f64::INFINITY);
    for check in candidates {
        let Some(same) = small.case.checks.iter().find(|same| same.id == check.id) else { continue };
        let mut budget = BUDGET;
        let Some(minutes) = played_through(&small, &start, same, &mut budget) else { continue };
        if minutes < best.1 - 1e-9 {
            best = (check, minutes);
        }
    }
    Some(best.0)
}

/// The best of the checks that say the same about the live suspects behind the same covers, as many as can be played through.
fn unlike<'a>(at: &Position<'_>, ranked: Vec<&'a Check>) -> Vec<&'a Check> {
    let mut kept: Vec<&Check> = Vec::new();
    for check in ranked {
        let says_the_same = |other: &&Check| {
            let lines = check.likelihoods.iter().zip(&other.likelihoods).zip(&at.shares);
            other.covers == check.covers && lines.filter(|(_, share)| **share > ALIVE).all(|((a, b), _)| a == b)
        };
        if !kept.iter().any(says_the_same) {
            kept.push(check);
        }
        if kept.len() == MOST_PLAYED {
            break;
        }
    }
    kept
}

/// The case with nothing in it but live suspects and useful checks, and without its words: what is played through is looked
/// at very often, and nobody reads it.
fn without_the_dead(case: &TroubleCase, cures: &Cures, at: &Position<'_>, open: &[&Check]) -> Played {
    let live = |share: &f64| *share > ALIVE;
    let unsaid = || Message::new("", Vec::new());
    let reduced = |check: &&Check| Check {
        id: check.id.clone(),
        label: unsaid(),
        place: None,
        position: None,
        outcomes: check.outcomes.iter().map(|_| CheckOutcome { id: String::new(), label: unsaid() }).collect(),
        minutes: check.minutes,
        danger_minutes: check.danger_minutes,
        covers: check.covers.clone(),
        free_look: check.free_look,
        after: Vec::new(),
        caution: None,
        likelihoods: (check.likelihoods.iter().zip(&at.shares).filter(|(_, share)| live(share)))
            .map(|(line, _)| line.clone())
            .collect(),
        metering: None,
    };
    let covers =
        case.covers.iter().map(|cover| Cover { id: cover.id.clone(), label: unsaid(), minutes: cover.minutes });
    let case = TroubleCase {
        name: unsaid(),
        suspects: Vec::new(),
        covers: covers.collect(),
        checks: open.iter().map(reduced).collect(),
    };
    Played { case, cures: cures.of_those(at.shares.iter().map(live)) }
}

/// The checks by gain over trouble, best first. A check also counts as the beginning of the bundle behind its covers: the
/// covers are paid for once and the gains behind them add up, to no more than there is to know.
fn ranked<'a>(case: &TroubleCase, at: &Position<'_>, open: &[(&'a Check, f64)]) -> Vec<&'a Check> {
    let to_know = super::belief::entropy(&at.shares);
    let score = |one: &(&'a Check, f64)| {
        let alone = per_minute(case, at, one);
        let access = access_minutes(&case.covers, one.0, &at.off);
        if access == 0.0 {
            return alone;
        }
        let own = |check: &Check| (check.minutes + check.danger_minutes).max(LEAST_MINUTES);
        let mut behind: Vec<_> =
            open.iter().filter(|other| other.0.id != one.0.id && other.0.covers == one.0.covers).collect();
        behind.sort_by(|a, b| (b.1 / own(b.0)).total_cmp(&(a.1 / own(a.0))));
        let (mut gain, mut minutes, mut best) = (one.1, access + own(one.0), alone);
        for other in behind {
            (gain, minutes) = ((gain + other.1).min(to_know), minutes + own(other.0));
            best = best.max(gain / minutes);
        }
        best
    };
    let mut scored: Vec<_> = open.iter().map(|one| (score(one), per_minute(case, at, one), one.0)).collect();
    scored.sort_by(|a, b| b.0.total_cmp(&a.0).then(b.1.total_cmp(&a.1)));
    scored.into_iter().map(|(_, _, check)| check).collect()
}

/// Expected minutes when this check is done now and the best ranked one after each answer; none when the budget is spent.
fn played_through<'a>(played: &'a Played, at: &Position<'a>, check: &'a Check, budget: &mut usize) -> Option<f64> {
    *budget = budget.checked_sub(1)?;
    let Played { case, cures } = played;
    let mut sum = trouble_minutes(case, check, &at.off);
    let mut next = at.clone();
    next.done.insert(&check.id);
    next.off.extend(check.covers.iter().map(String::as_str));
    for outcome in 0..check.outcomes.len() {
        let (probability, shares) = after(check, &at.shares, outcome);
        if probability < 1e-4 || cures.settled_share(&shares) >= ENOUGH {
            continue;
        }
        next.shares = shares;
        let open = useful(case, &next);
        if let Some(then) = ranked(case, &next, &open).first() {
            sum += probability * played_through(played, &next, then, budget)?;
        }
    }
    Some(sum)
}
