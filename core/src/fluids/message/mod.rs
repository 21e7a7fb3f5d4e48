//! What filling and mixing say.

mod fill;
mod mix;

pub(crate) use fill::FillMessage;
pub(crate) use mix::MixMessage;
