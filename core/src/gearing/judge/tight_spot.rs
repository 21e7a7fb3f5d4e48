//! The tight spot: a chain that wears unevenly has less slack at one place, and that place is where slack is set.

use layshaft_wire::wire;

use crate::bounds;
use crate::error::Refused;
use crate::message::Message;
use crate::quantity::{Finding, FindingCode, Judgement, Weight};
use crate::record::Drive;

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
    let least = bounds::CHAIN_SLACK.named("chainSlackFromMm", "Least chain slack");
    let most = bounds::CHAIN_SLACK.named("chainSlackToMm", "Most chain slack");
    let from_mm = least.check_known(from.or(drive.chain_slack_from_mm))?;
    let to_mm = most.check_known(to.or(drive.chain_slack_to_mm))?;
    if from_mm.zip(to_mm).is_some_and(|(from, to)| from > to) {
        return Err(Refused::Conflict {
            field: "chainSlackToMm".to_owned(),
            reason: "Chain slack: the most must not be below the least".into(),
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
            reason: format!("{} readings of slack; {MOST_READINGS} at most", slack_mm.len()).into(),
        });
    }
    let tightest_mm = slack_mm.iter().copied().fold(f64::INFINITY, f64::min);
    let slackest_mm = slack_mm.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let spread_mm = (slack_mm.len() > 1).then_some(slackest_mm - tightest_mm);
    let (judgement, why) = judge(tightest_mm, spread_mm, from_mm, to_mm);
    let readings_mm = slack_mm.to_vec();
    Ok(Some(TightSpot { readings_mm, tightest_mm, slackest_mm, spread_mm, from_mm, to_mm, judgement, why: why.into() }))
}

fn judge(tightest: f64, spread: Option<f64>, from: Option<f64>, to: Option<f64>) -> (Judgement, String) {
    if let Some(from) = from.filter(|from| tightest < *from) {
        return (
            Judgement::Outside,
            format!("{tightest:.0} mm at the tightest place; the manual asks for {from:.0} mm"),
        );
    }
    if let Some(to) = to.filter(|to| tightest > *to) {
        return (Judgement::Outside, format!("{tightest:.0} mm at the tightest place; the manual allows {to:.0} mm"));
    }
    let (Some(from), Some(to)) = (from, to) else {
        return (Judgement::Open, "the manual's slack is not on the bike".to_owned());
    };
    match spread {
        Some(spread) if spread > to - from => (
            Judgement::Outside,
            format!(
                "slack differs by {spread:.0} mm round the chain, the manual's range is {:.0} mm wide: no setting is right \
                 everywhere",
                to - from
            ),
        ),
        Some(_) => (Judgement::Fine, format!("between {from:.0} and {to:.0} mm at the tightest place")),
        None => (
            Judgement::Open,
            "one reading does not find the tightest place; turn the wheel on and measure again".to_owned(),
        ),
    }
}

/// What is worth saying about the slack.
pub(crate) fn on_tight_spot(spot: &TightSpot) -> Option<Finding> {
    let too_tight = spot.from_mm.is_some_and(|from| spot.tightest_mm < from);
    let uneven =
        spot.judgement == Judgement::Outside && !too_tight && spot.to_mm.is_some_and(|to| spot.tightest_mm <= to);
    let (code, weight, advice) = match spot.judgement {
        Judgement::Fine => return None,
        Judgement::Open => (FindingCode::ChainSlackOpen, Weight::Note, ""),
        Judgement::Outside if too_tight => {
            (FindingCode::ChainTooTight, Weight::Care, " Slacken it there before the wheel turns under load.")
        }
        Judgement::Outside if uneven => {
            (FindingCode::ChainTightSpot, Weight::Care, " Look for stiff links and a sprocket off centre.")
        }
        Judgement::Outside => (FindingCode::ChainTooSlack, Weight::Care, " Set it at the tightest place."),
    };
    let why = spot.why.to_string();
    let mut letters = why.chars();
    let first = letters.next().map(|first| first.to_uppercase().to_string()).unwrap_or_default();
    Some(Finding::new(code, weight, format!("{first}{}.{advice}", letters.as_str())))
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
