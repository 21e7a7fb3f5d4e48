//! Sums of chain wear, sprockets and thrust: every input against its range, then the formula.

use super::figure::{Figure, figure, teeth};
use crate::bounds::{self, Bound};
use crate::error::Refused;
use crate::gearing::{self, RoadLoad, RollingLaw};
use crate::units::Unit;

type Given = Result<Vec<Figure>, Refused>;

pub(super) fn wanted(engine_rpm: f64, kmh: f64, (primary, gear): (f64, f64), circumference_mm: f64) -> Given {
    Bound { min: 100.0, ..bounds::ENGINE_SPEED }.check(engine_rpm)?;
    Bound { min: 1.0, ..bounds::ROAD_SPEED }.check(kmh)?;
    bounds::PRIMARY_RATIO.check(primary)?;
    Bound { field: "gearRatio", ..bounds::GEAR_RATIO }.check(gear)?;
    bounds::CIRCUMFERENCE.check(circumference_mm)?;
    let ratio = gearing::wanted_ratio(engine_rpm, kmh, primary, gear, circumference_mm);
    Ok(vec![figure("finalRatio", ratio, Unit::None)])
}

pub(super) fn hunting(teeth: u32, chain_links: u32) -> Given {
    bounds::SPROCKET_TEETH.check(f64::from(teeth))?;
    bounds::CHAIN_LINKS.check(f64::from(chain_links))?;
    let divisor = gearing::common_divisor(teeth, chain_links);
    Ok(vec![
        figure("turns", f64::from(gearing::turns_until_same_link(teeth, chain_links)), Unit::None),
        figure("divisor", f64::from(divisor), Unit::None),
        figure("chainLoops", f64::from(teeth) / f64::from(divisor), Unit::None),
    ])
}

pub(super) fn dimensions(chain_size: &str) -> Given {
    let dimensions = gearing::chain_dimensions(gearing::chain_size_named("chainSize", chain_size)?);
    Ok(vec![
        figure("pitch", dimensions.pitch_mm, Unit::Millimetre),
        figure("innerWidth", dimensions.inner_width_mm, Unit::Millimetre),
        figure("roller", dimensions.roller_mm, Unit::Millimetre),
    ])
}

pub(super) fn mesh(chain_size: &str, sprocket_size: &str) -> Given {
    let chain = gearing::chain_size_named("chainSize", chain_size)?;
    let sprocket = gearing::chain_size_named("sprocketSize", sprocket_size)?;
    gearing::same_size(chain, sprocket)?;
    Ok(vec![figure("pitch", gearing::pitch(chain), Unit::Millimetre)])
}

pub(super) fn elongation(measured_mm: f64, pitches: u32, pitch_mm: f64) -> Given {
    bounds::MEASURED_CHAIN.check(measured_mm)?;
    bounds::PITCHES.check(f64::from(pitches))?;
    bounds::PITCH.check(pitch_mm)?;
    Ok(vec![figure("elongation", gearing::elongation(measured_mm, pitches, pitch_mm), Unit::Percent)])
}

const ELONGATION: Bound =
    Bound { field: "elongationPercent", label: "Elongation", min: -1.0, max: 6.0, unit: Unit::Percent };

pub(super) fn worn_length(pitches: u32, pitch_mm: f64, elongation_percent: f64) -> Given {
    bounds::PITCHES.check(f64::from(pitches))?;
    bounds::PITCH.check(pitch_mm)?;
    ELONGATION.check(elongation_percent)?;
    Ok(vec![figure("length", gearing::worn_length(pitches, pitch_mm, elongation_percent), Unit::Millimetre)])
}

pub(super) fn worn_distance((front, rear): (u32, u32), links: u32, pitch_mm: f64, elongation_percent: f64) -> Given {
    teeth(front, rear)?;
    bounds::CHAIN_LINKS.check(f64::from(links))?;
    bounds::PITCH.check(pitch_mm)?;
    ELONGATION.check(elongation_percent)?;
    let distance = gearing::worn_centre_distance(front, rear, links, pitch_mm, elongation_percent)?;
    Ok(vec![figure("centreDistance", distance, Unit::Millimetre)])
}

pub(super) fn corrector(reading_factor: f64) -> Given {
    bounds::READING_FACTOR.check(reading_factor)?;
    let (least, most) = gearing::corrector_band(reading_factor);
    let (driving, driven) = gearing::simplest_pair(least, most);
    Ok(vec![
        figure("toTrue", gearing::corrector_to_true(reading_factor), Unit::None),
        figure("bandFrom", least, Unit::None),
        figure("bandTo", most, Unit::None),
        figure("driving", f64::from(driving), Unit::Teeth),
        figure("driven", f64::from(driven), Unit::Teeth),
    ])
}

pub(super) fn drop(engine_rpm: f64, gear_ratio: f64, next_gear_ratio: f64) -> Given {
    bounds::ENGINE_SPEED.check(engine_rpm)?;
    Bound { field: "gearRatio", ..bounds::GEAR_RATIO }.check(gear_ratio)?;
    Bound { field: "nextGearRatio", ..bounds::GEAR_RATIO }.check(next_gear_ratio)?;
    let after = gearing::drop_to(engine_rpm, gear_ratio, next_gear_ratio);
    Ok(vec![figure("engineSpeed", after, Unit::Rpm)])
}

