//! Which formula a sum asks for.

use super::figure::{Figures, figure, teeth};
use super::sum::Sum;
use super::{brakes, electrical_sums, fasteners, fluids, gears, spreads, tyre_sums};
use crate::error::Refused;
use crate::record::{self, OutputPoint, Surface, TyreSize};
use crate::units::Unit;
use crate::{bounds, coating, electrical, gearing};

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
            let size = TyreSize::read(tyre)?;
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
        Sum::LampLight { .. }
        | Sum::ThermalFlasher { .. }
        | Sum::FlashCount { .. }
        | Sum::LoadResistor { .. }
        | Sum::GravityCharge { .. }
        | Sum::DaysToFlat { .. }
        | Sum::RechargeHours { .. }
        | Sum::WireDrop { .. }
        | Sum::WireGauge { .. } => electrical_sums::electrical(sum)?,
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
            let found = record::activation((*hours, *celsius), (*other_hours, *other_celsius));
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
        Sum::HydraulicBrake {
            lever_newtons,
            lever_ratio,
            master_mm,
            pistons,
            piston_mm,
            pad_friction,
            effective_radius_mm,
            wheel_radius_mm,
            mass_kg,
        } => brakes::hydraulic(
            (*lever_newtons, *lever_ratio),
            (*master_mm, *pistons, *piston_mm),
            (*pad_friction, *effective_radius_mm),
            (*wheel_radius_mm, *mass_kg),
        )?,
        Sum::CaliperPistons { pistons, opposed } => brakes::one_side(*pistons, *opposed)?,
        Sum::LeverTravel {
            lever_newtons,
            lever_ratio,
            master_mm,
            pistons,
            piston_mm,
            pad_clearance_mm,
            hose_mm,
            hose_swell_ml_m,
        } => brakes::travel(
            (*lever_newtons, *lever_ratio),
            (*master_mm, *pistons, *piston_mm),
            *pad_clearance_mm,
            (*hose_mm, *hose_swell_ml_m),
        )?,
        Sum::BrakePair { master_mm, pistons, piston_mm, new_master_mm, new_pistons, new_piston_mm } => {
            brakes::pair((*master_mm, *pistons, *piston_mm), (*new_master_mm, *new_pistons, *new_piston_mm))?
        }
        Sum::StoppingDistance { road_speed_kmh, deceleration, reaction_seconds } => {
            brakes::distance(*road_speed_kmh, *deceleration, *reaction_seconds)?
        }
        Sum::StoppingDeceleration { road_speed_kmh, metres, reaction_seconds } => {
            brakes::deceleration(*road_speed_kmh, *metres, *reaction_seconds)?
        }
        Sum::BrakeEfficiency { percent, mass_kg } => brakes::efficiency(*percent, *mass_kg)?,
        Sum::DirectiveStop { line, road_speed_kmh } => brakes::directive(line, *road_speed_kmh)?,
        Sum::CamLever { cam_degrees, rod_travel_mm, cam_arm_mm, rod_newtons } => {
            brakes::cam(*cam_degrees, *rod_travel_mm, *cam_arm_mm, *rod_newtons)?
        }
        Sum::DrumShoes { pad_friction, pivot_share } => brakes::shoes(*pad_friction, *pivot_share)?,
        Sum::BrakeFluid { fluid } => brakes::fluid(fluid)?,
        Sum::BleedThrough { hose_bore_mm, hose_mm, pistons, piston_mm, master_mm } => {
            brakes::bleed((*hose_bore_mm, *hose_mm), (*master_mm, *pistons, *piston_mm))?
        }
        Sum::StressArea { diameter_mm, pitch_mm } => fasteners::area(*diameter_mm, *pitch_mm)?,
        Sum::ScrewLoads { diameter_mm, pitch_mm, property_class } => {
            fasteners::loads((*diameter_mm, *pitch_mm), property_class)?
        }
        Sum::TighteningTorque { diameter_mm, pitch_mm, property_class, friction } => {
            fasteners::torque((*diameter_mm, *pitch_mm), property_class, *friction)?
        }
        Sum::PreloadFromTorque { diameter_mm, pitch_mm, torque_nm, friction } => {
            fasteners::preload((*diameter_mm, *pitch_mm), *torque_nm, *friction)?
        }
        Sum::NutFactorTorque { diameter_mm, pitch_mm, property_class, nut_factor, share_percent } => {
            fasteners::nut_factor((*diameter_mm, *pitch_mm), property_class, *nut_factor, *share_percent)?
        }
        Sum::ThreadEngagement { load_newtons, pitch_mm, diameter_mm, nut_flank_mm, shear_mpa } => {
            fasteners::engagement(*load_newtons, *pitch_mm, (*diameter_mm, *nut_flank_mm), *shear_mpa)?
        }
        Sum::IdentifyThread { diameter_mm, pitch_mm } => fasteners::which(*diameter_mm, *pitch_mm)?,
        Sum::PourSplit { litres, cup_ml } => fluids::pour(*litres, *cup_ml)?,
        Sum::Premix { fuel_litres, parts_fuel } => fluids::premix(*fuel_litres, *parts_fuel)?,
        Sum::TwoPart { ready_ml, parts_base, parts_hardener, thinner_percent, thinner_of_base } => {
            fluids::two_part(*ready_ml, (*parts_base, *parts_hardener), *thinner_percent, *thinner_of_base)?
        }
        Sum::Thinning { paint_ml, thinner_percent } => fluids::thinning(*paint_ml, *thinner_percent)?,
        Sum::PaintNeeded { square_metres, coats, solids_percent, dry_micrometres, loss_percent, can_ml } => {
            fluids::paint((*square_metres, *coats), (*solids_percent, *dry_micrometres), *loss_percent, *can_ml)?
        }
        Sum::TriangularQuantile { least, likely, most, share } => spreads::triangular(*least, *likely, *most, *share)?,
        Sum::LognormalQuantile { median, p90, share } => spreads::lognormal(*median, *p90, *share)?,
        Sum::LaterOfTwo { least, likely, most, median, p90, share } => {
            spreads::later_of_two((*least, *likely, *most), (*median, *p90), *share)?
        }
        Sum::ShellArea { length_mm, girth_mm, both_sides, count } => {
            let (length_mm, girth_mm, both_sides, count) = (*length_mm, *girth_mm, *both_sides, *count);
            fluids::area(&Surface::Shell { length_mm, girth_mm, both_sides, count })?
        }
        Sum::RimArea { diameter_mm, girth_mm, count } => {
            fluids::area(&Surface::Rim { diameter_mm: *diameter_mm, girth_mm: *girth_mm, count: *count })?
        }
        Sum::TubeArea { diameter_mm, length_mm, count } => {
            fluids::area(&Surface::Tube { diameter_mm: *diameter_mm, length_mm: *length_mm, count: *count })?
        }
        Sum::ThinnedFilm { solids_percent, thinner_percent, dry_micrometres } => {
            fluids::thinned(*solids_percent, *thinner_percent, *dry_micrometres)?
        }
        Sum::TyreChange { tyre, new_tyre } => tyre_sums::change(tyre, new_tyre)?,
        Sum::TyreRating { tyre } => tyre_sums::rating(tyre)?,
        Sum::TyreAge { date_code, day } => tyre_sums::age(date_code, day)?,
        Sum::WantedRatio { engine_rpm, road_speed_kmh, primary_ratio, gear_ratio, circumference_mm } => {
            gears::wanted(*engine_rpm, *road_speed_kmh, (*primary_ratio, *gear_ratio), *circumference_mm)?
        }
        Sum::Hunting { teeth, chain_links } => gears::hunting(*teeth, *chain_links)?,
        Sum::ChainDimensions { chain_size } => gears::dimensions(chain_size)?,
        Sum::ChainOnSprocket { chain_size, sprocket_size } => gears::mesh(chain_size, sprocket_size)?,
        Sum::ChainElongation { measured_mm, pitches, pitch_mm } => {
            gears::elongation(*measured_mm, *pitches, *pitch_mm)?
        }
        Sum::WornLength { pitches, pitch_mm, elongation_percent } => {
            gears::worn_length(*pitches, *pitch_mm, *elongation_percent)?
        }
        Sum::WornCentreDistance { front_teeth, rear_teeth, chain_links, pitch_mm, elongation_percent } => {
            gears::worn_distance((*front_teeth, *rear_teeth), *chain_links, *pitch_mm, *elongation_percent)?
        }
        Sum::CorrectorRatio { reading_factor } => gears::corrector(*reading_factor)?,
        Sum::GearDrop { engine_rpm, gear_ratio, next_gear_ratio } => {
            gears::drop(*engine_rpm, *gear_ratio, *next_gear_ratio)?
        }
        Sum::StandardAir { altitude_metres } => gears::air(*altitude_metres)?,
        Sum::RollingCoefficient { tyre_bar, road_speed_kmh } => gears::rolling(*tyre_bar, *road_speed_kmh)?,
        Sum::RoadLoad {
            road_speed_kmh,
            mass_kg,
            rolling_coefficient,
            drag_area_m2,
            air_density,
            grade_percent,
            head_wind_kmh,
        } => {
            let machine = (*mass_kg, *rolling_coefficient, *drag_area_m2, *air_density);
            gears::resistance(*road_speed_kmh, &gears::load(machine, (*grade_percent, *head_wind_kmh))?)?
        }
        Sum::PowerSpeed {
            wheel_kw,
            mass_kg,
            rolling_coefficient,
            drag_area_m2,
            air_density,
            grade_percent,
            head_wind_kmh,
        } => {
            let machine = (*mass_kg, *rolling_coefficient, *drag_area_m2, *air_density);
            gears::speed(*wheel_kw, &gears::load(machine, (*grade_percent, *head_wind_kmh))?)?
        }
        Sum::Thrust { crank_nm, overall_ratio, drive_efficiency, wheel_radius_mm } => {
            gears::thrust(*crank_nm, *overall_ratio, *drive_efficiency, *wheel_radius_mm)?
        }
        Sum::CubicPower { engine_rpm, peak_power_kw, peak_power_rpm } => {
            gears::cubic(*engine_rpm, *peak_power_kw, *peak_power_rpm)?
        }
        Sum::PeaksPower { engine_rpm, peak_power_kw, peak_power_rpm, peak_torque_nm, peak_torque_rpm } => {
            gears::peaks(*engine_rpm, (*peak_power_kw, *peak_power_rpm), (*peak_torque_nm, *peak_torque_rpm))?
        }
    };
    Ok(Figures { figures })
}
