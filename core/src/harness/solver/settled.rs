//! A circuit at rest in its operating point: the switches as set, what pulls or has blown, and every voltage.

use std::collections::BTreeSet;

use super::netlist::{Branch, Circuit, States};
use super::newton::volt;
use crate::electrical::BLOWS_FROM;
use crate::harness::model::{Element, Setting};
use crate::record::Component;

/// A settled network.
pub(crate) struct Settled<'a> {
    pub(crate) circuit: &'a Circuit<'a>,
    pub(crate) setting: &'a Setting,
    pub(crate) states: States,
    pub(crate) chattering: BTreeSet<String>,
    pub(crate) branches: Vec<Branch>,
    pub(crate) volts: Vec<f64>,
    /// The states on the way here, with their voltages.
    pub(crate) way: Vec<(States, Vec<f64>)>,
}

impl Settled<'_> {
    /// Voltage of a point, volts.
    pub(crate) fn at(&self, node: &str) -> f64 {
        volt(&self.volts, self.circuit.number(node))
    }

    /// Voltage across the law of an element itself and current through it, by its number; nothing through what is open.
    pub(crate) fn through(&self, element: usize) -> Option<(f64, f64)> {
        let branch = self.branches.get(element)?;
        let volts = volt(&self.volts, branch.from) - volt(&self.volts, branch.to);
        Some((volts, branch.law.as_ref()?.current(volts).0))
    }

    /// The coils that pull at these voltages.
    pub(crate) fn pulled(&self) -> BTreeSet<String> {
        self.those(|at, element| {
            let Component::Coil { pull_in_volts, let_go_volts, .. } = element.component else { return false };
            let volts = self.through(at).map_or(0.0, |(volts, _)| volts.abs());
            volts >= if self.states.pulled.contains(&element.id) { let_go_volts } else { pull_in_volts }
        })
    }

    /// The fuses that blow at these currents.
    pub(crate) fn blowing(&self) -> BTreeSet<String> {
        self.those(|at, element| {
            let Component::Fuse { rated_amperes, .. } = element.component else { return false };
            self.through(at).is_some_and(|(_, amperes)| amperes.abs() >= BLOWS_FROM * rated_amperes)
        })
    }

    fn those(&self, which: impl Fn(usize, &Element) -> bool) -> BTreeSet<String> {
        let elements = self.circuit.elements.iter().enumerate();
        elements.filter(|(at, element)| which(*at, element)).map(|(_, element)| element.id.clone()).collect()
    }
}
