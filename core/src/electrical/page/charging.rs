//! The answer of the charging page: tests, what they mean, how full the battery is, drain, time to flat and to recharge.

use super::alternating::without_battery;
use super::charging_ask::{ChargingAnswer, ChargingAsk};
use super::message::{ChargingPageMessage, ElectricalWorking, LoadPageMessage};
use crate::bounds;
use crate::electrical::formulas::{
    DaysToFlat, RechargeHours, Volts, charge_from_gravity, days_to_flat, gravity_at_25, gravity_rows, recharge_hours,
    rested_charge, rested_rows,
};
use crate::electrical::judge::{
    ChargingPattern, ChargingTest, Readings, TestLine, TestVerdict, charging_limits, limit_sources, most_at_rest,
    verdict,
};
use crate::error::Refused;
use crate::message::{List, ListStyle, Message};
use crate::quantity::{Finding, FindingCode, Line, Source, Standing, Weight, WorkLine, Working};
use crate::record::Bike;
use crate::units::Unit;

/// Id of the reading that holds the rested voltage.
const RESTED: &str = "battery.rested";
/// Spread of the cells' gravities above which one cell is bad: common practice.
const CELL_SPREAD: f64 = 0.05;

/// The charging page of a bike. Nothing is stored; what is not measured is unknown, never good.
pub fn charging_answer(bike: &Bike, ask: &ChargingAsk) -> Result<ChargingAnswer, Refused> {
    let supply = bike.fitted.supply.clone().as_built().checked()?;
    if !supply.kind().has_battery() {
        return without_battery(&supply, ask);
    }
    let volts = Volts::of(&supply);
    let (system, cells) = (volts.system, volts.cells());
    let scale = system / 12.0;
    let noted = bike.readings.values().filter(|reading| reading.what == RESTED).max_by_key(|reading| reading.taken_ms);
    let rested = ask.rested_volts.or(noted.map(|reading| reading.value));
    bounds::RESTED_READING.check_known(rested)?;
    let most = most_at_rest(cells);
    let beyond = rested.filter(|volts| *volts > most);
    if let Some(volts) = ask.rested_volts.filter(|volts| *volts > most) {
        let reason = AnotherBattery { volts, most, system }.said();
        return Err(Refused::Conflict { field: bounds::RESTED_READING.field.to_owned(), reason });
    }
    let readings = Readings {
        rested: rested.filter(|_| beyond.is_none()),
        idle: bounds::IDLE_VOLTS.check_known(ask.idle_volts)?,
        fast: bounds::FAST_VOLTS.check_known(ask.fast_volts)?,
        scale,
    };
    let drain = bounds::DRAIN.check_known(ask.drain_milliamperes)?;
    let charger = bounds::CHARGER.check_known(ask.charger_amperes)?;
    let celsius = bounds::TEMPERATURE.check(ask.acid_celsius.unwrap_or(25.0))?;
    let gravities =
        ask.gravities.iter().map(|gravity| bounds::GRAVITY.check(*gravity).map(|at| gravity_at_25(at, celsius)));
    let gravities: Vec<f64> = gravities.collect::<Result<_, _>>()?;

    let tests = tests(&readings, drain, system);
    let (pattern, means) = readings.pattern();
    let means = if supply.kind().is_half_wave() { means.of_half_wave() } else { means };
    let charge_by_volts = readings.rested.map(|volts| rested_charge(cells, volts));
    let weakest = gravities.iter().copied().reduce(f64::min);
    let strongest = gravities.iter().copied().reduce(f64::max);
    let charge_by_gravity = weakest.map(charge_from_gravity);
    let charge = charge_by_gravity.or(charge_by_volts);
    let charger_amperes = charger.or(supply.battery_ah.map(|capacity| capacity / 10.0));
    let mut sheet = ChargingAnswer {
        system_volts: system,
        cells: Some(cells),
        tests,
        pattern,
        means: means.into(),
        charge_by_volts,
        charge_by_gravity,
        gravity_spread: strongest.zip(weakest).map(|(most, least)| most - least),
        days_to_flat: supply
            .battery_ah
            .zip(drain.filter(|drain| *drain > 0.0))
            .map(|(capacity, drain)| days_to_flat(capacity, charge.unwrap_or(100.0), drain / 1000.0)),
        recharge_hours: supply
            .battery_ah
            .zip(charge)
            .zip(charger_amperes)
            .map(|((capacity, charge), amperes)| recharge_hours(capacity, charge, amperes)),
        charger_amperes,
        findings: Vec::new(),
        working: Working { lines: Vec::new(), sources: sources(), range: ChargingPageMessage::Range.into() },
    };
    sheet.findings = findings(&sheet, drain, supply.battery_ah);
    if let Some(volts) = beyond {
        let text = AnotherBattery { volts, most, system }.said();
        sheet.findings.insert(0, Finding::new(FindingCode::BatteryAnotherVoltage, Weight::Care, text));
    }
    sheet.working.lines = lines(&sheet, &readings, weakest, drain, supply.battery_ah, charge);
    let mut range = vec![ChargingPageMessage::Range.into()];
    if supply.kind().is_half_wave() {
        range.push(ChargingPageMessage::HalfWaveRange.into());
    }
    if supply.system_volts.is_none() {
        range.push(LoadPageMessage::AssumedSystem.into());
    }
    if charge.is_none() && sheet.days_to_flat.is_some() {
        range.push(ChargingPageMessage::AssumedFull.into());
    }
    sheet.working.range = Message::joined(ListStyle::Sentences, range);
    Ok(sheet)
}

