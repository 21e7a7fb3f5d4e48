//! Ratios, and what they make of engine speed and road speed.
//!
//! Plain kinematics of gears in mesh and of a wheel that rolls without slip; nothing here is measured.

use super::sources::kinematics;
use crate::bounds;
use crate::quantity::{formula, within};

/// Overall ratio: turns of the crankshaft for one turn of the wheel.
///
/// `i = i_p · i_g · z_r / z_f`
///
/// - `i_p` primary reduction, `i_g` gear ratio: turns of the driving side for one of the driven side, pure numbers
/// - `z_f` teeth of the gearbox sprocket, `z_r` teeth of the wheel sprocket
///
/// Source: gears in series multiply; computed. Range: chain or toothed belt drive, `front_teeth` at least 1.
///
/// ```
/// use layshaft_core::gearing::overall_ratio;
/// // 3.333 primary, 0.833 in top, 41 over 15 teeth.
/// assert!((overall_ratio(3.333, 0.833, 15, 41) - 7.58880).abs() < 1e-5);
/// ```
pub fn overall_ratio(primary_ratio: f64, gear_ratio: f64, front_teeth: u32, rear_teeth: u32) -> f64 {
    primary_ratio * gear_ratio * final_ratio(front_teeth, rear_teeth)
}

/// Final drive ratio: turns of the gearbox sprocket for one turn of the wheel.
///
/// `i_f = z_r / z_f`, teeth over teeth, a pure number. Source: computed. Range: `front_teeth` at least 1.
///
/// ```
/// assert_eq!(layshaft_core::gearing::final_ratio(16, 38), 2.375);
/// ```
pub fn final_ratio(front_teeth: u32, rear_teeth: u32) -> f64 {
    f64::from(rear_teeth) / f64::from(front_teeth)
}

/// Road speed at an engine speed, km/h.
///
/// `v = n / i · U · 60 / 10⁶`
///
/// - `n` engine speed, revolutions a minute; `i` overall ratio
/// - `U` rolling circumference, mm (60 minutes an hour, 10⁶ mm a kilometre)
///
/// Source: a wheel that rolls without slip covers its circumference in one turn; computed. Range: no wheelspin, clutch
/// closed, ratio above zero.
///
/// ```
/// let speed = layshaft_core::gearing::road_speed(9500.0, 7.58880, 1915.11);
/// assert!((speed - 143.85).abs() < 0.01);
/// ```
pub fn road_speed(engine_rpm: f64, overall_ratio: f64, circumference_mm: f64) -> f64 {
    engine_rpm / overall_ratio * circumference_mm * 60.0 / 1e6
}

/// Engine speed at a road speed, revolutions a minute: [`road_speed`] turned round.
///
/// `n = v · i · 10⁶ / (60 · U)`, symbols and units as there.
///
/// Source: computed. Range: as [`road_speed`], circumference above zero.
///
/// ```
/// use layshaft_core::gearing::engine_speed;
/// // 100 km/h on a wheel of 0.31 m radius with an overall ratio of 9.
/// let rpm = engine_speed(100.0, 9.0, 2.0 * std::f64::consts::PI * 310.0);
/// assert!((rpm - 7701.0).abs() < 0.1);
/// ```
pub fn engine_speed(road_speed_kmh: f64, overall_ratio: f64, circumference_mm: f64) -> f64 {
    road_speed_kmh * 1e6 / 60.0 / circumference_mm * overall_ratio
}

/// Change of engine speed at the same road speed, per cent; negative: the engine turns slower.
///
/// `Δ = ((i₂ / U₂) / (i₁ / U₁) − 1) · 100`
///
/// - `i₁`, `i₂` overall ratio before and after (or the final drive ratio, where everything ahead of it stays the same)
/// - `U₁`, `U₂` rolling circumference of the driven wheel before and after, mm
///
/// Source: [`engine_speed`] divided by itself; computed. Range: as there.
///
/// ```
/// use layshaft_core::gearing::{engine_speed_change, final_ratio};
/// let change = engine_speed_change(final_ratio(15, 41), final_ratio(16, 38), 1915.1, 1915.1);
/// assert!((change + 13.1).abs() < 0.02);
/// ```
pub fn engine_speed_change(ratio_before: f64, ratio_after: f64, mm_before: f64, mm_after: f64) -> f64 {
    ((ratio_after / mm_after) / (ratio_before / mm_before) - 1.0) * 100.0
}

