//! The answer of the page: who is suspected, what to do next and what each answer would mean, or what it is.

use layshaft_wire::wire;

use crate::error::Refused;
use crate::faults::belief::{Belief, after, is_reversed, weigh};
use crate::faults::case::{Check, TroubleCase, check_case};
use crate::faults::cures::Cures;
use crate::faults::message::{FaultsMessage, FaultsSource};
use crate::faults::next::{ENOUGH, NextCheck, next_check};
use crate::faults::order::{TryOut, try_order};
use crate::faults::trouble::{covers_off, trouble_minutes};
use crate::message::{List, ListStyle, Message};
use crate::quantity::{Finding, FindingCode, Source, Standing, Weight};
use crate::record::Evidence;
use crate::units::Unit;

/// What an answer to the next check would mean.
#[wire]
pub struct Meaning {
    /// Id of the outcome.
    pub outcome: String,
    /// The outcome in words.
    pub label: Message,
    /// How likely this answer is.
    pub probability: f64,
    /// What it points at, most likely first.
    pub points_at: Vec<Message>,
}

/// What the search has settled on.
#[wire]
pub struct SettledOn {
    /// What puts it right.
    pub cure: Message,
    /// Suspects that share this cure, most likely first.
    pub suspects: Vec<Message>,
    /// Their probability together.
    pub probability: f64,
}

/// Why a search asks no more.
#[wire]
pub enum SearchStop {
    /// It goes on: there is a next check.
    GoesOn,
    /// One cure holds 95 %.
    Settled,
    /// No check tells more: try the cures in their order.
    TryInOrder,
}

/// The check to do now, ready to be read out at the bench.
#[wire]
pub struct Question {
    /// Id of the check.
    pub check: String,
    /// The question or instruction.
    pub label: Message,
    /// Where it is done.
    pub place: Option<Message>,
    /// Switch positions for it.
    pub position: Option<Message>,
    /// Whether it takes a reading in volts beside the answers to choose from.
    pub takes_reading: bool,
    /// What must come off first, in words.
    pub take_off: Vec<Message>,
    /// Hands-on minutes once everything is in reach.
    pub minutes: f64,
    /// Minutes to take off what is in the way and put it back.
    pub access_minutes: f64,
    /// What each answer would mean, in one sentence.
    pub why: Message,
    /// A caution at this step.
    pub caution: Option<Message>,
}

/// One answer that was given.
#[wire]
pub struct AnsweredCheck {
    /// Id of the check.
    pub check: String,
    /// The check in words.
    pub label: Message,
    /// The answer in words.
    pub answer: Message,
    /// Whether it fits none of what was suspected then: to be checked again.
    pub surprising: bool,
}

/// Where a search stands.
#[wire]
pub struct SearchState {
    /// What is wrong, in words.
    pub name: Message,
    /// Whether it goes on.
    pub stop: SearchStop,
    /// The check to do now.
    pub question: Option<Question>,
    /// The answers so far, oldest first.
    pub answers: Vec<AnsweredCheck>,
    /// The suspects, most likely first.
    pub beliefs: Vec<Belief>,
    /// The next check; none when settled or when no check tells more.
    pub next: Option<NextCheck>,
    /// What its answers would mean.
    pub meanings: Vec<Meaning>,
    /// What it is, once one cure holds 95 %.
    pub settled: Option<SettledOn>,
    /// When no check tells more and nothing is settled: the cures in the order in which to try them.
    pub try_in_order: Vec<Message>,
    /// Trouble so far, minutes.
    pub spent_minutes: f64,
    /// What is worth saying.
    pub findings: Vec<Finding>,
    /// Where method and weights come from.
    pub sources: Vec<Source>,
}

