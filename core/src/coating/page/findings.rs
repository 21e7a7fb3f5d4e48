//! What is worth saying about a coat: before it goes on, while it cures, and about what was taken for granted.

use super::ask::{Air, CureAnswer, Subject};
use super::words;
use crate::coating::formulas::{ClimateLog, Pace, surface_margin};
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{CureState, IN_THE_HOUSE, ProductKind, StayPlace};
use crate::time::Zone;

/// A surface this much above the dew point is dry enough, kelvin (ISO 8502-4 guidance, ISO 12944-7; second-hand).
const DRY_ENOUGH: f64 = 3.0;
/// Highest humidity when the can does not say, per cent (ISO 12944-7, second-hand).
const USUAL_HIGHEST_HUMIDITY: f64 = 85.0;
/// Below this a can that names no lowest temperature is worth a second look, °C. Common practice, no source.
const COLD: f64 = 10.0;

/// Everything worth saying about a cure, the heaviest first.
pub(crate) fn of_cure(
    sheet: &CureAnswer,
    subject: &Subject,
    pace: &Pace,
    climate: &ClimateLog,
    air: &Air,
    zone: &Zone,
) -> Vec<Finding> {
    let mut findings: Vec<Finding> = Vec::new();
    if sheet.state == CureState::Wet {
        findings.extend(moisture(sheet, air));
        findings.extend(caution(sheet.product.product));
        findings.extend(mixing(sheet));
    }
    if !subject.ended && !subject.topmost {
        findings.extend(window(sheet, zone));
    }
    if sheet.left_hours_reference > 0.0 {
        findings.extend(temperature(sheet, pace, climate));
        findings.extend(hold(sheet));
        findings.extend(lamp(sheet));
    }
    findings.extend(sheet_gaps(sheet));
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    findings
}

/// Whether a finding is one to read before the coat goes on: what the air is like, what was mixed, the caution.
pub(crate) fn is_before(finding: &Finding) -> bool {
    use FindingCode::*;
    let air = matches!(finding.code, DewTooClose | HumidityTooHigh | HumidityUnknown | HeatNoFaster | ClimateAssumed);
    let cold = matches!(finding.code, ColdStandsStill | ColdPartOfDay | ColdLimitUnknown);
    air || cold || matches!(finding.code, MixPotLife | ProductCaution)
}

/// Whether a finding speaks against putting the coat on here and now. That it is not known how cold it may be is one of
/// them: unknown is no pass.
pub(super) fn is_against(finding: &Finding) -> bool {
    use FindingCode::*;
    matches!(finding.code, ColdStandsStill | ColdLimitUnknown | HumidityTooHigh | DewTooClose)
}

/// Pot life of what was mixed.
fn mixing(sheet: &CureAnswer) -> Option<Finding> {
    let minutes = sheet.product.pot_life_minutes?;
    let text = format!(
        "Once mixed, use it within {} at {:.0} °C; sooner where it is warmer. Mix no more than that.",
        words::hours(minutes / 60.0),
        sheet.at_celsius
    );
    Some(Finding::new(FindingCode::MixPotLife, Weight::Note, text))
}

/// The caution that stands at a heat lamp, and what the house takes for granted.
fn lamp(sheet: &CureAnswer) -> Option<Finding> {
    let stay = sheet.stay.as_ref()?;
    match (stay.place, stay.celsius) {
        (StayPlace::HeatLamp, _) => {
            let text = "Heat lamp: only when nothing smells of fuel or solvent, never unattended, temperature measured on the \
                        surface and kept below what the can allows.";
            Some(Finding::new(FindingCode::StayHeatLamp, Weight::Care, text))
        }
        (StayPlace::House, None) => {
            let text = format!("In the house {IN_THE_HOUSE:.0} °C are assumed. Measure where it stands and enter it.");
            Some(Finding::new(FindingCode::StayHouseAssumed, Weight::Note, text))
        }
        _ => None,
    }
}

/// Dew point and humidity, while the coat is wet or not on yet.
fn moisture(sheet: &CureAnswer, air: &Air) -> Vec<Finding> {
    let (Some(humidity), Some(dew)) = (air.humidity, sheet.dew_point_celsius) else {
        let text = "Humidity is not known, so moisture under the coat cannot be ruled out. Enter a reading.";
        return vec![Finding::new(FindingCode::HumidityUnknown, Weight::Note, text)];
    };
    let mut findings = Vec::new();
    let margin = surface_margin(air.celsius, humidity, air.surface_celsius);
    if margin < DRY_ENOUGH {
        let text = if margin > 0.0 {
            format!(
                "The surface at {:.1} °C is only {margin:.1} K above the dew point of {dew:.1} °C; {DRY_ENOUGH:.0} K is \
                 asked, else moisture is caught under the coat. Warm the part, or wait for drier air.",
                air.surface_celsius
            )
        } else {
            format!(
                "The surface at {:.1} °C is at or below the dew point of {dew:.1} °C: it is wet, even if it looks dry. Warm \
                 the part, or wait for drier air.",
                air.surface_celsius
            )
        };
        findings.push(Finding::new(FindingCode::DewTooClose, Weight::Care, text));
    }
    let (most, whose) = match sheet.product.highest_humidity {
        Some(most) => (most, "the can allows"),
        None => (USUAL_HIGHEST_HUMIDITY, "is usual for coats"),
    };
    if humidity > most {
        let text = format!(
            "The air has {humidity:.0} % humidity; at most {most:.0} % {whose}. Warm the place, or wait \
                            for drier air."
        );
        findings.push(Finding::new(FindingCode::HumidityTooHigh, Weight::Care, text));
    }
    findings
}

