//! The answer of the page on chain wear: elongation, the tight spot, and where the axle goes as the chain wears.

use layshaft_wire::wire;

use crate::bounds;
use crate::error::Refused;
use crate::gearing::formulas::{
    ChainElongation, WornLength, chain_dimensions, chain_size_source, elongation, geometry, wear_source, worn_length,
};
use crate::gearing::judge::{
    Axle, TightSpot, WearLimit, WearRule, WornPosition, judge_wear, links_of, noted_elongation, on_tight_spot, teeth,
    tight_spot, to_measure_again, wear_limits, worn_position, worn_positions,
};
use crate::gearing::message::{ChainWearMessage, GearingRefused, GearingWorking};
use crate::message::Message;
use crate::quantity::{Finding, FindingCode, Judgement, Line, Weight, Working};
use crate::record::{Bike, ChainJoint, ChainKind, ChainSize, Drive};
use crate::units::Unit;

/// What was measured. What is left out is taken from the fitted bike, or stays unknown.
#[wire(lenient)]
pub struct ChainWearAsk {
    /// Chain size.
    pub chain_size: Option<ChainSize>,
    /// Pitches measured over, pin to pin; left out: 20.
    pub pitches: Option<u32>,
    /// Length over them, pulled taut, mm: the longest of several places.
    pub measured_mm: Option<f64>,
    /// Slack at places round the whole chain, mm, wheel turned on a little each time.
    pub slack_mm: Vec<f64>,
    /// Least slack by the manual, mm.
    pub chain_slack_from_mm: Option<f64>,
    /// Most slack by the manual, mm.
    pub chain_slack_to_mm: Option<f64>,
    /// Wear limit by the manual, per cent.
    pub chain_wear_limit_percent: Option<f64>,
}

/// A limit with the length that it means on the rule.
#[wire]
pub struct WearMark {
    /// The limit.
    pub limit: WearLimit,
    /// Length over the pitches at the limit, mm.
    pub mm: f64,
    /// What is left to it, mm; below zero it is passed; none where nothing was measured.
    pub left_mm: Option<f64>,
}

/// The page on chain wear.
#[wire]
pub struct ChainWearAnswer {
    /// Chain size as written on it.
    pub size: String,
    /// Pitch, mm.
    pub pitch_mm: f64,
    /// Pitches measured over.
    pub pitches: u32,
    /// Length over them of a new chain, mm.
    pub new_mm: f64,
    /// Length measured, mm.
    pub measured_mm: Option<f64>,
    /// Elongation, per cent.
    pub elongation_percent: Option<f64>,
    /// Elongation that was noted last as a reading of the bike (`chain.elongation`), per cent.
    pub noted_percent: Option<f64>,
    /// Whether the chain is worn out; open where nothing was measured or the limits differ.
    pub judgement: Judgement,
    /// Why.
    pub why: Message,
    /// The limits, each by name, with its mark on the rule.
    pub limits: Vec<WearMark>,
    /// Slack round the chain.
    pub tight_spot: Option<TightSpot>,
    /// Where the axle stands with this chain: as measured first, then at each limit; empty where the axle is not known.
    pub positions: Vec<WornPosition>,
    /// What to mind.
    pub cautions: Vec<Message>,
    /// What is worth saying.
    pub findings: Vec<Finding>,
    /// How it was worked out.
    pub working: Working,
}

const USUAL_PITCHES: u32 = 20;
/// Beyond these the count of pitches was wrong, not the chain, per cent.
const BELIEVABLE_PERCENT: (f64, f64) = (-1.0, 6.0);

