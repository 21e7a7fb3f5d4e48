//! Sums of filling and mixing: every input against its range, then the arithmetic.

use super::figure::{Figure, figure};
use crate::bounds::{self, Bound};
use crate::error::Refused;
use crate::fluids::{self, ThinnerOf};
use crate::record::Surface;
use crate::units::Unit;

type Given = Result<Vec<Figure>, Refused>;

pub(super) fn pour(litres: f64, cup_ml: u32) -> Given {
    bounds::LITRES.check(litres)?;
    bounds::CUP.check(f64::from(cup_ml))?;
    let volume_ml = (litres * 1000.0).round() as u32;
    let pours = fluids::split_pours(volume_ml, &[cup_ml])?;
    let full: u32 = pours.iter().filter(|pour| pour.each_ml == cup_ml).map(|pour| pour.times).sum();
    let last = volume_ml - full * cup_ml;
    Ok(vec![
        figure("fullCups", f64::from(full), Unit::None),
        figure("last", f64::from(last), Unit::Millilitre),
        figure("pours", f64::from(pours.iter().map(|pour| pour.times).sum::<u32>()), Unit::None),
    ])
}

pub(super) fn premix(fuel_litres: f64, parts_fuel: f64) -> Given {
    bounds::FUEL.check(fuel_litres)?;
    bounds::PREMIX_PARTS.check(parts_fuel)?;
    Ok(vec![
        figure("oil", fluids::premix_oil(fuel_litres, parts_fuel), Unit::Millilitre),
        figure("ofFuel", 100.0 / parts_fuel, Unit::Percent),
        figure("ofMixture", 100.0 / (parts_fuel + 1.0), Unit::Percent),
    ])
}

pub(super) fn two_part(
    ready_ml: f64,
    (parts_base, parts_hardener): (f64, f64),
    thinner_percent: f64,
    thinner_of_base: bool,
) -> Given {
    bounds::READY_ML.check(ready_ml)?;
    bounds::MIX_PARTS.check(parts_base)?;
    Bound { field: "partsHardener", label: "Parts of hardener", ..bounds::MIX_PARTS }.check(parts_hardener)?;
    bounds::THINNER.check(thinner_percent)?;
    let of = if thinner_of_base { ThinnerOf::Base } else { ThinnerOf::BaseAndHardener };
    let mixed = fluids::two_part(ready_ml, (parts_base, parts_hardener), thinner_percent, of);
    Ok(vec![
        figure("base", mixed.base, Unit::Millilitre),
        figure("hardener", mixed.hardener, Unit::Millilitre),
        figure("thinner", mixed.thinner, Unit::Millilitre),
    ])
}

pub(super) fn thinning(paint_ml: f64, thinner_percent: f64) -> Given {
    Bound { field: "paintMl", label: "Paint", ..bounds::READY_ML }.check(paint_ml)?;
    bounds::THINNER.check(thinner_percent)?;
    let thinner = fluids::thinner_to_add(paint_ml, thinner_percent);
    Ok(vec![figure("thinner", thinner, Unit::Millilitre), figure("together", paint_ml + thinner, Unit::Millilitre)])
}

pub(super) fn paint(
    (square_metres, coats): (f64, u32),
    (solids_percent, dry_micrometres): (f64, f64),
    loss_percent: f64,
    can_ml: f64,
) -> Given {
    bounds::PAINTED_AREA.check(square_metres)?;
    bounds::COATS.check(f64::from(coats))?;
    bounds::SOLIDS.check(solids_percent)?;
    bounds::FILM.check(dry_micrometres)?;
    bounds::SPRAY_LOSS.check(loss_percent)?;
    bounds::CAN.check(can_ml)?;
    let rate = fluids::spreading_rate(solids_percent, dry_micrometres);
    let millilitres = fluids::paint_needed(square_metres, coats, rate, loss_percent);
    Ok(vec![
        figure("cans", f64::from(fluids::cans(millilitres, can_ml)), Unit::None),
        figure("millilitres", millilitres, Unit::Millilitre),
        figure("spreadingRate", rate, Unit::SquareMetreLitre),
        figure("wetFilm", fluids::wet_film(solids_percent, dry_micrometres), Unit::Micrometre),
    ])
}

pub(super) fn area(surface: &Surface) -> Given {
    Ok(vec![figure("area", surface.square_metres()?, Unit::SquareMetre)])
}

pub(super) fn thinned(solids_percent: f64, thinner_percent: f64, dry_micrometres: f64) -> Given {
    bounds::SOLIDS.check(solids_percent)?;
    bounds::THINNER.check(thinner_percent)?;
    bounds::FILM.check(dry_micrometres)?;
    let solids = fluids::thinned_solids(solids_percent, thinner_percent);
    Ok(vec![
        figure("wetFilm", fluids::wet_film(solids, dry_micrometres), Unit::Micrometre),
        figure("solids", solids, Unit::Percent),
    ])
}
