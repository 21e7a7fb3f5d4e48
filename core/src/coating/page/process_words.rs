//! How a process is said: the next coat with its window, and what happens when the window closes unused.

use super::process_ask::{ProcessState, StepAnswer};
use super::words;
use crate::coating::message::ProcessMessage;
use crate::message::{ListStyle, Message};
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{Layer, Process};
use crate::time::Zone;
use crate::units::Unit;

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
pub(crate) fn window(window: &Window) -> Message {
    let (below, at) = (window.below.to_owned(), Unit::Celsius.of(window.at_celsius));
    let from = words::on_can(window.on_can.0);
    let can = match window.on_can.1 {
        Some(until) => ProcessMessage::Can { from, until: words::on_can(until) },
        None => ProcessMessage::CanFrom { from },
    }
    .into();
    match (window.here.0, window.celsius_here, window.lowest_celsius) {
        (Some(from), Some(celsius), _) => {
            let (celsius, here) = (Unit::Celsius.of(celsius), here(from, window.here.1));
            ProcessMessage::Window { below, at, can, celsius, here }
        }
        (Some(_), None, _) => ProcessMessage::WindowOnCan { below, at, can },
        (None, _, Some(lowest)) => ProcessMessage::WindowTooCold { below, at, can, lowest: Unit::Celsius.of(lowest) },
        (None, _, None) => ProcessMessage::WindowWithoutEnd { below, at, can },
    }
    .into()
}

/// The window here, from hours to hours.
fn here(from: f64, until: Option<f64>) -> Message {
    // In the hours of the can, so that the two can be compared.
    let from = words::on_can(from);
    match until {
        Some(until) => ProcessMessage::Can { from, until: words::on_can(until) },
        None => ProcessMessage::CanFrom { from },
    }
    .into()
}

/// The state in one sentence.
pub(crate) fn sentence(next: &Next, zone: &Zone) -> Message {
    let moment = |at_ms| zone.local_time(at_ms);
    let coat = next.step.map(|step| step.name.clone()).unwrap_or_default();
    let (from_ms, until_ms) = next.step.map(|step| (step.from_ms, step.until_ms)).unwrap_or_default();
    let below = next.below.unwrap_or_default().to_owned();
    match (next.state, next.in_this_air) {
        (ProcessState::Ready, true) => ProcessMessage::Ready { coat },
        (ProcessState::Ready, false) => ProcessMessage::ReadyBadAir { coat },
        (ProcessState::TooSoon, _) => match from_ms.map(moment) {
            Some(from) => ProcessMessage::TooSoon { coat, from, below },
            None => ProcessMessage::NeverSoon { coat, below },
        },
        (ProcessState::Open, true) => match until_ms.map(moment) {
            Some(until) => ProcessMessage::OpenUntil { coat, until },
            None => ProcessMessage::Open { coat },
        },
        (ProcessState::Open, false) => match until_ms.map(moment) {
            Some(until) => ProcessMessage::OpenUntilBadAir { coat, until },
            None => ProcessMessage::OpenBadAir { coat },
        },
        (ProcessState::SandFirst, _) => match until_ms.map(moment) {
            Some(since) => ProcessMessage::SandFirstSince { below, coat, since },
            None => ProcessMessage::SandFirst { below, coat },
        },
        (ProcessState::Sanded, true) => ProcessMessage::Sanded { coat },
        (ProcessState::Sanded, false) => ProcessMessage::SandedBadAir { coat },
        (ProcessState::AllOn, _) => match next.cured_ms.map(moment) {
            Some(cured) => ProcessMessage::AllOn { cured },
            None => ProcessMessage::AllOnWithoutEnd,
        },
        (ProcessState::Cured, _) => ProcessMessage::Cured,
    }
    .into()
}

/// What is worth saying beside the sentence.
pub(crate) fn findings(next: &Next, process: &Process, zone: &Zone) -> Vec<Finding> {
    let mut findings = Vec::new();
    if next.state == ProcessState::SandFirst {
        let until_ms = next.step.and_then(|step| step.until_ms);
        let too_late = match until_ms.map(|until_ms| zone.local_time(until_ms)) {
            Some(since) => ProcessMessage::TooLateSince { since },
            None => ProcessMessage::TooLate,
        };
        let spare = next.over_decal.then_some(ProcessMessage::SpareDecal);
        let sentences = [Some(too_late), spare].into_iter().flatten().map(Message::from);
        let text = Message::joined(ListStyle::Sentences, sentences.collect());
        findings.push(Finding::new(FindingCode::ProcessSandFirst, Weight::Care, text));
    }
    let bare = process
        .steps
        .iter()
        .zip(process.steps.iter().skip(1))
        .find(|(below, decal)| decal.layer == Layer::Decal && !matches!(below.layer, Layer::Clear | Layer::Decal));
    if let Some((_, decal)) = bare {
        let text = ProcessMessage::DecalOnColour { decal: decal.name.clone() };
        findings.push(Finding::new(FindingCode::ProcessDecalOnColour, Weight::Note, text));
    }
    let open_ended = process.steps.iter().zip(process.steps.iter().skip(1)).find_map(|(below, _)| {
        let product = below.product.as_ref()?;
        product.recoat_to_hours.is_none().then_some(&product.name)
    });
    if let Some(product) = open_ended {
        let text = ProcessMessage::WindowUnknown { product: product.clone() };
        findings.push(Finding::new(FindingCode::ProcessWindowUnknown, Weight::Note, text));
    }
    findings
}