/// Works the page on chain wear out.
///
/// Refused: an unknown chain size, a number outside its range, a length that no chain of that size has over these pitches.
pub fn chain_wear_answer(bike: &Bike, ask: &ChainWearAsk) -> Result<ChainWearAnswer, Refused> {
    let drive = &bike.fitted.drive;
    let size = ask.chain_size.or(drive.chain_size).ok_or_else(|| Refused::Missing {
        field: "chainSize".to_owned(),
        label: GearingRefused::LabelChainSize.into(),
        help: GearingRefused::ReadChainSize.into(),
    })?;
    let pitches = ask.pitches.unwrap_or(USUAL_PITCHES);
    bounds::PITCHES.check(f64::from(pitches))?;
    let dimensions = chain_dimensions(size);
    let measured_mm = bounds::MEASURED_CHAIN.check_known(ask.measured_mm)?;
    let percent = measured_mm.map(|mm| believable(mm, pitches, size)).transpose()?;
    let limits = wear_limits(drive, ask.chain_wear_limit_percent)?;
    let (judgement, why) = match percent {
        Some(percent) => judge_wear(percent, &limits),
        None => (Judgement::Open, ChainWearMessage::NotMeasured.into()),
    };
    let tight_spot = tight_spot(drive, &ask.slack_mm, (ask.chain_slack_from_mm, ask.chain_slack_to_mm))?;
    let positions = positions(drive, size, percent, &limits)?;

    let mut findings: Vec<Finding> = on_wear(bike, percent, judgement, &why).into_iter().collect();
    findings.extend(tight_spot.as_ref().and_then(on_tight_spot));
    findings.extend(positions.first().filter(|_| percent.is_some()).and_then(on_end));
    let pitch_mm = dimensions.pitch_mm;
    let new = WornLength { pitches, pitch_mm, elongation_percent: 0.0 };
    let mut lines = Vec::from_iter(new.line(GearingWorking::NewLength));
    lines.extend(
        measured_mm.and_then(|measured_mm| {
            ChainElongation { measured_mm, pitches, pitch_mm }.line(GearingWorking::Elongation)
        }),
    );
    lines.extend(limits.iter().filter_map(|limit| {
        let worn = WornLength { pitches, pitch_mm, elongation_percent: limit.percent };
        worn.line(GearingWorking::LengthAtLimit { limit: limit.name.clone() })
    }));
    let mut sources = vec![wear_source(), chain_size_source(), geometry()];
    sources.extend(limits.iter().map(|limit| limit.source.clone()));
    Ok(ChainWearAnswer {
        size: dimensions.name.to_owned(),
        pitch_mm: dimensions.pitch_mm,
        pitches,
        new_mm: worn_length(pitches, dimensions.pitch_mm, 0.0),
        measured_mm,
        elongation_percent: percent,
        noted_percent: noted_elongation(bike),
        judgement,
        why,
        limits: limits.into_iter().map(|limit| mark(limit, (pitches, dimensions.pitch_mm), measured_mm)).collect(),
        tight_spot,
        positions,
        cautions: cautions(drive),
        findings,
        working: Working { lines, sources, range: ChainWearMessage::Range.into() },
    })
}

/// The elongation, or a refusal where no chain of that size has that length.
fn believable(mm: f64, pitches: u32, size: ChainSize) -> Result<f64, Refused> {
    let dimensions = chain_dimensions(size);
    let percent = elongation(mm, pitches, dimensions.pitch_mm);
    if percent < BELIEVABLE_PERCENT.0 || percent > BELIEVABLE_PERCENT.1 {
        return Err(Refused::Conflict {
            field: "measuredMm".to_owned(),
            reason: GearingRefused::NoSuchLength {
                measured: Unit::Millimetre.of(mm),
                pitches,
                percent: Unit::Percent.of(percent),
                size: dimensions.name.to_owned(),
                new: Unit::Millimetre.of(worn_length(pitches, dimensions.pitch_mm, 0.0)),
            }
            .into(),
        });
    }
    Ok(percent)
}

fn mark(limit: WearLimit, (pitches, pitch_mm): (u32, f64), measured_mm: Option<f64>) -> WearMark {
    let mm = worn_length(pitches, pitch_mm, limit.percent);
    WearMark { mm, left_mm: measured_mm.map(|measured| mm - measured), limit }
}

fn positions(
    drive: &Drive,
    size: ChainSize,
    percent: Option<f64>,
    limits: &[WearLimit],
) -> Result<Vec<WornPosition>, Refused> {
    let (Ok(teeth), Some(links), Some(axle)) = (teeth(drive), links_of(drive)?, Axle::of(drive)?) else {
        return Ok(Vec::new());
    };
    let mut positions = Vec::new();
    if let Some(percent) = percent {
        positions.push(worn_position(size, teeth, links, &axle, percent, None)?);
    }
    positions.extend(worn_positions(size, teeth, links, &axle, limits)?);
    Ok(positions)
}

