//! The vectors: the same formulas with the same answers as in Python, Kotlin and the browser.

use std::path::{Path, PathBuf};

use layshaft_core::error::Refusal;
use layshaft_core::handbook::{Formula, evaluate};
use serde_json::Value;

use crate::root;

/// Files below a folder with this end.
pub fn files(folder: &Path, end: &str, found: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            files(&path, end, found);
        } else if path.extension().is_some_and(|found| found == end) {
            found.push(path);
        }
    }
}

/// Every case of every vector file, with what its file says of all of them.
pub fn cases() -> Vec<(String, Value)> {
    let mut found = Vec::new();
    files(&root().join("fixtures/vectors"), "toml", &mut found);
    let mut all = Vec::new();
    for path in found {
        let text = std::fs::read_to_string(&path).unwrap();
        let mut file: Value = serde_json::to_value(toml::from_str::<toml::Value>(&text).expect("TOML")).unwrap();
        let Value::Array(cases) = file["case"].take() else { panic!("{} has no cases", path.display()) };
        for mut case in cases {
            for key in ["source", "standing"] {
                if case.get(key).is_none() {
                    case[key] = file[key].clone();
                }
            }
            all.push((format!("{}: “{}”", path.display(), case["name"].as_str().expect("a name")), case));
        }
    }
    all
}

/// What is wrong with a case, if anything.
fn fault(case: &Value) -> Option<String> {
    let formula: Formula = match serde_json::from_value(case["formula"].clone()) {
        Ok(formula) => formula,
        Err(error) => return Some(format!("the formula cannot be read: {error}")),
    };
    match (evaluate(&formula), case.get("gives"), case.get("refuses")) {
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
    let (cases, mut faults) = (cases(), Vec::new());
    for (name, case) in &cases {
        for key in ["source", "standing"] {
            if case[key].as_str().is_none_or(str::is_empty) {
                faults.push(format!("{name} has no {key}"));
            }
        }
        faults.extend(fault(case).map(|fault| format!("{name}: {fault}")));
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    assert!(cases.len() >= 50, "only {} cases were found", cases.len());
}
