//! Paint that a process takes: per product, from area, solids, film, loss and coats.

use layshaft_wire::wire;

use crate::fluids::{cans, paint_needed, spreading_rate};
use crate::record::{Process, Product, area_of};

/// Paint of one product that a process takes. Unthinned: thinner comes on top.
#[wire]
pub struct PaintNeed {
    /// The product.
    pub product: String,
    /// Coats of it.
    pub coats: u32,
    /// Spreading rate of one coat, m²/L.
    pub spreading_rate: f64,
    /// At the least loss, mL.
    pub least_ml: f64,
    /// At the greatest loss, mL.
    pub most_ml: f64,
    /// Cans for the greatest loss, where the can is known.
    pub cans: Option<u32>,
}

/// The paint for every product whose spreading rate is known, in the order in which they go on. Empty where nothing was
/// measured. Without a way to put it on no loss is counted.
///
/// `R = 10 · VS / DFT` and `V = 1000 · A · n / (R · (1 − L))`, as in the mixing page.
pub fn paint_needs(process: &Process) -> Vec<PaintNeed> {
    let Ok(square_metres) = area_of(&process.surfaces) else { return Vec::new() };
    let (low, high) = process.put_on.map_or((0.0, 0.0), |put_on| put_on.loss_percent());
    let mut needs: Vec<PaintNeed> = Vec::new();
    for product in process.steps.iter().filter_map(|step| step.product.as_ref()) {
        if needs.iter().any(|need| need.product == product.name) {
            continue;
        }
        let Some(rate) = rate_of(product) else { continue };
        let same =
            process.steps.iter().filter_map(|step| step.product.as_ref()).filter(|other| other.name == product.name);
        let coats = u32::try_from(same.count()).unwrap_or(u32::MAX);
        let most_ml = paint_needed(square_metres, coats, rate, high);
        needs.push(PaintNeed {
            product: product.name.clone(),
            coats,
            spreading_rate: rate,
            least_ml: paint_needed(square_metres, coats, rate, low),
            most_ml,
            cans: product.can_ml.map(|can_ml| cans(most_ml, can_ml)),
        });
    }
    needs
}

/// What a litre covers: as printed, else from solids and film.
fn rate_of(product: &Product) -> Option<f64> {
    product.spreading_rate.or_else(|| Some(spreading_rate(product.solids_percent?, product.dry_micrometres?)))
}
