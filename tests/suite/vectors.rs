//! The vectors: the same sums with the same answers as in Python, Kotlin and the browser.

use std::path::{Path, PathBuf};

use layshaft_core::error::Refusal;
use layshaft_core::reckon::{Sum, reckon};
use serde_json::Value;

use crate::root;

fn files(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            files(&path, found);
        } else if path.extension().is_some_and(|end| end == "toml") {
            found.push(path);
        }
    }
}

/// What is wrong with a case, if anything.
fn fault(case: &Value) -> Option<String> {
    let sum: Sum = match serde_json::from_value(case["sum"].clone()) {
        Ok(sum) => sum,
        Err(error) => return Some(format!("the sum cannot be read: {error}")),
    };
    match (reckon(&sum), case.get("gives"), case.get("refuses")) {
        (Ok(figures), Some(gives), None) => {
            let within = case["within"].as_f64().expect("a tolerance");
            gives.as_object().expect("figures").iter().find_map(|(name, wanted)| {
                let wanted = wanted.as_f64().expect("a number");
                match figures.figures.iter().find(|figure| figure.name == *name) {
                    None => Some(format!("there is no figure {name}")),
                    Some(figure) if (figure.value - wanted).abs() <= within => None,
                    Some(figure) => Some(format!("{name} is {}, wanted {wanted} within {within}", figure.value)),
                }
            })
        }
        (Err(refused), None, Some(wanted)) => {
            let refusal = serde_json::to_value(Refusal::from(refused)).unwrap();
            let same = ["code", "field"].iter().all(|key| wanted.get(*key).is_none() || wanted[*key] == refusal[*key]);
            (!same).then(|| format!("refused with {refusal}, wanted {wanted}"))
        }
        (got, gives, refuses) => Some(format!("got {got:?}, wanted {gives:?} or refused {refuses:?}")),
    }
}

#[test]
fn every_vector_holds_and_names_its_source() {
    let mut found = Vec::new();
    files(&root().join("fixtures/vectors"), &mut found);
    let (mut cases, mut faults) = (0, Vec::new());
    for path in found {
        let text = std::fs::read_to_string(&path).unwrap();
        let file: Value = serde_json::to_value(toml::from_str::<toml::Value>(&text).expect("TOML")).unwrap();
        for case in file["case"].as_array().expect("cases") {
            cases += 1;
            let name = case["name"].as_str().expect("a name");
            for key in ["source", "standing"] {
                let said = case.get(key).or(file.get(key)).and_then(Value::as_str);
                if said.is_none_or(str::is_empty) {
                    faults.push(format!("{}: “{name}” has no {key}", path.display()));
                }
            }
            faults.extend(fault(case).map(|fault| format!("{}: “{name}”: {fault}", path.display())));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    assert!(cases >= 50, "only {cases} cases were found");
}
