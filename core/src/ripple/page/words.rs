//! The proposals in words, as they stand at the head of the page.

use crate::message::{List, ListStyle, Message};
use crate::record::{Brake, FlasherKind, Indication, PilotFitting, Wheel};
use crate::ripple::message::RippleMessage;
use crate::ripple::proposal::Proposal;
use crate::units::Unit;

/// All proposals, one after the other.
pub(super) fn in_words(proposals: &[Proposal]) -> Message {
    let words = proposals.iter().map(|proposal| match proposal {
        Proposal::Sprockets { front_teeth, rear_teeth, .. } => {
            RippleMessage::Sprockets { front: *front_teeth, rear: *rear_teeth }.into()
        }
        Proposal::Consumer { consumer, .. } => {
            RippleMessage::Consumer { name: consumer.name.clone(), power: Unit::Watt.of(consumer.watts) }.into()
        }
        Proposal::Brake { end, brake } => RippleMessage::Brake { end: *end, parts: in_brake(brake) }.into(),
        Proposal::Flasher { indication } => in_indication(indication),
        Proposal::Tyre { end, wheel } => RippleMessage::Wheel { end: *end, parts: on_wheel(wheel) }.into(),
    });
    Message::joined(ListStyle::Comma, words.collect())
}

/// The parts that are known; where none is, what is said instead.
fn parts<const N: usize>(known: [Option<Message>; N], none: RippleMessage) -> List {
    let known: Vec<Message> = known.into_iter().flatten().collect();
    List(ListStyle::And, if known.is_empty() { vec![none.into()] } else { known })
}

fn in_brake(brake: &Brake) -> List {
    let caliper = brake.piston_mm.map(|bore| {
        let pistons = brake.pistons.unwrap_or(1);
        RippleMessage::Pistons { pistons, bore: Unit::Millimetre.of(bore) }.into()
    });
    let master = brake.master_mm.map(|bore| RippleMessage::MasterCylinder { bore: Unit::Millimetre.of(bore) }.into());
    parts([caliper, master], RippleMessage::OtherParts)
}

fn on_wheel(wheel: &Wheel) -> List {
    let tyre = wheel.tyre.as_ref().map(Message::as_entered);
    let rim = wheel.rim_width_inch.map(|width| RippleMessage::Rim { width: Unit::Inch.of(width) }.into());
    let tube = match (wheel.tube, wheel.tube_sizes.is_empty()) {
        (Some(false), _) => Some(RippleMessage::NoTube.into()),
        (_, false) => Some(RippleMessage::Tube { sizes: sizes(wheel) }.into()),
        (_, true) => None,
    };
    parts([tyre, tube, rim], RippleMessage::OtherFigures)
}

/// The sizes on a tube, as they are stamped.
pub(super) fn sizes(wheel: &Wheel) -> List {
    List(ListStyle::Comma, wheel.tube_sizes.iter().map(Message::as_entered).collect())
}

fn in_indication(indication: &Indication) -> Message {
    let flasher = indication.flasher.map(|kind| match kind {
        FlasherKind::Thermal => RippleMessage::FlasherThermal.into(),
        FlasherKind::ElectronicTwo => RippleMessage::FlasherTwo.into(),
        FlasherKind::ElectronicThree => RippleMessage::FlasherThree.into(),
    });
    let pilot = indication.pilot.map(|pilot| match pilot {
        PilotFitting::BetweenSides => RippleMessage::PilotBetween.into(),
        PilotFitting::OneWithDiodes => RippleMessage::PilotDiodes.into(),
        PilotFitting::OneEachSide => RippleMessage::PilotEach.into(),
    });
    let resistors =
        indication.resistor_ohms.map(|ohms| RippleMessage::Resistors { resistance: Unit::Ohm.of(ohms) }.into());
    let List(joint, words) = parts([flasher, pilot, resistors], RippleMessage::IndicatorsAsTheyAre);
    Message::joined(joint, words)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::End;

    #[test]
    fn a_proposal_names_the_parts_that_are_known() {
        let brake = Brake { master_mm: Some(14.0), pistons: Some(2), piston_mm: Some(27.0), ..Brake::default() };
        let wheel = Wheel {
            tyre: Some("3.00-18".to_owned()),
            tube_sizes: vec!["2.75-18".to_owned(), "3.00-18".to_owned()],
            rim_width_inch: Some(1.85),
            ..Wheel::default()
        };
        let said = in_words(&[
            Proposal::Sprockets { front_teeth: 16, rear_teeth: 38, chain_links: None },
            Proposal::Brake { end: End::Front, brake },
            Proposal::Tyre { end: End::Rear, wheel },
            Proposal::Flasher { indication: Indication::default() },
        ]);
        assert_eq!(
            said,
            "sprockets 16/38, front brake with 2 × 27 mm on one side and a 14 mm master cylinder, rear wheel with 3.00-18, a tube \
             marked 2.75-18, 3.00-18 and a rim of 1.85 in, the indicators as they are"
        );
    }

    #[test]
    fn a_proposal_without_a_figure_says_that_there_are_others() {
        let said = in_words(&[Proposal::Brake { end: End::Rear, brake: Brake::default() }]);
        assert_eq!(said, "rear brake with other parts");
    }
}
