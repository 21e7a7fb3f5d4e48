//! Blade fuses: ratings, how long they carry a current, and the smallest wire and fuse for a load.
//!
//! Method: the time limits of ISO 8820-3 as fuse makers restate them, taken as a band and never interpolated; the fuse must
//! carry the load and blow before the wire is harmed.

use layshaft_wire::wire;

use super::message::{ElectricalWorking, WireMessage};
use crate::bounds;
use crate::electrical::formulas::{
    Conductor, CurrentList, LeastFuse, WireDrop, ampacity, fuse_source, voltage_drop, wire_resistance, wire_sources,
};
use crate::electrical::fuse_between;
use crate::error::Refused;
use crate::message::Message;
use crate::quantity::{Finding, FindingCode, Line, Weight, WorkLine, Working};
use crate::record::ElectricalSystem;
use crate::units::Unit;

/// What to size a wire and its fuse for. Only the current (or the watts) is needed.
#[wire(lenient)]
pub struct WireAsk {
    /// Current of the load, amperes.
    pub amperes: Option<f64>,
    /// Power of the load in place of the current, watts.
    pub watts: Option<f64>,
    /// System voltage, volts; left out: 12.
    pub system_volts: Option<f64>,
    /// Length to the load, metres; left out: 1.5.
    pub out_metres: Option<f64>,
    /// Length of wire back, metres; left out: none, the frame carries it back.
    pub back_metres: Option<f64>,
    /// Temperature of the conductor, °C; left out: 40.
    pub celsius: Option<f64>,
    /// Greatest drop that is accepted, volts; left out: 3 % of the system voltage.
    pub allowed_volts: Option<f64>,
    /// List of currents; left out: the conservative one.
    pub list: Option<CurrentList>,
    /// What the electrical system is made of; left out: one with a battery.
    pub system: Option<ElectricalSystem>,
    /// A section to judge, mm².
    pub section_mm2: Option<f64>,
}

/// What kept the next smaller wire from being enough.
#[wire]
pub enum Binding {
    /// Nothing: the smallest wire of the list is enough.
    Smallest,
    /// It would lose too much voltage.
    Drop,
    /// It may not carry the current.
    Current,
    /// No fuse carries the load and still protects it.
    Fuse,
}

/// A wire with the fuse for it.
#[wire]
pub struct WireChoice {
    /// Section, mm².
    pub section_mm2: f64,
    /// Voltage lost, volts.
    pub drop_volts: f64,
    /// Current that the wire may carry, amperes.
    pub may_carry_amperes: f64,
    /// Rating of the smallest fuse that carries the load and protects the wire, amperes.
    pub fuse_amperes: Option<f64>,
    /// Colour of that fuse.
    pub fuse_colour: Option<Message>,
}

/// The page of wire and fuse.
#[wire]
pub struct WireAnswer {
    /// The load, amperes.
    pub amperes: f64,
    /// Whether a lighting coil without a battery and without a fuse feeds it.
    pub from_coil: bool,
    /// Greatest drop accepted, volts.
    pub allowed_volts: f64,
    /// List of currents that was used.
    pub list: CurrentList,
    /// The smallest wire and fuse that satisfy everything; none when no wire of the list does.
    pub suggested: Option<WireChoice>,
    /// What kept the next smaller wire from being enough.
    pub binding: Binding,
    /// The section that was asked about.
    pub asked: Option<WireChoice>,
    /// What is worth saying.
    pub findings: Vec<Finding>,
    /// How it was worked out.
    pub working: Working,
}

