//! Prints the networks of the templates, sound and with faults, with what the solver makes of them, as JSON: the input of
//! the outside check `tests/outside/harness.py`.

use layshaft_core::harness::{
    Netlist, Setting, SwitchPosition, TEMPLATES, fault_places, netlist, solve, template, with_fault,
};
use serde::Serialize;

/// One network and its operating point.
#[derive(Serialize)]
struct Case {
    name: String,
    netlist: Netlist,
    volts: Vec<f64>,
    amperes: Vec<f64>,
}

/// Faults of one template that are written out: every so many of them.
const EVERY: usize = 9;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut cases = Vec::new();
    for card in TEMPLATES {
        let Some(sound) = template(card.id, 12.0) else { continue };
        let positions = sound.switches.iter().filter_map(|switch| {
            // The starter's relay needs a second network; its button stays free here.
            let position = if switch.id == "start button" { switch.positions.first() } else { switch.positions.last() };
            Some(SwitchPosition { switch: switch.id.clone(), position: position?.clone() })
        });
        let setting = Setting { positions: positions.filter(|at| at.switch != "beat").collect() };
        let mut harnesses = vec![("sound".to_owned(), sound.clone())];
        for fault in fault_places(&sound).iter().step_by(EVERY) {
            harnesses.push((fault.spoken(&sound).to_string(), with_fault(&sound, fault)?));
        }
        for (what, harness) in harnesses {
            let point = solve(&harness, &setting)?;
            // What is exported is the network before any fuse blows or coil pulls.
            if !point.blown.is_empty() || !point.pulled.is_empty() {
                continue;
            }
            let netlist = netlist(&harness, &setting);
            let at = |node: &str| point.nodes.iter().find(|at| at.node == node).map(|at| at.volts);
            let volts = netlist.points.iter().map(|node| at(node).unwrap_or(f64::NAN)).collect();
            let amperes = netlist.devices.iter();
            let amperes =
                amperes.map(|device| point.flow(&device.element).map_or(f64::NAN, |flow| flow.amperes)).collect();
            cases.push(Case { name: format!("{}: {what}", card.id), netlist, volts, amperes });
        }
    }
    println!("{}", serde_json::to_string(&cases)?);
    Ok(())
}
