//! Final drive ratios, and what another one does to the engine.

use super::ratio::{engine_speed_change, final_ratio};
use super::sources::kinematics;
use crate::bounds;
use crate::quantity::{formula, within};

/// Final drive ratio that is taller by so many per cent: `i₂ = i₁ / (1 + t / 100)`.
///
/// Source: kinematics, computed. Range: more than −100 %.
///
/// ```
/// assert_eq!(layshaft_core::gearing::taller_ratio(3.0, 50.0), 2.0);
/// ```
pub fn taller_ratio(final_ratio: f64, taller_percent: f64) -> f64 {
    final_ratio / (1.0 + taller_percent / 100.0)
}

formula! {
    /// Final drive ratio.
    FinalRatio in Drive, "i_f = z_r / z_f"
    takes {
        /// Teeth of the gearbox sprocket.
        "z_f" front_teeth: u32 = within(&bounds::FRONT_TEETH);
        /// Teeth of the wheel sprocket.
        "z_r" rear_teeth: u32 = within(&bounds::REAR_TEETH);
    }
    gives {
        /// Final drive ratio.
        final_ratio "i_f" None;
    }
    from kinematics();
    it => Ok([final_ratio(it.front_teeth, it.rear_teeth)])
}

formula! {
    /// Final drive ratio that is taller than another.
    TallerRatio in Drive, "i₂ = i₁ / (1 + t / 100)"
    takes {
        /// Final drive ratio.
        "i₁" final_ratio: f64 = within(&bounds::FINAL_RATIO);
        /// Taller by, per cent.
        "t" taller_percent: f64 = within(&bounds::TALLER);
    }
    gives {
        /// Final drive ratio.
        final_ratio "i₂" None;
    }
    from kinematics();
    it => Ok([taller_ratio(it.final_ratio, it.taller_percent)])
}

formula! {
    /// Change of engine speed at the same road speed.
    EngineSpeedChange in Drive, "Δ = (i₂ / U₂ / (i₁ / U₁) − 1) · 100"
    takes {
        /// Overall ratio before.
        "i₁" overall_ratio: f64 = within(&bounds::OVERALL_RATIO);
        /// Overall ratio after.
        "i₂" new_overall_ratio: f64 = within(&bounds::OVERALL_RATIO);
        /// Rolling circumference before, millimetres.
        "U₁" circumference_mm: f64 = within(&bounds::CIRCUMFERENCE);
        /// Rolling circumference after, millimetres.
        "U₂" new_circumference_mm: f64 = within(&bounds::CIRCUMFERENCE);
    }
    gives {
        /// Engine speed.
        change "Δ" Percent;
    }
    from kinematics();
    it => Ok([engine_speed_change(it.overall_ratio, it.new_overall_ratio, it.circumference_mm, it.new_circumference_mm)])
}
