//! What a case is made of: suspects, covers that are in the way, checks with what each suspect makes likely.

use layshaft_wire::wire;

use super::message::FaultsMessage;
use crate::bounds;
use crate::error::Refused;
use crate::message::Message;
use crate::units::Unit;

/// One thing that may be wrong.
#[wire]
pub struct Suspect {
    /// Its id.
    pub id: String,
    /// In words.
    pub label: Message,
    /// How likely it is before anything is known, against the others; judgement, editable.
    pub weight: f64,
    /// What puts it right; suspects with the same cure need not be told apart.
    pub cure: Message,
    /// Minutes to try the cure when no check tells.
    pub try_minutes: f64,
    /// The ready-made job, by its id, that this cure is.
    pub job: Option<String>,
    /// A caution at the work itself, where no ready-made job has its own.
    pub caution: Option<Message>,
}

/// Something that must come off before a check; once off, it costs nothing more.
#[wire]
pub struct Cover {
    /// Its id.
    pub id: String,
    /// In words.
    pub label: Message,
    /// Minutes to take it off and put it back.
    pub minutes: f64,
}

/// One possible answer.
#[wire]
pub struct CheckOutcome {
    /// Its id.
    pub id: String,
    /// In words.
    pub label: Message,
}

/// What a meter would show under each suspect.
#[wire]
pub struct Metering {
    /// Predicted voltage for each suspect, in the order of the suspects, volts; none where it could not be worked out.
    pub predicted_volts: Vec<Option<f64>>,
    /// Share of a prediction by which a reading may be off.
    pub tolerance_share: f64,
    /// Greatest reading that the meter takes, volts.
    pub range_volts: f64,
}

/// Something to look at, try or measure.
#[wire]
pub struct Check {
    /// Its id.
    pub id: String,
    /// The question or instruction.
    pub label: Message,
    /// Where it is done.
    pub place: Option<Message>,
    /// Switch positions for it.
    pub position: Option<Message>,
    /// Its possible answers.
    pub outcomes: Vec<CheckOutcome>,
    /// Hands-on minutes once everything is in reach.
    pub minutes: f64,
    /// Minutes that its danger is worth.
    pub danger_minutes: f64,
    /// Ids of the covers that must be off.
    pub covers: Vec<String>,
    /// Whether it is a look that needs no tool; looks come first.
    pub free_look: bool,
    /// Ids of the checks that it leans on: it is asked only once they are answered.
    pub after: Vec<String>,
    /// A short caution to show with it.
    pub caution: Option<Message>,
    /// For each suspect, in their order, the probability of each outcome; each line adds up to 1.
    pub likelihoods: Vec<Vec<f64>>,
    /// Present when the answer can be given as a reading.
    pub metering: Option<Metering>,
}

/// A case: everything that is known before the first answer.
#[wire]
pub struct TroubleCase {
    /// What is wrong, in words.
    pub name: Message,
    /// The suspects.
    pub suspects: Vec<Suspect>,
    /// The covers.
    pub covers: Vec<Cover>,
    /// The checks.
    pub checks: Vec<Check>,
}

impl TroubleCase {
    /// A check by its id.
    pub fn check(&self, id: &str) -> Result<&Check, Refused> {
        let found = self.checks.iter().find(|check| check.id == id);
        found.ok_or_else(|| Refused::Unknown { what: FaultsMessage::WhatCheck.into(), id: id.to_owned() })
    }

    /// The suspects' weights as probabilities that add up to 1.
    pub fn priors(&self) -> Vec<f64> {
        let sum: f64 = self.suspects.iter().map(|suspect| suspect.weight).sum();
        self.suspects.iter().map(|suspect| suspect.weight / sum).collect()
    }
}

/// Refuses a case whose numbers cannot be: no suspects, a weight or time below zero, likelihoods that do not add up to 1.
pub fn check_case(case: &TroubleCase) -> Result<(), Refused> {
    if case.suspects.is_empty() {
        return conflict("suspects", FaultsMessage::NoSuspects);
    }
    for suspect in &case.suspects {
        if !(suspect.weight.is_finite() && suspect.weight > 0.0) {
            let (suspect, weight) = (suspect.label.clone(), Unit::None.of(suspect.weight));
            return conflict("weight", FaultsMessage::WeightNotAbove { suspect, weight });
        }
        if !(suspect.try_minutes.is_finite() && suspect.try_minutes > 0.0) {
            return conflict("tryMinutes", FaultsMessage::TimeNotAbove { suspect: suspect.label.clone() });
        }
    }
    for cover in &case.covers {
        bounds::CHECK_MINUTES.check(cover.minutes)?;
    }
    case.checks.iter().try_for_each(|check| sound_check(case, check))
}

fn conflict(field: &str, reason: FaultsMessage) -> Result<(), Refused> {
    Err(Refused::Conflict { field: field.to_owned(), reason: reason.into() })
}

fn sound_check(case: &TroubleCase, check: &Check) -> Result<(), Refused> {
    let said = || check.label.clone();
    let minutes = bounds::CHECK_MINUTES;
    minutes.check(check.minutes)?;
    minutes.check(check.danger_minutes)?;
    if let Some(cover) = check.covers.iter().find(|id| !case.covers.iter().any(|cover| cover.id == **id)) {
        return Err(Refused::Unknown { what: FaultsMessage::WhatCover.into(), id: cover.clone() });
    }
    if check.likelihoods.len() != case.suspects.len() {
        let (lines, suspects) = (check.likelihoods.len(), case.suspects.len());
        return conflict("likelihoods", FaultsMessage::OtherNumberOfLines { check: said(), lines, suspects });
    }
    for (line, suspect) in check.likelihoods.iter().zip(&case.suspects) {
        let sum: f64 = line.iter().sum();
        let sound = line.len() == check.outcomes.len() && line.iter().all(|share| (0.0..=1.0).contains(share));
        if !sound || (sum - 1.0).abs() > 1e-6 {
            let suspect = suspect.label.clone();
            return conflict("likelihoods", FaultsMessage::NoLikelihoods { check: said(), suspect });
        }
    }
    match &check.metering {
        Some(metering) if metering.predicted_volts.len() != case.suspects.len() => {
            conflict("predictedVolts", FaultsMessage::OtherNumberOfPredictions { check: said() })
        }
        _ => Ok(()),
    }
}
