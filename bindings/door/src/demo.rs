//! The invented bikes: read from `fixtures/demo`, written as ordinary facts. Everything about them is invented and says so.

use crate::command::DemoBike;
use crate::message::DoorMessage;
use layshaft_core::changes::{Edit, Record, edits as edits_between};
use layshaft_core::error::{Code, Refusal};
use layshaft_core::message::Message;
use layshaft_core::ready_made::{WorkKind, last_steps, ready_made_job, typical_product};
use layshaft_core::record::{
    BenchTime, Brake, Climate, Coat, Consumer, Delivery, Drive, Fluid, Identity, Indication, Job, JobState, Part,
    Place, Reading, Supply, Tightening, Wheel,
};
use layshaft_core::time::Moment;
use layshaft_core::units::HOUR_MS;
use serde::Deserialize;
use std::collections::BTreeMap;

const DAY_MS: i64 = 86_400_000;
/// The file of `fixtures/demo`, as the build turned it into JSON.
fn file(demo: DemoBike) -> &'static str {
    match demo {
        DemoBike::OrrinTern175 => include_str!(concat!(env!("OUT_DIR"), "/orrin-tern-175.json")),
        DemoBike::OrrinWren50 => include_str!(concat!(env!("OUT_DIR"), "/orrin-wren-50.json")),
    }
}

