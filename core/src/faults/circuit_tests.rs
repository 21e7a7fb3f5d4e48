//! Planted faults in the demo's circuits are found, and within how many checks.

use super::*;
use crate::harness::{Fault, Harness, OperatingPoint, Setting, solve, template, with_fault};
use crate::message::Message;
use crate::record::Evidence;

fn cover(id: &str, minutes: f64) -> Cover {
    Cover { id: id.to_owned(), label: Message::as_entered(id), minutes }
}

/// Every point but the frame is within reach, those of the headlamp and under the seat behind a cover.
fn ask(mark: &str, settings: &[&[(&str, &str)]]) -> WiringAsk {
    let harness = template(mark, 12.0).unwrap();
    let probe = |point: &str| {
        let behind = if point.contains("head") || point.contains("plug") || point.contains("out") {
            vec!["headlamp".to_owned()]
        } else if point.contains("battery") || point.contains("fuse") || point.contains("solenoid") {
            vec!["seat".to_owned()]
        } else {
            Vec::new()
        };
        Probe { point: point.to_owned(), covers: behind, minutes: 2.0, place: None }
    };
    let probes = harness.nodes().into_iter().filter(|node| *node != harness.earth).map(probe).collect();
    WiringAsk {
        complaint: mark.to_owned(),
        probes,
        harness,
        settings: settings.iter().map(|pairs| Setting::of(pairs)).collect(),
        covers: vec![cover("headlamp", 6.0), cover("seat", 2.0)],
        age_years: 30.0,
        reworked: false,
    }
}

/// What a faulty machine answers to a check.
fn answer(
    case: &TroubleCase,
    check: &Check,
    settings: &[Setting],
    points: &[OperatingPoint],
    harness: &Harness,
) -> Evidence {
    let which = settings.iter().position(|setting| check.id.ends_with(&format!(" / {}", setting.id()))).unwrap();
    let name = check.id.split(" / ").next().unwrap();
    assert!(case.check(&check.id).is_ok());
    if let Some(lamp) = name.strip_prefix("look ") {
        let outcome = crate::harness::look_id(points[which].look(lamp).unwrap()).to_owned();
        return Evidence::Seen { check: check.id.clone(), outcome };
    }
    let point = name.strip_prefix("volts ").unwrap();
    // The meter shows two decimals.
    let volts = (points[which].between(point, &harness.earth).unwrap() * 100.0).round() / 100.0;
    Evidence::Read { check: check.id.clone(), volts }
}

/// Looks for a planted fault; returns the number of checks.
fn find(ask: &WiringAsk, case: &TroubleCase, fault: &Fault) -> usize {
    let faulty = with_fault(&ask.harness, fault).unwrap();
    let points: Vec<OperatingPoint> = ask.settings.iter().map(|setting| solve(&faulty, setting).unwrap()).collect();
    let planted = fault.spoken(&ask.harness);
    let mut evidence = Vec::new();
    let sheet = loop {
        let sheet = standing(case, &evidence).unwrap();
        assert!(
            sheet.findings.iter().all(|finding| finding.code.as_str() != "faults.recheck"),
            "{planted}: {evidence:?}"
        );
        let Some(next) = &sheet.next else { break sheet };
        evidence.push(answer(case, case.check(&next.check).unwrap(), &ask.settings, &points, &ask.harness));
        assert!(evidence.len() < 30, "{planted} is not found");
    };
    let settled = sheet.settled.unwrap_or_else(|| panic!("{planted}: {:?}", &sheet.beliefs[..4]));
    assert!(settled.suspects.contains(&planted), "{planted} is taken for {:?}", settled.suspects);
    evidence.len()
}

