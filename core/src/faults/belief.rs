//! What the answers make of the suspects.
//!
//! Method: Bayes' rule, one fault at a time. A reading is compared with what the harness predicts under each suspect, within
//! the tolerance of the meter and of the prediction.

use layshaft_wire::wire;

use super::case::{Check, Metering, TroubleCase};
use super::message::FaultsMessage;
use crate::bounds;
use crate::error::Refused;
use crate::message::Message;
use crate::record::Evidence;

/// Tolerance of a reading: a twentieth of a volt, and a share of the prediction. Our judgement.
const TOLERANCE_VOLTS: f64 = 0.05;
/// That share on a battery: meter, battery and prediction together.
pub(super) const ON_BATTERY: f64 = 0.03;
/// The same on a coil, whose voltage goes with an engine speed that nobody holds exactly.
pub(super) const ON_COIL: f64 = 0.12;
/// Share of readings that are simply wrong (slipped probe, wrong point). Our judgement.
pub(super) const SLIP: f64 = 0.01;
/// An answer less likely than this under everything that is still suspected asks to be checked again.
const SURPRISING: f64 = 0.03;

/// How likely a suspect is now.
#[wire]
pub struct Belief {
    /// Id of the suspect.
    pub suspect: String,
    /// In words.
    pub label: Message,
    /// Probability, 0 to 1.
    pub probability: f64,
}

/// What the answers so far make of the suspects.
pub(super) struct Weighed {
    /// Probabilities in the order of the suspects.
    pub(super) shares: Vec<f64>,
    /// Id of the last check whose answer fits none of what was still suspected.
    pub(super) surprising: Option<String>,
}

/// The probability of each suspect after the answers, in the order of the suspects.
///
/// `P(F|T) = P(T|F) P(F) / sum of the same over all F`.
///
/// ```
/// use layshaft_core::record::Evidence;
/// use layshaft_core::faults::{beliefs, knowledge_case};
/// let case = knowledge_case("turns-but-does-not-start").unwrap();
/// let answer = Evidence::Seen { check: "spark".to_owned(), outcome: "strong".to_owned() };
/// let share = |answers: &[Evidence]| {
///     beliefs(&case, answers).unwrap().into_iter().find(|belief| belief.suspect == "coil").unwrap().probability
/// };
/// assert!(share(&[answer]) < share(&[]) / 5.0);
/// ```
pub fn beliefs(case: &TroubleCase, evidence: &[Evidence]) -> Result<Vec<Belief>, Refused> {
    let weighed = weigh(case, evidence)?;
    let belief = |(suspect, probability): (&super::case::Suspect, f64)| Belief {
        suspect: suspect.id.clone(),
        label: suspect.label.clone(),
        probability,
    };
    Ok(case.suspects.iter().zip(weighed.shares).map(belief).collect())
}

pub(super) fn weigh(case: &TroubleCase, evidence: &[Evidence]) -> Result<Weighed, Refused> {
    let mut shares = case.priors();
    let mut surprising = None;
    for answer in evidence {
        let check = case.check(answer.check())?;
        let likelihoods = match answer {
            Evidence::Seen { outcome, .. } => seen(check, outcome)?,
            Evidence::Read { volts, .. } => read(check, *volts)?,
            // Not to know tells nothing.
            Evidence::Skipped { .. } => continue,
        };
        let joint: Vec<f64> = shares.iter().zip(&likelihoods).map(|(share, likely)| share * likely).collect();
        let sum: f64 = joint.iter().sum();
        if sum < SURPRISING {
            surprising = Some(check.id.clone());
        }
        if sum > 0.0 {
            shares = joint.iter().map(|share| share / sum).collect();
        }
    }
    Ok(Weighed { shares, surprising })
}

fn seen(check: &Check, outcome: &str) -> Result<Vec<f64>, Refused> {
    let which = check.outcomes.iter().position(|at| at.id == outcome);
    let which = which.ok_or_else(|| Refused::Unknown {
        what: FaultsMessage::WhatAnswer { check: check.label.clone() }.into(),
        id: outcome.to_owned(),
    })?;
    Ok(check.likelihoods.iter().map(|line| line.get(which).copied().unwrap_or_default()).collect())
}