/// Sizes a wire and its fuse for a load, and judges the section that was asked about.
pub fn wire_answer(ask: &WireAsk) -> Result<WireAnswer, Refused> {
    let system = bounds::SYSTEM_VOLTS.check(ask.system_volts.unwrap_or(12.0))?;
    let amperes = match (ask.amperes, ask.watts) {
        (Some(amperes), _) => bounds::AMPERES.check(amperes)?,
        (None, Some(watts)) => bounds::AMPERES.check(bounds::WATTS.check(watts)? / system)?,
        (None, None) => bounds::AMPERES.need(None)?,
    };
    let out = bounds::WIRE_LENGTH.check(ask.out_metres.unwrap_or(1.5))?;
    let back = ask.back_metres.map_or(Ok(0.0), |back| bounds::WIRE_BACK.check(back))?;
    let celsius = bounds::WIRE_TEMPERATURE.check(ask.celsius.unwrap_or(40.0))?;
    let allowed_volts = bounds::ALLOWED_DROP.check(ask.allowed_volts.unwrap_or(0.03 * system))?;
    let section = bounds::WIRE_SECTION.check_known(ask.section_mm2)?;
    let list = ask.list.unwrap_or(CurrentList::Conservative);

    let choice = |section_mm2: f64| {
        let may_carry_amperes = ampacity(list, section_mm2).unwrap_or(0.0);
        let resistance = wire_resistance(section_mm2, Conductor::Flexible, celsius);
        let fuse = fuse_between(amperes, may_carry_amperes);
        WireChoice {
            section_mm2,
            drop_volts: voltage_drop(amperes, resistance, out, back),
            may_carry_amperes,
            fuse_amperes: fuse.map(|(rating, _)| rating),
            fuse_colour: fuse.map(|(_, colour)| colour.into()),
        }
    };
    let against = |wire: &WireChoice| objection(wire, amperes, allowed_volts);

    let mut binding = Binding::Smallest;
    let mut suggested = None;
    for (section_mm2, _) in list.rows() {
        let wire = choice(*section_mm2);
        match against(&wire) {
            Some(reason) => binding = reason,
            None => {
                suggested = Some(wire);
                break;
            }
        }
    }
    let asked = section.map(choice);
    let mut findings = findings(asked.as_ref().and_then(against), suggested.as_ref(), asked.as_ref(), binding);
    let from_coil = ask.system.is_some_and(|system| !system.has_battery());
    findings.push(fuse_place(from_coil));
    let lines =
        suggested.iter().chain(&asked).flat_map(|wire| work_lines(wire.section_mm2, amperes, (out, back), celsius));
    let mut sources = wire_sources().to_vec();
    sources.extend([list.source(), fuse_source()]);
    let working = Working { lines: lines.collect(), sources, range: WireMessage::Range.into() };
    Ok(WireAnswer { amperes, from_coil, allowed_volts, list, suggested, binding, asked, findings, working })
}

/// The first reason why a wire is not enough; the drop decides before the list of currents does.
fn objection(wire: &WireChoice, amperes: f64, allowed_volts: f64) -> Option<Binding> {
    if wire.drop_volts > allowed_volts {
        Some(Binding::Drop)
    } else if wire.may_carry_amperes < amperes {
        Some(Binding::Current)
    } else if wire.fuse_amperes.is_none() {
        Some(Binding::Fuse)
    } else {
        None
    }
}

fn findings(
    objection: Option<Binding>,
    suggested: Option<&WireChoice>,
    asked: Option<&WireChoice>,
    binding: Binding,
) -> Vec<Finding> {
    let mut findings = Vec::new();
    if let (Some(reason), Some(wire)) = (objection, asked) {
        let section = Unit::SquareMillimetre.of(wire.section_mm2);
        let carries = Unit::Ampere.of(wire.may_carry_amperes);
        let text = match reason {
            Binding::Drop => WireMessage::LosesTooMuch { section, lost: Unit::Volt.of(wire.drop_volts) },
            _ if wire.may_carry_amperes == 0.0 => WireMessage::BelowList { section },
            Binding::Current => WireMessage::CarriesTooLittle { section, carries },
            Binding::Fuse | Binding::Smallest => WireMessage::NoFuse { section, carries },
        };
        findings.push(Finding::new(FindingCode::WireTooThin, Weight::Care, text));
    }
    if suggested.is_none() {
        let text = match binding {
            Binding::Drop => WireMessage::NoneKeepsDrop,
            Binding::Current | Binding::Fuse | Binding::Smallest => WireMessage::NoneCarries,
        };
        findings.push(Finding::new(FindingCode::WireNone, Weight::Care, text));
    }
    findings
}

/// Where the fuse belongs; a coil without a battery cannot give more than its own current.
fn fuse_place(from_coil: bool) -> Finding {
    let (code, text) = if from_coil {
        (FindingCode::FuseCoil, WireMessage::FuseCoil)
    } else {
        (FindingCode::FuseCloseToBattery, WireMessage::FuseCloseToBattery)
    };
    Finding::new(code, Weight::Note, text)
}

