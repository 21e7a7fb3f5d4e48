//! The verdict on an item that is asked: from the answer, the limit and what follows from the bike.

use layshaft_wire::wire;

use super::answer::plausible;
use super::message::InspectionMessage;
use super::pack::{Item, Limit, Measure};
use super::wording;
use crate::message::Message;
use crate::quantity::{Derived, Judgement, Quantity};
use crate::record::{AnswerWord, ItemAnswer};
use crate::units::Unit;

/// A verdict with its reason.
pub(super) struct Said {
    pub(super) verdict: Verdict,
    pub(super) reason: Message,
    /// The derived value, where it decided.
    pub(super) derived_value: Option<f64>,
}

impl Said {
    pub(super) fn new(verdict: Verdict, reason: impl Into<Message>) -> Self {
        Self { verdict, reason: reason.into(), derived_value: None }
    }
}

/// What the bike itself says about a derived item.
struct Prediction<'a> {
    quantity: &'a Quantity,
    verdict: Verdict,
    sentence: String,
}

/// The verdict on an item that is asked of this machine.
pub(super) fn of_answer(item: &Item, answer: Option<&ItemAnswer>, derived: &Derived) -> Said {
    let word = answer.and_then(|answer| answer.word);
    let value = answer.and_then(|answer| answer.value);
    match word {
        Some(AnswerWord::NotChecked) => return Said::new(Verdict::Unknown, "Not checked."),
        // Both can only come together from two devices that were merged.
        Some(AnswerWord::DoesNotApply) if value.is_some() => {
            return Said::new(Verdict::Unknown, "Measured, and also said not to apply: answer again.");
        }
        Some(AnswerWord::DoesNotApply) => return Said::new(Verdict::DoesNotApply, "Answered: does not apply."),
        _ => {}
    }
    match &item.measure {
        Measure::Answer => from_word(word),
        Measure::Reading { unit, limit } => from_reading(word, value, *unit, limit),
        Measure::Derived { quantity, unit, limit } => {
            from_derived(word, value, *unit, limit, predict(derived, quantity, *unit, limit))
        }
    }
}

fn from_word(word: Option<AnswerWord>) -> Said {
    match word {
        Some(AnswerWord::Good) => Said::new(Verdict::Pass, "Answered: good."),
        Some(AnswerWord::NotGood) => Said::new(Verdict::Fail, "Answered: not good."),
        _ => Said::new(Verdict::Unknown, "Not checked yet."),
    }
}

/// A measured value against its limit. Without a value the word “good” is not enough.
fn from_reading(word: Option<AnswerWord>, value: Option<f64>, unit: Unit, limit: &Limit) -> Said {
    let not_good = word == Some(AnswerWord::NotGood);
    let Some(value) = value else {
        return match word {
            Some(AnswerWord::NotGood) => Said::new(Verdict::Fail, "Answered: not good."),
            Some(AnswerWord::Good) => {
                let limit = wording::limit_in_words(unit, limit);
                Said::new(Verdict::Unknown, format!("Answered good, but not measured: {limit} needs a reading."))
            }
            _ => Said::new(Verdict::Unknown, format!("Not measured yet: {}.", wording::limit_in_words(unit, limit))),
        };
    };
    if let Err(refused) = plausible(unit, limit).check(value) {
        let verdict = if not_good { Verdict::Fail } else { Verdict::Unknown };
        return Said::new(verdict, InspectionMessage::MeasureAgain { reason: refused.message() });
    }
    let shown = wording::reading(value, unit);
    let against = wording::against(&shown, value, unit, limit);
    if !limit.keeps(value) {
        return Said::new(Verdict::Fail, format!("{against}."));
    }
    if not_good {
        return Said::new(Verdict::Fail, format!("{against}, but it was answered: not good."));
    }
    Said::new(Verdict::Pass, format!("{against}."))
}

