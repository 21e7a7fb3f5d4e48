//! `act`: one command, one transaction, one batch of facts.

use layshaft_core::changes::Edit;
use layshaft_core::error::{Code, Refusal};
use layshaft_core::time::Moment;

use crate::command::{Command, Outcome, Received};
use crate::{Bench, commands};

/// What a command wants written.
#[derive(Default)]
pub(crate) struct Writing {
    /// Facts, of the open bike unless `project` says another.
    pub edits: Vec<Edit>,
    /// Another bike than the open one.
    pub project: Option<String>,
    /// Open that bike afterwards.
    pub open: bool,
    /// A setting of this device, by its name.
    pub setting: Option<(String, String)>,
    /// A file to keep, with its media type.
    pub attachment: Option<(String, Vec<u8>)>,
    /// Mark of what is made.
    pub made: Option<String>,
}

impl Writing {
    /// Facts of the open bike.
    pub fn of(edits: Vec<Edit>) -> Self {
        Self { edits, ..Self::default() }
    }

    /// Facts of the open bike that make something new.
    pub fn making(mark: &str, edits: Vec<Edit>) -> Self {
        Self { edits, made: Some(mark.to_owned()), ..Self::default() }
    }
}

/// What one command is told besides its payload.
pub(crate) struct Call<'a> {
    /// The call's own mark.
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
            return Err(Refusal::new(Code::BadRequest, "a call needs a mark of 1 to 64 letters, digits and dashes"));
        }
        if self.batches.contains(id) {
            return Ok(self.outcome(id, 0, self.made_by(id)));
        }
        if let Command::ReceiveBundle(payload) = command {
            let received = self.receive(payload)?;
            return Ok(Outcome { received: Some(received.clone()), ..self.outcome(id, received.changes, None) });
        }
        let Writing { edits, project, open, made, attachment, setting } = writing(self, command, &Call { id, moment })?;
        let project = match project {
            Some(project) => project,
            None => self.open_bike_mark()?.to_owned(),
        };
        if let Some((media, bytes)) = attachment {
            self.store.put_attachment(&media, &bytes)?;
        }
        if let Some((name, value)) = setting {
            self.store.set_setting(&name, &value)?;
        }
        let written = self.write(&project, id, edits, moment.now_ms)?;
        if open {
            self.open(&project)?;
        }
        Ok(self.outcome(id, written, made))
    }

    /// What an earlier call with this mark made: a record or a bike that carries it.
    fn made_by(&self, id: &str) -> Option<String> {
        let made = self.ledger.records().any(|(key, _)| key.record == id || key.project == id);
        made.then(|| id.to_owned())
    }

    /// Every page looks across the whole bike, so every answer may have changed. What can be kept are the tables.
    fn outcome(&self, id: &str, changes: u32, made: Option<String>) -> Outcome {
        Outcome { batch: id.to_owned(), changes, stale: stale(), made, received: None }
    }

    /// Takes a bundle in: all or nothing.
    fn receive(&mut self, payload: &crate::command::ReceiveBundle) -> Result<Received, Refusal> {
        commands::bundle::receive(self, payload)
    }
}

/// Makes the list of queries that read the bike.
macro_rules! make_stale {
    ($($(#[$doc:meta])* $method:ident $name:ident($ask:ident) -> $answer:ident;)*) => {
        fn stale() -> Vec<String> {
            const UNMOVED: [&str; 4] = ["Tables", "ReadyMade", "Products", "Reckon"];
            [$(stringify!($name),)*].into_iter().filter(|name| !UNMOVED.contains(name)).map(camel).collect()
        }
    };
}
crate::queries!(make_stale);

/// A variant's name as it stands in JSON.
fn camel(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map(|first| first.to_ascii_lowercase().to_string() + letters.as_str()).unwrap_or_default()
}
