//! What the indicators add to everything that is derived about a bike.

use super::indicators::{Indicators, indicators};
use super::pilot::pilot_source;
use crate::electrical::formulas::flasher;
use crate::electrical::{FLASH_RULE, Flashing, electrically_sound};
use crate::harness::solver::LampLook;
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
            (Judgement::Fine, Some("An electronic flasher that does not mind this load; count it all the same.".into()))
        } else {
            (Judgement::Outside, Some(why_not(indicators).into()))
        };
        let label = "Indicators flash";
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
            ("indicator.flash-rate.least", "Indicators flash at least", band.from),
            ("indicator.flash-rate.most", "Indicators flash at most", band.to),
        ] {
            let open = (Judgement::Open, None);
            quantities.push(Quantity::new(id, label, value, Unit::FlashesMinute, open, flasher::band_source()));
        }
    }
    if let Some(seen) = &indicators.behaviour {
        let other = if seen.other_side > LampLook::Off {
            (Judgement::Outside, Some("Both sides light: the pilot feeds the other side.".into()))
        } else {
            (Judgement::Fine, Some("The other side stays dark.".into()))
        };
        let pilot = if seen.pilot >= LampLook::Dim {
            (Judgement::Fine, Some("Seen by day or nearly so.".into()))
        } else {
            (Judgement::Outside, Some("The rider does not see it.".into()))
        };
        for (id, label, value, judged) in [
            ("indicator.other-side", "Light of the side that should be dark", seen.other_percent, other),
            ("indicator.pilot-light", "Light of the indicator pilot", seen.pilot_percent, pilot),
        ] {
            quantities.push(Quantity::new(id, label, value, Unit::Percent, judged, pilot_source()));
        }
    }
    quantities
}

fn why_not(indicators: &Indicators) -> String {
    let made = indicators.made_for_watts.unwrap_or_default();
    let load = format!("{:.0} W where the flasher is made for {made:.0} W", indicators.side_watts);
    match indicators.flashing {
        Some(Flashing::Stops) => format!("{load}: the lamps stay lit or dark."),
        _ => format!("{load}: it takes that for a lamp out and hurries."),
    }
}

/// Findings of the indicators.
pub(crate) fn findings(indicators: &Indicators) -> Vec<Finding> {
    let mut findings = Vec::new();
    let cure = "An electronic flasher with three terminals cures it, or a load resistor beside each lamp.";
    match indicators.flashing {
        Some(Flashing::Stops) => {
            let text = format!("The indicators do not flash: {} {cure}", why_not(indicators));
            findings.push(Finding::new(FindingCode::IndicatorStops, Weight::Care, text));
        }
        Some(Flashing::TooFast) => {
            let text = format!("The indicators flash too fast: {} {cure}", why_not(indicators));
            findings.push(Finding::new(FindingCode::IndicatorTooFast, Weight::Care, text));
        }
        _ => {}
    }
    if indicators.both_sides() {
        let text = "Both sides light together: the single pilot between the circuits feeds the other side, and LED lamps need \
                    no more. Give the pilot an earth of its own and feed it through two diodes, stripes towards the pilot.";
        findings.push(Finding::new(FindingCode::IndicatorBothSides, Weight::Care, text));
    }
    findings
}

/// What the indicators of a spec add to everything that is derived about a bike. What cannot be derived is absent.
pub fn derive_indicators(bike: &Bike, spec: &Spec) -> (Vec<Quantity>, Vec<Finding>) {
    let found = electrically_sound(spec).and_then(|spec| indicators(bike, &spec));
    found.as_ref().map(|indicators| (quantities(indicators), findings(indicators))).unwrap_or_default()
}
