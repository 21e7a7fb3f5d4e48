//! The technical spec of one side of the bike: standard (as made) or fitted (as it is being built).

use layshaft_wire::wire;

use super::Drive;
use super::Indication;
use crate::bounds::{self, Bound};
use crate::brakes::FluidGrade;
use crate::changes::Record;
use crate::electrical::LampCap;
use crate::error::Refused;
use crate::tyres::{DateCode, TyreSize};

/// Which spec.
#[wire]
pub enum Side {
    /// As made.
    Standard,
    /// As it is being built. What is not said here is as standard.
    Fitted,
}

/// Front or rear.
#[wire]
pub enum End {
    /// Front.
    Front,
    /// Rear.
    Rear,
}

/// A wheel with its tyre.
#[wire(lenient)]
pub struct Wheel {
    /// Size as on the sidewall.
    pub tyre: Option<String>,
    /// Rolling circumference by roll-out with the rider up, millimetres; it overrides the size.
    pub circumference_mm: Option<f64>,
    /// Whether a tube is fitted.
    pub tube: Option<bool>,
    /// Sizes that are printed on the tube: it fits those and no others.
    pub tube_sizes: Vec<String>,
    /// Week and year on the sidewall of the tyre that is fitted: `3202`, or `324` on old tyres.
    pub date_code: Option<String>,
    /// Load on this wheel with rider and luggage up, kilograms.
    pub axle_load_kg: Option<f64>,
    /// Width of the rim between its flanges, inches.
    pub rim_width_inch: Option<f64>,
    /// Whether the rim hangs in wire spokes.
    pub spoked: Option<bool>,
}

/// One point of the alternator's output.
#[wire]
pub struct OutputPoint {
    /// Engine speed, revolutions a minute.
    pub rpm: f64,
    /// Output, watts.
    pub watts: f64,
}

/// Battery and alternator.
#[wire(lenient)]
pub struct Supply {
    /// Nominal voltage of the system, volts.
    pub system_volts: Option<f64>,
    /// Voltage that the regulator holds, volts.
    pub charging_volts: Option<f64>,
    /// Battery capacity, ampere-hours.
    pub battery_ah: Option<f64>,
    /// Hours of discharge that the capacity is rated for (10 on most motorcycle batteries).
    pub rated_hours: Option<f64>,
    /// Peukert exponent; 1.2 to 1.3 flooded, 1.05 to 1.15 absorbed glass mat.
    pub peukert: Option<f64>,
    /// Output against engine speed, lowest speed first.
    pub output: Vec<OutputPoint>,
    /// Idle speed, revolutions a minute.
    pub idle_rpm: Option<f64>,
}

/// When a consumer draws current.
#[wire]
pub enum Use {
    /// Whenever the engine runs or the key is on (ignition, dashboard).
    Steady,
    /// With the lights on.
    Lights,
    /// While braking.
    Braking,
    /// While indicating; half of the time at a duty of 0.5.
    Indicating,
    /// Now and then (horn, starter); left out of the balance.
    Moment,
}

/// What turns the current into light or work.
#[wire]
pub enum LightSource {
    /// Filament lamp: current follows volts to the power 0.55.
    Filament,
    /// LED with its driver: near constant power.
    Led,
    /// Motor or horn.
    Motor,
    /// Coil or electronics.
    Electronics,
}

/// Something that draws current.
#[wire(lenient)]
pub struct Consumer {
    /// What it is.
    pub name: String,
    /// Watts of one, at its test voltage.
    pub watts: f64,
    /// How many of them draw together.
    pub count: u32,
    /// When.
    pub used: Option<Use>,
    /// Kind.
    pub source: Option<LightSource>,
    /// Voltage at which the watts hold, volts; 13.5 V for lamps of a 12 V system when not said.
    pub test_volts: Option<f64>,
    /// Cap of the lamp.
    pub cap: Option<LampCap>,
    /// Light of one lamp at its test voltage, lumens.
    pub lumens: Option<f64>,
    /// Whether it works only one way round, as many LED lamps do.
    pub polarised: Option<bool>,
}

/// Kind of brake.
#[wire]
pub enum BrakeKind {
    /// Hydraulic disc.
    Disc,
    /// Drum by rod or cable.
    Drum,
}

/// A brake.
#[wire(lenient)]
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

/// On what occasion a filling takes its volume: they differ, because some of the old oil stays behind.
#[wire]
pub enum FillKind {
    /// After letting the old filling run out.
    Drain,
    /// After letting it run out and changing the filter.
    WithFilter,
    /// After a strip-down, everything dry.
    AfterStripDown,
}

/// A filling.
#[wire(lenient)]
pub struct Fluid {
    /// What is filled: “Engine oil, with filter”.
    pub name: String,
    /// Volume, litres.
    pub litres: Option<f64>,
    /// Grade as the manual says.
    pub grade: Option<String>,
    /// On what occasion it takes that volume.
    pub fill: Option<FillKind>,
}

/// One side of the bike.
#[wire(lenient)]
pub struct Spec {
    /// Drive train.
    pub drive: Drive,
    /// Front wheel.
    pub front_wheel: Wheel,
    /// Rear wheel.
    pub rear_wheel: Wheel,
    /// Battery and alternator.
    pub supply: Supply,
    /// Consumers by their mark.
    pub consumers: Vec<Slot>,
    /// Front brake.
    pub front_brake: Brake,
    /// Rear brake.
    pub rear_brake: Brake,
    /// Fillings by their mark.
    pub fluids: Vec<Filling>,
    /// Flasher, pilots and load resistors.
    pub indication: Indication,
}

