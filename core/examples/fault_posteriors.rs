//! Prints the tables of experience with answers and what the program makes of them, as JSON: the input of the outside check
//! `tests/outside/faults.py`.

use layshaft_core::faults::{KNOWLEDGE, TroubleCase, beliefs, knowledge_case, next_check};
use layshaft_core::record::Evidence;
use serde::Serialize;

/// A search and the probabilities after its answers.
#[derive(Serialize)]
struct Search {
    case: TroubleCase,
    evidence: Vec<Evidence>,
    probabilities: Vec<f64>,
    /// What the next check is expected to tell, bits; none when there is no next check.
    next: Option<(String, f64)>,
}

/// Searches of each table: answers drawn by a fixed sequence.
const EACH: u64 = 12;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut seed = 7_u64;
    let mut draw = move |below: usize| {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(seed >> 33).unwrap_or_default() % below.max(1)
    };
    let mut searches = Vec::new();
    for mark in KNOWLEDGE {
        let case = knowledge_case(mark)?;
        for number in 0..EACH {
            let mut evidence: Vec<Evidence> = Vec::new();
            for _ in 0..number % 5 {
                let Some(check) = case.checks.get(draw(case.checks.len())) else { continue };
                let Some(outcome) = check.outcomes.get(draw(check.outcomes.len())) else { continue };
                if evidence.iter().all(|answer| answer.check() != check.id) {
                    evidence.push(Evidence::Seen { check: check.id.clone(), outcome: outcome.id.clone() });
                }
            }
            let probabilities = beliefs(&case, &evidence)?.into_iter().map(|belief| belief.probability).collect();
            let next = next_check(&case, &evidence)?.map(|next| (next.check, next.gain_bits));
            searches.push(Search { case: case.clone(), evidence, probabilities, next });
        }
    }
    println!("{}", serde_json::to_string(&searches)?);
    Ok(())
}
