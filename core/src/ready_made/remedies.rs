//! What a finding asks for, as work: what was found, in words, and the ready-made job that puts it right.

use super::message::Remedied;
use crate::message::Message;
use crate::quantity::FindingCode;
use crate::record::{Bike, End, JobLink, JobReason, JobState, jobs_with};

/// What a finding asks for.
#[derive(Clone, Debug, PartialEq)]
pub struct Remedy {
    /// What was found, in words.
    pub name: Message,
    /// The ready-made job, by its id, that puts it right; none where a plain job does.
    pub ready_made: Option<&'static str>,
    /// What the reading that shows it is kept under, where the bike keeps one: `chain.elongation`.
    pub reading: Option<&'static str>,
    /// Whether a plain job on it works on a brake.
    pub brake: bool,
}

/// What a finding asks for at an end of the bike; none where no work follows from it, or where nobody knows at which end.
///
/// ```
/// use layshaft_core::quantity::FindingCode;
/// use layshaft_core::ready_made::remedy;
/// use layshaft_core::record::End;
/// let rear = remedy(FindingCode::TyreAge, Some(End::Rear)).unwrap();
/// assert_eq!(rear.ready_made, Some("rear-tyre-tube"));
/// assert_eq!(remedy(FindingCode::TyreAge, None), None);
/// assert_eq!(remedy(FindingCode::PlanCircle, None), None);
/// ```
pub fn remedy(code: FindingCode, end: Option<End>) -> Option<Remedy> {
    let (name, ready_made) = drive(code).or_else(|| electrics(code)).or_else(|| ends(code, end))?;
    let reading = match code {
        FindingCode::ChainWornOut | FindingCode::ChainWearBetween | FindingCode::ChainWornBeyondAdjuster => {
            Some("chain.elongation")
        }
        _ => None,
    };
    let brake = matches!(name, Remedied::Brake { .. } | Remedied::BrakeShoes { .. } | Remedied::BrakeFluid);
    Some(Remedy { name: name.into(), ready_made, reading, brake })
}

/// The job, done last, that put right what such a reading had shown: the reading was taken before it, or is to be taken again.
pub(crate) fn done_after(bike: &Bike, reading: &str) -> Option<JobLink> {
    let shown_by = |reason: &JobReason| match reason {
        JobReason::Finding { code, slot } => {
            remedy(*code, end_named(slot.as_deref())).is_some_and(|remedy| remedy.reading == Some(reading))
        }
        _ => false,
    };
    jobs_with(&bike.jobs, shown_by).filter(|job| job.state == JobState::Done).max_by_key(|job| job.done_ms)
}

/// The end that a slot names: `front`, `rear`.
pub fn end_named(slot: Option<&str>) -> Option<End> {
    [End::Front, End::Rear].into_iter().find(|end| Some(end.wire_name()) == slot)
}

type Known = (Remedied, Option<&'static str>);

fn drive(code: FindingCode) -> Option<Known> {
    use FindingCode::*;
    Some(match code {
        ChainTooSlack | ChainTooTight => (Remedied::ChainSlack, Some("chain-slack")),
        ChainTightSpot => (Remedied::ChainTightSpot, Some("chain-sprockets")),
        ChainWornOut | ChainWearBetween | ChainWornBeyondAdjuster => (Remedied::ChainWear, Some("chain-sprockets")),
        ChainOutsideAdjuster | ChainOddCount | ChainCannotClose => (Remedied::ChainLength, Some("chain-sprockets")),
        ChainFrontSize | ChainRearSize | ChainCannotRun => (Remedied::ChainSize, Some("chain-sprockets")),
        SpeedometerReadsLow | SpeedometerReadsHigh | SpeedometerMayReadLow | SpeedometerMayReadHigh => {
            (Remedied::Speedometer, None)
        }
        _ => return None,
    })
}

fn electrics(code: FindingCode) -> Option<Known> {
    use FindingCode::*;
    Some(match code {
        ChargingTooHigh | ChargingPattern | ChargingOutside => (Remedied::Charging, Some("charging-check")),
        CoilTooBright | CoilTooDim => (Remedied::LightingCoil, Some("charging-check")),
        BatteryDrain => (Remedied::Drain, Some("wiring-repair")),
        BatteryCell => (Remedied::BatteryCell, Some("battery-fit")),
        BalanceNever => (Remedied::Balance, None),
        IndicatorStops | IndicatorTooFast | IndicatorBothSides | FlasherTooLittleLoad | FlasherCounted => {
            (Remedied::Indicators, Some("indicators"))
        }
        LampCap | LampMoreWatts | LampAlternating => (Remedied::Lamp, Some("lamp-swap")),
        HarnessDrop | HarnessNoEarth | FuseBlows | WireOverloaded | RelayChatters => {
            (Remedied::Wiring, Some("wiring-repair"))
        }
        _ => return None,
    })
}

fn ends(code: FindingCode, end: Option<End>) -> Option<Known> {
    use FindingCode::*;
    let tyre = |end: End| {
        let job = match end {
            End::Front => "front-tyre-tube",
            End::Rear => "rear-tyre-tube",
        };
        (Remedied::Tyre { end }, Some(job))
    };
    Some(match code {
        TyreFrontLoad | TyreFrontSpeed | TyreFrontRim | TyreFrontTube => tyre(End::Front),
        TyreRearLoad | TyreRearSpeed | TyreRearRim | TyreRearTube => tyre(End::Rear),
        TyreAge | TyreMixed | TyreTubelessOnSpokes => tyre(end?),
        BrakeFluidDue | BrakeFluidMixed | BrakeFluidNeverMix => (Remedied::BrakeFluid, Some("brake-bleed")),
        BrakeCamOver => (Remedied::BrakeShoes { end: end? }, Some("drum-shoes")),
        BrakeBelowLine | BrakeLongLever | BrakeRatioUncommon => (Remedied::Brake { end: end? }, None),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ready_made::ready_made_job;

    #[test]
    fn every_ready_made_job_that_a_finding_names_is_there() {
        let ends = [None, Some(End::Front), Some(End::Rear)];
        let known = FindingCode::ALL.iter().flat_map(|code| ends.map(|end| remedy(*code, end))).flatten();
        let known: Vec<Remedy> = known.collect();
        assert!(known.len() > 60, "{}", known.len());
        for id in known.into_iter().filter_map(|remedy| remedy.ready_made) {
            assert!(ready_made_job(id).is_some(), "{id}");
        }
    }
}
