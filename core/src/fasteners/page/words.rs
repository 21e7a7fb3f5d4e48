//! The working of the fastener page.

use super::ask::{EngagementAdvice, ScrewStrength, TorqueBand, TorquePoint};
use super::message::FastenersWorking;
use crate::fasteners::formulas::{
    AssemblyPreload, EngagementRule, PreloadTorque, PropertyClass, ScrewLoad, Seat, StressArea, ThreadEngagement,
    ThreadMatch, flank_diameter,
};
use crate::fasteners::message::{ScrewMessage, ThreadMessage};
use crate::quantity::{Line, Source, Standing, WorkLine, Working};
use crate::units::Unit;

/// The screw that is worked out.
pub(crate) struct Screw<'a> {
    /// Thread.
    pub(crate) thread: &'a ThreadMatch,
    /// Property class.
    pub(crate) class: Option<PropertyClass>,
    /// Seat under the head.
    pub(crate) seat: Option<Seat>,
    /// Shear strength of what it goes into, MPa.
    pub(crate) shear_mpa: Option<f64>,
}

/// How the page was worked out.
pub(crate) fn working(
    screw: Option<&Screw>,
    strength: Option<&ScrewStrength>,
    torque: Option<&TorqueBand>,
    engagement: Option<&EngagementAdvice>,
) -> Working {
    let mut lines = Vec::new();
    let mut sources = vec![Source::new(ThreadMessage::Source, Standing::Memory)];
    if let Some(screw) = screw {
        let stressed = StressArea { diameter_mm: screw.thread.diameter_mm, pitch_mm: screw.thread.pitch_mm };
        lines.extend(stressed.line_of("flank_diameter", FastenersWorking::FlankDiameter));
    }
    if let (Some(screw), Some(strength)) = (screw, strength) {
        lines.extend(on_strength(screw, strength));
        sources.push(Source::new(ScrewMessage::SourceStrength, Standing::SecondHand));
    }
    if let (Some(screw), Some(band)) = (screw, torque) {
        lines.extend(on_torque(screw, band));
        sources.push(Source::new(ScrewMessage::SourceTorque, Standing::SecondHand));
        sources.push(Source::new(ScrewMessage::SourceFriction, Standing::CommonPractice));
    }
    if let (Some(screw), Some(advice)) = (screw, engagement) {
        lines.extend(on_engagement(screw, strength, advice));
        sources.push(Source::new(ScrewMessage::SourceEngagement, Standing::SecondHand));
    }
    Working { lines, sources, range: ScrewMessage::Range.into() }
}

fn on_strength(screw: &Screw, strength: &ScrewStrength) -> Vec<WorkLine> {
    let (diameter_mm, stress_area_mm2) = (screw.thread.diameter_mm, strength.stress_area_mm2);
    let load = |stress_mpa| ScrewLoad { stress_area_mm2, stress_mpa };
    let lines = [
        StressArea { diameter_mm, pitch_mm: screw.thread.pitch_mm }.line(FastenersWorking::StressArea),
        screw.class.and_then(|class| load(class.proof(diameter_mm)).line(FastenersWorking::ProofLoad)),
        screw.class.and_then(|class| load(class.tensile(diameter_mm)).line(FastenersWorking::BreakingLoad)),
    ];
    lines.into_iter().flatten().collect()
}

fn on_torque(screw: &Screw, band: &TorqueBand) -> Vec<WorkLine> {
    let (Some(class), Some(seat)) = (screw.class, screw.seat) else { return Vec::new() };
    let (diameter_mm, pitch_mm) = (screw.thread.diameter_mm, screw.thread.pitch_mm);
    let lubrication = band.lubrication;
    let lines = |point: &TorquePoint, preload_label: FastenersWorking, torque_label: FastenersWorking| {
        let friction = point.friction;
        let preload = AssemblyPreload { diameter_mm, pitch_mm, stress_mpa: class.yields(diameter_mm), friction };
        let torque = PreloadTorque {
            load_newtons: point.preload_newtons,
            diameter_mm,
            pitch_mm,
            bearing_mm: seat.bearing_mm,
            hole_mm: seat.hole_mm,
            friction,
        };
        [preload.line(preload_label), torque.line(torque_label)]
    };
    let friction = |point: &TorquePoint| Unit::None.of(point.friction);
    let (least, middle, most) = (friction(&band.least), friction(&band.middle), friction(&band.most));
    let lines = [
        lines(
            &band.least,
            FastenersWorking::PreloadLeast { friction: least, lubrication },
            FastenersWorking::TorqueLeast { friction: least, lubrication },
        ),
        lines(
            &band.middle,
            FastenersWorking::PreloadMiddle { friction: middle, lubrication },
            FastenersWorking::TorqueMiddle { friction: middle, lubrication },
        ),
        lines(
            &band.most,
            FastenersWorking::PreloadMost { friction: most, lubrication },
            FastenersWorking::TorqueMost { friction: most, lubrication },
        ),
    ];
    lines.into_iter().flatten().flatten().collect()
}

fn on_engagement(screw: &Screw, strength: Option<&ScrewStrength>, advice: &EngagementAdvice) -> Vec<WorkLine> {
    let (diameter_mm, pitch_mm) = (screw.thread.diameter_mm, screw.thread.pitch_mm);
    let (diameters, _) = advice.tapped_into.diameters();
    let rule = EngagementRule { diameters, diameter_mm, fine: screw.thread.family.is_fine() };
    let breaks = strength.zip(screw.shear_mpa).and_then(|(strength, shear_mpa)| {
        let nut_flank_mm = flank_diameter(diameter_mm, pitch_mm);
        let load_newtons = strength.tensile_newtons;
        ThreadEngagement { load_newtons, pitch_mm, diameter_mm, nut_flank_mm, shear_mpa }
            .line(FastenersWorking::ScrewBreaksFirst)
    });
    [rule.line(FastenersWorking::EngagementRule), breaks].into_iter().flatten().collect()
}
