//! Answers to inspection items.

use layshaft_core::error::Refusal;
use layshaft_core::record::ItemAnswer;

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
        Ok(Writing::of(changed(bench, &format!("{}/{}", self.pack, self.item), &answer)))
    }
}
