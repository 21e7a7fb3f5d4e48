//! Adapting circuits to the bike.

use layshaft_core::error::Refusal;
use layshaft_core::harness::{change_id, check_harness, circuit_of};
use layshaft_core::record::Bike;

use super::changed;
use crate::Bench;
use crate::act::{Act, Call};
use crate::command::AdaptCircuit;
use crate::write::Writing;

impl Act for AdaptCircuit {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        bench.open_bike_id()?;
        let id = change_id(&self.circuit, &self.element);
        // What the change makes of the circuit must be workable; what is odd about it is a finding of the page.
        let mut tried = Bike { circuits: bench.bike.circuits.clone(), ..bench.bike.clone() };
        tried.circuits.insert(id.clone(), self.change.clone());
        check_harness(&circuit_of(&tried, &self.circuit)?)?;
        Ok(Writing::of(changed(bench, &id, &self.change)))
    }
}
