//! The whole program in a made-up language, accented and longer than English: everything brought along is there, can be stored,
//! and says nothing in English. One process has one language, so this stands apart from the other tests.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

use std::collections::BTreeMap;
use std::path::Path;

use layshaft_content::Content as English;
use layshaft_core::coating::process_plans;
use layshaft_core::content::{Content, use_language};
use layshaft_core::faults::{KNOWLEDGE, knowledge_case};
use layshaft_core::harness::{Fault, Harness, TEMPLATES, bike_circuit, template, with_fault};
use layshaft_core::inspection::packs;
use layshaft_core::message::Message;
use layshaft_core::quantity::Standing;
use layshaft_core::ready_made::{WorkKind, last_steps, products, ready_made, source_of, typical_product};
use layshaft_core::record::{PilotFitting, Product, Spec};

/// A text in the made-up language: 40 % longer, in brackets.
fn made_up(text: &str) -> String {
    let accented: String = text.replace('a', "á").replace('e', "é").replace('o', "ö");
    format!("⟦{accented}{}⟧", "~".repeat(text.chars().count() * 2 / 5))
}

/// The content in that language as JSON.
fn made_up_content() -> String {
    let fixtures = Path::new(env!("CARGO_MANIFEST_DIR")).join("../fixtures");
    let english = English::read(&fixtures).unwrap();
    let texts: BTreeMap<String, String> =
        english.texts().iter().map(|(key, text)| (key.clone(), made_up(text))).collect();
    english.merged(&texts).unwrap().json
}

fn is_made_up(text: impl AsRef<str>) {
    let text = text.as_ref();
    assert!(text.starts_with('⟦') && text.ends_with('⟧'), "{text}");
}

fn says(message: &Message) {
    is_made_up(layshaft_words::say(message));
}

#[test]
fn everything_brought_along_is_there_in_the_language_that_was_chosen_first() {
    let content = made_up_content();
    use_language(&content).unwrap();
    use_language(&content).unwrap();
    let english = English::read(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../fixtures")).unwrap().json();
    assert_eq!(Content::read(&english).unwrap(), *Content::english());
    assert!(use_language(&english).is_err(), "one language for one run");

    jobs();
    sheets();
    tables();
    circuits();
}

fn jobs() {
    let jobs = ready_made();
    assert_eq!(jobs.len(), 57);
    for ready in jobs {
        assert_eq!(ready.job.clone().checked().as_ref(), Ok(&ready.job), "{}", ready.id);
        is_made_up(&ready.job.title);
        ready.tools.iter().chain(&ready.supplies).chain(&ready.lays).for_each(is_made_up);
        for step in &ready.job.steps {
            is_made_up(&step.text);
            step.caution.iter().for_each(is_made_up);
        }
        if let Some(wait) = &ready.job.wait {
            is_made_up(&wait.name);
            wait.product.iter().for_each(|name| assert!(typical_product(name).is_some(), "{name}"));
        }
    }
    last_steps(&[WorkKind::Brake]).iter().for_each(|step| is_made_up(&step.text));
}

fn sheets() {
    assert_eq!(products().len(), 13);
    for product in products() {
        is_made_up(&product.name);
        assert_eq!(product.clone().checked().as_ref(), Ok(&product));
        says(&source_of(&product).text);
    }
    // What a bike was told in English still means the same sheet, with the same source.
    let liner = typical_product("tank-liner").unwrap();
    assert_eq!(typical_product("Tank liner, two-part").as_ref(), Some(&liner));
    let told = Product {
        name: "Tank liner, two-part".to_owned(),
        forbids: Some("Do not fill, close or paint the tank.".to_owned()),
        ..liner
    };
    assert_eq!(source_of(&told).standing, Standing::CommonPractice);
    assert_eq!(process_plans().len(), 5);
    for plan in process_plans() {
        is_made_up(&plan.title);
        plan.steps.iter().for_each(|step| is_made_up(&step.name));
        assert!(plan.clone().checked().is_ok());
    }
}

fn tables() {
    assert_eq!(packs().iter().map(|pack| pack.items.len()).sum::<usize>(), 109);
    for pack in packs() {
        [&pack.place, &pack.title, &pack.caution].iter().for_each(is_made_up);
        for item in &pack.items {
            [&item.area, &item.title, &item.how].iter().for_each(is_made_up);
            item.caution.iter().for_each(is_made_up);
            says(&item.source.text);
        }
    }
    for table in KNOWLEDGE {
        let case = knowledge_case(table).unwrap();
        says(&case.name);
        case.suspects.iter().flat_map(|suspect| [&suspect.label, &suspect.cure]).for_each(says);
        case.covers.iter().for_each(|cover| says(&cover.label));
        for check in &case.checks {
            check.caution.iter().chain([&check.label]).for_each(says);
            check.outcomes.iter().for_each(|outcome| says(&outcome.label));
        }
    }
}

fn circuits() {
    let named = |harness: &Harness| {
        is_made_up(&harness.name);
        harness.switches.iter().for_each(|switch| is_made_up(&switch.label));
        harness.elements.iter().for_each(|element| is_made_up(&element.label));
    };
    for card in TEMPLATES {
        is_made_up(card.name());
        named(&template(card.id, 12.0).unwrap());
    }
    for pilot in [PilotFitting::OneWithDiodes, PilotFitting::OneEachSide] {
        let mut spec = Spec::default();
        spec.indication.pilot = Some(pilot);
        spec.indication.resistor_ohms = Some(10.0);
        named(&bike_circuit(&Spec::default(), &spec, "indicators-one-pilot").unwrap());
    }
    let horn = template("horn", 12.0).unwrap();
    named(&with_fault(&horn, &Fault::ShortToFrame { point: "horn in".to_owned() }).unwrap());
}
