//! The pages of gearing and of chain wear.

pub(crate) mod answer;
mod wear;
mod working;

pub use answer::{GearingAsk, GearingSheet, gearing_sheet};
pub use wear::{ChainWearAsk, ChainWearSheet, WearMark, chain_wear_sheet};
