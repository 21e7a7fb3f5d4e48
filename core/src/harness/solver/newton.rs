//! The operating point of a network of rising laws, by damped Newton steps.
//!
//! Method: Newton's step on the nodal equations; along it the slope of the co-content is the sum of residual current times
//! step, and the step is shortened until that slope no longer points forward by much. Because every law rises, the
//! co-content is convex and this descends from any start, a cold one included.

use super::netlist::{Branch, LEAK};
use super::network::Network;

/// A step below this ends the search, volts.
const SMALL: f64 = 1e-9;
/// Share of its slope that a step may have left at its end.
const NEARLY: f64 = 0.3;
/// Steps after which the search gives up.
const MOST_STEPS: usize = 200;

/// The search ended without an answer.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Unsettled {
    /// The point that still moves most.
    pub(crate) point: usize,
    /// By how much, volts.
    pub(crate) by_volts: f64,
}

/// The voltages of all points, volts, from a start (missing points start at 0 V). The network is one of these branches' ends.
pub(crate) fn settle(network: &mut Network, branches: &[Branch], start: &[f64]) -> Result<Vec<f64>, Unsettled> {
    let mut volts: Vec<f64> =
        (0..network.points()).map(|point| start.get(point).copied().unwrap_or_default()).collect();
    let mut flows = flows_at(branches, &volts);
    let mut last = Unsettled { point: 0, by_volts: f64::INFINITY };
    for _ in 0..MOST_STEPS {
        let step = newton_step(network, branches, &volts, &flows);
        let (point, by_volts) = greatest(&step);
        if !by_volts.is_finite() {
            return Err(Unsettled { point, by_volts });
        }
        let mut moved = along(&volts, &step, 1.0);
        if by_volts < SMALL {
            return Ok(moved);
        }
        let mut there = flows_at(branches, &moved);
        if by_volts >= 1e-6 {
            let enough = NEARLY * slope(branches, &volts, &step, &flows).abs();
            // The whole step where that does not overshoot.
            if slope(branches, &moved, &step, &there) > enough {
                moved = along(&volts, &step, damped_length(branches, &volts, &step, enough));
                there = flows_at(branches, &moved);
            }
        }
        (volts, flows) = (moved, there);
        last = Unsettled { point, by_volts };
    }
    Err(last)
}

/// The voltage of one end; earth is zero by definition.
pub(crate) fn volt(volts: &[f64], end: Option<usize>) -> f64 {
    end.and_then(|point| volts.get(point)).copied().unwrap_or_default()
}

/// Current and conductance of each branch at these voltages.
fn flows_at(branches: &[Branch], volts: &[f64]) -> Vec<(f64, f64)> {
    let across = |branch: &Branch| volt(volts, branch.from) - volt(volts, branch.to);
    let flow = |branch: &Branch| branch.law.as_ref().map_or((0.0, 0.0), |law| law.current(across(branch)));
    branches.iter().map(flow).collect()
}

fn along(volts: &[f64], step: &[f64], share: f64) -> Vec<f64> {
    volts.iter().zip(step).map(|(volt, by)| volt + share * by).collect()
}

fn newton_step(network: &mut Network, branches: &[Branch], volts: &[f64], flows: &[(f64, f64)]) -> Vec<f64> {
    network.clear();
    for (pair, (branch, (amperes, siemens))) in branches.iter().zip(flows).enumerate() {
        if branch.law.is_some() {
            network.connect(pair, *siemens);
            network.feed(branch.from, -amperes);
            network.feed(branch.to, *amperes);
        }
    }
    for (point, volt) in volts.iter().enumerate() {
        network.feed(Some(point), -LEAK * volt);
    }
    network.voltages()
}

/// Slope of the co-content in the direction of a step, watts, at these voltages with these flows.
fn slope(branches: &[Branch], volts: &[f64], step: &[f64], flows: &[(f64, f64)]) -> f64 {
    let by = |branch: &Branch| volt(step, branch.from) - volt(step, branch.to);
    let through = branches.iter().zip(flows).map(|(branch, (amperes, _))| amperes * by(branch));
    let leaks = volts.iter().zip(step).map(|(volt, by)| LEAK * volt * by);
    through.chain(leaks).sum()
}

/// The share of a step that overshoots at which the slope has nearly vanished.
fn damped_length(branches: &[Branch], volts: &[f64], step: &[f64], enough: f64) -> f64 {
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..50 {
        let middle = (low + high) / 2.0;
        let there = along(volts, step, middle);
        let slope = slope(branches, &there, step, &flows_at(branches, &there));
        if slope.abs() <= enough {
            return middle;
        }
        if slope > 0.0 {
            high = middle;
        } else {
            low = middle;
        }
    }
    low
}

fn greatest(step: &[f64]) -> (usize, f64) {
    let by_size = |(at, by): (usize, &f64)| (at, by.abs());
    step.iter().enumerate().map(by_size).fold((0, 0.0), |most, next| {
        // A step that is not a number must be seen, not lost in a comparison.
        if next.1 > most.1 || next.1.is_nan() { next } else { most }
    })
}
