//! Draws a circuit on the width of a phone.
//!
//! Method: runs of wire, joints and straps are lines, everything else is a box. From the battery at the upper left a tree
//! grows downwards: each part on a row of its own, moved right by its layer (how many parts lie before it), its feed from
//! the trunk at its left, its earth to the rail at the right that ends in the bar at the bottom. A part whose far side is
//! drawn already is linked to it by a lane at the right. One row for each part means that no two labels can meet.

use std::collections::{BTreeMap, BTreeSet};

use super::diagram::{Diagram, DiagramBox, DiagramLabel, DiagramLine, LineKind, Spot};
use super::nets::{Nets, is_line};
use crate::harness::model::{Element, Harness};
use crate::record::Component;

const WIDTH: f64 = 390.0;
const LETTER: f64 = 12.0;
/// Width of a letter against its height: wide enough for the faces in use.
const LETTER_WIDTH: f64 = 0.55;
const LABEL: f64 = 11.0;
const LEFT: f64 = 22.0;
/// Space between a trunk and the boxes that it feeds, where the label of the feed stands.
const STUB: f64 = 84.0;
const BOX: f64 = 134.0;
/// Greatest move to the right of all layers together, and of one.
const LAYERS: f64 = 100.0;
const LAYER: f64 = 18.0;
/// Free height below a box: the way to the next trunk and the label of what leaves.
const BAND: f64 = 18.0;
const RAIL: f64 = 378.0;
const LANES: [f64; 4] = [346.0, 353.0, 360.0, 367.0];

/// Draws a harness. Parts that hang on nothing come last and are named.
///
/// ```
/// use layshaft_core::harness::{layout, template};
/// let drawing = layout(&template("lighting", 12.0).unwrap());
/// assert_eq!((drawing.width, drawing.floating.len()), (390.0, 0));
/// assert!(drawing.boxes.iter().all(|part| part.x + part.width < 390.0 && part.y < drawing.earth_y));
/// ```
pub fn layout(harness: &Harness) -> Diagram {
    let nets = Nets::new(harness);
    let mut draw = Draw {
        harness,
        earth: nets.net(&harness.earth),
        parts: harness.elements.iter().filter(|element| !is_line(element)).collect(),
        nets,
        placed: BTreeSet::new(),
        fed_by: BTreeMap::new(),
        rows: Vec::new(),
    };
    draw.grow();
    let deepest = draw.rows.iter().map(|row| row.layer).max().unwrap_or_default();
    let step = if deepest == 0 { LAYER } else { (LAYERS / f64::from(deepest)).min(LAYER) };
    draw.drawn(step)
}

/// A part in its row.
struct Row<'a> {
    part: &'a Element,
    layer: u32,
    /// The point at which it hangs, and the point where the net it hangs on is fed; none for the battery and for what floats.
    hangs_at: Option<(&'a str, &'a str)>,
    /// Row of the part that feeds that net.
    fed_from: Option<usize>,
    /// The point at which current leaves it.
    leaves_at: &'a str,
    leaves: Leaves,
}

/// Where the far side of a part goes.
enum Leaves {
    Earth,
    /// A trunk that begins here.
    Trunk,
    /// A net that another row feeds.
    Link(usize),
}

struct Draw<'a> {
    harness: &'a Harness,
    nets: Nets<'a>,
    earth: Option<usize>,
    parts: Vec<&'a Element>,
    placed: BTreeSet<&'a str>,
    /// Row that feeds each net.
    fed_by: BTreeMap<usize, usize>,
    rows: Vec<Row<'a>>,
}

impl<'a> Draw<'a> {
    /// Puts every part in a row: from the batteries on, then what is left over.
    fn grow(&mut self) {
        let is_source = |part: &&Element| part.component.is_source();
        let first = self.parts.iter().copied().find(is_source);
        for part in first.into_iter().chain(self.parts.clone()) {
            if self.placed.insert(&part.id) {
                // A battery gives at its first end; what floats is drawn the same way.
                let row = self.row(
                    part,
                    0,
                    None,
                    None,
                    if Some(part.id.as_str()) == first.map(|one| one.id.as_str()) { &part.from } else { &part.to },
                );
                self.hang(row);
            }
        }
    }

    fn row(
        &mut self,
        part: &'a Element,
        layer: u32,
        hangs_at: Option<(&'a str, &'a str)>,
        fed_from: Option<usize>,
        leaves_at: &'a str,
    ) -> usize {
        let at = self.rows.len();
        let net = self.nets.net(leaves_at);
        let leaves = match net.and_then(|net| self.fed_by.get(&net)) {
            _ if net == self.earth => Leaves::Earth,
            Some(other) => Leaves::Link(*other),
            None => {
                net.map(|net| self.fed_by.insert(net, at));
                Leaves::Trunk
            }
        };
        self.rows.push(Row { part, layer, hangs_at, fed_from, leaves_at, leaves });
        at
    }

