//! Where the figures of the harness come from, each with its standing.

use crate::quantity::{Source, Standing};

/// What the harness is computed with.
pub fn harness_sources() -> Vec<Source> {
    vec![
        Source::new(
            "Operating point: nodal analysis with damped Newton steps; every source carries its own resistance",
            Standing::Computed,
        ),
        Source::new(
            "Filament current I ~ V^0.55 and light ~ V^3.4: Fink and Beaty, Standard Handbook for Electrical Engineers, 11th \
             edition, page 22-8, as restated elsewhere",
            Standing::SecondHand,
        ),
        Source::new(
            "A cold filament has about a tenth of its hot resistance (kfz-tech.de “Glühlampe”); a twelfth is taken here",
            Standing::SecondHand,
        ),
        Source::new(
            "A fuse blows from 135 % of its rating: ISO 8820-3 as restated in data sheets",
            Standing::SecondHand,
        ),
        Source::new(
            "Resistances of joints and contacts, batteries, starters and solenoids in the templates: typical values, common \
             practice; measure your own",
            Standing::CommonPractice,
        ),
    ]
}
