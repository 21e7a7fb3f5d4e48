//! The operating point of a network of rising laws, by damped Newton steps.
//!
//! Method: Newton's step on the nodal equations; along it the slope of the co-content is the sum of residual current times
//! step, and the step is shortened until that slope no longer points forward by much. Because every law rises, the
//! co-content is convex and this descends from any start, a cold one included.

use super::netlist::Branch;
use super::network::Network;

/// Conductance of every point to earth, siemens: a gigohm, far above any meter. It gives cut-off parts a voltage.
pub(super) const LEAK: f64 = 1e-9;
/// A step below this ends the search, volts.
const SMALL: f64 = 1e-9;
/// Steps after which the search gives up.
const MOST_STEPS: usize = 200;

/// The search ended without an answer.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Unsettled {
    /// The point that still moves most.
    pub(super) point: usize,
    /// By how much, volts.
    pub(super) by_volts: f64,
}

/// The voltages of all points, volts, from a start (missing points start at 0 V). The network is one of these branches' ends.
pub(super) fn settle(network: &mut Network, branches: &[Branch], start: &[f64]) -> Result<Vec<f64>, Unsettled> {
    let mut volts: Vec<f64> =
        (0..network.points()).map(|point| start.get(point).copied().unwrap_or_default()).collect();
    let mut last = Unsettled { point: 0, by_volts: f64::INFINITY };
    for _ in 0..MOST_STEPS {
        let step = newton_step(network, branches, &volts);
        let (point, by_volts) = greatest(&step);
        if !by_volts.is_finite() {
            return Err(Unsettled { point, by_volts });
        }
        let length = if by_volts < 1e-6 { 1.0 } else { damped_length(branches, &volts, &step) };
        for (volt, by) in volts.iter_mut().zip(&step) {
            *volt += length * by;
        }
        if by_volts < SMALL {
            return Ok(volts);
        }
        last = Unsettled { point, by_volts };
    }
    Err(last)
}

/// The voltage of one end; earth is zero by definition.
pub(super) fn volt(volts: &[f64], end: Option<usize>) -> f64 {
    end.and_then(|point| volts.get(point)).copied().unwrap_or_default()
}

fn newton_step(network: &mut Network, branches: &[Branch], volts: &[f64]) -> Vec<f64> {
    network.clear();
    for (pair, branch) in branches.iter().enumerate() {
        let Some(law) = &branch.law else { continue };
        let (amperes, siemens) = law.current(volt(volts, branch.from) - volt(volts, branch.to));
        network.connect(pair, siemens);
        network.feed(branch.from, -amperes);
        network.feed(branch.to, amperes);
    }
    for (point, volt) in volts.iter().enumerate() {
        network.feed(Some(point), -LEAK * volt);
    }
    network.voltages()
}

/// Slope of the co-content along a step, watts, at a share of its length.
fn slope_along(branches: &[Branch], volts: &[f64], step: &[f64], share: f64) -> f64 {
    let along = |end| volt(volts, end) + share * volt(step, end);
    let through = branches.iter().filter_map(|branch| {
        let by = volt(step, branch.from) - volt(step, branch.to);
        Some(branch.law.as_ref()?.current(along(branch.from) - along(branch.to)).0 * by)
    });
    let leaks = volts.iter().zip(step).map(|(volt, by)| LEAK * (volt + share * by) * by);
    through.chain(leaks).sum()
}

/// The whole step where that does not overshoot, else the share of it at which the slope has nearly vanished.
fn damped_length(branches: &[Branch], volts: &[f64], step: &[f64]) -> f64 {
    let before = slope_along(branches, volts, step, 0.0);
    let enough = 0.3 * before.abs();
    let (mut low, mut high) = (0.0, 1.0);
    if slope_along(branches, volts, step, high) <= enough {
        return high;
    }
    for _ in 0..50 {
        let middle = (low + high) / 2.0;
        let slope = slope_along(branches, volts, step, middle);
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
