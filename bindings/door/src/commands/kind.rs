//! Saying what kind of bike it is.

use layshaft_core::changes::Edit;
use layshaft_core::electrical::usual_consumer;
use layshaft_core::error::Refusal;
use layshaft_core::record::{Brake, BrakeKind, Consumer, End, Identity, Side, Supply};

use super::changed;
use super::spec::{end_slot, recorded};
use crate::Bench;
use crate::act::{Act, Call};
use crate::command::DescribeKind;
use crate::write::Writing;

impl Act for DescribeKind {
    /// Writes what the kind says, to the bike as it was made, in one transaction.
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        bench.open_bike_id()?;
        let kind = self.bike_kind.checked()?;
        let known = &bench.bike.identity;
        let identity = Identity {
            strokes: kind.strokes.or(known.strokes),
            cooling: kind.cooling.or(known.cooling),
            starter: kind.starter.or(known.starter),
            ..known.clone()
        };
        let mut edits = changed(bench, "bike", &identity.checked()?);
        let standard = &bench.bike.standard;
        if kind.system_volts.is_some() || kind.system.is_some() {
            let now = &standard.supply;
            let supply = Supply {
                system: kind.system.or(now.system),
                system_volts: kind.system_volts.or(now.system_volts),
                ..now.clone()
            };
            edits.extend(recorded(bench, Side::Standard, "supply", &supply.checked()?)?);
        }
        let brakes =
            [(End::Front, kind.front_brake, &standard.front_brake), (End::Rear, kind.rear_brake, &standard.rear_brake)];
        for (end, wanted, now) in brakes {
            edits.extend(wanted.map(|wanted| braked(bench, end, wanted, now)).transpose()?.unwrap_or_default());
        }
        edits.extend(self.usual_lamps(bench, call)?);
        Ok(Writing::of(edits))
    }
}

/// A brake of another kind is another brake: what was known of the old one goes.
fn braked(bench: &Bench, end: End, wanted: BrakeKind, now: &Brake) -> Result<Vec<Edit>, Refusal> {
    let other = now.brake.is_some_and(|kind| kind != wanted);
    let rest = if other { Brake::default() } else { now.clone() };
    recorded(bench, Side::Standard, end_slot(end), &Brake { brake: Some(wanted), ..rest })
}

impl DescribeKind {
    /// What usually draws current on such a bike, where the voltage is known and nothing is entered yet.
    fn usual_lamps(&self, bench: &Bench, call: &Call) -> Result<Vec<Edit>, Refusal> {
        let volts = self.bike_kind.system_volts.or(bench.bike.standard.supply.system_volts);
        let Some(volts) = volts.filter(|_| bench.bike.fitted.consumers.is_empty()) else { return Ok(Vec::new()) };
        let mut edits = Vec::new();
        for (at, role) in self.bike_kind.roles().enumerate() {
            let name = self.names.iter().find(|each| each.role == role);
            let Some((name, usual)) = name.zip(usual_consumer(role, volts)) else { continue };
            let consumer = Consumer { name: name.name.clone(), ..usual }.checked()?;
            edits.extend(recorded(bench, Side::Standard, &format!("{}-{at}", call.id), &consumer)?);
        }
        Ok(edits)
    }
}