/// Final drive ratio that gives a road speed at an engine speed.
///
/// `i_f = n · U · 60 / (10⁶ · v · i_p · i_g)`
///
/// - `n` engine speed, revolutions a minute; `U` rolling circumference, mm; `v` road speed, km/h
/// - `i_p` primary, `i_g` gear ratio, pure numbers
///
/// Source: kinematics, computed ([`road_speed`](crate::gearing::formulas::road_speed) solved for the ratio). Range: no slip, all above
/// zero.
///
/// ```
/// use layshaft_core::gearing::{overall_ratio, road_speed, wanted_ratio};
/// let speed = road_speed(6000.0, overall_ratio(3.333, 0.833, 15, 41), 1915.1);
/// assert!((wanted_ratio(6000.0, speed, 3.333, 0.833, 1915.1) - 41.0 / 15.0).abs() < 1e-12);
/// ```
pub fn wanted_ratio(
    engine_rpm: f64,
    road_speed_kmh: f64,
    primary_ratio: f64,
    gear_ratio: f64,
    circumference_mm: f64,
) -> f64 {
    engine_rpm * circumference_mm * 60.0 / (1e6 * road_speed_kmh * primary_ratio * gear_ratio)
}

/// Engine speed after changing gear at the same road speed, revolutions a minute: `n₂ = n₁ · i₂ / i₁`.
///
/// Source: kinematics, computed. Range: ratios above zero.
///
/// ```
/// assert!((layshaft_core::gearing::drop_to(9500.0, 2.769, 1.722) - 5907.9).abs() < 0.1);
/// ```
pub fn drop_to(engine_rpm: f64, gear_ratio: f64, next_ratio: f64) -> f64 {
    engine_rpm * next_ratio / gear_ratio
}

formula! {
    /// Overall ratio: crankshaft turns for one turn of the wheel.
    OverallRatio in Drive, "i = i_p · i_g · z_r / z_f"
    takes {
        /// Primary reduction.
        "i_p" primary_ratio: f64 = within(&bounds::PRIMARY_RATIO);
        /// Gear ratio.
        "i_g" gear_ratio: f64 = within(&bounds::GEAR_RATIO);
        /// Teeth of the gearbox sprocket.
        "z_f" front_teeth: u32 = within(&bounds::FRONT_TEETH);
        /// Teeth of the wheel sprocket.
        "z_r" rear_teeth: u32 = within(&bounds::REAR_TEETH);
    }
    gives {
        /// Overall ratio.
        overall_ratio "i" None;
    }
    from kinematics();
    it => Ok([overall_ratio(it.primary_ratio, it.gear_ratio, it.front_teeth, it.rear_teeth)])
}

formula! {
    /// Road speed at an engine speed.
    RoadSpeed in Drive, "v = n / i · U · 60 / 10⁶"
    takes {
        /// Engine speed, revolutions a minute.
        "n" engine_rpm: f64 = within(&bounds::ENGINE_SPEED);
        /// Overall ratio.
        "i" overall_ratio: f64 = within(&bounds::OVERALL_RATIO);
        /// Rolling circumference, millimetres.
        "U" circumference_mm: f64 = within(&bounds::CIRCUMFERENCE);
    }
    gives {
        /// Road speed.
        road_speed "v" KilometreHour;
    }
    from kinematics();
    it => Ok([road_speed(it.engine_rpm, it.overall_ratio, it.circumference_mm)])
}

