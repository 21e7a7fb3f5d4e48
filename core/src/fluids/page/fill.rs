//! The answer of the filling page: which volume for what was done, how to pour it, and how to check the level.

use layshaft_wire::wire;

use crate::bounds;
use crate::error::Refused;
use crate::fluids::formulas::{Pour, Poured, in_words, split_pours, volume};
use crate::fluids::message::{FillMessage, FluidsWorking};
use crate::message::{List, ListStyle, Message};
use crate::quantity::{Finding, FindingCode, Line, Source, Standing, Weight, WorkLine, Working};
use crate::record::{Bike, FillKind};
use crate::units::Unit;

/// What to fill. What is left out is taken from the bike.
#[wire(lenient)]
pub struct FillAsk {
    /// Mark of a filling of the bike.
    pub filling: Option<String>,
    /// A volume to pour instead, L.
    pub litres: Option<f64>,
    /// Cups that one owns, mL; left out: one of 1,000 mL.
    pub cups_ml: Vec<u32>,
}

/// A filling of the bike.
#[wire]
pub struct FillChoice {
    /// Mark.
    pub id: String,
    /// What is filled.
    pub name: String,
    /// Volume, L.
    pub litres: Option<f64>,
    /// On what occasion.
    pub fill: Option<FillKind>,
    /// Grade.
    pub grade: Option<String>,
}

/// The filling page.
#[wire]
pub struct FillAnswer {
    /// Every filling of the bike.
    pub choices: Vec<FillChoice>,
    /// The one that is poured, when it is one of the bike.
    pub filling: Option<FillChoice>,
    /// Volume, mL, to the millilitre.
    pub volume_ml: u32,
    /// The pours, in order.
    pub pours: Vec<Pour>,
    /// In one line: “1 L + 100 mL”.
    pub sentence: Message,
    /// Pouring and level check, step by step.
    pub steps: Vec<Message>,
    /// What can hurt.
    pub cautions: Vec<Message>,
    /// What is worth saying.
    pub findings: Vec<Finding>,
    /// How it was worked out.
    pub working: Working,
}

/// Cup where none is said, mL.
const USUAL_CUP_ML: u32 = 1000;
/// Held back until the level has been looked at, share of the volume. Common practice, no source.
const HELD_BACK: f64 = 0.1;

/// Works the filling page out.
///
/// Refused: a mark that the bike does not have, a filling whose volume is not known, a number outside its range, more than
/// twelve cups.
pub fn fill_answer(bike: &Bike, ask: &FillAsk) -> Result<FillAnswer, Refused> {
    let choices: Vec<FillChoice> = bike
        .fitted
        .fluids
        .iter()
        .map(|filling| FillChoice {
            id: filling.id.clone(),
            name: filling.fluid.name.clone(),
            litres: filling.fluid.litres,
            fill: filling.fluid.fill,
            grade: filling.fluid.grade.clone(),
        })
        .collect();
    let filling = chosen(&choices, ask)?;
    let litres = bounds::LITRES.need(ask.litres.or(filling.as_ref().and_then(|filling| filling.litres)))?;
    // Inside the range of litres it fits with room to spare.
    let volume_ml = (litres * 1000.0).round() as u32;
    let cups: &[u32] = if ask.cups_ml.is_empty() { &[USUAL_CUP_ML] } else { &ask.cups_ml };
    let pours = split_pours(volume_ml, cups)?;
    let sentence = in_words(&pours, cups.len());
    Ok(FillAnswer {
        steps: steps(&sentence, volume_ml),
        cautions: cautions(),
        findings: findings(&choices, filling.as_ref(), litres, volume_ml),
        working: working(&pours, filling.is_some()),
        choices,
        filling,
        volume_ml,
        pours,
        sentence,
    })
}

fn chosen(choices: &[FillChoice], ask: &FillAsk) -> Result<Option<FillChoice>, Refused> {
    match (&ask.filling, ask.litres) {
        (Some(mark), _) => match choices.iter().find(|choice| choice.id == *mark) {
            Some(choice) => Ok(Some(choice.clone())),
            None => Err(Refused::Unknown { what: FillMessage::Filling.into(), id: mark.clone() }),
        },
        (None, Some(_)) => Ok(None),
        (None, None) => Ok(choices.iter().find(|choice| choice.litres.is_some()).cloned()),
    }
}

fn steps(pours: &Message, volume_ml: u32) -> Vec<Message> {
    let back = (f64::from(volume_ml) * HELD_BACK).round() as u32;
    [
        FillMessage::StepPlug,
        FillMessage::StepMeasure { pours: pours.clone(), back: volume(back.max(1)) },
        FillMessage::StepPour,
        FillMessage::StepIdle,
        FillMessage::StepRead,
        FillMessage::StepAdd,
    ]
    .map(Message::from)
    .to_vec()
}

fn cautions() -> Vec<Message> {
    [FillMessage::CautionHot, FillMessage::CautionOutdoors, FillMessage::CautionOldOil].map(Message::from).to_vec()
}