/// The recoat window: open until, or shut.
fn window(sheet: &CureAnswer, zone: &Zone) -> Option<Finding> {
    let milestone = |state| sheet.milestones.iter().find(|milestone| milestone.state == state);
    let shut = milestone(CureState::RecoatShut);
    if shut.is_some_and(|shut| shut.reached) {
        let text = "The recoat window is closed: sand first, then recoat.";
        return Some(Finding::new(FindingCode::WindowClosed, Weight::Care, text));
    }
    if !milestone(CureState::RecoatOpen).is_some_and(|open| open.reached) {
        return None;
    }
    let text = match (shut, shut.and_then(|shut| shut.due_ms)) {
        (Some(_), Some(due_ms)) => {
            format!("May be recoated now, until {}; after that sand first.", zone.spoken(due_ms))
        }
        (Some(_), None) => "May be recoated now; at this temperature the window does not close.".to_owned(),
        (None, _) => return None,
    };
    Some(Finding::new(FindingCode::WindowOpen, Weight::Note, text))
}

/// Too cold, too hot, or not known.
fn temperature(sheet: &CureAnswer, pace: &Pace, climate: &ClimateLog) -> Vec<Finding> {
    let mut findings = Vec::new();
    let now = sheet.celsius_now;
    match sheet.product.lowest_celsius {
        Some(lowest) if sheet.stands_still => {
            let text = format!(
                "It stands still: {now:.0} °C here, and the can asks for {lowest:.0} °C or more. Warm it, or wait for warmth."
            );
            findings.push(Finding::new(FindingCode::ColdStandsStill, Weight::Care, text));
        }
        Some(lowest) if climate.coldest_of_day().is_some_and(|coldest| pace.stands_still(coldest)) => {
            let text = format!(
                "It stands still in the colder hours: a usual day here falls below the {lowest:.0} °C that the can asks for."
            );
            findings.push(Finding::new(FindingCode::ColdPartOfDay, Weight::Note, text));
        }
        None if now < COLD => {
            let text = format!(
                "The can's lowest temperature is not known. At {now:.0} °C many coats do not cure at all; read the can."
            );
            findings.push(Finding::new(FindingCode::ColdLimitUnknown, Weight::Care, text));
        }
        _ => {}
    }
    if now > pace.no_faster_from() {
        let text = format!(
            "Above {:.0} °C the clock is not run any faster: heat can skin a coat over and trap what is below.",
            pace.no_faster_from()
        );
        findings.push(Finding::new(FindingCode::HeatNoFaster, Weight::Note, text));
    }
    if climate.is_guessed() {
        let text = format!(
            "No temperature is known here, {now:.0} °C is assumed. Enter a reading, or what is usual by night and by day."
        );
        findings.push(Finding::new(FindingCode::ClimateAssumed, Weight::Care, text));
    }
    findings
}

/// What has to wait for the full cure.
fn hold(sheet: &CureAnswer) -> Option<Finding> {
    let forbids = sheet.product.forbids.as_ref()?;
    Some(Finding::new(FindingCode::CureHold, Weight::Care, format!("Until it is fully cured: {forbids}")))
}

/// What the sheet does not say.
fn sheet_gaps(sheet: &CureAnswer) -> Vec<Finding> {
    let mut findings = Vec::new();
    if sheet.product.full_cure_hours.is_none() {
        let text = "Full cure is not on this sheet; the clock runs to the last time that is. Read the can before you fill, \
                    fit or ride.";
        findings.push(Finding::new(FindingCode::CureFullUnknown, Weight::Care, text));
    }
    if sheet.product.typical {
        let text = "A typical sheet, not yours: read your can and enter its times.";
        findings.push(Finding::new(FindingCode::ProductTypical, Weight::Note, text));
    }
    findings
}

/// The caution that stands at putting it on.
fn caution(product: ProductKind) -> Option<Finding> {
    let text = match product {
        ProductKind::TankLiner => {
            "Fuel vapour explodes: tank off, drained and aired, no spark or flame near. Liner fumes need open air and gloves."
        }
        ProductKind::Paint | ProductKind::Primer | ProductKind::Clear => {
            "Air the place, no flame. Two-part paint with isocyanate wants an air-fed mask: follow its safety sheet."
        }
        ProductKind::RustConverter | ProductKind::Epoxy => {
            "Gloves and eye protection, air the place; follow its safety sheet."
        }
        ProductKind::Sealant | ProductKind::ThreadLock => return None,
    };
    Some(Finding::new(FindingCode::ProductCaution, Weight::Note, text))
}
