//! Ready-made jobs: common work with steps and cautions, to be added to a bike as it is and changed there. They stand
//! under `fixtures/jobs`, in words of our own; their times are common practice, no source.

use layshaft_wire::wire;

use crate::bike::Job;

/// A job that can be added as it is.
#[wire]
pub struct ReadyMade {
    /// Mark.
    pub id: String,
    /// The job.
    pub job: Job,
}

/// Reads the files by their names, in the order in which they are shown.
macro_rules! files {
    ($($mark:literal)*) => {
        [$(($mark, include_str!(concat!("../../../fixtures/jobs/", $mark, ".toml")))),*]
    };
}

/// Marks and texts of the jobs, in the order of a rebuild.
const FILES: [(&str, &str); 15] = files! {
    "tank-reline"
    "carburettor-clean"
    "caliper-rebuild"
    "tank-paint"
    "drum-shoes"
    "tyre-tube"
    "chain-sprockets"
    "master-cylinder-swap"
    "brake-bleed"
    "oil-filter"
    "battery-charge"
    "lamp-swap"
    "first-start"
    "first-ride"
    "pre-inspection"
};

/// The ready-made jobs, in the order of a rebuild.
///
/// ```
/// let ready_made = layshaft_core::plan::ready_made();
/// let reline = ready_made.iter().find(|ready| ready.id == "tank-reline").unwrap();
/// assert_eq!(reline.job.title, "Clean and reline the tank");
/// ```
pub fn ready_made() -> Vec<ReadyMade> {
    let read = |(mark, text): (&str, &str)| Some(ReadyMade { id: mark.to_owned(), job: toml::from_str(text).ok()? });
    FILES.into_iter().filter_map(read).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bike::JobState;
    use crate::coating::typical_product;

    #[test]
    fn every_file_is_read_and_every_job_can_be_stored_as_it_is() {
        let ready_made = ready_made();
        assert_eq!(ready_made.len(), FILES.len());
        for ReadyMade { id, job } in ready_made {
            assert_eq!(job.clone().checked(), Ok(job.clone()), "{id}");
            assert_eq!((job.state, job.steps_done, job.done_ms), (JobState::Open, 0, None), "{id}");
        }
    }

    #[test]
    fn no_file_holds_a_field_that_a_job_does_not_have() {
        for (mark, text) in FILES {
            let table: toml::Table = toml::from_str(text).unwrap();
            let within = |table: &toml::Table, known: &[&str]| {
                for key in table.keys() {
                    assert!(known.contains(&key.as_str()), "{mark}: {key}");
                }
            };
            let times = ["leastMinutes", "handsOnMinutes", "mostMinutes"];
            let needs = ["splittable", "place", "helper", "noisy"];
            within(&table, &[&["title", "stage", "wait", "steps"][..], &times, &needs].concat());
            for step in table["steps"].as_array().unwrap() {
                within(step.as_table().unwrap(), &["text", "caution", "clockMinutes"]);
            }
            if let Some(wait) = table.get("wait") {
                within(wait.as_table().unwrap(), &["name", "hours", "product", "atMostHours"]);
            }
        }
    }

    #[test]
    fn every_file_in_the_folder_is_listed() {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../fixtures/jobs");
        let mut found: Vec<String> = std::fs::read_dir(folder)
            .unwrap()
            .filter_map(|entry| {
                entry.unwrap().file_name().into_string().unwrap().strip_suffix(".toml").map(str::to_owned)
            })
            .collect();
        found.sort();
        let mut listed: Vec<&str> = FILES.iter().map(|(mark, _)| *mark).collect();
        listed.sort_unstable();
        assert_eq!(found, listed);
    }

    #[test]
    fn each_step_fits_one_screen_and_each_job_has_a_caution() {
        for ReadyMade { id, job } in ready_made() {
            assert!((5..=12).contains(&job.steps.len()), "{id}");
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
}
