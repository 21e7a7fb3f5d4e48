//! The answer of the mixing page: premix, two-part product, thinning, paint for an area.

use super::cover::cover_sheet;
use super::working::{by_volume, working};
use crate::bounds;
use crate::error::Refused;
use crate::fluids::formulas::{
    Premix, ThinnerOf, Thinning, TwoPart, TwoPartMix, premix_oil, thinner_to_add, two_part, volume_of_weight,
};
use crate::fluids::{Mix, MixAnswer, MixAsk, MixPart, OtherReading, TwoPartAsk};
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
        sentence: format!("{oil:.0} mL of oil into {fuel_litres} L of fuel.").into(),
        parts: vec![by_volume("Oil", oil), by_volume("Fuel", 1000.0 * fuel_litres)],
        other: None,
        cover: None,
        cautions: vec!["Fuel vapour burns: in the open, engine cold, no flame, can on the ground.".to_owned().into()],
        findings: vec![Finding::new(
            FindingCode::MixPremixParts,
            Weight::Note,
            format!(
                "{parts_fuel}:1 is {parts_fuel} parts of fuel to one of oil: {:.2} % of the fuel, {:.2} % of the mixture.",
                100.0 / parts_fuel,
                100.0 / (parts_fuel + 1.0)
            ),
        )],
        working: working(
            Vec::from_iter(Premix { fuel_litres, parts_fuel }.line("Oil")),
            Source::new(
                "Premix in parts of fuel to one of oil: reference.com “50:1 oil gas ratio”",
                Standing::SecondHand,
            ),
            "Parts by volume. The ratio is the maker's, for the oil that he names.",
        ),
    })
}

fn two_parts(ask: &TwoPartAsk) -> Result<MixAnswer, Refused> {
    let (by_weight, thinner_percent) = (ask.by_weight, ask.thinner_percent);
    let amount = if by_weight { bounds::READY_GRAM } else { bounds::READY_ML };
    amount.of("ready").check(ask.ready)?;
    bounds::MIX_PARTS.check(ask.parts_base)?;
    bounds::MIX_PARTS.named("partsHardener", "Parts of hardener").check(ask.parts_hardener)?;
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
    let symbol = unit.symbol();
    let thinned = thinner_percent > 0.0;
    let thinner = if thinned { format!(", {:.1} {symbol} of thinner", mixed.thinner) } else { String::new() };
    Ok(MixAnswer {
        sentence: format!("{:.1} {symbol} of base, {:.1} {symbol} of hardener{thinner}.", mixed.base, mixed.hardener).into(),
        parts: parts(&mixed)?,
        other: if thinned { Some(OtherReading { words: meaning(that).into(), parts: parts(&reading(that))? }) } else { None },
        cover: None,
        cautions: vec![
            "Two-part paint may hold isocyanates: filter mask of the right class or fed air, gloves, no skin bare. The sheet of the \
             product says which."
                .to_owned().into(),
        ],
        findings: two_part_findings(thinned, by_weight),
        working: working(
            two_part_lines(ask, this, unit),
            Source::new("Shares of a mix; both conventions of thinner are met on sheets", Standing::Memory),
            "All parts in the same measure. The sheet of the product decides whether parts are by volume or by weight.",
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
    let lines = [
        mixed.line("Base"),
        mixed.line_of("hardener", "Hardener"),
        mixed.line_of("thinner", &format!("Thinner, by a per cent {}", meaning(this))),
    ];
    lines.into_iter().flatten().map(|line| line.measured_in(unit)).collect()
}

fn meaning(of: ThinnerOf) -> String {
    match of {
        ThinnerOf::BaseAndHardener => "of base and hardener together".to_owned(),
        ThinnerOf::Base => "of the base alone".to_owned(),
    }
}

fn two_part_findings(thinned: bool, by_weight: bool) -> Vec<Finding> {
    let mut found = Vec::new();
    if thinned {
        found.push(Finding::new(
            FindingCode::MixThinnerMeaning,
            Weight::Care,
            "Sheets mean the per cent of thinner either of base and hardener together or of the base alone. Read which; both are \
             shown.",
        ));
    }
    if !by_weight {
        found.push(Finding::new(
            FindingCode::MixByVolume,
            Weight::Note,
            "Mixed by volume. A ratio by weight is another one, because hardener is lighter than base; a balance needs the sheet's \
             weights.",
        ));
    }
    found
}

/// The parts with volume and weight, as far as densities allow.
fn shares(mixed: &TwoPart, by_weight: bool, densities: [Option<f64>; 3]) -> Result<Vec<MixPart>, Refused> {
    let amounts = [("Base", mixed.base), ("Hardener", mixed.hardener), ("Thinner", mixed.thinner)];
    amounts
        .into_iter()
        .zip(densities)
        .filter(|((name, amount), _)| *name != "Thinner" || *amount > 0.0)
        .map(|((name, amount), density)| {
            Ok(if by_weight {
                let millilitres = density.map(|density| volume_of_weight(amount, density)).transpose()?;
                MixPart { name: name.to_owned(), millilitres, grams: Some(amount) }
            } else {
                let grams = density.map(|density| amount * density);
                MixPart { name: name.to_owned(), millilitres: Some(amount), grams }
            })
        })
        .collect()
}

fn thinning(paint_ml: f64, thinner_percent: f64) -> Result<MixAnswer, Refused> {
    bounds::READY_ML.named("paintMl", "Paint").check(paint_ml)?;
    bounds::THINNER.check(thinner_percent)?;
    let thinner = thinner_to_add(paint_ml, thinner_percent);
    Ok(MixAnswer {
        sentence: format!("{thinner:.1} mL of thinner into {paint_ml:.0} mL of paint: {:.1} mL.", paint_ml + thinner)
            .into(),
        parts: vec![by_volume("Paint", paint_ml), by_volume("Thinner", thinner)],
        other: None,
        cover: None,
        cautions: vec!["Thinner burns and harms: air through the room, no flame, gloves and mask.".to_owned().into()],
        findings: Vec::new(),
        working: working(
            Vec::from_iter(Thinning { paint_ml, thinner_percent }.line("Thinner")),
            Source::new("Thinning by a per cent of the unthinned paint", Standing::Memory),
            "One-part paint, by volume. More thinner than the sheet allows runs and covers badly.",
        ),
    })
}

#[cfg(test)]
#[path = "mix_tests.rs"]
mod tests;
