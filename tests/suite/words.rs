//! The catalogue has words for everything that the core says, and for nothing else.

use std::collections::{BTreeMap, BTreeSet};

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Message, Pattern, PatternElement};
use fluent_syntax::parser::parse;
use layshaft_core::catalogue::{MESSAGES, made_ids};
use layshaft_core::message::{ArgumentKind, Declared};
use layshaft_core::record::record_cards;

/// What the catalogue says for itself: parts of lists, days, lengths of time, units.
const OWN: [&str; 11] = [
    "day",
    "duration-",
    "list-",
    "local-time",
    "month-short-",
    "number-decimal-sign",
    "unit-",
    "weekday-short-",
    "work-",
    "pattern-",
    "term-",
];

/// The arguments that a message of the catalogue uses, those that choose a form apart.
#[derive(Default)]
struct Used {
    shown: BTreeSet<String>,
    chosen: BTreeSet<String>,
}

fn pattern(used: &mut Used, pattern: &Pattern<&str>) {
    for element in &pattern.elements {
        let PatternElement::Placeable { expression } = element else { continue };
        match expression {
            Expression::Inline(expression) => inline(used, expression),
            Expression::Select { selector, variants } => {
                if let InlineExpression::VariableReference { id } = selector {
                    used.chosen.insert(id.name.to_owned());
                } else {
                    inline(used, selector);
                }
                variants.iter().for_each(|variant| self::pattern(used, &variant.value));
            }
        }
    }
}

fn inline(used: &mut Used, expression: &InlineExpression<&str>) {
    match expression {
        InlineExpression::VariableReference { id } => {
            used.shown.insert(id.name.to_owned());
        }
        InlineExpression::FunctionReference { arguments, .. } => {
            arguments.positional.iter().for_each(|argument| inline(used, argument));
        }
        InlineExpression::Placeable { expression } => {
            if let Expression::Inline(expression) = expression.as_ref() {
                inline(used, expression);
            }
        }
        _ => {}
    }
}

/// The messages of the English files, with what they use.
fn catalogue() -> BTreeMap<String, Used> {
    let mut all = BTreeMap::new();
    for (file, text) in layshaft_words::FILES {
        let resource = parse(*text).unwrap_or_else(|(_, errors)| panic!("{file}: {errors:?}"));
        for entry in &resource.body {
            let Entry::Message(Message { id, value: Some(value), .. }) = entry else { continue };
            let mut used = Used::default();
            pattern(&mut used, value);
            assert!(all.insert(id.name.to_owned(), used).is_none(), "{file}: {} stands twice", id.name);
        }
    }
    all
}

/// Everything that is said: by the core, the door and the storage, and what names the records and their fields.
fn declared() -> impl Iterator<Item = Declared> {
    let said = [MESSAGES, layshaft_door::MESSAGES, layshaft_storage::MESSAGES];
    said.into_iter().flatten().copied().flatten().copied().chain(of_records())
}

fn of_records() -> Vec<Declared> {
    let mut ids = BTreeSet::new();
    for kind in record_cards() {
        ids.insert(format!("kind-{}", kind.record_kind));
        ids.insert(kind.words.message_id.into());
        ids.extend(kind.fields.into_iter().map(|field| String::from(field.words.message_id)));
    }
    ids.into_iter().map(|id| Declared { id: id.leak(), arguments: &[] }).collect()
}

