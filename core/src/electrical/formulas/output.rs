//! Alternator output against engine speed, from measured points or from the one point on the plate.
//!
//! Method: straight lines between points; with one point only, the shape of a fixed-magnet alternator that feeds a
//! battery through its own reactance (circuit theory, from memory), which is an assumption and is shown as one.

use super::sources;
use crate::bounds;
use crate::quantity::{formula, within};
use crate::record::OutputPoint;

/// Share of the rated speed at which a nominal alternator begins to give current. Common practice, no source: an
/// alternator rated at 5,000 rpm begins to charge a little below idle.
const CUT_IN: f64 = 0.25;

/// Nominal output of an alternator of which one point is known, watts.
///
/// `P = P_r sqrt(1 - (n0/n)^2) / sqrt(1 - (n0/n_r)^2)` from the cut-in speed `n0 = n_r / 4` to the rated speed `n_r`,
/// nothing below, P_r above; P in watts, n in revolutions a minute. Source: a fixed-magnet alternator with the
/// electromotive force k n behind the reactance L n, loaded with a constant voltage (from memory); the cut-in speed is
/// common practice, no source. Range: an estimate until two points are measured; winding losses and weak magnets give
/// less at low speed.
///
/// ```
/// use layshaft_core::record::OutputPoint;
/// use layshaft_core::electrical::nominal_output;
/// let plate = OutputPoint { rpm: 5000.0, watts: 126.0 };
/// assert_eq!(nominal_output(&plate, 1250.0), 0.0);
/// assert!((nominal_output(&plate, 2500.0) - 112.7).abs() < 0.05);
/// assert_eq!(nominal_output(&plate, 9000.0), 126.0);
/// ```
pub fn nominal_output(rated: &OutputPoint, rpm: f64) -> f64 {
    let speed = rpm / rated.rpm;
    if speed <= CUT_IN {
        return 0.0;
    }
    rated.watts * (share_above_cut_in(speed) / share_above_cut_in(1.0)).min(1.0)
}

fn share_above_cut_in(speed: f64) -> f64 {
    (1.0 - (CUT_IN / speed).powi(2)).sqrt()
}

/// Output at an engine speed, watts; none when no point is known.
///
/// Two or more points: straight lines between them, from nothing at standstill to the first, and no more than the last
/// beyond it. One point: [`nominal_output`].
///
/// ```
/// use layshaft_core::record::OutputPoint;
/// use layshaft_core::electrical::output_at;
/// let curve = [OutputPoint { rpm: 2000.0, watts: 60.0 }, OutputPoint { rpm: 5000.0, watts: 120.0 }];
/// assert_eq!(output_at(&curve, 3000.0), Some(80.0));
/// assert_eq!(output_at(&curve, 8000.0), Some(120.0));
/// assert_eq!(output_at(&[], 3000.0), None);
/// ```
pub fn output_at(curve: &[OutputPoint], rpm: f64) -> Option<f64> {
    let points = in_order(curve);
    match points.as_slice() {
        [] => None,
        [rated] => Some(nominal_output(rated, rpm)),
        [.., last] if rpm >= last.rpm => Some(last.watts),
        _ => spans(&points).find(|(_, to)| rpm <= to.rpm).map(|(from, to)| {
            let along = (rpm.max(0.0) - from.rpm) / (to.rpm - from.rpm);
            from.watts + along * (to.watts - from.watts)
        }),
    }
}

/// Lowest engine speed at which the output meets a load, revolutions a minute; none when it never does.
///
/// The inverse of [`output_at`]; for one point `n = n0 / sqrt(1 - s^2)` with `s = P/P_r sqrt(1 - (n0/n_r)^2)`.
///
/// ```
/// use layshaft_core::record::OutputPoint;
/// use layshaft_core::electrical::{balance_speed, output_at};
/// let plate = [OutputPoint { rpm: 5000.0, watts: 126.0 }];
/// let speed = balance_speed(&plate, 60.0).unwrap();
/// assert!((output_at(&plate, speed).unwrap() - 60.0).abs() < 1e-9);
/// assert_eq!(balance_speed(&plate, 130.0), None);
/// ```
pub fn balance_speed(curve: &[OutputPoint], watts: f64) -> Option<f64> {
    if watts <= 0.0 {
        return (!curve.is_empty()).then_some(0.0);
    }
    let points = in_order(curve);
    if let [rated] = points.as_slice() {
        let share = watts / rated.watts * share_above_cut_in(1.0);
        return (watts <= rated.watts).then(|| CUT_IN * rated.rpm / (1.0 - share * share).sqrt());
    }
    spans(&points).find(|(_, to)| to.watts >= watts).map(|(from, to)| {
        let along = (watts - from.watts) / (to.watts - from.watts);
        from.rpm + along * (to.rpm - from.rpm)
    })
}

/// The output as a line to draw, from standstill to `to_rpm`, lowest speed first; empty when no point is known.
///
/// ```
/// use layshaft_core::record::OutputPoint;
/// use layshaft_core::electrical::drawn_output;
/// let curve = [OutputPoint { rpm: 2000.0, watts: 60.0 }, OutputPoint { rpm: 5000.0, watts: 120.0 }];
/// let line: Vec<f64> = drawn_output(&curve, 9000.0).iter().map(|point| point.rpm).collect();
/// assert_eq!(line, [0.0, 2000.0, 5000.0, 9000.0]);
/// ```
pub fn drawn_output(curve: &[OutputPoint], to_rpm: f64) -> Vec<OutputPoint> {
    let points = in_order(curve);
    let mut line = match points.as_slice() {
        [] => return Vec::new(),
        [rated] => nominal_line(rated),
        _ => points.clone(),
    };
    if line.first().is_some_and(|first| first.rpm > 0.0) {
        line.insert(0, STANDSTILL);
    }
    if let Some(last) = line.last().filter(|last| last.rpm < to_rpm) {
        line.push(OutputPoint { rpm: to_rpm, watts: last.watts });
    }
    line
}