fn findings(choices: &[FillChoice], filling: Option<&FillChoice>, litres: f64, volume_ml: u32) -> Vec<Finding> {
    let mut found = Vec::new();
    let other = |choice: &FillChoice| {
        let litres = Unit::Litre.of(choice.litres?);
        Some(FillMessage::Other { name: choice.name.clone(), litres }.into())
    };
    let others: Vec<Message> = choices
        .iter()
        .filter(|choice| filling.is_some_and(|filling| filling.id != choice.id))
        .filter(|choice| choice.fill.is_some() && filling.is_some_and(|filling| filling.fill.is_some()))
        .filter_map(other)
        .collect();
    if !others.is_empty() {
        found.push(Finding::new(
            FindingCode::FillByOccasion,
            Weight::Note,
            FillMessage::ByOccasion { others: List(ListStyle::Sentences, others) },
        ));
    }
    if (litres * 1000.0 - f64::from(volume_ml)).abs() > 1e-6 {
        found.push(Finding::new(
            FindingCode::FillRounded,
            Weight::Note,
            FillMessage::Rounded { litres: Unit::Litre.of(litres), volume: Unit::Millilitre.of(volume_ml) },
        ));
    }
    if filling.is_some_and(|filling| filling.grade.is_none()) {
        found.push(Finding::new(FindingCode::FillMissingGrade, Weight::Note, FillMessage::MissingGrade));
    }
    found
}

fn working(pours: &[Pour], of_bike: bool) -> Working {
    let poured = |pour: &Pour, last_ml: f64| Poured { times: pour.times, cup_ml: f64::from(pour.each_ml), last_ml };
    let mut lines: Vec<WorkLine> = pours
        .iter()
        .filter_map(|pour| {
            let label = FluidsWorking::Pour { cup: Unit::Millilitre.of(pour.cup_ml) };
            poured(pour, 0.0).line_of("full", label)
        })
        .collect();
    lines.extend(pours.first().and_then(|full| {
        let last_ml: u64 = pours.iter().skip(1).map(Pour::ml).sum();
        poured(full, last_ml as f64).line(FluidsWorking::Together)
    }));
    let of = if of_bike { FillMessage::SourceBike } else { FillMessage::SourceEntered };
    Working {
        lines,
        sources: vec![
            Source::new(of, Standing::Entered),
            Source::new(FillMessage::SourceCups, Standing::CommonPractice),
        ],
        range: FillMessage::Range.into(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{Filling, Fluid};

    fn demo_bike() -> Bike {
        let oil = |id: &str, name: &str, litres, fill| Filling {
            id: id.to_owned(),
            fluid: Fluid { name: name.to_owned(), litres, grade: Some("10W-40".to_owned()), fill },
        };
        let mut bike = Bike::default();
        bike.fitted.fluids = vec![
            oil("engine-oil", "Engine oil, drain only", Some(1.0), Some(FillKind::Drain)),
            oil("engine-oil-filter", "Engine oil, with filter", Some(1.2), Some(FillKind::WithFilter)),
            oil("fork", "Fork oil", None, None),
        ];
        bike
    }

    #[test]
    fn one_litre_one_with_a_litre_cup_is_a_litre_and_a_hundred() {
        let sheet = fill_answer(&demo_bike(), &FillAsk { litres: Some(1.1), ..FillAsk::default() }).unwrap();
        assert_eq!((sheet.sentence.english().as_str(), sheet.volume_ml), ("1 L + 100 mL", 1100));
        assert!(sheet.filling.is_none() && sheet.findings.is_empty());
    }

    #[test]
    fn the_volume_goes_by_what_was_opened_and_the_others_are_named() {
        let ask =
            FillAsk { filling: Some("engine-oil-filter".to_owned()), cups_ml: vec![500, 250], ..FillAsk::default() };
        let sheet = fill_answer(&demo_bike(), &ask).unwrap();
        assert_eq!(sheet.sentence, ("2 × 500 mL + 200 mL in the 250 mL cup"));
        assert_eq!(sheet.findings.len(), 1);
        assert!(sheet.findings[0].text.english().contains("Engine oil, drain only: 1 L"));
        assert!(sheet.steps[1].english().contains("Hold the last 120 mL back"));
        assert_eq!(fill_answer(&demo_bike(), &FillAsk::default()).unwrap().filling.unwrap().id, "engine-oil");
    }

    #[test]
    fn a_filling_that_is_not_there_or_not_known_is_refused() {
        let of =
            |mark: &str| fill_answer(&demo_bike(), &FillAsk { filling: Some(mark.to_owned()), ..FillAsk::default() });
        assert!(matches!(of("gearbox"), Err(Refused::Unknown { .. })));
        assert!(matches!(of("fork"), Err(Refused::Missing { field, .. }) if field == "litres"));
        assert!(matches!(fill_answer(&Bike::default(), &FillAsk::default()), Err(Refused::Missing { .. })));
        let none = FillAsk { litres: Some(0.0), ..FillAsk::default() };
        assert!(
            matches!(fill_answer(&demo_bike(), &none), Err(Refused::OutOfRange { field, .. }) if field == "litres")
        );
        let cup = FillAsk { litres: Some(1.0), cups_ml: vec![0], ..FillAsk::default() };
        assert!(matches!(fill_answer(&demo_bike(), &cup), Err(Refused::OutOfRange { field, .. }) if field == "cupMl"));
    }

    #[test]
    fn what_is_finer_than_a_millilitre_is_rounded_and_said() {
        let sheet = fill_answer(&demo_bike(), &FillAsk { litres: Some(0.156_25), ..FillAsk::default() }).unwrap();
        assert_eq!(sheet.volume_ml, 156);
        assert_eq!(sheet.findings[0].code, FindingCode::FillRounded);
    }
}
