//! The wiring measured: a solved harness of 120 elements, the next check of a large case, and ngspice on the same network.

use std::fmt::Write as _;
use std::hint::black_box;
use std::process::Command as Program;

use layshaft_core::faults::{
    Check, CheckOutcome, FaultAsk, Probe, Suspect, TroubleCase, WiringAsk, next_check, wiring_case,
};
use layshaft_core::harness::{Element, Harness, Law, Netlist, Setting, netlist, solve, template};
use layshaft_core::message::Message;
use layshaft_core::record::Trouble;
use layshaft_core::time::Moment;
use layshaft_door::command::StartFault;
use layshaft_door::{Bench, Command, fresh_id};

use crate::{median, print};

/// Thermal voltage at 27 degrees, volts.
const THERMAL: f64 = 8.617_333e-5 * 300.15;
/// How often ngspice repeats the operating point in one run.
const REPEATS: u32 = 200;

/// The page of a search in each circuit that can be searched: the case is made anew each time.
pub fn searches(bench: &mut Bench, moment: &Moment) {
    println!("\nSearches for faults on the demo bike, first question (goal 50 ms or less)");
    let offers = bench.fault(&FaultAsk::default(), moment).unwrap().offers;
    for offer in offers {
        let name = match &offer.trouble {
            Trouble::Wiring { circuit, .. } => circuit.clone(),
            Trouble::Table { table } => table.clone(),
        };
        let begin = Command::from(StartFault { trouble: offer.trouble });
        let search = bench.act(&fresh_id(), &begin, moment).unwrap().made;
        let ask = FaultAsk { search };
        let state = bench.fault(&ask, moment).unwrap().state.unwrap();
        let what = format!("{name} ({} suspects)", state.beliefs.len());
        print(&what, median(11, || drop(black_box(bench.fault(&ask, moment).unwrap()))));
    }
}

/// Solver, next check, and ngspice beside the solver.
pub fn solver() {
    println!("\nSolver (goal 1 ms for 120 elements) and next check (goal 50 ms for 200 suspects and 60 checks)");
    let whole = template("whole", 12.0).unwrap();
    let setting = Setting::of(&[
        ("key", "on"),
        ("lights", "head"),
        ("rear brake", "pressed"),
        ("indicators", "left"),
        ("horn button", "pressed"),
        ("engine speed", "fast"),
    ]);
    let long = lengthened(&whole, 120);
    let all = format!("whole machine, {} elements", whole.elements.len());
    print(&all, median(101, || drop(black_box(solve(&whole, &setting).unwrap()))));
    let more = format!("with further lamps, {} elements", long.elements.len());
    print(&more, median(101, || drop(black_box(solve(&long, &setting).unwrap()))));
    let ask = whole_machine(whole);
    let case = wiring_case(&ask).unwrap();
    print("case of the whole machine, every fault solved", median(3, || drop(black_box(wiring_case(&ask).unwrap()))));
    let what = format!("next check in it, {} suspects, {} checks", case.suspects.len(), case.checks.len());
    print(&what, median(21, || drop(black_box(next_check(&case, &[]).unwrap()))));
    let case = large_case();
    let what = format!("next check, {} suspects, {} checks", case.suspects.len(), case.checks.len());
    print(&what, median(21, || drop(black_box(next_check(&case, &[]).unwrap()))));
    beside_ngspice(&long, &setting);
}

/// The whole machine as one search, in the positions that show most of it; every point but the frame within reach.
fn whole_machine(harness: Harness) -> WiringAsk {
    let probe = |point: &str| Probe { point: point.to_owned(), covers: Vec::new(), minutes: 2.0, place: None };
    let probes = harness.nodes().into_iter().filter(|node| *node != harness.earth).map(probe).collect();
    let settings: [&[(&str, &str)]; 6] = [
        &[("key", "on"), ("lights", "head")],
        &[("key", "on"), ("lights", "head"), ("dip", "high")],
        &[("key", "on"), ("front brake", "pulled")],
        &[("key", "on"), ("rear brake", "pressed")],
        &[("key", "on"), ("indicators", "left")],
        &[("key", "on"), ("start button", "pressed")],
    ];
    WiringAsk {
        complaint: harness.name.clone(),
        settings: settings.iter().map(|pairs| Setting::of(pairs)).collect(),
        probes,
        covers: Vec::new(),
        harness,
        age_years: 40.0,
        reworked: false,
    }
}

/// The harness with further lamps behind wires of their own, until it has so many elements.
fn lengthened(whole: &Harness, elements: usize) -> Harness {
    let mut long = whole.clone();
    let run = whole.element("tail.feed.wire").unwrap();
    let lamp = whole.element("tail").unwrap();
    let mut number = 0;
    while long.elements.len() < elements {
        number += 1;
        let (id, point) = (format!("further {number}"), format!("further {number} in"));
        long.elements.push(Element {
            id: format!("{id} wire"),
            from: "switched live".into(),
            to: point.clone(),
            ..run.clone()
        });
        long.elements.push(Element { id, from: point, to: "frame".into(), ..lamp.clone() });
    }
    long
}