formula! {
    /// Engine speed at a road speed.
    EngineSpeed in Drive, "n = v · i · 10⁶ / (60 · U)"
    takes {
        /// Road speed, km/h.
        "v" road_speed_kmh: f64 = within(&bounds::ROAD_SPEED);
        /// Overall ratio.
        "i" overall_ratio: f64 = within(&bounds::OVERALL_RATIO);
        /// Rolling circumference, millimetres.
        "U" circumference_mm: f64 = within(&bounds::CIRCUMFERENCE);
    }
    gives {
        /// Engine speed.
        engine_speed "n" Rpm;
    }
    from kinematics();
    it => Ok([engine_speed(it.road_speed_kmh, it.overall_ratio, it.circumference_mm)])
}

formula! {
    /// Final drive ratio that gives a road speed at an engine speed.
    WantedRatio in Drive, "i_f = n · 60 · U / (v · 10⁶ · i_p · i_g)"
    takes {
        /// Engine speed, revolutions a minute.
        "n" engine_rpm: f64 = within(&bounds::TURNING_SPEED);
        /// Road speed, km/h.
        "v" road_speed_kmh: f64 = within(&bounds::MOVING_SPEED);
        /// Primary reduction.
        "i_p" primary_ratio: f64 = within(&bounds::PRIMARY_RATIO);
        /// Gear ratio.
        "i_g" gear_ratio: f64 = within(&bounds::GEAR_RATIO);
        /// Rolling circumference, millimetres.
        "U" circumference_mm: f64 = within(&bounds::CIRCUMFERENCE);
    }
    gives {
        /// Final drive ratio.
        final_ratio "i_f" None;
    }
    from kinematics();
    it => Ok([wanted_ratio(it.engine_rpm, it.road_speed_kmh, it.primary_ratio, it.gear_ratio, it.circumference_mm)])
}

formula! {
    /// Engine speed after changing gear at the same road speed.
    EngineSpeedDrop in Drive, "n₂ = n₁ · i₂ / i₁"
    takes {
        /// Engine speed, revolutions a minute.
        "n₁" engine_rpm: f64 = within(&bounds::ENGINE_SPEED);
        /// Ratio of the gear.
        "i₁" gear_ratio: f64 = within(&bounds::GEAR_RATIO);
        /// Ratio of the next one.
        "i₂" next_gear_ratio: f64 = within(&bounds::GEAR_RATIO);
    }
    gives {
        /// Engine speed.
        engine_speed "n₂" Rpm;
    }
    from kinematics();
    it => Ok([drop_to(it.engine_rpm, it.gear_ratio, it.next_gear_ratio)])
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        #[test]
        fn engine_speed_turns_road_speed_round(rpm in 500.0..20_000.0, ratio in 2.0..40.0, mm in 900.0..2500.0) {
            let back = engine_speed(road_speed(rpm, ratio, mm), ratio, mm);
            prop_assert!((back - rpm).abs() < 1e-9 * rpm);
        }

        #[test]
        fn the_same_multiple_of_both_sprockets_changes_nothing(front in 9u32..16, rear in 20u32..41, by in 1u32..3) {
            prop_assert_eq!(final_ratio(front, rear), final_ratio(front * by, rear * by));
        }

        #[test]
        fn a_tooth_more_in_front_is_taller_in_every_gear(front in 9u32..30, rear in 20u32..80, gear in 0.5..3.5) {
            prop_assert!(overall_ratio(3.0, gear, front + 1, rear) < overall_ratio(3.0, gear, front, rear));
        }

        #[test]
        fn road_speed_scales_with_engine_speed_and_against_the_ratio(rpm in 500.0..9000.0, ratio in 2.0..40.0) {
            let once = road_speed(rpm, ratio, 2000.0);
            prop_assert!((road_speed(2.0 * rpm, ratio, 2000.0) - 2.0 * once).abs() < 1e-9);
            prop_assert!((road_speed(rpm, 2.0 * ratio, 2000.0) - once / 2.0).abs() < 1e-9);
        }
    }

    #[test]
    fn another_tyre_alone_changes_engine_speed_by_the_ratio_of_circumferences() {
        let change = engine_speed_change(3.0, 3.0, 2000.0, 2100.0);
        assert!((change - (2000.0 / 2100.0 - 1.0) * 100.0).abs() < 1e-12);
    }
}
