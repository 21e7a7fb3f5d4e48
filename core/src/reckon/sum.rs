//! The sums that can be asked for: one formula each, with its inputs. Those of filling, mixing, paint and cures are added from
//! `paint_sums`, those of chain wear, sprockets, thrust, tyres and electrics from `further_sums`: no file grows past reading.

use layshaft_wire::wire;

use super::paint_sums::with_paint_sums;

with_paint_sums! {
/// A sum to work out.
#[wire]
pub enum Sum {
    /// Crankshaft turns for one turn of the wheel.
    OverallRatio {
        /// Primary reduction.
        primary_ratio: f64,
        /// Gear ratio.
        gear_ratio: f64,
        /// Teeth of the gearbox sprocket.
        front_teeth: u32,
        /// Teeth of the wheel sprocket.
        rear_teeth: u32,
    },
    /// Road speed at an engine speed.
    RoadSpeed {
        /// Engine speed, revolutions a minute.
        engine_rpm: f64,
        /// Overall ratio.
        overall_ratio: f64,
        /// Rolling circumference, millimetres.
        circumference_mm: f64,
    },
    /// Engine speed at a road speed.
    EngineSpeed {
        /// Road speed, km/h.
        road_speed_kmh: f64,
        /// Overall ratio.
        overall_ratio: f64,
        /// Rolling circumference, millimetres.
        circumference_mm: f64,
    },
    /// Chain length from the centre distance.
    ChainLength {
        /// Teeth of the gearbox sprocket.
        front_teeth: u32,
        /// Teeth of the wheel sprocket.
        rear_teeth: u32,
        /// Centre distance, millimetres.
        centre_distance_mm: f64,
        /// Pitch, millimetres.
        pitch_mm: f64,
    },
    /// Centre distance from the chain length.
    CentreDistance {
        /// Teeth of the gearbox sprocket.
        front_teeth: u32,
        /// Teeth of the wheel sprocket.
        rear_teeth: u32,
        /// Links.
        chain_links: u32,
        /// Pitch, millimetres.
        pitch_mm: f64,
    },
    /// Pitch diameter of a sprocket.
    PitchDiameter {
        /// Teeth.
        teeth: u32,
        /// Pitch, millimetres.
        pitch_mm: f64,
    },
    /// New speedometer reading over the old one at the same road speed.
    SpeedometerFactor {
        /// Rolling circumference of the wheel that the sender turns with, before, millimetres.
        circumference_mm: f64,
        /// The same after, millimetres.
        new_circumference_mm: f64,
        /// Final drive ratio before; the same twice for a sender on a wheel.
        final_ratio: f64,
        /// Final drive ratio after.
        new_final_ratio: f64,
    },
    /// What type approval allows a speedometer to show.
    AllowedReading {
        /// True speed, km/h.
        road_speed_kmh: f64,
    },
    /// Outer diameter and rolling circumference from a sidewall.
    TyreSize {
        /// Size as on the sidewall.
        tyre: String,
    },
    /// Hours until a battery is flat, after Peukert with the rated hours.
    BatteryHours {
        /// Capacity, ampere-hours.
        battery_ah: f64,
        /// Hours of the rating.
        rated_hours: f64,
        /// Peukert exponent.
        peukert: f64,
        /// Current, amperes.
        amperes: f64,
    },
    /// State of charge of a rested 12 V battery.
    RestedCharge {
        /// Voltage after a rest of some hours, volts.
        volts: f64,
    },
    /// Watts of a filament lamp at another voltage.
    LampWatts {
        /// Watts at the test voltage.
        watts: f64,
        /// Test voltage, volts.
        test_volts: f64,
        /// Voltage at the lamp, volts.
        volts: f64,
    },
    /// Output of an alternator of which one point is known, by the nominal curve.
    NominalOutput {
        /// Output at the rated speed, watts.
        alternator_watts: f64,
        /// Rated speed, revolutions a minute.
        rated_rpm: f64,
        /// Engine speed, revolutions a minute.
        engine_rpm: f64,
    },
    /// A hydraulic disc brake from the fingers to the road.
    HydraulicBrake {
        /// Force at the lever, newtons.
        lever_newtons: f64,
        /// Lever ratio.
        lever_ratio: f64,
        /// Bore of the master cylinder, millimetres.
        master_mm: f64,
        /// Pistons that press on one side.
        pistons: u32,
        /// Diameter of one piston, millimetres.
        piston_mm: f64,
        /// Friction of the pads.
        pad_friction: f64,
        /// Effective radius, millimetres.
        effective_radius_mm: f64,
        /// Radius of the wheel, millimetres.
        wheel_radius_mm: f64,
        /// Machine and rider, kilograms.
        mass_kg: f64,
    },
    /// Pistons of a caliper that press on one side.
    CaliperPistons {
        /// Pistons in all.
        pistons: u32,
        /// They face each other in a fixed caliper.
        opposed: bool,
    },
    /// Lever travel that pad clearance and hose take up.
    LeverTravel {
        /// Force at the lever, newtons.
        lever_newtons: f64,
        /// Lever ratio.
        lever_ratio: f64,
        /// Bore of the master cylinder, millimetres.
        master_mm: f64,
        /// Pistons that press on one side.
        pistons: u32,
        /// Diameter of one piston, millimetres.
        piston_mm: f64,
        /// Running clearance of a pad, millimetres.
        pad_clearance_mm: f64,
        /// Length of the hose, millimetres.
        hose_mm: f64,
        /// Swelling of one metre of it at 69 bar, millilitres.
        hose_swell_ml_m: f64,
    },
    /// Another pair of master cylinder and caliper against the one there is; same lever, same radius, same pads.
    BrakePair {
        /// Bore of the master cylinder, millimetres.
        master_mm: f64,
        /// Pistons on one side.
        pistons: u32,
        /// Diameter of one piston, millimetres.
        piston_mm: f64,
        /// Bore of the other master cylinder, millimetres.
        new_master_mm: f64,
        /// Pistons of the other caliper on one side.
        new_pistons: u32,
        /// Diameter of one of them, millimetres.
        new_piston_mm: f64,
    },
    /// Stopping distance from deceleration.
    StoppingDistance {
        /// Speed before braking, km/h.
        road_speed_kmh: f64,
        /// Deceleration, m/s².
        deceleration: f64,
        /// Reaction, seconds.
        reaction_seconds: f64,
    },
    /// Deceleration from a measured stopping distance.
    StoppingDeceleration {
        /// Speed before braking, km/h.
        road_speed_kmh: f64,
        /// Distance, metres.
        metres: f64,
        /// Reaction that is in it, seconds.
        reaction_seconds: f64,
    },
    /// Force and deceleration that a brake efficiency means.
    BrakeEfficiency {
        /// Per cent of the weight.
        percent: f64,
        /// Machine and rider, kilograms.
        mass_kg: f64,
    },
    /// Longest stop that Directive 93/14/EEC allows.
    DirectiveStop {
        /// Which line: front, rear, sidecar, mopedFront, mopedRear, unladen.
        line: String,
        /// Speed, km/h.
        road_speed_kmh: f64,
    },
    /// Angle and torque of the cam lever of a drum brake.
    CamLever {
        /// Angle between rod and lever at rest, degrees.
        cam_degrees: f64,
        /// Travel of the rod, millimetres.
        rod_travel_mm: f64,
        /// Length of the lever, millimetres.
        cam_arm_mm: f64,
        /// Pull of the rod, newtons.
        rod_newtons: f64,
    },
    /// What leading and trailing shoes make of the force at their tips.
    DrumShoes {
        /// Friction of the linings.
        pad_friction: f64,
        /// Pivot from the middle of the drum, share of its radius; the cam stands opposite.
        pivot_share: f64,
    },
    /// Least boiling points of a brake fluid.
    BrakeFluid {
        /// Grade as on the cap.
        fluid: String,
    },
    /// Fluid that must pass when a brake is bled.
    BleedThrough {
        /// Bore of the hose, millimetres.
        hose_bore_mm: f64,
        /// Length of the hose, millimetres.
        hose_mm: f64,
        /// Pistons of the caliper in all.
        pistons: u32,
        /// Diameter of one piston, millimetres.
        piston_mm: f64,
        /// Bore of the master cylinder, millimetres.
        master_mm: f64,
    },
    /// Stress area and diameters of a thread.
    StressArea {
        /// Nominal diameter, millimetres.
        diameter_mm: f64,
        /// Pitch, millimetres.
        pitch_mm: f64,
    },
    /// Proof load and breaking load of a screw.
    ScrewLoads {
        /// Nominal diameter, millimetres.
        diameter_mm: f64,
        /// Pitch, millimetres.
        pitch_mm: f64,
        /// Property class: 8.8.
        property_class: String,
    },
    /// Preload and torque of a screw by VDI 2230, hexagon head.
    TighteningTorque {
        /// Nominal diameter, millimetres.
        diameter_mm: f64,
        /// Pitch, millimetres.
        pitch_mm: f64,
        /// Property class: 8.8.
        property_class: String,
        /// Friction of thread and head.
        friction: f64,
    },
    /// Preload that a torque gives, hexagon head.
    PreloadFromTorque {
        /// Nominal diameter, millimetres.
        diameter_mm: f64,
        /// Pitch, millimetres.
        pitch_mm: f64,
        /// Torque, newton metres.
        torque_nm: f64,
        /// Friction of thread and head.
        friction: f64,
    },
    /// Torque by the nut factor for a share of the proof load.
    NutFactorTorque {
        /// Nominal diameter, millimetres.
        diameter_mm: f64,
        /// Pitch, millimetres.
        pitch_mm: f64,
        /// Property class: 8.8.
        property_class: String,
        /// Nut factor.
        nut_factor: f64,
        /// Share of the proof load, per cent.
        share_percent: f64,
    },
    /// Thread engaged so that the screw breaks before the tapped thread strips.
    ThreadEngagement {
        /// Load, newtons.
        load_newtons: f64,
        /// Pitch, millimetres.
        pitch_mm: f64,
        /// Outer diameter of the screw, millimetres.
        diameter_mm: f64,
        /// Flank diameter of the nut thread, millimetres.
        nut_flank_mm: f64,
        /// Shear strength of the tapped material, megapascals.
        shear_mpa: f64,
    },
    /// Which thread a measured diameter and pitch is nearest to.
    IdentifyThread {
        /// Measured outer diameter, millimetres.
        diameter_mm: f64,
        /// Measured pitch, millimetres.
        pitch_mm: f64,
    },
}
}