/// A derived item: a measurement in person beats the prediction, the prediction beats a bare “good”.
fn from_derived(
    word: Option<AnswerWord>,
    value: Option<f64>,
    unit: Unit,
    limit: &Limit,
    prediction: Option<Prediction<'_>>,
) -> Said {
    if word == Some(AnswerWord::NotGood) {
        let mut said = from_word(word);
        if let Some(prediction) = prediction {
            said.reason = format!("{} {}", said.reason, prediction.sentence).into();
        }
        return said;
    }
    if let Some(value) = value {
        let mut said = from_reading(word, Some(value), unit, limit);
        let measured = wording::reading(value, unit);
        if limit.is_open() && said.verdict == Verdict::Pass {
            said = match word {
                Some(AnswerWord::Good) => Said::new(Verdict::Pass, format!("Measured {measured} and found good.")),
                _ => Said::new(Verdict::Unknown, format!("Measured {measured}: say whether that is good.")),
            };
        }
        // A reading that decides nothing leaves the word to the prediction, as far as it fails.
        match prediction {
            Some(prediction) if said.verdict == Verdict::Unknown && prediction.verdict == Verdict::Fail => {
                let reason = format!("{} {}", prediction.sentence, said.reason);
                return Said { derived_value: Some(prediction.quantity.value), ..Said::new(Verdict::Fail, reason) };
            }
            Some(prediction) if said.verdict != prediction.verdict => {
                said.reason = format!("{} {}", said.reason, prediction.sentence).into();
            }
            _ => {}
        }
        return said;
    }
    match prediction {
        Some(prediction) => {
            let reason = match word {
                Some(AnswerWord::Good) if prediction.verdict == Verdict::Fail => {
                    format!("{} Answered good without a reading: measure it.", prediction.sentence)
                }
                _ => prediction.sentence,
            };
            Said { derived_value: Some(prediction.quantity.value), ..Said::new(prediction.verdict, reason) }
        }
        None if limit.is_open() && word == Some(AnswerWord::Good) => from_word(word),
        None if limit.is_open() => {
            Said::new(Verdict::Unknown, "Not enough is known about the bike to work it out, and it was not checked.")
        }
        None => from_reading(word, None, unit, limit),
    }
}

/// What the bike says, where it says anything: against the limit of the pack, or by its own judgement where the pack
/// sets none.
fn predict<'a>(derived: &'a Derived, id: &str, unit: Unit, limit: &Limit) -> Option<Prediction<'a>> {
    let quantity = derived.quantities.iter().find(|quantity| quantity.id == id && quantity.value.is_finite())?;
    let shown = wording::derived(quantity.value, quantity.unit, limit);
    if limit.is_open() {
        let verdict = match quantity.judgement {
            Judgement::Fine => Verdict::Pass,
            Judgement::Outside => Verdict::Fail,
            Judgement::Open => return None,
        };
        let why = quantity
            .why
            .as_ref()
            .map_or_else(String::new, |why| format!(" ({})", why.to_string().trim_end_matches('.')));
        let sentence = format!("Worked out from the bike: {}, {shown}{why}.", lower_first(&quantity.label.to_string()));
        return Some(Prediction { quantity, verdict, sentence });
    }
    if quantity.unit != unit {
        return None;
    }
    let verdict = if limit.keeps(quantity.value) { Verdict::Pass } else { Verdict::Fail };
    let against = wording::against(&shown, quantity.value, unit, limit);
    Some(Prediction { quantity, verdict, sentence: format!("Worked out from the bike: {against}.") })
}

/// A label within a sentence. A label that begins with an abbreviation keeps its capitals.
fn lower_first(label: &str) -> String {
    let mut signs = label.chars();
    match (signs.next(), signs.clone().next()) {
        (Some(first), Some(second)) if second.is_lowercase() => first.to_lowercase().chain(signs).collect(),
        _ => label.to_owned(),
    }
}

/// The verdict on an item.
#[wire]
pub enum Verdict {
    /// Meets it.
    Pass,
    /// Does not.
    Fail,
    /// Nobody knows yet. Never counted as a pass.
    Unknown,
    /// Not asked of this machine.
    DoesNotApply,
}
