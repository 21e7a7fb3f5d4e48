//! Paint and what else cures: products, coats that went on, paint jobs in several coats, what is painted, the climate they stand in.

mod climate;
mod coat;
mod message;
mod process;
mod product;
mod product_checked;
mod put_on;
mod second_time;
mod stay;
mod surface;

pub use climate::Climate;
pub use coat::{Coat, went_on};
pub(crate) use message::PaintMessage;
pub(crate) use process::laid;
pub use process::{Layer, Process, ProcessStep};
pub use product::{CureState, Product, ProductKind};
pub use put_on::PutOn;
pub use second_time::activation;
pub(crate) use second_time::{first_hours, from_two};
pub(crate) use stay::IN_THE_HOUSE;
pub use stay::{Stay, StayPlace};
pub use surface::{PaintedPart, RimArea, ShellArea, Surface, TubeArea, area_of, rim_area, shell_area, tube_area};