/// Works out where a search stands after these answers.
pub fn standing(case: &TroubleCase, evidence: &[Evidence]) -> Result<SearchState, Refused> {
    check_case(case)?;
    let weighed = weigh(case, evidence)?;
    let next = next_check(case, evidence)?;
    let mut beliefs = crate::faults::belief::beliefs(case, evidence)?;
    beliefs.sort_by(|one, other| other.probability.total_cmp(&one.probability));
    let settled = settled_on(case, &weighed.shares);
    let check = next.as_ref().map(|next| case.check(&next.check)).transpose()?;
    let meanings = check.map(|check| meanings(case, check, &weighed.shares)).unwrap_or_default();
    let question = check.map(|check| question(case, check, &meanings, evidence));
    let answers = answers(case, evidence, weighed.surprising.as_deref())?;
    let stuck = next.is_none() && settled.is_none();
    let try_in_order = if stuck { cures_in_order(case, &weighed.shares)? } else { Vec::new() };
    let mut findings = Vec::new();
    if let Some(id) = &weighed.surprising {
        let text = FaultsMessage::Recheck { check: case.check(id)?.label.clone() };
        findings.push(Finding::new(FindingCode::FaultsRecheck, Weight::Care, text));
    }
    if let Some(caution) = check.and_then(|check| check.caution.clone()) {
        findings.push(Finding::new(FindingCode::FaultsCaution, Weight::Care, caution));
    }
    let stop = match (&next, &settled) {
        (Some(_), _) => SearchStop::GoesOn,
        (None, Some(_)) => SearchStop::Settled,
        (None, None) => SearchStop::TryInOrder,
    };
    Ok(SearchState {
        name: case.name.clone(),
        stop,
        question,
        answers,
        beliefs,
        next,
        meanings,
        settled,
        try_in_order,
        spent_minutes: spent(case, evidence)?,
        findings,
        sources: sources(),
    })
}

fn question(case: &TroubleCase, check: &Check, meanings: &[Meaning], evidence: &[Evidence]) -> Question {
    let off = covers_off(case, evidence);
    let on = |cover: &&crate::faults::case::Cover| check.covers.contains(&cover.id) && !off.contains(cover.id.as_str());
    let in_the_way = || case.covers.iter().filter(on);
    Question {
        check: check.id.clone(),
        label: check.label.clone(),
        place: check.place.clone(),
        position: check.position.clone(),
        takes_reading: check.metering.is_some(),
        take_off: in_the_way().map(|cover| cover.label.clone()).collect(),
        minutes: check.minutes,
        access_minutes: in_the_way().map(|cover| cover.minutes).sum(),
        why: why(meanings),
        caution: check.caution.clone(),
    }
}

/// “12 V” means A or B. “0 V” means C. Answers that hardly occur are left out.
fn why(meanings: &[Meaning]) -> Message {
    let likely = meanings.iter().filter(|meaning| meaning.probability > 0.01 && !meaning.points_at.is_empty());
    let means = likely.map(|meaning| {
        let suspects = List(ListStyle::Or, meaning.points_at.clone());
        FaultsMessage::Means { answer: meaning.label.clone(), suspects }.into()
    });
    Message::joined(ListStyle::Sentences, means.collect())
}

fn answers(case: &TroubleCase, evidence: &[Evidence], surprising: Option<&str>) -> Result<Vec<AnsweredCheck>, Refused> {
    let line = |answer: &Evidence| {
        let check = case.check(answer.check())?;
        let said = match answer {
            Evidence::Read { volts, .. } if is_reversed(*volts) => {
                FaultsMessage::VoltsReversed { volts: Unit::Volt.of(*volts) }.into()
            }
            Evidence::Read { volts, .. } => FaultsMessage::VoltsRead { volts: Unit::Volt.of(*volts) }.into(),
            Evidence::Skipped { .. } => FaultsMessage::NotSure.into(),
            Evidence::Seen { outcome, .. } => {
                let known = check.outcomes.iter().find(|at| at.id == *outcome);
                known.map_or_else(|| Message::as_entered(outcome), |at| at.label.clone())
            }
        };
        Ok(AnsweredCheck {
            check: check.id.clone(),
            label: check.label.clone(),
            answer: said,
            surprising: surprising == Some(&check.id),
        })
    };
    evidence.iter().map(line).collect()
}

