//! What filling and mixing say.

mod fill;
mod mix;
mod working;

pub(crate) use fill::FillMessage;
pub(crate) use mix::MixMessage;
pub(crate) use working::FluidsWorking;
