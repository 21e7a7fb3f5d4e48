//! Mixing: premix, two-part paint by either convention, thinning. Parts by volume or by weight.

use crate::bounds;
use crate::error::Refused;
use crate::quantity::{Accepts, FormulaSource, Source, Standing, formula, within};

/// Oil for premix, mL: `V_oil = 1000 · V_fuel / n`, fuel in L, `n` parts of **fuel** to one of oil.
///
/// Source: convention of two-stroke premix, reference.com “50:1 oil gas ratio” (second hand). Range: parts by volume.
///
/// ```
/// assert_eq!(layshaft_core::fluids::premix_oil(5.0, 32.0), 156.25);
/// ```
pub fn premix_oil(fuel_litres: f64, parts_fuel: f64) -> f64 {
    1000.0 * fuel_litres / parts_fuel
}

/// What the per cent of thinner is meant of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ThinnerOf {
    /// Of base and hardener together: the usual meaning.
    BaseAndHardener,
    /// Of the base alone, as some sheets mean it.
    Base,
}

/// Base, hardener and thinner of a two-part product.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TwoPart {
    /// Base (component A).
    pub base: f64,
    /// Hardener (component B).
    pub hardener: f64,
    /// Thinner.
    pub thinner: f64,
}

/// Shares out an amount ready to use over base, hardener and thinner, in the unit of the amount.
///
/// `A : B : T = a : b : t·(a + b)` or `a : b : t·a`, scaled so that they sum to the amount
///
/// - `a`, `b` parts of base and hardener; `t` share of thinner, per cent over 100
///
/// Source: arithmetic; both conventions are met on sheets (from memory), so the sheet has to be asked. Range: parts and amount
/// in the same measure, volume or weight, as the sheet says.
///
/// ```
/// use layshaft_core::fluids::{ThinnerOf, two_part};
/// let mixed = two_part(500.0, (4.0, 1.0), 10.0, ThinnerOf::BaseAndHardener);
/// assert!((mixed.base - 363.64).abs() < 0.005 && (mixed.hardener - 90.91).abs() < 0.005);
/// assert!((mixed.thinner - 45.45).abs() < 0.005);
/// ```
pub fn two_part(ready: f64, (base, hardener): (f64, f64), thinner_percent: f64, of: ThinnerOf) -> TwoPart {
    let share = thinner_percent / 100.0;
    let thinner = match of {
        ThinnerOf::BaseAndHardener => share * (base + hardener),
        ThinnerOf::Base => share * base,
    };
    let part = ready / (base + hardener + thinner);
    TwoPart { base: base * part, hardener: hardener * part, thinner: thinner * part }
}

/// Thinner to add, in the unit of the paint: `T = p / 100 · V`, `p` per cent of the **unthinned** paint.
///
/// Source: convention of paint sheets (from memory). Range: one-part paint.
///
/// ```
/// assert_eq!(layshaft_core::fluids::thinner_to_add(500.0, 10.0), 50.0);
/// ```
pub fn thinner_to_add(paint: f64, percent: f64) -> f64 {
    percent / 100.0 * paint
}

/// Volume that a weight is, mL: `V = m / ρ`, `m` in g, `ρ` in g/mL.
///
/// Refused for a density that no paint has. Source: definition of density; computed. Range: 0.5 to 4 g/mL.
///
/// ```
/// assert_eq!(layshaft_core::fluids::volume_of_weight(150.0, 1.5), Ok(100.0));
/// ```
pub fn volume_of_weight(grams: f64, density: f64) -> Result<f64, Refused> {
    let density = crate::bounds::DENSITY.check(density)?;
    Ok(grams / density)
}

formula! {
    /// Oil for premix.
    Premix in Fluids, "V_oil = 1000 · V / n"
    takes {
        /// Fuel, litres.
        "V" fuel_litres: f64 = within(&bounds::FUEL);
        /// Parts of fuel to one of oil.
        "n" parts_fuel: f64 = within(&bounds::PREMIX_PARTS);
    }
    gives {
        /// Oil.
        oil "V_oil" Millilitre;
        /// Oil of the fuel.
        of_fuel "100 / n" Percent;
        /// Oil of the mixture.
        of_mixture "100 / (n + 1)" Percent;
    }
    from Source::new(FormulaSource::PremixConvention, Standing::SecondHand);
    it => Ok([premix_oil(it.fuel_litres, it.parts_fuel), 100.0 / it.parts_fuel, 100.0 / (it.parts_fuel + 1.0)])
}

