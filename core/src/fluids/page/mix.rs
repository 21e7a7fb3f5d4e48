//! The answer of the mixing page: premix, two-part product, thinning, paint for an area.

use super::cover::cover_sheet;
use super::working::{by_volume, working};
use crate::bounds;
use crate::error::Refused;
use crate::fluids::formulas::{
    Premix, ThinnerOf, Thinning, TwoPart, TwoPartMix, premix_oil, thinner_to_add, two_part, volume_of_weight,
};
use crate::fluids::message::{FluidsWorking, MixMessage};
use crate::fluids::{Mix, MixAnswer, MixAsk, MixPart, OtherReading, TwoPartAsk};
use crate::message::FieldMessage;
use crate::quantity::{Finding, FindingCode, Line, Source, Standing, Weight, WorkLine};
use crate::units::Unit;

/// Works the mixing page out. Refused: a number outside its range, a cover without any spreading rate.
pub fn mix_answer(ask: &MixAsk) -> Result<MixAnswer, Refused> {
    match &ask.mix {
        Mix::Premix { fuel_litres, parts_fuel } => premix(*fuel_litres, *parts_fuel),
        Mix::TwoPart { product } => two_parts(product),
        Mix::Thinning { paint_ml, thinner_percent } => thinning(*paint_ml, *thinner_percent),
        Mix::Cover { area } => cover_sheet(area),
    }
}

fn premix(fuel_litres: f64, parts_fuel: f64) -> Result<MixAnswer, Refused> {
    bounds::FUEL.check(fuel_litres)?;
    bounds::PREMIX_PARTS.check(parts_fuel)?;
    let oil = premix_oil(fuel_litres, parts_fuel);
    Ok(MixAnswer {
        sentence: MixMessage::Premix { oil: Unit::Millilitre.of(oil), fuel: Unit::Litre.of(fuel_litres) }.into(),
        parts: vec![by_volume(MixMessage::Oil, oil), by_volume(MixMessage::Fuel, 1000.0 * fuel_litres)],
        other: None,
        cover: None,
        cautions: vec![MixMessage::CautionFuel.into()],
        findings: vec![Finding::new(
            FindingCode::MixPremixParts,
            Weight::Note,
            MixMessage::PremixParts {
                parts: Unit::None.of(parts_fuel),
                of_fuel: Unit::Percent.of(100.0 / parts_fuel),
                of_mixture: Unit::Percent.of(100.0 / (parts_fuel + 1.0)),
            },
        )],
        working: working(
            Vec::from_iter(Premix { fuel_litres, parts_fuel }.line(FluidsWorking::Oil)),
            Source::new(MixMessage::SourcePremix, Standing::SecondHand),
            MixMessage::RangePremix,
        ),
    })
}

fn two_parts(ask: &TwoPartAsk) -> Result<MixAnswer, Refused> {
    let (by_weight, thinner_percent) = (ask.by_weight, ask.thinner_percent);
    let amount = if by_weight { bounds::READY_GRAM } else { bounds::READY_ML };
    amount.of("ready").check(ask.ready)?;
    bounds::MIX_PARTS.check(ask.parts_base)?;
    bounds::MIX_PARTS.named("partsHardener", FieldMessage::PartsOfHardener).check(ask.parts_hardener)?;
    bounds::THINNER.check(thinner_percent)?;
    let densities = [
        ("baseDensity", ask.base_density),
        ("hardenerDensity", ask.hardener_density),
        ("thinnerDensity", ask.thinner_density),
    ];
    for (field, density) in densities {
        bounds::DENSITY.of(field).check_known(density)?;
    }

    let reading = |of| two_part(ask.ready, (ask.parts_base, ask.parts_hardener), thinner_percent, of);
    let (this, that) = if ask.thinner_of_base {
        (ThinnerOf::Base, ThinnerOf::BaseAndHardener)
    } else {
        (ThinnerOf::BaseAndHardener, ThinnerOf::Base)
    };
    let mixed = reading(this);
    let parts = |mixed: &TwoPart| shares(mixed, by_weight, densities.map(|(_, density)| density));
    let unit = if by_weight { Unit::Gram } else { Unit::Millilitre };
    let thinned = thinner_percent > 0.0;
    let (base, hardener, thinner) = (unit.of(mixed.base), unit.of(mixed.hardener), unit.of(mixed.thinner));
    let sentence = if thinned {
        MixMessage::TwoPartThinned { base, hardener, thinner }.into()
    } else {
        MixMessage::TwoPart { base, hardener }.into()
    };
    let words = match that {
        ThinnerOf::BaseAndHardener => MixMessage::OfBaseAndHardener.into(),
        ThinnerOf::Base => MixMessage::OfBase.into(),
    };
    Ok(MixAnswer {
        sentence,
        parts: parts(&mixed)?,
        other: if thinned { Some(OtherReading { words, parts: parts(&reading(that))? }) } else { None },
        cover: None,
        cautions: vec![MixMessage::CautionIsocyanate.into()],
        findings: two_part_findings(thinned, by_weight),
        working: working(
            two_part_lines(ask, this, unit),
            Source::new(MixMessage::SourceTwoPart, Standing::Memory),
            MixMessage::RangeTwoPart,
        ),
    })
}

