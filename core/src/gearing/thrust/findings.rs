//! What is worth saying about thrust and top speed.

use super::gears::{GearingMatch, GearingVerdict};
use super::road_load::{FORMULA_TOP_KMH, RollingLaw};
use super::top_speed::TopSpeed;
use crate::gearing::message::ThrustMessage;
use crate::message::{ListStyle, Message};
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{TyreSize, Wheel};
use crate::units::Unit;

/// Findings on a top speed, and on the gearing that gives it.
pub(super) fn on_top(
    top: Option<&TopSpeed>,
    before: Option<&TopSpeed>,
    matched: Option<&GearingMatch>,
    gears: usize,
) -> Vec<Finding> {
    let mut findings = Vec::new();
    let mut say = |code: FindingCode, weight, said: Message| findings.push(Finding::new(code, weight, said));
    let Some(top) = top else {
        say(FindingCode::ThrustNoneHeld, Weight::Care, ThrustMessage::NoneHeld.into());
        return findings;
    };
    let speed = Unit::KilometreHour.of(top.kmh);
    if usize::try_from(top.gear).is_ok_and(|gear| gear < gears) {
        let faster = ThrustMessage::LowerGearFaster { gear: top.gear, speed };
        say(FindingCode::ThrustLowerGearFaster, Weight::Note, faster.into());
    }
    if let Some(matched) = matched {
        let suits = matched.best_final_ratio.map(|ratio| ThrustMessage::WouldSuit { ratio: Unit::None.of(ratio) });
        let with_ratio = |said: ThrustMessage| {
            let said = std::iter::once(said).chain(suits).map(Message::from);
            Message::joined(ListStyle::Sentences, said.collect())
        };
        let peak = Unit::Rpm.of(matched.peak_power_rpm);
        match (&matched.verdict, matched.top_gear_rpm.map(|rpm| Unit::Rpm.of(rpm))) {
            (GearingVerdict::TooTall, Some(reached)) => {
                let tall = with_ratio(ThrustMessage::TooTall { reached, peak });
                say(FindingCode::ThrustTooTall, Weight::Note, tall);
            }
            (GearingVerdict::TooTall, None) => {
                say(FindingCode::ThrustTooTall, Weight::Note, with_ratio(ThrustMessage::TopHoldsNone));
            }
            (GearingVerdict::TooShort, Some(reached)) => {
                let short = with_ratio(ThrustMessage::TooShort { reached, peak });
                say(FindingCode::ThrustTooShort, Weight::Note, short);
            }
            _ => {}
        }
    }
    if let Some(before) = before.filter(|before| (before.kmh - top.kmh).abs() > 0.5) {
        let fitted = Unit::KilometreHour.of(before.kmh);
        let changes = ThrustMessage::TopChanges { speed, gear: top.gear, fitted };
        say(FindingCode::ThrustTopChanges, Weight::Note, changes.into());
    }
    findings
}

/// The tyre's speed symbol against the top speed.
pub(super) fn on_tyre(wheel: &Wheel, top: Option<&TopSpeed>) -> Option<Finding> {
    let (limit, top) = (tyre_limit(wheel)?, top?);
    (top.kmh > limit).then(|| {
        let (limit, speed) = (Unit::KilometreHour.of(limit), Unit::KilometreHour.of(top.kmh));
        Finding::new(FindingCode::ThrustBeyondTyre, Weight::Care, ThrustMessage::BeyondTyre { limit, speed })
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
        let above = Unit::KilometreHour.of(FORMULA_TOP_KMH);
        Finding::new(FindingCode::ThrustRollingHeld, Weight::Note, ThrustMessage::RollingHeld { above })
    })
}
