//! The bike: what it is, how it was made (*standard*), how it is being built (*fitted*), and what is known about it.
//!
//! Every field may be unknown. A calculation that needs an unknown value refuses and names it; nothing is guessed.

mod assemble;
mod identity;
mod job;
mod part;
mod photo;
mod reading;
mod spec;

pub use assemble::{Bike, assemble, key_of, laid_over, slot};
pub use identity::{Identity, Place};
pub use job::{Job, JobPlace, JobState, Stage, Step, Wait};
pub use part::{Delivery, Part, PartState};
pub use photo::{PHOTO_MEDIA, PHOTO_MOST_BYTES, Photo};
pub use reading::{Climate, Reading};
pub use spec::{
    Brake, BrakeKind, ChainSize, Consumer, Drive, End, FillKind, Filling, Fluid, LightSource, OutputPoint, Side, Slot,
    Spec, SpeedometerDrive, Supply, Use, Wheel,
};