    /// Hangs everything on the trunk that a row begins.
    fn hang(&mut self, feeder: usize) {
        let Some(row) = self.rows.get(feeder) else { return };
        if !matches!(row.leaves, Leaves::Trunk) {
            return;
        }
        let (net, fed_at) = (self.nets.net(row.leaves_at), row.leaves_at);
        // The battery hangs nothing on itself: its trunk has its own layer.
        let layer = if row.hangs_at.is_none() { row.layer } else { row.layer + 1 };
        let hangs = |part: &&'a Element| self.nets.net(&part.from) == net || self.nets.net(&part.to) == net;
        let free: Vec<&Element> = self.parts.iter().copied().filter(hangs).collect();
        // All of them are taken before one of them grows on: two switches side by side stay side by side.
        let taken: Vec<&Element> = free.into_iter().filter(|part| self.placed.insert(&part.id)).collect();
        for part in taken {
            let from_here = self.nets.net(&part.from) == net;
            let (near, far) = if from_here { (&part.from, &part.to) } else { (&part.to, &part.from) };
            let row = self.row(part, layer, Some((near, fed_at)), Some(feeder), far);
            self.hang(row);
        }
    }

    fn drawn(&self, step: f64) -> Diagram {
        let trunk_x = |layer: u32| LEFT + step * f64::from(layer);
        let mut boxes: Vec<DiagramBox> = Vec::new();
        let mut y = 8.0;
        for row in &self.rows {
            let lines = wrapped(&row.part.label, ((BOX - 8.0) / (LETTER * LETTER_WIDTH)) as usize);
            let height = (lines.len() as f64 * (LETTER + 3.0) + 8.0).max(34.0);
            let x = if row.hangs_at.is_none() { LEFT - 8.0 } else { trunk_x(row.layer) + STUB };
            let element = row.part.id.clone();
            boxes.push(DiagramBox { element, lines, layer: row.layer, x, y, width: BOX, height });
            y += height + BAND;
        }
        let earth_y = y + 12.0;
        let lines = self.lines(&boxes, &trunk_x, earth_y);
        let floats = |row: &&Row| row.hangs_at.is_none() && !row.part.component.is_source();
        let floating = self.rows.iter().filter(floats).map(|row| row.part.id.clone()).collect();
        Diagram { width: WIDTH, height: earth_y + 24.0, letter: LETTER, earth_y, boxes, lines, floating }
    }

    fn lines(&self, boxes: &[DiagramBox], trunk_x: &dyn Fn(u32) -> f64, earth_y: f64) -> Vec<DiagramLine> {
        let mut lines = Vec::new();
        let mut lanes: Vec<(usize, f64, f64)> = Vec::new();
        let mut rail_from = earth_y;
        for (at, (row, part)) in self.rows.iter().zip(boxes).enumerate() {
            let middle = part.y + part.height / 2.0;
            let right = part.x + part.width;
            let shared = row.fed_from.map(|feeder| self.shared(feeder)).unwrap_or_default();
            if let Some((near, fed_at)) = row.hangs_at {
                let run: Vec<&Element> = self.nets.run(fed_at, near);
                let own: Vec<&Element> = run.into_iter().filter(|line| !shared.contains(line.id.as_str())).collect();
                let x = trunk_x(row.layer);
                let label = label(&own, x + 5.0, middle - LABEL - 5.0, part.x - x - 7.0);
                lines.push(line(LineKind::Feed, &own, near, [[x, middle], [part.x, middle]], label));
            } else if row.part.component.is_source() {
                let run = self.nets.run(&row.part.to, &self.harness.earth);
                let corners = [[part.x, middle], [5.0, middle], [5.0, earth_y]];
                lines.push(line(LineKind::ToEarth, &run, &row.part.to, corners, None));
            }
            let below = [part.x + 26.0, part.y + part.height + 4.0, BOX - 28.0];
            match row.leaves {
                Leaves::Earth => {
                    rail_from = rail_from.min(middle);
                    let run = self.nets.run(row.leaves_at, &self.harness.earth);
                    let wires: Vec<&Element> = run.into_iter().filter(|line| !self.is_common_earth(line)).collect();
                    let label = label(&wires, below[0], below[1], below[2]);
                    let corners = [[right, middle], [RAIL, middle]];
                    lines.push(line(LineKind::ToEarth, &wires, row.leaves_at, corners, label));
                }
                Leaves::Trunk => {
                    let fed = self.rows.iter().zip(boxes).filter(|(other, _)| other.fed_from == Some(at));
                    let Some(last) = fed.map(|(_, fed)| fed.y + fed.height / 2.0).reduce(f64::max) else { continue };
                    let shared = self.shared(at);
                    let run = self.harness.elements.iter().filter(|line| shared.contains(line.id.as_str()));
                    let run: Vec<&Element> = run.collect();
                    let x = trunk_x(if row.hangs_at.is_none() { row.layer } else { row.layer + 1 });
                    let (exit, turn) = (part.x + 12.0, part.y + part.height + 8.0);
                    let label = label(&run, below[0], below[1], below[2]);
                    let corners = [[exit, part.y + part.height], [exit, turn], [x, turn], [x, last]];
                    lines.push(line(LineKind::Trunk, &run, row.leaves_at, corners, label));
                }
                Leaves::Link(other) => {
                    let Some((target, to)) = boxes.get(other).zip(self.rows.get(other)) else { continue };
                    let run = self.nets.run(row.leaves_at, to.leaves_at);
                    // The far quarter of the box, so that a link never lies on the line to the earth.
                    let (from_y, to_y) = (middle + part.height / 4.0, target.y + target.height * 0.75);
                    let (top, bottom) = (from_y.min(to_y), from_y.max(to_y));
                    let x = lane(&mut lanes, top, bottom);
                    let label = label(&run, below[0], below[1], below[2]);
                    let corners = [[right, from_y], [x, from_y], [x, to_y], [target.x + target.width, to_y]];
                    lines.push(line(LineKind::Link, &run, row.leaves_at, corners, label));
                }
            }
        }
        let common: Vec<&Element> = self.harness.elements.iter().filter(|line| self.is_common_earth(line)).collect();
        let corners = [[RAIL, rail_from], [RAIL, earth_y], [5.0, earth_y]];
        lines.push(line(LineKind::Earth, &common, &self.harness.earth, corners, None));
        lines
    }

