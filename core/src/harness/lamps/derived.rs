//! What the indicators add to everything that is derived about a bike.

use super::indicators::{Indicators, indicators};
use super::message::IndicatorMessage;
use super::pilot::pilot_source;
use crate::electrical::formulas::flasher;
use crate::electrical::{FLASH_RULE, Flashing, electrically_sound};
use crate::harness::solver::LampLook;
use crate::message::Measure;
use crate::quantity::{Finding, FindingCode, Judgement, Quantity, Weight};
use crate::record::{Bike, Spec};
use crate::units::Unit;

/// Flash rate, its band, pilot and the other side. What does not follow with certainty is not there, so that it stays
/// unknown until somebody counts.
pub(crate) fn quantities(indicators: &Indicators) -> Vec<Quantity> {
    let (least, most) = FLASH_RULE;
    let mut quantities = Vec::new();
    if let Some(rate) = indicators.certain_rate() {
        let judged = if (least..=most).contains(&rate) {
            (Judgement::Fine, Some(IndicatorMessage::RateFine.into()))
        } else {
            (Judgement::Outside, Some(why_not(indicators).into()))
        };
        let label = IndicatorMessage::Rate;
        quantities.push(Quantity::new(
            "indicator.flash-rate",
            label,
            rate,
            Unit::FlashesMinute,
            judged,
            flasher::band_source(),
        ));
    }
    if let Some(band) = &indicators.rate {
        for (id, label, value) in [
            ("indicator.flash-rate.least", IndicatorMessage::RateLeast, band.from),
            ("indicator.flash-rate.most", IndicatorMessage::RateMost, band.to),
        ] {
            let open = (Judgement::Open, None);
            quantities.push(Quantity::new(id, label, value, Unit::FlashesMinute, open, flasher::band_source()));
        }
    }
    if let Some(seen) = &indicators.behaviour {
        let other = if seen.other_side > LampLook::Off {
            (Judgement::Outside, Some(IndicatorMessage::OtherSideLights.into()))
        } else {
            (Judgement::Fine, Some(IndicatorMessage::OtherSideDark.into()))
        };
        let pilot = if seen.pilot >= LampLook::Dim {
            (Judgement::Fine, Some(IndicatorMessage::PilotSeen.into()))
        } else {
            (Judgement::Outside, Some(IndicatorMessage::PilotNotSeen.into()))
        };
        for (id, label, value, judged) in [
            ("indicator.other-side", IndicatorMessage::OtherSideLight, seen.other_percent, other),
            ("indicator.pilot-light", IndicatorMessage::PilotLight, seen.pilot_percent, pilot),
        ] {
            quantities.push(Quantity::new(id, label, value, Unit::Percent, judged, pilot_source()));
        }
    }
    quantities
}

/// The load of a side, and the one that the flasher is made for.
fn loads(indicators: &Indicators) -> (Measure, Measure) {
    let made = indicators.made_for_watts.unwrap_or_default();
    (Unit::Watt.of(indicators.side_watts), Unit::Watt.of(made))
}

fn why_not(indicators: &Indicators) -> IndicatorMessage {
    let (load, made) = loads(indicators);
    match indicators.flashing {
        Some(Flashing::Stops) => IndicatorMessage::StopsBecause { load, made },
        _ => IndicatorMessage::HurriesBecause { load, made },
    }
}

/// Findings of the indicators.
pub(crate) fn findings(indicators: &Indicators) -> Vec<Finding> {
    let mut findings = Vec::new();
    let (load, made) = loads(indicators);
    match indicators.flashing {
        Some(Flashing::Stops) => {
            let text = IndicatorMessage::Stop { load, made };
            findings.push(Finding::new(FindingCode::IndicatorStops, Weight::Care, text));
        }
        Some(Flashing::TooFast) => {
            let text = IndicatorMessage::TooFast { load, made };
            findings.push(Finding::new(FindingCode::IndicatorTooFast, Weight::Care, text));
        }
        _ => {}
    }
    if indicators.both_sides() {
        findings.push(Finding::new(FindingCode::IndicatorBothSides, Weight::Care, IndicatorMessage::BothSides));
    }
    findings
}

/// What the indicators of a spec add to everything that is derived about a bike. What cannot be derived is absent.
pub fn derive_indicators(bike: &Bike, spec: &Spec) -> (Vec<Quantity>, Vec<Finding>) {
    let found = electrically_sound(spec).and_then(|spec| indicators(bike, &spec));
    found.as_ref().map(|indicators| (quantities(indicators), findings(indicators))).unwrap_or_default()
}
