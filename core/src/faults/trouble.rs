//! What a check costs: minutes, danger, and the covers that are still on.

use std::collections::BTreeSet;

use super::case::{Check, Cover, TroubleCase};
use crate::record::Evidence;

/// Trouble of a check, minutes: hands-on time, danger, and every cover that is not off yet.
///
/// ```
/// use std::collections::BTreeSet;
/// use layshaft_core::faults::{knowledge_case, trouble_minutes};
/// let case = knowledge_case("turns-but-does-not-start").unwrap();
/// let check = case.check("coil-ohms").unwrap();
/// let open = BTreeSet::from(["tank"]);
/// assert!(trouble_minutes(&case, check, &BTreeSet::new()) > trouble_minutes(&case, check, &open));
/// ```
pub fn trouble_minutes(case: &TroubleCase, check: &Check, off: &BTreeSet<&str>) -> f64 {
    check.minutes + check.danger_minutes + access_minutes(&case.covers, check, off)
}

pub(super) fn access_minutes(covers: &[Cover], check: &Check, off: &BTreeSet<&str>) -> f64 {
    let on = |cover: &&Cover| check.covers.contains(&cover.id) && !off.contains(cover.id.as_str());
    covers.iter().filter(on).map(|cover| cover.minutes).sum()
}

/// The covers that the answered checks have taken off.
pub(super) fn covers_off<'a>(case: &'a TroubleCase, evidence: &[Evidence]) -> BTreeSet<&'a str> {
    let done = |check: &&Check| evidence.iter().any(|answer| answer.was_done() && answer.check() == check.id);
    case.checks.iter().filter(done).flat_map(|check| check.covers.iter().map(String::as_str)).collect()
}
