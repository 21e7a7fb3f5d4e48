//! A brake, disc or drum.

use layshaft_wire::wire;

use super::fluid_grade::FluidGrade;
use crate::bounds;
use crate::error::Refused;
use crate::message::FieldMessage;

/// Kind of brake.
#[wire(stored)]
pub enum BrakeKind {
    /// Hydraulic disc.
    Disc,
    /// Drum by rod or cable.
    Drum,
}

/// A brake.
#[wire(lenient, stored)]
pub struct Brake {
    /// Kind.
    pub brake: Option<BrakeKind>,
    /// Disc or drum diameter, millimetres.
    pub rotor_mm: Option<f64>,
    /// Bore of the master cylinder, millimetres.
    pub master_mm: Option<f64>,
    /// Lever ratio: lever travel at the fingers for one millimetre at the piston.
    pub lever_ratio: Option<f64>,
    /// Pistons that press on one side of the disc.
    pub pistons: Option<u32>,
    /// Diameter of one piston, millimetres.
    pub piston_mm: Option<f64>,
    /// Pistons face each other in a fixed caliper; else the caliper slides.
    pub opposed: Option<bool>,
    /// Friction of the linings against disc or drum.
    pub pad_friction: Option<f64>,
    /// Distance from the axle at which the pads act, millimetres.
    pub effective_radius_mm: Option<f64>,
    /// Running clearance of one pad, millimetres.
    pub pad_clearance_mm: Option<f64>,
    /// Length of the hose (and pipe), millimetres.
    pub hose_mm: Option<f64>,
    /// Swelling of one metre of that hose at 69 bar, millilitres.
    pub hose_swell_ml_m: Option<f64>,
    /// Grade of the fluid.
    pub fluid: Option<FluidGrade>,
    /// Drum: length of the cam lever from the cam to the rod, millimetres.
    pub cam_arm_mm: Option<f64>,
    /// Drum: angle between rod and cam lever at rest, degrees; below 90 before the lever stands square to the rod.
    pub cam_degrees: Option<f64>,
    /// Drum: both shoes lead (two cams); else one leads and one trails.
    pub twin_leading: Option<bool>,
}

impl Brake {
    /// The brake, or the first field that cannot be accepted.
    pub fn checked(self) -> Result<Self, Refused> {
        let rotor = if self.brake == Some(BrakeKind::Drum) { bounds::DRUM } else { bounds::DISC };
        rotor.of("rotorMm").check_known(self.rotor_mm)?;
        bounds::BORE.named("masterMm", FieldMessage::BoreOfTheMasterCylinder).check_known(self.master_mm)?;
        bounds::LEVER_RATIO.check_known(self.lever_ratio)?;
        bounds::PISTONS.check_known(self.pistons.map(f64::from))?;
        bounds::BORE.named("pistonMm", FieldMessage::Piston).check_known(self.piston_mm)?;
        bounds::PAD_FRICTION.check_known(self.pad_friction)?;
        bounds::EFFECTIVE_RADIUS.check_known(self.effective_radius_mm)?;
        bounds::PAD_CLEARANCE.check_known(self.pad_clearance_mm)?;
        bounds::HOSE_LENGTH.check_known(self.hose_mm)?;
        bounds::HOSE_SWELL.check_known(self.hose_swell_ml_m)?;
        bounds::CAM_ARM.check_known(self.cam_arm_mm)?;
        bounds::CAM_ANGLE.check_known(self.cam_degrees)?;
        Ok(self)
    }
}

impl Brake {
    /// This brake laid over another, field by field: what is not said here is as below.
    pub fn over(self, below: &Brake) -> Brake {
        Brake {
            brake: self.brake.or(below.brake),
            rotor_mm: self.rotor_mm.or(below.rotor_mm),
            master_mm: self.master_mm.or(below.master_mm),
            lever_ratio: self.lever_ratio.or(below.lever_ratio),
            pistons: self.pistons.or(below.pistons),
            piston_mm: self.piston_mm.or(below.piston_mm),
            opposed: self.opposed.or(below.opposed),
            pad_friction: self.pad_friction.or(below.pad_friction),
            effective_radius_mm: self.effective_radius_mm.or(below.effective_radius_mm),
            pad_clearance_mm: self.pad_clearance_mm.or(below.pad_clearance_mm),
            hose_mm: self.hose_mm.or(below.hose_mm),
            hose_swell_ml_m: self.hose_swell_ml_m.or(below.hose_swell_ml_m),
            fluid: self.fluid.or(below.fluid),
            cam_arm_mm: self.cam_arm_mm.or(below.cam_arm_mm),
            cam_degrees: self.cam_degrees.or(below.cam_degrees),
            twin_leading: self.twin_leading.or(below.twin_leading),
        }
    }
}
