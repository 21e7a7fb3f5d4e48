//! What the pages of mixing and covering are asked, and what they answer.

use layshaft_wire::wire;

use crate::message::Message;
use crate::quantity::{Finding, Working};
use crate::record::{PutOn, Surface};

/// A two-part product.
#[wire(lenient)]
pub struct TwoPartAsk {
    /// Amount ready to use: mL, or g where the sheet mixes by weight.
    pub ready: f64,
    /// The sheet mixes by weight.
    pub by_weight: bool,
    /// Parts of base.
    pub parts_base: f64,
    /// Parts of hardener.
    pub parts_hardener: f64,
    /// Thinner, per cent.
    pub thinner_percent: f64,
    /// The per cent is meant of the base alone, not of base and hardener.
    pub thinner_of_base: bool,
    /// Density of the base, g/mL, to turn weight into volume or back.
    pub base_density: Option<f64>,
    /// Density of the hardener, g/mL.
    pub hardener_density: Option<f64>,
    /// Density of the thinner, g/mL.
    pub thinner_density: Option<f64>,
}

/// What is mixed.
#[wire]
pub enum Mix {
    /// Oil into fuel for a two-stroke.
    Premix {
        /// Fuel, L.
        fuel_litres: f64,
        /// Parts of fuel to one of oil: 50 for 50:1.
        parts_fuel: f64,
    },
    /// Base, hardener and thinner.
    TwoPart {
        /// The product.
        product: TwoPartAsk,
    },
    /// Thinner into a one-part paint.
    Thinning {
        /// Unthinned paint, mL.
        paint_ml: f64,
        /// Thinner, per cent of it.
        thinner_percent: f64,
    },
    /// Paint for an area.
    Cover {
        /// The area.
        area: CoverAsk,
    },
}

/// What to mix.
#[wire]
pub struct MixAsk {
    /// The mix.
    pub mix: Mix,
}

/// One part of a mix.
#[wire]
pub struct MixPart {
    /// What it is.
    pub name: Message,
    /// Volume, mL, where it is known.
    pub millilitres: Option<f64>,
    /// Weight, g, where it is known.
    pub grams: Option<f64>,
}

/// The same sheet read by the other convention.
#[wire]
pub struct OtherReading {
    /// The convention in words.
    pub words: Message,
    /// The parts by it.
    pub parts: Vec<MixPart>,
}

/// The mixing page.
#[wire]
pub struct MixAnswer {
    /// The answer in one line.
    pub sentence: Message,
    /// The parts, in the order in which they go into the cup.
    pub parts: Vec<MixPart>,
    /// By the other convention, where there are two.
    pub other: Option<OtherReading>,
    /// Paint for an area, where that was asked.
    pub cover: Option<CoverNeed>,
    /// What can hurt.
    pub cautions: Vec<Message>,
    /// What is worth saying.
    pub findings: Vec<Finding>,
    /// How it was worked out.
    pub working: Working,
}

/// An area to be painted.
#[wire(lenient)]
pub struct CoverAsk {
    /// Area, m².
    pub square_metres: f64,
    /// Coats.
    pub coats: u32,
    /// Spreading rate of one coat as printed, m²/L.
    pub spreading_rate: Option<f64>,
    /// Or solids by volume, per cent.
    pub solids_percent: Option<f64>,
    /// With the dry film of one coat, µm.
    pub dry_micrometres: Option<f64>,
    /// How it is put on; it tells the usual loss.
    pub put_on: Option<PutOn>,
    /// The loss itself, per cent; it wins.
    pub loss_percent: Option<f64>,
    /// Can, mL.
    pub can_ml: f64,
    /// The area as measured with a tape; it wins over the square metres.
    pub surfaces: Vec<Surface>,
    /// Thinner, per cent of the paint: the wet film to aim at grows with it, the paint needed does not.
    pub thinner_percent: Option<f64>,
}

/// Paint that an area takes.
#[wire]
pub struct CoverNeed {
    /// Area that was counted with, m².
    pub square_metres: f64,
    /// Spreading rate of one coat, m²/L.
    pub spreading_rate: f64,
    /// Wet film of one coat, µm, where solids and film were given.
    pub wet_micrometres: Option<f64>,
    /// At the least loss, mL.
    pub least_ml: f64,
    /// At the greatest loss, mL.
    pub most_ml: f64,
    /// Cans at the least loss.
    pub cans_least: u32,
    /// Cans at the greatest loss.
    pub cans_most: u32,
}
