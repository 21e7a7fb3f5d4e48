//! The page of a fastener: what is asked, what is answered, what is worth saying.

mod answer;
mod ask;
mod findings;
mod message;
mod words;

pub use answer::fastener_answer;
pub use ask::{
    EngagementAdvice, FastenerAnswer, FastenerAsk, Lubrication, MakerTorque, ScrewStrength, TorqueBand, TorquePoint,
};
pub(crate) use message::FastenersWorking;
