//! The engine's power against its speed: from points of a curve, or from peak power (and peak torque) with an assumed shape.

use crate::bounds;
use crate::error::Refused;
use crate::gearing::message::{GearingRefused, ThrustMessage};
use crate::message::FieldMessage;
use crate::record::{Identity, PowerPoint};
use crate::units::Unit;

/// Power of a spark-ignition engine by the cubic law, kW.
///
/// `P = P_M · (x + x² − x³)`, `x = n / n_M`
///
/// - `P_M` peak power, kW, at `n_M`; `n` engine speed, revolutions a minute
///
/// Source: the law for spark-ignition engines in Jazar, *Vehicle Dynamics*, chapter on forward dynamics (from memory). Range: an
/// assumption about an unknown engine; peak torque comes out a quarter above the torque at peak power, at half its speed. Small
/// engines tuned for speed lie below it there.
///
/// ```
/// use layshaft_core::gearing::cubic_law;
/// assert_eq!(cubic_law(8500.0, 11.8, 8500.0), 11.8);
/// assert!(cubic_law(4250.0, 11.8, 8500.0) < 0.63 * 11.8);
/// ```
pub fn cubic_law(engine_rpm: f64, peak_kw: f64, peak_rpm: f64) -> f64 {
    let x = engine_rpm / peak_rpm;
    (peak_kw * (x + x * x - x * x * x)).max(0.0)
}

/// Torque that a power means at an engine speed, N m: `T = P · 60,000 / (2π · n)`, `P` in kW, `n` revolutions a minute.
///
/// Source: definition of power. Range: `n` above zero.
///
/// ```
/// assert!((layshaft_core::gearing::torque_of(11.8, 8500.0) - 13.257).abs() < 1e-3);
/// ```
pub fn torque_of(kw: f64, engine_rpm: f64) -> f64 {
    kw * 60_000.0 / (std::f64::consts::TAU * engine_rpm)
}

/// Power between and beside two known peaks, kW.
///
/// Torque: below its peak it falls as a parabola to 0.65 of it at standstill; between the peaks it follows a cubic with level
/// tangent at peak torque and with the tangent of level power at peak power; beyond, power falls as a parabola, by 5 % at a tenth
/// more speed.
///
/// - `peak` power, kW, and its engine speed; `torque` N m and its engine speed; speeds in revolutions a minute
///
/// Source: common practice, no source: the smoothest shape through what a manual prints. Range: peak torque below peak power in
/// speed, see the refusals of the page. Never above peak power.
///
/// ```
/// use layshaft_core::gearing::{power_between_peaks, torque_of};
/// let at = |rpm| power_between_peaks(rpm, (11.8, 8500.0), (13.9, 7000.0));
/// assert!((at(8500.0) - 11.8).abs() < 1e-12);
/// assert!((torque_of(at(7000.0), 7000.0) - 13.9).abs() < 1e-9);
/// ```
pub fn power_between_peaks(engine_rpm: f64, peak: (f64, f64), torque: (f64, f64)) -> f64 {
    /// Torque at standstill against peak torque.
    const STANDSTILL: f64 = 0.65;
    /// Speed beyond peak power at which no power would be left, as a share of its speed.
    const SPENT: f64 = 0.45;
    let ((peak_kw, peak_rpm), (peak_nm, torque_rpm)) = (peak, torque);
    if engine_rpm >= peak_rpm {
        let beyond = (engine_rpm / peak_rpm - 1.0) / SPENT;
        return (peak_kw * (1.0 - beyond * beyond)).max(0.0);
    }
    let nm = if engine_rpm <= torque_rpm {
        let below = 1.0 - engine_rpm / torque_rpm;
        peak_nm * (1.0 - (1.0 - STANDSTILL) * below * below)
    } else {
        let (width, end_nm) = (peak_rpm - torque_rpm, torque_of(peak_kw, peak_rpm));
        // No steeper than three times the mean slope: then the cubic does not rise above peak torque on its way.
        let slope = (-end_nm / peak_rpm * width).max(3.0 * (end_nm - peak_nm));
        let t = (engine_rpm - torque_rpm) / width;
        let start = (1.0 + 2.0 * t) * (1.0 - t) * (1.0 - t);
        let end = t * t * (3.0 - 2.0 * t);
        start * peak_nm + end * end_nm + t * t * (t - 1.0) * slope
    };
    (nm * std::f64::consts::TAU * engine_rpm / 60_000.0).min(peak_kw)
}

