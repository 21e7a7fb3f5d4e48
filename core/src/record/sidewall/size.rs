//! A tyre size and the diameter that follows from it.
//!
//! The diameter is that of a new tyre as designed, unloaded: rim plus two sidewalls. UN Regulation No. 75 (paragraph 6.1.2)
//! reckons so, rounding the rim to whole millimetres (from memory); the exact inch is used here, as a tyre maker's page
//! does whose three worked sizes are checked below.

use std::fmt;

use layshaft_wire::wire;

use super::diameter::{circumference, outer_diameter};
use super::rating::{Service, SpeedSymbol};

/// Width and height of the section, in the system that the sidewall uses.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Section {
    /// Millimetres and per cent: `130/90`.
    Metric {
        /// Nominal width, mm.
        width_mm: u32,
        /// Height over width, per cent.
        ratio: u32,
    },
    /// Inches: `3.00`, and the low-section `4.60` and `4.25/85`.
    Inch {
        /// Nominal width, hundredths of an inch.
        hundredths: u32,
        /// Height over width, per cent, where it is written.
        ratio: Option<u32>,
    },
    /// Letters: `MT90`. The metric size beside it is the nearest equivalent, not the same thing.
    Alpha {
        /// The letter after M.
        letter: AlphaLetter,
        /// Height over width, per cent.
        ratio: u32,
    },
}

/// The letter of an alpha size that stands for the width.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct AlphaLetter(char);

/// Letter, least and greatest width that conversion charts give for it, mm. The charts are wcpmx.com “Motorcycle Tire Size
/// Conversion Chart” and webbikeworld.com “Tire Size Designations” (second hand); they disagree about P.
const LETTERS: [(char, u32, u32); 9] = [
    ('H', 80, 80),
    ('J', 90, 90),
    ('M', 100, 100),
    ('N', 110, 110),
    ('P', 110, 120),
    ('R', 120, 120),
    ('T', 130, 130),
    ('U', 140, 140),
    ('V', 150, 150),
];

impl AlphaLetter {
    /// The letter where the charts know it.
    pub fn of(letter: char) -> Option<Self> {
        LETTERS.iter().any(|(known, ..)| *known == letter).then_some(Self(letter))
    }

    /// Every letter that the charts know.
    pub fn all() -> impl Iterator<Item = char> {
        LETTERS.iter().map(|(letter, ..)| *letter)
    }

    /// Least and greatest width that the charts give, mm.
    pub(crate) fn widths_mm(self) -> (f64, f64) {
        LETTERS
            .iter()
            .find(|(letter, ..)| *letter == self.0)
            .map_or((0.0, 0.0), |(_, least, most)| (f64::from(*least), f64::from(*most)))
    }
}

/// How the carcass is built.
#[wire]
pub enum Construction {
    /// Cross-ply: a dash on the sidewall.
    Diagonal,
    /// Cross-ply with a belt: B.
    BiasBelted,
    /// Radial: R.
    Radial,
}

/// Whether the tyre runs with a tube.
#[wire]
pub enum Tube {
    /// TT: with a tube.
    TubeType,
    /// TL: without, on a rim made for it.
    Tubeless,
}

/// A tyre size as on the sidewall. [`TyreSize::read`] makes it, [`Display`](fmt::Display) writes it back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TyreSize {
    /// Width and height.
    pub section: Section,
    /// Carcass.
    pub construction: Construction,
    /// Rim diameter code, inches.
    pub rim_code: u32,
    /// Speed symbol inside the size, as in `3.00S18` or `180/55ZR17`.
    pub size_speed: Option<SpeedSymbol>,
    /// Marked M/C: for motorcycles.
    pub motorcycle: bool,
    /// Load index and speed symbol after the size.
    pub service: Option<Service>,
    /// Ply rating: `4PR`.
    pub ply: Option<u32>,
    /// Marked reinforced.
    pub reinforced: bool,
    /// With or without a tube, where it is marked.
    pub tube: Option<Tube>,
}

impl TyreSize {
    /// Outer diameter of a new tyre as designed, mm.
    ///
    /// `D = 25.4·c + 2·H`, `H = S·r/100`
    ///
    /// - `c` rim code, inches; `S` section width, mm; `r` aspect ratio, per cent; `H` section height, mm
    /// - where the code leaves `r` (or, in alpha sizes, `S`) open, the middle of what the sources give:
    ///   see [`outer_diameter_range_mm`](Self::outer_diameter_range_mm)
    ///
    /// Source: UN Regulation No. 75, paragraph 6.1.2 (from memory); maxxis.com “tyre sidewall markings” (second hand). Range:
    /// unloaded, new; a real tyre is up to some per cent off, see [`new_tyre_range_mm`](Self::new_tyre_range_mm).
    ///
    /// ```
    /// use layshaft_core::record::TyreSize;
    /// // 120/90-18: published as 673.2 mm.
    /// assert!((TyreSize::read("120/90-18").unwrap().outer_diameter_mm() - 673.2).abs() < 1e-9);
    /// ```
    pub fn outer_diameter_mm(&self) -> f64 {
        let (least, most) = self.outer_diameter_range_mm();
        f64::midpoint(least, most)
    }

    /// Least and greatest outer diameter that the sources give for this code, mm; both the same where the code is plain.
    ///
    /// Low-section inch sizes (4.60-18 and its like) do not carry their aspect ratio, and sources give 82 % (from memory) to
    /// 90 % (maxxis.com, second hand): 2.9 % in diameter. Older inch sizes count as 100 % (ibid.).
    ///
    /// ```
    /// use layshaft_core::record::TyreSize;
    /// let (least, most) = TyreSize::read("4.60-18").unwrap().outer_diameter_range_mm();
    /// assert!((least - 648.8).abs() < 0.05 && (most - 667.5).abs() < 0.05);
    /// ```
    pub fn outer_diameter_range_mm(&self) -> (f64, f64) {
        let (least, most) = self.heights_mm();
        (outer_diameter(self.rim_code, least), outer_diameter(self.rim_code, most))
    }

