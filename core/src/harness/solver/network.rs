//! A network of positive conductances, solved by eliminating one point after the other.
//!
//! Method: nodal analysis. Removing a point replaces its star of conductances by the mesh between its neighbours (Rosen's
//! star-mesh transformation), which is Gauss elimination of the nodal matrix written without a single subtraction; points
//! that hang on a gigohm keep their digits beside milliohm wires. The point with the fewest neighbours goes first, so a
//! harness, which is nearly a tree, stays sparse. The order depends on what is joined to what and not on the conductances:
//! it is laid down once and used for every step of a search and for every fault that joins the same points.

/// Two ends; none is earth.
pub(crate) type Ends = (Option<usize>, Option<usize>);

/// Solves for the voltage of every point against earth. Conductances in siemens, currents into the points in amperes.
#[derive(Clone)]
pub(crate) struct Network {
    /// Where the conductance of each pair of ends goes.
    places: Vec<Place>,
    steps: Vec<Step>,
    /// From each point to earth when nothing is connected.
    leak: f64,
    /// Conductance of each link between two points.
    links: Vec<f64>,
    /// Conductance to earth of each point.
    to_earth: Vec<f64>,
    /// Current fed into each point.
    fed: Vec<f64>,
}

#[derive(Clone, Copy)]
enum Place {
    Link(usize),
    Earth(usize),
    Nowhere,
}

/// The removal of a point: its neighbours with the links to them, and the links of the mesh between each two of them.
#[derive(Clone)]
struct Step {
    point: usize,
    star: Vec<(usize, usize)>,
    mesh: Vec<usize>,
}

/// What is joined to what while points are taken out one by one.
struct Joints {
    /// Neighbours of each point, with the link to them.
    neighbours: Vec<Vec<(usize, usize)>>,
    links: usize,
}

impl Joints {
    /// The link between two points, a new one where there was none.
    fn link(&mut self, one: usize, other: usize) -> usize {
        let known = self.neighbours.get(one).and_then(|links| links.iter().find(|(there, _)| *there == other));
        if let Some((_, link)) = known {
            return *link;
        }
        let link = self.links;
        self.links += 1;
        for (from, to) in [(one, other), (other, one)] {
            if let Some(links) = self.neighbours.get_mut(from) {
                links.push((to, link));
            }
        }
        link
    }

    fn fewest_neighbours(&self, left: &[usize]) -> Option<usize> {
        let count = |point: usize| self.neighbours.get(point).map_or(0, Vec::len);
        left.iter().enumerate().min_by_key(|(_, point)| count(**point)).map(|(at, _)| at)
    }

    fn remove(&mut self, point: usize) -> Step {
        let star = self.neighbours.get_mut(point).map(std::mem::take).unwrap_or_default();
        let mut mesh = Vec::new();
        for (at, (one, _)) in star.iter().enumerate() {
            if let Some(back) = self.neighbours.get_mut(*one) {
                back.retain(|(there, _)| *there != point);
            }
            for (other, _) in star.iter().skip(at + 1) {
                mesh.push(self.link(*one, *other));
            }
        }
        Step { point, star, mesh }
    }
}

impl Network {
    /// A network of so many points, each with a leak to earth, in which these pairs of ends can be connected.
    pub(crate) fn new(points: usize, leak: f64, ends: impl Iterator<Item = Ends>) -> Self {
        let mut joints = Joints { neighbours: vec![Vec::new(); points], links: 0 };
        let mut place = |ends: Ends| match ends {
            (Some(one), Some(other)) if one != other => Place::Link(joints.link(one, other)),
            (Some(point), None) | (None, Some(point)) => Place::Earth(point),
            _ => Place::Nowhere,
        };
        let places = ends.map(&mut place).collect();
        let mut left: Vec<usize> = (0..points).collect();
        let mut steps = Vec::with_capacity(points);
        while let Some(at) = joints.fewest_neighbours(&left) {
            steps.push(joints.remove(left.swap_remove(at)));
        }
        Self {
            places,
            steps,
            leak,
            links: vec![0.0; joints.links],
            to_earth: vec![leak; points],
            fed: vec![0.0; points],
        }
    }

    /// How many points it has.
    pub(crate) fn points(&self) -> usize {
        self.fed.len()
    }

    /// Takes every conductance and current out again.
    pub(crate) fn clear(&mut self) {
        self.links.fill(0.0);
        self.to_earth.fill(self.leak);
        self.fed.fill(0.0);
    }

    /// Adds a conductance between a pair of ends, by its number.
    pub(crate) fn connect(&mut self, pair: usize, siemens: f64) {
        match self.places.get(pair) {
            Some(Place::Link(link)) => add(&mut self.links, *link, siemens),
            Some(Place::Earth(point)) => add(&mut self.to_earth, *point, siemens),
            _ => {}
        }
    }

    /// Adds a current into a point; earth takes any.
    pub(crate) fn feed(&mut self, point: Option<usize>, amperes: f64) {
        if let Some(point) = point {
            add(&mut self.fed, point, amperes);
        }
    }

    /// The voltage of every point, volts. What was connected and fed is used up: `clear` comes before the next.
    pub(crate) fn voltages(&mut self) -> Vec<f64> {
        let Self { steps, links, to_earth, fed, .. } = self;
        for step in steps.iter() {
            let (leak, current) = (value(to_earth, step.point), value(fed, step.point));
            let total = leak + step.star.iter().map(|(_, link)| value(links, *link)).sum::<f64>();
            let mut mesh = step.mesh.iter();
            for (at, (one, link)) in step.star.iter().enumerate() {
                let siemens = value(links, *link);
                add(to_earth, *one, siemens * leak / total);
                add(fed, *one, siemens / total * current);
                for ((_, others), between) in step.star.iter().skip(at + 1).zip(&mut mesh) {
                    let more = siemens * value(links, *others) / total;
                    add(links, *between, more);
                }
            }
        }
        let mut volts = vec![0.0; fed.len()];
        for step in steps.iter().rev() {
            let total =
                value(to_earth, step.point) + step.star.iter().map(|(_, link)| value(links, *link)).sum::<f64>();
            let from_neighbours: f64 =
                step.star.iter().map(|(there, link)| value(links, *link) * value(&volts, *there)).sum();
            if let Some(volt) = volts.get_mut(step.point) {
                *volt = (value(fed, step.point) + from_neighbours) / total;
            }
        }
        volts
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
        let pairs = [((Some(0), None), 1000.0), ((Some(0), Some(1)), 0.5), ((Some(1), None), 0.5)];
        // Points 2 and 3: a milliohm between them, a gigohm each to earth, one nanoampere in.
        let apart = [((Some(2), Some(3)), 1000.0)];
        let all = pairs.iter().chain(&apart);
        let mut network = Network::new(4, 1e-9, all.clone().map(|(ends, _)| *ends));
        all.enumerate().for_each(|(pair, (_, siemens))| network.connect(pair, *siemens));
        network.feed(Some(0), 12_000.0);
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
            let mut network = Network::new(8, leak, branches.iter().map(|(one, other, _)| (Some(*one), end(*other))));
            // Twice: what was connected before is gone after clearing.
            for _ in 0..2 {
                network.clear();
                for (pair, (_, _, tens)) in branches.iter().enumerate() {
                    network.connect(pair, 10_f64.powf(*tens));
                }
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