fn spent(case: &TroubleCase, evidence: &[Evidence]) -> Result<f64, Refused> {
    let mut sum = 0.0;
    for (at, answer) in evidence.iter().enumerate().filter(|(_, answer)| answer.was_done()) {
        let before = evidence.get(..at).unwrap_or_default();
        sum += trouble_minutes(case, case.check(answer.check())?, &covers_off(case, before));
    }
    Ok(sum)
}

fn meanings(case: &TroubleCase, check: &Check, shares: &[f64]) -> Vec<Meaning> {
    let meaning = |(at, outcome): (usize, &crate::faults::case::CheckOutcome)| {
        let (probability, then) = after(check, shares, at);
        let mut likely: Vec<(&Message, f64)> =
            case.suspects.iter().zip(&then).map(|(suspect, share)| (&suspect.label, *share)).collect();
        likely.sort_by(|one, other| other.1.total_cmp(&one.1));
        // As many as it takes for four fifths, three at most: more cannot be read at the bench.
        let mut named = 0.0;
        let points_at = likely.into_iter().take(3).take_while(|(_, share)| {
            let go_on = named < 0.8 && *share > 0.02;
            named += share;
            go_on
        });
        let points_at = points_at.map(|(label, _)| label.clone()).collect();
        Meaning { outcome: outcome.id.clone(), label: outcome.label.clone(), probability, points_at }
    };
    check.outcomes.iter().enumerate().map(meaning).collect()
}

fn settled_on(case: &TroubleCase, shares: &[f64]) -> Option<SettledOn> {
    if Cures::of(case).settled_share(shares) < ENOUGH {
        return None;
    }
    let top = case.suspects.iter().zip(shares).map(|(suspect, _)| {
        let same = case.suspects.iter().zip(shares).filter(|(other, _)| other.cure == suspect.cure);
        (suspect, same.map(|(_, share)| share).sum::<f64>())
    });
    let (suspect, probability) = top.max_by(|one, other| one.1.total_cmp(&other.1))?;
    let mut same: Vec<_> = case.suspects.iter().zip(shares).filter(|(other, _)| other.cure == suspect.cure).collect();
    same.sort_by(|one, other| other.1.total_cmp(one.1));
    let suspects = same.into_iter().map(|(suspect, _)| suspect.label.clone()).collect();
    Some(SettledOn { cure: suspect.cure.clone(), suspects, probability })
}

/// The cures in the order of least expected time, each cure once with all that it would put right.
fn cures_in_order(case: &TroubleCase, shares: &[f64]) -> Result<Vec<Message>, Refused> {
    let mut cures: Vec<(&Message, TryOut)> = Vec::new();
    for (suspect, share) in case.suspects.iter().zip(shares) {
        match cures.iter_mut().find(|(cure, _)| **cure == suspect.cure) {
            Some((_, one)) => one.probability = (one.probability + share).min(1.0),
            None => {
                let one = TryOut {
                    id: suspect.id.clone(),
                    probability: share.clamp(0.0, 1.0),
                    minutes: suspect.try_minutes,
                    cover: None,
                    cover_minutes: 0.0,
                };
                cures.push((&suspect.cure, one));
            }
        }
    }
    cures.retain(|(_, one)| one.probability > 0.01);
    let tries: Vec<TryOut> = cures.iter().map(|(_, one)| one.clone()).collect();
    let cure = |one: TryOut| {
        let found = cures.iter().find(|(_, other)| other.id == one.id);
        found.map(|(cure, _)| (*cure).clone())
    };
    Ok(try_order(&tries)?.into_iter().filter_map(cure).collect())
}

fn sources() -> Vec<Source> {
    vec![
        Source::new(FaultsSource::Checks, Standing::Seen),
        Source::new(FaultsSource::Order, Standing::Memory),
        Source::new(FaultsSource::Judgement, Standing::CommonPractice),
    ]
}