    /// Least and greatest outer diameter that a new tyre of this code may have, mm: section heights of 97 to 107 %.
    ///
    /// Source: UN Regulation No. 75, paragraph 6.1.4, highway tyres on rims of code 13 and more (from memory, unconfirmed).
    ///
    /// ```
    /// use layshaft_core::record::TyreSize;
    /// let (least, most) = TyreSize::read("3.00-18").unwrap().new_tyre_range_mm();
    /// assert!((least - 605.03).abs() < 0.01 && (most - 620.27).abs() < 0.01);
    /// ```
    pub fn new_tyre_range_mm(&self) -> (f64, f64) {
        let (least, most) = self.heights_mm();
        (outer_diameter(self.rim_code, 0.97 * least), outer_diameter(self.rim_code, 1.07 * most))
    }

    /// Rolling circumference of the tyre unloaded, mm.
    ///
    /// `U = π · D`
    ///
    /// Source: geometry, computed. Range: an upper bound for a tyre of exactly this diameter; under load it rolls some per
    /// cent shorter, which only a roll-out tells.
    ///
    /// ```
    /// use layshaft_core::record::TyreSize;
    /// assert!((TyreSize::read("130/90-16").unwrap().circumference_mm() - 2011.9).abs() < 0.05);
    /// ```
    pub fn circumference_mm(&self) -> f64 {
        circumference(self.outer_diameter_mm())
    }

    /// Least and greatest nominal section width, mm; both the same where the code is plain.
    ///
    /// ```
    /// use layshaft_core::record::TyreSize;
    /// let (least, most) = TyreSize::read("3.00-18").unwrap().width_range_mm();
    /// assert!((least - 76.2).abs() < 1e-9 && least == most);
    /// ```
    pub fn width_range_mm(&self) -> (f64, f64) {
        match self.section {
            Section::Metric { width_mm, .. } => (f64::from(width_mm), f64::from(width_mm)),
            Section::Inch { hundredths, .. } => (0.254 * f64::from(hundredths), 0.254 * f64::from(hundredths)),
            Section::Alpha { letter, .. } => letter.widths_mm(),
        }
    }

    /// The speed symbol that holds: the one of the service description, else the one inside the size.
    pub fn speed(&self) -> Option<SpeedSymbol> {
        self.service.map(|service| service.speed).or(self.size_speed)
    }

    /// Whether the other code stands for a tyre of the same dimensions, whatever its ratings.
    pub fn same_dimensions(&self, other: &Self) -> bool {
        self.section == other.section && self.rim_code == other.rim_code
    }

    /// Least and greatest section height, mm.
    pub(crate) fn heights_mm(&self) -> (f64, f64) {
        let share = |ratio: u32| f64::from(ratio) / 100.0;
        match self.section {
            Section::Metric { width_mm, ratio } => {
                let height = f64::from(width_mm) * share(ratio);
                (height, height)
            }
            Section::Inch { hundredths, ratio } => {
                let width = 0.254 * f64::from(hundredths);
                let (least, most) = match ratio {
                    Some(ratio) => (share(ratio), share(ratio)),
                    None if is_low_section(hundredths) => (0.82, 0.90),
                    None => (1.0, 1.0),
                };
                (width * least, width * most)
            }
            Section::Alpha { letter, ratio } => {
                let (least, most) = letter.widths_mm();
                (least * share(ratio), most * share(ratio))
            }
        }
    }
}

/// Low-section inch sizes are known by a width that ends in .10 or .60 (second hand, maxxis.com: their widths are unique).
pub(crate) fn is_low_section(hundredths: u32) -> bool {
    matches!(hundredths % 100, 10 | 60)
}

impl fmt::Display for TyreSize {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.section {
            Section::Metric { width_mm, ratio } => write!(f, "{width_mm}/{ratio}")?,
            Section::Inch { hundredths, ratio } => {
                write!(f, "{}.{:02}", hundredths / 100, hundredths % 100)?;
                if let Some(ratio) = ratio {
                    write!(f, "/{ratio}")?;
                }
            }
            Section::Alpha { letter, ratio } => write!(f, "M{}{ratio}", letter.0)?,
        }
        if let Some(speed) = self.size_speed {
            write!(f, "{speed}")?;
        }
        // B and R before a dash would name the carcass, so a speed symbol B or R has its D written out.
        let carcass_letter = |speed: SpeedSymbol| [SpeedSymbol::of('B'), SpeedSymbol::of('R')].contains(&Some(speed));
        match self.construction {
            Construction::Diagonal if self.size_speed.is_some_and(carcass_letter) => write!(f, "D")?,
            Construction::Diagonal => write!(f, "-")?,
            Construction::BiasBelted => write!(f, "B")?,
            Construction::Radial => write!(f, "R")?,
        }
        write!(f, "{}", self.rim_code)?;
        if self.motorcycle {
            write!(f, " M/C")?;
        }
        if let Some(service) = self.service {
            write!(f, " {service}")?;
        }
        if let Some(ply) = self.ply {
            write!(f, " {ply}PR")?;
        }
        if self.reinforced {
            write!(f, " REINF")?;
        }
        match self.tube {
            Some(Tube::TubeType) => write!(f, " TT"),
            Some(Tube::Tubeless) => write!(f, " TL"),
            None => Ok(()),
        }
    }
}
