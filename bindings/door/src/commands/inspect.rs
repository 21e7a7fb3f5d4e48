//! Answers to inspection items.

use layshaft_core::error::{Code, Refusal};
use layshaft_core::inspection::packs;
use layshaft_core::record::ItemAnswer;

use super::changed;
use crate::Bench;
use crate::act::{Act, Call};
use crate::command::AnswerItem;
use crate::write::Writing;

impl Act for AnswerItem {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let unknown =
            |what: &str, id: &str| Refusal::new(Code::Unknown, format!("there is no {what} with the id {id}"));
        let packs = packs();
        let pack = packs.iter().find(|pack| pack.id == self.pack).ok_or_else(|| unknown("pack", &self.pack))?;
        let item = pack.items.iter().find(|item| item.id == self.item).ok_or_else(|| unknown("item", &self.item))?;
        let answer = ItemAnswer { answered_ms: Some(call.moment.now_ms), ..self.answer.clone().checked(item)? };
        Ok(Writing::of(changed(bench, &format!("{}/{}", self.pack, self.item), &answer)))
    }
}