/// A voltage that no resting battery of this system has.
struct AnotherBattery {
    volts: f64,
    most: f64,
    system: f64,
}

impl AnotherBattery {
    fn said(&self) -> Message {
        let [volts, most, system] = [self.volts, self.most, self.system].map(|volts| Unit::Volt.of(volts));
        ChargingPageMessage::AnotherBattery { volts, most, system }.into()
    }
}

fn tests(readings: &Readings, drain: Option<f64>, system: f64) -> Vec<TestLine> {
    use ChargingPageMessage::{CautionDrain, CautionFast, CautionIdle, HowDrain, HowFast, HowIdle, HowRested};
    let line = |test, how: ChargingPageMessage, reading, caution: Option<ChargingPageMessage>| {
        let limits = charging_limits(test, system, readings.rested);
        TestLine {
            test,
            how: how.into(),
            reading,
            from: limits.0,
            to: limits.1,
            verdict: match (test, readings.rested) {
                // The idle voltage is good when it is above the rested one; without that nobody knows.
                (ChargingTest::Idle, None) => TestVerdict::Unknown,
                _ => verdict(reading, limits),
            },
            caution: caution.map(Into::into),
        }
    };
    vec![
        line(ChargingTest::Rested, HowRested, readings.rested, None),
        line(ChargingTest::Idle, HowIdle, readings.idle, Some(CautionIdle)),
        line(ChargingTest::Fast, HowFast, readings.fast, Some(CautionFast)),
        line(ChargingTest::Drain, HowDrain, drain, Some(CautionDrain)),
    ]
}