fn on_wear(bike: &Bike, percent: Option<f64>, judgement: Judgement, why: &Message) -> Option<Finding> {
    let Some(percent) = percent else {
        let said = match to_measure_again(bike) {
            Some(done) => ChainWearMessage::MeasureAgain { job: done.title },
            None => ChainWearMessage::Unknown,
        };
        return Some(Finding::new(FindingCode::ChainWearUnknown, Weight::Note, said));
    };
    let (longer, why) = (Unit::Percent.of(percent), why.clone());
    let (code, weight, said) = match judgement {
        Judgement::Outside => {
            (FindingCode::ChainWornOut, Weight::Stopper, ChainWearMessage::WornOut { percent: longer, why })
        }
        Judgement::Open => {
            (FindingCode::ChainWearBetween, Weight::Care, ChainWearMessage::PerhapsWornOut { percent: longer, why })
        }
        Judgement::Fine if percent < -0.2 => {
            let percent = Unit::Percent.of(-percent);
            (FindingCode::ChainShorterThanNew, Weight::Care, ChainWearMessage::ShorterThanNew { percent })
        }
        Judgement::Fine => return None,
    };
    Some(Finding::new(code, weight, said))
}

fn on_end(position: &WornPosition) -> Option<Finding> {
    (position.inside_adjuster == Some(false)).then(|| {
        let distance = Unit::Millimetre.of(position.centre_distance_mm);
        let beyond = ChainWearMessage::BeyondAdjuster { distance };
        Finding::new(FindingCode::ChainWornBeyondAdjuster, Weight::Care, beyond)
    })
}

/// What to mind: always, by the joint, by the kind (common practice; where nothing is known, both are said).
fn cautions(drive: &Drive) -> Vec<Message> {
    let mut cautions = vec![ChainWearMessage::CautionHands, ChainWearMessage::CautionSlack];
    if matches!(drive.chain_joint, None | Some(ChainJoint::Clip)) {
        cautions.push(ChainWearMessage::CautionClip);
    }
    if matches!(drive.chain_joint, None | Some(ChainJoint::Rivet)) {
        cautions.push(ChainWearMessage::CautionRivet);
    }
    if drive.chain_joint == Some(ChainJoint::Endless) {
        cautions.push(ChainWearMessage::CautionEndless);
    }
    match drive.chain_kind {
        Some(ChainKind::Sealed) => cautions.push(ChainWearMessage::CautionSealed),
        Some(ChainKind::Plain) => cautions.push(ChainWearMessage::CautionPlain),
        None => {}
    }
    cautions.into_iter().map(Into::into).collect()
}

