//! Kotlin, Swift and Python from one definition.
//!
//! Every query and every command of the registry becomes one typed method; nothing is listed here again.

#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing))]

use std::path::Path;
use std::sync::{Mutex, MutexGuard};
use std::time::{SystemTime, UNIX_EPOCH};

use layshaft_core::content::use_language;
use layshaft_core::error::{Code, Refusal};
use layshaft_core::message::Message;
use layshaft_core::time::{Moment, Zone};
use layshaft_door::command::*;
use layshaft_door::query::*;
use layshaft_door::{Bench as Door, Command, HostMessage, commands, fresh_id, queries};

uniffi::setup_scaffolding!();

/// Why something was not accepted. Nothing is stored when one of these comes back.
#[derive(Clone, Debug, PartialEq, thiserror::Error, uniffi::Error)]
pub enum BenchError {
    /// The refusal with its stable code, sentence and field.
    #[error("{}", say(refusal.message.clone()))]
    Refused {
        /// The refusal.
        refusal: Refusal,
    },
}

impl From<Refusal> for BenchError {
    fn from(refusal: Refusal) -> Self {
        BenchError::Refused { refusal }
    }
}

/// The one typed way in.
#[derive(uniffi::Object)]
pub struct Bench {
    door: Mutex<Door>,
}

#[uniffi::export]
impl Bench {
    /// Opens a database file, or makes it. A damaged file is set aside, never deleted. `content` is what the program brings
    /// along in another language, as JSON; without it, it is English. One language holds until the program ends.
    #[uniffi::constructor(default(content = None))]
    pub fn open(path: String, content: Option<String>) -> Result<Self, BenchError> {
        if let Some(content) = content {
            use_language(&content).map_err(Refusal::from)?;
        }
        Ok(Self { door: Mutex::new(Door::open_native(Path::new(&path))?) })
    }

    /// A bench that forgets everything when it is dropped.
    #[uniffi::constructor]
    pub fn in_memory() -> Result<Self, BenchError> {
        Ok(Self { door: Mutex::new(Door::in_memory()?) })
    }
}

impl Bench {
    fn lock(&self) -> Result<MutexGuard<'_, Door>, BenchError> {
        let fault = |_| Refusal::new(Code::Storage, HostMessage::BrokeOff);
        Ok(self.door.lock().map_err(fault)?)
    }
}

/// A message in English. In Python `str(message)` does the same.
#[uniffi::export]
pub fn say(message: Message) -> String {
    layshaft_words::say(&message)
}

/// The moment given, or now by this machine's clock in UTC.
fn moment_or_now(moment: Option<Moment>) -> Moment {
    moment.unwrap_or_else(|| {
        let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
        Moment { now_ms: i64::try_from(since.as_millis()).unwrap_or(i64::MAX), zone: Zone::default() }
    })
}

/// One typed method for each query.
macro_rules! make_queries {
    ($($(#[$doc:meta])* $method:ident $name:ident($ask:ident) -> $answer:ident;)*) => {
        #[uniffi::export]
        impl Bench {
            $($(#[$doc])*
            #[uniffi::method(default(moment = None))]
            pub fn $method(&self, ask: $ask, moment: Option<Moment>) -> Result<$answer, BenchError> {
                Ok(self.lock()?.$method(&ask, &moment_or_now(moment))?)
            })*
        }
    };
}
queries!(make_queries);

/// One typed method for each command.
macro_rules! make_commands {
    ($($(#[$doc:meta])* $method:ident $name:ident;)*) => {
        #[uniffi::export]
        impl Bench {
            $($(#[$doc])*
            #[uniffi::method(default(moment = None))]
            pub fn $method(&self, command: $name, moment: Option<Moment>) -> Result<Outcome, BenchError> {
                Ok(self.lock()?.act(&fresh_id(), &Command::from(command), &moment_or_now(moment))?)
            })*
        }
    };
}
commands!(make_commands);
