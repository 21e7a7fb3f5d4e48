//! The bike: what it is, how it was made (*standard*), how it is being built (*fitted*), and what is known about it.
//!
//! Every field may be unknown. A calculation that needs an unknown value refuses and names it; nothing is guessed.

mod assemble;
mod drive;
mod identity;
mod indication;
mod job;
mod part;
mod photo;
mod reading;
mod spec;
mod tightening;

pub use assemble::{Bike, assemble, key_of, laid_over, slot};
pub(crate) use drive::in_order;
pub use drive::{ChainJoint, ChainKind, ChainSize, Drive, PowerPoint, SpeedometerDrive};
pub use identity::{Identity, Place};
pub use indication::{FlasherKind, Indication, PilotFitting};
pub use job::{Air, Job, JobPlace, JobState, SpotTaken, Stage, Step, Wait, WorkSpot};
pub use part::{Delivery, Part, PartState};
pub use photo::{PHOTO_MEDIA, PHOTO_MOST_BYTES, Photo};
pub use reading::{Climate, Reading};
pub use spec::{
    Brake, BrakeKind, Consumer, End, FillKind, Filling, Fluid, LightSource, OutputPoint, Side, Slot, Spec, Supply, Use,
    Wheel,
};
pub use tightening::Tightening;
