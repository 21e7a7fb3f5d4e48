//! How a pack is written down, checked item by item before it becomes a [`Pack`].
//!
//! The form is our own. A field that it does not know fails the build: a misspelt one that silently lost a limit would turn
//! a fail into a pass.

use std::collections::BTreeSet;
use std::sync::OnceLock;

use serde::Deserialize;

use super::message::PackMessage;
use super::{Item, Limit, Measure, Pack};
use crate::bounds;
use crate::check;
use crate::content::Content;
use crate::error::Refused;
use crate::message::{FieldMessage, Message};
use crate::quantity::{Source, Standing};
use crate::record::Equipment;
use crate::units::Unit;

#[derive(Deserialize)]
pub(super) struct WrittenPack {
    id: String,
    place: String,
    title: String,
    caution: String,
    item: Vec<WrittenItem>,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
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
    only_with: Option<Equipment>,
    job: Option<String>,
    source: WrittenSource,
}

#[derive(Deserialize)]
struct WrittenReading {
    unit: Unit,
    min: Option<f64>,
    max: Option<f64>,
}

#[derive(Deserialize)]
struct WrittenDerived {
    quantity: String,
    unit: Unit,
    min: Option<f64>,
    max: Option<f64>,
}

#[derive(Deserialize)]
struct WrittenSource {
    text: String,
    standing: Standing,
}

/// Checks a written pack.
pub(super) fn read(written: WrittenPack) -> Result<Pack, Refused> {
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

/// Most characters of a longer text, in any language.
const MOST: usize = 1_200;

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
            area: text("area", &self.area, 120)?,
            title: text("title", &self.title, 240)?,
            how: text("how", &self.how, MOST)?,
            caution: self.caution.as_deref().map(|caution| text("caution", caution, MOST)).transpose()?,
            source: Source::new(Message::as_entered(text("source", &self.source.text, 400)?), self.source.standing),
            measure: measure(&id, self.reading, self.derived)?,
            stopper: self.stopper,
            from_year: self.from_year,
            to_year: self.to_year,
            above_cc: self.above_cc,
            only_with: self.only_with,
            job: self.job,
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

/// The files of the packs, in the order in which they are offered.
const PACKS: [&str; 2] = ["eu", "gb"];

/// The built-in packs.
pub fn packs() -> Vec<Pack> {
    built_in().to_vec()
}

/// The built-in packs, read once. That every one of them can be read is a test.
pub(super) fn built_in() -> &'static [Pack] {
    static READ: OnceLock<Vec<Pack>> = OnceLock::new();
    READ.get_or_init(|| read_all(Content::in_use()).into_iter().filter_map(Result::ok).collect())
}

/// The packs of a language.
pub(super) fn read_all(content: &Content) -> Vec<Result<Pack, Refused>> {
    PACKS.iter().map(|name| content.file("packs", name).and_then(read)).collect()
}