/// The engine's power at every speed up to its limit.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Engine {
    pub shape: Shape,
    /// Engine speed limit, revolutions a minute.
    pub limit_rpm: f64,
    /// The limit is on the bike; else assumed.
    pub limit_known: bool,
    /// Peak power, kW, and its engine speed.
    pub peak: (f64, f64),
}

/// Where the power comes from.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Shape {
    /// Points, lowest speed first; straight between them.
    Points(Vec<PowerPoint>),
    /// Peak power and peak torque.
    Peaks { torque: (f64, f64) },
    /// Peak power alone.
    PeakOnly,
}

/// Limit where none is known, against the speed of peak power (common practice).
const USUAL_LIMIT: f64 = 1.12;

impl Engine {
    /// The engine of a bike: points where there are some, else the peaks of its papers.
    pub fn of(identity: &Identity, points: &[PowerPoint], limit: Option<f64>) -> Result<Self, Refused> {
        let limit_rpm = bounds::REV_LIMIT.check_known(limit)?;
        let points = crate::record::power_in_order(points.to_vec())?;
        if let Some(last) = points.last() {
            let peak = points
                .iter()
                .fold((0.0, 0.0), |best, point| if point.kw > best.0 { (point.kw, point.rpm) } else { best });
            let limit = limit_rpm.map_or(last.rpm, |limit| limit.min(last.rpm));
            return Ok(Self { limit_rpm: limit, limit_known: limit_rpm.is_some(), peak, shape: Shape::Points(points) });
        }
        let kw = bounds::PEAK_POWER.need(identity.peak_power_kw)?;
        let rpm = bounds::REV_LIMIT
            .named("peakPowerRpm", FieldMessage::EngineSpeedOfPeakPower)
            .need(identity.peak_power_rpm)?;
        let nm = bounds::PEAK_TORQUE.check_known(identity.peak_torque_nm)?;
        let at = bounds::PEAK_TORQUE_RPM.check_known(identity.peak_torque_rpm)?;
        let shape = match nm.zip(at) {
            Some(torque) => {
                peaks_agree((kw, rpm), torque)?;
                Shape::Peaks { torque }
            }
            None => Shape::PeakOnly,
        };
        let limit = limit_rpm.unwrap_or(rpm * USUAL_LIMIT);
        Ok(Self { shape, limit_rpm: limit, limit_known: limit_rpm.is_some(), peak: (kw, rpm) })
    }

    /// Power at the crankshaft, kW; nothing above the limit.
    pub fn kw_at(&self, rpm: f64) -> f64 {
        if rpm > self.limit_rpm * (1.0 + 1e-12) {
            return 0.0;
        }
        match &self.shape {
            Shape::Points(points) => between_points(points, rpm),
            Shape::Peaks { torque } => power_between_peaks(rpm, self.peak, *torque),
            Shape::PeakOnly => cubic_law(rpm, self.peak.0, self.peak.1),
        }
    }

    /// What was assumed about the shape, in words.
    pub fn assumption(&self) -> ThrustMessage {
        match self.shape {
            Shape::Points(_) => ThrustMessage::AssumedPoints,
            Shape::Peaks { .. } => ThrustMessage::AssumedPeaks,
            Shape::PeakOnly => ThrustMessage::AssumedPeak,
        }
    }
}

fn between_points(points: &[PowerPoint], rpm: f64) -> f64 {
    let Some(first) = points.first() else { return 0.0 };
    if rpm <= first.rpm {
        return first.kw * rpm / first.rpm;
    }
    let pair = points.windows(2).find_map(|pair| match pair {
        [low, high] if rpm <= high.rpm => Some((low, high)),
        _ => None,
    });
    pair.map_or(0.0, |(low, high)| low.kw + (high.kw - low.kw) * (rpm - low.rpm) / (high.rpm - low.rpm))
}

