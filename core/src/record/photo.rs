//! Photos: how it sat before it came off, what the item looked like. The bytes are kept once, by content hash.

use layshaft_wire::wire;

use super::message::RecordMessage;
use crate::check;
use crate::error::{Refused, none_of};
use crate::message::FieldMessage;

/// A photo of something on the bike.
#[wire(lenient, stored)]
pub struct Photo {
    /// Kind of the record that it shows: `job`, `answer`, `part`, `bike`.
    pub of_kind: String,
    /// Id of that record.
    pub of: String,
    /// SHA-256 of the bytes, hexadecimal.
    pub hash: String,
    /// Media type: `image/jpeg`.
    pub media: String,
    /// What it shows.
    pub caption: Option<String>,
    /// When, milliseconds since 1970 (UTC).
    pub taken_ms: i64,
}

/// Media types that every phone and browser shows.
pub const PHOTO_MEDIA: [&str; 3] = ["image/jpeg", "image/png", "image/webp"];

/// Most bytes of one photo: 6 MiB, a full phone picture.
pub const PHOTO_MOST_BYTES: usize = 6 * 1024 * 1024;

impl Photo {
    /// The photo with its caption trimmed, or the first field that cannot be accepted. `bytes` is their number.
    pub fn checked(mut self, bytes: usize) -> Result<Self, Refused> {
        if !PHOTO_MEDIA.contains(&self.media.as_str()) {
            return Err(Refused::Unreadable {
                field: "media".to_owned(),
                label: FieldMessage::Photo.into(),
                reason: none_of(&self.media, PHOTO_MEDIA),
            });
        }
        if bytes == 0 || bytes > PHOTO_MOST_BYTES {
            return Err(Refused::Unreadable {
                field: "bytes".to_owned(),
                label: FieldMessage::Photo.into(),
                reason: RecordMessage::PhotoBytes { bytes, most: PHOTO_MOST_BYTES }.into(),
            });
        }
        if let Some(caption) = &mut self.caption {
            *caption = check::check_text("caption", FieldMessage::Caption, caption, 400)?;
        }
        Ok(self)
    }
}
