//! The area of a part that is painted, from a tape measure.

use std::f64::consts::PI;

use layshaft_wire::wire;

use crate::bounds;
use crate::error::Refused;
use crate::quantity::{Accepts, FormulaSource, Source, Standing, formula, within};

/// What is painted.
#[wire(stored)]
#[derive(Default)]
pub enum PaintedPart {
    /// Fuel tank.
    Tank,
    /// Mudguard.
    Mudguard,
    /// Side panel.
    SidePanel,
    /// Wheel.
    Wheel,
    /// Frame or a spot on it.
    Frame,
    /// Something else.
    #[default]
    Other,
}

/// A surface as one measures it with a tape.
#[wire(stored)]
pub enum Surface {
    /// A shell: tank, mudguard, side panel. Length along it, girth across it from edge to edge over the bulge.
    Shell {
        /// Length along the part, following it, mm.
        length_mm: f64,
        /// Girth across the part at its widest, mm.
        girth_mm: f64,
        /// Painted inside too.
        both_sides: bool,
        /// How many alike.
        count: u32,
    },
    /// A rim: its diameter, and the girth across it from edge to edge.
    Rim {
        /// Diameter of the rim, mm.
        diameter_mm: f64,
        /// Girth across the rim, mm; all round it for a rim painted on both faces.
        girth_mm: f64,
        /// How many alike.
        count: u32,
    },
    /// A tube or rod: frame tube, spoke, stay, hub.
    Tube {
        /// Outer diameter, mm.
        diameter_mm: f64,
        /// Length, mm.
        length_mm: f64,
        /// How many alike.
        count: u32,
    },
}

/// Area of a shell, m²: `A = L · G · s · n / 10⁶`.
///
/// - `L` length and `G` girth, mm; `s` 1 or 2 sides; `n` pieces
///
/// Source: geometry; exact for a sheet bent one way, an upper estimate for a rounded one (the girth is the widest).
///
/// ```
/// // A tank 480 mm long and 620 mm round from seam to seam: at most 0.30 m².
/// assert!((layshaft_core::record::shell_area(480.0, 620.0, 1, 1) - 0.2976).abs() < 1e-12);
/// ```
pub fn shell_area(length_mm: f64, girth_mm: f64, sides: u32, count: u32) -> f64 {
    length_mm * girth_mm * f64::from(sides) * f64::from(count) / 1e6
}

/// Area of a rim, m²: `A = π · D · G · n / 10⁶`.
///
/// - `D` diameter on which the middle of the girth lies, `G` girth across the rim, mm; `n` pieces
///
/// Source: Pappus' theorem (the area of a surface of revolution is its girth times the way of its centroid); from memory.
///
/// ```
/// assert!((layshaft_core::record::rim_area(460.0, 110.0, 1) - 0.15896).abs() < 0.00001);
/// ```
pub fn rim_area(diameter_mm: f64, girth_mm: f64, count: u32) -> f64 {
    PI * diameter_mm * girth_mm * f64::from(count) / 1e6
}

/// Area of a tube without its ends, m²: `A = π · d · L · n / 10⁶`.
///
/// - `d` outer diameter, `L` length, mm; `n` pieces
///
/// Source: geometry; computed.
///
/// ```
/// // 36 spokes of 3 mm, 180 mm long.
/// assert!((layshaft_core::record::tube_area(3.0, 180.0, 36) - 0.06107).abs() < 0.00001);
/// ```
pub fn tube_area(diameter_mm: f64, length_mm: f64, count: u32) -> f64 {
    PI * diameter_mm * length_mm * f64::from(count) / 1e6
}

impl Surface {
    /// Its area, m². Refused: a measure or a number of pieces outside its range.
    pub fn square_metres(&self) -> Result<f64, Refused> {
        let pieces = |count: u32| bounds::PIECES.check(f64::from(count)).map(|_| count);
        let diameter = |value| bounds::SURFACE_DIAMETER.check(value);
        let (length, girth) = (|value| bounds::SURFACE_LENGTH.check(value), |value| bounds::SURFACE_GIRTH.check(value));
        Ok(match *self {
            Self::Shell { length_mm, girth_mm, both_sides, count } => {
                shell_area(length(length_mm)?, girth(girth_mm)?, if both_sides { 2 } else { 1 }, pieces(count)?)
            }
            Self::Rim { diameter_mm, girth_mm, count } => {
                rim_area(diameter(diameter_mm)?, girth(girth_mm)?, pieces(count)?)
            }
            Self::Tube { diameter_mm, length_mm, count } => {
                tube_area(diameter(diameter_mm)?, length(length_mm)?, pieces(count)?)
            }
        })
    }
}

/// The area of all surfaces together, m². Refused: as [`Surface::square_metres`], and a sum outside the painted area.
pub fn area_of(surfaces: &[Surface]) -> Result<f64, Refused> {
    let areas = surfaces.iter().map(Surface::square_metres).collect::<Result<Vec<f64>, _>>()?;
    bounds::PAINTED_AREA.of("surfaces").check(areas.into_iter().sum())
}

