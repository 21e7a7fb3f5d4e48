//! Parts and jobs that follow from the difference of two specs.

use super::words::sizes;
use crate::record::{Drive, End, FlasherKind, Indication, PilotFitting, Spec, Wheel};
use crate::ripple::message::RippleFollows;
use crate::units::Unit;

/// Every part and job, in the order in which a bike is gone over: drive, brakes, wheels, electrics.
pub(super) fn follows(old: &Spec, new: &Spec) -> Vec<RippleFollows> {
    let mut follows = on_drive(&old.drive, &new.drive);
    for (end, was, is) in
        [(End::Front, &old.front_brake, &new.front_brake), (End::Rear, &old.rear_brake, &new.rear_brake)]
    {
        if was != is {
            follows.push(RippleFollows::FitBrake { end });
        }
    }
    follows.extend(on_wheel(End::Front, &old.front_wheel, &new.front_wheel));
    follows.extend(on_wheel(End::Rear, &old.rear_wheel, &new.rear_wheel));
    follows.extend(on_indication(&old.indication, &new.indication));
    for slot in &new.consumers {
        if old.consumers.iter().find(|known| known.id == slot.id).map(|known| &known.consumer) != Some(&slot.consumer) {
            follows.push(RippleFollows::Consumer { name: slot.consumer.name.clone() });
        }
    }
    follows
}

fn on_drive(was: &Drive, is: &Drive) -> Vec<RippleFollows> {
    let mut follows = Vec::new();
    if was.front_teeth != is.front_teeth {
        follows.extend(is.front_teeth.map(|teeth| RippleFollows::FrontSprocket { teeth }));
    }
    if was.rear_teeth != is.rear_teeth {
        follows.extend(is.rear_teeth.map(|teeth| RippleFollows::RearSprocket { teeth }));
    }
    if was.chain_links != is.chain_links {
        follows.extend(is.chain_links.map(|links| RippleFollows::Chain { links }));
    }
    if was.centre_distance_mm != is.centre_distance_mm && is.centre_distance_mm.is_some() {
        follows.push(RippleFollows::SetSlack);
    }
    follows
}

fn on_wheel(end: End, was: &Wheel, is: &Wheel) -> Vec<RippleFollows> {
    let mut follows = Vec::new();
    if was.tyre != is.tyre {
        follows.extend(is.tyre.as_ref().map(|tyre| RippleFollows::Tyre { end, tyre: tyre.clone() }));
        follows.push(RippleFollows::FitTyre { end });
    }
    if (was.tube, &was.tube_sizes) != (is.tube, &is.tube_sizes) && is.tube == Some(true) {
        follows.push(if is.tube_sizes.is_empty() {
            RippleFollows::TubeOfTyre { end }
        } else {
            RippleFollows::Tube { end, sizes: sizes(is) }
        });
    }
    follows
}

fn on_indication(was: &Indication, is: &Indication) -> Vec<RippleFollows> {
    let mut follows = Vec::new();
    if was.flasher != is.flasher && is.flasher == Some(FlasherKind::ElectronicThree) {
        follows.extend([RippleFollows::FlasherThree, RippleFollows::EarthFlasher]);
    } else if was.flasher != is.flasher {
        follows.push(RippleFollows::Flasher);
    }
    if was.pilot != is.pilot && is.pilot == Some(PilotFitting::OneWithDiodes) {
        follows.extend([RippleFollows::Diodes, RippleFollows::FeedPilot]);
    }
    if (was.resistor_ohms, was.resistors_per_side) != (is.resistor_ohms, is.resistors_per_side) {
        follows.extend(is.resistor_ohms.map(|ohms| RippleFollows::Resistors {
            count: 2 * is.resistors_per_side.unwrap_or(1),
            resistance: Unit::Ohm.of(ohms),
        }));
    }
    follows
}
