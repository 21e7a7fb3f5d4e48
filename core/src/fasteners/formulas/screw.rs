//! The formulas of screws and threads by name.

use super::engagement::engagement_length;
use super::identify::identify;
use super::strength::{PropertyClass, screw_load};
use super::thread::{core_diameter, flank_diameter, stress_area};
use super::torque::{Seat, nut_factor_torque, preload_from_torque, tighten};
use crate::bounds;
use crate::error::Refused;
use crate::fasteners::message::{ScrewMessage, ThreadMessage};
use crate::quantity::{Accepts, FormulaSource, Source, Standing, formula, within};
use crate::units::Unit;

/// Share of the diameter that must be left as core; below it there is no such screw.
const LEAST_CORE: f64 = 0.5;

/// Diameter and pitch that make a screw, both in millimetres.
fn size(diameter_mm: f64, pitch_mm: f64) -> Result<(f64, f64), Refused> {
    if core_diameter(diameter_mm, pitch_mm) < LEAST_CORE * diameter_mm {
        return Err(Refused::Conflict {
            field: "pitchMm".to_owned(),
            reason: ThreadMessage::NoCore {
                pitch: Unit::Millimetre.of(pitch_mm),
                diameter: Unit::Millimetre.of(diameter_mm),
            }
            .into(),
        });
    }
    Ok((diameter_mm, pitch_mm))
}

/// Source of areas and classes.
fn classes() -> Source {
    Source::new(ScrewMessage::SourceClasses, Standing::SecondHand)
}

/// Source of preload and torque.
fn assembly() -> Source {
    Source::new(ScrewMessage::SourceAssembly, Standing::SecondHand)
}

formula! {
    /// Stress area and diameters of a thread.
    StressArea in Fasteners, "A = π/4 · ((d₂ + d₃) / 2)², d₂ = d − 0.64952 · P, d₃ = d − 1.22687 · P"
    takes {
        /// Nominal diameter, millimetres.
        "d" diameter_mm: f64 = within(&bounds::THREAD_DIAMETER);
        /// Pitch, millimetres.
        "P" pitch_mm: f64 = within(&bounds::THREAD_PITCH);
    }
    gives {
        /// Stress area.
        stress_area "A" SquareMillimetre;
        /// Flank diameter.
        flank_diameter "d₂" Millimetre;
        /// Core diameter.
        core_diameter "d₃" Millimetre;
    }
    from classes();
    it => size(it.diameter_mm, it.pitch_mm).map(|(d, p)| [stress_area(d, p), flank_diameter(d, p), core_diameter(d, p)])
}

formula! {
    /// Proof load and breaking load of a screw.
    ScrewLoads in Fasteners, "F = A · S"
    takes {
        /// Nominal diameter, millimetres.
        "d" diameter_mm: f64 = within(&bounds::THREAD_DIAMETER);
        /// Pitch, millimetres.
        "P" pitch_mm: f64 = within(&bounds::THREAD_PITCH);
        /// Property class, as 8.8.
        "class" property_class: String = Accepts::Text;
    }
    gives {
        /// Proof load.
        proof_load "F_p" Newton;
        /// Breaking load.
        breaking_load "F_m" Newton;
    }
    from classes();
    it => size(it.diameter_mm, it.pitch_mm).and_then(|(d, p)| {
        let class = PropertyClass::read(&it.property_class)?;
        let area = stress_area(d, p);
        Ok([screw_load(area, class.proof(d)), screw_load(area, class.tensile(d))])
    })
}

formula! {
    /// Preload and torque of a screw at 90 % of its yield, hexagon head.
    TighteningTorque in Fasteners, "M = F · (0.16 · P + d₂ · 0.58 · μ + D_K / 2 · μ) / 1000"
    takes {
        /// Nominal diameter, millimetres.
        "d" diameter_mm: f64 = within(&bounds::THREAD_DIAMETER);
        /// Pitch, millimetres.
        "P" pitch_mm: f64 = within(&bounds::THREAD_PITCH);
        /// Property class, as 8.8.
        "class" property_class: String = Accepts::Text;
        /// Friction of thread and head.
        "μ" friction: f64 = within(&bounds::THREAD_FRICTION);
    }
    gives {
        /// Torque.
        torque "M" NewtonMetre;
        /// Preload.
        preload "F" Newton;
    }
    from assembly();
    it => size(it.diameter_mm, it.pitch_mm).and_then(|size| {
        let class = PropertyClass::read(&it.property_class)?;
        let (preload, torque) = tighten(size, &class, &Seat::of(it.diameter_mm)?, it.friction);
        Ok([torque, preload])
    })
}

