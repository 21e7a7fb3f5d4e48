//! Lamps on a lighting coil: from which engine speed they burn fully, and how high an unregulated coil drives them.

use layshaft_wire::wire;

use super::feed::Fed;
use super::message::LoadMessage;
use crate::electrical::formulas::{RidingState, Volts, balance_speed, coil_lamp_volts, drawn, load_watts, output_at};
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{Slot, Supply};
use crate::units::Unit;

/// Times the rated voltage at which filaments no longer last: the end of the lamp law.
pub(crate) const BURNS_OUT: f64 = 1.2;

/// The lamps of a lighting coil in one riding state.
#[wire]
pub struct CoilLamps {
    /// State.
    pub state: RidingState,
    /// Voltage that lamps and coil are rated for, volts.
    pub rated_volts: f64,
    /// What the lamps take at it, watts.
    pub watts: f64,
    /// Engine speed from which they get it; none when the coil never gives enough, or its output is not known.
    pub from_rpm: Option<f64>,
    /// Voltage at idle, volts, at most.
    pub at_idle_volts: Option<f64>,
    /// Voltage at the comparison speed, volts, at most.
    pub at_speed_volts: Option<f64>,
    /// The same with the weakest lamp burnt out, volts, where nothing regulates.
    pub one_out_volts: Option<f64>,
}

/// The lamps of the coil in each riding state in which it feeds any.
pub(crate) fn coil_lamps(supply: &Supply, fed: &Fed, engine_rpm: f64) -> Vec<CoilLamps> {
    let volts = Volts::at_coil(supply);
    let rated_volts = volts.charging;
    let regulated = supply.kind().is_regulated();
    let states = RidingState::ALL.into_iter().filter(|state| *state != RidingState::Standing);
    let of = |state| {
        let watts = load_watts(&fed.coil, state, &volts);
        let at = |rpm: f64, watts: f64| {
            let given = output_at(&supply.output, rpm).filter(|_| watts > 0.0)?;
            let driven = coil_lamp_volts(rated_volts, given, watts);
            Some(if regulated { driven.min(rated_volts) } else { driven })
        };
        let left = watts - weakest(&fed.coil, state, &volts);
        (watts > 0.0).then(|| CoilLamps {
            state,
            rated_volts,
            watts,
            from_rpm: balance_speed(&supply.output, watts),
            at_idle_volts: supply.idle_rpm.and_then(|rpm| at(rpm, watts)),
            at_speed_volts: at(engine_rpm, watts),
            one_out_volts: at(engine_rpm, left).filter(|_| !regulated && left > 0.1),
        })
    };
    states.filter_map(of).collect()
}

/// Watts of the lamp whose loss is felt least, of those that are lit.
fn weakest(coil: &[Slot], state: RidingState, volts: &Volts) -> f64 {
    let (shares, watts) = drawn(coil, state, volts);
    let lit = shares.iter().zip(watts).filter(|(share, _)| **share > 0.0).map(|(_, watts)| watts);
    lit.reduce(f64::min).unwrap_or_default()
}

/// What is worth saying of them at a speed.
pub(crate) fn of_coil(supply: &Supply, coil: &[CoilLamps], engine_rpm: f64) -> Vec<Finding> {
    let mut findings = Vec::new();
    let rpm = Unit::Rpm.of(engine_rpm);
    let Some(lights) = coil.iter().find(|lamps| lamps.state == RidingState::Lights) else { return findings };
    let made = Unit::Volt.of(lights.rated_volts);
    if !supply.kind().is_regulated() {
        let text = match lights.one_out_volts {
            Some(volts) => LoadMessage::CoilBlownLamp { volts: Unit::Volt.of(volts), made, rpm },
            None => LoadMessage::CoilBlownLampUnknown,
        };
        findings.push(Finding::new(FindingCode::CoilBlownLamp, Weight::Care, text));
        if let Some(volts) = lights.at_speed_volts.filter(|volts| *volts > BURNS_OUT * lights.rated_volts) {
            let text = LoadMessage::CoilTooBright { volts: Unit::Volt.of(volts), made, rpm };
            findings.push(Finding::new(FindingCode::CoilTooBright, Weight::Care, text));
        }
    }
    if lights.from_rpm.is_none() && !supply.output.is_empty() {
        let most = supply.output.iter().map(|point| point.watts).fold(0.0, f64::max);
        let text = LoadMessage::CoilTooDim { asked: Unit::Watt.of(lights.watts), given: Unit::Watt.of(most) };
        findings.push(Finding::new(FindingCode::CoilTooDim, Weight::Care, text));
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::super::feed::fed;
    use super::*;
    use crate::record::{Consumer, ElectricalSystem, LightSource, OutputPoint, Use};

    fn lamps(system: ElectricalSystem) -> (Supply, Vec<CoilLamps>) {
        let lamp = |id: &str, watts| Slot {
            id: id.to_owned(),
            consumer: Consumer {
                watts,
                count: 1,
                used: Some(Use::Lights),
                source: Some(LightSource::Filament),
                ..Consumer::default()
            },
        };
        let supply = Supply {
            system: Some(system),
            system_volts: Some(6.0),
            idle_rpm: Some(1500.0),
            output: vec![OutputPoint { rpm: 1500.0, watts: 10.0 }, OutputPoint { rpm: 5000.0, watts: 22.0 }],
            ..Supply::default()
        };
        let fed = fed(&supply, &[lamp("head", 15.0), lamp("tail", 5.0)]);
        let found = coil_lamps(&supply, &fed, 5000.0);
        (supply, found)
    }

    #[test]
    fn unregulated_lamps_rise_with_the_revs_and_a_blown_tail_lamp_takes_the_other_with_it() {
        let (supply, found) = lamps(ElectricalSystem::LightingCoil);
        let lights = &found[0];
        assert_eq!((lights.state, lights.rated_volts, lights.watts), (RidingState::Lights, 6.75, 20.0));
        let (idle, fast) = (lights.at_idle_volts.unwrap(), lights.at_speed_volts.unwrap());
        assert!(idle < 6.75 && fast > 6.75, "{idle} {fast}");
        assert!(lights.one_out_volts.unwrap() > BURNS_OUT * 6.75);
        let said: Vec<FindingCode> = of_coil(&supply, &found, 5000.0).into_iter().map(|finding| finding.code).collect();
        assert_eq!(said, [FindingCode::CoilBlownLamp]);
    }

    #[test]
    fn a_shunt_regulator_holds_them_and_none_suffers_for_another() {
        let (supply, found) = lamps(ElectricalSystem::LightingCoilRegulated);
        assert_eq!((found[0].at_speed_volts, found[0].one_out_volts), (Some(6.75), None));
        assert!(of_coil(&supply, &found, 5000.0).is_empty());
    }
}
