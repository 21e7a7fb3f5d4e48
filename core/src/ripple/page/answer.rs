//! The difference of two derivations: what changes, what crosses a limit, which inspection items it touches.

use std::collections::BTreeSet;

use super::ask::{ItemShift, RippleAnswer, RippleAsk, Shift};
use crate::derive::derive;
use crate::error::Refused;
use crate::inspection::{judge_item, packs};
use crate::quantity::{Derived, Finding, FindingCode, Judgement, Quantity};
use crate::record::{Bike, Brake, End, FlasherKind, Indication, PilotFitting, Spec, Wheel};
use crate::ripple::proposal::{Proposal, propose};

/// Relative change below which a quantity counts as unchanged: rounding, not a ripple.
const SAME: f64 = 1e-9;

/// What the proposals do to everything else. Nothing is stored.
pub fn ripple_answer(bike: &Bike, ask: &RippleAsk) -> Result<RippleAnswer, Refused> {
    if ask.proposals.is_empty() {
        return Err(Refused::Missing {
            field: "proposals".to_owned(),
            label: "A proposal".into(),
            help: "say what would be fitted".into(),
        });
    }
    let proposed = propose(bike, &ask.proposals)?;
    let (before, after) = (derive(bike, &bike.fitted), derive(bike, &proposed));
    Ok(RippleAnswer {
        proposal: in_words(&ask.proposals).into(),
        shifts: shifts(&before, &after),
        new_findings: new_findings(&before, &after),
        items: item_shifts(bike, &before, &after),
        follows: follows(&bike.fitted, &proposed).into_iter().map(Into::into).collect(),
    })
}

fn in_words(proposals: &[Proposal]) -> String {
    let words: Vec<String> = proposals
        .iter()
        .map(|proposal| match proposal {
            Proposal::Sprockets { front_teeth, rear_teeth, .. } => format!("sprockets {front_teeth}/{rear_teeth}"),
            Proposal::Consumer { consumer, .. } => format!("{} of {} W", consumer.name, consumer.watts),
            Proposal::Brake { end: End::Front, brake } => format!("front brake with {}", brake_in_words(brake)),
            Proposal::Brake { end: End::Rear, brake } => format!("rear brake with {}", brake_in_words(brake)),
            Proposal::Flasher { indication } => indication_in_words(indication),
            Proposal::Tyre { end: End::Front, wheel } => format!("front wheel with {}", wheel_in_words(wheel)),
            Proposal::Tyre { end: End::Rear, wheel } => format!("rear wheel with {}", wheel_in_words(wheel)),
        })
        .collect();
    words.join(", ")
}

fn brake_in_words(brake: &Brake) -> String {
    let caliper = brake.piston_mm.map(|bore| format!("{} x {bore} mm on one side", brake.pistons.unwrap_or(1)));
    let master = brake.master_mm.map(|bore| format!("a {bore} mm master cylinder"));
    let words: Vec<String> = [caliper, master].into_iter().flatten().collect();
    if words.is_empty() { "other parts".to_owned() } else { words.join(" and ") }
}

fn wheel_in_words(wheel: &Wheel) -> String {
    let rim = wheel.rim_width_inch.map(|width| format!("a rim of {width} in"));
    let tube = match (wheel.tube, wheel.tube_sizes.is_empty()) {
        (Some(false), _) => Some("no tube".to_owned()),
        (_, false) => Some(format!("a tube marked {}", wheel.tube_sizes.join(", "))),
        (_, true) => None,
    };
    let words: Vec<String> = [wheel.tyre.clone(), tube, rim].into_iter().flatten().collect();
    if words.is_empty() { "other figures".to_owned() } else { words.join(" and ") }
}

/// Parts and jobs that follow from another tyre or tube.
fn wheel_follows(name: &str, was: &Wheel, is: &Wheel) -> Vec<String> {
    let mut follows = Vec::new();
    if was.tyre != is.tyre {
        follows.extend(is.tyre.as_ref().map(|tyre| format!("Part: {name} tyre {tyre}; on spokes a new rim tape.")));
        follows.push(format!(
            "Job: fit the {name} tyre, arrow forward, bead even all round, wheel balanced. Never beyond the pressure on the sidewall; \
             a tyre fitter where in doubt."
        ));
    }
    if (was.tube, &was.tube_sizes) != (is.tube, &is.tube_sizes) && is.tube == Some(true) {
        let sizes = if is.tube_sizes.is_empty() { "the tyre's size".to_owned() } else { is.tube_sizes.join(", ") };
        follows.push(format!("Part: {name} tube marked {sizes}."));
    }
    follows
}

