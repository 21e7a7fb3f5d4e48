//! Answers to inspection items.

use layshaft_core::error::Refusal;
use layshaft_core::inspection::packs;
use layshaft_core::record::ItemAnswer;

use super::changed;
use crate::Bench;
use crate::act::{Act, Call};
use crate::bench::unknown;
use crate::command::AnswerItem;
use crate::message::DoorMessage;
use crate::write::Writing;

impl Act for AnswerItem {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let packs = packs();
        let pack =
            packs.iter().find(|pack| pack.id == self.pack).ok_or_else(|| unknown(DoorMessage::WhatPack, &self.pack))?;
        let item = pack
            .items
            .iter()
            .find(|item| item.id == self.item)
            .ok_or_else(|| unknown(DoorMessage::WhatItem, &self.item))?;
        let answer = ItemAnswer { answered_ms: Some(call.moment.now_ms), ..self.answer.clone().checked(item)? };
        Ok(Writing::of(changed(bench, &format!("{}/{}", self.pack, self.item), &answer)))
    }
}