fn read(check: &Check, volts: f64) -> Result<Vec<f64>, Refused> {
    let Some(metering) = &check.metering else {
        let reason = FaultsMessage::NoReading { check: check.label.clone() };
        return Err(Refused::Conflict { field: "volts".to_owned(), reason: reason.into() });
    };
    bounds::METER_READING.narrowed(-metering.range_volts, metering.range_volts).check(volts)?;
    Ok(metering.predicted_volts.iter().map(|predicted| reading_likelihood(metering, *predicted, volts)).collect())
}

/// How well a reading fits a prediction, 0 to 1: a bell of the tolerance over a floor for slips.
fn reading_likelihood(metering: &Metering, predicted: Option<f64>, volts: f64) -> f64 {
    let Some(predicted) = predicted else { return 1.0 / metering.range_volts.max(1.0) };
    let away = (volts - predicted) / tolerance(predicted, metering.tolerance_share);
    SLIP + (1.0 - SLIP) * (-0.5 * away * away).exp()
}

/// Tolerance of a reading at a predicted voltage, volts.
pub(super) fn tolerance(predicted: f64, share: f64) -> f64 {
    TOLERANCE_VOLTS.hypot(share * predicted)
}

/// Whether a voltage is below zero by more than a meter may be off, so that the leads or the current are the other way round.
pub(super) fn is_reversed(volts: f64) -> bool {
    volts <= -TOLERANCE_VOLTS
}

/// Entropy of a distribution, bits.
pub(super) fn entropy(shares: &[f64]) -> f64 {
    -shares.iter().filter(|share| **share > 0.0).map(|share| share * share.log2()).sum::<f64>()
}

/// The shares after an outcome, and the probability of the outcome.
pub(super) fn after(check: &Check, shares: &[f64], outcome: usize) -> (f64, Vec<f64>) {
    let line = check.likelihoods.iter().map(|line| line.get(outcome).copied().unwrap_or_default());
    let joint: Vec<f64> = shares.iter().zip(line).map(|(share, likely)| share * likely).collect();
    let sum: f64 = joint.iter().sum();
    (sum, joint.into_iter().map(|share| if sum > 0.0 { share / sum } else { 0.0 }).collect())
}

/// What a check is expected to tell, bits: `H(F) - sum over t of P(t) H(F|t)`, where the sum is worked out from the joint
/// probabilities p(F,t) as `sum over t of P(t) log P(t) - sum over F of p(F,t) log p(F,t)`.
pub(super) fn gain(check: &Check, shares: &[f64]) -> f64 {
    let left = |outcome: usize| {
        let (mut sum, mut logs) = (0.0, 0.0);
        for (share, line) in shares.iter().zip(&check.likelihoods) {
            let joint = share * line.get(outcome).copied().unwrap_or_default();
            if joint > 0.0 {
                sum += joint;
                logs += joint * joint.log2();
            }
        }
        if sum > 0.0 { sum * sum.log2() - logs } else { 0.0 }
    };
    (entropy(shares) - (0..check.outcomes.len()).map(left).sum::<f64>()).max(0.0)
}

#[cfg(test)]
mod tests {
    use super::super::case::{CheckOutcome, Suspect};
    use super::*;

    fn suspects(weights: &[f64]) -> Vec<Suspect> {
        let suspect = |(at, weight): (usize, &f64)| Suspect {
            id: format!("s{at}"),
            label: Message::as_entered(format!("Suspect {at}")),
            weight: *weight,
            cure: Message::as_entered(format!("cure {at}")),
            try_minutes: 5.0,
            job: None,
            caution: None,
        };
        weights.iter().enumerate().map(suspect).collect()
    }

