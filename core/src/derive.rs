//! `derive()`: every quantity of the trade, computed once from a spec, each with its judgement.
//!
//! A new area takes part in ripple and readiness by adding its line here.

use crate::quantity::Derived;
use crate::record::{Bike, Spec};
use crate::{brakes, electrical, gearing, harness, tyres};

/// Everything that can be computed from a spec of this bike. What lacks a value is absent, never guessed.
pub fn derive(bike: &Bike, spec: &Spec) -> Derived {
    let mut derived = Derived::default();
    let gearing = gearing::derive_gearing(bike, spec);
    let top = gearing.0.iter().find(|quantity| quantity.id == "speed.top").map(|quantity| quantity.value);
    for (quantities, findings) in [
        gearing,
        electrical::derive_electrical(bike, spec),
        harness::derive_indicators(bike, spec),
        brakes::derive_brakes(bike, spec),
        tyres::derive_tyres(bike, spec, top),
    ] {
        derived.quantities.extend(quantities);
        derived.findings.extend(findings);
    }
    derived
}
