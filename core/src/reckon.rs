//! Plain sums: one formula of the trade with numbers given by hand, no bike needed.
//!
//! The pages compute through the same functions. Scripts use this, and the vectors under `fixtures/vectors` run
//! through it in every language.

use layshaft_wire::wire;

use crate::bike::OutputPoint;
use crate::bounds;
use crate::error::Refused;
use crate::units::Unit;
use crate::{coating, electrical, gearing, tyres};

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
    /// Dew point of the air.
    DewPoint {
        /// Temperature, °C.
        celsius: f64,
        /// Relative humidity, per cent.
        humidity: f64,
    },
    /// How fast a cure runs against the reference temperature.
    CureRate {
        /// Temperature, °C.
        celsius: f64,
        /// Reference temperature, °C.
        at_celsius: f64,
        /// Activation temperature, kelvin.
        activation_kelvin: f64,
    },
    /// Equivalent age after two spells at one temperature each.
    CureAge {
        /// First spell, hours.
        hours: f64,
        /// Its temperature, °C.
        celsius: f64,
        /// Second spell, hours.
        then_hours: f64,
        /// Its temperature, °C.
        then_celsius: f64,
        /// Reference temperature, °C.
        at_celsius: f64,
        /// Activation temperature, kelvin.
        activation_kelvin: f64,
    },
    /// Activation temperature from two times of one sheet at two temperatures.
    Activation {
        /// Time at the one temperature, hours.
        hours: f64,
        /// The one temperature, °C.
        celsius: f64,
        /// Time at the other temperature, hours.
        other_hours: f64,
        /// The other temperature, °C.
        other_celsius: f64,
    },
    /// How far a surface is above the dew point of the air.
    SurfaceMargin {
        /// Temperature of the air, °C.
        celsius: f64,
        /// Relative humidity, per cent.
        humidity: f64,
        /// Temperature of the surface, °C.
        surface_celsius: f64,
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
}

/// A result of a sum.
#[wire]
pub struct Figure {
    /// What it is.
    pub name: String,
    /// Value.
    pub value: f64,
    /// Unit.
    pub unit: Unit,
}

/// The results of a sum.
#[wire]
pub struct Figures {
    /// Results, the main one first.
    pub figures: Vec<Figure>,
}