    /// Lines that more than one part on the trunk of a row hangs on.
    fn shared(&self, feeder: usize) -> BTreeSet<&'a str> {
        let mut seen: BTreeMap<&str, u32> = BTreeMap::new();
        for row in self.rows.iter().filter(|row| row.fed_from == Some(feeder)) {
            let Some((near, fed_at)) = row.hangs_at else { continue };
            for line in self.nets.run(fed_at, near) {
                *seen.entry(&line.id).or_default() += 1;
            }
        }
        seen.into_iter().filter(|(_, times)| *times > 1).map(|(id, _)| id).collect()
    }

    /// Straps, and what else leads from the frame to the battery: drawn as the earth itself.
    fn is_common_earth(&self, line: &Element) -> bool {
        matches!(line.component, Component::Strap { .. }) && self.nets.net(&line.from) == self.earth
    }
}

/// A free lane at the right for a link between two heights; the last one when all are taken.
fn lane(taken: &mut Vec<(usize, f64, f64)>, top: f64, bottom: f64) -> f64 {
    let free = |lane: &usize| !taken.iter().any(|(at, from, to)| at == lane && top < *to && *from < bottom);
    let lane = (0..LANES.len()).find(free).unwrap_or(LANES.len() - 1);
    taken.push((lane, top, bottom));
    LANES.get(lane).copied().unwrap_or(RAIL - 8.0)
}

fn line<const N: usize>(
    kind: LineKind,
    run: &[&Element],
    point: &str,
    corners: [[f64; 2]; N],
    label: Option<DiagramLabel>,
) -> DiagramLine {
    DiagramLine {
        kind,
        elements: run.iter().map(|line| line.id.clone()).collect(),
        point: point.to_owned(),
        colour: run.iter().rev().find_map(|line| line.colour.clone()),
        corners: corners.into_iter().map(|[x, y]| Spot { x, y }).collect(),
        label,
    }
}

/// Colour and section of the last wire of a run, where it fits.
fn label(run: &[&Element], x: f64, y: f64, most: f64) -> Option<DiagramLabel> {
    let wire = run.iter().rev().find_map(|line| match line.component {
        Component::Wire { section_mm2, .. } => Some((line.colour.clone().unwrap_or_default(), section_mm2)),
        _ => None,
    });
    let text = wire.map(|(colour, section)| format!("{colour} {section}").trim().to_owned())?;
    let width = text.chars().count() as f64 * LABEL * LETTER_WIDTH;
    (width <= most).then_some(DiagramLabel { text, x, y, width, height: LABEL })
}

/// A name in at most three lines of so many letters.
fn wrapped(text: &str, letters: usize) -> Vec<String> {
    let mut lines: Vec<String> = vec![String::new()];
    for word in text.split_whitespace() {
        let short: String = word.chars().take(letters).collect();
        match lines.last_mut() {
            Some(last) if last.is_empty() => *last = short,
            Some(last) if last.chars().count() + 1 + short.chars().count() <= letters => {
                last.push(' ');
                last.push_str(&short);
            }
            _ => lines.push(short),
        }
    }
    if lines.len() > 3 {
        lines.truncate(3);
        if let Some(last) = lines.last_mut() {
            *last = last.chars().take(letters.saturating_sub(1)).chain(['…']).collect();
        }
    }
    lines
}

#[cfg(test)]
#[path = "layout_tests.rs"]
mod tests;