fn two_part_lines(ask: &TwoPartAsk, this: ThinnerOf, unit: Unit) -> Vec<WorkLine> {
    let mixed = TwoPartMix {
        ready_ml: ask.ready,
        parts_base: ask.parts_base,
        parts_hardener: ask.parts_hardener,
        thinner_percent: ask.thinner_percent,
        thinner_of_base: ask.thinner_of_base,
    };
    let thinner = match this {
        ThinnerOf::BaseAndHardener => FluidsWorking::ThinnerOfBoth,
        ThinnerOf::Base => FluidsWorking::ThinnerOfBase,
    };
    let lines = [
        mixed.line(FluidsWorking::Base),
        mixed.line_of("hardener", FluidsWorking::Hardener),
        mixed.line_of("thinner", thinner),
    ];
    lines.into_iter().flatten().map(|line| line.measured_in(unit)).collect()
}

fn two_part_findings(thinned: bool, by_weight: bool) -> Vec<Finding> {
    let mut found = Vec::new();
    if thinned {
        found.push(Finding::new(FindingCode::MixThinnerMeaning, Weight::Care, MixMessage::ThinnerMeaning));
    }
    if !by_weight {
        found.push(Finding::new(FindingCode::MixByVolume, Weight::Note, MixMessage::ByVolume));
    }
    found
}

/// The parts with volume and weight, as far as densities allow.
fn shares(mixed: &TwoPart, by_weight: bool, densities: [Option<f64>; 3]) -> Result<Vec<MixPart>, Refused> {
    // Where there is no thinner, there is no line for it.
    let thinner = (mixed.thinner > 0.0).then_some((MixMessage::Thinner, mixed.thinner));
    let amounts = [(MixMessage::Base, mixed.base), (MixMessage::Hardener, mixed.hardener)].into_iter().chain(thinner);
    let shares = amounts.zip(densities).map(|((name, amount), density)| {
        Ok(if by_weight {
            let millilitres = density.map(|density| volume_of_weight(amount, density)).transpose()?;
            MixPart { name: name.into(), millilitres, grams: Some(amount) }
        } else {
            let grams = density.map(|density| amount * density);
            MixPart { name: name.into(), millilitres: Some(amount), grams }
        })
    });
    shares.collect()
}

fn thinning(paint_ml: f64, thinner_percent: f64) -> Result<MixAnswer, Refused> {
    bounds::READY_ML.named("paintMl", FieldMessage::Paint).check(paint_ml)?;
    bounds::THINNER.check(thinner_percent)?;
    let thinner = thinner_to_add(paint_ml, thinner_percent);
    Ok(MixAnswer {
        sentence: MixMessage::Thinning {
            thinner: Unit::Millilitre.of(thinner),
            paint: Unit::Millilitre.of(paint_ml),
            together: Unit::Millilitre.of(paint_ml + thinner),
        }
        .into(),
        parts: vec![by_volume(MixMessage::Paint, paint_ml), by_volume(MixMessage::Thinner, thinner)],
        other: None,
        cover: None,
        cautions: vec![MixMessage::CautionThinner.into()],
        findings: Vec::new(),
        working: working(
            Vec::from_iter(Thinning { paint_ml, thinner_percent }.line(FluidsWorking::Thinner)),
            Source::new(MixMessage::SourceThinning, Standing::Memory),
            MixMessage::RangeThinning,
        ),
    })
}

#[cfg(test)]
#[path = "mix_tests.rs"]
mod tests;
