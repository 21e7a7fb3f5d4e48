//! The lamp page on a machine like the demo's: LED indicators, both cures, headlamp of other watts.

use super::*;
use crate::harness::solver::LampLook;
use crate::record::{LampCap, Use};

fn lamp(watts: f64, count: u32, source: LightSource) -> Consumer {
    Consumer {
        name: "Lamp".to_owned(),
        watts,
        count,
        used: Some(Use::Indicating),
        source: Some(source),
        cap: Some(LampCap::Ba15s),
        lumens: Some(125.0),
        ..Consumer::default()
    }
}

fn bike() -> Bike {
    // An id says nothing of what hangs there.
    let slot =
        |id: &str, role, consumer| Slot { id: id.to_owned(), consumer: Consumer { role: Some(role), ..consumer } };
    let spec = Spec {
        consumers: vec![
            slot("0a", ConsumerRole::Indicators, lamp(10.0, 2, LightSource::Filament)),
            slot("0b", ConsumerRole::IndicatorPilot, lamp(3.0, 1, LightSource::Filament)),
            slot(
                "0c",
                ConsumerRole::Headlamp,
                Consumer { used: Some(Use::Lights), ..lamp(35.0, 1, LightSource::Filament) },
            ),
        ],
        indication: Indication {
            flasher: Some(FlasherKind::Thermal),
            pilot: Some(PilotFitting::BetweenSides),
            ..Indication::default()
        },
        ..Spec::default()
    };
    Bike { standard: spec.clone(), fitted: spec, ..Bike::default() }
}

fn led() -> LampsAsk {
    let lamp = Consumer { lumens: None, ..lamp(1.0, 2, LightSource::Led) };
    LampsAsk { proposed: Some(lamp), ..LampsAsk::default() }
}

fn column(sheet: &LampAnswer, side: LampSide) -> &FlashColumn {
    sheet.flashing.iter().find(|column| column.side == side).unwrap()
}

#[test]
fn as_made_the_rate_must_be_counted_and_the_other_side_stays_dark() {
    let sheet = lamp_answer(&bike(), &LampsAsk::default()).unwrap();
    let made = column(&sheet, LampSide::Standard);
    assert_eq!(made.indicators.certain_rate(), None, "nobody counted");
    assert!(!made.indicators.both_sides() && made.indicators.outage_tells == Some(true));
    assert!(sheet.resistor.is_none() && sheet.findings.is_empty(), "{:?}", sheet.findings);
}

#[test]
fn led_lamps_on_a_thermal_flasher_stay_lit_and_light_both_sides() {
    let sheet = lamp_answer(&bike(), &led()).unwrap();
    let tried = column(&sheet, LampSide::Proposed);
    assert_eq!(tried.indicators.certain_rate(), Some(0.0));
    assert!(tried.indicators.both_sides());
    let codes: Vec<&str> = sheet.findings.iter().map(|finding| finding.code.as_str()).collect();
    for code in ["indicator.stops", "indicator.both-sides", "lamp.led-approval", "lamp.polarity"] {
        assert!(codes.contains(&code), "{codes:?}");
    }
    assert_eq!(sheet.fits, CapFit::Fits);
}

#[test]
fn both_cures_are_compared() {
    let sheet = lamp_answer(&bike(), &led()).unwrap();
    let resistors = column(&sheet, LampSide::WithResistors);
    let share = resistors.indicators.side_watts / resistors.indicators.made_for_watts.unwrap();
    assert!((0.97..1.15).contains(&share), "the load is back: {share}");
    assert!(!resistors.indicators.both_sides(), "{:?}", resistors.indicators.behaviour);
    assert!(resistors.takes.iter().any(|text| text.english().starts_with("4 resistors")));

    let flasher = column(&sheet, LampSide::WithFlasher);
    assert_eq!(flasher.indicators.certain_rate(), Some(90.0));
    assert_eq!(flasher.indicators.behaviour.as_ref().unwrap().pilot, LampLook::Full);
    assert!(!flasher.indicators.both_sides() && flasher.indicators.outage_tells == Some(false));
    assert!(flasher.text.english().contains("A lamp out does not show"));
}