formula! {
    /// Preload that a torque gives, hexagon head.
    PreloadFromTorque in Fasteners, "F = 1000 · M / (0.16 · P + d₂ · 0.58 · μ + D_K / 2 · μ)"
    takes {
        /// Nominal diameter, millimetres.
        "d" diameter_mm: f64 = within(&bounds::THREAD_DIAMETER);
        /// Pitch, millimetres.
        "P" pitch_mm: f64 = within(&bounds::THREAD_PITCH);
        /// Torque, newton metres.
        "M" torque_nm: f64 = within(&bounds::TORQUE);
        /// Friction of thread and head.
        "μ" friction: f64 = within(&bounds::THREAD_FRICTION);
    }
    gives {
        /// Preload.
        preload "F" Newton;
    }
    from assembly();
    it => size(it.diameter_mm, it.pitch_mm).and_then(|size| {
        let seat = Seat::of(it.diameter_mm)?;
        Ok([preload_from_torque(it.torque_nm, size, &seat, it.friction, it.friction)])
    })
}

formula! {
    /// Torque by the nut factor for a share of the proof load.
    NutFactorTorque in Fasteners, "T = K · d · F / 1000, F = s / 100 · F_p"
    takes {
        /// Nominal diameter, millimetres.
        "d" diameter_mm: f64 = within(&bounds::THREAD_DIAMETER);
        /// Pitch, millimetres.
        "P" pitch_mm: f64 = within(&bounds::THREAD_PITCH);
        /// Property class, as 8.8.
        "class" property_class: String = Accepts::Text;
        /// Nut factor.
        "K" nut_factor: f64 = within(&bounds::NUT_FACTOR);
        /// Share of the proof load, per cent.
        "s" share_percent: f64 = within(&bounds::PRELOAD_SHARE);
    }
    gives {
        /// Torque.
        torque "T" NewtonMetre;
    }
    from Source::new(FormulaSource::NutFactor, Standing::Memory);
    it => size(it.diameter_mm, it.pitch_mm).and_then(|(d, p)| {
        let proof = screw_load(stress_area(d, p), PropertyClass::read(&it.property_class)?.proof(d));
        Ok([nut_factor_torque(it.nut_factor, d, it.share_percent / 100.0 * proof)])
    })
}

formula! {
    /// Thread engaged so that the screw breaks before the tapped thread strips.
    ThreadEngagement in Fasteners, "L = F / (π · n · d · (1 / (2 · n) + 0.57735 · (d − E)) · τ), n = 1 / P"
    takes {
        /// Load of the screw, newtons.
        "F" load_newtons: f64 = within(&bounds::SCREW_LOAD);
        /// Pitch, millimetres.
        "P" pitch_mm: f64 = within(&bounds::THREAD_PITCH);
        /// Outer diameter of the screw, millimetres.
        "d" diameter_mm: f64 = within(&bounds::THREAD_DIAMETER);
        /// Flank diameter of the nut thread, millimetres.
        "E" nut_flank_mm: f64 = within(&bounds::THREAD_DIAMETER);
        /// Shear strength of the tapped material, megapascals.
        "τ" shear_mpa: f64 = within(&bounds::SHEAR_STRENGTH);
    }
    gives {
        /// Thread engaged.
        engagement "L" Millimetre;
    }
    from Source::new(FormulaSource::ThreadShear, Standing::SecondHand);
    it => size(it.diameter_mm, it.pitch_mm).and_then(|(d, p)| {
        if it.nut_flank_mm >= d {
            let (flank, diameter) = (Unit::Millimetre.of(it.nut_flank_mm), Unit::Millimetre.of(d));
            let reason = ThreadMessage::NutTooWide { flank, diameter };
            return Err(Refused::Conflict { field: "nutFlankMm".to_owned(), reason: reason.into() });
        }
        Ok([engagement_length(it.load_newtons, p, d, it.nut_flank_mm, it.shear_mpa)])
    })
}

formula! {
    /// Which thread a measured diameter and pitch is nearest to.
    IdentifyThread in Fasteners, "nearest row of the tables within what a screw may measure off"
    takes {
        /// Measured outer diameter, millimetres.
        "d" diameter_mm: f64 = within(&bounds::THREAD_DIAMETER);
        /// Measured pitch, millimetres.
        "P" pitch_mm: f64 = within(&bounds::THREAD_PITCH);
    }
    gives {
        /// Threads that fit.
        likely "n" None;
        /// Nominal diameter of the nearest.
        nominal_diameter "d" Millimetre;
        /// Nominal pitch of the nearest.
        nominal_pitch "P" Millimetre;
        /// Turns per inch of the nearest.
        turns_per_inch "n" TurnsInch;
        /// Flank angle of the nearest.
        flank_degrees "β" Degree;
        /// Threads that it could be taken for.
        neighbours "n" None;
    }
    from Source::new(FormulaSource::ThreadStandards, Standing::Memory);
    it => {
        let found = identify(it.diameter_mm, it.pitch_mm);
        let nearest = found.likely.first();
        Ok([
            Some(found.likely.len() as f64),
            nearest.map(|thread| thread.diameter_mm),
            nearest.map(|thread| thread.pitch_mm),
            nearest.map(|thread| thread.turns_per_inch),
            nearest.map(|thread| thread.flank_degrees),
            Some(found.neighbours.len() as f64),
        ])
    }
}
