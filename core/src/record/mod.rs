//! The bike: what it is, how it was made (*standard*), how it is being built (*fitted*), and what is known about it.
//!
//! Every field may be unknown. A calculation that needs an unknown value refuses and names it; nothing is guessed.

#[macro_use]
mod list;

mod answer;
mod assemble;
mod away;
mod card;
mod circuit;
mod fault_search;
mod identity;
mod message;
mod paint;
mod photo;
mod place;
mod reading;
mod sidewall;
mod spec;
mod work;

pub(crate) use identity::USUAL_LOAD_KG;

pub use answer::{AnswerWord, ItemAnswer};
pub use circuit::{CoilAt, Component, ElementChange, OutputAt};
pub use fault_search::{Evidence, FaultClosing, FaultSearch, Trouble};
pub(crate) use message::RecordMessage;
pub use paint::{
    Climate, Coat, CureState, Layer, PaintedPart, Process, ProcessStep, Product, ProductKind, PutOn, RimArea,
    ShellArea, Stay, StayPlace, Surface, TubeArea, activation, area_of, rim_area, shell_area, tube_area, went_on,
};
pub(crate) use paint::{IN_THE_HOUSE, PaintMessage, first_hours, from_two, laid};
pub(crate) use sidewall::{AlphaLetter, FIELD, SidewallMessage, age_days, is_low_section};
pub use sidewall::{
    Construction, DateCode, OuterDiameter, RollingCircumference, Section, Service, SpeedSymbol, Tube, TyreSize,
    WeekMade, YearsOfDays, age_years, circumference, date_source, decade_source, load_kg, outer_diameter, years_of,
};
pub use spec::{
    Brake, BrakeKind, ChainJoint, ChainKind, ChainSize, Consumer, ConsumerRole, Drive, ElectricalSystem, End, FillKind,
    Filling, FlasherKind, Fluid, FluidGrade, IgnitionKind, Indication, LampCap, LightSource, OutputPoint, PilotFitting,
    PowerPoint, Side, Slot, Spec, SpeedometerDrive, Supply, SystemCard, Use, Wheel,
};
pub(crate) use spec::{SpecMessage, power_in_order};
pub use work::{
    Air, BenchTime, ChangeKind, DayHours, DayOff, Delivery, ExtraTime, Job, JobLink, JobPlace, JobReason, JobState,
    Part, PartState, Span, SpotTaken, Stage, Step, StepAsk, Tightening, Wait, WorkSpot, job_for,
};
pub(crate) use work::{JobMessage, jobs_with, spans_in_order};

pub use assemble::{Bike, assemble, key_of, laid_over, reassemble, slot};
pub use away::{CAN_BE_PUT_AWAY, PutAwayCard, put_away};
pub use card::{FieldCard, RecordCard, record_cards};
pub use identity::{Cooling, Equipment, Identity, Starter, Strokes};
pub use list::KINDS;
pub use photo::{PHOTO_MEDIA, PHOTO_MOST_BYTES, Photo};
pub use place::Place;
pub use reading::Reading;