fn work_lines(
    section_mm2: f64,
    amperes: f64,
    (out_metres, back_metres): (f64, f64),
    celsius: f64,
) -> impl Iterator<Item = WorkLine> {
    let conductor = "flexible".to_owned();
    let drop = WireDrop { section_mm2, conductor, celsius, amperes, out_metres, back_metres };
    let lines = [
        drop.line(ElectricalWorking::WireDrop { section: Unit::SquareMillimetre.of(section_mm2) }),
        LeastFuse { amperes }.line(ElectricalWorking::LeastFuse { amperes: Unit::Ampere.of(amperes) }),
    ];
    lines.into_iter().flatten()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::electrical::formulas::{CARRIED, TIMES};
    use crate::electrical::{FuseColour, TimeBand, fuse_time};

    fn ask(amperes: f64, out_metres: f64) -> WireAsk {
        WireAsk { amperes: Some(amperes), out_metres: Some(out_metres), ..WireAsk::default() }
    }

    #[test]
    fn the_time_band_meets_the_data_sheet_at_its_points() {
        for (at, least, most) in TIMES {
            let band = fuse_time(10.0, 10.0 * at);
            assert_eq!((band.least_seconds, band.most_seconds), (least, Some(most)), "{at}");
        }
        assert_eq!(fuse_time(10.0, 12.0), TimeBand { least_seconds: 0.75, most_seconds: None });
        assert_eq!(fuse_time(10.0, 200.0), TimeBand { least_seconds: 0.0, most_seconds: Some(0.1) });
    }

    #[test]
    fn the_fuse_sits_at_the_battery_and_a_coil_without_one_is_told_apart() {
        let code = |system| {
            let answer = wire_answer(&WireAsk { system, ..ask(3.0, 1.0) }).unwrap();
            answer.findings.last().unwrap().code
        };
        assert_eq!(code(None), FindingCode::FuseCloseToBattery);
        assert_eq!(code(Some(ElectricalSystem::HalfWaveBattery)), FindingCode::FuseCloseToBattery);
        assert_eq!(code(Some(ElectricalSystem::LightingCoil)), FindingCode::FuseCoil);
    }

    #[test]
    fn more_current_never_lasts_longer() {
        let most = |tenths: i32| fuse_time(10.0, f64::from(tenths) / 10.0).most_seconds.unwrap_or(f64::INFINITY);
        let least = |tenths: i32| fuse_time(10.0, f64::from(tenths) / 10.0).least_seconds;
        assert!((1..1000).all(|tenths| most(tenths + 1) <= most(tenths) && least(tenths + 1) <= least(tenths)));
    }

    #[test]
    fn every_reason_binds_somewhere() {
        let binding = |amperes, metres| wire_answer(&ask(amperes, metres)).unwrap();
        let tail = binding(0.5, 1.0);
        assert_eq!((tail.binding, tail.suggested.unwrap().section_mm2), (Binding::Smallest, 0.5));
        let long = binding(3.0, 6.0);
        assert_eq!((long.binding, long.suggested.unwrap().section_mm2), (Binding::Drop, 1.5));
        let short = binding(10.0, 0.3);
        // 1.0 mm² may carry 9 A only; 1.5 mm² carries 13 A, but 12.5 A wants a 15 A fuse; 2.0 mm² takes the 15 A fuse.
        assert_eq!((short.binding, short.suggested.clone().unwrap().section_mm2), (Binding::Fuse, 2.0));
        assert_eq!(short.suggested.unwrap().fuse_colour, Some(FuseColour::Blue.into()));
        let heavy = binding(14.0, 0.2);
        assert_eq!((heavy.binding, heavy.suggested.unwrap().section_mm2), (Binding::Fuse, 6.0));
    }

    #[test]
    fn a_suggestion_satisfies_all_and_the_next_smaller_wire_does_not() {
        for tenths in 1..280 {
            let amperes = f64::from(tenths) / 10.0;
            let sheet = wire_answer(&ask(amperes, 1.2)).unwrap();
            let Some(wire) = sheet.suggested else { continue };
            let fuse = wire.fuse_amperes.unwrap();
            assert!(fuse * CARRIED >= amperes - 1e-9 && fuse <= wire.may_carry_amperes);
            assert!(wire.drop_volts <= sheet.allowed_volts);
            let rows = sheet.list.rows();
            if let Some((smaller, _)) = rows.iter().rev().find(|(section, _)| *section < wire.section_mm2) {
                let smaller = wire_answer(&WireAsk { section_mm2: Some(*smaller), ..ask(amperes, 1.2) }).unwrap();
                let asked = smaller.asked.unwrap();
                assert_eq!(objection(&asked, amperes, smaller.allowed_volts), Some(sheet.binding));
                assert!(smaller.findings.iter().any(|finding| finding.code.as_str() == "wire.too-thin"));
            }
        }
    }

    #[test]
    fn a_load_that_no_wire_carries_is_a_finding_and_not_a_crash() {
        let sheet = wire_answer(&ask(150.0, 1.0)).unwrap();
        assert!(sheet.suggested.is_none() && sheet.findings.iter().any(|finding| finding.code.as_str() == "wire.none"));
    }

    #[test]
    fn a_missing_load_and_a_length_of_nothing_are_refused_by_name() {
        assert!(wire_answer(&WireAsk::default()).unwrap_err().english().contains("Current"));
        assert!(wire_answer(&ask(5.0, 0.0)).unwrap_err().english().contains("Length of wire"));
    }
}
