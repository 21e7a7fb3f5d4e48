//! The operating point of a harness in a setting: relays that pull, fuses that blow, then what every part does.
//!
//! Method: the network is settled; coils above their pull-in voltage pull, those below their let-go voltage let go, and it is
//! settled again until nothing changes. A state of the coils that comes back is a relay that chatters. Then the fuses
//! beyond 135 % of their rating blow, and all of it is done again.

use std::collections::{BTreeMap, BTreeSet};

use thiserror::Error;

use super::check::refuse_unsound;
use super::element::{Component, Harness, Setting};
use super::netlist::{Netlist, States, network_of};
use super::newton::{settle, volt};
use super::point::{OperatingPoint, operating_point};
use crate::electrical::BLOWS_FROM;
use crate::error::Refused;

/// Why a harness has no answer.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum Unsolved {
    /// It cannot be worked out as it is entered.
    #[error(transparent)]
    Refused(#[from] Refused),
    /// The search did not settle. Nothing is shown rather than something wrong.
    #[error("this circuit did not settle: {point} still moved by {by_volts:.3} V")]
    NotSettled {
        /// The point that moved most at the end.
        point: String,
        /// By how much, volts.
        by_volts: f64,
    },
}

/// A settled network.
pub(super) struct Settled<'a> {
    pub(super) harness: &'a Harness,
    pub(super) setting: &'a Setting,
    pub(super) states: States,
    pub(super) chattering: BTreeSet<String>,
    pub(super) netlist: Netlist,
    pub(super) volts: Vec<f64>,
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
    let mut states = States::default();
    let mut chattering = BTreeSet::new();
    let mut start = BTreeMap::new();
    let mut seen = BTreeSet::new();
    // Each turn changes the state of a coil or blows a fuse; a state seen twice ends the changing of coils.
    loop {
        let netlist = network_of(harness, setting, &states);
        let from: Vec<f64> = netlist.points.iter().map(|name| start.get(name).copied().unwrap_or_default()).collect();
        let volts =
            settle(netlist.points.len(), &netlist.devices, &from).map_err(|unsettled| Unsolved::NotSettled {
                point: netlist.points.get(unsettled.point).cloned().unwrap_or_default(),
                by_volts: unsettled.by_volts,
            })?;
        start = netlist.points.iter().cloned().zip(volts.iter().copied()).collect();
        let settled =
            Settled { harness, setting, states: states.clone(), chattering: chattering.clone(), netlist, volts };
        if chattering.is_empty() {
            let next = settled.pulled();
            if next != states.pulled {
                if !seen.insert((states.blown.clone(), next.clone())) {
                    chattering = next.symmetric_difference(&states.pulled).cloned().collect();
                    // Shown in the moment in which the relay is made, when most current flows.
                    states.pulled.extend(next);
                    continue;
                }
                states.pulled = next;
                continue;
            }
        }
        let blown = settled.blowing();
        if blown.is_empty() {
            return Ok(operating_point(&settled));
        }
        states.blown.extend(blown);
        states.pulled.clear();
        chattering.clear();
    }
}

impl Settled<'_> {
    /// Voltage across an element from its first end to its last, volts.
    pub(super) fn across(&self, id: &str) -> f64 {
        let Some(element) = self.harness.element(id) else { return 0.0 };
        self.at(&element.from) - self.at(&element.to)
    }

    /// Voltage of a point, volts.
    pub(super) fn at(&self, node: &str) -> f64 {
        if node == self.harness.earth {
            return 0.0;
        }
        let found = self.netlist.points.iter().position(|name| name == node);
        found.map_or(0.0, |point| volt(&self.volts, Some(point)))
    }

    /// Voltage across the law of an element itself and current through it; nothing through what is open.
    pub(super) fn through(&self, id: &str) -> Option<(f64, f64)> {
        let device = self.netlist.devices.iter().find(|device| device.element == id)?;
        let volts = volt(&self.volts, device.from) - volt(&self.volts, device.to);
        Some((volts, device.law.current(volts).0))
    }

    /// The coils that pull at these voltages.
    fn pulled(&self) -> BTreeSet<String> {
        let pulls = |element: &&super::element::Element| {
            let Component::Coil { pull_in_volts, let_go_volts, .. } = element.component else { return false };
            let volts = self.through(&element.id).map_or(0.0, |(volts, _)| volts.abs());
            volts >= if self.states.pulled.contains(&element.id) { let_go_volts } else { pull_in_volts }
        };
        self.harness.elements.iter().filter(pulls).map(|element| element.id.clone()).collect()
    }

    /// The fuses that blow at these currents.
    fn blowing(&self) -> BTreeSet<String> {
        let blows = |element: &&super::element::Element| {
            let Component::Fuse { rated_amperes, .. } = element.component else { return false };
            self.through(&element.id).is_some_and(|(_, amperes)| amperes.abs() >= BLOWS_FROM * rated_amperes)
        };
        self.harness.elements.iter().filter(blows).map(|element| element.id.clone()).collect()
    }
}
