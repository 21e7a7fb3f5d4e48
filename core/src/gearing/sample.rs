//! The invented demo bike as far as the tests of this area need it. Everything about it is invented.

use crate::record::{Bike, ChainSize, Drive, Spec, SpeedometerDrive, Wheel};

/// Primary 3.333, five gears, 15/41, 116 links of 428 at 556 mm, adjuster 546 to 571 mm, speedometer at the gearbox.
pub fn demo_drive() -> Drive {
    Drive {
        primary_ratio: Some(3.333),
        gear_ratios: vec![2.769, 1.722, 1.263, 1.0, 0.833],
        front_teeth: Some(15),
        rear_teeth: Some(41),
        chain_size: Some(ChainSize::C428),
        chain_links: Some(116),
        centre_distance_mm: Some(556.0),
        adjuster_from_mm: Some(546.0),
        adjuster_to_mm: Some(571.0),
        speedometer: Some(SpeedometerDrive::Gearbox),
        speedometer_over_percent: None,
        rev_limit_rpm: Some(9500.0),
        ..Drive::default()
    }
}

/// That drive on 2.75-18 and 3.00-18 tyres, fitted as made.
pub fn demo_bike() -> Bike {
    let wheel = |tyre: &str| Wheel { tyre: Some(tyre.to_owned()), tube: Some(true), ..Wheel::default() };
    let spec =
        Spec { drive: demo_drive(), front_wheel: wheel("2.75-18"), rear_wheel: wheel("3.00-18"), ..Spec::default() };
    let mut bike = Bike { standard: spec.clone(), fitted: spec, ..Bike::default() };
    bike.identity.dry_mass_kg = Some(118.0);
    bike.identity.peak_power_kw = Some(11.8);
    bike.identity.peak_power_rpm = Some(8500.0);
    bike.identity.peak_torque_nm = Some(13.9);
    bike.identity.peak_torque_rpm = Some(7000.0);
    bike
}
