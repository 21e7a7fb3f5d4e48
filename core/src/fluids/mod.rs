//! Filling and mixing: the right volume with the cups one owns, premix, two-part products, cans for an area.
//!
//! Reading order: the arithmetic (`pour`, `mix`, `surface`, `cover`), then the two answers: filling (`fill`) and mixing (`mix_sheet`).

mod cover;
mod fill;
mod mix;
mod mix_sheet;
mod pour;
mod surface;

pub use cover::{PutOn, cans, paint_needed, spreading_rate, thinned_solids, wet_film};
pub use fill::{FillAsk, FillChoice, FillSheet, fill_sheet};
pub use mix::{ThinnerOf, TwoPart, premix_oil, thinner_to_add, two_part, volume_of_weight};
pub use mix_sheet::{CoverAsk, CoverNeed, Mix, MixAsk, MixPart, MixSheet, OtherReading, TwoPartAsk, mix_sheet};
pub use pour::{Pour, in_words, split_pours};
pub use surface::{PaintedPart, Surface, area_of, rim_area, shell_area, tube_area};
