//! Filling and mixing: the right volume with the cups one owns, premix, two-part products, cans for an area.
//!
//! Reading order: the arithmetic (`formulas`), and the pages (`page`).

mod formulas;
mod message;
mod page;

pub use formulas::{
    PaintForArea, PaintNeeded, Pour, PourSplit, Poured, Premix, ThinnedFilm, ThinnerOf, Thinning, TwoPart, TwoPartMix,
    cans, paint_needed, poured, premix_oil, split_pours, spreading_rate, thinned_solids, thinner_to_add, two_part,
    volume_of_weight, wet_film,
};
pub(crate) use message::{FillMessage, FluidsWorking, MixMessage};
pub use page::{
    CoverAsk, CoverNeed, FillAnswer, FillAsk, FillChoice, Mix, MixAnswer, MixAsk, MixPart, OtherReading, TwoPartAsk,
    fill_answer, mix_answer,
};
