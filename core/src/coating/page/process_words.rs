//! How a process is said: the next coat with its window, and what happens when the window closes unused.

use super::process_ask::{ProcessState, StepAnswer};
use super::words;
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{Layer, Process};
use crate::time::Zone;

/// What there is to say.
pub(crate) struct Next<'a> {
    pub(crate) state: ProcessState,
    /// Nothing in the air speaks against putting it on now.
    pub(crate) in_this_air: bool,
    pub(crate) step: Option<&'a StepAnswer>,
    /// Name of the paint below.
    pub(crate) below: Option<&'a str>,
    /// A decal lies bare on top.
    pub(crate) over_decal: bool,
    pub(crate) cured_ms: Option<i64>,
}

/// The window of a coat for the next one.
pub(crate) struct Window<'a> {
    /// Name of the coat below.
    pub(crate) below: &'a str,
    /// Temperature at which the hours on the can hold, °C.
    pub(crate) at_celsius: f64,
    /// From and until, hours on the can; no end where the can names none.
    pub(crate) on_can: (f64, Option<f64>),
    /// From and until, hours here; none where no end is in sight.
    pub(crate) here: (Option<f64>, Option<f64>),
    /// Mean temperature here over that time, °C.
    pub(crate) celsius_here: Option<f64>,
    pub(crate) lowest_celsius: Option<f64>,
}

/// The window in one sentence: “on the can at 20 °C 30 min to 24 h; here at 12 °C 47 min to 38 h”.
pub(crate) fn window(window: &Window) -> String {
    let span = |from: f64, until: Option<f64>| match until {
        Some(until) => format!("{} to {}", words::hours(from), words::hours(until)),
        None => format!("from {}", words::hours(from)),
    };
    let can = format!(
        "“{}” on the can at {:.0} °C: {}",
        window.below,
        window.at_celsius,
        span(window.on_can.0, window.on_can.1)
    );
    match (window.here.0, window.celsius_here, window.lowest_celsius) {
        (Some(from), Some(celsius), _) => format!("{can}; here at {celsius:.0} °C: {}.", span(from, window.here.1)),
        (Some(_), None, _) => format!("{can}."),
        (None, _, Some(lowest)) => format!("{can}; here it stands still, below {lowest:.0} °C nothing cures."),
        (None, _, None) => format!("{can}; here no end is in sight."),
    }
}

/// The state in one sentence.
pub(crate) fn sentence(next: &Next, zone: &Zone) -> String {
    let moment = |at_ms| zone.spoken(at_ms);
    let name = next.step.map(|step| step.name.as_str()).unwrap_or_default();
    let (from_ms, until_ms) = next.step.map(|step| (step.from_ms, step.until_ms)).unwrap_or_default();
    let below = next.below.unwrap_or_default();
    match next.state {
        ProcessState::Ready if !next.in_this_air => format!("“{name}” comes first, but not in this air."),
        ProcessState::Ready => format!("Begin with “{name}”."),
        ProcessState::TooSoon => match from_ms {
            Some(from_ms) => format!("“{name}” from {}; “{below}” is not ready for it.", moment(from_ms)),
            None => {
                format!("“{name}” has to wait, and no end is in sight: “{below}” stands still at this temperature.")
            }
        },
        ProcessState::Open if !next.in_this_air => match until_ms {
            Some(until_ms) => {
                format!("“{name}” is due until {}, after that sand first; but not in this air.", moment(until_ms))
            }
            None => format!("“{name}” is due, but not in this air."),
        },
        ProcessState::Open => match until_ms {
            Some(until_ms) => format!("“{name}” now, until {}; after that sand first.", moment(until_ms)),
            None => format!("“{name}” now."),
        },
        ProcessState::SandFirst => {
            let since = until_ms.map(|until_ms| format!(" on {}", moment(until_ms))).unwrap_or_default();
            format!("The window of “{below}” closed{since} unused: sand it, wipe it, then “{name}”.")
        }
        ProcessState::Sanded if !next.in_this_air => format!("Sanded; “{name}” is due, but not in this air."),
        ProcessState::Sanded => format!("Sanded: wipe it, then “{name}” now."),
        ProcessState::AllOn => match next.cured_ms {
            Some(cured_ms) => format!("All coats are on; fully cured {}.", moment(cured_ms)),
            None => "All coats are on; when they are fully cured cannot be said.".to_owned(),
        },
        ProcessState::Cured => "All coats are fully cured.".to_owned(),
    }
}

/// What is worth saying beside the sentence.
pub(crate) fn findings(next: &Next, process: &Process, zone: &Zone) -> Vec<Finding> {
    let mut findings = Vec::new();
    if next.state == ProcessState::SandFirst {
        let until_ms = next.step.and_then(|step| step.until_ms);
        let since = until_ms.map(|until_ms| format!(" since {}", zone.spoken(until_ms))).unwrap_or_default();
        let spare = if next.over_decal { " Sand beside the decal, never over it." } else { "" };
        let text = format!(
            "Too late for wet on dry{since}: the next coat would not hold. Sand to an even matt, wet and with a mask, wipe \
             it off, then recoat.{spare}"
        );
        findings.push(Finding::new(FindingCode::ProcessSandFirst, Weight::Care, text));
    }
    let bare = process
        .steps
        .iter()
        .zip(process.steps.iter().skip(1))
        .find(|(below, decal)| decal.layer == Layer::Decal && !matches!(below.layer, Layer::Clear | Layer::Decal));
    if let Some((_, decal)) = bare {
        let text = format!(
            "“{}” lies on bare colour. Between two clear coats its edge shows less, and it can be taken off again.",
            decal.name
        );
        findings.push(Finding::new(FindingCode::ProcessDecalOnColour, Weight::Note, text));
    }
    let open_ended = process.steps.iter().zip(process.steps.iter().skip(1)).find_map(|(below, _)| {
        let product = below.product.as_ref()?;
        product.recoat_to_hours.is_none().then_some(&product.name)
    });
    if let Some(product) = open_ended {
        let text = format!(
            "The sheet of {product} does not say until when it may be recoated. Read the can; if in doubt, sand."
        );
        findings.push(Finding::new(FindingCode::ProcessWindowUnknown, Weight::Note, text));
    }
    findings
}
