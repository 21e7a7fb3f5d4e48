//! Ready-made jobs: common work with steps and cautions, to be added to a bike as it is and changed there. They stand
//! under `fixtures/jobs`, in words of our own; their times are common practice, no source.

use std::sync::LazyLock;

use layshaft_wire::wire;
use serde::Deserialize;

use super::message::ReadyMadeSource;
use super::needs::NeededPart;
use super::products::card;
use super::suits::Suits;
use crate::content::Content;
use crate::error::Refused;
use crate::quantity::{Source, Standing};
use crate::record::{Job, Step};

/// Kinds of work that other jobs have to heed, whatever the job is called.
#[wire]
pub enum WorkKind {
    /// The first turning over of an engine that stood.
    FirstTurn,
    /// Turns the engine, by hand, kick-start or starter.
    TurnsEngine,
    /// Runs the engine.
    RunsEngine,
    /// Opens, moves or adjusts a brake, or takes out the wheel that it stops.
    Brake,
    /// Brings fuel into the tank or the carburettor on the bike.
    Fuel,
    /// Fills the engine with oil.
    Oil,
    /// Puts a wheel back.
    Wheel,
}

/// A job that can be added as it is.
#[wire]
pub struct ReadyMade {
    /// Id.
    pub id: String,
    /// The job.
    pub job: Job,
    /// Tools to lay out before it begins.
    pub tools: Vec<String>,
    /// Parts and supplies that it usually takes.
    pub supplies: Vec<String>,
    /// Parts that go on the list with it, because it cannot be done without them.
    pub needs: Vec<NeededPart>,
    /// Ready-made jobs, by their ids, that come before this one where the bike has them too.
    pub follows: Vec<String>,
    /// Kinds of work in it that other jobs have to heed.
    pub work: Vec<WorkKind>,
    /// Kinds of work that come before this one, whatever the job is called.
    pub after_work: Vec<WorkKind>,
    /// Which bikes it suits.
    pub suits: Suits,
    /// Coating products, by their names, that lie on top when it is done: each holds its part until it is cured.
    pub lays: Vec<String>,
    /// Orders of coats, by their ids, that it is done in; the first comes with the job, and the owner may choose another.
    pub coats: Vec<String>,
    /// Where the length of its wait comes from.
    pub wait_source: Option<Source>,
}

impl ReadyMade {
    /// Whether this job has to be done before another one: named there, or by its kind of work.
    pub fn comes_before(&self, other: &ReadyMade) -> bool {
        let by_kind = other.after_work.iter().any(|kind| self.work.contains(kind));
        self.id != other.id && (by_kind || other.follows.contains(&self.id))
    }
}

/// What the file of a job says beside the job itself.
#[derive(Deserialize)]
struct Beside {
    tools: Vec<String>,
    #[serde(default)]
    supplies: Vec<String>,
    #[serde(default)]
    needs: Vec<NeededPart>,
    #[serde(default)]
    follows: Vec<String>,
    #[serde(default)]
    work: Vec<WorkKind>,
    #[serde(default, rename = "afterWork")]
    after_work: Vec<WorkKind>,
    #[serde(default)]
    suits: Suits,
    #[serde(default)]
    lays: Vec<String>,
    #[serde(default)]
    coats: Vec<String>,
}

/// The files of the jobs, in the order of a rebuild.
const FILES: [&str; 57] = [
    "tank-drain",
    "bore-oil",
    "soak-fasteners",
    "first-turn",
    "tank-derust",
    "tank-reline",
    "carburettor-clean",
    "air-filter",
    "fork-seals",
    "head-bearings",
    "swing-arm-bushes",
    "shock-check",
    "wheel-bearings",
    "spokes-true",
    "caliper-rebuild",
    "frame-spots",
    "plastic-repair",
    "tank-paint",
    "panel-paint",
    "wheel-paint",
    "decals",
    "fuel-tap-lines",
    "seat",
    "stand-footrest",
    "fasteners-rust",
    "drum-shoes",
    "front-tyre-tube",
    "rear-tyre-tube",
    "chain-sprockets",
    "chain-slack",
    "master-cylinder-swap",
    "brake-hose",
    "brake-bleed",
    "cables",
    "control-levers",
    "grips",
    "gasket-reseal",
    "valve-clearance",
    "oil-filter",
    "cooling",
    "exhaust-fit",
    "battery-charge",
    "wiring-repair",
    "battery-fit",
    "lamp-swap",
    "indicators",
    "horn-switches",
    "stop-lamp-switches",
    "starter-circuit",
    "spark-plug",
    "ignition-timing",
    "leak-check",
    "first-start",
    "timing-strobe",
    "charging-check",
    "first-ride",
    "pre-inspection",
];

