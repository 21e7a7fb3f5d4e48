//! The examples of `bindings/README.md`: what stands there is what the tests run.

use std::path::Path;
use std::process::Command;

use crate::command::{Failure, Outcome, at_path, fresh_folder, output};
use crate::paths;

const README: &str = "bindings/README.md";

/// A script, and what it prints.
#[derive(Debug, PartialEq)]
pub struct Example {
    pub script: String,
    prints: String,
}

/// The example in `language`, and the block `text` that stands behind it.
pub fn of(language: &str) -> Outcome<Example> {
    let path = paths::at(README);
    let text = at_path(&path, std::fs::read_to_string(&path))?;
    find(&text, language)
        .ok_or_else(|| Failure(format!("{README} has no `{language}` block with a `text` block behind.")))
}

impl Example {
    /// Runs the script by `command` in a fresh `folder`, and compares what it prints.
    pub fn check(&self, command: &mut Command, folder: &Path) -> Outcome {
        fresh_folder(folder)?;
        let printed = output(command.current_dir(folder))?;
        if printed.trim() == self.prints.trim() {
            return Ok(());
        }
        Err(Failure(format!("The example of {README} prints\n{printed}\nwhere it says\n{}", self.prints)))
    }
}

fn find(text: &str, language: &str) -> Option<Example> {
    let (script, rest) = block(text, language)?;
    // The very next block: another one would be that of another script.
    let behind = rest.get(rest.find("```")?..)?;
    let (prints, _) = behind.starts_with("```text\n").then(|| block(behind, "text"))??;
    Some(Example { script: script.to_owned(), prints: prints.to_owned() })
}

/// The first block of a kind, and what follows it.
fn block<'a>(text: &'a str, kind: &str) -> Option<(&'a str, &'a str)> {
    let (_, behind) = text.split_once(&format!("```{kind}\n"))?;
    behind.split_once("```\n")
}

#[cfg(test)]
mod tests {
    use super::{Example, find};

    #[test]
    fn a_script_is_found_with_what_it_prints_and_not_without() {
        let text = "Words.\n```python\nprint(1)\n```\nprints\n```text\n1\n```\n```kotlin\nmain()\n```\n";
        let example = Example { script: "print(1)\n".to_owned(), prints: "1\n".to_owned() };
        assert_eq!(find(text, "python"), Some(example));
        assert_eq!(find(text, "kotlin"), None);
        assert_eq!(find(text, "swift"), None);
    }
}
