//! Points that hang together through wire, joints and straps, and the runs of wire between them.

use std::collections::BTreeMap;

use petgraph::algo::astar;
use petgraph::graph::{NodeIndex, UnGraph};
use petgraph::unionfind::UnionFind;

use crate::harness::model::{Element, Harness};
use crate::record::Component;

/// Whether an element is drawn as a line and not as a part.
pub(crate) fn is_line(element: &Element) -> bool {
    matches!(element.component, Component::Wire { .. } | Component::Joint { .. } | Component::Strap { .. })
}

/// The nets of a harness.
pub(crate) struct Nets<'a> {
    /// The points with the lines between them.
    lines: UnGraph<(), &'a Element>,
    /// Each point by its name.
    points: BTreeMap<&'a str, NodeIndex>,
    /// Net of each point.
    of: Vec<usize>,
}

impl<'a> Nets<'a> {
    pub(crate) fn new(harness: &'a Harness) -> Self {
        let mut lines = UnGraph::default();
        let points: BTreeMap<&str, NodeIndex> =
            harness.nodes().into_iter().map(|point| (point, lines.add_node(()))).collect();
        let mut nets: UnionFind<usize> = UnionFind::new(points.len());
        // The graph hands out the last line first; of two between the same points the first is wanted.
        for line in harness.elements.iter().rev().filter(|element| is_line(element)) {
            if let (Some(from), Some(to)) = (points.get(&*line.from), points.get(&*line.to)) {
                lines.add_edge(*from, *to, line);
                nets.union(from.index(), to.index());
            }
        }
        Self { lines, points, of: nets.into_labeling() }
    }

    /// The net of a point; a point that there is not has none.
    pub(crate) fn net(&self, point: &str) -> Option<usize> {
        self.of.get(self.points.get(point)?.index()).copied()
    }

    /// The lines from one point to another of the same net, in order; none where they do not hang together.
    pub(crate) fn run(&self, from: &str, to: &str) -> Vec<&'a Element> {
        let ends = self.points.get(from).zip(self.points.get(to));
        let way = ends.and_then(|(from, to)| astar(&self.lines, *from, |point| point == *to, |_| 1_u32, |_| 0));
        let (_, way) = way.unwrap_or_default();
        let line = |pair: &[NodeIndex]| match pair {
            [one, other] => self.lines.find_edge(*one, *other).and_then(|line| self.lines.edge_weight(line)).copied(),
            _ => None,
        };
        way.windows(2).filter_map(line).collect()
    }
}
