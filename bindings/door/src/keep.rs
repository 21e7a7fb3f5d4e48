//! Answers about what is kept: the shelf, the open bike, the history of its values, the bundle.

use std::collections::BTreeMap;

use layshaft_core::changes::Key;
use layshaft_core::error::{Code, Refusal};
use layshaft_core::plan::arrival;
use layshaft_core::record::{Bike, KINDS, PartState, Photo, Tightening, put_away};
use layshaft_core::time::Moment;
use layshaft_storage::set_aside_files;

use crate::Bench;
use crate::bench::{EXPORTED, unknown};
use crate::message::DoorMessage;
use crate::query::*;
use layshaft_core::message::Message;

impl Bench {
    /// The bikes on this device, and how the data is kept.
    pub fn shelf(&self, _: &BareAsk, _: &Moment) -> Result<ShelfAnswer, Refusal> {
        let bikes = self.bikes().into_iter().map(|(id, identity, away)| {
            let stamps: Vec<u64> = self.stamps(&id).collect();
            BikeCard {
                name: identity.name,
                model: identity.model,
                invented: identity.invented,
                away,
                last_change_ms: stamps.iter().max().and_then(|at| i64::try_from(*at).ok()),
                changes: u32::try_from(stamps.len()).unwrap_or(u32::MAX),
                id,
            }
        });
        let exported_ms = match &self.open {
            Some(open) => self.store.setting(&format!("{EXPORTED}{open}"))?.and_then(|at| at.parse::<i64>().ok()),
            None => None,
        };
        let exported = exported_ms.and_then(|at_ms| u64::try_from(at_ms).ok());
        let is_new = |at: &u64| exported.is_none_or(|exported| *at > exported);
        let since = self.open.as_ref().map_or(0, |open| self.stamps(open).filter(is_new).count());
        Ok(ShelfAnswer {
            bikes: bikes.collect(),
            open: self.open.clone(),
            exported_ms,
            changes_since_export: u32::try_from(since).unwrap_or(u32::MAX),
            set_aside: self.set_aside.clone(),
            device: format!("{:016x}", self.device.0),
        })
    }

    /// A damaged database that was set aside, to be taken out.
    pub fn set_aside(&self, _: &BareAsk, _: &Moment) -> Result<SetAsideAnswer, Refusal> {
        let name = self.set_aside.as_ref().ok_or_else(|| Refusal::new(Code::Unknown, DoorMessage::NothingSetAside))?;
        let files = set_aside_files(name)?.into_iter();
        Ok(SetAsideAnswer {
            files: files.map(|file| SetAsideFile { file_name: file.name, bytes: file.bytes }).collect(),
        })
    }

    fn stamps<'a>(&'a self, project: &'a str) -> impl Iterator<Item = u64> + 'a {
        self.ledger
            .records()
            .filter(move |(key, _)| key.project == project)
            .flat_map(|(_, fields)| fields.0.values().flat_map(|history| history.keys().map(|stamp| stamp.millis)))
    }

    /// Everything known about the open bike.
    pub fn bike(&self, _: &BareAsk, moment: &Moment) -> Result<BikeAnswer, Refusal> {
        self.open_bike_id()?;
        let bike = self.bike.clone();
        Ok(BikeAnswer {
            spend: spend(&bike),
            rivals: self.rivals(&bike.id),
            parts: bike
                .parts
                .into_iter()
                .map(|(id, part)| PartCard { id, arrival: arrival(&part, moment), part })
                .collect(),
            tightenings: tightenings(bike.tightenings),
            coats: bike.coats.into_iter().map(|(id, coat)| CoatCard { id, coat }).collect(),
            readings: bike.readings.into_iter().map(|(id, reading)| ReadingCard { id, reading }).collect(),
            photos: bike.photos.into_iter().map(|(id, photo)| PhotoCard { id, photo }).collect(),
            climate: bike.climate.last().cloned(),
            id: bike.id,
            identity: bike.identity,
            place: bike.place,
            standard: bike.standard,
            fitted: bike.fitted,
            bench_time: bike.bench_time,
        })
    }

    fn rivals(&self, project: &str) -> Vec<Kept> {
        let records = self.ledger.records().filter(|(key, _)| key.project == project);
        let lost = records.flat_map(|(key, fields)| fields.rivals().into_iter().map(move |rival| (key, rival)));
        lost.map(|(key, rival)| Kept {
            record_kind: key.kind.clone(),
            record: key.record.clone(),
            field: rival.field,
            holds: rival.holds.to_string(),
            lost: rival.lost.to_string(),
            stamp: rival.stamp.to_string(),
        })
        .collect()
    }

