//! Tightening, step by step: what a stress means as a load, preload at the yield, torque of a preload, rules of engagement.

use super::engagement::engaged_by_rule;
use super::strength::screw_load;
use super::thread::{flank_diameter, stress_area};
use super::torque::{Seat, assembly_preload, tightening_torque, torsion};
use crate::bounds;
use crate::fasteners::message::ScrewMessage;
use crate::quantity::{Accepts, FormulaSource, Source, Standing, formula, within};

fn assembly() -> Source {
    Source::new(ScrewMessage::SourceAssembly, Standing::SecondHand)
}

formula! {
    /// Load of a stress in a screw.
    ScrewLoad in Fasteners, "F = A · S"
    takes {
        /// Stress area, mm².
        "A" stress_area_mm2: f64 = within(&bounds::STRESS_AREA);
        /// Stress, MPa.
        "S" stress_mpa: f64 = within(&bounds::STRESS);
    }
    gives {
        /// Load.
        load "F" Newton;
    }
    from Source::new(FormulaSource::Stress, Standing::Computed);
    it => Ok([screw_load(it.stress_area_mm2, it.stress_mpa)])
}

formula! {
    /// Preload that uses nine tenths of the yield, torsion counted in.
    AssemblyPreload in Fasteners, "F = 0.9 · R · A₀ / √(1 + 3 · k²), k = 1.5 · d₂ / d₀ · (P / (π · d₂) + 1.155 · μ), A₀ = π · d₀² / 4, d₀ = (d₂ + d₃) / 2, d₂ = d − 0.64952 · P, d₃ = d − 1.22687 · P"
    takes {
        /// Nominal diameter, millimetres.
        "d" diameter_mm: f64 = within(&bounds::THREAD_DIAMETER);
        /// Pitch, millimetres.
        "P" pitch_mm: f64 = within(&bounds::THREAD_PITCH);
        /// Yield, MPa.
        "R" stress_mpa: f64 = within(&bounds::STRESS);
        /// Friction of the thread.
        "μ" friction: f64 = within(&bounds::THREAD_FRICTION);
    }
    gives {
        /// Preload.
        preload "F" Newton;
        /// Stress area.
        stress_area "A₀" SquareMillimetre;
        /// Torsion over tension.
        torsion "k" None;
    }
    from assembly();
    it => {
        let (d, p) = (it.diameter_mm, it.pitch_mm);
        Ok([assembly_preload(d, p, it.stress_mpa, it.friction), stress_area(d, p), torsion(d, p, it.friction)])
    }
}

formula! {
    /// Torque of a preload.
    PreloadTorque in Fasteners, "M = F · (0.16 · P + 0.58 · d₂ · μ + (d_K + d_h) / 4 · μ) / 1000, d₂ = d − 0.64952 · P"
    takes {
        /// Preload, newtons.
        "F" load_newtons: f64 = within(&bounds::SCREW_LOAD);
        /// Nominal diameter, millimetres.
        "d" diameter_mm: f64 = within(&bounds::THREAD_DIAMETER);
        /// Pitch, millimetres.
        "P" pitch_mm: f64 = within(&bounds::THREAD_PITCH);
        /// Outer diameter of the seat under the head, millimetres.
        "d_K" bearing_mm: f64 = within(&bounds::SEAT_DIAMETER);
        /// Clearance hole, millimetres.
        "d_h" hole_mm: f64 = within(&bounds::HOLE_DIAMETER);
        /// Friction of thread and head.
        "μ" friction: f64 = within(&bounds::THREAD_FRICTION);
    }
    gives {
        /// Torque.
        torque "M" NewtonMetre;
        /// Flank diameter.
        flank_diameter "d₂" Millimetre;
    }
    from assembly();
    it => {
        let (size, seat) = ((it.diameter_mm, it.pitch_mm), Seat { bearing_mm: it.bearing_mm, hole_mm: it.hole_mm });
        Ok([tightening_torque(it.load_newtons, size, &seat, it.friction, it.friction), flank_diameter(size.0, size.1)])
    }
}

formula! {
    /// Thread engaged by a rule in diameters.
    EngagementRule in Fasteners, "L = k · d · (1 + f / 4)"
    takes {
        /// Diameters that the rule asks for.
        "k" diameters: f64 = within(&bounds::ENGAGED_DIAMETERS);
        /// Nominal diameter, millimetres.
        "d" diameter_mm: f64 = within(&bounds::THREAD_DIAMETER);
        /// Fine thread.
        "f" fine: bool = Accepts::YesOrNo;
    }
    gives {
        /// Thread engaged.
        engagement "L" Millimetre;
    }
    from Source::new(FormulaSource::HandbookRules, Standing::SecondHand);
    it => Ok([engaged_by_rule(it.diameters, it.diameter_mm, it.fine)])
}
