//! The formulas of thrust and top speed by name.

use super::air::air_density;
use super::power::{cubic_law, peaks_agree, power_between_peaks, torque_of};
use super::road_load::{RoadLoad, RollingLaw, rolling_coefficient, thrust};
use super::sources::{air_source, road_load};
use super::top_speed::power_limited_speed;
use crate::bounds;
use crate::gearing::message::GearingSource;
use crate::quantity::{Source, Standing, formula, within};

/// A load of constant rolling coefficient; units as in [`RoadLoad`].
fn load(
    mass_kg: f64,
    rolling_coefficient: f64,
    drag_area_m2: f64,
    air_density: f64,
    grade_percent: f64,
    head_wind_kmh: f64,
) -> RoadLoad {
    let rolling = RollingLaw::Constant { rolling_coefficient };
    RoadLoad { mass_kg, rolling, drag_area_m2, air_density, grade_percent, head_wind_kmh }
}

formula! {
    /// Density of the air on the standard day at a height.
    StandardAir in Drive, "ρ = p / (287.053 · T), p = 101325 · ((288.15 − 0.0065 · h) / 288.15)^5.25588, h = r · Z / (r + Z)"
    takes {
        /// Height above the sea, metres.
        "Z" altitude_metres: f64 = within(&bounds::ALTITUDE);
    }
    gives {
        /// Density of the air.
        air_density "ρ" KilogramCubicMetre;
    }
    from air_source();
    it => Ok([air_density(it.altitude_metres, None)])
}

formula! {
    /// Rolling coefficient of a motorcycle tyre by pressure and speed.
    RollingCoefficient in Drive, "f = 0.0085 + 0.018 / p + 1.59 · 10⁻⁶ · v² / p"
    takes {
        /// Tyre pressure, bar.
        "p" tyre_bar: f64 = within(&bounds::TYRE_PRESSURE);
        /// Road speed, km/h, up to 165.
        "v" road_speed_kmh: f64 = within(&bounds::ROLLING_SPEED);
    }
    gives {
        /// Rolling coefficient.
        coefficient "f" None;
    }
    from Source::new(GearingSource::RollingFormula, Standing::Memory);
    it => Ok([rolling_coefficient(it.tyre_bar, it.road_speed_kmh)])
}

formula! {
    /// What holds a machine back at a speed.
    RoadResistance in Drive, "F = f · m · g · cos(θ) + m · g · sin(θ) + 1/2 · ρ · A · (v + w) · |v + w| / 3.6², θ = arctan(s / 100), g = 9.80665"
    takes {
        /// Road speed, km/h.
        "v" road_speed_kmh: f64 = within(&bounds::ROAD_SPEED);
        /// Machine and rider, kilograms.
        "m" mass_kg: f64 = within(&bounds::RIDING_MASS);
        /// Rolling coefficient.
        "f" rolling_coefficient: f64 = within(&bounds::ROLLING);
        /// Drag area, square metres.
        "A" drag_area_m2: f64 = within(&bounds::DRAG_AREA);
        /// Density of the air, kilograms in a cubic metre.
        "ρ" air_density: f64 = within(&bounds::AIR_DENSITY);
        /// Grade, per cent.
        "s" grade_percent: f64 = within(&bounds::GRADE);
        /// Head wind, km/h.
        "w" head_wind_kmh: f64 = within(&bounds::HEAD_WIND);
    }
    gives {
        /// Resistance.
        total "F" Newton;
        /// Rolling.
        rolling "f · m · g · cos(θ)" Newton;
        /// Slope.
        slope "m · g · sin(θ)" Newton;
        /// Air.
        air "1/2 · ρ · A · (v + w) · |v + w| / 3.6²" Newton;
        /// Power at the wheel.
        wheel_power "F · v / 3600" Kilowatt;
    }
    from road_load();
    it => {
        let load = load(it.mass_kg, it.rolling_coefficient, it.drag_area_m2, it.air_density, it.grade_percent, it.head_wind_kmh);
        let at = load.at(it.road_speed_kmh);
        let kilowatts = at.total_newtons * it.road_speed_kmh / 3600.0;
        Ok([at.total_newtons, at.rolling_newtons, at.slope_newtons, at.air_newtons, kilowatts])
    }
}