#[test]
fn the_working_names_each_comparison_in_words() {
    let lines = lamp_answer(&bike(), &led()).unwrap().working.lines;
    let labels: Vec<String> =
        lines.iter().map(|line| line.label.english()).filter(|label| label.contains("share")).collect();
    let shares = ["as made", "as fitted", "as proposed", "with load resistors", "with an electronic flasher"];
    assert_eq!(labels, shares.map(|side| format!("Load share, {side}")));
}

#[test]
fn mixed_lamps_are_a_load_between() {
    // One filament of 10 W and one LED of 1 W on each side.
    let sheet = lamp_answer(&bike(), &LampsAsk { replaced: Some(1), ..led() }).unwrap();
    let mixed = &column(&sheet, LampSide::Proposed).indicators;
    assert!((mixed.side_watts - 1.0 - 13.0 * (14.0_f64 / 13.5).powf(1.55)).abs() < 1e-9, "{}", mixed.side_watts);
    assert_eq!(mixed.flashing, Some(Flashing::Stops));
    assert!(!mixed.both_sides(), "the filament that stays is an earth for the pilot: {:?}", mixed.behaviour);
    let takes = &column(&sheet, LampSide::WithResistors).takes;
    assert!(takes[0].english().starts_with("2 resistors"), "{takes:?}");
    let electronic = Indication { flasher: Some(FlasherKind::ElectronicTwo), ..Indication::default() };
    let ask = LampsAsk { replaced: Some(1), indication: Some(electronic), ..led() };
    let sheet = lamp_answer(&bike(), &ask).unwrap();
    assert_eq!(column(&sheet, LampSide::Proposed).indicators.flashing, Some(Flashing::Count));
}

#[test]
fn an_unknown_flasher_gives_no_rate() {
    let mut bike = bike();
    bike.fitted.indication.flasher = None;
    let sheet = lamp_answer(&bike, &LampsAsk::default()).unwrap();
    assert_eq!(column(&sheet, LampSide::Fitted).indicators.rate, None);
    assert!(column(&sheet, LampSide::Fitted).text.english().contains("not known"));
}

#[test]
fn a_stronger_headlamp_of_another_cap_is_said_plainly() {
    let strong = Consumer { cap: Some(LampCap::P43t), watts: 60.0, ..bike().fitted.consumers[2].consumer.clone() };
    let ask = LampsAsk { place: Some("0c".to_owned()), proposed: Some(strong), ..LampsAsk::default() };
    let sheet = lamp_answer(&bike(), &ask).unwrap();
    assert_eq!(sheet.fits, CapFit::DoesNotFit);
    assert!(sheet.findings.iter().any(|finding| finding.code.as_str() == "lamp.more-watts"));
    assert!(sheet.flashing.is_empty());
}

#[test]
fn a_count_is_judged_and_a_place_that_is_not_there_is_refused() {
    let count = |flashes| LampsAsk { counted: Some(FlashCount { flashes, seconds: 30.0 }), ..LampsAsk::default() };
    let slow = lamp_answer(&bike(), &count(25)).unwrap();
    assert_eq!((slow.counted_per_minute, slow.findings[0].weight), (Some(50.0), Weight::Stopper));
    assert_eq!(lamp_answer(&bike(), &count(45)).unwrap().findings[0].weight, Weight::Note);
    let ask = LampsAsk { place: Some("fog-lamp".to_owned()), ..LampsAsk::default() };
    assert!(lamp_answer(&bike(), &ask).unwrap_err().english().contains("fog-lamp"));
}

#[test]
fn the_light_of_the_lamp_as_made_is_not_lent_to_an_led() {
    let mut bike = bike();
    bike.fitted.consumers[0].consumer = lamp(1.0, 2, LightSource::Led);
    let sheet = lamp_answer(&bike, &LampsAsk::default()).unwrap();
    let fitted = sheet.lamps.iter().find(|lamp| lamp.side == LampSide::Fitted).unwrap();
    assert_eq!(fitted.charging.lumens, None);
}