/// The ready-made jobs, in the order of a rebuild.
///
/// ```
/// let ready_made = layshaft_core::ready_made::ready_made();
/// let reline = ready_made.iter().find(|ready| ready.id == "tank-reline").unwrap();
/// assert_eq!(reline.job.title, "Reline the tank");
/// assert_eq!(reline.follows, ["tank-drain", "tank-derust"]);
/// ```
pub fn ready_made() -> Vec<ReadyMade> {
    // The files are part of the program and never change: they are read once, which a slow phone feels.
    static READ: LazyLock<Vec<ReadyMade>> = LazyLock::new(|| read_all(Content::in_use()));
    READ.clone()
}

/// The jobs of a language. A file that cannot be read is left out; a test holds that all of them can.
fn read_all(content: &Content) -> Vec<ReadyMade> {
    FILES.iter().filter_map(|mark| read(content, mark).ok()).collect()
}

/// One ready-made job by its id.
pub fn ready_made_job(mark: &str) -> Option<ReadyMade> {
    ready_made().into_iter().find(|job| job.id == mark)
}

/// The steps with which a job of these kinds of work has to end: each brake is tried standing still, then at walking pace.
///
/// ```
/// use layshaft_core::ready_made::{WorkKind, last_steps};
/// assert_eq!(last_steps(&[WorkKind::Brake, WorkKind::TurnsEngine]).len(), 2);
/// assert!(last_steps(&[WorkKind::Fuel]).is_empty());
/// ```
pub fn last_steps(work: &[WorkKind]) -> Vec<Step> {
    ending(Content::in_use(), work)
}

fn ending(content: &Content, work: &[WorkKind]) -> Vec<Step> {
    #[derive(Deserialize)]
    struct Ending {
        steps: Vec<Step>,
    }
    if !work.contains(&WorkKind::Brake) {
        return Vec::new();
    }
    content.file("endings", "brake").map(|Ending { steps }| steps).unwrap_or_default()
}