formula! {
    /// Speed at which resistance takes all of a power at the wheel.
    PowerSpeed in Drive, "v : (f · m · g · cos(θ) + m · g · sin(θ) + 1/2 · ρ · A · (v + w) · |v + w| / 3.6²) · v = 3600 · P, θ = arctan(s / 100), g = 9.80665"
    takes {
        /// Power at the wheel, kilowatts.
        "P" wheel_kw: f64 = within(&bounds::PEAK_POWER);
        /// Machine and rider, kilograms.
        "m" mass_kg: f64 = within(&bounds::RIDING_MASS);
        /// Rolling coefficient.
        "f" rolling_coefficient: f64 = within(&bounds::ROLLING);
        /// Drag area, square metres.
        "A" drag_area_m2: f64 = within(&bounds::DRAG_AREA);
        /// Density of the air, kilograms in a cubic metre.
        "ρ" air_density: f64 = within(&bounds::AIR_DENSITY);
        /// Grade, per cent.
        "s" grade_percent: f64 = within(&bounds::GRADE);
        /// Head wind, km/h.
        "w" head_wind_kmh: f64 = within(&bounds::HEAD_WIND);
    }
    gives {
        /// Road speed.
        road_speed "v" KilometreHour;
        /// Rolling there.
        rolling "f · m · g · cos(θ)" Newton;
        /// Air there.
        air "1/2 · ρ · A · (v + w) · |v + w| / 3.6²" Newton;
    }
    from road_load();
    it => {
        let load = load(it.mass_kg, it.rolling_coefficient, it.drag_area_m2, it.air_density, it.grade_percent, it.head_wind_kmh);
        power_limited_speed(it.wheel_kw, &load).map(|kmh| {
            let at = load.at(kmh);
            [kmh, at.rolling_newtons, at.air_newtons]
        })
    }
}

formula! {
    /// Thrust at the tyre.
    ThrustAtTyre in Drive, "F = 1000 · T · i · η / r"
    takes {
        /// Torque at the crankshaft, newton metres.
        "T" crank_nm: f64 = within(&bounds::CRANK_TORQUE);
        /// Overall ratio.
        "i" overall_ratio: f64 = within(&bounds::OVERALL_RATIO);
        /// Share of the power that reaches the wheel.
        "η" drive_efficiency: f64 = within(&bounds::DRIVE_EFFICIENCY);
        /// Radius of the wheel, millimetres.
        "r" wheel_radius_mm: f64 = within(&bounds::WHEEL_RADIUS);
    }
    gives {
        /// Thrust.
        thrust "F" Newton;
    }
    from road_load();
    it => Ok([thrust(it.crank_nm, it.overall_ratio, it.drive_efficiency, it.wheel_radius_mm)])
}

formula! {
    /// Power of a spark-ignition engine from its peak power, by the cubic law.
    CubicPower in Drive, "P = P_M · (x + x² − x³), x = n / n_M"
    takes {
        /// Engine speed, revolutions a minute.
        "n" engine_rpm: f64 = within(&bounds::TURNING_SPEED);
        /// Peak power, kilowatts.
        "P_M" peak_power_kw: f64 = within(&bounds::PEAK_POWER);
        /// Engine speed of peak power, revolutions a minute.
        "n_M" peak_power_rpm: f64 = within(&bounds::REV_LIMIT);
    }
    gives {
        /// Power.
        power "P" Kilowatt;
        /// Torque.
        torque "P / ω" NewtonMetre;
    }
    from Source::new(GearingSource::CubicLaw, Standing::Memory);
    it => {
        let kw = cubic_law(it.engine_rpm, it.peak_power_kw, it.peak_power_rpm);
        Ok([kw, torque_of(kw, it.engine_rpm)])
    }
}

formula! {
    /// Power of an engine between and beside its peaks of power and torque.
    PeaksPower in Drive, "P = T(n) · 2π · n / 60,000, T a cubic between the peaks and parabolas beside them"
    takes {
        /// Engine speed, revolutions a minute.
        "n" engine_rpm: f64 = within(&bounds::TURNING_SPEED);
        /// Peak power, kilowatts.
        "P_M" peak_power_kw: f64 = within(&bounds::PEAK_POWER);
        /// Engine speed of peak power, revolutions a minute.
        "n_M" peak_power_rpm: f64 = within(&bounds::REV_LIMIT);
        /// Peak torque, newton metres.
        "T_M" peak_torque_nm: f64 = within(&bounds::PEAK_TORQUE);
        /// Engine speed of peak torque, revolutions a minute.
        "n_T" peak_torque_rpm: f64 = within(&bounds::PEAK_TORQUE_RPM);
    }
    gives {
        /// Power.
        power "P" Kilowatt;
        /// Torque.
        torque "T" NewtonMetre;
    }
    from Source::new(GearingSource::PeaksShape, Standing::CommonPractice);
    it => {
        let (power, torque) = ((it.peak_power_kw, it.peak_power_rpm), (it.peak_torque_nm, it.peak_torque_rpm));
        peaks_agree(power, torque).map(|()| {
            let kw = power_between_peaks(it.engine_rpm, power, torque);
            [kw, torque_of(kw, it.engine_rpm)]
        })
    }
}