formula! {
    /// Base, hardener and thinner of an amount ready to use.
    TwoPartMix in Fluids, "A = V · a / (a + b + t / 100 · (a + (1 − o) · b)), B = A · b / a, T = A / a · t / 100 · (a + (1 − o) · b)"
    takes {
        /// Amount ready to use, millilitres.
        "V" ready_ml: f64 = within(&bounds::READY_ML);
        /// Parts of base.
        "a" parts_base: f64 = within(&bounds::MIX_PARTS);
        /// Parts of hardener.
        "b" parts_hardener: f64 = within(&bounds::MIX_PARTS);
        /// Thinner, per cent.
        "t" thinner_percent: f64 = within(&bounds::THINNER);
        /// The per cent is meant of the base alone.
        "o" thinner_of_base: bool = Accepts::YesOrNo;
    }
    gives {
        /// Base.
        base "A" Millilitre;
        /// Hardener.
        hardener "B" Millilitre;
        /// Thinner.
        thinner "T" Millilitre;
    }
    from Source::new(FormulaSource::SheetConventions, Standing::Memory);
    it => {
        let of = if it.thinner_of_base { ThinnerOf::Base } else { ThinnerOf::BaseAndHardener };
        let mixed = two_part(it.ready_ml, (it.parts_base, it.parts_hardener), it.thinner_percent, of);
        Ok([mixed.base, mixed.hardener, mixed.thinner])
    }
}

formula! {
    /// Thinner into a one-part paint.
    Thinning in Fluids, "T = t / 100 · V"
    takes {
        /// Paint, unthinned, millilitres.
        "V" paint_ml: f64 = within(&bounds::READY_ML);
        /// Thinner, per cent of it.
        "t" thinner_percent: f64 = within(&bounds::THINNER);
    }
    gives {
        /// Thinner.
        thinner "T" Millilitre;
        /// Together.
        together "V + T" Millilitre;
    }
    from Source::new(FormulaSource::PaintSheets, Standing::Memory);
    it => {
        let thinner = thinner_to_add(it.paint_ml, it.thinner_percent);
        Ok([thinner, it.paint_ml + thinner])
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn the_check_values_of_premix_hold() {
        for (parts, oil) in [(50.0, 100.0), (40.0, 125.0), (32.0, 156.25), (25.0, 200.0), (20.0, 250.0)] {
            assert!((premix_oil(5.0, parts) - oil).abs() < 1e-12);
        }
        // US measures: a gallon is 3.785411784 L, a fluid ounce 29.5735295625 mL.
        let ounces = |gallons: f64, parts| premix_oil(gallons * 3.785_411_784, parts) / 29.573_529_562_5;
        assert!((ounces(1.0, 50.0) - 2.56).abs() < 1e-9 && (ounces(1.0, 40.0) - 3.2).abs() < 1e-9);
        assert!((ounces(5.0, 50.0) - 12.8).abs() < 1e-9);
    }

    #[test]
    fn thinner_of_the_base_alone_is_less() {
        let mixed = two_part(500.0, (4.0, 1.0), 10.0, ThinnerOf::Base);
        assert!((mixed.base - 370.37).abs() < 0.005 && (mixed.hardener - 92.59).abs() < 0.005);
        assert!((mixed.thinner - 37.04).abs() < 0.005);
    }

    proptest! {
        #[test]
        fn the_parts_add_up_and_keep_their_ratio(
            ready in 10.0..5000.0, base in 0.5..20.0, hardener in 0.5..5.0, thinner in 0.0..100.0,
        ) {
            for of in [ThinnerOf::Base, ThinnerOf::BaseAndHardener] {
                let mixed = two_part(ready, (base, hardener), thinner, of);
                prop_assert!((mixed.base + mixed.hardener + mixed.thinner - ready).abs() < 1e-9 * ready);
                prop_assert!((mixed.base * hardener - mixed.hardener * base).abs() < 1e-9 * ready * base);
            }
        }
    }
}
