//! Points that hang together through wire, joints and straps, and the runs of wire between them.

use std::collections::{BTreeMap, VecDeque};

use crate::harness::model::{Element, Harness};
use crate::record::Component;

/// Whether an element is drawn as a line and not as a part.
pub(crate) fn is_line(element: &Element) -> bool {
    matches!(element.component, Component::Wire { .. } | Component::Joint { .. } | Component::Strap { .. })
}

/// The nets of a harness.
pub(crate) struct Nets<'a> {
    /// Net of each point.
    of: BTreeMap<&'a str, usize>,
    /// Lines at each point, with their other end.
    at: BTreeMap<&'a str, Vec<(&'a Element, &'a str)>>,
}

impl<'a> Nets<'a> {
    pub(crate) fn new(harness: &'a Harness) -> Self {
        let mut at: BTreeMap<&str, Vec<(&Element, &str)>> = BTreeMap::new();
        for element in harness.elements.iter().filter(|element| is_line(element)) {
            at.entry(&element.from).or_default().push((element, &element.to));
            at.entry(&element.to).or_default().push((element, &element.from));
        }
        let mut of = BTreeMap::new();
        for (net, start) in harness.nodes().into_iter().enumerate() {
            let mut open = vec![start];
            while let Some(point) = open.pop() {
                if of.contains_key(point) {
                    continue;
                }
                of.insert(point, net);
                open.extend(at.get(point).into_iter().flatten().map(|(_, other)| *other));
            }
        }
        Self { of, at }
    }

    /// The net of a point; a point that there is not has none.
    pub(crate) fn net(&self, point: &str) -> Option<usize> {
        self.of.get(point).copied()
    }

    /// The lines from one point to another of the same net, in order.
    pub(crate) fn run(&self, from: &'a str, to: &'a str) -> Vec<&'a Element> {
        let mut came: BTreeMap<&str, Option<(&Element, &str)>> = BTreeMap::from([(from, None)]);
        let mut open = VecDeque::from([from]);
        while let Some(point) = open.pop_front() {
            for (element, other) in self.at.get(point).into_iter().flatten() {
                if !came.contains_key(other) {
                    came.insert(other, Some((element, point)));
                    open.push_back(other);
                }
            }
        }
        let mut run = Vec::new();
        let mut point = to;
        while let Some(Some((element, before))) = came.get(point) {
            run.push(*element);
            point = before;
        }
        run.reverse();
        run
    }
}
