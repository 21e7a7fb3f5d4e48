//! The difference of two derivations: what changes, what crosses a limit, which inspection items it touches.

use std::collections::BTreeSet;

use super::ask::{ItemShift, RippleAnswer, RippleAsk, Shift};
use super::follows::follows;
use super::words::in_words;
use crate::derive::derive;
use crate::error::Refused;
use crate::inspection::{judge_item, packs};
use crate::quantity::{Derived, Finding, FindingCode, Judgement, Quantity};
use crate::record::Bike;
use crate::ripple::message::RippleMessage;
use crate::ripple::proposal::propose;
use crate::ripple::wanted::reason_of;

/// Relative change below which a quantity counts as unchanged: rounding, not a ripple.
const SAME: f64 = 1e-9;

/// What the proposals do to everything else. Nothing is stored.
pub fn ripple_answer(bike: &Bike, ask: &RippleAsk) -> Result<RippleAnswer, Refused> {
    if ask.proposals.is_empty() {
        return Err(Refused::Missing {
            field: "proposals".to_owned(),
            label: RippleMessage::LabelProposal.into(),
            help: RippleMessage::SayProposal.into(),
        });
    }
    let proposed = propose(bike, &ask.proposals)?;
    let (before, after) = (derive(bike, &bike.fitted), derive(bike, &proposed));
    Ok(RippleAnswer {
        proposal: in_words(&ask.proposals),
        shifts: shifts(&before, &after),
        new_findings: new_findings(&before, &after),
        items: item_shifts(bike, &before, &after),
        follows: follows(&bike.fitted, &proposed).into_iter().map(Into::into).collect(),
        changes: ask.proposals.iter().map(reason_of).collect(),
    })
}

/// Quantities that differ: first those that cross a limit, then in the order of the derivation.
fn shifts(before: &Derived, after: &Derived) -> Vec<Shift> {
    let known: BTreeSet<&str> = before.quantities.iter().map(|quantity| quantity.id.as_str()).collect();
    let of_before = before.quantities.iter().filter_map(|old| shift(Some(old), after.quantity(&old.id)));
    let only_after = after.quantities.iter().filter(|new| !known.contains(new.id.as_str()));
    let mut shifts: Vec<Shift> = of_before.chain(only_after.filter_map(|new| shift(None, Some(new)))).collect();
    shifts.sort_by_key(|shift| !shift.crossed);
    shifts
}

fn shift(old: Option<&Quantity>, new: Option<&Quantity>) -> Option<Shift> {
    let quantity = new.or(old)?.clone();
    let (before, after) = (old.map(|quantity| quantity.value), new.map(|quantity| quantity.value));
    let crossed = old.map(|quantity| quantity.judgement) != new.map(|quantity| quantity.judgement)
        && [old, new].into_iter().flatten().any(|quantity| quantity.judgement == Judgement::Outside);
    let same = before.zip(after).is_some_and(|(a, b)| (a - b).abs() <= SAME * a.abs().max(b.abs()).max(1.0));
    if same && !crossed {
        return None;
    }
    let change_percent = before.zip(after).filter(|(a, _)| *a != 0.0).map(|(a, b)| (b / a - 1.0) * 100.0);
    Some(Shift { quantity, before, after, change_percent, crossed })
}

fn new_findings(before: &Derived, after: &Derived) -> Vec<Finding> {
    let known: BTreeSet<FindingCode> = before.findings.iter().map(|finding| finding.code).collect();
    after.findings.iter().filter(|finding| !known.contains(&finding.code)).cloned().collect()
}

/// Items whose verdict the proposal changes, in the bike's own pack where it has one, else in all.
fn item_shifts(bike: &Bike, before: &Derived, after: &Derived) -> Vec<ItemShift> {
    let own = bike.identity.pack.as_deref();
    let packs = packs();
    let wanted = packs.iter().filter(|pack| own.is_none_or(|own| own == pack.id));
    wanted
        .flat_map(|pack| pack.items.iter().map(move |item| (pack, item)))
        .filter_map(|(pack, item)| {
            let old = judge_item(bike, before, &pack.id, item).verdict;
            let new = judge_item(bike, after, &pack.id, item).verdict;
            (old != new).then(|| ItemShift {
                pack: pack.id.clone(),
                item: item.id.clone(),
                title: item.title.clone(),
                before: old,
                after: new,
            })
        })
        .collect()
}
