//! The door as JSON text, for the browser worker and the Tauri window.

use layshaft_core::error::{Code, Refusal};
use layshaft_core::time::Moment;
use layshaft_wire::wire;
use serde::Serialize;
use serde::de::DeserializeOwned;

use crate::message::DoorMessage;
use crate::{Bench, Command, Query, queries};
use layshaft_core::message::Message;

/// A call that changes. Sending the same call twice changes once.
#[wire]
pub struct ActCall {
    /// The call's own id, random; it becomes the id of what the command makes.
    pub id: String,
    /// When and where.
    pub moment: Moment,
    /// What the mechanic did.
    pub command: Command,
}

/// A call that asks.
#[wire]
pub struct AskCall {
    /// When and where.
    pub moment: Moment,
    /// The question.
    pub query: Query,
}

/// When and where a call in JSON was made, whichever of the two it is; none where it cannot be read.
pub fn moment_of(call: &str) -> Option<Moment> {
    #[derive(serde::Deserialize)]
    struct Made {
        moment: Moment,
    }
    serde_json::from_str::<Made>(call).ok().map(|made| made.moment)
}

impl Bench {
    /// `act` as JSON: an [`ActCall`] in, an `Outcome` out, or a `Refusal` as the error.
    pub fn act_json(&mut self, call: &str) -> Result<String, String> {
        let outcome = read(call).and_then(|call: ActCall| self.act(&call.id, &call.command, &call.moment));
        write(outcome)
    }

    /// `ask` as JSON: an [`AskCall`] in, the answer of that query out, or a `Refusal` as the error.
    pub fn ask_json(&self, call: &str) -> Result<String, String> {
        write(read(call).and_then(|call: AskCall| self.dispatch(&call)))
    }
}

/// Makes the dispatch of all queries from the registry.
macro_rules! make_dispatch {
    ($($(#[$doc:meta])* $method:ident $name:ident($ask:ident) -> $answer:ident;)*) => {
        impl Bench {
            fn dispatch(&self, call: &AskCall) -> Result<serde_json::Value, Refusal> {
                match &call.query {
                    $(Query::$name(ask) => self.$method(ask, &call.moment).and_then(|answer| as_value(&answer)),)*
                }
            }
        }
    };
}
queries!(make_dispatch);

fn as_value(answer: &impl Serialize) -> Result<serde_json::Value, Refusal> {
    serde_json::to_value(answer).map_err(|error| Refusal::new(Code::BadRequest, Message::as_entered(error.to_string())))
}

fn read<T: DeserializeOwned>(text: &str) -> Result<T, Refusal> {
    serde_json::from_str(text)
        .map_err(|error| Refusal::new(Code::BadRequest, DoorMessage::NotUnderstood { reason: error.to_string() }))
}

fn write(answer: Result<impl Serialize, Refusal>) -> Result<String, String> {
    match answer {
        Ok(answer) => text(&answer).map_err(|refusal| text(&refusal).unwrap_or_default()),
        Err(refusal) => Err(text(&refusal).unwrap_or_default()),
    }
}

fn text(value: &impl Serialize) -> Result<String, Refusal> {
    serde_json::to_string(value).map_err(|error| Refusal::new(Code::BadRequest, Message::as_entered(error.to_string())))
}

/// Bytes as base64 text in JSON.
pub mod bytes {
    use base64::Engine;
    use base64::engine::general_purpose::STANDARD;
    use serde::{Deserialize, Deserializer, Serializer, de::Error};

    /// Writes bytes as base64.
    pub fn serialize<S: Serializer>(bytes: &[u8], to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&STANDARD.encode(bytes))
    }

    /// Reads bytes from base64.
    pub fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Vec<u8>, D::Error> {
        STANDARD.decode(String::deserialize(from)?).map_err(D::Error::custom)
    }
}
