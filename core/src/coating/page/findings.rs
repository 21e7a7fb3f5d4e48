//! What is worth saying about a coat: before it goes on, while it cures, and about what was taken for granted.

use super::ask::{Air, CureAnswer, Subject};
use crate::coating::formulas::{ClimateLog, Pace, surface_margin};
use crate::coating::message::CureMessage;
use crate::message::Duration;
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{CureState, IN_THE_HOUSE, ProductKind, StayPlace};
use crate::time::Zone;
use crate::units::Unit;

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
    let text = CureMessage::PotLife { time: Duration { minutes }, at: Unit::Celsius.of(sheet.at_celsius) };
    Some(Finding::new(FindingCode::MixPotLife, Weight::Note, text))
}

/// The caution that stands at a heat lamp, and what the house takes for granted.
fn lamp(sheet: &CureAnswer) -> Option<Finding> {
    let stay = sheet.stay.as_ref()?;
    match (stay.place, stay.celsius) {
        (StayPlace::HeatLamp, _) => Some(Finding::new(FindingCode::StayHeatLamp, Weight::Care, CureMessage::HeatLamp)),
        (StayPlace::House, None) => {
            let text = CureMessage::HouseAssumed { celsius: Unit::Celsius.of(IN_THE_HOUSE) };
            Some(Finding::new(FindingCode::StayHouseAssumed, Weight::Note, text))
        }
        _ => None,
    }
}

/// Dew point and humidity, while the coat is wet or not on yet.
fn moisture(sheet: &CureAnswer, air: &Air) -> Vec<Finding> {
    let (Some(humidity), Some(dew)) = (air.humidity, sheet.dew_point_celsius) else {
        let text = CureMessage::HumidityUnknown;
        return vec![Finding::new(FindingCode::HumidityUnknown, Weight::Note, text)];
    };
    let mut findings = Vec::new();
    let margin = surface_margin(air.celsius, humidity, air.surface_celsius);
    if margin < DRY_ENOUGH {
        let (surface, dew) = (Unit::Celsius.of(air.surface_celsius), Unit::Celsius.of(dew));
        let text = if margin > 0.0 {
            let (margin, asked) = (Unit::Kelvin.of(margin), Unit::Kelvin.of(DRY_ENOUGH));
            CureMessage::DewClose { surface, margin, dew, asked }
        } else {
            CureMessage::DewWet { surface, dew }
        };
        findings.push(Finding::new(FindingCode::DewTooClose, Weight::Care, text));
    }
    let most = sheet.product.highest_humidity.unwrap_or(USUAL_HIGHEST_HUMIDITY);
    if humidity > most {
        let text = CureMessage::HumidityHigh {
            humidity: Unit::RelativeHumidity.of(humidity),
            most: Unit::RelativeHumidity.of(most),
            by_can: sheet.product.highest_humidity.is_some(),
        };
        findings.push(Finding::new(FindingCode::HumidityTooHigh, Weight::Care, text));
    }
    findings
}

/// The recoat window: open until, or shut.
fn window(sheet: &CureAnswer, zone: &Zone) -> Option<Finding> {
    let milestone = |state| sheet.milestones.iter().find(|milestone| milestone.state == state);
    let shut = milestone(CureState::RecoatShut);
    if shut.is_some_and(|shut| shut.reached) {
        let text = CureMessage::WindowClosed;
        return Some(Finding::new(FindingCode::WindowClosed, Weight::Care, text));
    }
    if !milestone(CureState::RecoatOpen).is_some_and(|open| open.reached) {
        return None;
    }
    let text = match (shut, shut.and_then(|shut| shut.due_ms)) {
        (Some(_), Some(due_ms)) => CureMessage::WindowOpen { until: zone.local_time(due_ms) },
        (Some(_), None) => CureMessage::WindowStaysOpen,
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
            let text = CureMessage::Cold { now: Unit::Celsius.of(now), lowest: Unit::Celsius.of(lowest) };
            findings.push(Finding::new(FindingCode::ColdStandsStill, Weight::Care, text));
        }
        Some(lowest) if climate.coldest_of_day().is_some_and(|coldest| pace.stands_still(coldest)) => {
            let text = CureMessage::ColdHours { lowest: Unit::Celsius.of(lowest) };
            findings.push(Finding::new(FindingCode::ColdPartOfDay, Weight::Note, text));
        }
        None if now < COLD => {
            let text = CureMessage::ColdLimitUnknown { now: Unit::Celsius.of(now) };
            findings.push(Finding::new(FindingCode::ColdLimitUnknown, Weight::Care, text));
        }
        _ => {}
    }
    if now > pace.no_faster_from() {
        let text = CureMessage::NoFaster { celsius: Unit::Celsius.of(pace.no_faster_from()) };
        findings.push(Finding::new(FindingCode::HeatNoFaster, Weight::Note, text));
    }
    if climate.is_guessed() {
        let text = CureMessage::ClimateAssumed { now: Unit::Celsius.of(now) };
        findings.push(Finding::new(FindingCode::ClimateAssumed, Weight::Care, text));
    }
    findings
}

/// What has to wait for the full cure.
fn hold(sheet: &CureAnswer) -> Option<Finding> {
    let what = sheet.product.forbids.clone()?;
    Some(Finding::new(FindingCode::CureHold, Weight::Care, CureMessage::Hold { what }))
}

/// What the sheet does not say.
fn sheet_gaps(sheet: &CureAnswer) -> Vec<Finding> {
    let mut findings = Vec::new();
    if sheet.product.full_cure_hours.is_none() {
        let text = CureMessage::FullUnknown;
        findings.push(Finding::new(FindingCode::CureFullUnknown, Weight::Care, text));
    }
    if sheet.product.typical {
        let text = CureMessage::Typical;
        findings.push(Finding::new(FindingCode::ProductTypical, Weight::Note, text));
    }
    findings
}

/// The caution that stands at putting it on.
fn caution(product: ProductKind) -> Option<Finding> {
    let text = match product {
        ProductKind::TankLiner => CureMessage::CautionLiner,
        ProductKind::Paint | ProductKind::Primer | ProductKind::Clear => CureMessage::CautionPaint,
        ProductKind::RustConverter | ProductKind::Epoxy => CureMessage::CautionGloves,
        ProductKind::Sealant | ProductKind::ThreadLock => return None,
    };
    Some(Finding::new(FindingCode::ProductCaution, Weight::Note, text))
}
