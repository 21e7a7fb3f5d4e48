//! Circuits of small motorcycles to begin with; the owner adapts colours, lengths and joints.
//!
//! Lengths, resistances and currents are typical values, invented or common practice: they belong to no machine.

mod build;
mod charging;
mod coil;
mod coil_of_bike;
mod indicators;
mod lighting;
mod of_bike;
mod signals;
mod starter;
mod suits;

pub(crate) use coil_of_bike::is_known;
pub use of_bike::bike_circuit;

use build::Build;
use suits::Feeds;

use super::model::Harness;
use crate::content::Content;
use crate::record::Bike;

/// A circuit to begin with.
#[derive(Clone, Copy)]
pub struct Template {
    /// Its id.
    pub id: &'static str,
    feeds: Feeds,
    build: fn(&mut Build),
}

impl Template {
    /// Whether a bike has this circuit. What nobody has told counts as there.
    pub fn suits(&self, bike: &Bike) -> bool {
        suits::suits(self.id, self.feeds, bike)
    }

    /// What it is.
    pub fn name(&self) -> &'static str {
        Content::in_use().circuit_name("templates", self.id)
    }
}

/// Every template, in the order in which they are shown.
pub const TEMPLATES: [Template; 15] = [
    Template { id: "lighting", feeds: Feeds::Battery, build: lighting::lighting },
    Template { id: "coil-lighting", feeds: Feeds::Coil, build: coil::lighting },
    Template { id: "stop-lamp", feeds: Feeds::Battery, build: lighting::tail_and_stop },
    Template { id: "coil-stop-lamp", feeds: Feeds::Coil, build: coil::stop_lamp },
    Template { id: "indicators-one-pilot", feeds: Feeds::Battery, build: indicators::one_pilot },
    Template { id: "indicators-two-pilots", feeds: Feeds::Battery, build: indicators::two_pilots },
    Template { id: "horn", feeds: Feeds::Battery, build: signals::horn },
    Template { id: "coil-horn", feeds: Feeds::Coil, build: coil::horn },
    Template { id: "neutral", feeds: Feeds::Battery, build: signals::neutral },
    Template { id: "starter", feeds: Feeds::Battery, build: starter::starter },
    Template { id: "charging", feeds: Feeds::Battery, build: charging::single_phase },
    Template { id: "charging-three-phase", feeds: Feeds::Battery, build: charging::three_phase },
    Template { id: "whole", feeds: Feeds::Battery, build: whole },
    Template { id: "coil-whole", feeds: Feeds::Coil, build: coil::whole },
    Template { id: "ignition-stop", feeds: Feeds::Magneto, build: coil::ignition_stop },
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
    if template.feeds == Feeds::Battery {
        build.supply();
    }
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
