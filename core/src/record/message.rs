//! Why a record is refused.

use layshaft_wire::message;

/// Why a record is refused.
#[message("record")]
pub(crate) enum RecordMessage {
    /// An empty file, or one too large.
    PhotoBytes { bytes: usize, most: usize },
    /// A photo that nobody gave a caption.
    PhotoWithoutCaption,
}
