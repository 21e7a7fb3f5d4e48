//! The pages of filling, mixing and covering an area.

mod ask;
mod cover;
mod fill;
mod mix;
mod working;

pub use ask::{CoverAsk, CoverNeed, Mix, MixAsk, MixPart, MixSheet, OtherReading, TwoPartAsk};
pub use fill::{FillAsk, FillChoice, FillSheet, fill_sheet};
pub use mix::mix_sheet;
