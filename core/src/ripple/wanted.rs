//! A change that is wanted, as work: what it is called, the ready-made job that makes it, and what it is kept under.

use super::message::RippleChange;
use super::proposal::Proposal;
use crate::message::Message;
use crate::ready_made::end_named;
use crate::record::{Bike, ChangeKind, ConsumerRole, End, JobReason};

/// What a proposal is kept under, where a job makes it.
///
/// ```
/// use layshaft_core::record::{ChangeKind, JobReason};
/// use layshaft_core::ripple::{Proposal, reason_of};
/// let proposal = Proposal::Sprockets { front_teeth: 15, rear_teeth: 42, chain_links: None };
/// assert_eq!(reason_of(&proposal), JobReason::Change { change: ChangeKind::Sprockets, slot: None });
/// ```
pub fn reason_of(proposal: &Proposal) -> JobReason {
    let at = |change, end: &End| JobReason::Change { change, slot: Some(end.wire_name().to_owned()) };
    match proposal {
        Proposal::Sprockets { .. } => JobReason::Change { change: ChangeKind::Sprockets, slot: None },
        Proposal::Consumer { id, .. } => JobReason::Change { change: ChangeKind::Consumer, slot: Some(id.clone()) },
        Proposal::Brake { end, .. } => at(ChangeKind::Brake, end),
        Proposal::Flasher { .. } => JobReason::Change { change: ChangeKind::Flasher, slot: None },
        Proposal::Tyre { end, .. } => at(ChangeKind::Tyre, end),
    }
}

/// What a change is called; none where it says of no end or consumer.
pub fn change_name(bike: &Bike, change: ChangeKind, slot: Option<&str>) -> Option<Message> {
    let named = match change {
        ChangeKind::Sprockets => RippleChange::Sprockets,
        ChangeKind::Flasher => RippleChange::Flasher,
        ChangeKind::Brake => RippleChange::Brake { end: end_named(slot)? },
        ChangeKind::Tyre => RippleChange::Tyre { end: end_named(slot)? },
        ChangeKind::Consumer => {
            let id = slot?;
            let known = bike.fitted.consumers.iter().find(|known| known.id == id);
            RippleChange::Consumer { name: known.map_or(id, |known| &known.consumer.name).to_owned() }
        }
    };
    Some(named.into())
}

/// The ready-made job, by its id, that makes a change; none where a plain one does.
pub fn change_job(bike: &Bike, change: ChangeKind, slot: Option<&str>) -> Option<&'static str> {
    match change {
        ChangeKind::Sprockets => Some("chain-sprockets"),
        ChangeKind::Flasher => Some("indicators"),
        ChangeKind::Brake => None,
        ChangeKind::Tyre => match end_named(slot)? {
            End::Front => Some("front-tyre-tube"),
            End::Rear => Some("rear-tyre-tube"),
        },
        ChangeKind::Consumer => {
            let known = bike.fitted.consumers.iter().find(|known| Some(known.id.as_str()) == slot);
            match known.and_then(|known| known.consumer.role) {
                Some(ConsumerRole::Horn) => Some("horn-switches"),
                Some(ConsumerRole::Ignition) => None,
                _ => Some("lamp-swap"),
            }
        }
    }
}
