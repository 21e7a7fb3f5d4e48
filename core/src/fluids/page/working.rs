//! What the working of a mixture is made of.

use crate::fluids::MixPart;
use crate::fluids::message::MixMessage;
use crate::quantity::{Source, WorkLine, Working};

pub(crate) fn by_volume(name: MixMessage, millilitres: f64) -> MixPart {
    MixPart { name: name.into(), millilitres: Some(millilitres), grams: None }
}

pub(crate) fn working(lines: Vec<WorkLine>, source: Source, range: MixMessage) -> Working {
    Working { lines, sources: vec![source], range: range.into() }
}