formula! {
    /// Area of a shell: tank, mudguard, side panel.
    ShellArea in Paint, "A = L · G · s · n / 10⁶"
    takes {
        /// Length along the part, millimetres.
        "L" length_mm: f64 = within(&bounds::SURFACE_LENGTH);
        /// Girth across it at its widest, millimetres.
        "G" girth_mm: f64 = within(&bounds::SURFACE_GIRTH);
        /// Painted inside too.
        "both sides" both_sides: bool = Accepts::YesOrNo;
        /// How many alike.
        "n" count: u32 = within(&bounds::PIECES);
    }
    gives {
        /// Area.
        area "A" SquareMetre;
    }
    from Source::new(FormulaSource::Geometry, Standing::Computed);
    it => Ok([shell_area(it.length_mm, it.girth_mm, if it.both_sides { 2 } else { 1 }, it.count)])
}

formula! {
    /// Area of a rim.
    RimArea in Paint, "A = π · D · G · n / 10⁶"
    takes {
        /// Diameter on which the middle of the girth lies, millimetres.
        "D" diameter_mm: f64 = within(&bounds::SURFACE_DIAMETER);
        /// Girth across the rim, millimetres.
        "G" girth_mm: f64 = within(&bounds::SURFACE_GIRTH);
        /// How many alike.
        "n" count: u32 = within(&bounds::PIECES);
    }
    gives {
        /// Area.
        area "A" SquareMetre;
    }
    from Source::new(FormulaSource::Pappus, Standing::Memory);
    it => Ok([rim_area(it.diameter_mm, it.girth_mm, it.count)])
}

formula! {
    /// Area of a tube or rod without its ends.
    TubeArea in Paint, "A = π · d · L · n / 10⁶"
    takes {
        /// Outer diameter, millimetres.
        "d" diameter_mm: f64 = within(&bounds::SURFACE_DIAMETER);
        /// Length, millimetres.
        "L" length_mm: f64 = within(&bounds::SURFACE_LENGTH);
        /// How many alike.
        "n" count: u32 = within(&bounds::PIECES);
    }
    gives {
        /// Area.
        area "A" SquareMetre;
    }
    from Source::new(FormulaSource::Geometry, Standing::Computed);
    it => Ok([tube_area(it.diameter_mm, it.length_mm, it.count)])
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::error::{Code, Refusal};

    #[test]
    fn the_areas_of_bodies_that_are_known_come_out() {
        // A rim whose section is a circle of radius r on a circle of radius R is a torus: 4 π² R r.
        let (big, small) = (230.0, 20.0);
        let torus = 4.0 * PI * PI * big * small / 1e6;
        assert!((rim_area(2.0 * big, 2.0 * PI * small, 1) - torus).abs() < 1e-12);
        // A half cylinder 1 m long of radius 100 mm, as a mudguard from both sides.
        assert!((shell_area(1000.0, PI * 100.0, 2, 1) - tube_area(200.0, 1000.0, 1)).abs() < 1e-12);
    }

    #[test]
    fn a_wheel_is_the_sum_of_rim_hub_and_spokes() {
        let wheel = [
            Surface::Rim { diameter_mm: 460.0, girth_mm: 110.0, count: 1 },
            Surface::Tube { diameter_mm: 130.0, length_mm: 90.0, count: 1 },
            Surface::Tube { diameter_mm: 3.0, length_mm: 180.0, count: 36 },
        ];
        assert!((area_of(&wheel).unwrap() - (0.15896 + 0.03676 + 0.06107)).abs() < 0.00003);
    }

    #[test]
    fn measures_outside_their_range_and_no_surface_at_all_are_refused() {
        let refusal = |surfaces: &[Surface]| {
            let refusal = Refusal::from(area_of(surfaces).unwrap_err());
            (refusal.code, refusal.field.unwrap_or_default())
        };
        let shell = |length_mm, girth_mm, count| Surface::Shell { length_mm, girth_mm, both_sides: false, count };
        assert_eq!(refusal(&[shell(0.0, 600.0, 1)]), (Code::OutOfRange, "lengthMm".to_owned()));
        assert_eq!(refusal(&[shell(400.0, f64::NAN, 1)]), (Code::NotANumber, "girthMm".to_owned()));
        assert_eq!(refusal(&[shell(400.0, 600.0, 0)]), (Code::OutOfRange, "count".to_owned()));
        assert_eq!(refusal(&[]), (Code::OutOfRange, "surfaces".to_owned()));
    }

    proptest! {
        #[test]
        fn two_pieces_are_twice_one(length in 10.0..2000.0, girth in 10.0..2000.0, count in 1u32..50) {
            let one = shell_area(length, girth, 1, count);
            prop_assert!((shell_area(length, girth, 1, 2 * count) - 2.0 * one).abs() < 1e-9);
            prop_assert!((shell_area(length, girth, 2, count) - 2.0 * one).abs() < 1e-9);
        }
    }
}
