//! Processes to start from: the usual order of coats on a tank, a wheel and a rust spot, with the typical sheets.

use serde::Deserialize;

use crate::content::Content;
use crate::ready_made::typical_product;
use crate::record::{Layer, PaintedPart, Process, ProcessStep, PutOn};

/// A plan as it stands in its file: products by the ids of their typical sheets.
#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct PlanFile {
    title: String,
    part: PaintedPart,
    put_on: Option<PutOn>,
    steps: Vec<StepFile>,
}

#[derive(Deserialize)]
struct StepFile {
    name: String,
    layer: Layer,
    product: Option<String>,
}

/// The files, in the order in which they are shown.
const PLANS: [&str; 5] = ["tank-decal", "tank", "panel", "wheel", "frame-spot"];

/// Plans to start from. Common practice, no source; change them to what your cans say.
///
/// ```
/// let plans = layshaft_core::coating::process_plans();
/// assert!(plans.iter().all(|plan| plan.clone().checked().is_ok()));
/// ```
pub fn process_plans() -> Vec<Process> {
    PLANS.into_iter().filter_map(read).collect()
}

/// One of them by its id; none where there is no such.
///
/// ```
/// use layshaft_core::coating::process_plan;
/// assert_eq!(process_plan("wheel").unwrap().title, "Wheel");
/// assert!(process_plan("whale").is_none());
/// ```
pub fn process_plan(id: &str) -> Option<Process> {
    PLANS.contains(&id).then(|| read(id)).flatten()
}

/// A file that cannot be read is left out; a test holds that all of them can.
fn read(name: &str) -> Option<Process> {
    let file: PlanFile = Content::in_use().file("processes", name).ok()?;
    let step = |step: StepFile| {
        let product = match &step.product {
            Some(id) => Some(typical_product(id)?),
            None => None,
        };
        Some(ProcessStep { name: step.name, layer: step.layer, product, done_ms: None })
    };
    let steps = file.steps.into_iter().map(step).collect::<Option<_>>()?;
    Some(Process { title: file.title, part: file.part, put_on: file.put_on, steps, ..Process::default() })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_plan_is_read_and_can_be_started_as_it_is() {
        let plans = process_plans();
        assert_eq!(plans.len(), PLANS.len());
        for plan in plans {
            assert_eq!(plan.clone().checked(), Ok(plan.clone()), "{}", plan.title);
            assert!(plan.steps.iter().filter_map(|step| step.product.as_ref()).all(|product| product.typical));
        }
    }

    #[test]
    fn each_plan_file_is_listed() {
        let mut listed = PLANS.to_vec();
        listed.sort_unstable();
        assert_eq!(Content::english().files("processes"), listed);
    }
}