#[test]
fn six_planted_faults_are_found_within_ten_checks_each() {
    let id = |id: &str| id.to_owned();
    let lighting =
        ask("lighting", &[&[("key", "on"), ("lights", "head")], &[("key", "on"), ("lights", "head"), ("dip", "high")]]);
    let stop = ask(
        "stop-lamp",
        &[&[("key", "on")], &[("key", "on"), ("front brake", "pulled")], &[("key", "on"), ("rear brake", "pressed")]],
    );
    let starter = ask(
        "starter",
        &[
            &[("key", "on")],
            &[("key", "on"), ("start button", "pressed")],
            &[("key", "on"), ("start button", "pressed"), ("gearbox", "in gear"), ("clutch lever", "pulled")],
        ],
    );
    let planted = [
        (&lighting, Fault::DeadContact { element: id("dip.low") }),
        (&lighting, Fault::MissingEarth { element: id("head.earth") }),
        (&lighting, Fault::Open { element: id("tail") }),
        (&stop, Fault::DeadContact { element: id("brake.front") }),
        (&stop, Fault::MissingEarth { element: id("rear.earth") }),
        (&starter, Fault::DeadContact { element: id("start.button") }),
    ];
    let mut counts = Vec::new();
    for (ask, fault) in &planted {
        let case = wiring_case(ask).unwrap();
        let checks = find(ask, &case, fault);
        println!("{}: {checks} checks among {} suspects", fault.spoken(&ask.harness), case.suspects.len());
        assert!(checks <= 10, "{}: {checks}", fault.spoken(&ask.harness));
        counts.push(checks);
    }
    println!("mean {:.1}", counts.iter().sum::<usize>() as f64 / counts.len() as f64);
}

#[test]
fn a_case_of_a_harness_is_sound_and_names_what_each_answer_means() {
    let ask = ask("horn", &[&[("key", "on"), ("horn button", "pressed")], &[("key", "on")]]);
    let case = wiring_case(&ask).unwrap();
    check_case(&case).unwrap();
    let sheet = standing(&case, &[]).unwrap();
    assert!(!sheet.meanings.is_empty() && sheet.meanings.iter().any(|meaning| !meaning.points_at.is_empty()));
    let total: f64 = sheet.beliefs.iter().map(|belief| belief.probability).sum();
    assert!((total - 1.0).abs() < 1e-9);
}

#[test]
fn the_last_answer_taken_back_gives_the_page_before_it() {
    let ask = ask("horn", &[&[("key", "on"), ("horn button", "pressed")]]);
    let case = wiring_case(&ask).unwrap();
    let before = standing(&case, &[]).unwrap();
    let check = before.next.clone().unwrap().check;
    let outcome = case.check(&check).unwrap().outcomes[0].id.clone();
    let evidence = vec![Evidence::Seen { check, outcome }];
    assert_ne!(standing(&case, &evidence).unwrap(), before);
    assert_eq!(standing(&case, &evidence[..0]).unwrap(), before);
}

#[test]
fn a_probe_on_a_point_that_is_not_there_and_an_impossible_age_are_refused() {
    let mut wrong = ask("horn", &[&[("key", "on")]]);
    wrong.probes[0].point = "moon".to_owned();
    assert!(wiring_case(&wrong).unwrap_err().english().contains("no point with the id moon"));
    let old = WiringAsk { age_years: -1.0, ..ask("horn", &[&[("key", "on")]]) };
    assert!(wiring_case(&old).unwrap_err().english().contains("Age of the harness"));
}

/// Fewest checks on the mean that single every one of these suspects out when every answer is certain, by trying every
/// plan: each set of suspects that is left is split by each check, and the best split is kept.
fn fewest(case: &TroubleCase, left: u32, known: &mut std::collections::BTreeMap<u32, f64>) -> f64 {
    if left.count_ones() < 2 {
        return 0.0;
    }
    if let Some(mean) = known.get(&left) {
        return *mean;
    }
    let mut best = f64::INFINITY;
    for check in &case.checks {
        let mut parts = std::collections::BTreeMap::<usize, u32>::new();
        for at in (0..case.suspects.len()).filter(|at| left >> at & 1 == 1) {
            let outcome = check.likelihoods[at].iter().position(|likely| *likely == 1.0).unwrap();
            *parts.entry(outcome).or_default() |= 1 << at;
        }
        if parts.len() > 1 {
            let share = |part: u32| f64::from(part.count_ones()) / f64::from(left.count_ones());
            let then: f64 = parts.values().map(|part| share(*part) * fewest(case, *part, known)).sum();
            best = best.min(1.0 + then);
        }
    }
    known.insert(left, best);
    best
}

/// The case with every answer certain: what is most likely under a suspect is what happens.
fn certain(mut case: TroubleCase) -> TroubleCase {
    for check in &mut case.checks {
        check.metering = None;
        for line in &mut check.likelihoods {
            let most = (0..line.len()).max_by(|a, b| line[*a].total_cmp(&line[*b])).unwrap();
            line.iter_mut().enumerate().for_each(|(at, likely)| *likely = f64::from(u8::from(at == most)));
        }
    }
    case
}

