//! What a file server says of each file: its type, and how long it may be kept. One list for the server of this project and for
//! the settings that are written for others.

use std::path::Path;

/// Types by the end of a name. A module that comes as anything else is compiled slower, or not at all.
pub const TYPES: &[(&str, &str)] = &[
    ("html", "text/html; charset=utf-8"),
    ("js", "text/javascript; charset=utf-8"),
    ("mjs", "text/javascript; charset=utf-8"),
    ("css", "text/css; charset=utf-8"),
    ("wasm", "application/wasm"),
    ("json", "application/json"),
    ("webmanifest", "application/manifest+json"),
    ("svg", "image/svg+xml"),
    ("png", "image/png"),
    ("ico", "image/x-icon"),
    ("woff2", "font/woff2"),
    ("txt", "text/plain; charset=utf-8"),
];

/// The folder whose files carry their hash in their name.
pub const HASHED: &str = "assets";
/// What may be said of a file that never changes under its name.
pub const KEEP: &str = "public, max-age=31536000, immutable";
/// All others must be asked for again, the service worker above all: it is what brings an update.
pub const ASK_AGAIN: &str = "no-cache";
/// What is said of every file. What a page may load stands in the page itself.
pub const EVERYWHERE: &[(&str, &str)] = &[("X-Content-Type-Options", "nosniff"), ("Referrer-Policy", "no-referrer")];

/// The type of a file by its name.
pub fn content_type(file: &Path) -> &'static str {
    let end = file.extension().and_then(|extension| extension.to_str()).unwrap_or_default();
    TYPES.iter().find(|(ends, _)| *ends == end).map_or("application/octet-stream", |(_, kind)| kind)
}

/// How long a file may be kept.
pub fn cache_rule(file: &Path) -> &'static str {
    let hashed = file.parent().is_some_and(|parent| parent.ends_with(HASHED));
    if hashed { KEEP } else { ASK_AGAIN }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_module_has_its_own_type_and_the_service_worker_is_always_asked_for_again() {
        assert_eq!(content_type(Path::new("door.wasm")), "application/wasm");
        assert_eq!(cache_rule(Path::new("/dist/sw.js")), ASK_AGAIN);
        assert!(cache_rule(Path::new("/dist/assets/door-1a2b.wasm")).contains("immutable"));
    }
}
