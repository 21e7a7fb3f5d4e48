//! The answer of the page on chain wear: elongation, the tight spot, and where the axle goes as the chain wears.

use layshaft_wire::wire;

use crate::bounds;
use crate::error::Refused;
use crate::gearing::formulas::{
    ChainElongation, WornLength, chain_dimensions, chain_size_source, elongation, geometry, wear_source, worn_length,
};
use crate::gearing::judge::{
    Axle, TightSpot, WearLimit, WearRule, WornPosition, judge_wear, links_of, noted_elongation, on_tight_spot, teeth,
    tight_spot, wear_limits, worn_position, worn_positions,
};
use crate::message::Message;
use crate::quantity::{Finding, FindingCode, Judgement, Line, Weight, Working};
use crate::record::{Bike, ChainJoint, ChainKind, ChainSize, Drive};

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
        label: "Chain size".into(),
        help: "it is stamped on the side plates: 428, 520 and so on".into(),
    })?;
    let pitches = ask.pitches.unwrap_or(USUAL_PITCHES);
    bounds::PITCHES.check(f64::from(pitches))?;
    let dimensions = chain_dimensions(size);
    let measured_mm = bounds::MEASURED_CHAIN.check_known(ask.measured_mm)?;
    let percent = measured_mm.map(|mm| believable(mm, pitches, size)).transpose()?;
    let limits = wear_limits(drive, ask.chain_wear_limit_percent)?;
    let (judgement, why) = match percent {
        Some(percent) => judge_wear(percent, &limits),
        None => (Judgement::Open, "not measured yet".to_owned()),
    };
    let tight_spot = tight_spot(drive, &ask.slack_mm, (ask.chain_slack_from_mm, ask.chain_slack_to_mm))?;
    let positions = positions(drive, size, percent, &limits)?;

    let mut findings = on_wear(percent, judgement, &why);
    findings.extend(tight_spot.as_ref().and_then(on_tight_spot));
    findings.extend(positions.first().filter(|_| percent.is_some()).and_then(on_end));
    let pitch_mm = dimensions.pitch_mm;
    let new = WornLength { pitches, pitch_mm, elongation_percent: 0.0 };
    let mut lines = Vec::from_iter(new.line("Length of a new chain"));
    lines.extend(
        measured_mm.and_then(|measured_mm| ChainElongation { measured_mm, pitches, pitch_mm }.line("Elongation")),
    );
    lines.extend(limits.iter().filter_map(|limit| {
        let worn = WornLength { pitches, pitch_mm, elongation_percent: limit.percent };
        worn.line(&format!("Length at the limit: {}", limit.name))
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
        why: why.into(),
        limits: limits.into_iter().map(|limit| mark(limit, (pitches, dimensions.pitch_mm), measured_mm)).collect(),
        tight_spot,
        positions,
        cautions: cautions(drive).into_iter().map(Into::into).collect(),
        findings,
        working: Working {
            lines,
            sources,
            range: "Measured pin to pin with the chain pulled taut, the longest of several places. A chain can be worn out below \
                    every limit: look for stiff links, cracked plates, missing rollers and hooked teeth. The maker's manual decides."
                .to_owned().into(),
        },
    })
}

/// The elongation, or a refusal where no chain of that size has that length.
fn believable(mm: f64, pitches: u32, size: ChainSize) -> Result<f64, Refused> {
    let dimensions = chain_dimensions(size);
    let percent = elongation(mm, pitches, dimensions.pitch_mm);
    if percent < BELIEVABLE_PERCENT.0 || percent > BELIEVABLE_PERCENT.1 {
        return Err(Refused::Conflict {
            field: "measuredMm".to_owned(),
            reason: format!(
                "{mm} mm over {pitches} pitches would be {percent:.1} % on a {} chain, which measures {:.1} mm new: count the \
                 pitches and check the size",
                dimensions.name,
                worn_length(pitches, dimensions.pitch_mm, 0.0)
            ).into(),
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

fn on_wear(percent: Option<f64>, judgement: Judgement, why: &str) -> Vec<Finding> {
    let Some(percent) = percent else {
        return vec![Finding::new(
            FindingCode::ChainWearUnknown,
            Weight::Note,
            "Nobody has measured this chain yet. Pull it taut and measure pin to pin over 20 pitches, at several places.",
        )];
    };
    let said = |code: FindingCode, weight, text: String| vec![Finding::new(code, weight, text)];
    match judgement {
        Judgement::Outside => said(
            FindingCode::ChainWornOut,
            Weight::Stopper,
            format!("The chain is {percent:.1} % longer than new; {why}. Renew it together with both sprockets."),
        ),
        Judgement::Open => said(
            FindingCode::ChainWearBetween,
            Weight::Care,
            format!("The chain is {percent:.1} % longer than new; {why}"),
        ),
        Judgement::Fine if percent < -0.2 => said(
            FindingCode::ChainShorterThanNew,
            Weight::Care,
            format!("It measures {:.1} % less than a new chain. Count the pitches and pull it taut.", -percent),
        ),
        Judgement::Fine => Vec::new(),
    }
}

fn on_end(position: &WornPosition) -> Option<Finding> {
    (position.inside_adjuster == Some(false)).then(|| {
        Finding::new(
            FindingCode::ChainWornBeyondAdjuster,
            Weight::Care,
            format!(
                "With this wear the axle belongs at {:.1} mm, outside the adjuster. Count the links; never take a link out of a worn \
                 chain to win travel.",
                position.centre_distance_mm
            ),
        )
    })
}

/// What to mind: always, by the joint, by the kind (common practice; where nothing is known, both are said).
fn cautions(drive: &Drive) -> Vec<String> {
    let mut cautions = vec![
        "Engine stopped and ignition off; turn the wheel by hand at the tyre. Chain and sprocket take fingers off.",
        "Slack and how to load the machine for it: the maker's manual. Too tight harms the gearbox bearing, too loose comes off.",
    ];
    if matches!(drive.chain_joint, None | Some(ChainJoint::Clip)) {
        cautions.push(
            "A clip is a new one each time, its closed end pointing the way the chain runs; tug at it when it is on.",
        );
    }
    if matches!(drive.chain_joint, None | Some(ChainJoint::Rivet)) {
        cautions.push(
            "A rivet link takes its own tool and its maker's measure of the head; without them leave it to a workshop.",
        );
    }
    if drive.chain_joint == Some(ChainJoint::Endless) {
        cautions.push(
            "An endless chain goes on with the swing arm out: its nut, its bearings and its torque are the manual's.",
        );
    }
    match drive.chain_kind {
        Some(ChainKind::Sealed) => cautions.push("Sealed: no petrol, no wire brush and no jet of water on the rings."),
        Some(ChainKind::Plain) => cautions.push("Plain: dry rollers wear in days. Oil it warm, after the ride."),
        None => {}
    }
    cautions.into_iter().map(str::to_owned).collect()
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
