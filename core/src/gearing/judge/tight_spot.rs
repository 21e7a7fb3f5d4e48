//! The tight spot: a chain that wears unevenly has less slack at one place, and that place is where slack is set.

use layshaft_wire::wire;

use crate::bounds;
use crate::error::Refused;
use crate::gearing::message::{ChainWearMessage, GearingRefused};
use crate::message::{FieldMessage, Measure, Message};
use crate::quantity::{Finding, FindingCode, Judgement, Weight};
use crate::record::Drive;
use crate::units::Unit;

/// Slack round the whole chain.
#[wire]
pub struct TightSpot {
    /// Readings, in the order taken, mm.
    pub readings_mm: Vec<f64>,
    /// Slack at the tightest place, mm.
    pub tightest_mm: f64,
    /// Slack at the slackest place, mm.
    pub slackest_mm: f64,
    /// The one less the other, mm; none of a single reading.
    pub spread_mm: Option<f64>,
    /// Least by the manual, mm.
    pub from_mm: Option<f64>,
    /// Most by the manual, mm.
    pub to_mm: Option<f64>,
    /// Whether the tightest place lies in the manual's range; open where the range is not known.
    pub judgement: Judgement,
    /// Why.
    pub why: Message,
}

/// Readings taken are no more than this; a chain has no more places that differ.
const MOST_READINGS: usize = 60;

/// Slack round the chain; none where nothing was measured. Slack is judged at the tightest place (common practice, and what
/// manuals ask for); a spread wider than the manual's range cannot be set right anywhere.
pub(crate) fn tight_spot(
    drive: &Drive,
    slack_mm: &[f64],
    (from, to): (Option<f64>, Option<f64>),
) -> Result<Option<TightSpot>, Refused> {
    let least = bounds::CHAIN_SLACK.named("chainSlackFromMm", FieldMessage::LeastChainSlack);
    let most = bounds::CHAIN_SLACK.named("chainSlackToMm", FieldMessage::MostChainSlack);
    let from_mm = least.check_known(from.or(drive.chain_slack_from_mm))?;
    let to_mm = most.check_known(to.or(drive.chain_slack_to_mm))?;
    if from_mm.zip(to_mm).is_some_and(|(from, to)| from > to) {
        return Err(Refused::Conflict {
            field: "chainSlackToMm".to_owned(),
            reason: GearingRefused::SlackRange.into(),
        });
    }
    for slack in slack_mm {
        bounds::CHAIN_SLACK.check(*slack)?;
    }
    if slack_mm.is_empty() {
        return Ok(None);
    }
    if slack_mm.len() > MOST_READINGS {
        return Err(Refused::Conflict {
            field: "slackMm".to_owned(),
            reason: GearingRefused::SlackReadings { readings: slack_mm.len(), most: MOST_READINGS }.into(),
        });
    }
    let tightest_mm = slack_mm.iter().copied().fold(f64::INFINITY, f64::min);
    let slackest_mm = slack_mm.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let spread_mm = (slack_mm.len() > 1).then_some(slackest_mm - tightest_mm);
    let slack = Slack::of(tightest_mm, spread_mm, from_mm, to_mm);
    let (readings_mm, judgement, why) = (slack_mm.to_vec(), slack.judgement(), slack.why().into());
    Ok(Some(TightSpot { readings_mm, tightest_mm, slackest_mm, spread_mm, from_mm, to_mm, judgement, why }))
}

/// How the slack comes out.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Slack {
    /// Less than the manual's least at the tightest place.
    BelowLeast { tightest: Measure, least: Measure },
    /// More than its most even there.
    AboveMost { tightest: Measure, most: Measure },
    /// It differs by more than the range is wide.
    Uneven { spread: Measure, width: Measure },
    /// Inside the range.
    Fine { least: Measure, most: Measure },
    /// The range is not known.
    RangeUnknown,
    /// One reading is not enough.
    OneReading,
}

impl Slack {
    fn of(tightest: f64, spread: Option<f64>, from: Option<f64>, to: Option<f64>) -> Self {
        let mm = |value: f64| Unit::Millimetre.of(value);
        if let Some(from) = from.filter(|from| tightest < *from) {
            return Self::BelowLeast { tightest: mm(tightest), least: mm(from) };
        }
        if let Some(to) = to.filter(|to| tightest > *to) {
            return Self::AboveMost { tightest: mm(tightest), most: mm(to) };
        }
        let (Some(from), Some(to)) = (from, to) else { return Self::RangeUnknown };
        match spread {
            Some(spread) if spread > to - from => Self::Uneven { spread: mm(spread), width: mm(to - from) },
            Some(_) => Self::Fine { least: mm(from), most: mm(to) },
            None => Self::OneReading,
        }
    }

