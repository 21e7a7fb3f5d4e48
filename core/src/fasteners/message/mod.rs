//! What fasteners say.

mod screw;
mod thread;

pub(crate) use screw::ScrewMessage;
pub(crate) use thread::ThreadMessage;
