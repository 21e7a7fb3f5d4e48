//! Filling and mixing: the right volume with the cups one owns, premix, two-part products, cans for an area.
//!
//! Reading order: the arithmetic (`pour`, `mix`, `surface`, `cover`), then the two answers: filling (`fill`) and mixing
//! (`mix_sheet`, with `cover_sheet` for an area).

mod cover;
mod cover_sheet;
mod fill;
mod mix;
mod mix_sheet;
mod pour;

pub use cover::{cans, paint_needed, spreading_rate, thinned_solids, wet_film};
pub use cover_sheet::{CoverAsk, CoverNeed};
pub use fill::{FillAsk, FillChoice, FillSheet, fill_sheet};
pub use mix::{ThinnerOf, TwoPart, premix_oil, thinner_to_add, two_part, volume_of_weight};
pub use mix_sheet::{Mix, MixAsk, MixPart, MixSheet, OtherReading, TwoPartAsk, mix_sheet};
pub use pour::{Pour, in_words, split_pours};
