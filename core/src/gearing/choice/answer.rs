//! The answer of the page on choosing sprockets.

use layshaft_wire::wire;

use super::goal::{SprocketGoal, ratio_for, ratio_line};
use super::limits::{TeethLimits, check_sizes};
use super::order::{better_first, in_words};
use super::pair::{PairInputs, SprocketPair};
use crate::bounds;
use crate::error::Refused;
use crate::gearing::formulas::{
    CentreDistance, FinalRatio, HuntingTooth, chain_size_source, final_ratio, geometry, kinematics, pitch,
};
use crate::gearing::judge::{Axle, on_mesh, speedometer_source, teeth};
use crate::gearing::message::{GearingSource, SprocketChoiceMessage, SprocketChoiceWorking};
use crate::message::Message;
use crate::quantity::{
    Finding, FindingCode, Judgement, Line, PercentChange, Source, Standing, Weight, WorkLine, Working,
};
use crate::record::{Bike, ChainSize, SpeedometerDrive};
use crate::tyres::rolling_pair;
use crate::units::Unit;

/// What is wanted, and what can be had.
#[wire(lenient)]
pub struct SprocketChoiceAsk {
    /// What is wanted; left out: nothing in particular.
    pub goal: Option<SprocketGoal>,
    /// Gearbox sprockets that can be had; empty: any.
    pub front_sizes: Vec<u32>,
    /// Wheel sprockets that can be had; empty: any.
    pub rear_sizes: Vec<u32>,
    /// Road speed of the comparison, km/h; left out: 80.
    pub road_speed_kmh: Option<f64>,
    /// Pairs shown, the best ones; left out: 120.
    pub most: Option<u32>,
}

/// The adjuster, for the picture.
#[wire]
pub struct AdjusterSpan {
    /// Least centre distance, mm.
    pub from_mm: Option<f64>,
    /// Greatest centre distance, mm.
    pub to_mm: Option<f64>,
    /// Where the axle stands now, mm.
    pub present_mm: f64,
}

/// The page on choosing sprockets.
#[wire]
pub struct SprocketChoiceAnswer {
    /// Teeth in front as fitted.
    pub fitted_front: u32,
    /// Teeth behind as fitted.
    pub fitted_rear: u32,
    /// Final drive ratio as fitted.
    pub fitted_ratio: f64,
    /// Final drive ratio that would meet the goal exactly, where the goal is a ratio.
    pub wanted_ratio: Option<f64>,
    /// The teeth that were looked through.
    pub limits: TeethLimits,
    /// The adjuster, where the axle is known.
    pub adjuster: Option<AdjusterSpan>,
    /// Road speed of the comparison, km/h.
    pub road_speed_kmh: f64,
    /// The pairs, best first.
    pub pairs: Vec<SprocketPair>,
    /// Pairs that were looked through.
    pub pairs_in_all: u32,
    /// The order of the list, in words.
    pub order: Message,
    /// What to mind.
    pub cautions: Vec<Message>,
    /// What is worth saying.
    pub findings: Vec<Finding>,
    /// How the best pair was worked out.
    pub working: Working,
}

const USUAL_ROAD_SPEED_KMH: f64 = 80.0;
const USUAL_MOST: u32 = 120;
/// Off by more than this, per cent, is worth a word.
const MISSED_PERCENT: f64 = 2.0;

/// Lists every pair of sprockets that the bike takes, best first.
///
/// Refused: unknown sprockets, a goal outside its range or without what it needs, sizes outside their range.
pub fn sprocket_choice_answer(bike: &Bike, ask: &SprocketChoiceAsk) -> Result<SprocketChoiceAnswer, Refused> {
    let road_speed_kmh = bounds::ROAD_SPEED.check(ask.road_speed_kmh.unwrap_or(USUAL_ROAD_SPEED_KMH))?;
    let most = ask.most.unwrap_or(USUAL_MOST);
    bounds::PAIRS_SHOWN.check(f64::from(most))?;
    check_sizes(&ask.front_sizes, &ask.rear_sizes)?;
    let drive = &bike.fitted.drive;
    let fitted = teeth(drive)?;
    let made = teeth(&bike.standard.drive).unwrap_or(fitted);
    let fitted_ratio = final_ratio(fitted.0, fitted.1);
    let rear = rolling_pair(&bike.standard.rear_wheel, &bike.fitted.rear_wheel).1;
    let goal = ask.goal.as_ref();
    let wanted_ratio = match goal {
        Some(goal) => ratio_for(goal, drive, fitted_ratio, rear.clone().map(|rear| rear.circumference_mm))?,
        None => None,
    };
    let wanted_line = goal
        .and_then(|goal| ratio_line(goal, drive, fitted_ratio, rear.as_ref().ok().map(|rear| rear.circumference_mm)));
    let axle = Axle::of(drive)?;
    let limits = TeethLimits::of(drive, made);
    let inputs = PairInputs { bike, goal, wanted_ratio, fitted, axle: axle.as_ref(), rear: rear.ok(), road_speed_kmh };
    let mut pairs: Vec<SprocketPair> =
        limits.pairs(&ask.front_sizes, &ask.rear_sizes).map(|teeth| inputs.pair(teeth)).collect();
    pairs.sort_by(|a, b| better_first(goal, a, b));
    let pairs_in_all = u32::try_from(pairs.len()).unwrap_or(u32::MAX);
    let mut findings = on_choice(bike, goal, &limits, &pairs);
    findings.extend(on_mesh(drive));
    pairs.truncate(usize::try_from(most).unwrap_or(usize::MAX));
    Ok(SprocketChoiceAnswer {
        fitted_front: fitted.0,
        fitted_rear: fitted.1,
        fitted_ratio,
        wanted_ratio,
        adjuster: axle.map(|axle| AdjusterSpan {
            from_mm: axle.from_mm,
            to_mm: axle.to_mm,
            present_mm: axle.present_mm,
        }),
        limits,
        road_speed_kmh,
        working: working(fitted, drive.chain_size, (wanted_ratio, wanted_line), pairs.first()),
        pairs,
        pairs_in_all,
        order: in_words(goal).into(),
        cautions: cautions(),
        findings,
    })
}

