//! A paint job in several coats: what goes on, in which order, and what is on already.

use layshaft_wire::wire;

use super::coat::Coat;
use super::message::PaintMessage;
use super::product::Product;
use super::put_on::PutOn;
use super::surface::{PaintedPart, Surface, area_of};
use crate::bounds;
use crate::check;
use crate::error::Refused;
use crate::message::FieldMessage;

/// What a step of a process lays.
#[wire(stored)]
#[derive(Default)]
pub enum Layer {
    /// Primer, rust paint, filler: what the colour stands on.
    Base,
    /// Colour.
    #[default]
    Colour,
    /// Decal: no paint, but the window of the coat below goes on running.
    Decal,
    /// Clear coat.
    Clear,
}

/// One step of a process.
#[wire(lenient, stored)]
pub struct ProcessStep {
    /// What it is called: “Second colour”.
    pub name: String,
    /// What it lays.
    pub layer: Layer,
    /// With what; none for a decal.
    pub product: Option<Product>,
    /// When a decal was laid, milliseconds since 1970 (UTC). A coat keeps its own moment.
    pub done_ms: Option<i64>,
}

/// A paint job in several coats.
#[wire(lenient, stored)]
pub struct Process {
    /// On what: “Fuel tank, outside”.
    pub title: String,
    /// What kind of part that is: it decides what has to wait.
    pub part: PaintedPart,
    /// The job that it belongs to, by its id.
    pub job: Option<String>,
    /// Steps, in order.
    pub steps: Vec<ProcessStep>,
    /// When the topmost coat was last sanded because its window had closed, milliseconds since 1970 (UTC).
    pub sanded_ms: Option<i64>,
    /// When it was ended before its time, milliseconds since 1970 (UTC).
    pub ended_ms: Option<i64>,
    /// What is painted, as measured.
    pub surfaces: Vec<Surface>,
    /// How it is put on; it tells the usual loss.
    pub put_on: Option<PutOn>,
}

impl Process {
    /// The process with its texts trimmed, or the first field that cannot be accepted.
    ///
    /// Refused: no step or too many, a coat without a product, a product that [`Product::checked`] refuses, a decal as
    /// the first step or with no clear coat over it.
    pub fn checked(mut self) -> Result<Self, Refused> {
        self.title = check::check_title("title", FieldMessage::OnWhat, &self.title)?;
        bounds::PROCESS_STEPS.check(self.steps.len() as f64)?;
        if !self.surfaces.is_empty() {
            area_of(&self.surfaces)?;
        }
        self.steps = self.steps.into_iter().map(ProcessStep::checked).collect::<Result<_, _>>()?;
        let conflict =
            |reason: PaintMessage| Err(Refused::Conflict { field: "steps".to_owned(), reason: reason.into() });
        if self.steps.first().is_some_and(|first| first.layer == Layer::Decal) {
            return conflict(PaintMessage::DecalFirst);
        }
        let last_decal = self.steps.iter().rposition(|step| step.layer == Layer::Decal);
        let covered = |decal: usize| self.steps.iter().skip(decal).any(|step| step.layer == Layer::Clear);
        if last_decal.is_some_and(|decal| !covered(decal)) {
            return conflict(PaintMessage::DecalBare);
        }
        Ok(self)
    }

    /// Whether paint is still to come over a step.
    pub(crate) fn paint_follows(&self, step: u32) -> bool {
        let over = usize::try_from(step).unwrap_or(usize::MAX).saturating_add(1);
        self.steps.iter().skip(over).any(|step| step.product.is_some())
    }
}

impl ProcessStep {
    fn checked(self) -> Result<Self, Refused> {
        let product = self.product.map(Product::checked).transpose()?;
        let name = match (self.name.trim(), &product) {
            ("", Some(product)) => product.name.clone(),
            ("", None) => "Decal".to_owned(),
            (name, _) => check::check_title("steps", FieldMessage::Step, name)?,
        };
        match (&product, self.layer) {
            (None, Layer::Base | Layer::Colour | Layer::Clear) => Err(Refused::Missing {
                field: "product".to_owned(),
                label: PaintMessage::ProductOf { step: name }.into(),
                help: PaintMessage::ChooseProduct.into(),
            }),
            (Some(_), Layer::Decal) => Err(Refused::Conflict {
                field: "product".to_owned(),
                reason: PaintMessage::DecalTakesNone { step: name }.into(),
            }),
            _ => Ok(Self { name, product, ..self }),
        }
    }
}

/// The coats of a process that are on, each with its step and id, lowest first.
pub(crate) fn laid<'a>(
    mark: &str,
    coats: impl Iterator<Item = (&'a String, &'a Coat)>,
) -> Vec<(usize, &'a String, &'a Coat)> {
    let of_it = coats.filter(|(_, coat)| coat.process.as_deref() == Some(mark));
    let mut laid: Vec<_> = of_it.filter_map(|(id, coat)| Some((usize::try_from(coat.step?).ok()?, id, coat))).collect();
    laid.sort_by_key(|(step, _, coat)| (*step, coat.applied_ms));
    laid
}
