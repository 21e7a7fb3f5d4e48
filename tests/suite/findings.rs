//! The codes of findings, against the code that says them.

use layshaft_core::quantity::FindingCode;

use crate::architecture::{rust_files, without_tests};
use crate::root;

#[test]
fn every_code_is_said_somewhere_in_the_core() {
    let mut files = Vec::new();
    rust_files(&root().join("core/src"), &mut files);
    files.retain(|file| !file.ends_with("quantity/codes.rs"));
    let text: String = files.iter().map(|file| without_tests(&std::fs::read_to_string(file).unwrap())).collect();
    let said = |code: &FindingCode| {
        let name = format!("FindingCode::{code:?}");
        text.match_indices(&name).any(|(at, _)| !text[at + name.len()..].starts_with(|c: char| c.is_alphanumeric()))
    };
    let never: Vec<&FindingCode> = FindingCode::ALL.iter().filter(|code| !said(code)).collect();
    assert!(never.is_empty(), "nothing says {never:?}");
}
