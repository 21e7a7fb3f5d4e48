//! What can go wrong between the program and its file.

use layshaft_core::error::{Code, Refusal};
use layshaft_core::message::Message;
use rusqlite::ErrorCode;
use thiserror::Error;

use crate::message::StoreMessage;

/// Why something could not be stored, read or taken in. Nothing was changed when one of these comes back.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum StoreError {
    /// The bytes are no bundle.
    #[error("this file is no Layshaft bundle: {reason}")]
    NotABundle {
        /// What gave it away.
        reason: Message,
    },
    /// The bundle is cut short or damaged.
    #[error("this bundle is damaged: {reason}. Nothing was taken in; export it again where it came from")]
    DamagedBundle {
        /// What was found.
        reason: Message,
    },
    /// Written by a newer program.
    #[error(
        "this was written by a newer Layshaft (layout {found}; this program knows layouts 1 to {known}): update the program"
    )]
    NewerSchema {
        /// Layout of the file.
        found: u32,
        /// Newest layout that this program knows.
        known: u32,
    },
    /// The device's own database is damaged.
    #[error("the database on this device is damaged: {reason}")]
    Damaged {
        /// What was found.
        reason: Message,
    },
    /// The file belongs to another program.
    #[error("this database belongs to another program; it was left as it is")]
    Foreign,
    /// Two different facts carry the same stamp, which only happens when two devices work under one id.
    #[error("another fact is stored under the stamp {stamp}; nothing was stored")]
    Clash {
        /// The stamp.
        stamp: String,
    },
    /// Another program holds the database.
    #[error("another program is using the database; close it and try again")]
    Busy,
    /// There is no room left.
    #[error("there is no room left on this device; nothing was stored")]
    Full,
    /// Anything else that SQLite or the system says.
    #[error("the device could not store or read: {0}")]
    Sqlite(Message),
}

impl From<rusqlite::Error> for StoreError {
    fn from(error: rusqlite::Error) -> Self {
        let reason = Message::as_entered(error.to_string());
        match error.sqlite_error_code() {
            Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase) => StoreError::Damaged { reason },
            Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => StoreError::Busy,
            Some(ErrorCode::DiskFull) => StoreError::Full,
            _ => StoreError::Sqlite(reason),
        }
    }
}

impl From<StoreError> for Refusal {
    fn from(error: StoreError) -> Self {
        let code = match error {
            StoreError::NotABundle { .. } => Code::NotABundle,
            StoreError::DamagedBundle { .. } => Code::DamagedBundle,
            StoreError::NewerSchema { .. } => Code::NewerSchema,
            StoreError::Damaged { .. }
            | StoreError::Foreign
            | StoreError::Clash { .. }
            | StoreError::Busy
            | StoreError::Full
            | StoreError::Sqlite(_) => Code::Storage,
        };
        let said = match error {
            StoreError::NotABundle { reason } => StoreMessage::NotABundle { reason },
            StoreError::DamagedBundle { reason } => StoreMessage::DamagedBundle { reason },
            StoreError::NewerSchema { found, known } => StoreMessage::NewerSchema { found, known },
            StoreError::Damaged { reason } => StoreMessage::Damaged { reason },
            StoreError::Foreign => StoreMessage::Foreign,
            StoreError::Clash { stamp } => StoreMessage::Clash { stamp },
            StoreError::Busy => StoreMessage::Busy,
            StoreError::Full => StoreMessage::Full,
            StoreError::Sqlite(reason) => StoreMessage::Failed { reason },
        };
        Refusal::new(code, said)
    }
}
