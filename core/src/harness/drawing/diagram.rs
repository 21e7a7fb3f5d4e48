//! A circuit as a drawing: boxes, orthogonal lines with colour and label, the earth at the bottom.

use layshaft_wire::wire;

/// A point of the drawing, in units of which 390 fit on the width of a phone.
#[wire]
pub struct Spot {
    /// From the left.
    pub x: f64,
    /// From the top.
    pub y: f64,
}

/// A text with the space that it takes.
#[wire]
pub struct DiagramLabel {
    /// The text.
    pub text: String,
    /// Left edge.
    pub x: f64,
    /// Upper edge.
    pub y: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}

/// A part: battery, fuse, switch contact, lamp.
#[wire]
pub struct DiagramBox {
    /// Id of its element.
    pub element: String,
    /// Its name in lines that fit.
    pub lines: Vec<String>,
    /// Layer: how many parts lie between it and the battery.
    pub layer: u32,
    /// Left edge.
    pub x: f64,
    /// Upper edge.
    pub y: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}

/// What a line is.
#[wire]
pub enum LineKind {
    /// From a trunk to a part.
    Feed,
    /// Shared by several parts.
    Trunk,
    /// From a part to the earth.
    ToEarth,
    /// From a part to one that is drawn elsewhere.
    Link,
    /// The earth itself.
    Earth,
}

/// A run of wire with its joints, as an orthogonal line.
#[wire]
pub struct DiagramLine {
    /// What it is.
    pub kind: LineKind,
    /// Ids of the wires, joints and straps that it stands for.
    pub elements: Vec<String>,
    /// Point of the harness whose voltage it has.
    pub point: String,
    /// Colour code, where a wire has one.
    pub colour: Option<String>,
    /// Its corners.
    pub corners: Vec<Spot>,
    /// Colour and section; none where there is no wire.
    pub label: Option<DiagramLabel>,
}

/// The drawing.
#[wire]
pub struct Diagram {
    /// Width, 390.
    pub width: f64,
    /// Height.
    pub height: f64,
    /// Height of letters in boxes.
    pub letter: f64,
    /// Height of the earth bar from the top.
    pub earth_y: f64,
    /// The parts.
    pub boxes: Vec<DiagramBox>,
    /// The lines.
    pub lines: Vec<DiagramLine>,
    /// Ids of parts that hang on nothing that leads to the battery.
    pub floating: Vec<String>,
}