fn findings(sheet: &ChargingAnswer, drain: Option<f64>, capacity: Option<f64>) -> Vec<Finding> {
    let mut findings = Vec::new();
    let mut say = |code: FindingCode, weight, text: Message| findings.push(Finding::new(code, weight, text));
    match sheet.pattern {
        ChargingPattern::Overcharging => say(FindingCode::ChargingTooHigh, Weight::Stopper, sheet.means.clone()),
        ChargingPattern::Healthy | ChargingPattern::NotEnoughKnown => {}
        _ => say(FindingCode::ChargingPattern, Weight::Care, sheet.means.clone()),
    }
    let unknown = sheet.tests.iter().filter(|line| line.verdict == TestVerdict::Unknown);
    let unknown: Vec<Message> = unknown.map(|line| name(line.test).into()).collect();
    if !unknown.is_empty() {
        let tests = List(ListStyle::Comma, unknown);
        say(FindingCode::ChargingUnknown, Weight::Note, ChargingPageMessage::NotMeasured { tests }.into());
    }
    if let Some(drain) = drain.filter(|drain| *drain > crate::electrical::judge::DRAIN_MILLIAMPERES) {
        let drain = Unit::Milliampere.of(drain);
        let text = match sheet.days_to_flat {
            Some(days) => ChargingPageMessage::DrainFlatIn { drain, days: Unit::Day.of(days.round()) },
            None => ChargingPageMessage::Drain { drain },
        };
        say(FindingCode::BatteryDrain, Weight::Care, text.into());
    }
    if sheet.gravity_spread.is_some_and(|spread| spread > CELL_SPREAD) {
        say(FindingCode::BatteryCell, Weight::Care, ChargingPageMessage::BadCell.into());
    }
    if let Some((volts, gravity)) = sheet.charge_by_volts.zip(sheet.charge_by_gravity)
        && (volts - gravity).abs() > 25.0
    {
        say(FindingCode::BatteryTablesDiffer, Weight::Note, ChargingPageMessage::TablesDiffer.into());
    }
    if let Some((amperes, capacity)) = sheet.charger_amperes.zip(capacity)
        && amperes > capacity / 5.0
    {
        let (amperes, capacity) = (Unit::Ampere.of(amperes), Unit::AmpereHour.of(capacity));
        let text = ChargingPageMessage::ChargerTooStrong { amperes, capacity };
        say(FindingCode::ChargerTooStrong, Weight::Care, text.into());
    }
    if sheet.recharge_hours.is_some_and(|hours| hours > 0.0) {
        say(FindingCode::BatteryGas, Weight::Care, ChargingPageMessage::Gas.into());
    }
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    findings
}

/// A test in a list of tests.
fn name(test: ChargingTest) -> ChargingPageMessage {
    match test {
        ChargingTest::Rested => ChargingPageMessage::TestRested,
        ChargingTest::Idle => ChargingPageMessage::TestIdle,
        ChargingTest::Fast => ChargingPageMessage::TestFast,
        ChargingTest::Drain => ChargingPageMessage::TestDrain,
    }
}

fn lines(
    sheet: &ChargingAnswer,
    readings: &Readings,
    weakest: Option<f64>,
    drain: Option<f64>,
    capacity: Option<f64>,
    charge: Option<f64>,
) -> Vec<WorkLine> {
    let mut lines = Vec::new();
    if let Some((volts, cells)) = readings.rested.zip(sheet.cells) {
        lines.extend(
            rested_rows(cells, volts).line(ElectricalWorking::ChargeByVolts { cells: Unit::None.of(f64::from(cells)) }),
        );
    }
    if let Some(gravity) = weakest {
        lines.extend(gravity_rows(gravity).line(ElectricalWorking::ChargeByGravity { at: Unit::Celsius.of(25.0) }));
    }
    if let Some((drain_milliamperes, battery_ah)) = drain.zip(capacity).filter(|_| sheet.days_to_flat.is_some()) {
        let charge_percent = charge.unwrap_or(100.0);
        lines.extend(DaysToFlat { battery_ah, charge_percent, drain_milliamperes }.line(ElectricalWorking::DaysToFlat));
    }
    if let Some((charger_amperes, battery_ah)) =
        sheet.charger_amperes.zip(capacity).filter(|_| sheet.recharge_hours.is_some())
    {
        let charge_percent = charge.unwrap_or_default();
        lines.extend(
            RechargeHours { battery_ah, charge_percent, charger_amperes }.line(ElectricalWorking::RechargeHours),
        );
    }
    lines
}

fn sources() -> Vec<Source> {
    let mut sources = limit_sources();
    sources.push(Source::new(ChargingPageMessage::SourceTables, Standing::SecondHand));
    sources.push(Source::new(ChargingPageMessage::SourceChargeFactor, Standing::CommonPractice));
    sources
}

#[cfg(test)]
#[path = "charging_tests.rs"]
mod tests;
