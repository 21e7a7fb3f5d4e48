//! How a circuit is worked out: netlist, nodal equations, Newton steps, operating point.

mod law;
mod message;
mod netlist;
mod network;
mod newton;
mod point;
mod settled;
mod solve;
#[cfg(test)]
mod solve_tests;

pub use law::Law;
pub(crate) use message::SolverMessage;
pub(crate) use netlist::{Branch, Circuit, States};
pub use netlist::{Device, Netlist, netlist};
pub(crate) use network::Network;
pub(crate) use newton::volt;
pub(crate) use point::lamp_look;
pub use point::{Flow, LampLook, LampState, NodeVolts, OperatingPoint, Overload};
pub(crate) use settled::Settled;
pub use solve::{Unsolved, solve};
pub(crate) use solve::{network, settled};
#[cfg(test)]
pub(crate) use solve_tests::few_settings;
