//! What is worth saying about thrust and top speed.

use super::gears::{GearingMatch, GearingVerdict};
use super::road_load::{FORMULA_TOP_KMH, RollingLaw};
use super::top_speed::TopSpeed;
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{TyreSize, Wheel};

/// Findings on a top speed, and on the gearing that gives it.
pub(super) fn on_top(
    top: Option<&TopSpeed>,
    before: Option<&TopSpeed>,
    matched: Option<&GearingMatch>,
    gears: usize,
) -> Vec<Finding> {
    let mut findings = Vec::new();
    let mut say = |code: FindingCode, weight, text: String| findings.push(Finding::new(code, weight, text));
    let Some(top) = top else {
        say(
            FindingCode::ThrustNoneHeld,
            Weight::Care,
            "With this load no gear holds any speed: look at grade, wind and mass.".to_owned(),
        );
        return findings;
    };
    if usize::try_from(top.gear).is_ok_and(|gear| gear < gears) {
        say(
            FindingCode::ThrustLowerGearFaster,
            Weight::Note,
            format!(
                "It is fastest in gear {}, at {:.0} km/h: the gears above are too tall for this load.",
                top.gear, top.kmh
            ),
        );
    }
    if let Some(matched) = matched {
        let ratio = matched.best_final_ratio.map(|ratio| format!(" A final drive ratio of {ratio:.2} would suit."));
        let ratio = ratio.unwrap_or_default();
        match (&matched.verdict, matched.top_gear_rpm) {
            (GearingVerdict::TooTall, Some(rpm)) => say(
                FindingCode::ThrustTooTall,
                Weight::Note,
                format!(
                    "Top gear ends at {rpm:.0} rpm, short of peak power at {:.0} rpm: over-geared for speed, calm for touring.{ratio}",
                    matched.peak_power_rpm
                ),
            ),
            (GearingVerdict::TooTall, None) => {
                say(
                    FindingCode::ThrustTooTall,
                    Weight::Note,
                    format!("Top gear holds no speed with this load.{ratio}"),
                );
            }
            (GearingVerdict::TooShort, Some(rpm)) => say(
                FindingCode::ThrustTooShort,
                Weight::Note,
                format!(
                    "Top gear ends at {rpm:.0} rpm, past peak power at {:.0} rpm: under-geared; the engine turns itself out.{ratio}",
                    matched.peak_power_rpm
                ),
            ),
            _ => {}
        }
    }
    if let Some(before) = before.filter(|before| (before.kmh - top.kmh).abs() > 0.5) {
        say(
            FindingCode::ThrustTopChanges,
            Weight::Note,
            format!("Top speed {:.0} km/h in gear {}; with what is fitted {:.0} km/h.", top.kmh, top.gear, before.kmh),
        );
    }
    findings
}

/// The tyre's speed symbol against the top speed.
pub(super) fn on_tyre(wheel: &Wheel, top: Option<&TopSpeed>) -> Option<Finding> {
    let (limit, top) = (tyre_limit(wheel)?, top?);
    (top.kmh > limit).then(|| {
        Finding::new(
            FindingCode::ThrustBeyondTyre,
            Weight::Care,
            format!("The rear tyre is rated to {limit:.0} km/h; this gearing can reach {:.0} km/h.", top.kmh),
        )
    })
}

/// Speed that the symbol on a tyre allows, km/h, where it is on the bike.
pub(super) fn tyre_limit(wheel: &Wheel) -> Option<f64> {
    let size = TyreSize::read(wheel.tyre.as_deref()?).ok()?;
    Some(f64::from(size.service?.speed.kmh()?))
}

/// The rolling formula is held at the end of its first branch.
pub(super) fn on_rolling(rolling: &RollingLaw, top: Option<&TopSpeed>) -> Option<Finding> {
    let beyond = matches!(rolling, RollingLaw::ByPressure { .. }) && top.is_some_and(|top| top.kmh > FORMULA_TOP_KMH);
    beyond.then(|| {
        Finding::new(
            FindingCode::ThrustRollingHeld,
            Weight::Note,
            format!("Above {FORMULA_TOP_KMH:.0} km/h the rolling coefficient is held as it is there; real tyres roll harder."),
        )
    })
}
