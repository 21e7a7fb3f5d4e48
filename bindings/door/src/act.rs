//! `act`: one command, one transaction, one batch of facts. What a command wants written it says here; `write` keeps it.

use layshaft_core::error::{Code, Refusal};
use layshaft_core::time::Moment;

use crate::command::{Command, Outcome};
use crate::message::DoorMessage;
use crate::write::{Writing, Written};
use crate::{Bench, commands, stale};

/// What one command is told besides its payload.
pub(crate) struct Call<'a> {
    /// The call's own id.
    pub id: &'a str,
    /// When and where.
    pub moment: &'a Moment,
}

/// A command's payload: it says which facts to write.
pub(crate) trait Act {
    /// The facts to write, or why not.
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal>;
}

/// Makes the dispatch of all commands from the registry.
macro_rules! make_writing {
    ($($(#[$doc:meta])* $method:ident $name:ident;)*) => {
        fn writing(bench: &Bench, command: &Command, call: &Call) -> Result<Writing, Refusal> {
            match command { $(Command::$name(payload) => payload.write(bench, call),)* }
        }
    };
}
commands!(make_writing);

impl Bench {
    /// Does what the mechanic did. The same `id` twice changes once.
    pub fn act(&mut self, id: &str, command: &Command, moment: &Moment) -> Result<Outcome, Refusal> {
        let plain = |c: char| c.is_ascii_alphanumeric() || c == '-';
        if id.is_empty() || id.len() > 64 || !id.chars().all(plain) {
            return Err(Refusal::new(Code::BadRequest, DoorMessage::CallId));
        }
        if self.batches.contains(id) {
            // The answer to the first call may never have arrived, so nobody knows what the caller has seen.
            let (made, stale) = (self.made_by(id), stale::every_query());
            return Ok(Outcome { batch: id.to_owned(), changes: 0, stale, made, received: None, notes: Vec::new() });
        }
        let writing = writing(self, command, &Call { id, moment })?;
        let (made, notes) = (writing.made.clone(), writing.notes.clone());
        let Written { changes, stale, received } = self.write(id, writing, moment.now_ms)?;
        Ok(Outcome { batch: id.to_owned(), changes, stale, made, received, notes })
    }

    /// What an earlier call with this id made: a record or a bike that carries it.
    fn made_by(&self, id: &str) -> Option<String> {
        let made = self.ledger.records().any(|(key, _)| key.record == id || key.project == id);
        made.then(|| id.to_owned())
    }
}
