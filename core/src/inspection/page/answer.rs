//! The walk-through and its summary.

use layshaft_wire::wire;

use crate::derive::derive;
use crate::error::Refused;
use crate::inspection::judge::{ItemVerdict, judge_item};
use crate::inspection::message::InspectionMessage;
use crate::inspection::pack::{Pack, PackCard};
use crate::inspection::verdict::Verdict;
use crate::inspection::written::built_in;
use crate::message::Message;
use crate::quantity::Weight;
use crate::record::Bike;

/// Which pack.
#[wire(lenient)]
pub struct InspectionAsk {
    /// Id of the pack; left out: the bike's own, else the first.
    pub pack: Option<String>,
}

/// The fold of all items.
#[wire]
pub struct Readiness {
    /// Pass only when no item fails and none is unknown.
    pub verdict: Verdict,
    /// Items that pass.
    pub passes: u32,
    /// Items that fail.
    pub fails: u32,
    /// Items nobody knows about.
    pub unknowns: u32,
    /// Items that are not asked of this machine.
    pub does_not_apply: u32,
    /// What forbids riding, one sentence each.
    pub stoppers: Vec<Message>,
    /// The verdict in one sentence.
    pub sentence: Message,
}

/// The inspection page.
#[wire]
pub struct InspectionAnswer {
    /// The pack.
    pub pack: PackCard,
    /// Its caution.
    pub caution: Message,
    /// All packs.
    pub packs: Vec<PackCard>,
    /// Year of first use that switched items; none when unknown (then all are asked).
    pub first_used: Option<u32>,
    /// Items with verdicts, in the order of the walk-through.
    pub items: Vec<ItemVerdict>,
    /// The fold.
    pub readiness: Readiness,
}

/// The walk-through of a pack, judged for the bike as it is being built.
pub fn inspection_answer(bike: &Bike, ask: &InspectionAsk) -> Result<InspectionAnswer, Refused> {
    let (pack, caution) = chosen(bike, ask)?;
    let derived = derive(bike, &bike.fitted);
    let items: Vec<ItemVerdict> = pack.items.iter().map(|item| judge_item(bike, &derived, &pack.id, item)).collect();
    let found = derived.findings.iter().filter(|finding| finding.weight == Weight::Stopper);
    let readiness = fold(&items, found.map(|finding| finding.text.clone()));
    Ok(InspectionAnswer {
        pack: pack.card(),
        caution,
        packs: built_in().iter().map(Pack::card).collect(),
        first_used: bike.identity.first_used,
        items,
        readiness,
    })
}

/// The pack asked for, with its caution. A bike may name a pack that this device does not have: then the first is
/// shown and the caution says so, because a page that stays empty helps nobody.
fn chosen(bike: &Bike, ask: &InspectionAsk) -> Result<(&'static Pack, Message), Refused> {
    let own_caution = |pack: &Pack| Message::as_entered(&pack.caution);
    let by_id = |id: &str| built_in().iter().find(|pack| pack.id == id);
    let unknown = |id: &str| Refused::Unknown { what: InspectionMessage::Pack.into(), id: id.to_owned() };
    if let Some(id) = &ask.pack {
        return by_id(id).map(|pack| (pack, own_caution(pack))).ok_or_else(|| unknown(id));
    }
    let own = bike.identity.pack.as_deref();
    if let Some(pack) = own.and_then(by_id) {
        return Ok((pack, own_caution(pack)));
    }
    let first = built_in().first().ok_or_else(|| unknown(own.unwrap_or("eu")))?;
    let caution = match own {
        Some(id) => InspectionMessage::PackNotHere {
            pack: id.to_owned(),
            place: first.place.clone(),
            caution: first.caution.clone(),
        }
        .into(),
        None => own_caution(first),
    };
    Ok((first, caution))
}

/// Folds verdicts: fail if any fails, else unknown if any is unknown, else pass. The order does not matter. Where
/// nothing passes and nothing fails, nothing is known.
pub fn readiness(items: &[ItemVerdict]) -> Readiness {
    fold(items, std::iter::empty())
}

/// The fold, with stoppers that follow from the bike and belong to no item. One of them is enough to fail.
fn fold(items: &[ItemVerdict], found: impl Iterator<Item = Message>) -> Readiness {
    let count = |verdict| {
        let counted = items.iter().filter(|item| item.verdict == verdict).count();
        u32::try_from(counted).unwrap_or(u32::MAX)
    };
    let (passes, fails, unknowns) = (count(Verdict::Pass), count(Verdict::Fail), count(Verdict::Unknown));
    let failing = items.iter().filter(|item| item.stopper && item.verdict == Verdict::Fail);
    let stoppers: Vec<Message> = failing.map(|item| not_met(item).into()).chain(found).collect();
    let verdict = if fails > 0 || !stoppers.is_empty() {
        Verdict::Fail
    } else if unknowns > 0 || passes == 0 {
        Verdict::Unknown
    } else {
        Verdict::Pass
    };
    let sentence = match verdict {
        Verdict::Pass => InspectionMessage::Ready { fails, unknowns, passes },
        Verdict::Fail if fails == 0 => InspectionMessage::NotReadyStopper { fails, unknowns, passes },
        _ => InspectionMessage::NotReady { fails, unknowns, passes },
    };
    Readiness {
        verdict,
        passes,
        fails,
        unknowns,
        does_not_apply: count(Verdict::DoesNotApply),
        stoppers,
        sentence: sentence.into(),
    }
}

fn not_met(item: &ItemVerdict) -> InspectionMessage {
    InspectionMessage::NotMet { item: item.item.title.clone(), reason: item.reason.clone() }
}

#[cfg(test)]
#[path = "answer_tests.rs"]
mod tests;
