//! The answer of the mixing page for an area: paint needed, cans, the wet film to aim at.

use super::ask::MixAnswer;
use super::working::{by_volume, working};
use crate::bounds;
use crate::error::Refused;
use crate::fluids::formulas::{
    PaintForArea, PaintNeeded, cans, paint_needed, spreading_rate, thinned_solids, wet_film,
};
use crate::fluids::message::{FluidsWorking, MixMessage};
use crate::fluids::{CoverAsk, CoverNeed};
use crate::quantity::{Finding, FindingCode, Line, Source, Standing, Weight};
use crate::record::area_of;
use crate::units::Unit;

/// Works the paint for an area out. Refused: a number outside its range, no spreading rate and no film.
pub(crate) fn cover_sheet(ask: &CoverAsk) -> Result<MixAnswer, Refused> {
    let square_metres = match ask.surfaces.as_slice() {
        [] => bounds::PAINTED_AREA.check(ask.square_metres)?,
        measured => area_of(measured)?,
    };
    let (coats, can_ml) = (ask.coats, ask.can_ml);
    let thinner = bounds::THINNER.check_known(ask.thinner_percent)?.unwrap_or_default();
    bounds::COATS.check(f64::from(coats))?;
    bounds::CAN.check(can_ml)?;
    let printed = bounds::SPREADING.check_known(ask.spreading_rate)?;
    let film = bounds::SOLIDS.check_known(ask.solids_percent)?.zip(bounds::FILM.check_known(ask.dry_micrometres)?);
    let rate = match (printed, film) {
        (Some(printed), _) => printed,
        (None, Some((solids, film))) => bounds::SPREADING.check(spreading_rate(solids, film))?,
        (None, None) => bounds::SPREADING.need(None)?,
    };
    let (low, high) = match (bounds::SPRAY_LOSS.check_known(ask.loss_percent)?, ask.put_on) {
        (Some(loss), _) => (loss, loss),
        (None, Some(put_on)) => put_on.loss_percent(),
        (None, None) => (0.0, 0.0),
    };
    let (least_ml, most_ml) =
        (paint_needed(square_metres, coats, rate, low), paint_needed(square_metres, coats, rate, high));
    let need = CoverNeed {
        square_metres,
        spreading_rate: rate,
        wet_micrometres: film.map(|(solids, film)| wet_film(thinned_solids(solids, thinner), film)),
        least_ml,
        most_ml,
        cans_least: cans(least_ml, can_ml),
        cans_most: cans(most_ml, can_ml),
    };
    let mut findings = Vec::new();
    if ask.loss_percent.is_none() && ask.put_on.is_none() {
        findings.push(Finding::new(FindingCode::MixLossUnknown, Weight::Care, MixMessage::LossUnknown));
    }
    let (least, most) = (need.cans_least, need.cans_most);
    let can = Unit::Millilitre.of(can_ml);
    let area = Unit::SquareMetre.of(in_thousandths(square_metres));
    let sentence = if least == most {
        MixMessage::Cans { cans: most, can, area, coats }.into()
    } else {
        MixMessage::CansRange { least, most, can, area, coats }.into()
    };
    let amount = |loss_percent| PaintForArea { square_metres, coats, spreading_rate: rate, loss_percent };
    let mut lines = Vec::new();
    if let (None, Some((solids_percent, dry_micrometres))) = (printed, film) {
        let needed = PaintNeeded { square_metres, coats, solids_percent, dry_micrometres, loss_percent: low, can_ml };
        lines.extend(needed.line_of("spreading_rate", FluidsWorking::SpreadingRate));
    }
    lines.extend(amount(low).line(FluidsWorking::PaintLeast));
    lines.extend(amount(high).line(FluidsWorking::PaintMost));
    Ok(MixAnswer {
        sentence,
        parts: vec![by_volume(MixMessage::Paint, most_ml)],
        other: None,
        cover: Some(need),
        cautions: vec![MixMessage::CautionSpray.into()],
        findings,
        working: working(lines, Source::new(MixMessage::SourceCover, Standing::CommonPractice), MixMessage::RangeCover),
    })
}

/// An area as it is said: to a thousandth of a square metre, without needless zeros.
fn in_thousandths(square_metres: f64) -> f64 {
    (1000.0 * square_metres).round() / 1000.0
}
