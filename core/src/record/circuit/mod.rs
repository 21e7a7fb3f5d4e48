//! Circuits of the bike as the owner has them: what an element is, and what was changed against the template.

mod change;
mod component;

pub use change::ElementChange;
pub use component::{CoilAt, Component, OutputAt};