fn on_choice(bike: &Bike, goal: Option<&SprocketGoal>, limits: &TeethLimits, pairs: &[SprocketPair]) -> Vec<Finding> {
    let mut findings = Vec::new();
    let mut say = |code, weight, text: SprocketChoiceMessage| findings.push(Finding::new(code, weight, text));
    if !limits.front_known || !limits.rear_known {
        say(
            FindingCode::ChoiceLimitsAssumed,
            Weight::Note,
            SprocketChoiceMessage::LimitsAssumed {
                front_least: limits.front_from,
                front_most: limits.front_to,
                rear_least: limits.rear_from,
                rear_most: limits.rear_to,
            },
        );
    }
    let Some(best) = pairs.first() else {
        say(FindingCode::ChoiceNoneLeft, Weight::Care, SprocketChoiceMessage::NoneLeft);
        return findings;
    };
    if best.judgement == Judgement::Outside {
        say(FindingCode::ChoiceNoneFits, Weight::Care, SprocketChoiceMessage::NoneFits);
    }
    let ratio_goal = goal.is_some_and(|goal| *goal != SprocketGoal::Speedometer);
    if let Some(off) = best.off_goal_percent.filter(|off| ratio_goal && off.abs() > MISSED_PERCENT) {
        say(
            FindingCode::ChoiceGoalMissed,
            Weight::Note,
            SprocketChoiceMessage::GoalMissed {
                front: best.front_teeth,
                rear: best.rear_teeth,
                off: Unit::Percent.of(off),
                over: off > 0.0,
            },
        );
    }
    if goal == Some(&SprocketGoal::Speedometer) {
        match (bike.fitted.drive.speedometer, best.speedometer.as_ref().and_then(|shift| shift.in_band)) {
            (Some(SpeedometerDrive::FrontWheel | SpeedometerDrive::RearWheel), _) => {
                say(FindingCode::ChoiceSpeedometerOnWheel, Weight::Note, SprocketChoiceMessage::SpeedometerOnWheel)
            }
            (_, None) => {
                say(FindingCode::ChoiceSpeedometerOpen, Weight::Note, SprocketChoiceMessage::SpeedometerOpen);
            }
            (_, Some(false)) => {
                say(FindingCode::ChoiceSpeedometerOutside, Weight::Care, SprocketChoiceMessage::SpeedometerOutside);
            }
            (_, Some(true)) => {}
        }
    }
    findings
}

fn cautions() -> Vec<Message> {
    [
        SprocketChoiceMessage::CautionClearance,
        SprocketChoiceMessage::CautionTogether,
        SprocketChoiceMessage::CautionPapers,
    ]
    .map(Into::into)
    .to_vec()
}

fn working(
    (front_teeth, rear_teeth): (u32, u32),
    size: Option<ChainSize>,
    (wanted, goal): (Option<f64>, Option<WorkLine>),
    best: Option<&SprocketPair>,
) -> Working {
    let mut lines = Vec::from_iter(FinalRatio { front_teeth, rear_teeth }.line(SprocketChoiceWorking::FittedRatio));
    lines.extend(goal);
    if let Some(best) = best {
        let (front_teeth, rear_teeth) = (best.front_teeth, best.rear_teeth);
        lines.extend(FinalRatio { front_teeth, rear_teeth }.line(SprocketChoiceWorking::BestRatio));
        lines.extend(
            wanted.and_then(|after| {
                PercentChange { before: best.final_ratio, after }.line(SprocketChoiceWorking::OffGoal)
            }),
        );
        lines.extend(best.chain.as_ref().zip(size).and_then(|(fit, size)| {
            let run = CentreDistance { front_teeth, rear_teeth, chain_links: fit.links, pitch_mm: pitch(size) };
            run.line(SprocketChoiceWorking::CentreDistance)
        }));
        lines.extend(best.chain.as_ref().and_then(|fit| {
            let hunting = HuntingTooth { teeth: front_teeth, chain_links: fit.links };
            hunting.line(SprocketChoiceWorking::HuntingTurns)
        }));
    }
    Working {
        lines,
        sources: vec![
            kinematics(),
            geometry(),
            chain_size_source(),
            speedometer_source(),
            Source::new(GearingSource::HuntingTeeth, Standing::Computed),
            Source::new(GearingSource::ListOrder, Standing::CommonPractice),
        ],
        range: SprocketChoiceMessage::Range.into(),
    }
}
