//! Wear of a chain: how much longer it has become, and the limits that are in use for it.
//!
//! “Stretch” is wear of pins and bushes: each pitch grows. The limits are disputed; none is read in a standard here, so each
//! stands with its name and its standing, and the one of the bike's own manual overrides them.

use layshaft_wire::wire;

use crate::bounds;
use crate::error::Refused;
use crate::gearing::message::{ChainWearMessage, GearingSource};
use crate::message::Message;
use crate::quantity::{Judgement, Source, Standing};
use crate::ready_made::done_after;
use crate::record::{Bike, Drive, JobLink};
use crate::units::Unit;

/// Whose limit it is.
#[wire]
pub enum WearRule {
    /// Entered by the owner from the manual.
    Entered,
    /// Usual in makers' manuals of machines with sealed chains.
    Manuals,
    /// Usual with makers of chains.
    ChainMakers,
    /// For wheel sprockets of more than 67 teeth, by the handbooks.
    LargeSprocket,
}

/// A limit of wear.
#[wire]
pub struct WearLimit {
    /// Whose it is.
    pub rule: WearRule,
    /// Its name in words.
    pub name: Message,
    /// Elongation at the limit, per cent.
    pub percent: f64,
    /// Where it comes from.
    pub source: Source,
}

/// Elongation at which a worn chain climbs a large sprocket, per cent.
///
/// `e = 200 / z`, `z` teeth of the larger sprocket. Source: handbook rule for more than 67 teeth (from memory). Range: 68 teeth
/// and more; below, 3 % is reached first.
///
/// ```
/// assert_eq!(layshaft_core::gearing::large_sprocket_limit(80), 2.5);
/// ```
pub fn large_sprocket_limit(teeth: u32) -> f64 {
    200.0 / f64::from(teeth)
}

/// Teeth above which the handbooks ask for less than 3 %.
const LARGE_SPROCKET: u32 = 67;
/// Usual in manuals, per cent: they say 1 to 2.
pub(crate) const WARN_PERCENT: f64 = 2.0;
/// Usual with chain makers, per cent.
pub(crate) const REJECT_PERCENT: f64 = 3.0;

/// The limits that hold for a drive: the owner's first, then the two common ones, then that of a large sprocket.
pub(crate) fn wear_limits(drive: &Drive, asked: Option<f64>) -> Result<Vec<WearLimit>, Refused> {
    let entered = bounds::CHAIN_WEAR_LIMIT.check_known(asked.or(drive.chain_wear_limit_percent))?;
    let mut limits = Vec::new();
    limits.extend(entered.map(|percent| WearLimit {
        rule: WearRule::Entered,
        name: ChainWearMessage::LimitEntered.into(),
        percent,
        source: Source::new(GearingSource::WearEntered, Standing::Entered),
    }));
    limits.push(WearLimit {
        rule: WearRule::Manuals,
        name: ChainWearMessage::LimitManuals.into(),
        percent: WARN_PERCENT,
        source: Source::new(GearingSource::WearManuals, Standing::Memory),
    });
    limits.push(WearLimit {
        rule: WearRule::ChainMakers,
        name: ChainWearMessage::LimitChainMakers.into(),
        percent: REJECT_PERCENT,
        source: Source::new(GearingSource::WearChainMakers, Standing::SecondHand),
    });
    limits.extend(drive.rear_teeth.filter(|teeth| *teeth > LARGE_SPROCKET).map(|teeth| WearLimit {
        rule: WearRule::LargeSprocket,
        name: ChainWearMessage::LimitLargeSprocket { teeth }.into(),
        percent: large_sprocket_limit(teeth),
        source: Source::new(GearingSource::WearLargeSprocket, Standing::Memory),
    }));
    Ok(limits)
}

/// Mark of a reading that keeps an elongation, per cent.
pub const ELONGATION_READING: &str = "chain.elongation";

/// The elongation that was noted last on a bike, per cent; none where none was, or where the chain was seen to since.
pub(crate) fn noted_elongation(bike: &Bike) -> Option<f64> {
    let noted = bike
        .readings
        .values()
        .filter(|reading| reading.what == ELONGATION_READING && matches!(reading.unit, None | Some(Unit::Percent)));
    let done_ms = done_after(bike, ELONGATION_READING).and_then(|job| job.done_ms);
    let last = noted.max_by_key(|reading| reading.taken_ms).filter(|reading| reading.taken_ms >= done_ms)?;
    Some(last.value).filter(|percent| percent.is_finite())
}

/// The job that was done on the chain since it was measured.
pub(crate) fn to_measure_again(bike: &Bike) -> Option<JobLink> {
    done_after(bike, ELONGATION_READING).filter(|_| noted_elongation(bike).is_none())
}

/// Whether a chain is worn out. The owner's limit decides where there is one. Else: fine below the least of the common ones,
/// outside from the chain makers' (or the large sprocket's) on, and open between, because the sources differ there.
pub(crate) fn judge_wear(percent: f64, limits: &[WearLimit]) -> (Judgement, Message) {
    if let Some(limit) = limits.iter().find(|limit| limit.rule == WearRule::Entered) {
        let judgement = if percent < limit.percent { Judgement::Fine } else { Judgement::Outside };
        return (judgement, ChainWearMessage::ByManual { limit: Unit::Percent.of(limit.percent) }.into());
    }
    let renew = limits.iter().filter(|limit| limit.rule != WearRule::Manuals).map(|limit| limit.percent);
    let renew = renew.fold(REJECT_PERCENT, f64::min);
    if percent >= renew {
        return (Judgement::Outside, ChainWearMessage::RenewedAt { limit: Unit::Percent.of(renew) }.into());
    }
    let (manuals, makers) = (Unit::Percent.of(WARN_PERCENT), Unit::Percent.of(REJECT_PERCENT));
    if percent < WARN_PERCENT.min(renew) {
        return (Judgement::Fine, ChainWearMessage::BelowBoth { manuals, makers }.into());
    }
    (Judgement::Open, ChainWearMessage::Between { manuals, makers }.into())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_owner_decides_else_the_two_common_limits_with_a_doubt_between() {
        let drive = Drive { rear_teeth: Some(41), ..Drive::default() };
        let limits = wear_limits(&drive, None).unwrap();
        let judge = |percent| judge_wear(percent, &limits).0;
        assert_eq!(
            [judge(1.9), judge(2.0), judge(2.9), judge(3.0)],
            [Judgement::Fine, Judgement::Open, Judgement::Open, Judgement::Outside]
        );
        let own = wear_limits(&drive, Some(1.0)).unwrap();
        assert_eq!(own.len(), 3);
        assert_eq!([judge_wear(0.9, &own).0, judge_wear(1.0, &own).0], [Judgement::Fine, Judgement::Outside]);
        assert!(wear_limits(&drive, Some(0.0)).is_err());
    }

    #[test]
    fn a_large_sprocket_asks_for_less() {
        let drive = Drive { rear_teeth: Some(80), ..Drive::default() };
        let limits = wear_limits(&drive, None).unwrap();
        assert_eq!(judge_wear(2.5, &limits).0, Judgement::Outside);
        assert_eq!(limits.len(), 3);
        assert_eq!(wear_limits(&Drive { rear_teeth: Some(67), ..drive }, None).unwrap().len(), 2);
    }
}
