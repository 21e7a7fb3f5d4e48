//! No test reads the day's own clock, or waits for time to pass: else it fails on some days, or on a busy machine.

use std::path::{Path, PathBuf};

use crate::root;

/// Where tests are, with what they share and what takes the pictures.
const FOLDERS: [&str; 11] = [
    "core",
    "bindings/door",
    "bindings/wasm",
    "bindings/wire",
    "mobile-shell/storage",
    "mobile-shell/ui/tests",
    "tests/suite",
    "tests/outside",
    "tests/bindings",
    "tests/e2e",
    "tests/window",
];

/// One place sets the clock of the pages and opens their browser, one that of the window; the moment stands in
/// `tests/moment.mjs`. The last two name the words that they look for.
const ALLOWED: [&str; 5] = [
    "tests/e2e/lib/clock.mjs",
    "tests/e2e/lib/browser.mjs",
    "tests/window/clock.mjs",
    "tests/suite/one_clock.rs",
    "tests/suite/architecture.rs",
];

/// What reads or sets a clock, opens a page without ours, or waits for time to pass; by the endings of files.
const WORDS: [(&str, &str); 4] = [
    ("rs", "SystemTime|Instant::now|Utc::now|Local::now|now_utc(|now_local(|Zoned::now|Timestamp::now|thread::sleep"),
    (
        "ts mjs js",
        "Date.now|new Date()|new Date;| Date()|(Date()|Temporal.Now|.clock.|newContext(|launchPersistentContext(|\
         waitForTimeout|timers/promises|TZ:|FAKETIME",
    ),
    ("py", ".now(|.today(|.utcnow(|time.time|import time|from time |localtime|gmtime|sleep(|getmtime|st_mtime"),
    ("kt", ".now(|currentTimeMillis|nanoTime|Date()|getInstance()|Thread.sleep|lastModified"),
];

/// The row of `WORDS` for a file.
fn kind_of(file: &Path) -> Option<usize> {
    let ending = file.extension()?.to_str()?;
    WORDS.iter().position(|(endings, _)| endings.split(' ').any(|each| each == ending))
}

/// What a text of this kind may not contain and does.
fn clocks_read(kind: usize, text: &str) -> Vec<&'static str> {
    WORDS[kind].1.split('|').filter(|word| text.contains(word)).collect()
}

fn collect(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).unwrap().flatten() {
        let path = entry.path();
        let name = entry.file_name().to_string_lossy().into_owned();
        if !path.is_dir() {
            found.push(path);
        } else if !["target", "node_modules", "results", "__pycache__"].contains(&name.as_str()) {
            collect(&path, found);
        }
    }
}

#[test]
fn no_test_reads_the_clock_of_the_day_or_waits_for_time_to_pass() {
    let mut files = Vec::new();
    for folder in FOLDERS {
        collect(&root().join(folder), &mut files);
    }
    let mut seen = [0; WORDS.len()];
    let mut reading = Vec::new();
    for file in files {
        let Some(kind) = kind_of(&file) else { continue };
        seen[kind] += 1;
        let name = file.strip_prefix(root()).unwrap().to_str().unwrap();
        if !ALLOWED.contains(&name) {
            let text = std::fs::read_to_string(&file).unwrap();
            reading.extend(clocks_read(kind, &text).iter().map(|word| format!("{name}: {word}")));
        }
    }
    assert!(seen.iter().all(|count| *count > 1), "files by kind: {seen:?}");
    assert!(reading.is_empty(), "these depend on the day or on the load:\n{}", reading.join("\n"));
    for name in ALLOWED {
        assert!(root().join(name).is_file(), "{name} is gone");
    }
}

#[test]
fn a_test_that_reads_a_clock_would_be_found() {
    for (name, text) in [
        ("a.ts", "await page.clock.setFixedTime(later);"),
        ("a.ts", "const soon = Date.now() + 1;"),
        ("a.mjs", "const day = new Date().getDay();"),
        ("a.ts", "await page.waitForTimeout(500);"),
        ("a.ts", "const other = await browser.newContext({ baseURL });"),
        ("a.rs", "let now = std::time::SystemTime::now();"),
        ("a.py", "today = date.today()"),
        ("a.py", "stamp = datetime.now(timezone.utc)"),
        ("a.kt", "val now = Instant.now()"),
    ] {
        assert!(!clocks_read(kind_of(Path::new(name)).unwrap(), text).is_empty(), "{text}");
    }
    let fixed = "const at = new Date('2026-03-19T08:00:00+01:00').getDate();";
    assert!(clocks_read(kind_of(Path::new("a.ts")).unwrap(), fixed).is_empty());
}
