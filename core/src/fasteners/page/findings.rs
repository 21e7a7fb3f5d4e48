//! What is worth saying about a thread, its torque and its depth.

use super::ask::{EngagementAdvice, FastenerAsk, TorqueBand};
use crate::fasteners::formulas::{ScrewPlace, ThreadMatch};
use crate::fasteners::message::{ScrewMessage, ThreadMessage};
use crate::message::{List, ListStyle, Message};
use crate::quantity::{Finding, FindingCode, Weight};
use crate::units::Unit;

/// The findings of the fastener page, in the order in which they are met at the bench.
pub(crate) fn findings(
    ask: &FastenerAsk,
    likely: &[ThreadMatch],
    thread: Option<&ThreadMatch>,
    torque: Option<&TorqueBand>,
    engagement: Option<&EngagementAdvice>,
) -> Vec<Finding> {
    let mut found = Vec::new();
    let mut say = |code: FindingCode, weight, text: Message| found.push(Finding::new(code, weight, text));
    match (likely.first(), likely.get(1)) {
        (None, _) => say(FindingCode::ThreadNone, Weight::Care, ThreadMessage::None.into()),
        (Some(_), Some(_)) => {
            let names = likely.iter().map(|thread| Message::as_entered(&thread.name)).collect();
            let text = ThreadMessage::Several { threads: List(ListStyle::And, names) };
            say(FindingCode::ThreadSeveral, Weight::Care, text.into());
        }
        _ => {}
    }
    if thread.is_some() && ask.property_class.is_none() {
        say(FindingCode::ThreadMissingClass, Weight::Note, ThreadMessage::MissingClass.into());
    }
    if let (Some(thread), Some(_), None) = (thread, &ask.property_class, torque) {
        let text = ThreadMessage::MissingSeat { thread: thread.name.clone() };
        say(FindingCode::ThreadMissingSeat, Weight::Note, text.into());
    }
    if torque.is_some_and(|band| band.maker.is_none()) {
        say(FindingCode::TorqueNotTheMakers, Weight::Care, ScrewMessage::NotTheMakers.into());
    }
    if let Some(band) = torque
        && let Some(maker) = &band.maker
        && maker.torque_nm > band.most.torque_nm
    {
        let (maker, most) = (Unit::NewtonMetre.of(maker.torque_nm), Unit::NewtonMetre.of(band.most.torque_nm));
        say(FindingCode::TorqueMakerAboveBand, Weight::Care, ScrewMessage::MakerAboveBand { maker, most }.into());
    }
    if let Some(advice) = engagement
        && let Some(engaged) = advice.engaged_mm
        && engaged < advice.least_mm
    {
        let text = ScrewMessage::TooShort {
            engaged: Unit::Millimetre.of(engaged),
            into: advice.tapped_into.words(),
            least: Unit::Millimetre.of(advice.least_mm),
            most: Unit::Millimetre.of(advice.most_mm),
        };
        say(FindingCode::ThreadTooShort, Weight::Care, text.into());
    }
    if let Some(rule) = ask.place.map(ScrewPlace::rule).filter(|rule| !rule.may_replace) {
        say(FindingCode::ScrewNoSubstitute, Weight::Care, ScrewMessage::NoSubstitute { rule: rule.text }.into());
    }
    found
}
