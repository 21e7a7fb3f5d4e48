//! The invented demo bike as far as the tests of this area need it. Everything about it is invented.

use crate::record::{Bike, Spec, SpeedometerDrive, Wheel};

/// 2.75-18 and 3.00-18 on spoked rims with tubes, speedometer at the gearbox; the tyres that are on it are old.
pub fn demo_bike() -> Bike {
    let wheel = |tyre: &str, axle_load_kg: f64, rim_width_inch: f64| Wheel {
        tyre: Some(tyre.to_owned()),
        tube: Some(true),
        axle_load_kg: Some(axle_load_kg),
        rim_width_inch: Some(rim_width_inch),
        spoked: Some(true),
        ..Wheel::default()
    };
    let mut standard =
        Spec { front_wheel: wheel("2.75-18", 90.0, 1.6), rear_wheel: wheel("3.00-18", 118.0, 1.85), ..Spec::default() };
    standard.drive.speedometer = Some(SpeedometerDrive::Gearbox);
    let on_it = |below: &Wheel, tyre: &str, date: &str| Wheel {
        tyre: Some(tyre.to_owned()),
        date_code: Some(date.to_owned()),
        tube_sizes: vec![tyre.to_owned()],
        ..below.clone()
    };
    let fitted = Spec {
        front_wheel: on_it(&standard.front_wheel, "2.75-18 42P", "1105"),
        rear_wheel: on_it(&standard.rear_wheel, "3.00-18 52P", "324"),
        ..standard.clone()
    };
    Bike { standard, fitted, ..Bike::default() }
}
