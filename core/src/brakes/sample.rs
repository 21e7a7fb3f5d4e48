//! The invented demo bike as far as the tests of this area need it. Everything about it is invented.

use crate::record::{Bike, Brake, BrakeKind, Spec, Wheel};

/// Front disc 220 mm, one piston of 38.1 mm in a sliding caliper, master cylinder 12.7 mm.
pub fn demo_disc() -> Brake {
    Brake {
        brake: Some(BrakeKind::Disc),
        rotor_mm: Some(220.0),
        master_mm: Some(12.7),
        pistons: Some(1),
        piston_mm: Some(38.1),
        opposed: Some(false),
        ..Brake::default()
    }
}

/// What the owner would fit: a 14 mm master cylinder and the caliper with two pistons of 27 mm.
pub fn proposed_disc() -> Brake {
    Brake { master_mm: Some(14.0), pistons: Some(2), piston_mm: Some(27.0), ..demo_disc() }
}

/// The bike: that disc in front, a drum of 130 mm behind, 118 kg dry.
pub fn demo_bike() -> Bike {
    let wheel = |tyre: &str| Wheel { tyre: Some(tyre.to_owned()), ..Wheel::default() };
    let spec = Spec {
        front_wheel: wheel("2.75-18"),
        rear_wheel: wheel("3.00-18"),
        front_brake: demo_disc(),
        rear_brake: Brake { brake: Some(BrakeKind::Drum), rotor_mm: Some(130.0), ..Brake::default() },
        ..Spec::default()
    };
    let mut bike = Bike { standard: spec.clone(), fitted: spec, ..Bike::default() };
    bike.identity.dry_mass_kg = Some(118.0);
    bike
}