/// Checks until a suspect of a case with certain answers is settled on.
fn settles_after(case: &TroubleCase, planted: usize) -> usize {
    let mut evidence = Vec::new();
    while let Some(next) = next_check(case, &evidence).unwrap() {
        let check = case.check(&next.check).unwrap();
        let outcome = check.likelihoods[planted].iter().position(|likely| *likely == 1.0).unwrap();
        evidence.push(Evidence::Seen { check: next.check, outcome: check.outcomes[outcome].id.clone() });
    }
    assert!(beliefs(case, &evidence).unwrap()[planted].probability > 0.95);
    evidence.len()
}

/// The whole machine in the positions that show the six faults.
pub(super) fn whole_machine() -> WiringAsk {
    ask(
        "whole",
        &[
            &[("key", "on"), ("lights", "head")],
            &[("key", "on"), ("lights", "head"), ("dip", "high")],
            &[("key", "on"), ("front brake", "pulled")],
            &[("key", "on"), ("rear brake", "pressed")],
            &[("key", "on"), ("start button", "pressed")],
        ],
    )
}

/// The faults that are planted in it.
pub(super) fn six() -> [Fault; 6] {
    let id = |id: &str| id.to_owned();
    [
        Fault::DeadContact { element: id("dip.low") },
        Fault::MissingEarth { element: id("head.earth") },
        Fault::Open { element: id("tail") },
        Fault::DeadContact { element: id("brake.front") },
        Fault::MissingEarth { element: id("rear.earth") },
        Fault::DeadContact { element: id("start.button") },
    ]
}

#[test]
fn six_faults_of_the_whole_machine_take_at_most_a_tenth_more_checks_than_the_best_plan() {
    let (ask, planted) = (whole_machine(), six());
    let mut case = circuit::case_of_faults(&ask, &planted).unwrap();
    // Every suspect as likely and every check as much trouble as the next: then the number of checks is what is kept small.
    case.suspects.iter_mut().for_each(|suspect| suspect.weight = 1.0);
    for check in &mut case.checks {
        (check.minutes, check.free_look) = (1.0, false);
        check.covers.clear();
    }
    let doubted: usize = planted.iter().map(|fault| find(&ask, &case, fault)).sum();
    let case = certain(case);
    let counts: Vec<usize> = (0..planted.len()).map(|at| settles_after(&case, at)).collect();
    let count = planted.len() as f64;
    let mean = counts.iter().sum::<usize>() as f64 / count;
    let best = fewest(&case, (1 << planted.len()) - 1, &mut std::collections::BTreeMap::new());
    println!(
        "certain answers: {counts:?} checks, mean {mean:.3}; the best of all plans {best:.3}; ratio {:.3}",
        mean / best
    );
    println!("answers that may be mistaken: mean {:.3}", doubted as f64 / count);
    assert!(best > 1.0 && mean >= best - 1e-9 && mean <= 1.1 * best, "{mean} {best}");
}

#[test]
fn on_a_lighting_coil_a_search_asks_for_alternating_volts_and_finds_what_is_planted() {
    let ask = crate::faults::circuit_checks("coil-lighting", template("coil-lighting", 6.0).unwrap(), 40.0, false);
    let ask = ask.unwrap();
    let case = wiring_case(&ask).unwrap();
    assert!(case.suspects.iter().all(|suspect| !suspect.id.starts_with("reversed")), "nothing has a way round");
    for check in case.checks.iter().filter(|check| check.metering.is_some()) {
        let label = check.label.english();
        assert!(label.contains("V~") && label.contains("engine fast") && !label.contains("battery"), "{label}");
        assert!(check.outcomes.iter().all(|outcome| !outcome.label.english().contains("reversed")), "{label}");
    }
    for fault in [
        Fault::MissingEarth { element: "rear.earth".to_owned() },
        Fault::Open { element: "tail".to_owned() },
        Fault::Open { element: "lighting.coil".to_owned() },
        Fault::DeadContact { element: "lights.head".to_owned() },
    ] {
        let checks = find(&ask, &case, &fault);
        assert!(checks <= 12, "{}: {checks}", fault.spoken(&ask.harness));
    }
}
