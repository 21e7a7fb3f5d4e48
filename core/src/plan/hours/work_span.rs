//! A stretch of work or of bench time.

use layshaft_wire::wire;

/// A stretch of hands-on work.
#[wire]
pub struct WorkSpan {
    /// From, milliseconds since 1970 (UTC).
    pub from_ms: i64,
    /// To, milliseconds since 1970 (UTC).
    pub to_ms: i64,
}
