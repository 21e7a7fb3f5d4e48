//! Answers to inspection items.

use layshaft_core::changes::{Edit, edits};
use layshaft_core::error::Refusal;
use layshaft_core::record::{AnswerWord, Equipment, Identity, ItemAnswer};

use super::changed;
use crate::Bench;
use crate::act::{Act, Call};
use crate::command::AnswerItem;
use crate::found::item_of;
use crate::write::Writing;

impl Act for AnswerItem {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let item = item_of(&self.pack, &self.item)?;
        let answer = ItemAnswer { answered_ms: Some(call.moment.now_ms), ..self.answer.clone().checked(&item)? };
        let mut writing = changed(bench, &format!("{}/{}", self.pack, self.item), &answer);
        if let Some(equipment) = item.only_with.filter(|equipment| equipment.is_said()) {
            writing.extend(told_of(bench, equipment, &answer)?);
        }
        Ok(Writing::of(writing))
    }
}

/// What an answer tells of the bike: that it has no such thing, which then holds for every item on it, or that it has.
fn told_of(bench: &Bench, equipment: Equipment, answer: &ItemAnswer) -> Result<Vec<Edit>, Refusal> {
    let old = &bench.bike.identity;
    let missing = answer.word == Some(AnswerWord::DoesNotApply);
    let mut without = old.without.clone();
    without.retain(|known| *known != equipment);
    if missing {
        without.push(equipment);
    }
    Ok(edits("bike", &Identity { without, ..old.clone() }, Some(old)))
}