fn read(content: &Content, mark: &str) -> Result<ReadyMade, Refused> {
    let Beside { tools, supplies, needs, follows, work, after_work, suits, lays, coats } =
        content.file("jobs", mark)?;
    // The tools stay with the ready-made job; a job has tools of its own only where the owner changed them.
    let mut job = Job { ready_made: Some(mark.to_owned()), tools: None, ..content.file("jobs", mark)? };
    job.steps.extend(ending(content, &work));
    let mut wait_source = None;
    if let Some(wait) = &mut job.wait {
        // A file names a product by its id; a job names it as the owner reads it.
        let card = wait.product.as_deref().and_then(|id| card(content, id));
        wait.product = card.as_ref().map(|card| card.product.name.clone());
        let practice = || Source::new(ReadyMadeSource::CommonPractice, Standing::CommonPractice);
        wait_source = Some(card.map_or_else(practice, |card| card.source));
    }
    let lays = lays.iter().filter_map(|id| Some(card(content, id)?.product.name)).collect();
    Ok(ReadyMade {
        id: mark.to_owned(),
        job,
        tools,
        supplies,
        needs,
        follows,
        work,
        after_work,
        suits,
        lays,
        coats,
        wait_source,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ready_made::products::typical_product;
    use crate::record::JobState;

    #[test]
    fn every_file_is_read_and_every_job_can_be_stored_as_it_is() {
        let ready_made = ready_made();
        assert!(ready_made.iter().map(|ready| ready.id.as_str()).eq(FILES), "in the order of a rebuild");
        assert!(ready_made.len() >= 40);
        for ReadyMade { id, job, .. } in ready_made {
            assert_eq!(job.clone().checked(), Ok(job.clone()), "{id}");
            assert_eq!((job.state, job.steps_done, job.done_ms), (JobState::Open, 0, None), "{id}");
        }
    }

    #[test]
    fn every_file_in_the_folder_is_listed() {
        let mut listed = FILES.to_vec();
        listed.sort_unstable();
        assert_eq!(Content::english().files("jobs"), listed);
    }

    #[test]
    fn each_step_fits_one_screen_and_each_job_has_a_caution() {
        for ReadyMade { id, job, .. } in ready_made() {
            assert!((5..=15).contains(&job.steps.len()), "{id}: {}", job.steps.len());
            assert!(job.steps.iter().any(|step| step.caution.is_some()), "{id}");
            for step in &job.steps {
                let sentences = step.text.matches(['.', '?']).count();
                assert!((1..=3).contains(&sentences) && step.text.chars().count() <= 160, "{id}: {}", step.text);
                assert!(
                    step.caution.as_ref().is_none_or(|caution| caution.chars().count() <= 180),
                    "{id}: {}",
                    step.text
                );
            }
        }
    }

    #[test]
    fn a_product_that_a_wait_names_has_a_typical_sheet() {
        let named: Vec<String> = ready_made().into_iter().filter_map(|ready| ready.job.wait?.product).collect();
        assert!(named.len() >= 2);
        for name in named {
            assert!(typical_product(&name).is_some(), "{name}");
        }
    }

    #[test]
    fn each_job_says_its_tools_and_three_times_in_order() {
        for ReadyMade { id, job, tools, .. } in ready_made() {
            assert!((2..=10).contains(&tools.len()), "{id}");
            let (least, most) = (job.least_minutes.unwrap(), job.most_minutes.unwrap());
            assert!(least < job.hands_on_minutes && job.hands_on_minutes < most, "{id}");
        }
    }

    #[test]
    fn what_a_job_follows_stands_before_it_in_the_list() {
        // The order of the list thereby holds that no job comes to follow itself.
        let place = |mark: &str| FILES.iter().position(|known| *known == mark);
        let all = ready_made();
        for job in &all {
            assert!(job.follows.iter().all(|before| place(before).is_some()), "{}", job.id);
            for before in all.iter().filter(|before| before.comes_before(job)) {
                assert!(place(&before.id) < place(&job.id), "{} follows {}", job.id, before.id);
            }
        }
    }

    #[test]
    fn work_that_can_hurt_carries_its_caution() {
        let cautions = |mark: &str| -> String {
            ready_made_job(mark).unwrap().job.steps.into_iter().filter_map(|step| step.caution).collect()
        };
        let says = |mark: &str, words: &[&str]| {
            let text = cautions(mark).to_lowercase();
            assert!(words.iter().any(|word| text.contains(word)), "{mark}: none of {words:?}");
        };
        for fuel in ["tank-drain", "tank-reline", "fuel-tap-lines", "carburettor-clean", "leak-check", "first-start"] {
            says(fuel, &["flame", "smok"]);
        }
        for lifting in
            ["fork-seals", "head-bearings", "swing-arm-bushes", "wheel-bearings", "rear-tyre-tube", "stand-footrest"]
        {
            says(lifting, &["strap"]);
        }
        for spraying in ["tank-paint", "wheel-paint", "frame-spots", "decals"] {
            says(spraying, &["isocyanate"]);
        }
        for wiring in ["wiring-repair", "indicators", "horn-switches", "stop-lamp-switches", "lamp-swap"] {
            says(wiring, &["battery", "earth lead"]);
        }
        for brake in ["brake-bleed", "brake-hose", "caliper-rebuild", "master-cylinder-swap", "drum-shoes", "cables"] {
            says(brake, &["brake", "piston"]);
        }
        says("battery-charge", &["acid"]);
        says("first-ride", &["licensed mechanic"]);
    }

    #[test]
    fn each_wait_names_its_source() {
        let waiting: Vec<ReadyMade> = ready_made().into_iter().filter(|ready| ready.job.wait.is_some()).collect();
        assert!(waiting.len() >= 6);
        for ReadyMade { id, wait_source, .. } in waiting {
            let standing = wait_source.unwrap().standing;
            assert!(matches!(standing, Standing::CommonPractice | Standing::Invented), "{id}");
        }
    }
}