fn indication_in_words(indication: &Indication) -> String {
    let flasher = indication.flasher.map(|kind| match kind {
        FlasherKind::Thermal => "a thermal flasher".to_owned(),
        FlasherKind::ElectronicTwo => "an electronic flasher with two terminals".to_owned(),
        FlasherKind::ElectronicThree => "an electronic flasher with three terminals".to_owned(),
    });
    let pilot = indication.pilot.map(|pilot| match pilot {
        PilotFitting::BetweenSides => "one pilot between the sides".to_owned(),
        PilotFitting::OneWithDiodes => "the pilot through two diodes".to_owned(),
        PilotFitting::OneEachSide => "a pilot on each side".to_owned(),
    });
    let resistors = indication.resistor_ohms.map(|ohms| format!("load resistors of {ohms} Ω"));
    let words: Vec<String> = [flasher, pilot, resistors].into_iter().flatten().collect();
    if words.is_empty() { "the indicators as they are".to_owned() } else { words.join(" and ") }
}

/// Parts and jobs that follow from another flasher, pilot or resistor.
fn indication_follows(was: &Indication, is: &Indication) -> Vec<String> {
    let mut follows = Vec::new();
    if was.flasher != is.flasher && is.flasher == Some(FlasherKind::ElectronicThree) {
        follows.push("Part: electronic flasher with three terminals.".to_owned());
        follows.push("Job: earth wire to the flasher's third terminal, battery off.".to_owned());
    } else if was.flasher != is.flasher {
        follows.push("Part: flasher.".to_owned());
    }
    if was.pilot != is.pilot && is.pilot == Some(PilotFitting::OneWithDiodes) {
        follows.push("Part: two diodes of 1 A.".to_owned());
        follows.push(
            "Job: feed the pilot through the diodes and earth it, stripes towards the pilot, battery off.".to_owned(),
        );
    }
    if (was.resistor_ohms, was.resistors_per_side) != (is.resistor_ohms, is.resistors_per_side) {
        follows.extend(is.resistor_ohms.map(|ohms| {
            format!(
                "Part: {} load resistors of {ohms} Ω, screwed to bare metal: they get hot.",
                2 * is.resistors_per_side.unwrap_or(1)
            )
        }));
    }
    follows
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

/// Parts and jobs that follow from the difference of two specs.
fn follows(old: &Spec, new: &Spec) -> Vec<String> {
    let mut follows = Vec::new();
    let (was, is) = (&old.drive, &new.drive);
    if was.front_teeth != is.front_teeth {
        follows.extend(
            is.front_teeth.map(|teeth| format!("Part: gearbox sprocket with {teeth} teeth, with its lock washer.")),
        );
    }
    if was.rear_teeth != is.rear_teeth {
        follows.extend(is.rear_teeth.map(|teeth| format!("Part: wheel sprocket with {teeth} teeth.")));
    }
    if was.chain_links != is.chain_links {
        follows
            .extend(is.chain_links.map(|links| format!("Part: chain with {links} links, or shorten one to {links}.")));
    }
    if was.centre_distance_mm != is.centre_distance_mm && is.centre_distance_mm.is_some() {
        follows.push(
            "Job: set chain slack and wheel alignment; check the brake rod and the torque arm afterwards.".to_owned(),
        );
    }
    for (name, was, is) in [("front", &old.front_brake, &new.front_brake), ("rear", &old.rear_brake, &new.rear_brake)] {
        if was != is {
            follows.push(format!(
                "Job: fit and bleed the {name} brake, new sealing washers. Brake work: the maker's manual, and a licensed \
                 mechanic where in doubt."
            ));
        }
    }
    for (name, was, is) in [("front", &old.front_wheel, &new.front_wheel), ("rear", &old.rear_wheel, &new.rear_wheel)] {
        follows.extend(wheel_follows(name, was, is));
    }
    follows.extend(indication_follows(&old.indication, &new.indication));
    for slot in &new.consumers {
        if old.consumers.iter().find(|known| known.id == slot.id).map(|known| &known.consumer) != Some(&slot.consumer) {
            follows.push(format!("Part: {}.", slot.consumer.name));
        }
    }
    follows
}
