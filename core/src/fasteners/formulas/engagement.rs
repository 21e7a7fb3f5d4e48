//! How far a screw must go into aluminium, iron or steel, and what may stand in for a missing screw.
//!
//! Length of engagement after FED-STD-H28 (from memory), proved by a published handbook example. The rules in diameters are
//! disputed between handbooks, so they are a range.

use std::f64::consts::PI;

use crate::fasteners::message::ScrewMessage;
use crate::message::Message;

use layshaft_wire::wire;

/// Least thread engaged so that the screw breaks before the tapped thread strips, mm.
///
/// `L = F / (π · n · D_s · [1/(2n) + 0.57735 · (D_s − E_n)] · τ)`, `n = 1 / P`
///
/// - `F` load, N; `P` pitch, mm; `D_s` outer diameter of the screw, `E_n` flank diameter of the nut thread, mm; `τ` shear
///   strength of the tapped material, MPa
///
/// Source: FED-STD-H28 form (from memory); published example M10 × 1.5 in aluminium, 21.6 mm (taylorfrancis.com, second hand).
/// Range: 60° threads, clean and undamaged.
///
/// ```
/// let length = layshaft_core::fasteners::engagement_length(69_600.0, 1.5, 9.968, 9.206, 130.0);
/// assert!((length - 21.551).abs() < 5e-4);
/// ```
pub fn engagement_length(load_newtons: f64, pitch_mm: f64, screw_mm: f64, nut_flank_mm: f64, shear_mpa: f64) -> f64 {
    let n = 1.0 / pitch_mm;
    load_newtons / (PI * n * screw_mm * (1.0 / (2.0 * n) + 0.577_35 * (screw_mm - nut_flank_mm)) * shear_mpa)
}

/// Thread engaged by a rule in diameters, mm; a fine thread needs a quarter more (common practice).
///
/// ```
/// assert_eq!(layshaft_core::fasteners::engaged_by_rule(1.2, 10.0, true), 15.0);
/// ```
pub fn engaged_by_rule(diameters: f64, diameter_mm: f64, fine: bool) -> f64 {
    diameters * diameter_mm * if fine { FINE_FACTOR } else { 1.0 }
}

/// What the screw goes into.
#[wire]
pub enum TappedInto {
    /// Steel of about the screw's strength.
    Steel,
    /// Cast iron.
    CastIron,
    /// Wrought or hardened aluminium alloy.
    WroughtAluminium,
    /// Cast aluminium: engine cases, forks, hubs.
    CastAluminium,
}

impl TappedInto {
    /// Least and greatest rule for the engagement, in screw diameters, for a screw of class 8.8.
    ///
    /// Source: handbook tables for aluminium (Roloff/Matek and another, in excerpt, second hand) give 1.2 to 2.5 diameters
    /// and disagree; steel and cast iron common practice. Range: coarse thread; 1.25 times as much for fine.
    ///
    /// ```
    /// assert_eq!(layshaft_core::fasteners::TappedInto::CastAluminium.diameters(), (1.6, 2.5));
    /// ```
    pub fn diameters(self) -> (f64, f64) {
        match self {
            Self::Steel => (0.8, 1.0),
            Self::CastIron => (1.2, 1.5),
            Self::WroughtAluminium => (1.2, 2.0),
            Self::CastAluminium => (1.6, 2.5),
        }
    }

    /// In words.
    pub fn words(self) -> Message {
        match self {
            Self::Steel => ScrewMessage::IntoSteel,
            Self::CastIron => ScrewMessage::IntoCastIron,
            Self::WroughtAluminium => ScrewMessage::IntoWroughtAluminium,
            Self::CastAluminium => ScrewMessage::IntoCastAluminium,
        }
        .into()
    }
}

/// By how much longer a fine thread has to go in. Roloff/Matek in excerpt, second hand.
pub const FINE_FACTOR: f64 = 1.25;

/// Where a screw sits, as far as its replacement is concerned.
#[wire]
pub enum ScrewPlace {
    /// Caliper, disc, lever, torque arm, pedal.
    Brake,
    /// Axle, its nut and its clamps.
    Axle,
    /// Engine mounts, swing arm pivot.
    EngineMount,
    /// Handlebar, fork clamps, steering stem.
    Steering,
    /// Inside the engine: rods, camshaft, cylinder head.
    InsideEngine,
    /// Engine covers.
    Cover,
    /// Mudguards, side covers, lamps.
    Bodywork,
}

/// What may replace a screw there.
#[wire]
pub struct SubstituteRule {
    /// Where.
    pub place: ScrewPlace,
    /// A screw off the shelf of the same size and class may stand in.
    pub may_replace: bool,
    /// The rule.
    pub text: Message,
}

impl ScrewPlace {
    /// Every place.
    pub const ALL: [Self; 7] =
        [Self::Brake, Self::Axle, Self::EngineMount, Self::Steering, Self::InsideEngine, Self::Cover, Self::Bodywork];

    /// What may replace a screw there. Common practice; the maker's manual wins.
    pub fn rule(self) -> SubstituteRule {
        let (may_replace, text) = match self {
            Self::Brake => (false, ScrewMessage::RuleBrake),
            Self::Axle => (false, ScrewMessage::RuleAxle),
            Self::EngineMount => (false, ScrewMessage::RuleEngineMount),
            Self::Steering => (false, ScrewMessage::RuleSteering),
            Self::InsideEngine => (false, ScrewMessage::RuleInsideEngine),
            Self::Cover => (true, ScrewMessage::RuleCover),
            Self::Bodywork => (true, ScrewMessage::RuleBodywork),
        };
        SubstituteRule { place: self, may_replace, text: text.into() }
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn what_carries_a_life_is_never_replaced_off_the_shelf() {
        for place in [ScrewPlace::Brake, ScrewPlace::Axle, ScrewPlace::EngineMount, ScrewPlace::Steering] {
            assert!(!place.rule().may_replace);
        }
        assert_eq!(ScrewPlace::ALL.iter().filter(|place| place.rule().may_replace).count(), 2);
    }

    proptest! {
        #[test]
        fn softer_metal_and_more_load_need_more_thread(load in 1e3..1e5, shear in 60.0..400.0, more in 1.01..2.0) {
            let length = engagement_length(load, 1.5, 9.968, 9.206, shear);
            prop_assert!(engagement_length(load * more, 1.5, 9.968, 9.206, shear) > length);
            prop_assert!(engagement_length(load, 1.5, 9.968, 9.206, shear * more) < length);
        }
    }
}
