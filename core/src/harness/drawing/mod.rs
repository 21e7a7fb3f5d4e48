//! The drawing of a circuit: nets, layout, diagram.

mod diagram;
mod layout;
mod nets;

pub use diagram::{Diagram, DiagramBox, DiagramLabel, DiagramLine, LineKind, Spot};
pub use layout::layout;
