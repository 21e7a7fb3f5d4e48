//! Circuits of small motorcycles to begin with; the owner adapts colours, lengths and joints.
//!
//! Lengths, resistances and currents are typical values, invented or common practice: they belong to no machine.

mod build;
mod charging;
mod indicators;
mod lighting;
mod of_bike;
mod signals;
mod starter;

pub use of_bike::bike_circuit;

use build::Build;

use super::model::Harness;
use crate::content::Content;

/// A circuit to begin with.
#[derive(Clone, Copy)]
pub struct Template {
    /// Its id.
    pub id: &'static str,
    build: fn(&mut Build),
}

impl Template {
    /// What it is.
    pub fn name(&self) -> &'static str {
        Content::in_use().circuit_name("templates", self.id)
    }
}

/// Every template, in the order in which they are shown.
pub const TEMPLATES: [Template; 10] = [
    Template { id: "lighting", build: lighting::lighting },
    Template { id: "stop-lamp", build: lighting::tail_and_stop },
    Template { id: "indicators-one-pilot", build: indicators::one_pilot },
    Template { id: "indicators-two-pilots", build: indicators::two_pilots },
    Template { id: "horn", build: signals::horn },
    Template { id: "neutral", build: signals::neutral },
    Template { id: "starter", build: starter::starter },
    Template { id: "charging", build: charging::single_phase },
    Template { id: "charging-three-phase", build: charging::three_phase },
    Template { id: "whole", build: whole },
];

/// A template by its id, for a system voltage of 12 or 6 V (anything else scales the same way).
///
/// ```
/// use layshaft_core::harness::{check_harness, template};
/// let horn = template("horn", 6.0).unwrap();
/// assert!(check_harness(&horn).unwrap().is_empty());
/// assert!(template("toaster", 12.0).is_none());
/// ```
pub fn template(id: &str, system_volts: f64) -> Option<Harness> {
    let template = TEMPLATES.iter().find(|template| template.id == id)?;
    let mut build = Build::new(template.name(), system_volts);
    build.supply();
    (template.build)(&mut build);
    Some(build.done())
}

fn whole(build: &mut Build) {
    lighting::lighting(build);
    lighting::stop(build);
    indicators::one_pilot(build);
    signals::horn(build);
    starter::starter(build);
    signals::neutral(build);
    charging::single_phase(build);
}
