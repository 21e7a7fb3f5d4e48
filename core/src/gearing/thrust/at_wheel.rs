//! What power means as torque, and what of it reaches the wheel.

use super::power::torque_of;
use crate::bounds;
use crate::gearing::message::GearingSource;
use crate::quantity::{Source, Standing, formula, within};

/// Power at the wheel, kW: `P_w = η · P`. Source: definition of the share `η` that reaches it.
///
/// ```
/// assert_eq!(layshaft_core::gearing::power_at_wheel(10.0, 0.9), 9.0);
/// ```
pub fn power_at_wheel(kw: f64, drive_efficiency: f64) -> f64 {
    kw * drive_efficiency
}

fn definition() -> Source {
    Source::new(GearingSource::Power, Standing::Computed)
}

formula! {
    /// Torque that a power means at an engine speed.
    TorqueOfPower in Drive, "T = P · 60000 / (2 · π · n)"
    takes {
        /// Power, kilowatts.
        "P" power_kw: f64 = within(&bounds::PEAK_POWER);
        /// Engine speed, revolutions a minute.
        "n" engine_rpm: f64 = within(&bounds::TURNING_SPEED);
    }
    gives {
        /// Torque.
        torque "T" NewtonMetre;
    }
    from definition();
    it => Ok([torque_of(it.power_kw, it.engine_rpm)])
}

formula! {
    /// Power at the wheel.
    WheelPower in Drive, "P_w = P · η"
    takes {
        /// Power of the engine, kilowatts.
        "P" power_kw: f64 = within(&bounds::PEAK_POWER);
        /// Share of the power that reaches the wheel.
        "η" drive_efficiency: f64 = within(&bounds::DRIVE_EFFICIENCY);
    }
    gives {
        /// Power at the wheel.
        wheel_power "P_w" Kilowatt;
    }
    from definition();
    it => Ok([power_at_wheel(it.power_kw, it.drive_efficiency)])
}
