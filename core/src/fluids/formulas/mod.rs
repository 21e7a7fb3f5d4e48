//! The arithmetic of pouring, mixing and covering.

mod cover;
mod mix;
mod pour;

pub use cover::{PaintForArea, PaintNeeded, ThinnedFilm, cans, paint_needed, spreading_rate, thinned_solids, wet_film};
pub use mix::{
    Premix, ThinnerOf, Thinning, TwoPart, TwoPartMix, premix_oil, thinner_to_add, two_part, volume_of_weight,
};
pub use pour::{Pour, PourSplit, Poured, poured, split_pours};
pub(crate) use pour::{in_words, volume};