    fn judgement(self) -> Judgement {
        match self {
            Self::BelowLeast { .. } | Self::AboveMost { .. } | Self::Uneven { .. } => Judgement::Outside,
            Self::Fine { .. } => Judgement::Fine,
            Self::RangeUnknown | Self::OneReading => Judgement::Open,
        }
    }

    fn why(self) -> ChainWearMessage {
        match self {
            Self::BelowLeast { tightest, least } => ChainWearMessage::SlackLess { tightest, least },
            Self::AboveMost { tightest, most } => ChainWearMessage::SlackMore { tightest, most },
            Self::Uneven { spread, width } => ChainWearMessage::SlackUneven { spread, width },
            Self::Fine { least, most } => ChainWearMessage::SlackFine { least, most },
            Self::RangeUnknown => ChainWearMessage::SlackUnknown,
            Self::OneReading => ChainWearMessage::SlackOneReading,
        }
    }
}

/// What is worth saying about the slack.
pub(crate) fn on_tight_spot(spot: &TightSpot) -> Option<Finding> {
    let (code, weight, said) = match Slack::of(spot.tightest_mm, spot.spread_mm, spot.from_mm, spot.to_mm) {
        Slack::Fine { .. } => return None,
        Slack::RangeUnknown => (FindingCode::ChainSlackOpen, Weight::Note, ChainWearMessage::RangeOpen),
        Slack::OneReading => (FindingCode::ChainSlackOpen, Weight::Note, ChainWearMessage::ReadingOpen),
        Slack::BelowLeast { tightest, least } => {
            (FindingCode::ChainTooTight, Weight::Care, ChainWearMessage::TooTight { tightest, least })
        }
        Slack::Uneven { spread, width } => {
            (FindingCode::ChainTightSpot, Weight::Care, ChainWearMessage::TightSpot { spread, width })
        }
        Slack::AboveMost { tightest, most } => {
            (FindingCode::ChainTooSlack, Weight::Care, ChainWearMessage::TooSlack { tightest, most })
        }
    };
    Some(Finding::new(code, weight, said))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spot(readings: &[f64], range: (Option<f64>, Option<f64>)) -> TightSpot {
        tight_spot(&Drive::default(), readings, range).unwrap().unwrap()
    }

    fn code(readings: &[f64]) -> Option<FindingCode> {
        on_tight_spot(&spot(readings, (Some(15.0), Some(25.0)))).map(|finding| finding.code)
    }

    #[test]
    fn the_tightest_place_decides() {
        assert_eq!(code(&[18.0, 22.0, 16.0]), None);
        assert_eq!(code(&[18.0, 22.0, 14.0]), Some(FindingCode::ChainTooTight));
        assert_eq!(code(&[26.0, 28.0, 30.0]), Some(FindingCode::ChainTooSlack));
        assert_eq!(code(&[16.0, 28.0]), Some(FindingCode::ChainTightSpot));
        let uneven = on_tight_spot(&spot(&[16.0, 28.0], (Some(15.0), Some(25.0)))).unwrap();
        assert!(
            uneven.text.english().starts_with("Slack differs by 12 mm round the chain, the manual's range is 10 mm")
        );
        // Set a little tighter all of it lies inside; the tightest place does already.
        assert_eq!(code(&[18.0, 27.0]), None);
    }

    #[test]
    fn one_reading_or_an_unknown_range_never_pass() {
        assert_eq!(code(&[20.0]), Some(FindingCode::ChainSlackOpen));
        let open = spot(&[20.0, 21.0], (None, None));
        assert_eq!((open.judgement, open.spread_mm), (Judgement::Open, Some(1.0)));
        // With one end known it may still be surely outside.
        assert_eq!(spot(&[20.0, 21.0], (Some(25.0), None)).judgement, Judgement::Outside);
    }

    #[test]
    fn a_range_the_wrong_way_round_and_too_many_readings_are_refused() {
        let refused = tight_spot(&Drive::default(), &[], (Some(30.0), Some(20.0))).unwrap_err();
        assert!(matches!(refused, Refused::Conflict { field, .. } if field == "chainSlackToMm"));
        assert!(tight_spot(&Drive::default(), &[20.0; 61], (None, None)).is_err());
        assert_eq!(tight_spot(&Drive::default(), &[], (None, None)), Ok(None));
    }
}