/// The file's shape. Times in it are relative to the moment at which the demo is loaded.
#[derive(Deserialize)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
struct Demo {
    identity: Identity,
    place: Place,
    bench_time: BenchTime,
    drive: Drive,
    front_wheel: Wheel,
    rear_wheel: Wheel,
    fitted_front_wheel: Option<Wheel>,
    fitted_rear_wheel: Option<Wheel>,
    supply: Supply,
    front_brake: Brake,
    rear_brake: Brake,
    indication: Option<Indication>,
    consumers: BTreeMap<String, Consumer>,
    fluids: BTreeMap<String, Fluid>,
    parts: BTreeMap<String, DemoPart>,
    tightenings: BTreeMap<String, Tightening>,
    jobs: Vec<DemoJob>,
    #[serde(default)]
    coats: BTreeMap<String, DemoCoat>,
    climate: Vec<DemoClimate>,
    #[serde(default)]
    readings: BTreeMap<String, DemoReading>,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct DemoPart {
    expected_in_days: Option<i64>,
    ordered_days_ago: Option<i64>,
    #[serde(flatten)]
    part: Part,
}

/// A job; a done one says how long ago. Without steps it is the ready-made one that it names, under its own title if it has
/// one.
#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct DemoJob {
    id: String,
    done_hours_ago: Option<f64>,
    /// Kinds of work in its own steps, which decide how it ends.
    #[serde(default)]
    work: Vec<WorkKind>,
    #[serde(flatten)]
    job: Job,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
struct DemoCoat {
    title: String,
    product: String,
    job: Option<String>,
    applied_hours_ago: f64,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
struct DemoClimate {
    hours_ago: f64,
    celsius: f64,
    humidity: Option<f64>,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct DemoReading {
    days_ago: f64,
    #[serde(flatten)]
    reading: Reading,
}

/// The facts of an invented bike, told from this moment.
pub(crate) fn edits(bike: DemoBike, moment: &Moment) -> Result<Vec<Edit>, Refusal> {
    // By way of a value, as records are read: text and value each take readers of their own for every type.
    let demo: Demo = serde_json::from_str(file(bike))
        .and_then(serde_json::from_value)
        .map_err(|error| Refusal::new(Code::BadRequest, Message::as_entered(error.to_string())))?;
    let ago = |hours: f64| moment.now_ms.saturating_sub((hours * HOUR_MS) as i64);
    let mut facts = Vec::new();
    put(&mut facts, "bike", &demo.identity.checked()?);
    put(&mut facts, "bike", &demo.place.checked()?);
    put(&mut facts, "bike", &demo.bench_time.checked()?);
    put(&mut facts, "standard/drive", &demo.drive.checked()?);
    put(&mut facts, "standard/front", &demo.front_wheel.checked()?);
    put(&mut facts, "standard/rear", &demo.rear_wheel.checked()?);
    for (slot, wheel) in [("fitted/front", demo.fitted_front_wheel), ("fitted/rear", demo.fitted_rear_wheel)] {
        if let Some(wheel) = wheel {
            put(&mut facts, slot, &wheel.checked()?);
        }
    }
    put(&mut facts, "standard/supply", &demo.supply.checked()?);
    put(&mut facts, "standard/front", &demo.front_brake.checked()?);
    put(&mut facts, "standard/rear", &demo.rear_brake.checked()?);
    if let Some(indication) = demo.indication {
        put(&mut facts, "standard/indication", &indication.checked()?);
    }
    for (id, consumer) in demo.consumers {
        put(&mut facts, &format!("standard/{id}"), &consumer.checked()?);
    }
    for (id, fluid) in demo.fluids {
        put(&mut facts, &format!("standard/{id}"), &fluid.checked()?);
    }
    for (id, DemoPart { expected_in_days, ordered_days_ago, part }) in demo.parts {
        let day = |days: i64| moment.zone.day_text_at(moment.now_ms.saturating_add(days * DAY_MS));
        let ordered = ordered_days_ago.map(|days| day(-days));
        let delivery = part.delivery.clone().map(|delivery| Delivery { ordered, ..delivery });
        put(&mut facts, &id, &Part { expected: expected_in_days.map(day), delivery, ..part }.checked()?);
    }
    for (id, tightening) in demo.tightenings {
        put(&mut facts, &id, &tightening.checked()?);
    }
    for (rank, job) in (1..).zip(demo.jobs) {
        let id = job.id.clone();
        put(&mut facts, &id, &told(job, f64::from(rank), &ago).checked()?);
    }
    for (id, coat) in demo.coats {
        put(&mut facts, &id, &coated(coat, &ago)?.checked()?);
    }
    for (id, DemoClimate { hours_ago, celsius, humidity }) in (1..).zip(demo.climate) {
        let climate = Climate { from_ms: ago(hours_ago), celsius, humidity };
        put(&mut facts, &format!("demo-{id}"), &climate.checked()?);
    }
    for (id, DemoReading { days_ago, reading }) in demo.readings {
        put(&mut facts, &id, &Reading { taken_ms: Some(ago(days_ago * 24.0)), ..reading }.checked()?);
    }
    Ok(facts)
}

fn put<R: Record>(facts: &mut Vec<Edit>, id: &str, record: &R) {
    facts.extend(edits_of(id, record));
}

fn edits_of<R: Record>(id: &str, record: &R) -> Vec<Edit> {
    edits_between(id, record, None)
}

/// The job as told, with its place in the list.
fn told(demo: DemoJob, rank: f64, ago: &impl Fn(f64) -> i64) -> Job {
    let DemoJob { done_hours_ago, work, job, .. } = demo;
    let mut job = Job { rank, ..taken_ready_made(job) };
    job.steps.extend(last_steps(&work));
    if let Some(wait) = &mut job.wait {
        wait.product = wait.product.take().and_then(|product| Some(typical_product(&product)?.name));
    }
    let Some(hours) = done_hours_ago else { return job };
    let steps_done = u32::try_from(job.steps.len()).unwrap_or(0);
    Job { state: JobState::Done, done_ms: Some(ago(hours)), steps_done, ..job }
}

fn coated(demo: DemoCoat, ago: &impl Fn(f64) -> i64) -> Result<Coat, Refusal> {
    let missing = || Refusal::new(Code::Unknown, DoorMessage::DemoProduct { product: demo.product.clone() });
    let product = typical_product(&demo.product).ok_or_else(missing)?;
    Ok(Coat { title: demo.title, product, applied_ms: ago(demo.applied_hours_ago), job: demo.job, ..Coat::default() })
}

/// The ready-made job that a job without steps names, in the place of the bike's own.
fn taken_ready_made(job: Job) -> Job {
    let ready = job.ready_made.as_deref().filter(|_| job.steps.is_empty()).and_then(ready_made_job);
    let Some(ready) = ready.map(|ready| ready.job) else { return job };
    let title = if job.title.is_empty() { ready.title.clone() } else { job.title };
    Job { title, after: job.after, parts: job.parts, ..ready }
}