/// Refuses peaks that no engine can have together: power (kW) and torque (N m), each with its engine speed.
///
/// ```
/// use layshaft_core::gearing::peaks_agree;
/// assert!(peaks_agree((11.8, 8500.0), (13.9, 7000.0)).is_ok());
/// assert!(peaks_agree((11.8, 8500.0), (20.0, 7000.0)).is_err());
/// ```
pub fn peaks_agree((kw, rpm): (f64, f64), (nm, at): (f64, f64)) -> Result<(), Refused> {
    let conflict =
        |field: &str, reason: GearingRefused| Err(Refused::Conflict { field: field.to_owned(), reason: reason.into() });
    let (power, power_at) = (Unit::Kilowatt.of(kw), Unit::Rpm.of(rpm));
    let (torque, torque_at) = (Unit::NewtonMetre.of(nm), Unit::Rpm.of(at));
    if at >= rpm {
        return conflict("peakTorqueRpm", GearingRefused::PeaksOrder { torque_at, power_at });
    }
    let end = torque_of(kw, rpm);
    // Rounded figures of a manual may differ by a little.
    if nm < 0.99 * end {
        let there = Unit::NewtonMetre.of(end);
        return conflict("peakTorqueNm", GearingRefused::TorqueTooSmall { power, at: power_at, there, torque });
    }
    let there = nm * std::f64::consts::TAU * at / 60_000.0;
    if there > 1.01 * kw {
        let there = Unit::Kilowatt.of(there);
        return conflict("peakTorqueNm", GearingRefused::TorqueTooLarge { torque, at: torque_at, there, power });
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn identity(kw: f64, rpm: f64, torque: Option<(f64, f64)>) -> Identity {
        Identity {
            peak_power_kw: Some(kw),
            peak_power_rpm: Some(rpm),
            peak_torque_nm: torque.map(|torque| torque.0),
            peak_torque_rpm: torque.map(|torque| torque.1),
            ..Identity::default()
        }
    }

    #[test]
    fn the_cubic_law_has_its_peaks_where_it_should() {
        let steps = (1..=120).map(|step| f64::from(step) / 100.0);
        assert!(steps.clone().all(|x| cubic_law(x * 8000.0, 10.0, 8000.0) <= 10.0 + 1e-12));
        let most = steps.map(|x| torque_of(cubic_law(x * 8000.0, 10.0, 8000.0), x * 8000.0)).fold(0.0, f64::max);
        assert!((most - 1.25 * torque_of(10.0, 8000.0)).abs() < 1e-9);
    }

    #[test]
    fn points_are_followed_and_end_at_the_last() {
        let points = [
            PowerPoint { rpm: 4000.0, kw: 5.0 },
            PowerPoint { rpm: 8000.0, kw: 11.0 },
            PowerPoint { rpm: 9000.0, kw: 10.0 },
        ];
        let engine = Engine::of(&Identity::default(), &points, Some(12_000.0)).unwrap();
        let at = |rpm| engine.kw_at(rpm);
        assert_eq!([at(2000.0), at(4000.0), at(6000.0), at(9000.0), at(9001.0)], [2.5, 5.0, 8.0, 10.0, 0.0]);
        assert_eq!((engine.limit_rpm, engine.peak), (9000.0, (11.0, 8000.0)));
        assert_eq!(Engine::of(&Identity::default(), &points, Some(8500.0)).unwrap().limit_rpm, 8500.0);
    }

    #[test]
    fn peaks_that_no_engine_can_have_are_refused_by_field() {
        let field = |torque| match Engine::of(&identity(11.8, 8500.0, Some(torque)), &[], None) {
            Err(Refused::Conflict { field, .. }) => field,
            other => panic!("{other:?}"),
        };
        assert_eq!(field((13.9, 9000.0)), "peakTorqueRpm");
        assert_eq!(field((12.0, 7000.0)), "peakTorqueNm");
        assert_eq!(field((20.0, 7000.0)), "peakTorqueNm");
        let missing = Engine::of(&Identity::default(), &[], None).unwrap_err();
        assert!(matches!(missing, Refused::Missing { field, .. } if field == "peakPowerKw"));
    }

    #[test]
    fn an_unknown_limit_is_assumed_and_says_so() {
        let engine = Engine::of(&identity(10.0, 8000.0, None), &[], None).unwrap();
        assert!(!engine.limit_known && (engine.limit_rpm - 8960.0).abs() < 1e-9);
        assert!(engine.kw_at(8961.0) == 0.0 && engine.kw_at(8000.0) == 10.0);
    }

    proptest! {
        #[test]
        fn the_curve_through_both_peaks_passes_neither(
            kw in 3.0..60.0, rpm in 5000.0..12_000.0, share in 0.5..0.95, more in 1.0..1.3, at in 0.05..1.3
        ) {
            let torque_rpm = share * rpm;
            let nm = torque_of(kw, rpm) * f64::min(more, 0.999 / share);
            let engine = Engine::of(&identity(kw, rpm, Some((nm, torque_rpm))), &[], Some(rpm * 1.3)).unwrap();
            let power = engine.kw_at(at * rpm);
            prop_assert!(power <= kw + 1e-9 && power >= 0.0);
            prop_assert!(torque_of(power, at * rpm) <= nm * (1.0 + 1e-9));
        }
    }
}