/// 200 suspects and 60 checks with two to four answers, drawn by a fixed sequence.
fn large_case() -> TroubleCase {
    let mut seed = 20_260_321_u64;
    let mut draw = move |below: u64| {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (seed >> 33) % below
    };
    let suspects: Vec<Suspect> = (0..200)
        .map(|at| Suspect {
            id: format!("s{at}"),
            label: Message::as_entered(format!("Suspect {at}")),
            weight: 1.0 + draw(20) as f64,
            cure: Message::as_entered(format!("cure {at}")),
            try_minutes: 10.0,
            job: None,
            caution: None,
        })
        .collect();
    let checks = (0..60).map(|at| {
        let answers = 2 + draw(3) as usize;
        let line = |likely: usize| {
            (0..answers).map(|at| if at == likely { 0.97 } else { 0.03 / (answers - 1) as f64 }).collect()
        };
        Check {
            id: format!("c{at}"),
            label: Message::as_entered(format!("Check {at}")),
            place: None,
            position: None,
            outcomes: (0..answers)
                .map(|at| CheckOutcome { id: at.to_string(), label: Message::as_entered(at.to_string()) })
                .collect(),
            minutes: 1.0 + draw(10) as f64,
            danger_minutes: 0.0,
            covers: Vec::new(),
            free_look: false,
            after: Vec::new(),
            caution: None,
            likelihoods: (0..200).map(|_| line(draw(answers as u64) as usize)).collect(),
            metering: None,
        }
    });
    TroubleCase { name: Message::as_entered("large"), checks: checks.collect(), covers: Vec::new(), suspects }
}

/// The whole process of ngspice for one operating point, and one operating point within a process that repeats it.
fn beside_ngspice(harness: &Harness, setting: &Setting) {
    if Program::new("ngspice").arg("--version").output().is_err() {
        println!("  ngspice is not installed: not compared");
        return;
    }
    let net = netlist(harness, setting);
    let folder = std::env::temp_dir().join(format!("layshaft-bench-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap();
    let run = |repeats: u32| {
        let file = folder.join(format!("{repeats}.cir"));
        std::fs::write(&file, deck(&net, repeats)).unwrap();
        let done = Program::new("ngspice").arg("-b").arg(&file).output().unwrap();
        let said = String::from_utf8_lossy(&done.stdout).into_owned();
        assert!(said.contains("v(n0) = "), "ngspice did not solve the deck: {said}");
    };
    let (one, many) = (median(5, || run(1)), median(5, || run(1 + REPEATS)));
    print("ngspice, whole process, the same network", one);
    print("ngspice, one operating point of a repeated run", many.saturating_sub(one) / REPEATS);
    std::fs::remove_dir_all(&folder).unwrap();
}

/// The deck of a network, its operating point worked out so many times.
fn deck(net: &Netlist, repeats: u32) -> String {
    let node = |point: Option<usize>| point.map_or("0".to_owned(), |number| format!("n{number}"));
    let mut deck = String::from("harness\n.options temp=27 tnom=27 reltol=1e-6 itl1=1000\n");
    for (at, device) in net.devices.iter().enumerate() {
        let (from, to) = (node(device.from), node(device.to));
        let volts = format!("(v({from})-v({to}))").replace("-v(0)", "").replace("v(0)", "0");
        let line = match device.law {
            Law::Resistance { ohms } => format!("R{at} {from} {to} {ohms:e}"),
            Law::Emf { volts, ohms } => format!("V{at} m{at} {to} {volts}\nR{at} {from} m{at} {ohms:e}"),
            Law::Filament { amperes, volts: rated } => {
                let x = format!("({volts}/{rated})");
                format!("B{at} {from} {to} I={amperes}*{x}*pow({x}*{x}+1.6e-5,-0.225)")
            }
            Law::Junction { saturation_amperes, slope_volts, ohms } => {
                let emission = slope_volts / THERMAL;
                format!(".model D{at} D(IS={saturation_amperes:e} N={emission} RS={ohms:e})\nD{at} {from} {to} D{at}")
            }
            Law::Driver { amperes, start_volts, full_volts } => {
                let soft = |corner: f64| format!("0.1*ln(1+exp(({volts}-{corner})/0.1))");
                let span = full_volts - start_volts;
                format!("B{at} {from} {to} I={amperes}*({}-{})/{span}", soft(start_volts), soft(full_volts))
            }
            Law::Coil { volts: emf, ohms, reactance_ohms } => {
                let square = ohms * ohms + reactance_ohms * reactance_ohms;
                let root = format!("sqrt(max({}-({reactance_ohms}*{volts})^2,0))", square * emf * emf);
                format!("B{at} {from} {to} I=({ohms}*{volts}-{root})/{square}")
            }
            Law::Shunt { volts: held, ohms } => {
                format!("B{at} {from} {to} I=0.1*ln(1+exp(({volts}-{held})/0.1))/{ohms}")
            }
            Law::Regulated { amperes, volts: regulated } => {
                format!("B{at} {from} {to} I=-{amperes}*(1-tanh(({volts}-{regulated})/0.1))/2")
            }
        };
        deck.push_str(&line);
        deck.push('\n');
    }
    for point in 0..net.points.len() {
        writeln!(deck, "Rleak{point} n{point} 0 {:e}", 1.0 / net.leak_siemens).unwrap();
        // A start near the battery: ngspice takes undamped steps.
        writeln!(deck, ".nodeset v(n{point})=12").unwrap();
    }
    write!(deck, ".control\nrepeat {repeats}\nop\nend\n").unwrap();
    // Prints a voltage of the last point: only a solved circuit has one.
    deck.push_str("print v(n0)\n");
    deck.push_str("quit\n.endc\n.end\n");
    deck
}
