//! Brake fluid: grades, boiling points, what may be topped up with what, and when it is due.
//!
//! Boiling points are the least that FMVSS 116 asks for, read in restatements; a good fluid of a grade lies above.

use layshaft_wire::wire;

use crate::brakes::message::{BrakesFinding, BrakesMessage, BrakesRefused, BrakesSource};
use crate::error::Refused;
use crate::message::Message;
use crate::quantity::{Accepts, Finding, FindingCode, Source, Standing, Weight, formula};
use crate::record::FluidGrade;
use crate::units::Unit;

/// Whether two fluids may meet.
#[wire]
pub enum Meeting {
    /// The same grade.
    Same,
    /// They mix; the boiling points of the lower grade count from then on.
    AsTheLower,
    /// Never: flush and strip down instead.
    Never,
}

/// A grade of brake fluid.
#[wire]
pub struct FluidCard {
    /// Grade.
    pub grade: FluidGrade,
    /// As it is printed on the cap.
    pub name: String,
    /// What it is made of.
    pub base: Message,
    /// Least boiling point new, °C; none where the standard has none.
    pub dry_celsius: Option<f64>,
    /// Least boiling point with 3.7 % water, °C.
    pub wet_celsius: Option<f64>,
    /// Grades that it may be topped up with.
    pub mixes_with: Vec<FluidGrade>,
}

impl FluidGrade {
    /// Least boiling points new and with 3.7 % water, °C.
    ///
    /// Source: FMVSS 116, in restatement (adelaideoil.com “brake fluid DOT 3 DOT 4 explained”; standing: second hand). The
    /// often quoted 270 °C for DOT 5.1 is not in it. Range: none for mineral oil.
    ///
    /// ```
    /// use layshaft_core::record::FluidGrade;
    /// assert_eq!(FluidGrade::Dot4.boiling_celsius(), Some((230.0, 155.0)));
    /// ```
    pub fn boiling_celsius(self) -> Option<(f64, f64)> {
        match self {
            Self::Dot3 => Some((205.0, 140.0)),
            Self::Dot4 => Some((230.0, 155.0)),
            Self::Dot5 | Self::Dot51 => Some((260.0, 180.0)),
            Self::Mineral => None,
        }
    }

    fn glycol(self) -> bool {
        matches!(self, Self::Dot3 | Self::Dot4 | Self::Dot51)
    }

    /// Whether it may meet another grade in one system.
    ///
    /// Source: FMVSS 116 asks the glycol grades to be compatible (second hand); silicone and mineral oil never mix with
    /// them: glycol swells the seals of the one, mineral oil those of the other.
    ///
    /// ```
    /// use layshaft_core::record::FluidGrade;
    /// use layshaft_core::brakes::Meeting;
    /// assert_eq!(FluidGrade::Dot4.meets(FluidGrade::Dot51), Meeting::AsTheLower);
    /// assert_eq!(FluidGrade::Dot4.meets(FluidGrade::Dot5), Meeting::Never);
    /// ```
    pub fn meets(self, other: Self) -> Meeting {
        match (self == other, self.glycol() && other.glycol()) {
            (true, _) => Meeting::Same,
            (false, true) => Meeting::AsTheLower,
            (false, false) => Meeting::Never,
        }
    }

    /// The grade as the page shows it.
    pub fn card(self) -> FluidCard {
        let base = match self {
            Self::Dot3 => BrakesMessage::BaseGlycol,
            Self::Dot4 | Self::Dot51 => BrakesMessage::BaseBorate,
            Self::Dot5 => BrakesMessage::BaseSilicone,
            Self::Mineral => BrakesMessage::BaseMineral,
        };
        FluidCard {
            grade: self,
            name: self.name().to_owned(),
            base: base.into(),
            dry_celsius: self.boiling_celsius().map(|(dry, _)| dry),
            wet_celsius: self.boiling_celsius().map(|(_, wet)| wet),
            mixes_with: Self::ALL.into_iter().filter(|other| self.meets(*other) == Meeting::AsTheLower).collect(),
        }
    }
}

/// Where the boiling points come from.
pub fn fluid_source() -> Source {
    Source::new(BrakesSource::Boiling, Standing::SecondHand)
}

/// Age at which glycol fluid is due, years. Common practice; the manual's interval wins.
pub const CHANGE_YEARS: f64 = 2.0;
/// Share of water at which fluid is due, per cent. Common practice.
pub const CHANGE_WATER_PERCENT: f64 = 3.0;

