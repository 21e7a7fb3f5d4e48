//! The working of the fastener page.

use super::ask::{EngagementAdvice, ScrewStrength, TorqueBand};
use crate::fasteners::formulas::{StressArea, ThreadMatch, flank_diameter};
use crate::quantity::{Line, Source, Standing, WorkLine, Working};
use crate::units::Unit;

/// How the page was worked out.
pub(crate) fn working(
    thread: Option<&ThreadMatch>,
    strength: Option<&ScrewStrength>,
    torque: Option<&TorqueBand>,
    engagement: Option<&EngagementAdvice>,
) -> Working {
    let mut lines = Vec::new();
    let mut sources = vec![Source::new(
        "Threads: ISO 261/262, JIS, ASME B1.1, BS 84, BS 811; how much a screw may measure off is common practice",
        Standing::Memory,
    )];
    if let Some(thread) = thread {
        let (d, p) = (thread.diameter_mm, thread.pitch_mm);
        let flank = format!("{d:.3} − 0.64952 × {p:.4}");
        lines.push(WorkLine::new("Flank diameter", flank, flank_diameter(d, p), Unit::Millimetre));
    }
    if let (Some(thread), Some(strength)) = (thread, strength) {
        lines.extend(on_strength(thread, strength));
        sources.push(Source::new(
            "Stress area and classes: ISO 898-1, confirmed by the tables at engineersedge.com, optimas.com and usefastener.com",
            Standing::SecondHand,
        ));
    }
    if let Some(band) = torque {
        lines.extend(on_torque(band));
        sources.push(Source::new(
            "VDI 2230, 90 % of yield, medium holes; proved against the rows at mastik.pt, page 685, and bossard.com",
            Standing::SecondHand,
        ));
        sources.push(Source::new("Friction of thread and head: common practice, no source", Standing::CommonPractice));
    }
    if let Some(advice) = engagement {
        lines.push(WorkLine::new(
            "Thread engaged, shorter rule",
            format!("{:?} × diameter (× 1.25 for a fine thread)", advice.tapped_into.diameters().0),
            advice.least_mm,
            Unit::Millimetre,
        ));
        lines.extend(advice.screw_breaks_first_mm.map(|mm| {
            let equation = "F / (π / P × d × [P/2 + 0.57735 × (d − d₂)] × τ), F the load that breaks the screw";
            WorkLine::new("Thread engaged so that the screw breaks first", equation, mm, Unit::Millimetre)
        }));
        sources.push(Source::new(
            "Engagement: FED-STD-H28 form and handbook rules in excerpt, which disagree (1.2 to 2.5 diameters in aluminium)",
            Standing::SecondHand,
        ));
    }
    Working {
        lines,
        sources,
        range:
            "60° threads, clean and whole; torque by a wrench that is right. The maker's figure wins over all of this."
                .to_owned(),
    }
}

fn on_strength(thread: &ThreadMatch, strength: &ScrewStrength) -> Vec<WorkLine> {
    let stressed = StressArea { diameter_mm: thread.diameter_mm, pitch_mm: thread.pitch_mm };
    let area = strength.stress_area_mm2;
    let mut lines = Vec::from_iter(stressed.line("Stress area"));
    lines.extend([
        WorkLine::new(
            "Proof load",
            format!("{area:.2} mm² × {:.0} MPa", strength.proof_newtons / area),
            strength.proof_newtons,
            Unit::Newton,
        ),
        WorkLine::new(
            "Load at which it breaks",
            format!("{area:.2} mm² × {:.0} MPa", strength.tensile_newtons / area),
            strength.tensile_newtons,
            Unit::Newton,
        ),
    ]);
    lines
}

fn on_torque(band: &TorqueBand) -> Vec<WorkLine> {
    [(&band.least, "least"), (&band.middle, "middle"), (&band.most, "greatest")]
        .into_iter()
        .flat_map(|(point, which)| {
            let friction = point.friction;
            [
                WorkLine::new(
                    &format!("Preload at the {which} friction"),
                    format!("0.9 × yield × A₀ / √(1 + 3 k²), μ = {friction:.2} ({})", band.lubrication.words()),
                    point.preload_newtons,
                    Unit::Newton,
                ),
                WorkLine::new(
                    &format!("Torque at the {which} friction"),
                    format!("{:.0} N × (0.16 P + (0.58 d₂ + D_Km/2) × {friction:.2})", point.preload_newtons),
                    point.torque_nm,
                    Unit::NewtonMetre,
                ),
            ]
        })
        .collect()
}