/// Works a sum out, after checking every input against its range.
///
/// ```
/// use layshaft_core::reckon::{Sum, reckon};
/// let sum = Sum::OverallRatio { primary_ratio: 3.0, gear_ratio: 1.0, front_teeth: 15, rear_teeth: 45 };
/// assert_eq!(reckon(&sum).unwrap().figures[0].value, 9.0);
/// ```
pub fn reckon(sum: &Sum) -> Result<Figures, Refused> {
    let figures = match sum {
        Sum::OverallRatio { primary_ratio, gear_ratio, front_teeth, rear_teeth } => {
            bounds::PRIMARY_RATIO.check(*primary_ratio)?;
            bounds::Bound { field: "gearRatio", ..bounds::GEAR_RATIO }.check(*gear_ratio)?;
            teeth(*front_teeth, *rear_teeth)?;
            let ratio = gearing::overall_ratio(*primary_ratio, *gear_ratio, *front_teeth, *rear_teeth);
            vec![figure("overallRatio", ratio, Unit::None)]
        }
        Sum::RoadSpeed { engine_rpm, overall_ratio, circumference_mm } => {
            bounds::ENGINE_SPEED.check(*engine_rpm)?;
            bounds::OVERALL_RATIO.check(*overall_ratio)?;
            bounds::CIRCUMFERENCE.check(*circumference_mm)?;
            let speed = gearing::road_speed(*engine_rpm, *overall_ratio, *circumference_mm);
            vec![figure("roadSpeed", speed, Unit::KilometreHour)]
        }
        Sum::EngineSpeed { road_speed_kmh, overall_ratio, circumference_mm } => {
            bounds::ROAD_SPEED.check(*road_speed_kmh)?;
            bounds::OVERALL_RATIO.check(*overall_ratio)?;
            bounds::CIRCUMFERENCE.check(*circumference_mm)?;
            let speed = gearing::engine_speed(*road_speed_kmh, *overall_ratio, *circumference_mm);
            vec![figure("engineSpeed", speed, Unit::Rpm)]
        }
        Sum::ChainLength { front_teeth, rear_teeth, centre_distance_mm, pitch_mm } => {
            teeth(*front_teeth, *rear_teeth)?;
            bounds::CENTRE_DISTANCE.check(*centre_distance_mm)?;
            bounds::PITCH.check(*pitch_mm)?;
            let links = gearing::chain_length(*front_teeth, *rear_teeth, *centre_distance_mm, *pitch_mm)?;
            let even = f64::from(gearing::next_even(links));
            vec![figure("links", links, Unit::Links), figure("nextEven", even, Unit::Links)]
        }
        Sum::CentreDistance { front_teeth, rear_teeth, chain_links, pitch_mm } => {
            teeth(*front_teeth, *rear_teeth)?;
            bounds::CHAIN_LINKS.check(f64::from(*chain_links))?;
            bounds::PITCH.check(*pitch_mm)?;
            let distance = gearing::centre_distance(*front_teeth, *rear_teeth, *chain_links, *pitch_mm)?;
            vec![figure("centreDistance", distance, Unit::Millimetre)]
        }
        Sum::PitchDiameter { teeth, pitch_mm } => {
            bounds::SPROCKET_TEETH.check(f64::from(*teeth))?;
            bounds::PITCH.check(*pitch_mm)?;
            vec![figure("pitchDiameter", gearing::pitch_diameter(*teeth, *pitch_mm), Unit::Millimetre)]
        }
        Sum::SpeedometerFactor { circumference_mm, new_circumference_mm, final_ratio, new_final_ratio } => {
            bounds::CIRCUMFERENCE.check(*circumference_mm)?;
            bounds::Bound { field: "newCircumferenceMm", ..bounds::CIRCUMFERENCE }.check(*new_circumference_mm)?;
            bounds::FINAL_RATIO.check(*final_ratio)?;
            bounds::Bound { field: "newFinalRatio", ..bounds::FINAL_RATIO }.check(*new_final_ratio)?;
            let factor =
                gearing::reading_factor(*circumference_mm, *new_circumference_mm, *final_ratio, *new_final_ratio);
            vec![figure("factor", factor, Unit::None), figure("shift", (factor - 1.0) * 100.0, Unit::Percent)]
        }
        Sum::AllowedReading { road_speed_kmh } => {
            bounds::ROAD_SPEED.check(*road_speed_kmh)?;
            let (least, most) = gearing::allowed_reading(*road_speed_kmh);
            vec![figure("most", most, Unit::KilometreHour), figure("least", least, Unit::KilometreHour)]
        }
        Sum::TyreSize { tyre } => {
            let size = tyres::TyreSize::read(tyre)?;
            let (least, most) = size.outer_diameter_range_mm();
            vec![
                figure("outerDiameter", size.outer_diameter_mm(), Unit::Millimetre),
                figure("circumference", size.circumference_mm(), Unit::Millimetre),
                figure("outerDiameterLeast", least, Unit::Millimetre),
                figure("outerDiameterMost", most, Unit::Millimetre),
            ]
        }
        Sum::BatteryHours { battery_ah, rated_hours, peukert, amperes } => {
            bounds::BATTERY_AH.check(*battery_ah)?;
            bounds::RATED_HOURS.check(*rated_hours)?;
            bounds::PEUKERT.check(*peukert)?;
            bounds::AMPERES.check(*amperes)?;
            vec![figure("hours", electrical::battery_hours(*battery_ah, *rated_hours, *peukert, *amperes), Unit::Hour)]
        }
        Sum::RestedCharge { volts } => {
            bounds::RESTED_VOLTS.check(*volts)?;
            vec![figure("charge", electrical::rested_charge(*volts), Unit::Percent)]
        }
        Sum::LampWatts { watts, test_volts, volts } => {
            bounds::WATTS.check(*watts)?;
            bounds::TEST_VOLTS.check(*test_volts)?;
            bounds::Bound { field: "volts", label: "Voltage", ..bounds::TEST_VOLTS }.check(*volts)?;
            vec![figure("watts", electrical::lamp_watts(*watts, *test_volts, *volts), Unit::Watt)]
        }
        Sum::DewPoint { celsius, humidity } => {
            bounds::TEMPERATURE.check(*celsius)?;
            bounds::HUMIDITY.check(*humidity)?;
            vec![figure("dewPoint", coating::dew_point(*celsius, *humidity), Unit::Celsius)]
        }
        Sum::CureRate { celsius, at_celsius, activation_kelvin } => {
            bounds::TEMPERATURE.check(*celsius)?;
            bounds::Bound { field: "atCelsius", label: "Reference temperature", ..bounds::TEMPERATURE }
                .check(*at_celsius)?;
            bounds::ACTIVATION.check(*activation_kelvin)?;
            vec![figure("rate", coating::rate_factor(*celsius, *at_celsius, *activation_kelvin), Unit::None)]
        }
        Sum::CureAge { hours, celsius, then_hours, then_celsius, at_celsius, activation_kelvin } => {
            bounds::CURE_HOURS.check(*hours)?;
            bounds::TEMPERATURE.check(*celsius)?;
            bounds::Bound { field: "thenHours", ..bounds::CURE_HOURS }.check(*then_hours)?;
            bounds::Bound { field: "thenCelsius", ..bounds::TEMPERATURE }.check(*then_celsius)?;
            bounds::Bound { field: "atCelsius", label: "Reference temperature", ..bounds::TEMPERATURE }
                .check(*at_celsius)?;
            bounds::ACTIVATION.check(*activation_kelvin)?;
            let spells = [(*hours, *celsius), (*then_hours, *then_celsius)];
            let age = coating::equivalent_age(&spells, *at_celsius, *activation_kelvin);
            vec![figure("equivalentAge", age, Unit::Hour)]
        }
        Sum::Activation { hours, celsius, other_hours, other_celsius } => {
            bounds::CURE_HOURS.check(*hours)?;
            bounds::TEMPERATURE.check(*celsius)?;
            bounds::Bound { field: "otherHours", ..bounds::CURE_HOURS }.check(*other_hours)?;
            bounds::Bound { field: "otherCelsius", ..bounds::TEMPERATURE }.check(*other_celsius)?;
            let found = coating::activation((*hours, *celsius), (*other_hours, *other_celsius));
            let kelvin = found.ok_or_else(|| Refused::Conflict {
                field: "otherHours".to_owned(),
                reason: "Give two temperatures, with the shorter time at the warmer one".to_owned(),
            })?;
            vec![figure("activation", bounds::ACTIVATION.check(kelvin)?, Unit::Kelvin)]
        }
        Sum::SurfaceMargin { celsius, humidity, surface_celsius } => {
            bounds::TEMPERATURE.check(*celsius)?;
            bounds::HUMIDITY.check(*humidity)?;
            bounds::BAKE_TEMPERATURE.check(*surface_celsius)?;
            let margin = coating::surface_margin(*celsius, *humidity, *surface_celsius);
            vec![figure("margin", margin, Unit::Kelvin)]
        }
        Sum::NominalOutput { alternator_watts, rated_rpm, engine_rpm } => {
            bounds::ALTERNATOR_WATTS.check(*alternator_watts)?;
            bounds::Bound { field: "ratedRpm", label: "Rated speed", ..bounds::REV_LIMIT }.check(*rated_rpm)?;
            bounds::ENGINE_SPEED.check(*engine_rpm)?;
            let rated = OutputPoint { rpm: *rated_rpm, watts: *alternator_watts };
            vec![figure("watts", electrical::nominal_output(&rated, *engine_rpm), Unit::Watt)]
        }
    };
    Ok(Figures { figures })
}

fn figure(name: &str, value: f64, unit: Unit) -> Figure {
    Figure { name: name.to_owned(), value, unit }
}

fn teeth(front: u32, rear: u32) -> Result<(), Refused> {
    bounds::FRONT_TEETH.check(f64::from(front))?;
    bounds::REAR_TEETH.check(f64::from(rear))?;
    Ok(())
}