    fn check(yes: &[f64]) -> Check {
        let outcome = |id: &str| CheckOutcome { id: id.to_owned(), label: Message::as_entered(id) };
        Check {
            id: "t".to_owned(),
            label: Message::as_entered("Test"),
            place: None,
            position: None,
            outcomes: vec![outcome("1"), outcome("0")],
            minutes: 1.0,
            danger_minutes: 0.0,
            covers: Vec::new(),
            free_look: false,
            after: Vec::new(),
            caution: None,
            likelihoods: yes.iter().map(|yes| vec![*yes, 1.0 - yes]).collect(),
            metering: None,
        }
    }

    fn case(weights: &[f64], check: Check) -> TroubleCase {
        TroubleCase {
            name: Message::as_entered("case"),
            suspects: suspects(weights),
            covers: Vec::new(),
            checks: vec![check],
        }
    }

    #[test]
    fn posterior_and_gain_are_those_of_an_outside_library() {
        // pgmpy 1.1.2: .562963 .4 .029630 .007407, P(T=1) = .675, gain 0.53204 bit.
        let case = case(&[0.4, 0.3, 0.2, 0.1], check(&[0.95, 0.9, 0.1, 0.05]));
        let answer = Evidence::Seen { check: "t".to_owned(), outcome: "1".to_owned() };
        let now: Vec<f64> = beliefs(&case, &[answer]).unwrap().iter().map(|belief| belief.probability).collect();
        for (got, expected) in now.iter().zip([0.562_963, 0.4, 0.029_630, 0.007_407]) {
            assert!((got - expected).abs() < 5e-7, "{now:?}");
        }
        let (probability, _) = after(&case.checks[0], &case.priors(), 0);
        assert!((probability - 0.675).abs() < 1e-12);
        assert!((gain(&case.checks[0], &case.priors()) - 0.532_04).abs() < 5e-6);
    }

    fn metered() -> TroubleCase {
        let mut check = check(&[1.0, 0.0, 0.0]);
        check.metering = Some(Metering {
            predicted_volts: vec![Some(12.0), Some(0.0), Some(6.0)],
            tolerance_share: ON_BATTERY,
            range_volts: 40.0,
        });
        case(&[1.0, 1.0, 1.0], check)
    }

    #[test]
    fn a_reading_within_the_tolerance_singles_its_suspect_out() {
        let read = |volts| Evidence::Read { check: "t".to_owned(), volts };
        let first = |volts| beliefs(&metered(), &[read(volts)]).unwrap()[0].probability;
        assert!(first(11.8) > 0.95 && first(0.02) < 0.02 && first(6.1) < 0.02);
        assert_eq!(weigh(&metered(), &[read(11.8)]).unwrap().surprising, None);
    }

    #[test]
    fn a_reading_that_fits_nobody_asks_to_be_checked_again_and_loses_nothing() {
        let answer = Evidence::Read { check: "t".to_owned(), volts: 9.0 };
        let weighed = weigh(&metered(), &[answer]).unwrap();
        assert_eq!(weighed.surprising.as_deref(), Some("t"));
        assert!(weighed.shares.iter().all(|share| (share - 1.0 / 3.0).abs() < 0.01));
    }

    #[test]
    fn a_reading_beyond_the_meter_and_an_unknown_answer_are_refused() {
        let text =
            beliefs(&metered(), &[Evidence::Read { check: "t".to_owned(), volts: 230.0 }]).unwrap_err().english();
        assert_eq!(text, "Reading: 230 V is outside −40 to 40 V");
        let odd = Evidence::Seen { check: "t".to_owned(), outcome: "maybe".to_owned() };
        assert!(beliefs(&metered(), &[odd]).is_err());
        let odd = Evidence::Seen { check: "nothing".to_owned(), outcome: "1".to_owned() };
        assert!(beliefs(&metered(), &[odd]).is_err());
        let plain = case(&[1.0], check(&[1.0]));
        assert!(beliefs(&plain, &[Evidence::Read { check: "t".to_owned(), volts: 1.0 }]).is_err());
    }
}
