//! The pages of gearing and of chain wear.

pub(crate) mod answer;
mod wear;
mod working;

pub use answer::{GearingAnswer, GearingAsk, gearing_answer};
pub use wear::{ChainWearAnswer, ChainWearAsk, WearMark, chain_wear_answer};
