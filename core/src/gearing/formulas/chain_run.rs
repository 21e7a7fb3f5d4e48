//! The formulas of the chain by name: length, centre distance, pitch circles, which link meets which tooth.

use super::chain::{
    centre_distance, chain_length, common_divisor, next_even, pitch_diameter, turns_until_same_link,
    worn_centre_distance,
};
use super::chain_size::{chain_dimensions, chain_size_named, chain_size_source};
use super::sources::{geometry, wear_source};
use super::wear::{elongation, worn_length};
use crate::bounds;
use crate::gearing::message::GearingSource;
use crate::quantity::{Accepts, Source, Standing, formula, within};

formula! {
    /// Links that a chain needs at a centre distance.
    ChainLength in Drive, "X = 2 · C / p · cos(α) + (z_f + z_r) / 2 + |z_r − z_f| · α / π, α = arcsin(|z_r − z_f| / (2 · π · C / p))"
    takes {
        /// Teeth of the gearbox sprocket.
        "z_f" front_teeth: u32 = within(&bounds::FRONT_TEETH);
        /// Teeth of the wheel sprocket.
        "z_r" rear_teeth: u32 = within(&bounds::REAR_TEETH);
        /// Centre distance, millimetres.
        "C" centre_distance_mm: f64 = within(&bounds::CENTRE_DISTANCE);
        /// Pitch, millimetres.
        "p" pitch_mm: f64 = within(&bounds::PITCH);
    }
    gives {
        /// Links, exact.
        links "X" Links;
        /// Next even count.
        next_even "n" Links;
    }
    from geometry();
    it => chain_length(it.front_teeth, it.rear_teeth, it.centre_distance_mm, it.pitch_mm)
        .map(|links| [links, f64::from(next_even(links))])
}

formula! {
    /// Centre distance that a count of links gives.
    CentreDistance in Drive, "C : 2 · C / p · cos(α) + (z_f + z_r) / 2 + |z_r − z_f| · α / π = X, α = arcsin(|z_r − z_f| / (2 · π · C / p))"
    takes {
        /// Teeth of the gearbox sprocket.
        "z_f" front_teeth: u32 = within(&bounds::FRONT_TEETH);
        /// Teeth of the wheel sprocket.
        "z_r" rear_teeth: u32 = within(&bounds::REAR_TEETH);
        /// Links.
        "X" chain_links: u32 = within(&bounds::CHAIN_LINKS);
        /// Pitch, millimetres.
        "p" pitch_mm: f64 = within(&bounds::PITCH);
    }
    gives {
        /// Centre distance.
        centre_distance "C" Millimetre;
    }
    from geometry();
    it => centre_distance(it.front_teeth, it.rear_teeth, it.chain_links, it.pitch_mm).map(|mm| [mm])
}

formula! {
    /// Centre distance that a worn chain gives.
    WornCentreDistance in Drive, "C : 2 · C / p · cos(α) + (z_f + z_r) / 2 + |z_r − z_f| · α / π = X · (1 + e / 100), α = arcsin(|z_r − z_f| / (2 · π · C / p))"
    takes {
        /// Teeth of the gearbox sprocket.
        "z_f" front_teeth: u32 = within(&bounds::FRONT_TEETH);
        /// Teeth of the wheel sprocket.
        "z_r" rear_teeth: u32 = within(&bounds::REAR_TEETH);
        /// Links.
        "X" chain_links: u32 = within(&bounds::CHAIN_LINKS);
        /// Pitch, millimetres.
        "p" pitch_mm: f64 = within(&bounds::PITCH);
        /// Elongation, per cent.
        "e" elongation_percent: f64 = within(&bounds::ELONGATION);
    }
    gives {
        /// Centre distance.
        centre_distance "C" Millimetre;
    }
    from geometry();
    it => worn_centre_distance(it.front_teeth, it.rear_teeth, it.chain_links, it.pitch_mm, it.elongation_percent)
        .map(|mm| [mm])
}

formula! {
    /// Pitch diameter of a sprocket.
    PitchDiameter in Drive, "d = p / sin(π / z)"
    takes {
        /// Teeth.
        "z" teeth: u32 = within(&bounds::SPROCKET_TEETH);
        /// Pitch, millimetres.
        "p" pitch_mm: f64 = within(&bounds::PITCH);
    }
    gives {
        /// Pitch diameter.
        pitch_diameter "d" Millimetre;
    }
    from Source::new(GearingSource::PitchCircle, Standing::SecondHand);
    it => Ok([pitch_diameter(it.teeth, it.pitch_mm)])
}

formula! {
    /// How often the same tooth meets the same link.
    HuntingTooth in Drive, "turns = X / gcd(z, X)"
    takes {
        /// Teeth.
        "z" teeth: u32 = within(&bounds::SPROCKET_TEETH);
        /// Links.
        "X" chain_links: u32 = within(&bounds::CHAIN_LINKS);
    }
    gives {
        /// Turns of the sprocket until the same link is met.
        turns "turns" None;
        /// Greatest common divisor.
        divisor "gcd(z, X)" None;
        /// Turns of the chain meanwhile.
        chain_loops "z / gcd(z, X)" None;
    }
    from Source::new(GearingSource::Hunting, Standing::SecondHand);
    it => {
        let divisor = f64::from(common_divisor(it.teeth, it.chain_links));
        let turns = turns_until_same_link(it.teeth, it.chain_links);
        Ok([f64::from(turns), divisor, f64::from(it.teeth) / divisor])
    }
}

formula! {
    /// Dimensions of a chain size.
    ChainSizeDimensions in Drive, "by table"
    takes {
        /// Size as written on the chain.
        "size" chain_size: String = Accepts::Text;
    }
    gives {
        /// Pitch.
        pitch "p" Millimetre;
        /// Width between the inner plates.
        inner_width "b₁" Millimetre;
        /// Roller diameter.
        roller "d₁" Millimetre;
    }
    from chain_size_source();
    it => chain_size_named("chainSize", &it.chain_size)
        .map(chain_dimensions)
        .map(|of| [of.pitch_mm, of.inner_width_mm, of.roller_mm])
}

formula! {
    /// Elongation of a chain from a measured length.
    ChainElongation in Drive, "e = (L / (n · p) − 1) · 100"
    takes {
        /// Length over these pitches, millimetres.
        "L" measured_mm: f64 = within(&bounds::MEASURED_CHAIN);
        /// Pitches that it goes over.
        "n" pitches: u32 = within(&bounds::PITCHES);
        /// Pitch, millimetres.
        "p" pitch_mm: f64 = within(&bounds::PITCH);
    }
    gives {
        /// Elongation.
        elongation "e" Percent;
    }
    from wear_source();
    it => Ok([elongation(it.measured_mm, it.pitches, it.pitch_mm)])
}

formula! {
    /// Length of a worn chain over some pitches.
    WornLength in Drive, "L = n · p · (1 + e / 100)"
    takes {
        /// Pitches.
        "n" pitches: u32 = within(&bounds::PITCHES);
        /// Pitch, millimetres.
        "p" pitch_mm: f64 = within(&bounds::PITCH);
        /// Elongation, per cent.
        "e" elongation_percent: f64 = within(&bounds::ELONGATION);
    }
    gives {
        /// Length.
        length "L" Millimetre;
    }
    from wear_source();
    it => Ok([worn_length(it.pitches, it.pitch_mm, it.elongation_percent)])
}
