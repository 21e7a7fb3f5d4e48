//! What the storage says when it refuses.

use layshaft_core::message::{Declared, Message};
use layshaft_wire::message;

/// What the storage says.
pub const MESSAGES: &[&[Declared]] = &[StoreMessage::DECLARED];

/// Why something could not be stored, read or taken in.
#[message("store")]
#[cfg_attr(
    all(target_family = "wasm", target_os = "unknown"),
    expect(dead_code, reason = "the browser has no files to read or rename")
)]
pub(crate) enum StoreMessage {
    /// The bytes are no bundle.
    NotABundle { reason: Message },
    /// The bundle is cut short or damaged.
    DamagedBundle { reason: Message },
    /// Written by a newer program.
    NewerSchema { found: u32, known: u32 },
    /// The database of the device is damaged.
    Damaged { reason: Message },
    /// The file belongs to another program.
    Foreign,
    /// Two facts under one stamp.
    Clash { stamp: String },
    /// Another program holds the database.
    Busy,
    /// No room left.
    Full,
    /// Anything else that the system says.
    Failed { reason: Message },
    /// A file of no bytes.
    Empty,
    /// A file of another kind.
    NoDatabase,
    /// A database of another program.
    OtherProgram,
    /// A file without its end.
    CutShort { there: usize, whole: i64 },
    /// A database without one of its tables.
    NoTable { table: String },
    /// A file that was changed.
    OtherAttachment { hash: String },
    /// A fact that cannot be read.
    BadRow { place: String, reason: Message },
    /// A stamp of no clock.
    LateStamp { stamp: String },
    /// A file that the system does not give.
    NotRead { file: String, reason: String },
    /// A file that the system does not rename.
    NotRenamed { file: String, reason: String },
    /// A device without a mark.
    NoMark,
    /// A mark that is none.
    BadMark { text: String },
    /// The browser's file system is not open.
    #[cfg_attr(
        not(all(target_family = "wasm", target_os = "unknown")),
        expect(dead_code, reason = "said in the browser alone")
    )]
    NoPool,
}
