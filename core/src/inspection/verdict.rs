//! The verdict on an item that is asked: from the answer, the limit and what follows from the bike.

use layshaft_wire::wire;

use super::answer::plausible;
use super::message::InspectionMessage;
use super::pack::{Item, Limit, Measure};
use super::wording;
use crate::message::{ListStyle, Message};
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

/// One sentence after the other.
pub(super) fn and(first: impl Into<Message>, second: impl Into<Message>) -> Message {
    Message::joined(ListStyle::Sentences, vec![first.into(), second.into()])
}

/// What the bike itself says about a derived item.
struct Prediction<'a> {
    quantity: &'a Quantity,
    verdict: Verdict,
    sentence: Message,
}

/// The verdict on an item that is asked of this machine.
pub(super) fn of_answer(item: &Item, answer: Option<&ItemAnswer>, derived: &Derived) -> Said {
    let word = answer.and_then(|answer| answer.word);
    let value = answer.and_then(|answer| answer.value);
    match word {
        Some(AnswerWord::NotChecked) => return Said::new(Verdict::Unknown, InspectionMessage::NotChecked),
        // Both can only come together from two devices that were merged.
        Some(AnswerWord::DoesNotApply) if value.is_some() => {
            return Said::new(Verdict::Unknown, InspectionMessage::MeasuredAndNotApplying);
        }
        Some(AnswerWord::DoesNotApply) => return Said::new(Verdict::DoesNotApply, InspectionMessage::DoesNotApply),
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
        Some(AnswerWord::Good) => Said::new(Verdict::Pass, InspectionMessage::Good),
        Some(AnswerWord::NotGood) => Said::new(Verdict::Fail, InspectionMessage::NotGood),
        _ => Said::new(Verdict::Unknown, InspectionMessage::NotCheckedYet),
    }
}

/// A measured value against its limit. Without a value the word “good” is not enough.
fn from_reading(word: Option<AnswerWord>, value: Option<f64>, unit: Unit, limit: &Limit) -> Said {
    let not_good = word == Some(AnswerWord::NotGood);
    let Some(value) = value else {
        return match word {
            Some(AnswerWord::NotGood) => Said::new(Verdict::Fail, InspectionMessage::NotGood),
            Some(AnswerWord::Good) => {
                let limit = wording::limit_in_words(unit, limit);
                Said::new(Verdict::Unknown, InspectionMessage::GoodNotMeasured { limit })
            }
            _ => {
                let limit = wording::limit_in_words(unit, limit);
                Said::new(Verdict::Unknown, InspectionMessage::NotMeasured { limit })
            }
        };
    };
    if let Err(refused) = plausible(unit, limit).check(value) {
        let verdict = if not_good { Verdict::Fail } else { Verdict::Unknown };
        return Said::new(verdict, InspectionMessage::MeasureAgain { reason: refused.message() });
    }
    let against = wording::against(unit.of(value), value, limit);
    if !limit.keeps(value) {
        return Said::new(Verdict::Fail, InspectionMessage::Reading { against });
    }
    if not_good {
        return Said::new(Verdict::Fail, InspectionMessage::ReadingNotGood { against });
    }
    Said::new(Verdict::Pass, InspectionMessage::Reading { against })
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
            said.reason = and(said.reason, prediction.sentence);
        }
        return said;
    }
    if let Some(value) = value {
        let mut said = from_reading(word, Some(value), unit, limit);
        let value = unit.of(value);
        if limit.is_open() && said.verdict == Verdict::Pass {
            said = match word {
                Some(AnswerWord::Good) => Said::new(Verdict::Pass, InspectionMessage::MeasuredGood { value }),
                _ => Said::new(Verdict::Unknown, InspectionMessage::MeasuredUnjudged { value }),
            };
        }
        // A reading that decides nothing leaves the word to the prediction, as far as it fails.
        match prediction {
            Some(prediction) if said.verdict == Verdict::Unknown && prediction.verdict == Verdict::Fail => {
                let reason = and(prediction.sentence, said.reason);
                return Said { derived_value: Some(prediction.quantity.value), ..Said::new(Verdict::Fail, reason) };
            }
            Some(prediction) if said.verdict != prediction.verdict => {
                said.reason = and(said.reason, prediction.sentence);
            }
            _ => {}
        }
        return said;
    }
    match prediction {
        Some(prediction) => {
            let reason = match word {
                Some(AnswerWord::Good) if prediction.verdict == Verdict::Fail => {
                    and(prediction.sentence, InspectionMessage::GoodWithoutReading)
                }
                _ => prediction.sentence,
            };
            Said { derived_value: Some(prediction.quantity.value), ..Said::new(prediction.verdict, reason) }
        }
        None if limit.is_open() && word == Some(AnswerWord::Good) => from_word(word),
        None if limit.is_open() => Said::new(Verdict::Unknown, InspectionMessage::TooLittleKnown),
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
        let (label, value) = (quantity.label.clone(), shown);
        let sentence = match quantity.why.clone() {
            Some(why) => InspectionMessage::WorkedOutWhy { label, value, why }.into(),
            None => InspectionMessage::WorkedOut { label, value }.into(),
        };
        return Some(Prediction { quantity, verdict, sentence });
    }
    if quantity.unit != unit {
        return None;
    }
    let verdict = if limit.keeps(quantity.value) { Verdict::Pass } else { Verdict::Fail };
    let against = wording::against(shown, quantity.value, limit);
    Some(Prediction { quantity, verdict, sentence: InspectionMessage::WorkedOutAgainst { against }.into() })
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
