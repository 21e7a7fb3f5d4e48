//! The pages of filling, mixing and covering an area.

mod ask;
mod cover;
mod fill;
mod mix;
mod working;

pub use ask::{CoverAsk, CoverNeed, Mix, MixAnswer, MixAsk, MixPart, OtherReading, TwoPartAsk};
pub use fill::{FillAnswer, FillAsk, FillChoice, fill_answer};
pub use mix::mix_answer;
