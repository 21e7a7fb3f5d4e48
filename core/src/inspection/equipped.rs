//! What a machine does not have, as far as it is known: the items on it answer themselves, in every pack.

use super::message::InspectionMessage;
use super::pack::Item;
use crate::record::{Bike, BrakeKind, ConsumerRole, Equipment, Strokes};

/// Why the item cannot be asked of this machine. Who knows better answers it all the same.
pub(super) fn not_there(bike: &Bike, item: &Item) -> Option<InspectionMessage> {
    let equipment = item.only_with?;
    let told = by_the_bike(bike, equipment);
    told.or_else(|| bike.identity.without.contains(&equipment).then_some(InspectionMessage::NotFitted { equipment }))
}

/// What the records of the bike tell of it.
fn by_the_bike(bike: &Bike, equipment: Equipment) -> Option<InspectionMessage> {
    let brakes = [&bike.fitted.front_brake, &bike.fitted.rear_brake];
    let both = |kind: BrakeKind| brakes.iter().all(|brake| brake.brake == Some(kind));
    let (missing, why) = match equipment {
        Equipment::HydraulicBrake => (both(BrakeKind::Drum), InspectionMessage::NoHydraulicBrake),
        Equipment::AntiLock => (both(BrakeKind::Drum), InspectionMessage::NoAntiLock),
        Equipment::MechanicalBrake => (both(BrakeKind::Disc), InspectionMessage::NoMechanicalBrake),
        Equipment::Battery => (!bike.fitted.supply.kind().has_battery(), InspectionMessage::NoBattery),
        Equipment::FourStroke => (bike.identity.strokes == Some(Strokes::Two), InspectionMessage::TwoStroke),
        Equipment::Indicators => (no_indicators(bike), InspectionMessage::NoIndicators),
        Equipment::Speedometer | Equipment::Mirrors | Equipment::SideStand | Equipment::PassengerSeat => return None,
    };
    missing.then_some(why)
}

/// Whether the lamps are entered, headlamp and tail lamp at least, and none of them is an indicator.
fn no_indicators(bike: &Bike) -> bool {
    use ConsumerRole::{DippedBeam, Headlamp, Tail};
    let has = |such: fn(ConsumerRole) -> bool| bike.fitted.consumer_as(such).is_some();
    has(|role| matches!(role, Headlamp | DippedBeam)) && has(|role| role == Tail) && !has(ConsumerRole::is_indicator)
}
