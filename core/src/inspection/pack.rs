//! Packs: sets of inspection items for a place, as `fixtures/packs` has them.
//!
//! Two are built in, `fixtures/packs/eu.toml` and `fixtures/packs/gb.toml`; each item carries its own source and the
//! standing of it.

use layshaft_wire::wire;

use crate::quantity::{Source, Standing};
use crate::record::Equipment;
use crate::units::Unit;

/// How a value is judged.
#[wire(lenient)]
pub struct Limit {
    /// Least that passes.
    pub min: Option<f64>,
    /// Most that passes.
    pub max: Option<f64>,
}

/// How an item is judged.
#[wire]
pub enum Measure {
    /// From an answer in words.
    Answer,
    /// From a measured value against a limit.
    Reading {
        /// Unit of the value.
        unit: Unit,
        /// Limit.
        limit: Limit,
    },
    /// From a derived quantity of the bike against a limit, or against its own judgement where the limit is open.
    Derived {
        /// Id of the quantity in `derive()`.
        quantity: String,
        /// Unit of the value.
        unit: Unit,
        /// Limit.
        limit: Limit,
    },
}

/// One thing that is inspected.
#[wire]
pub struct Item {
    /// Id within the pack.
    pub id: String,
    /// Area: “Brakes”, “Tyres and wheels”.
    pub area: String,
    /// What must hold, in one sentence.
    pub title: String,
    /// How to check it at home.
    pub how: String,
    /// How it is judged.
    pub measure: Measure,
    /// A failure forbids riding, not just passing.
    pub stopper: bool,
    /// A caution while checking.
    pub caution: Option<String>,
    /// First used in this year or later: asked. Left out: always. A rule that begins within a year is asked for the
    /// whole of that year; the verdict then says so, and `how` names the day.
    pub from_year: Option<u32>,
    /// First used in this year or earlier: asked. Left out: always.
    pub to_year: Option<u32>,
    /// Displacement above which it is asked, cubic centimetres.
    pub above_cc: Option<f64>,
    /// Asked only of machines with this. Left out: of all.
    pub only_with: Option<Equipment>,
    /// The ready-made job, by its id, that puts it right where it suits the bike.
    pub job: Option<String>,
    /// Where the rule comes from, with its standing.
    pub source: Source,
}

/// A pack.
#[wire]
pub struct Pack {
    /// Id: `gb`.
    pub id: String,
    /// Where it holds: “Great Britain”.
    pub place: String,
    /// What it is drawn from.
    pub title: String,
    /// What it is not: a sentence that the examiner and the local law decide.
    pub caution: String,
    /// The items in the order of the walk-through.
    pub items: Vec<Item>,
}

/// A pack in a list.
#[wire]
pub struct PackCard {
    /// Id.
    pub id: String,
    /// Where it holds.
    pub place: String,
    /// What it is drawn from.
    pub title: String,
    /// How many items.
    pub items: u32,
}

impl Limit {
    /// Whether it limits anything.
    pub fn is_open(&self) -> bool {
        self.min.is_none() && self.max.is_none()
    }

    /// Whether a value keeps it. Both ends belong to it: "at least 1.0 mm" is kept by 1.0 mm. What is not a number
    /// keeps no limit.
    pub fn keeps(&self, value: f64) -> bool {
        value.is_finite() && self.min.is_none_or(|min| value >= min) && self.max.is_none_or(|max| value <= max)
    }
}

impl Measure {
    /// Unit and limit of the value that the item takes; none where it is answered in words alone.
    pub fn value(&self) -> Option<(Unit, &Limit)> {
        match self {
            Measure::Answer => None,
            Measure::Reading { unit, limit } | Measure::Derived { unit, limit, .. } => Some((*unit, limit)),
        }
    }
}

impl Item {
    /// Whether its rule was not read in the source itself and must be shown as unconfirmed.
    pub fn is_unconfirmed(&self) -> bool {
        matches!(self.source.standing, Standing::SecondHand | Standing::Memory)
    }
}

impl Pack {
    /// The pack as it stands in a list.
    pub fn card(&self) -> PackCard {
        PackCard {
            id: self.id.clone(),
            place: self.place.clone(),
            title: self.title.clone(),
            items: u32::try_from(self.items.len()).unwrap_or(u32::MAX),
        }
    }
}

#[cfg(test)]
#[path = "pack_tests.rs"]
mod tests;
