//! Density of the air by height and temperature.

/// Density of the air, kg/m³.
///
/// `h = r·Z / (r + Z)`, `p = 101325 · ((288.15 − 0.0065·h) / 288.15)^5.25588`, `ρ = p / (287.053 · T)`
///
/// - `Z` height above the sea, m; `r` = 6,356,766 m; `T` temperature, K: the entered one, else 288.15 − 0.0065·h
///
/// Source: US Standard Atmosphere 1976, which the ISA of ISO 2533 shares up to here (from memory; agrees with the library
/// `fluids`). Range: up to 11,000 m; dry air, the pressure of a standard day. Damp air is up to 1 % lighter.
///
/// ```
/// use layshaft_core::gearing::air_density;
/// assert!((air_density(0.0, None) - 1.225).abs() < 1e-5);
/// assert!(air_density(1000.0, None) < air_density(0.0, Some(30.0)));
/// ```
pub fn air_density(altitude_metres: f64, celsius: Option<f64>) -> f64 {
    const EARTH_RADIUS: f64 = 6_356_766.0;
    const LAPSE: f64 = 0.0065;
    // Gas constant of the 1976 standard and the mean molar mass of air.
    const GAS: f64 = 8.314_32 / 0.028_964_4;
    let height = EARTH_RADIUS * altitude_metres / (EARTH_RADIUS + altitude_metres);
    let standard = 288.15 - LAPSE * height;
    let pressure = 101_325.0 * (standard / 288.15).powf(crate::units::GRAVITY / (GAS * LAPSE));
    pressure / (GAS * celsius.map_or(standard, |celsius| celsius + 273.15))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_standard_day_and_two_heights_come_out() {
        // The first is 1.2249992 of the library `fluids`; the others are table values of the 1976 standard (from memory).
        assert!((air_density(0.0, None) - 1.224_999_2).abs() < 1e-6);
        assert!((air_density(1000.0, None) - 1.1117).abs() < 1e-4);
        assert!((air_density(2000.0, None) - 1.0066).abs() < 1e-4);
    }

    #[test]
    fn warm_air_is_lighter_by_the_ratio_of_temperatures() {
        let (cold, warm) = (air_density(0.0, Some(0.0)), air_density(0.0, Some(30.0)));
        assert!((cold / warm - 303.15 / 273.15).abs() < 1e-12);
        assert!((air_density(0.0, Some(15.0)) - air_density(0.0, None)).abs() < 1e-12);
    }
}
