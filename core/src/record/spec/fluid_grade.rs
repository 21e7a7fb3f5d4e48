//! Grades of brake fluid, as they are printed on the cap.

use layshaft_wire::wire;

use crate::error::{Refused, none_of};
use crate::message::FieldMessage;

/// Grades of brake fluid.
#[wire(stored)]
pub enum FluidGrade {
    /// DOT 3, glycol.
    Dot3,
    /// DOT 4, glycol with borate.
    Dot4,
    /// DOT 5, silicone.
    Dot5,
    /// DOT 5.1, glycol with borate.
    Dot51,
    /// Mineral oil, for systems that are made for it alone.
    Mineral,
}

impl FluidGrade {
    /// Every grade.
    pub const ALL: [Self; 5] = [Self::Dot3, Self::Dot4, Self::Dot5, Self::Dot51, Self::Mineral];

    /// As it is printed on the cap.
    pub fn name(self) -> &'static str {
        match self {
            Self::Dot3 => "DOT 3",
            Self::Dot4 => "DOT 4",
            Self::Dot5 => "DOT 5",
            Self::Dot51 => "DOT 5.1",
            Self::Mineral => "Mineral",
        }
    }

    /// Reads what is printed on a cap.
    ///
    /// ```
    /// use layshaft_core::record::FluidGrade;
    /// assert_eq!(FluidGrade::read("dot 5.1"), Ok(FluidGrade::Dot51));
    /// assert!(FluidGrade::read("DOT 6").is_err());
    /// ```
    pub fn read(text: &str) -> Result<Self, Refused> {
        let plain = |text: &str| text.to_lowercase().replace([' ', '-'], "");
        Self::ALL.into_iter().find(|grade| plain(grade.name()) == plain(text)).ok_or_else(|| Refused::Unreadable {
            field: "fluid".to_owned(),
            label: FieldMessage::BrakeFluid.into(),
            reason: none_of(text, Self::ALL.map(Self::name)),
        })
    }
}
