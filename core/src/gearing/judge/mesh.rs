//! Whether a chain runs on a sprocket: pitch, roller and width, in the words of the trade.
//!
//! Geometry of the sizes in `chain_size`; that nothing but the same size is fitted is common practice.

use crate::error::Refused;
use crate::gearing::formulas::chain_dimensions;
use crate::gearing::formulas::{chain_size_named, chain_size_source, pitch};
use crate::gearing::message::ChainMeshMessage;
use crate::message::Message;
use crate::quantity::{Accepts, Finding, FindingCode, Weight, formula};
use crate::record::{ChainSize, Drive, End};
use crate::units::Unit;

/// How a chain meets a sprocket that is cut for a certain size.
#[derive(Clone, Debug, PartialEq)]
pub enum Mesh {
    /// The same size.
    Runs,
    /// It would go on but wear or wander.
    Badly(Message),
    /// It does not go on, or climbs off.
    Never(Message),
}

/// How a chain meets a sprocket.
///
/// Compared in this order: pitch (pins and teeth must agree), roller (it must sit on the ground of the tooth gap), width
/// between the inner plates (the tooth must go between them). Source: geometry of the sizes; common practice.
///
/// ```
/// use layshaft_core::record::ChainSize;
/// use layshaft_core::gearing::{Mesh, chain_on_sprocket};
/// assert_eq!(chain_on_sprocket(ChainSize::C520, ChainSize::C520), Mesh::Runs);
/// assert!(matches!(chain_on_sprocket(ChainSize::C520, ChainSize::C525), Mesh::Never(_)));
/// assert!(matches!(chain_on_sprocket(ChainSize::C532, ChainSize::C530), Mesh::Never(_)));
/// ```
pub fn chain_on_sprocket(chain: ChainSize, sprocket: ChainSize) -> Mesh {
    if chain == sprocket {
        return Mesh::Runs;
    }
    let (made, cut) = (chain_dimensions(chain), chain_dimensions(sprocket));
    let (chain, sprocket) = (made.name.to_owned(), cut.name.to_owned());
    let mm = |value: f64| Unit::Millimetre.of(value);
    let (rollers, gaps) = (mm(made.roller_mm), mm(cut.roller_mm));
    let (plates, teeth) = (mm(made.inner_width_mm), mm(cut.inner_width_mm));
    if made.pitch_mm != cut.pitch_mm {
        let (pins, teeth) = (mm(made.pitch_mm), mm(cut.pitch_mm));
        return Mesh::Never(ChainMeshMessage::ClimbsOut { chain, sprocket, pins, teeth }.into());
    }
    if made.roller_mm > cut.roller_mm + SAME_ROLLER_MM {
        return Mesh::Never(ChainMeshMessage::RidesHigh { chain, sprocket, rollers, gaps }.into());
    }
    if made.inner_width_mm < cut.inner_width_mm {
        return Mesh::Never(ChainMeshMessage::TooWide { chain, sprocket, plates, teeth }.into());
    }
    if made.roller_mm < cut.roller_mm - SAME_ROLLER_MM {
        return Mesh::Badly(ChainMeshMessage::Loose { chain, sprocket, rollers, gaps }.into());
    }
    Mesh::Badly(ChainMeshMessage::Wanders { chain, sprocket, plates, teeth }.into())
}

/// Rollers within this much count as the same: the sources themselves differ by less.
const SAME_ROLLER_MM: f64 = 0.05;

/// Refuses a chain that is not of the sprocket's size.
pub fn same_size(chain: ChainSize, sprocket: ChainSize) -> Result<(), Refused> {
    match chain_on_sprocket(chain, sprocket) {
        Mesh::Runs => Ok(()),
        Mesh::Badly(reason) | Mesh::Never(reason) => Err(Refused::Conflict { field: "chainSize".to_owned(), reason }),
    }
}

/// What is worth saying about mixed sizes on a drive.
pub(crate) fn on_mesh(drive: &Drive) -> Vec<Finding> {
    let Some(chain) = drive.chain_size else { return Vec::new() };
    let mut findings = Vec::new();
    for (code, end, sprocket) in [
        (FindingCode::ChainFrontSize, End::Front, drive.front_sprocket_size),
        (FindingCode::ChainRearSize, End::Rear, drive.rear_sprocket_size),
    ] {
        findings.extend(sprocket.and_then(|sprocket| match chain_on_sprocket(chain, sprocket) {
            Mesh::Runs => None,
            Mesh::Badly(why) => Some(Finding::new(code, Weight::Care, ChainMeshMessage::Badly { end, why })),
            Mesh::Never(why) => Some(Finding::new(code, Weight::Stopper, ChainMeshMessage::Never { end, why })),
        }));
    }
    findings
}

formula! {
    /// Whether a chain runs on a sprocket; refused where it does not.
    ChainOnSprocket in Drive, "by table: pitch, roller and inner width"
    takes {
        /// Size of the chain.
        "chain" chain_size: String = Accepts::Text;
        /// Size that the sprocket is cut for.
        "sprocket" sprocket_size: String = Accepts::Text;
    }
    gives {
        /// Common pitch.
        pitch "p" Millimetre;
    }
    from chain_size_source();
    it => chain_size_named("chainSize", &it.chain_size).and_then(|chain| {
        same_size(chain, chain_size_named("sprocketSize", &it.sprocket_size)?)?;
        Ok([pitch(chain)])
    })
}

#[cfg(test)]
mod tests {

    use super::*;

    #[test]
    fn the_pairs_that_are_mixed_up_most_are_told_apart() {
        let words = |chain, sprocket| match chain_on_sprocket(chain, sprocket) {
            Mesh::Runs => "runs".to_owned(),
            Mesh::Badly(reason) | Mesh::Never(reason) => reason.english(),
        };
        assert!(words(ChainSize::C520, ChainSize::C525).contains("too wide to go between"));
        assert!(words(ChainSize::C525, ChainSize::C520).contains("wanders"));
        assert!(words(ChainSize::C532, ChainSize::C530).contains("ride high"));
        assert!(words(ChainSize::C530, ChainSize::C532).contains("loose"));
        assert!(words(ChainSize::C428, ChainSize::C520).contains("12.7 mm apart and the teeth 15.875 mm"));
        assert!(words(ChainSize::C420, ChainSize::C428).contains("too wide"));
        assert!(words(ChainSize::C428, ChainSize::C420).contains("ride high"));
    }

    #[test]
    fn only_the_same_size_is_accepted() {
        let all = crate::gearing::formulas::ALL;
        for chain in all {
            for sprocket in all {
                assert_eq!(same_size(chain, sprocket).is_ok(), chain == sprocket, "{chain:?} {sprocket:?}");
            }
        }
    }

    #[test]
    fn a_mixed_drive_forbids_riding_and_an_unknown_sprocket_says_nothing() {
        let mut drive = Drive { chain_size: Some(ChainSize::C520), ..Drive::default() };
        assert_eq!(on_mesh(&drive), []);
        (drive.front_sprocket_size, drive.rear_sprocket_size) = (Some(ChainSize::C525), Some(ChainSize::C520));
        let found = on_mesh(&drive);
        assert_eq!(found.len(), 1);
        assert_eq!((found[0].code.as_str(), found[0].weight), ("chain.front-size", Weight::Stopper));
    }
}
