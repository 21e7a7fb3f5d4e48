//! Units of measure: the symbol that a number is shown with, and its other common unit.
//!
//! Factors are exact by definition where the definition is exact (inch, mile, pound: international yard and pound
//! agreement of 1959; US gallon of 231 cubic inches; metric horsepower of 75 kgf m/s), standing: from memory,
//! checked against the library `pint` in the outside checks.

use layshaft_wire::wire;

/// Declares the units once: name, symbol, decimals, and the other common unit as `other = value * factor + offset`.
macro_rules! units {
    ($($(#[$doc:meta])* $name:ident $symbol:literal $decimals:literal $(-> $other:ident $factor:expr, $offset:expr)?;)*) => {
        /// A unit that a number of the trade carries.
        #[wire]
        pub enum Unit { $($(#[$doc])* $name,)* }

        impl Unit {
            /// Every unit, in the order of the declaration.
            pub const ALL: &[Unit] = &[$(Unit::$name,)*];

            /// The unit as it is shown.
            pub fn card(self) -> UnitCard {
                match self { $(Unit::$name => UnitCard {
                    unit: self,
                    symbol: $symbol.to_owned(),
                    decimals: $decimals,
                    other: [$(OtherUnit { unit: Unit::$other, factor: $factor, offset: $offset })?].into_iter().next(),
                },)* }
            }

            /// The symbol after the number; empty for a pure number.
            pub fn symbol(self) -> &'static str {
                match self { $(Unit::$name => $symbol,)* }
            }
        }
    };
}

units! {
    /// A pure number (ratio, count).
    None "" 3;
    /// Per cent.
    Percent "%" 1;
    /// Teeth of a sprocket.
    Teeth "teeth" 0;
    /// Links of a chain.
    Links "links" 0;
    /// Millimetres.
    Millimetre "mm" 1 -> Inch 1.0 / 25.4, 0.0;
    /// Inches.
    Inch "in" 2 -> Millimetre 25.4, 0.0;
    /// Metres.
    Metre "m" 1 -> Foot 1.0 / 0.3048, 0.0;
    /// Feet.
    Foot "ft" 0 -> Metre 0.3048, 0.0;
    /// Kilometres an hour.
    KilometreHour "km/h" 0 -> MileHour 1.0 / 1.609_344, 0.0;
    /// Miles an hour.
    MileHour "mph" 0 -> KilometreHour 1.609_344, 0.0;
    /// Revolutions a minute.
    Rpm "rpm" 0;
    /// Watts.
    Watt "W" 0;
    /// Kilowatts.
    Kilowatt "kW" 1 -> MetricHorsepower 1000.0 / 735.498_75, 0.0;
    /// Metric horsepower.
    MetricHorsepower "PS" 1 -> Kilowatt 0.735_498_75, 0.0;
    /// Volts.
    Volt "V" 1;
    /// Amperes.
    Ampere "A" 1;
    /// Milliamperes.
    Milliampere "mA" 1;
    /// Lumens.
    Lumen "lm" 0;
    /// Ampere-hours.
    AmpereHour "Ah" 1;
    /// Ohms.
    Ohm "Ω" 2;
    /// Minutes of time.
    Minute "min" 0;
    /// Hours.
    Hour "h" 1;
    /// Days.
    Day "days" 0;
    /// Degrees Celsius.
    Celsius "°C" 0 -> Fahrenheit 1.8, 32.0;
    /// Degrees Fahrenheit.
    Fahrenheit "°F" 0 -> Celsius 1.0 / 1.8, -32.0 / 1.8;
    /// Kelvin, as a difference.
    Kelvin "K" 1;
    /// Relative humidity.
    RelativeHumidity "% RH" 0;
    /// Newtons.
    Newton "N" 0;
    /// Newton metres.
    NewtonMetre "N m" 1 -> PoundFoot 1.0 / 1.355_817_948_331_400_4, 0.0;
    /// Pound-force feet.
    PoundFoot "lbf ft" 1 -> NewtonMetre 1.355_817_948_331_400_4, 0.0;
    /// Bar.
    Bar "bar" 1 -> Psi 100_000.0 / 6_894.757_293_168, 0.0;
    /// Pounds-force per square inch.
    Psi "psi" 0 -> Bar 6_894.757_293_168 / 100_000.0, 0.0;
    /// Kilograms.
    Kilogram "kg" 0 -> Pound 1.0 / 0.453_592_37, 0.0;
    /// Pounds.
    Pound "lb" 0 -> Kilogram 0.453_592_37, 0.0;
    /// Litres.
    Litre "L" 2 -> FluidOunce 1000.0 / 29.573_529_562_5, 0.0;
    /// Millilitres.
    Millilitre "mL" 0 -> FluidOunce 1.0 / 29.573_529_562_5, 0.0;
    /// US fluid ounces.
    FluidOunce "fl oz" 1 -> Millilitre 29.573_529_562_5, 0.0;
    /// Flashes a minute.
    FlashesMinute "/min" 0;
    /// Metres per second squared.
    MetreSecondSquared "m/s²" 1;
    /// A calendar year.
    Year "" 0;
    /// Seconds of time.
    Second "s" 1;
    /// Degrees of an angle.
    Degree "°" 0;
    /// Square millimetres.
    SquareMillimetre "mm²" 1;
    /// Megapascals (newtons per square millimetre).
    Megapascal "MPa" 0;
    /// Turns of a thread in an inch.
    TurnsInch "per inch" 1;
    /// Micrometres.
    Micrometre "µm" 0;
    /// Grams.
    Gram "g" 1;
    /// Square metres.
    SquareMetre "m²" 2;
    /// Square metres that a litre covers.
    SquareMetreLitre "m²/L" 1;
    /// Grams a millilitre.
    GramMillilitre "g/mL" 2;
    /// Kilograms in a cubic metre.
    KilogramCubicMetre "kg/m³" 3;
}

/// A unit as it is shown: its symbol, decimals that make sense, and how to get to the other common unit.
#[wire]
pub struct UnitCard {
    /// The unit.
    pub unit: Unit,
    /// The symbol after the number.
    pub symbol: String,
    /// Decimals that a reading in this unit usually carries.
    pub decimals: u32,
    /// The other common unit, where the trade uses one.
    pub other: Option<OtherUnit>,
}

/// The other common unit of a quantity: `other = value * factor + offset`.
#[wire]
pub struct OtherUnit {
    /// The unit.
    pub unit: Unit,
    /// Multiplier.
    pub factor: f64,
    /// Added after multiplying (temperatures only).
    pub offset: f64,
}

/// Kilometres an hour for metres a second (exact by definition).
///
/// ```
/// assert!((layshaft_core::units::kmh_from_ms(10.0) - 36.0).abs() < 1e-12);
/// ```
pub fn kmh_from_ms(metres_per_second: f64) -> f64 {
    metres_per_second * 3.6
}

/// Milliseconds in an hour.
pub const HOUR_MS: f64 = 3_600_000.0;

/// Standard gravity, m/s² (exact by convention).
pub const GRAVITY: f64 = 9.806_65;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_other_unit_leads_back_to_the_first() {
        for unit in Unit::ALL {
            let Some(other) = unit.card().other else { continue };
            // A millilitre and a litre share the fluid ounce; it leads back to the millilitre.
            if *unit == Unit::Litre {
                continue;
            }
            let back = other.unit.card().other.unwrap();
            assert_eq!(back.unit, *unit);
            let round = (37.5 * other.factor + other.offset) * back.factor + back.offset;
            assert!((round - 37.5).abs() < 1e-9, "{unit:?}: {round}");
        }
    }

    #[test]
    fn freezing_and_boiling_water_are_32_and_212_fahrenheit() {
        let other = Unit::Celsius.card().other.unwrap();
        assert!((0.0 * other.factor + other.offset - 32.0).abs() < 1e-12);
        assert!((100.0 * other.factor + other.offset - 212.0).abs() < 1e-12);
    }
}
