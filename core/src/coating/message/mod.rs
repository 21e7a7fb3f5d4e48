//! What coatings say: shared parts, one coat, a paint job in several coats.

mod cure;
mod process;
mod shared;
mod working;

pub(crate) use cure::CureMessage;
pub(crate) use process::ProcessMessage;
pub(crate) use shared::CoatingMessage;
pub(crate) use working::CoatingWorking;
