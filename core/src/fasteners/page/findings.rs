//! What is worth saying about a thread, its torque and its depth.

use super::ask::{EngagementAdvice, FastenerAsk, TorqueBand};
use crate::fasteners::formulas::{ScrewPlace, ThreadMatch};
use crate::quantity::{Finding, FindingCode, Weight};

/// A length to a tenth of a millimetre, halves up, as the pages write it.
fn tenth(mm: f64) -> String {
    format!("{:.1}", (mm * 10.0).round() / 10.0)
}

/// The findings of the fastener page, in the order in which they are met at the bench.
pub(crate) fn findings(
    ask: &FastenerAsk,
    likely: &[ThreadMatch],
    thread: Option<&ThreadMatch>,
    torque: Option<&TorqueBand>,
    engagement: Option<&EngagementAdvice>,
) -> Vec<Finding> {
    let mut found = Vec::new();
    let mut say = |code: FindingCode, weight, text: String| found.push(Finding::new(code, weight, text));
    match (likely.first(), likely.get(1)) {
        (None, _) => say(
            FindingCode::ThreadNone,
            Weight::Care,
            "None of the threads fits. Measure where the thread is not worn, count ten turns, and never force a nut to find out."
                .to_owned(),
        ),
        (Some(_), Some(_)) => say(
            FindingCode::ThreadSeveral,
            Weight::Care,
            format!(
                "{} fit. Tell them apart by a thread gauge and by a sure nut turned on by hand over its full length.",
                likely.iter().map(|thread| thread.name.as_str()).collect::<Vec<_>>().join(" and ")
            ),
        ),
        _ => {}
    }
    if thread.is_some() && ask.property_class.is_none() {
        say(
            FindingCode::ThreadMissingClass,
            Weight::Note,
            "The property class is not known: read it on the head. Without one count with 4.8, never with more."
                .to_owned(),
        );
    }
    if let (Some(thread), Some(_), None) = (thread, &ask.property_class, torque) {
        say(
            FindingCode::ThreadMissingSeat,
            Weight::Note,
            format!("There is no table of heads for {}: measure the seat under the head and the hole.", thread.name),
        );
    }
    if torque.is_some_and(|band| band.maker.is_none()) {
        say(
            FindingCode::TorqueNotTheMakers,
            Weight::Care,
            "This is what the screw bears, not what the joint wants. The maker's figure always wins, above all on brakes, axles and \
             the engine; in aluminium the tapped thread gives way before the screw."
                .to_owned(),
        );
    }
    if let Some(band) = torque
        && let Some(maker) = &band.maker
        && maker.torque_nm > band.most.torque_nm
    {
        say(
            FindingCode::TorqueMakerAboveBand,
            Weight::Care,
            format!(
                "The maker's {:.1} N m lies above the {:.1} N m that this class bears: is it another screw, or a stronger class?",
                maker.torque_nm, band.most.torque_nm
            ),
        );
    }
    if let Some(advice) = engagement
        && let Some(engaged) = advice.engaged_mm
        && engaged < advice.least_mm
    {
        say(
            FindingCode::ThreadTooShort,
            Weight::Care,
            format!(
                "{} mm engaged in {}; {} to {} mm are asked for. The thread may strip before the torque is reached.",
                tenth(engaged),
                advice.tapped_into.words(),
                tenth(advice.least_mm),
                tenth(advice.most_mm)
            ),
        );
    }
    if let Some(rule) = ask.place.map(ScrewPlace::rule).filter(|rule| !rule.may_replace) {
        say(FindingCode::ScrewNoSubstitute, Weight::Care, format!("No substitute here. {}", rule.text));
    }
    found
}
