//! What the gears do for each other: drops between them, cruising, and whether top gear suits the engine.

use layshaft_wire::wire;

use super::at_wheel::power_at_wheel;
use super::machine::Machine;
use super::top_speed::{HeldBy, TopSpeed, power_limited_speed};
use crate::gearing::formulas::{drop_to, wanted_ratio};
use crate::quantity::percent_change;
use crate::record::Drive;

/// The drop of engine speed from one gear to the next.
#[wire]
pub struct GearDrop {
    /// From this gear.
    pub from_gear: u32,
    /// To the next one.
    pub to_gear: u32,
    /// Engine speed before, revolutions a minute: the limit.
    pub from_rpm: f64,
    /// Engine speed after, revolutions a minute.
    pub to_rpm: f64,
    /// Drop, per cent.
    pub drop_percent: f64,
}

/// Cruising at a speed.
#[wire]
pub struct Cruise {
    /// Road speed, km/h.
    pub road_speed_kmh: f64,
    /// Engine speed in top, revolutions a minute.
    pub rpm_in_top: f64,
    /// Power that it takes at the wheel, kW.
    pub needed_kw: f64,
    /// Power at the wheel at hand in top, kW.
    pub at_hand_kw: f64,
    /// The highest gear that holds it; none where no gear does.
    pub highest_gear: Option<u32>,
}

/// Whether top gear suits the engine.
#[wire]
pub enum GearingVerdict {
    /// Top speed comes near peak power.
    Suits,
    /// Too tall: the engine never reaches peak power in top.
    TooTall,
    /// Too short: the engine is past peak power, or at its limit.
    TooShort,
}

/// Top gear against the engine's peak power.
#[wire]
pub struct GearingMatch {
    /// Verdict.
    pub verdict: GearingVerdict,
    /// Highest speed of top gear, km/h; none where it holds none.
    pub top_gear_kmh: Option<f64>,
    /// Engine speed there, revolutions a minute.
    pub top_gear_rpm: Option<f64>,
    /// Engine speed of peak power, revolutions a minute.
    pub peak_power_rpm: f64,
    /// The one against the other, per cent; below zero it falls short of peak power.
    pub off_percent: Option<f64>,
    /// Speed that peak power would hold with the best possible gearing, km/h.
    pub best_kmh: Option<f64>,
    /// Final drive ratio that would give it in top gear.
    pub best_final_ratio: Option<f64>,
}

/// Within this of peak power, per cent, top gear suits (common practice).
const SUITS_PERCENT: f64 = 3.0;

/// The drops from gear to gear at the engine's limit.
pub(super) fn drops(machine: &Machine) -> Vec<GearDrop> {
    let from_rpm = machine.engine.limit_rpm;
    let pairs = machine.train.gears.windows(2).filter_map(|pair| match pair {
        [low, high] => Some((low, high)),
        _ => None,
    });
    pairs
        .map(|(low, high)| {
            let to_rpm = drop_to(from_rpm, low.overall_ratio, high.overall_ratio);
            GearDrop {
                from_gear: low.gear,
                to_gear: high.gear,
                from_rpm,
                to_rpm,
                drop_percent: (1.0 - to_rpm / from_rpm) * 100.0,
            }
        })
        .collect()
}

/// Cruising at a speed; none where the bike has no gears.
pub(super) fn cruise(machine: &Machine, road_speed_kmh: f64) -> Option<Cruise> {
    let top = machine.train.top()?;
    let rpm_in_top = machine.rpm(top.overall_ratio, road_speed_kmh);
    let holds = |overall: f64| {
        machine.rpm(overall, road_speed_kmh) <= machine.engine.limit_rpm
            && machine.spare_watts(overall, road_speed_kmh) >= 0.0
    };
    Some(Cruise {
        road_speed_kmh,
        rpm_in_top,
        needed_kw: machine.resistance(road_speed_kmh).total_newtons * road_speed_kmh / 3600.0,
        at_hand_kw: machine.wheel_kw(rpm_in_top),
        highest_gear: machine.train.gears.iter().rev().find(|line| holds(line.overall_ratio)).map(|line| line.gear),
    })
}

/// Top gear against peak power.
pub(super) fn gearing_match(machine: &Machine, drive: &Drive) -> Option<GearingMatch> {
    let line = machine.train.top()?;
    let top: Option<TopSpeed> = machine.top_of(line.gear, line.overall_ratio);
    let (peak_kw, peak_rpm) = machine.engine.peak;
    let off_percent = top.as_ref().map(|top| percent_change(peak_rpm, top.rpm));
    let at_limit = top.as_ref().is_some_and(|top| top.held_by == HeldBy::EngineLimit);
    let verdict = match off_percent {
        Some(off) if off > SUITS_PERCENT || at_limit => GearingVerdict::TooShort,
        Some(off) if off >= -SUITS_PERCENT => GearingVerdict::Suits,
        _ => GearingVerdict::TooTall,
    };
    let best_kmh = power_limited_speed(power_at_wheel(peak_kw, machine.efficiency), &machine.load).ok();
    let gears = drive.primary_ratio.zip(drive.gear_ratios.last().copied());
    let best_final_ratio = best_kmh
        .zip(gears)
        .map(|(kmh, (primary, gear))| wanted_ratio(peak_rpm, kmh, primary, gear, machine.train.circumference_mm));
    Some(GearingMatch {
        verdict,
        top_gear_kmh: top.as_ref().map(|top| top.kmh),
        top_gear_rpm: top.as_ref().map(|top| top.rpm),
        peak_power_rpm: peak_rpm,
        off_percent,
        best_kmh,
        best_final_ratio,
    })
}
