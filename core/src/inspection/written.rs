//! How a pack is written down: a strict TOML form, checked item by item before it becomes a [`Pack`].
//!
//! The form is our own. It is stricter than the wire form of the same types, because a pack is written by hand: a
//! misspelt field that silently lost a limit would turn a fail into a pass.

use std::collections::BTreeSet;
use std::sync::OnceLock;

use serde::Deserialize;

use super::message::PackMessage;
use super::{Item, Limit, Measure, Pack};
use crate::bounds;
use crate::check;
use crate::error::Refused;
use crate::message::{FieldMessage, Message};
use crate::quantity::{Source, Standing};
use crate::units::Unit;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct WrittenPack {
    id: String,
    place: String,
    title: String,
    caution: String,
    item: Vec<WrittenItem>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "camelCase")]
struct WrittenItem {
    id: String,
    area: String,
    title: String,
    how: String,
    reading: Option<WrittenReading>,
    derived: Option<WrittenDerived>,
    #[serde(default)]
    stopper: bool,
    caution: Option<String>,
    from_year: Option<u32>,
    to_year: Option<u32>,
    above_cc: Option<f64>,
    source: WrittenSource,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct WrittenReading {
    unit: Unit,
    min: Option<f64>,
    max: Option<f64>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct WrittenDerived {
    quantity: String,
    unit: Unit,
    min: Option<f64>,
    max: Option<f64>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct WrittenSource {
    text: String,
    standing: Standing,
}

/// Reads and checks a written pack.
pub(super) fn read(text: &str) -> Result<Pack, Refused> {
    let written: WrittenPack = toml::from_str(text).map_err(|error| {
        let before = error.span().and_then(|span| text.get(..span.start)).unwrap_or_default();
        let line = before.matches('\n').count() + 1;
        Refused::Unreadable {
            field: "pack".to_owned(),
            label: PackMessage::Line { line }.into(),
            reason: Message::as_entered(error.message()),
        }
    })?;
    if written.item.is_empty() {
        return Err(conflict(PackMessage::NoItem));
    }
    let id = check_id("id", PackMessage::Id, &written.id)?;
    let mut seen = BTreeSet::new();
    let mut items = Vec::with_capacity(written.item.len());
    for item in written.item {
        let item = item.checked()?;
        if !seen.insert(item.id.clone()) {
            return Err(conflict(PackMessage::ItemTwice { item: item.id }));
        }
        items.push(item);
    }
    Ok(Pack {
        id,
        place: check::check_title("place", PackMessage::Place, &written.place)?,
        title: check::check_title("title", PackMessage::Title, &written.title)?,
        caution: check::check_text("caution", PackMessage::Caution, &written.caution, MOST)?,
        items,
    })
}

/// Most characters of a longer text.
const MOST: usize = 600;

impl WrittenItem {
    fn checked(self) -> Result<Item, Refused> {
        let id = check_id("item.id", PackMessage::ItemId, &self.id)?;
        let text = |field: &str, text: &str, most| {
            let label = PackMessage::ItemField { item: id.clone(), field: field.to_owned() };
            check::check_text(&format!("item.{field}"), label, text, most)
        };
        for year in [self.from_year, self.to_year].into_iter().flatten() {
            let year_of_use = bounds::MODEL_YEAR.named("item.fromYear", FieldMessage::YearOfFirstUse);
            year_of_use.check(f64::from(year))?;
        }
        if let (Some(from), Some(to)) = (self.from_year, self.to_year)
            && from > to
        {
            return Err(conflict(PackMessage::YearsSwapped {
                item: id.clone(),
                from: Unit::Year.of(from),
                to: Unit::Year.of(to),
            }));
        }
        bounds::DISPLACEMENT.check_known(self.above_cc)?;
        Ok(Item {
            area: text("area", &self.area, 60)?,
            title: text("title", &self.title, 120)?,
            how: text("how", &self.how, MOST)?,
            caution: self.caution.as_deref().map(|caution| text("caution", caution, MOST)).transpose()?,
            source: Source::new(Message::as_entered(text("source", &self.source.text, 200)?), self.source.standing),
            measure: measure(&id, self.reading, self.derived)?,
            stopper: self.stopper,
            from_year: self.from_year,
            to_year: self.to_year,
            above_cc: self.above_cc,
            id,
        })
    }
}

/// How the item is judged. Neither a reading nor a derived quantity means: in words.
fn measure(id: &str, reading: Option<WrittenReading>, derived: Option<WrittenDerived>) -> Result<Measure, Refused> {
    match (reading, derived) {
        (None, None) => Ok(Measure::Answer),
        (Some(_), Some(_)) => Err(conflict(PackMessage::TwoMeasures { item: id.to_owned() })),
        (Some(WrittenReading { unit, min, max }), None) => {
            let limit = check_limit(id, Limit { min, max })?;
            if limit.is_open() {
                return Err(conflict(PackMessage::NoLimit { item: id.to_owned() }));
            }
            Ok(Measure::Reading { unit, limit })
        }
        (None, Some(WrittenDerived { quantity, unit, min, max })) => {
            let quantity = check_id("item.derived.quantity", PackMessage::QuantityId, &quantity)?;
            Ok(Measure::Derived { quantity, unit, limit: check_limit(id, Limit { min, max })? })
        }
    }
}

fn check_limit(id: &str, limit: Limit) -> Result<Limit, Refused> {
    for end in [limit.min, limit.max].into_iter().flatten() {
        bounds::READING.named("item.limit", FieldMessage::LimitOfAnItem).check(end)?;
    }
    match limit {
        Limit { min: Some(min), max: Some(max) } if min > max => {
            let (least, most) = (Unit::None.of(min), Unit::None.of(max));
            Err(conflict(PackMessage::LimitSwapped { item: id.to_owned(), least, most }))
        }
        _ => Ok(limit),
    }
}

/// An id: lower-case letters, digits, dots and hyphens. Answers are kept under `pack/item`, so no slash.
fn check_id(field: &str, label: PackMessage, mark: &str) -> Result<String, Refused> {
    let mark = check::check_text(field, label.clone(), mark, 60)?;
    if mark.chars().all(|sign| sign.is_ascii_lowercase() || sign.is_ascii_digit() || sign == '.' || sign == '-') {
        return Ok(mark);
    }
    Err(Refused::Unreadable {
        field: field.to_owned(),
        label: label.into(),
        reason: PackMessage::BadId { id: mark }.into(),
    })
}

fn conflict(reason: PackMessage) -> Refused {
    Refused::Conflict { field: "pack".to_owned(), reason: reason.into() }
}

/// The packs that are built in, in the order in which they are offered.
pub(super) const BUILT_IN: [&str; 2] =
    [include_str!("../../../fixtures/packs/eu.toml"), include_str!("../../../fixtures/packs/gb.toml")];

/// The built-in packs.
pub fn packs() -> Vec<Pack> {
    built_in().to_vec()
}

/// The built-in packs, read once. That every one of them can be read is a test.
pub(super) fn built_in() -> &'static [Pack] {
    static READ: OnceLock<Vec<Pack>> = OnceLock::new();
    READ.get_or_init(|| BUILT_IN.iter().filter_map(|text| read_pack(text).ok()).collect())
}

/// Reads a pack from TOML. Unknown fields, an id used twice, an item without a source and a reading without a limit
/// are refused, with the line or the item.
///
/// ```
/// use layshaft_core::inspection::read_pack;
/// let pack = read_pack(r#"
///     id = "club"
///     place = "Our club"
///     title = "What we look at before a ride"
///     caution = "Not an inspection."
///     [[item]]
///     id = "tyre.tread"
///     area = "Tyres"
///     title = "At least 2 mm of tread"
///     how = "Depth gauge, middle groove."
///     reading = { unit = "millimetre", min = 2.0 }
///     source = { text = "Club rule", standing = "entered" }
/// "#).unwrap();
/// assert_eq!(pack.items.len(), 1);
/// assert!(read_pack("id = 'club'").is_err());
/// ```
pub fn read_pack(toml: &str) -> Result<Pack, Refused> {
    read(toml)
}