#[test]
fn each_message_of_the_core_has_words_and_they_use_what_it_brings() {
    let catalogue = catalogue();
    let mut wrong = Vec::new();
    for declared in declared() {
        let Some(used) = catalogue.get(declared.id) else {
            wrong.push(format!("{}: no words", declared.id));
            continue;
        };
        let named: BTreeSet<&str> = declared.arguments.iter().map(|(name, _)| *name).collect();
        for name in used.shown.union(&used.chosen).filter(|name| !named.contains(name.as_str())) {
            wrong.push(format!("{}: there is no ${name}", declared.id));
        }
        for (name, kind) in declared.arguments {
            let (shown, chosen) = (used.shown.contains(*name), used.chosen.contains(*name));
            match kind {
                ArgumentKind::Choice if shown => {
                    wrong.push(format!("{}: ${name} chooses, and has no words", declared.id))
                }
                _ if !shown && !chosen => wrong.push(format!("{}: ${name} is not used", declared.id)),
                _ => {}
            }
        }
    }
    wrong.extend(made_ids().into_iter().filter(|id| !catalogue.contains_key(id)).map(|id| format!("{id}: no words")));
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn the_catalogue_has_no_words_for_what_nobody_says() {
    let ids: BTreeSet<&str> = declared().map(|declared| declared.id).collect();
    assert_eq!(ids.len(), declared().count(), "an id stands twice");
    let of_its_own = |id: &str| OWN.iter().any(|own| id == *own || (own.ends_with('-') && id.starts_with(own)));
    let catalogue = catalogue();
    let made: BTreeSet<String> = made_ids().into_iter().collect();
    let said = |id: &str| ids.contains(id) || made.contains(id) || of_its_own(id);
    let idle: Vec<&String> = catalogue.keys().filter(|id| !said(id)).collect();
    assert!(idle.is_empty(), "{idle:?}");
}

#[test]
fn every_enum_of_messages_is_listed() {
    let lists =
        [("core/src", "catalogue.rs"), ("bindings/door/src", "message.rs"), ("mobile-shell/storage/src", "message.rs")];
    let mut missing = Vec::new();
    for (folder, list) in lists {
        missing.extend(not_listed(&crate::root().join(folder), list));
    }
    assert!(missing.is_empty(), "{missing:?}");
}

fn not_listed(folder: &std::path::Path, list: &str) -> Vec<String> {
    let listed = std::fs::read_to_string(folder.join(list)).unwrap();
    let mut missing = Vec::new();
    let mut files = Vec::new();
    crate::architecture::rust_files(folder, &mut files);
    for path in files {
        let text = std::fs::read_to_string(&path).unwrap();
        for (_, after) in text.match_indices("#[message(\"").map(|(at, _)| text.split_at(at)) {
            let name = after.split("enum ").nth(1).and_then(|rest| rest.split_whitespace().next()).unwrap_or_default();
            if !listed.contains(&format!("{name}::DECLARED")) {
                missing.push(format!("{}: {name}", path.display()));
            }
        }
    }
    missing
}

#[test]
fn every_file_of_the_core_in_the_catalogue_is_read() {
    let folder = crate::root().join("fixtures/words/en/core");
    let there: BTreeSet<String> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| format!("core/{}", entry.unwrap().file_name().to_string_lossy()))
        .collect();
    let read: BTreeSet<String> = layshaft_words::FILES.iter().map(|(name, _)| (*name).to_owned()).collect();
    assert_eq!(there, read);
}

/// Texts in a piece of Rust that read like a sentence or a label: a capital letter, and a second word.
fn sentences(code: &str) -> Vec<String> {
    let lines = code.lines().map(str::trim).filter(|line| !line.starts_with("//") && !line.starts_with("#["));
    let literals = lines.flat_map(|line| line.split('"').skip(1).step_by(2).map(str::to_owned).collect::<Vec<_>>());
    let reads = |text: &str| {
        let mut words =
            text.split([' ', '\u{a0}']).filter(|word| word.chars().filter(|letter| letter.is_alphabetic()).count() > 1);
        let first = words.next().unwrap_or_default();
        let capital =
            first.starts_with(char::is_uppercase) && !first.chars().skip(1).any(|c| c.is_uppercase() || c.is_numeric());
        capital && words.next().is_some_and(|word| !word.contains(char::is_uppercase))
    };
    // An equation has its words from the handbook's own language of symbols.
    literals.filter(|text| reads(text) && !text.contains(" = ")).collect()
}

#[test]
fn no_sentence_stands_in_the_core_beside_the_catalogue() {
    assert_eq!(
        sentences("say(\"The chain is slack.\"); // \"Not this one\"\n//! \"Nor this\"\nid(\"two words\", \"Tern\")"),
        ["The chain is slack.", "Not this one"]
    );
    for folder in ["core/src", "bindings/door/src"] {
        let mut files = Vec::new();
        crate::architecture::rust_files(&crate::root().join(folder), &mut files);
        assert!(files.len() > 10);
        for path in files {
            let shown = path.display().to_string();
            let of_tests = shown.ends_with("_tests.rs") || shown.contains("/tests") || shown.contains("/bin/");
            if of_tests {
                continue;
            }
            let code = crate::architecture::without_tests(&std::fs::read_to_string(&path).unwrap());
            assert_eq!(sentences(&code), [""; 0], "{shown}");
        }
    }
}
