//! The operating point of a harness in a setting: relays that pull, fuses that blow, then what every part does.
//!
//! Method: the network is settled; coils above their pull-in voltage pull, those below their let-go voltage let go, and it is
//! settled again until nothing changes. A state of the coils that comes back is a relay that chatters. Then the fuses
//! beyond 135 % of their rating blow, and all of it is done again.

use std::collections::BTreeSet;

use thiserror::Error;

use super::Settled;
use super::message::SolverMessage;
use super::netlist::{Branch, Circuit, LEAK, States};
use super::network::Network;
use super::newton::settle;
use super::point::{OperatingPoint, operating_point};
use crate::error::Refused;
use crate::harness::model::{Harness, Setting, refuse_unsound};
use crate::message::Message;
use crate::units::Unit;

/// Why a harness has no answer.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum Unsolved {
    /// It cannot be worked out as it is entered.
    #[error(transparent)]
    Refused(Box<Refused>),
    /// The search did not settle. Nothing is shown rather than something wrong.
    #[error("did not settle: {point:?} still moved by {by_volts:.3} V")]
    NotSettled {
        /// The point that moved most at the end; none where it was a bad joint.
        point: Option<String>,
        /// By how much, volts.
        by_volts: f64,
    },
}

impl From<Refused> for Unsolved {
    fn from(refused: Refused) -> Self {
        Self::Refused(Box::new(refused))
    }
}

impl Unsolved {
    /// What is said of it.
    pub fn message(&self) -> Message {
        match self {
            Self::Refused(refused) => refused.message(),
            Self::NotSettled { point: Some(point), by_volts } => {
                SolverMessage::NotSettled { point: point.clone(), by: Unit::Volt.of(*by_volts) }.into()
            }
            Self::NotSettled { point: None, by_volts } => {
                SolverMessage::NotSettledAtJoint { by: Unit::Volt.of(*by_volts) }.into()
            }
        }
    }
}

/// Works a harness out in a setting.
///
/// ```
/// use layshaft_core::harness::{LampLook, Setting, solve, template};
/// let harness = template("lighting", 12.0).unwrap();
/// let point = solve(&harness, &Setting::of(&[("key", "on"), ("lights", "head"), ("dip", "high")])).unwrap();
/// let look = |id: &str| point.lamps.iter().find(|lamp| lamp.element == id).unwrap().look;
/// assert_eq!((look("head.high"), look("head.low")), (LampLook::Full, LampLook::Off));
/// ```
pub fn solve(harness: &Harness, setting: &Setting) -> Result<OperatingPoint, Unsolved> {
    refuse_unsound(harness)?;
    harness.check_setting(setting)?;
    let circuit = Circuit::of(harness);
    let at_rest = circuit.branches(setting, &States::default());
    let mut network = network(&circuit, &at_rest);
    Ok(operating_point(&settled(&circuit, setting, &at_rest, &mut network, &[])?))
}

/// The network that joins these branches.
pub(crate) fn network(circuit: &Circuit<'_>, branches: &[Branch]) -> Network {
    let ends = branches.iter().map(|branch| (branch.from, branch.to));
    Network::new(circuit.points_with_joints(), LEAK, ends)
}

/// Settles a circuit from its branches at rest. `near`: states with voltages to start from, of a circuit much like it.
pub(crate) fn settled<'a>(
    circuit: &'a Circuit<'a>,
    setting: &'a Setting,
    at_rest: &[Branch],
    network: &mut Network,
    near: &[(States, Vec<f64>)],
) -> Result<Settled<'a>, Unsolved> {
    let mut states = States::default();
    let mut chattering = BTreeSet::new();
    let mut way: Vec<(States, Vec<f64>)> = Vec::new();
    let mut seen = BTreeSet::new();
    // Each turn changes the state of a coil or blows a fuse; a state seen twice ends the changing of coils.
    loop {
        let branches = circuit.in_state(at_rest, setting, &states);
        let start = near.iter().find(|(at, _)| *at == states).or(way.last()).map_or([].as_slice(), |(_, volts)| volts);
        let volts = settle(network, &branches, start).map_err(|unsettled| Unsolved::NotSettled {
            point: circuit.points.get(unsettled.point).map(|name| (*name).to_owned()),
            by_volts: unsettled.by_volts,
        })?;
        way.push((states.clone(), volts.clone()));
        let settled =
            Settled { circuit, setting, states: states.clone(), chattering: chattering.clone(), branches, volts, way };
        if chattering.is_empty() {
            let next = settled.pulled();
            if next != states.pulled {
                if seen.insert((states.blown.clone(), next.clone())) {
                    states.pulled = next;
                } else {
                    chattering = next.symmetric_difference(&states.pulled).cloned().collect();
                    // Shown in the moment in which the relay is made, when most current flows.
                    states.pulled.extend(next);
                }
                way = settled.way;
                continue;
            }
        }
        let blown = settled.blowing();
        if blown.is_empty() {
            return Ok(settled);
        }
        way = settled.way;
        states.blown.extend(blown);
        states.pulled.clear();
        chattering.clear();
    }
}