/// A consumer with its mark, the same mark on both sides of the bike.
#[wire]
pub struct Slot {
    /// Mark.
    pub id: String,
    /// The consumer there.
    pub consumer: Consumer,
}

/// A filling with its mark, the same mark on both sides of the bike.
#[wire]
pub struct Filling {
    /// Mark.
    pub id: String,
    /// The filling.
    pub fluid: Fluid,
}

impl Record for Wheel {
    const KIND: &'static str = "wheel";
}
impl Record for Supply {
    const KIND: &'static str = "supply";
}
impl Record for Consumer {
    const KIND: &'static str = "consumer";
}
impl Record for Brake {
    const KIND: &'static str = "brake";
}
impl Record for Fluid {
    const KIND: &'static str = "fluid";
}

impl Wheel {
    /// The wheel, or the first field that cannot be accepted.
    pub fn checked(self) -> Result<Self, Refused> {
        if let Some(tyre) = &self.tyre {
            TyreSize::read(tyre)?;
        }
        bounds::CIRCUMFERENCE.check_known(self.circumference_mm)?;
        for size in &self.tube_sizes {
            TyreSize::read(size).map_err(|refused| refused.named("tubeSizes", "Size printed on the tube"))?;
        }
        if let Some(code) = &self.date_code {
            DateCode::read(code)?;
        }
        bounds::AXLE_LOAD.check_known(self.axle_load_kg)?;
        bounds::RIM_WIDTH.check_known(self.rim_width_inch)?;
        Ok(self)
    }

    /// This wheel laid over another, field by field: what is not said here is as below. Another tyre brings its own date, and
    /// a tyre of other dimensions its own roll-out: neither is taken over.
    pub fn over(self, below: &Wheel) -> Wheel {
        let size = |tyre: &Option<String>| tyre.as_deref().and_then(|code| TyreSize::read(code).ok());
        let rolls_alike = self.tyre.is_none()
            || size(&self.tyre).zip(size(&below.tyre)).is_some_and(|(this, other)| this.same_dimensions(&other));
        let old_date = below.date_code.clone().filter(|_| self.tyre.is_none());
        Wheel {
            tyre: self.tyre.or_else(|| below.tyre.clone()),
            circumference_mm: self.circumference_mm.or(below.circumference_mm.filter(|_| rolls_alike)),
            tube: self.tube.or(below.tube),
            tube_sizes: if self.tube_sizes.is_empty() { below.tube_sizes.clone() } else { self.tube_sizes },
            date_code: self.date_code.or(old_date),
            axle_load_kg: self.axle_load_kg.or(below.axle_load_kg),
            rim_width_inch: self.rim_width_inch.or(below.rim_width_inch),
            spoked: self.spoked.or(below.spoked),
        }
    }
}

impl Supply {
    /// Battery and alternator with the output curve in order, or the first field that cannot be accepted.
    pub fn checked(mut self) -> Result<Self, Refused> {
        bounds::SYSTEM_VOLTS.check_known(self.system_volts)?;
        bounds::CHARGING_VOLTS.check_known(self.charging_volts)?;
        bounds::BATTERY_AH.check_known(self.battery_ah)?;
        bounds::RATED_HOURS.check_known(self.rated_hours)?;
        bounds::PEUKERT.check_known(self.peukert)?;
        Bound { field: "idleRpm", label: "Idle speed", ..bounds::ENGINE_SPEED }.check_known(self.idle_rpm)?;
        for point in &self.output {
            Bound { field: "output", ..bounds::ENGINE_SPEED }.check(point.rpm)?;
            Bound { field: "output", ..bounds::ALTERNATOR_WATTS }.check(point.watts)?;
        }
        self.output.sort_by(|a, b| a.rpm.total_cmp(&b.rpm));
        Ok(self)
    }
}

impl Consumer {
    /// The consumer with its name trimmed, or the first field that cannot be accepted.
    pub fn checked(mut self) -> Result<Self, Refused> {
        self.name = bounds::check_title("name", "Consumer", &self.name)?;
        bounds::WATTS.check(self.watts)?;
        bounds::COUNT.check(f64::from(self.count))?;
        bounds::TEST_VOLTS.check_known(self.test_volts)?;
        bounds::LUMENS.check_known(self.lumens)?;
        Ok(self)
    }
}

impl Brake {
    /// The brake, or the first field that cannot be accepted.
    pub fn checked(self) -> Result<Self, Refused> {
        let rotor = if self.brake == Some(BrakeKind::Drum) { bounds::DRUM } else { bounds::DISC };
        Bound { field: "rotorMm", ..rotor }.check_known(self.rotor_mm)?;
        Bound { field: "masterMm", label: "Bore of the master cylinder", ..bounds::BORE }
            .check_known(self.master_mm)?;
        bounds::LEVER_RATIO.check_known(self.lever_ratio)?;
        bounds::PISTONS.check_known(self.pistons.map(f64::from))?;
        Bound { field: "pistonMm", label: "Piston", ..bounds::BORE }.check_known(self.piston_mm)?;
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

impl Fluid {
    /// The filling with its name trimmed, or the first field that cannot be accepted.
    pub fn checked(mut self) -> Result<Self, Refused> {
        self.name = bounds::check_title("name", "Filling", &self.name)?;
        bounds::LITRES.check_known(self.litres)?;
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
