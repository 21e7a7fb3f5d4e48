//! Dew point: how cold a surface may be before moisture settles on it, under the coat that goes on.
//!
//! Method: the Magnus form with the figures of the WMO Guide to Instruments, WMO-No. 8, Annex 4.B.

use crate::bounds;
use crate::coating::message::CoatingMessage;
use crate::quantity::{Source, Standing, formula, within};

/// Magnus exponent, without unit.
const MAGNUS_A: f64 = 17.62;
/// Magnus temperature, °C.
const MAGNUS_B: f64 = 243.12;

/// Dew point of the air, °C.
///
/// `g = ln(RH/100) + a T/(b + T)`, `Td = b g/(a - g)`, T and Td in °C, RH in per cent, a = 17.62, b = 243.12 °C.
/// Source: WMO-No. 8, Annex 4.B (second-hand, as restated in a maker's manual). Range: -45 to 60 °C over water; other
/// sets of figures agree within 0.02 K from 5 to 30 °C and 50 % up.
///
/// ```
/// use layshaft_core::coating::dew_point;
/// assert!((dew_point(20.0, 60.0) - 11.995).abs() < 0.001);
/// assert!((dew_point(20.0, 100.0) - 20.0).abs() < 1e-9);
/// ```
pub fn dew_point(celsius: f64, humidity: f64) -> f64 {
    let log_pressure = (humidity / 100.0).ln() + MAGNUS_A * celsius / (MAGNUS_B + celsius);
    MAGNUS_B * log_pressure / (MAGNUS_A - log_pressure)
}

/// How far a surface is above the dew point of the air, kelvin.
///
/// `m = Ts - Td(T, RH)`. A coat wants 3 K or more: guidance of ISO 8502-4 and requirement of ISO 12944-7 (second-hand).
///
/// ```
/// use layshaft_core::coating::surface_margin;
/// assert!((surface_margin(20.0, 60.0, 14.0) - 2.005).abs() < 0.001);
/// ```
pub fn surface_margin(celsius: f64, humidity: f64, surface_celsius: f64) -> f64 {
    surface_celsius - dew_point(celsius, humidity)
}

formula! {
    /// Dew point of the air.
    DewPoint in Paint, "t_d = 243.12 · g / (17.62 − g), g = ln(φ / 100) + 17.62 · T / (243.12 + T)"
    takes {
        /// Temperature, °C.
        "T" celsius: f64 = within(&bounds::TEMPERATURE);
        /// Relative humidity, per cent.
        "φ" humidity: f64 = within(&bounds::HUMIDITY);
    }
    gives {
        /// Dew point.
        dew_point "t_d" Celsius;
    }
    from magnus();
    it => Ok([dew_point(it.celsius, it.humidity)])
}

formula! {
    /// How far a surface is above the dew point of the air.
    SurfaceMargin in Paint, "m = T_s − t_d, t_d = 243.12 · g / (17.62 − g), g = ln(φ / 100) + 17.62 · T / (243.12 + T)"
    takes {
        /// Temperature of the air, °C.
        "T" celsius: f64 = within(&bounds::TEMPERATURE);
        /// Relative humidity, per cent.
        "φ" humidity: f64 = within(&bounds::HUMIDITY);
        /// Temperature of the surface, °C.
        "T_s" surface_celsius: f64 = within(&bounds::BAKE_TEMPERATURE);
    }
    gives {
        /// Margin.
        margin "m" Kelvin;
    }
    from magnus();
    it => Ok([surface_margin(it.celsius, it.humidity, it.surface_celsius)])
}

fn magnus() -> Source {
    Source::new(CoatingMessage::SourceMagnus, Standing::SecondHand)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn the_dew_point_lies_within_a_twentieth_of_a_kelvin_of_the_reference_library() {
        // Values of the library psychrolib 2.5.0, recomputed in the outside checks.
        for (celsius, humidity, dew) in [
            (20.0, 60.0, 12.007),
            (25.0, 50.0, 13.864),
            (10.0, 85.0, 7.598),
            (15.0, 85.0, 12.501),
            (30.0, 80.0, 26.169),
        ] {
            assert!((dew_point(celsius, humidity) - dew).abs() < 0.05);
        }
    }

    proptest! {
        #[test]
        fn the_dew_point_is_never_above_the_air_and_grows_with_humidity(celsius in -30.0..60.0, a in 1.0..100.0, b in 1.0..100.0) {
            let dew = |humidity| dew_point(celsius, humidity);
            prop_assert!(dew(f64::max(a, b)) <= celsius + 1e-9);
            prop_assert!(dew(f64::min(a, b)) <= dew(f64::max(a, b)) + 1e-12);
        }
    }
}
