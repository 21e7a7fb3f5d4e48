//! What a chain leaves of the adjuster.

use super::sources::geometry;
use crate::bounds;
use crate::quantity::{formula, within};

/// Share of the adjuster that a centre distance uses, per cent: `u = (C − C₁) / (C₂ − C₁) · 100`.
///
/// ```
/// assert_eq!(layshaft_core::gearing::adjuster_used(560.0, 550.0, 570.0), 50.0);
/// ```
pub fn adjuster_used(mm: f64, from_mm: f64, to_mm: f64) -> f64 {
    (mm - from_mm) / (to_mm - from_mm) * 100.0
}

/// Length of chain that is free, mm; below zero it is missing: `L = (X − X₁) · p`.
///
/// ```
/// assert!((layshaft_core::gearing::free_chain(116, 114.5, 12.7) - 19.05).abs() < 1e-9);
/// ```
pub fn free_chain(links: u32, needed: f64, pitch_mm: f64) -> f64 {
    (f64::from(links) - needed) * pitch_mm
}

formula! {
    /// Share of the adjuster that is used.
    AdjusterUsed in Drive, "u = (C − C₁) / (C₂ − C₁) · 100"
    takes {
        /// Centre distance, millimetres.
        "C" centre_distance_mm: f64 = within(&bounds::CENTRE_DISTANCE);
        /// Least centre distance, millimetres.
        "C₁" adjuster_from_mm: f64 = within(&bounds::CENTRE_DISTANCE);
        /// Greatest centre distance, millimetres.
        "C₂" adjuster_to_mm: f64 = within(&bounds::CENTRE_DISTANCE);
    }
    gives {
        /// Adjuster travel used.
        used "u" Percent;
    }
    from geometry();
    it => Ok([adjuster_used(it.centre_distance_mm, it.adjuster_from_mm, it.adjuster_to_mm)])
}

formula! {
    /// Length of chain that is free.
    FreeChain in Drive, "L = (X − X₁) · p"
    takes {
        /// Links.
        "X" chain_links: u32 = within(&bounds::CHAIN_LINKS);
        /// Links that the sprockets ask for there.
        "X₁" links_exact: f64 = within(&bounds::CHAIN_LINKS);
        /// Pitch, millimetres.
        "p" pitch_mm: f64 = within(&bounds::PITCH);
    }
    gives {
        /// Free chain.
        free "L" Millimetre;
    }
    from geometry();
    it => Ok([free_chain(it.chain_links, it.links_exact, it.pitch_mm)])
}