pub(super) fn air(altitude_metres: f64) -> Given {
    bounds::ALTITUDE.check(altitude_metres)?;
    Ok(vec![figure("airDensity", gearing::air_density(altitude_metres, None), Unit::KilogramCubicMetre)])
}

pub(super) fn rolling(tyre_bar: f64, road_speed_kmh: f64) -> Given {
    bounds::TYRE_PRESSURE.check(tyre_bar)?;
    // The formula's second branch does not join the first, so it is not offered.
    Bound { max: gearing::FORMULA_TOP_KMH, ..bounds::ROAD_SPEED }.check(road_speed_kmh)?;
    Ok(vec![figure("coefficient", gearing::rolling_coefficient(tyre_bar, road_speed_kmh), Unit::None)])
}

/// Mass, rolling coefficient, drag area, density of the air; grade and head wind.
pub(super) fn load(
    (mass_kg, rolling_coefficient, drag_area_m2, air_density): (f64, f64, f64, f64),
    (grade_percent, head_wind_kmh): (f64, f64),
) -> Result<RoadLoad, Refused> {
    Ok(RoadLoad {
        mass_kg: bounds::RIDING_MASS.check(mass_kg)?,
        rolling: RollingLaw::Constant { rolling_coefficient: bounds::ROLLING.check(rolling_coefficient)? },
        drag_area_m2: bounds::DRAG_AREA.check(drag_area_m2)?,
        air_density: bounds::AIR_DENSITY.check(air_density)?,
        grade_percent: bounds::GRADE.check(grade_percent)?,
        head_wind_kmh: bounds::HEAD_WIND.check(head_wind_kmh)?,
    })
}

pub(super) fn resistance(road_speed_kmh: f64, load: &RoadLoad) -> Given {
    bounds::ROAD_SPEED.check(road_speed_kmh)?;
    let at = load.at(road_speed_kmh);
    Ok(vec![
        figure("total", at.total_newtons, Unit::Newton),
        figure("rolling", at.rolling_newtons, Unit::Newton),
        figure("slope", at.slope_newtons, Unit::Newton),
        figure("air", at.air_newtons, Unit::Newton),
        figure("wheelPower", at.total_newtons * road_speed_kmh / 3600.0, Unit::Kilowatt),
    ])
}

pub(super) fn speed(wheel_kw: f64, load: &RoadLoad) -> Given {
    Bound { field: "wheelKw", label: "Power at the wheel", ..bounds::PEAK_POWER }.check(wheel_kw)?;
    let kmh = gearing::power_limited_speed(wheel_kw, load)?;
    Ok(vec![
        figure("roadSpeed", kmh, Unit::KilometreHour),
        figure("rolling", load.at(kmh).rolling_newtons, Unit::Newton),
        figure("air", load.at(kmh).air_newtons, Unit::Newton),
    ])
}

pub(super) fn thrust(crank_nm: f64, overall_ratio: f64, drive_efficiency: f64, wheel_radius_mm: f64) -> Given {
    bounds::CRANK_TORQUE.check(crank_nm)?;
    bounds::OVERALL_RATIO.check(overall_ratio)?;
    bounds::DRIVE_EFFICIENCY.check(drive_efficiency)?;
    bounds::WHEEL_RADIUS.check(wheel_radius_mm)?;
    let newtons = gearing::thrust(crank_nm, overall_ratio, drive_efficiency, wheel_radius_mm);
    Ok(vec![figure("thrust", newtons, Unit::Newton)])
}

pub(super) fn cubic(engine_rpm: f64, peak_power_kw: f64, peak_power_rpm: f64) -> Given {
    Bound { min: 100.0, ..bounds::ENGINE_SPEED }.check(engine_rpm)?;
    bounds::PEAK_POWER.check(peak_power_kw)?;
    Bound { field: "peakPowerRpm", ..bounds::REV_LIMIT }.check(peak_power_rpm)?;
    let kw = gearing::cubic_law(engine_rpm, peak_power_kw, peak_power_rpm);
    Ok(vec![
        figure("power", kw, Unit::Kilowatt),
        figure("torque", gearing::torque_of(kw, engine_rpm), Unit::NewtonMetre),
    ])
}

pub(super) fn peaks(engine_rpm: f64, power: (f64, f64), torque: (f64, f64)) -> Given {
    Bound { min: 100.0, ..bounds::ENGINE_SPEED }.check(engine_rpm)?;
    bounds::PEAK_POWER.check(power.0)?;
    Bound { field: "peakPowerRpm", ..bounds::REV_LIMIT }.check(power.1)?;
    bounds::PEAK_TORQUE.check(torque.0)?;
    bounds::PEAK_TORQUE_RPM.check(torque.1)?;
    gearing::peaks_agree(power, torque)?;
    let kw = gearing::power_between_peaks(engine_rpm, power, torque);
    Ok(vec![
        figure("power", kw, Unit::Kilowatt),
        figure("torque", gearing::torque_of(kw, engine_rpm), Unit::NewtonMetre),
    ])
}