/// A turned-off engine gives nothing.
const STANDSTILL: OutputPoint = OutputPoint { rpm: 0.0, watts: 0.0 };

/// The nominal curve in steps that grow with speed: it is steep above the cut-in speed and flat at the rated one.
fn nominal_line(rated: &OutputPoint) -> Vec<OutputPoint> {
    let steps = 24;
    let line = (0..=steps).map(|step| {
        let along = f64::from(step) / f64::from(steps);
        let rpm = rated.rpm * (CUT_IN + (1.0 - CUT_IN) * along * along);
        OutputPoint { rpm, watts: nominal_output(rated, rpm) }
    });
    line.collect()
}

/// The points that can be used, lowest speed first, one for each speed.
fn in_order(curve: &[OutputPoint]) -> Vec<OutputPoint> {
    let usable = |point: &&OutputPoint| point.rpm.is_finite() && point.rpm > 0.0 && point.watts.is_finite();
    let mut points: Vec<OutputPoint> = curve.iter().filter(usable).cloned().collect();
    points.sort_by(|a, b| a.rpm.total_cmp(&b.rpm).then(a.watts.total_cmp(&b.watts)));
    points.dedup_by(|next, kept| next.rpm == kept.rpm);
    points
}

/// The straight stretches of the curve, the first one from standstill.
fn spans(points: &[OutputPoint]) -> impl Iterator<Item = (&OutputPoint, &OutputPoint)> {
    std::iter::once(&STANDSTILL).chain(points).zip(points)
}

formula! {
    /// Output of an alternator of which one point is known, by the nominal curve.
    NominalOutput in Electrics, "P = P_r · √(1 − (n₀ / n)²) / √(1 − (n₀ / n_r)²), n₀ = n_r / 4"
    takes {
        /// Output at the rated speed, watts.
        "P_r" alternator_watts: f64 = within(&bounds::ALTERNATOR_WATTS);
        /// Rated speed, revolutions a minute.
        "n_r" rated_rpm: f64 = within(&bounds::REV_LIMIT);
        /// Engine speed, revolutions a minute.
        "n" engine_rpm: f64 = within(&bounds::ENGINE_SPEED);
    }
    gives {
        /// Output.
        watts "P" Watt;
    }
    from sources::nominal_output();
    it => {
        let rated = OutputPoint { rpm: it.rated_rpm, watts: it.alternator_watts };
        Ok([nominal_output(&rated, it.engine_rpm)])
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn curve(points: &[(f64, f64)]) -> Vec<OutputPoint> {
        points.iter().map(|&(rpm, watts)| OutputPoint { rpm, watts }).collect()
    }

    #[test]
    fn points_in_any_order_with_one_entered_twice_give_the_same_curve() {
        let tidy = curve(&[(1500.0, 30.0), (3000.0, 90.0), (5000.0, 126.0)]);
        let untidy = curve(&[(5000.0, 126.0), (1500.0, 30.0), (3000.0, 90.0), (1500.0, 30.0)]);
        for rpm in [0.0, 800.0, 1500.0, 2200.0, 4000.0, 9000.0] {
            assert_eq!(output_at(&tidy, rpm), output_at(&untidy, rpm));
        }
        assert_eq!(output_at(&tidy, 750.0), Some(15.0));
    }

    #[test]
    fn output_that_falls_again_at_high_speed_meets_the_load_where_it_first_reaches_it() {
        let sagging = curve(&[(2000.0, 50.0), (4000.0, 150.0), (8000.0, 120.0)]);
        assert_eq!(balance_speed(&sagging, 130.0), Some(3600.0));
        assert_eq!(balance_speed(&sagging, 160.0), None);
        assert_eq!(output_at(&sagging, 6000.0), Some(135.0));
    }

    #[test]
    fn nothing_known_meets_no_load_and_no_load_is_met_at_standstill() {
        assert_eq!(balance_speed(&[], 10.0), None);
        assert_eq!(balance_speed(&[], 0.0), None);
        assert_eq!(balance_speed(&curve(&[(5000.0, 126.0)]), 0.0), Some(0.0));
    }

    #[test]
    fn the_drawn_line_is_the_curve() {
        let plate = curve(&[(5000.0, 126.0)]);
        for point in drawn_output(&plate, 9500.0) {
            assert_eq!(output_at(&plate, point.rpm), Some(point.watts));
        }
    }

    proptest! {
        #[test]
        fn balance_speed_is_the_inverse_of_output(rated_rpm in 2000.0..9000.0_f64, rated in 20.0..500.0_f64, share in 0.001..1.0_f64) {
            let plate = curve(&[(rated_rpm, rated)]);
            let speed = balance_speed(&plate, share * rated).unwrap();
            prop_assert!((output_at(&plate, speed).unwrap() - share * rated).abs() < 1e-6 * rated);

            let measured = curve(&[(rated_rpm * 0.3, rated * 0.4), (rated_rpm * 0.6, rated * 0.8), (rated_rpm, rated)]);
            let speed = balance_speed(&measured, share * rated).unwrap();
            prop_assert!((output_at(&measured, speed).unwrap() - share * rated).abs() < 1e-6 * rated);
        }

        #[test]
        fn more_load_never_balances_at_a_lower_speed(a in 1.0..126.0, b in 1.0..126.0) {
            let plate = curve(&[(5000.0, 126.0)]);
            let speed = |watts| balance_speed(&plate, watts).unwrap();
            prop_assert!(speed(f64::min(a, b)) <= speed(f64::max(a, b)));
        }
    }
}