impl WearMark {
    /// Whether it is the owner's own limit.
    pub fn entered(&self) -> bool {
        self.limit.rule == WearRule::Entered
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gearing::sample::demo_bike;

    fn codes(sheet: &ChainWearAnswer) -> Vec<&str> {
        sheet.findings.iter().map(|finding| finding.code.as_str()).collect()
    }

    fn measured(mm: f64) -> ChainWearAsk {
        ChainWearAsk { measured_mm: Some(mm), ..ChainWearAsk::default() }
    }

    #[test]
    fn nothing_measured_is_open_and_never_a_pass() {
        let sheet = chain_wear_answer(&demo_bike(), &ChainWearAsk::default()).unwrap();
        assert_eq!((sheet.judgement, sheet.elongation_percent), (Judgement::Open, None));
        assert_eq!(codes(&sheet), ["chain.wear-unknown"]);
        assert!((sheet.new_mm - 254.0).abs() < 1e-9 && sheet.limits.iter().all(|mark| mark.left_mm.is_none()));
        let at: Vec<_> = sheet.limits.iter().map(|mark| mark.mm).collect();
        assert!((at[0] - 259.08).abs() < 1e-9 && (at[1] - 261.62).abs() < 1e-9, "{at:?}");
    }

    #[test]
    fn wear_is_judged_by_the_common_limits_or_by_the_owners() {
        let bike = demo_bike();
        assert_eq!(chain_wear_answer(&bike, &measured(256.0)).unwrap().judgement, Judgement::Fine);
        let between = chain_wear_answer(&bike, &measured(260.0)).unwrap();
        assert_eq!((between.judgement, codes(&between)[0]), (Judgement::Open, "chain.wear-between"));
        let worn = chain_wear_answer(&bike, &measured(262.0)).unwrap();
        assert!(codes(&worn).contains(&"chain.worn-out") && worn.judgement == Judgement::Outside);
        let own = ChainWearAsk { chain_wear_limit_percent: Some(0.5), ..measured(256.0) };
        let sheet = chain_wear_answer(&bike, &own).unwrap();
        assert!(sheet.judgement == Judgement::Outside && sheet.limits[0].entered() && !sheet.limits[1].entered());
        assert_eq!(sheet.working.lines[2].label, "Length at the limit: By the manual, as entered");
    }

    #[test]
    fn the_axle_moves_back_as_the_chain_wears() {
        let sheet = chain_wear_answer(&demo_bike(), &measured(256.54)).unwrap();
        assert_eq!(sheet.positions.len(), 3);
        let mm: Vec<_> = sheet.positions.iter().map(|position| position.centre_distance_mm).collect();
        // 556.3 mm new; one per cent of 116 links is 1.16 pitches, half of it on each run.
        assert!((mm[0] - 563.75).abs() < 0.05 && mm[1] > mm[0] && mm[2] > mm[1], "{mm:?}");
        assert_eq!(sheet.positions[2].inside_adjuster, Some(false));
        let far = chain_wear_answer(&demo_bike(), &measured(261.0)).unwrap();
        assert!(codes(&far).contains(&"chain.worn-beyond-adjuster"));
    }

    #[test]
    fn joint_and_kind_choose_what_to_mind() {
        let mut bike = demo_bike();
        let said = |bike: &Bike| {
            chain_wear_answer(bike, &ChainWearAsk::default())
                .unwrap()
                .cautions
                .iter()
                .map(|said| said.english())
                .collect::<Vec<_>>()
                .join(" ")
        };
        assert!(
            said(&bike).contains("clip") && said(&bike).contains("rivet link") && !said(&bike).contains("swing arm")
        );
        bike.fitted.drive.chain_joint = Some(ChainJoint::Endless);
        bike.fitted.drive.chain_kind = Some(ChainKind::Sealed);
        assert!(!said(&bike).contains("clip") && said(&bike).contains("swing arm") && said(&bike).contains("rings"));
    }

    #[test]
    fn a_length_that_no_chain_has_is_refused() {
        for mm in [240.0, 275.0] {
            let refused = chain_wear_answer(&demo_bike(), &measured(mm)).unwrap_err();
            assert!(matches!(refused, Refused::Conflict { field, .. } if field == "measuredMm"));
        }
        let short = chain_wear_answer(&demo_bike(), &measured(253.0)).unwrap();
        assert_eq!(codes(&short), ["chain.shorter-than-new"]);
    }

    #[test]
    fn bad_input_names_its_field_and_a_missing_size_is_asked_for() {
        let field = |ask: ChainWearAsk| match chain_wear_answer(&demo_bike(), &ask) {
            Err(Refused::OutOfRange { field, .. } | Refused::NotANumber { field, .. }) => field,
            other => panic!("{other:?}"),
        };
        assert_eq!(field(ChainWearAsk { pitches: Some(1), ..ChainWearAsk::default() }), "pitches");
        assert_eq!(field(measured(f64::NAN)), "measuredMm");
        assert_eq!(field(ChainWearAsk { slack_mm: vec![-1.0], ..ChainWearAsk::default() }), "slackMm");
        let refused = chain_wear_answer(&Bike::default(), &measured(256.0)).unwrap_err();
        assert!(matches!(refused, Refused::Missing { field, .. } if field == "chainSize"));
    }
}
