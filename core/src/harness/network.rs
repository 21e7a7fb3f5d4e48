//! A network of positive conductances, solved by eliminating one point after the other.
//!
//! Method: nodal analysis. Removing a point replaces its star of conductances by the mesh between its neighbours (Rosen's
//! star-mesh transformation), which is Gauss elimination of the nodal matrix written without a single subtraction; points
//! that hang on a gigohm keep their digits beside milliohm wires. The point with the fewest neighbours goes first, so a
//! harness, which is nearly a tree, stays sparse.

/// Solves for the voltage of every point against earth. Conductances in siemens, currents into the points in amperes.
pub(super) struct Network {
    /// Neighbours of each point with the conductance to them.
    links: Vec<Vec<(usize, f64)>>,
    /// Conductance to earth of each point.
    to_earth: Vec<f64>,
    /// Current fed into each point.
    fed: Vec<f64>,
}

/// A removed point: what it takes to compute its voltage from those of its neighbours.
struct Removed {
    point: usize,
    links: Vec<(usize, f64)>,
    total: f64,
    fed: f64,
}

impl Network {
    /// A network of so many points without any conductance but a leak from each to earth.
    pub(super) fn new(points: usize, leak: f64) -> Self {
        Self { links: vec![Vec::new(); points], to_earth: vec![leak; points], fed: vec![0.0; points] }
    }

    /// Adds a conductance between two points; `None` is earth.
    pub(super) fn connect(&mut self, one: Option<usize>, other: Option<usize>, siemens: f64) {
        match (one, other) {
            (Some(one), Some(other)) if one != other => {
                self.link(one, other, siemens);
                self.link(other, one, siemens);
            }
            (Some(point), None) | (None, Some(point)) => add(&mut self.to_earth, point, siemens),
            _ => {}
        }
    }

    /// Adds a current into a point; earth takes any.
    pub(super) fn feed(&mut self, point: Option<usize>, amperes: f64) {
        if let Some(point) = point {
            add(&mut self.fed, point, amperes);
        }
    }

    fn link(&mut self, from: usize, to: usize, siemens: f64) {
        let Some(links) = self.links.get_mut(from) else { return };
        match links.iter_mut().find(|(there, _)| *there == to) {
            Some((_, sum)) => *sum += siemens,
            None => links.push((to, siemens)),
        }
    }

    /// The voltage of every point, volts.
    pub(super) fn voltages(mut self) -> Vec<f64> {
        let points = self.links.len();
        let mut left: Vec<usize> = (0..points).collect();
        let mut removed = Vec::with_capacity(points);
        while let Some(at) = self.fewest_neighbours(&left) {
            removed.push(self.remove(left.swap_remove(at)));
        }
        let mut volts = vec![0.0; points];
        for gone in removed.iter().rev() {
            let from_neighbours: f64 = gone.links.iter().map(|(there, siemens)| siemens * value(&volts, *there)).sum();
            if let Some(volt) = volts.get_mut(gone.point) {
                *volt = (gone.fed + from_neighbours) / gone.total;
            }
        }
        volts
    }

    fn fewest_neighbours(&self, left: &[usize]) -> Option<usize> {
        let neighbours = |point: usize| self.links.get(point).map_or(0, Vec::len);
        left.iter().enumerate().min_by_key(|(_, point)| neighbours(**point)).map(|(at, _)| at)
    }

    fn remove(&mut self, point: usize) -> Removed {
        let links = self.links.get_mut(point).map(std::mem::take).unwrap_or_default();
        let (leak, fed) = (value(&self.to_earth, point), value(&self.fed, point));
        let total = leak + links.iter().map(|(_, siemens)| siemens).sum::<f64>();
        for (at, (one, siemens)) in links.iter().enumerate() {
            if let Some(back) = self.links.get_mut(*one) {
                back.retain(|(there, _)| *there != point);
            }
            add(&mut self.to_earth, *one, siemens * leak / total);
            add(&mut self.fed, *one, siemens / total * fed);
            for (other, others) in links.iter().skip(at + 1) {
                self.connect(Some(*one), Some(*other), siemens * others / total);
            }
        }
        Removed { point, links, total, fed }
    }
}

fn value(values: &[f64], point: usize) -> f64 {
    values.get(point).copied().unwrap_or_default()
}

fn add(values: &mut [f64], point: usize, amount: f64) {
    if let Some(value) = values.get_mut(point) {
        *value += amount;
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn a_divider_divides_and_a_floating_part_keeps_its_digits() {
        let mut network = Network::new(4, 1e-9);
        network.connect(Some(0), None, 1000.0);
        network.feed(Some(0), 12_000.0);
        network.connect(Some(0), Some(1), 0.5);
        network.connect(Some(1), None, 0.5);
        // Points 2 and 3: a milliohm between them, a gigohm each to earth, one nanoampere in.
        network.connect(Some(2), Some(3), 1000.0);
        network.feed(Some(2), 1e-9);
        let volts = network.voltages();
        assert!((volts[1] - volts[0] / 2.0).abs() < 1e-6);
        assert!((volts[2] - 0.5).abs() < 1e-9 && (volts[3] - 0.5).abs() < 1e-9, "{volts:?}");
    }

    proptest! {
        #[test]
        fn kirchhoffs_current_law_holds_at_every_point(
            branches in prop::collection::vec((0_usize..8, 0_usize..9, -3.0..3.0_f64), 1..24),
            fed in prop::collection::vec(-2.0..2.0_f64, 8),
        ) {
            let leak = 1e-3;
            let end = |point: usize| (point < 8).then_some(point);
            let mut network = Network::new(8, leak);
            for (one, other, tens) in &branches {
                network.connect(Some(*one), end(*other), 10_f64.powf(*tens));
            }
            for (point, amperes) in fed.iter().enumerate() {
                network.feed(Some(point), *amperes);
            }
            let volts = network.voltages();
            let at = |point: usize| volts.get(point).copied().unwrap_or_default();
            for (point, into) in fed.iter().enumerate() {
                let mut sum = into - leak * at(point);
                let mut greatest = 1.0_f64;
                for (one, other, tens) in &branches {
                    let current = 10_f64.powf(*tens) * (at(*one) - at(*other));
                    greatest = greatest.max(10_f64.powf(*tens) * at(*one).abs().max(at(*other).abs()));
                    if one != other {
                        sum -= if *one == point { current } else if *other == point { -current } else { 0.0 };
                    }
                }
                prop_assert!(sum.abs() < 1e-10 * greatest, "{point}: {sum}");
            }
        }
    }
}
