//! What each command writes, by area.

mod away;
mod bike;
mod bundle;
mod circuits;
mod cure;
mod faults;
mod finish;
mod fit;
mod inspect;
mod jobs;
mod kind;
mod parts;
mod photos;
mod process;
mod ready_made;
mod spec;

use layshaft_core::changes::{Edit, Record, edits};
use layshaft_core::error::Refusal;

use crate::Bench;

/// The edits that bring the record with this id to its new state.
fn changed<R: Record>(bench: &Bench, id: &str, new: &R) -> Vec<Edit> {
    edits(id, new, bench.record::<R>(id).ok().as_ref())
}

/// The edits that change a record that must be there.
fn change<R: Record>(bench: &Bench, id: &str, by: impl FnOnce(R) -> R) -> Result<Vec<Edit>, Refusal> {
    let old: R = bench.record(id)?;
    let new = by(bench.record(id)?);
    Ok(edits(id, &new, Some(&old)))
}