    /// What was put away and can come back, the last first.
    pub fn put_away(&self, _: &BareAsk, _: &Moment) -> Result<PutAwayAnswer, Refusal> {
        Ok(PutAwayAnswer { records: put_away(&self.ledger, self.open_bike_id()?) })
    }

    /// Every value that a record has had, newest first.
    pub fn history(&self, ask: &HistoryAsk, _: &Moment) -> Result<HistoryAnswer, Refusal> {
        let project = self.open_bike_id()?.to_owned();
        let key = Key { project, kind: ask.record_kind.clone(), record: ask.record.clone() };
        let Some(fields) = self.ledger.fields(&key) else {
            let known = KINDS.iter().any(|kind| kind.kind == key.kind);
            let what = if known {
                Message::new(format!("kind-{}", key.kind), Vec::new())
            } else {
                Message::as_entered(&key.kind)
            };
            return Err(unknown(what, &key.record));
        };
        let mut facts: Vec<Fact> = fields
            .0
            .iter()
            .flat_map(|(field, history)| {
                let newest = history.keys().next_back().copied();
                history.iter().map(move |(stamp, entry)| Fact {
                    field: field.clone(),
                    value: entry.value.to_string(),
                    at_ms: i64::try_from(stamp.millis).unwrap_or(i64::MAX),
                    stamp: stamp.to_string(),
                    device: format!("{:016x}", stamp.device.0),
                    holds: Some(*stamp) == newest,
                })
            })
            .collect();
        facts.sort_by(|a, b| b.stamp.cmp(&a.stamp).then_with(|| a.field.cmp(&b.field)));
        Ok(HistoryAnswer { facts })
    }

    /// A photo with its bytes.
    pub fn photo(&self, ask: &IdAsk, _: &Moment) -> Result<PhotoAnswer, Refusal> {
        let photo: Photo = self.record(&ask.id)?;
        match self.store.attachment(&photo.hash)? {
            Some((_, bytes)) => Ok(PhotoAnswer { photo, bytes }),
            None => Err(Refusal::new(Code::Unknown, DoorMessage::NoPhotoBytes)),
        }
    }

    /// The open bike as a bundle. `NoteExport` says afterwards that the file is where it should be.
    pub fn bundle(&self, _: &BareAsk, moment: &Moment) -> Result<BundleAnswer, Refusal> {
        let project = self.open_bike_id()?;
        let bundle = self.store.bundle(Some(project))?;
        Ok(BundleAnswer {
            file_name: file_name(&self.bike.identity.name, &format!("{:016x}", self.device.0), moment),
            bundle,
            changes: u32::try_from(self.stamps(project).count()).unwrap_or(u32::MAX),
        })
    }
}

/// The maker's torques by the names of their joints, as one looks for them.
fn tightenings(of_bike: BTreeMap<String, Tightening>) -> Vec<TighteningCard> {
    let mut cards: Vec<TighteningCard> =
        of_bike.into_iter().map(|(id, tightening)| TighteningCard { id, tightening }).collect();
    cards.sort_by_cached_key(|card| (card.tightening.joint.to_lowercase(), card.id.clone()));
    cards
}

/// Money spent, by currency: parts that were ordered or more.
fn spend(bike: &Bike) -> Vec<Spend> {
    let mut sums: BTreeMap<String, f64> = BTreeMap::new();
    for part in bike.parts.values().filter(|part| part.state != PartState::Wanted) {
        if let Some(price) = part.price_minor {
            *sums.entry(part.currency.clone().unwrap_or_default()).or_default() += f64::from(price);
        }
    }
    sums.into_iter().map(|(currency, minor)| Spend { currency, minor }).collect()
}

/// A file name that any system accepts, with bike, device and day: `orrin-tern-175-4f2a-2026-03-21.layshaft.sqlite`. The end of the
/// device's id tells bundles of two devices apart.
fn file_name(name: &str, device: &str, moment: &Moment) -> String {
    let kept: String =
        name.chars().map(|c| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '-' }).collect();
    let words: Vec<&str> = kept.split('-').filter(|word| !word.is_empty()).collect();
    let name = if words.is_empty() { "bike".to_owned() } else { words.join("-") };
    let device = device.get(device.len().saturating_sub(4)..).unwrap_or(device);
    format!("{name}-{device}-{}.layshaft.sqlite", moment.zone.day_text_at(moment.now_ms))
}
