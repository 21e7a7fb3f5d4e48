//! The indicators of a spec as a whole: load of a side, rate of its flasher, pilot, one lamp out.

use layshaft_wire::wire;

use super::pilot::{PilotBehaviour, pilot_behaviour};
use crate::electrical::{FlashBand, Flashing, Volts, consumer_watts, flash_band, indicating_watts, with_resistors};
use crate::harness::solver::LampLook;
use crate::record::{Bike, Consumer, ConsumerRole, FlasherKind, PilotFitting, Spec};

/// The indicators of a spec.
#[wire]
pub struct Indicators {
    /// Load of one side while lit, resistors and pilot with it, watts.
    pub side_watts: f64,
    /// The same as current, amperes.
    pub side_amperes: f64,
    /// Load that the flasher is made for, watts; none when not known.
    pub made_for_watts: Option<f64>,
    /// What makes them flash; none when not known.
    pub flasher: Option<FlasherKind>,
    /// Flashes a minute to expect; none when the flasher or its load is not known.
    pub rate: Option<FlashBand>,
    /// What that means.
    pub flashing: Option<Flashing>,
    /// Flashes a minute with one lamp of the side out.
    pub one_out: Option<FlashBand>,
    /// Whether the rider notices at the rate that a lamp is out.
    pub outage_tells: Option<bool>,
    /// How the rider is told; none when not known.
    pub pilot: Option<PilotFitting>,
    /// What pilot and other side do; none when pilot or lamps are not known.
    pub behaviour: Option<PilotBehaviour>,
}

/// The indicators of a spec; none where no consumer indicates.
pub fn indicators(bike: &Bike, spec: &Spec) -> Option<Indicators> {
    let volts = Volts::of(&spec.supply);
    let side_watts = indicating_watts(&with_resistors(spec, &volts), &volts)?;
    let fitted = &spec.indication;
    let made_for_watts = fitted.flasher_watts.or_else(|| indicating_watts(&bike.standard.consumers, &volts));
    let share = |watts: f64| made_for_watts.filter(|made| *made > 0.0).map(|made| watts / made);
    let band = |watts: f64| Some(flash_band(fitted.flasher?, share(watts)?, fitted.flashes_minute));
    let rate = band(side_watts);
    let one_out = lamps(spec).and_then(|lamp| {
        let one = consumer_watts(&Consumer { count: 1, ..lamp.clone() }, volts.test, volts.charging);
        (lamp.count > 1).then(|| band((side_watts - one).max(0.0))).flatten()
    });
    let apart = |out: &FlashBand, all: &FlashBand| out.from > all.to * 1.2 || out.to < all.from * 0.8;
    Some(Indicators {
        side_watts,
        side_amperes: side_watts / volts.charging,
        made_for_watts,
        flasher: fitted.flasher,
        flashing: rate.as_ref().map(FlashBand::flashing),
        outage_tells: rate.as_ref().zip(one_out.as_ref()).map(|(all, out)| apart(out, all)),
        rate,
        one_out,
        pilot: fitted.pilot,
        behaviour: if fitted.pilot.is_some() && lamps(spec).is_some() {
            pilot_behaviour(&bike.standard, spec)
        } else {
            None
        },
    })
}

impl Indicators {
    /// The rate that a flasher certainly has, flashes a minute: nothing where it stops, the middle of the band where an
    /// electronic one is right or too fast. A thermal flasher that flashes must be counted.
    pub fn certain_rate(&self) -> Option<f64> {
        let band = self.rate.as_ref()?;
        let middle = (band.from + band.to) / 2.0;
        match (self.flashing?, self.flasher?) {
            (Flashing::Stops, _) => Some(0.0),
            (Flashing::TooFast, _) => Some(middle),
            (Flashing::Right, FlasherKind::ElectronicTwo | FlasherKind::ElectronicThree) => Some(middle),
            _ => None,
        }
    }

    /// Whether the side that should be dark is seen to light.
    pub fn both_sides(&self) -> bool {
        self.behaviour.as_ref().is_some_and(|seen| seen.other_side > LampLook::Off)
    }
}

/// The indicator lamps of one side.
fn lamps(spec: &Spec) -> Option<&Consumer> {
    spec.consumer_as(ConsumerRole::is_indicator).map(|slot| &slot.consumer)
}
