//! Where in the source a message is said.

use std::collections::BTreeMap;
use std::io::Result;
use std::path::{Path, PathBuf};

/// The folders whose code says something.
const SAYING: [&str; 3] = ["core/src", "bindings/door/src", "mobile-shell/storage/src"];

/// Each id with the places that say it, as `file:line`. An id that is made from a name has none.
pub fn places(root: &Path) -> Result<BTreeMap<String, Vec<String>>> {
    let mut sources = Vec::new();
    for folder in SAYING {
        read(&root.join(folder), &mut sources)?;
    }
    let spoken: BTreeMap<String, String> = sources.iter().flat_map(|(_, text)| enums(text)).collect();
    let mut found: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for (path, text) in &sources {
        let file = path.strip_prefix(root).unwrap_or(path).display();
        for (line, code) in (1..).zip(text.lines()) {
            for id in said(code, &spoken) {
                let places = found.entry(id).or_default();
                places.push(format!("{file}:{line}"));
                places.dedup();
            }
        }
    }
    Ok(found)
}

fn read(folder: &Path, into: &mut Vec<(PathBuf, String)>) -> Result<()> {
    let mut paths = Vec::new();
    for entry in std::fs::read_dir(folder)? {
        paths.push(entry?.path());
    }
    paths.sort();
    for path in paths {
        if path.is_dir() {
            read(&path, into)?;
        } else if path.extension().is_some_and(|end| end == "rs") {
            let text = std::fs::read_to_string(&path)?;
            into.push((path, text));
        }
    }
    Ok(())
}

/// The enums of a file that are marked `#[message("…")]`: each name with how its ids begin.
fn enums(text: &str) -> Vec<(String, String)> {
    let marked = text.split("#[message(\"").skip(1);
    let named = marked.filter_map(|after| {
        let (start, rest) = after.split_once('"')?;
        let name = rest.split_once("enum ")?.1.split(|sign: char| !sign.is_alphanumeric()).next()?;
        Some((name.to_owned(), start.to_owned()))
    });
    named.collect()
}

/// The ids that a line says: `ChainMessage::TooSlack` is `chain-too-slack`.
fn said(code: &str, spoken: &BTreeMap<String, String>) -> Vec<String> {
    let parts: Vec<&str> = code.split("::").collect();
    let pairs = parts.windows(2).filter_map(|pair| {
        let [before, after] = pair else { return None };
        let name = before.rsplit(|sign: char| !sign.is_alphanumeric()).next()?;
        let variant = after.split(|sign: char| !sign.is_alphanumeric()).next()?;
        let start = spoken.get(name)?;
        variant.starts_with(char::is_uppercase).then(|| format!("{start}-{}", kebab(variant)))
    });
    pairs.collect()
}

fn kebab(name: &str) -> String {
    let mut text = String::new();
    for letter in name.chars() {
        if letter.is_uppercase() && !text.is_empty() {
            text.push('-');
        }
        text.extend(letter.to_lowercase());
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_variant_stands_for_its_id_wherever_it_is_made() {
        let spoken: BTreeMap<String, String> =
            enums("#[message(\"chain\")]\npub enum ChainMessage {\n    TooSlack,\n}\n").into_iter().collect();
        let found = said("say(ChainMessage::TooSlack { slack }, Other::TooSlack)", &spoken);
        assert_eq!(found, ["chain-too-slack"]);
        assert_eq!(said("Other::TooSlack; chain::message::ChainMessage", &spoken), [""; 0]);
    }
}