/// What to say about a filling and what would be poured in.
pub(crate) fn findings(
    now: Option<FluidGrade>,
    poured: Option<FluidGrade>,
    years: Option<f64>,
    water_percent: Option<f64>,
) -> Vec<Finding> {
    let mut found = Vec::new();
    if let (Some(now), Some(poured)) = (now, poured) {
        let meeting = now.meets(poured);
        let (poured, now) = (poured.name().to_owned(), now.name().to_owned());
        found.extend(match meeting {
            Meeting::Same => None,
            Meeting::AsTheLower => Some(Finding::new(
                FindingCode::BrakeFluidMixed,
                Weight::Note,
                BrakesFinding::FluidMixed { poured, now },
            )),
            Meeting::Never => Some(Finding::new(
                FindingCode::BrakeFluidNeverMix,
                Weight::Stopper,
                BrakesFinding::FluidNeverMix { poured, now },
            )),
        });
    }
    let old = years
        .filter(|years| *years >= CHANGE_YEARS)
        .map(|years| BrakesFinding::FluidOld { years: Unit::None.of(years) });
    let wet = water_percent
        .filter(|water| *water >= CHANGE_WATER_PERCENT)
        .map(|water| BrakesFinding::FluidWet { water: Unit::Percent.of(water) });
    found.extend(wet.or(old).map(|due| Finding::new(FindingCode::BrakeFluidDue, Weight::Care, due)));
    found
}

formula! {
    /// Least boiling points of a brake fluid.
    BrakeFluidBoiling in Brakes, "by table"
    takes {
        /// Grade as on the cap.
        "grade" fluid: String = Accepts::Text;
    }
    gives {
        /// New.
        dry "t_dry" Celsius;
        /// With 3.7 % water.
        wet "t_wet" Celsius;
        /// New.
        dry_fahrenheit "t_dry" Fahrenheit;
        /// With 3.7 % water.
        wet_fahrenheit "t_wet" Fahrenheit;
    }
    from fluid_source();
    it => FluidGrade::read(&it.fluid).and_then(|grade| {
        let (dry, wet) = grade.boiling_celsius().ok_or_else(|| Refused::Missing {
            field: "fluid".to_owned(),
            label: BrakesRefused::LabelBoiling { grade: grade.name().to_owned() }.into(),
            help: BrakesRefused::NoBoiling.into(),
        })?;
        let fahrenheit = |celsius: f64| Unit::Celsius.card().other.map(|other| celsius * other.factor + other.offset);
        Ok([Some(dry), Some(wet), fahrenheit(dry), fahrenheit(wet)])
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::FluidGrade;
    use crate::units::Unit;

    #[test]
    fn meeting_is_the_same_both_ways_and_silicone_stays_alone() {
        for one in FluidGrade::ALL {
            for other in FluidGrade::ALL {
                assert_eq!(one.meets(other), other.meets(one));
            }
            assert_eq!(FluidGrade::read(one.name()), Ok(one));
        }
        assert!(FluidGrade::Dot5.card().mixes_with.is_empty() && FluidGrade::Mineral.card().mixes_with.is_empty());
        assert_eq!(FluidGrade::Dot4.card().mixes_with, [FluidGrade::Dot3, FluidGrade::Dot51]);
    }

    #[test]
    fn the_boiling_points_are_those_of_the_standard_in_fahrenheit() {
        let to = Unit::Celsius.card().other.unwrap();
        let fahrenheit = |celsius: f64| celsius * to.factor + to.offset;
        for (grade, dry, wet) in
            [(FluidGrade::Dot3, 401.0, 284.0), (FluidGrade::Dot4, 446.0, 311.0), (FluidGrade::Dot51, 500.0, 356.0)]
        {
            let (new, old) = grade.boiling_celsius().unwrap();
            assert!((fahrenheit(new) - dry).abs() < 1e-9 && (fahrenheit(old) - wet).abs() < 1e-9);
        }
    }

    #[test]
    fn old_or_wet_fluid_is_due_and_silicone_on_glycol_forbids_riding() {
        let codes = |found: Vec<Finding>| found.into_iter().map(|found| (found.code, found.weight)).collect::<Vec<_>>();
        assert_eq!(codes(findings(Some(FluidGrade::Dot4), None, Some(1.0), Some(1.0))), []);
        assert_eq!(codes(findings(None, None, Some(9.0), None)), [(FindingCode::BrakeFluidDue, Weight::Care)]);
        assert_eq!(codes(findings(None, None, None, Some(3.5))).len(), 1);
        let never = findings(Some(FluidGrade::Dot4), Some(FluidGrade::Dot5), None, None);
        assert_eq!(codes(never), [(FindingCode::BrakeFluidNeverMix, Weight::Stopper)]);
    }
}
