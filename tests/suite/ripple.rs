//! What the owner of the demo bike wants, tried together: every consequence shows, in every area that there is.

use layshaft_core::inspection::{InspectionAsk, Verdict};
use layshaft_core::quantity::Judgement;
use layshaft_core::record::{Brake, Consumer, End, FlasherKind, Indication, LightSource, PilotFitting, Use};
use layshaft_core::ripple::{Proposal, RippleAsk};
use layshaft_door::Bench;
use layshaft_door::command::{FitBrake, FitConsumer, FitFlasher, LoadDemo};
use layshaft_door::query::BareAsk;

use crate::{English, SATURDAY, act, at};

fn wanted() -> Vec<Proposal> {
    let consumer = Consumer {
        name: "LED indicators, one side".into(),
        watts: 2.0,
        count: 2,
        used: Some(Use::Indicating),
        source: Some(LightSource::Led),
        ..Consumer::default()
    };
    let brake = Brake {
        master_mm: Some(14.0),
        pistons: Some(2),
        piston_mm: Some(27.0),
        opposed: Some(false),
        ..Brake::default()
    };
    vec![
        Proposal::Sprockets { front_teeth: 16, rear_teeth: 38, chain_links: None },
        Proposal::Consumer { id: "indicators".into(), consumer },
        Proposal::Brake { end: End::Front, brake },
    ]
}

#[test]
fn sprockets_lamps_and_brake_tried_together_show_every_consequence() {
    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, LoadDemo::default(), SATURDAY).unwrap();
    let before: Vec<_> = bench.facts().collect();
    let ripple = bench.ripple(&RippleAsk { proposals: wanted() }, &at(SATURDAY)).unwrap();

    let shift = |id: &str| {
        let found = ripple.shifts.iter().find(|shift| shift.quantity.id == id);
        found.unwrap_or_else(|| panic!("{id} is not among the shifts"))
    };
    for (id, after, within) in [
        ("gearing.final-ratio", 2.375, 1e-9),
        ("speed.gear5.at-limit", 165.55, 0.01),
        ("chain.centre-distance", 563.394, 0.001),
        ("speedometer.shown-at-80", 72.3, 0.05),
        ("brake.front.hydraulic-ratio", 7.44, 0.005),
    ] {
        let value = shift(id).after.unwrap();
        assert!((value - after).abs() <= within, "{id}: {value}");
    }
    assert!((shift("brake.front.lever-travel").after.unwrap() + 17.3).abs() < 0.1, "against as made, per cent");
    assert_eq!(shift("indicator.load-per-side").quantity.judgement, Judgement::Outside);
    assert!(shift("load.busy").after < shift("load.busy").before);
    assert!(ripple.items.iter().any(|item| item.after == Verdict::Fail && item.before != Verdict::Fail));
    for word in ["gearbox sprocket with 16", "wheel sprocket with 38", "LED indicators", "bleed the front brake"] {
        assert!(ripple.follows.iter().any(|text| text.english().contains(word)), "{word}: {:?}", ripple.follows);
    }
    assert_eq!(bench.facts().collect::<Vec<_>>(), before, "trying stores nothing");
}

#[test]
fn a_fitted_brake_is_as_tried_and_leaves_the_standard_one_alone() {
    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, LoadDemo::default(), SATURDAY).unwrap();
    let brake = Brake { master_mm: Some(14.0), ..Brake::default() };
    act(&mut bench, FitBrake { end: End::Front, brake }, SATURDAY).unwrap();
    let bike = bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap();
    assert_eq!((bike.fitted.front_brake.master_mm, bike.standard.front_brake.master_mm), (Some(14.0), Some(12.7)));
    assert_eq!(bike.fitted.front_brake.piston_mm, Some(38.1), "what was not said stays");
}

fn led() -> Proposal {
    match wanted().swap_remove(1) {
        Proposal::Consumer { id, consumer } => Proposal::Consumer { id, consumer },
        other => panic!("{other:?}"),
    }
}

fn cure() -> Indication {
    Indication {
        flasher: Some(FlasherKind::ElectronicThree),
        pilot: Some(PilotFitting::OneWithDiodes),
        ..Indication::default()
    }
}

fn verdict_on_rate(bench: &Bench) -> Verdict {
    let sheet = bench.inspection(&InspectionAsk::default(), &at(SATURDAY)).unwrap();
    sheet.items.iter().find(|judged| judged.item.id == "indicator.rate").unwrap().verdict
}

#[test]
fn led_indicators_fail_the_rate_and_the_cure_turns_the_item_to_pass() {
    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, LoadDemo::default(), SATURDAY).unwrap();
    assert_eq!(verdict_on_rate(&bench), Verdict::Unknown, "nobody has counted");
    let tried = |proposals| bench.ripple(&RippleAsk { proposals }, &at(SATURDAY)).unwrap();
    let item = |ripple: &layshaft_core::ripple::RippleAnswer| {
        ripple.items.iter().find(|item| item.item == "indicator.rate").map(|item| item.after)
    };
    let alone = tried(vec![led()]);
    assert_eq!(item(&alone), Some(Verdict::Fail));
    for code in ["indicator.stops", "indicator.both-sides"] {
        assert!(alone.new_findings.iter().any(|finding| finding.code.as_str() == code), "{code}");
    }
    for id in ["indicator.flash-rate", "indicator.other-side", "load.busy", "indicator.load-per-side"] {
        assert!(alone.shifts.iter().any(|shift| shift.quantity.id == id), "{id}");
    }
    let cured = tried(vec![led(), Proposal::Flasher { indication: cure() }]);
    assert_eq!(item(&cured), Some(Verdict::Pass));
    assert!(cured.new_findings.iter().all(|finding| !finding.code.as_str().starts_with("indicator.")));
    assert!(cured.follows.iter().any(|text| text.english().contains("two diodes")), "{:?}", cured.follows);

    let resistors = Indication { resistor_ohms: Some(15.0), resistors_per_side: Some(2), ..Indication::default() };
    let loaded = tried(vec![led(), Proposal::Flasher { indication: resistors }]);
    assert_eq!(item(&loaded), None, "the load is back, but only counting tells: unknown as before");
    assert!(loaded.follows.iter().any(|text| text.english().contains("4 load resistors")), "{:?}", loaded.follows);

    let Proposal::Consumer { id, consumer } = led() else { panic!("a consumer") };
    act(&mut bench, FitConsumer { id, consumer }, SATURDAY).unwrap();
    assert_eq!(verdict_on_rate(&bench), Verdict::Fail);
    act(&mut bench, FitFlasher { indication: cure() }, SATURDAY).unwrap();
    assert_eq!(verdict_on_rate(&bench), Verdict::Pass);
    let bike = bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap();
    assert_eq!(bike.standard.indication.flasher, Some(FlasherKind::Thermal), "the standard side stays");
}
