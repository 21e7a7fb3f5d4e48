//! The charging page of a bike without a battery: the alternating voltage at its lamps.

use super::charging_ask::{ChargingAnswer, ChargingAsk};
use super::message::{ChargingPageMessage, LoadPageMessage};
use crate::bounds;
use crate::electrical::formulas::Volts;
use crate::electrical::judge::{ChargingMessage, ChargingPattern, ChargingTest, TestLine, TestVerdict, verdict};
use crate::error::Refused;
use crate::message::{ListStyle, Message};
use crate::quantity::{Finding, FindingCode, Source, Standing, Weight, Working};
use crate::record::Supply;

/// Least and most share of the rated voltage that lamps on a coil should get at speed. Common practice, no source.
const AT_SPEED: (f64, f64) = (0.9, 1.1);

/// Two readings at the headlamp in place of four at a battery. What is not measured is unknown.
pub(super) fn without_battery(supply: &Supply, ask: &ChargingAsk) -> Result<ChargingAnswer, Refused> {
    let volts = Volts::at_coil(supply);
    let limits = (AT_SPEED.0 * volts.charging, AT_SPEED.1 * volts.charging);
    let idle = bounds::IDLE_VOLTS.check_known(ask.idle_volts)?;
    let fast = bounds::FAST_VOLTS.check_known(ask.fast_volts)?;
    let line = |test, how: ChargingPageMessage, reading, from, caution: ChargingPageMessage| TestLine {
        test,
        how: how.into(),
        reading,
        from,
        to: Some(limits.1),
        verdict: verdict(reading, (from, Some(limits.1))),
        caution: Some(caution.into()),
    };
    // Dim at idle is how an unregulated coil is; only too much is a fault there.
    let tests = vec![
        line(ChargingTest::Idle, ChargingPageMessage::HowCoilIdle, idle, None, ChargingPageMessage::CautionIdle),
        line(
            ChargingTest::Fast,
            ChargingPageMessage::HowCoilFast,
            fast,
            Some(limits.0),
            ChargingPageMessage::CautionFast,
        ),
    ];
    let high = tests.iter().any(|line| line.verdict == TestVerdict::High);
    let (pattern, means) = match fast {
        _ if high && supply.kind().is_regulated() => {
            (ChargingPattern::LampsTooBright, ChargingMessage::CoilRegulatorHigh)
        }
        _ if high => (ChargingPattern::LampsTooBright, ChargingMessage::CoilHigh),
        None => (ChargingPattern::NotEnoughKnown, ChargingMessage::CoilNotMeasured),
        Some(volts) if volts < limits.0 => (ChargingPattern::LampsTooDim, ChargingMessage::CoilLow),
        Some(_) => (ChargingPattern::LampsRight, ChargingMessage::CoilRight),
    };
    let means: Message = means.into();
    let mut findings = vec![Finding::new(FindingCode::BatteryNone, Weight::Note, ChargingPageMessage::NoBattery)];
    if matches!(pattern, ChargingPattern::LampsTooBright | ChargingPattern::LampsTooDim) {
        findings.insert(0, Finding::new(FindingCode::ChargingPattern, Weight::Care, means.clone()));
    }
    let mut range: Vec<Message> = vec![ChargingPageMessage::CoilRange.into()];
    if supply.system_volts.is_none() {
        range.push(LoadPageMessage::AssumedSystem.into());
    }
    let sources = vec![Source::new(ChargingPageMessage::SourceCoil, Standing::CommonPractice)];
    Ok(ChargingAnswer {
        system_volts: volts.system,
        cells: None,
        tests,
        pattern,
        means,
        charge_by_volts: None,
        charge_by_gravity: None,
        gravity_spread: None,
        days_to_flat: None,
        charger_amperes: None,
        recharge_hours: None,
        findings,
        working: Working { lines: Vec::new(), sources, range: Message::joined(ListStyle::Sentences, range) },
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::ElectricalSystem;

    fn answer(idle_volts: Option<f64>, fast_volts: Option<f64>) -> ChargingAnswer {
        let supply = Supply {
            system: Some(ElectricalSystem::LightingCoil),
            system_volts: Some(6.0),
            battery_ah: Some(4.0),
            ..Supply::default()
        };
        without_battery(&supply, &ChargingAsk { idle_volts, fast_volts, ..ChargingAsk::default() }).unwrap()
    }

    #[test]
    fn no_battery_is_said_and_none_is_asked_for() {
        let sheet = answer(None, None);
        assert!(sheet.cells.is_none() && sheet.findings.iter().any(|finding| finding.code == FindingCode::BatteryNone));
        let tests: Vec<_> = sheet.tests.iter().map(|line| line.test).collect();
        assert_eq!(tests, [ChargingTest::Idle, ChargingTest::Fast]);
        assert_eq!((sheet.pattern, sheet.recharge_hours), (ChargingPattern::NotEnoughKnown, None));
    }

    #[test]
    fn the_lamps_are_judged_by_the_voltage_that_they_are_rated_for() {
        assert_eq!(answer(Some(3.0), Some(6.6)).pattern, ChargingPattern::LampsRight);
        assert_eq!(answer(Some(3.0), Some(5.0)).pattern, ChargingPattern::LampsTooDim);
        assert_eq!(answer(Some(3.0), Some(9.0)).pattern, ChargingPattern::LampsTooBright);
    }
}
