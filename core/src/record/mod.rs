//! The bike: what it is, how it was made (*standard*), how it is being built (*fitted*), and what is known about it.
//!
//! Every field may be unknown. A calculation that needs an unknown value refuses and names it; nothing is guessed.

mod assemble;
mod brake;
mod climate;
mod consumer;
mod drive;
mod fluid;
mod identity;
mod indication;
mod job;
mod part;
mod photo;
mod place;
mod reading;
mod spec;
mod supply;
mod tightening;
mod wheel;

pub use assemble::{Bike, assemble, key_of, laid_over, slot};
pub use brake::{Brake, BrakeKind};
pub use climate::Climate;
pub use consumer::{Consumer, LightSource, Use};
pub(crate) use drive::in_order;
pub use drive::{ChainJoint, ChainKind, ChainSize, Drive, PowerPoint, SpeedometerDrive};
pub use fluid::{FillKind, Fluid};
pub use identity::Identity;
pub use indication::{FlasherKind, Indication, PilotFitting};
pub use job::{Air, Job, JobPlace, JobState, SpotTaken, Stage, Step, Wait, WorkSpot};
pub use part::{Delivery, Part, PartState};
pub use photo::{PHOTO_MEDIA, PHOTO_MOST_BYTES, Photo};
pub use place::Place;
pub use reading::Reading;
pub use spec::{End, Filling, Side, Slot, Spec};
pub use supply::{OutputPoint, Supply};
pub use tightening::Tightening;
pub use wheel::Wheel;
