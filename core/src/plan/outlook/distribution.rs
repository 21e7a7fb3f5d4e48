//! Distributions: how unlike a hands-on time or a delivery may turn out, and draws from them that lie evenly.
//!
//! Sources: triangular and lognormal distribution, inverse of the distribution function, checked against `scipy.stats`
//! (standing: computed). Even draws: Latin hypercube sampling (McKay, Beckman and Conover, “A comparison of three methods
//! for selecting values of input variables”, Technometrics 21(2), 1979, standing: from memory).

use statrs::distribution::{ContinuousCDF, LogNormal, Normal, Triangular};

use crate::plan::search::Dice;
use crate::record::Delivery;

/// Something that may turn out shorter or longer; any unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Spread {
    /// Never less than the least, never more than the most.
    Triangular {
        /// At best.
        least: f64,
        /// As a rule.
        likely: f64,
        /// At worst.
        most: f64,
    },
    /// Half of the time less than the median, once in ten more than the 90th percentile, with no end to it.
    Lognormal {
        /// Median; above zero.
        median: f64,
        /// The 90th percentile: what nine in ten stay below; not below the median.
        p90: f64,
    },
}

impl Spread {
    /// The value that it stays below with a share of `q`, 0 to 1.
    ///
    /// ```
    /// use layshaft_core::plan::Spread;
    /// let parcel = Spread::Lognormal { median: 5.0, p90: 12.0 };
    /// assert!((parcel.quantile(0.8) - 8.88510).abs() < 1e-5);
    /// assert_eq!(parcel.quantile(0.5), 5.0);
    /// ```
    pub fn quantile(&self, q: f64) -> f64 {
        match *self {
            Spread::Triangular { least, likely, most } => triangular_quantile(least, likely, most, q),
            Spread::Lognormal { median, p90 } => lognormal_quantile(median, p90, q),
        }
    }
}

/// The value that a triangular spread stays below with a share of `q`, 0 to 1.
///
/// ```text
/// c = (m − a)/(b − a);  q < c: x = a + √(q (b − a)(m − a));  else x = b − √((1 − q)(b − a)(b − m))
/// ```
///
/// a least, m likeliest, b most, in any unit.
///
/// ```
/// use layshaft_core::plan::triangular_quantile;
/// assert!((triangular_quantile(2.0, 5.0, 14.0, 0.5) - 6.65153).abs() < 1e-5);
/// assert!((triangular_quantile(2.0, 5.0, 14.0, 0.8) - 9.35242).abs() < 1e-5);
/// assert_eq!(triangular_quantile(3.0, 3.0, 3.0, 0.9), 3.0);
/// ```
pub fn triangular_quantile(least: f64, likeliest: f64, most: f64, q: f64) -> f64 {
    match Triangular::new(least, most, likeliest) {
        Ok(spread) if is_share(q) => spread.inverse_cdf(q),
        // It has no width at all.
        _ => likeliest,
    }
}

/// The value that a lognormal spread stays below with a share of `q`, 0 to 1, both ends left out.
///
/// ```text
/// x = P50 · e^(σ z(q));  σ = ln(P90/P50)/z(0.9);  z the quantile of the standard normal distribution, z(0.9) = 1.28155
/// ```
///
/// ```
/// use layshaft_core::plan::lognormal_quantile;
/// assert!((lognormal_quantile(5.0, 12.0, 0.9) - 12.0).abs() < 1e-9);
/// assert_eq!(lognormal_quantile(7.0, 7.0, 0.99), 7.0);
/// ```
pub fn lognormal_quantile(median: f64, p90: f64, q: f64) -> f64 {
    // Around a median of 1, so that the median itself comes out to the last digit.
    match LogNormal::new(0.0, (p90 / median).ln() / Normal::standard().inverse_cdf(0.9)) {
        Ok(spread) if is_share(q) => median * spread.inverse_cdf(q),
        // It has no width at all.
        _ => median,
    }
}

/// Whether the library takes it: it panics on what is no share.
fn is_share(q: f64) -> bool {
    (0.0..=1.0).contains(&q)
}

/// Draws for some variables: each of them falls once into every one of `runs` equal shares, in an order of its own.
pub(crate) struct Draws(Vec<Vec<f64>>);

impl Draws {
    /// Draws for so many variables and runs; the same seed gives the same draws.
    pub(crate) fn of(variables: usize, runs: usize, seed: u64) -> Draws {
        let mut dice = Dice::of(seed);
        let column = |_| {
            let mut shares: Vec<f64> = (0..runs).map(|run| (run as f64 + dice.roll()) / runs as f64).collect();
            for last in (1..runs).rev() {
                shares.swap(last, dice.below(last + 1));
            }
            shares
        };
        Draws((0..variables).map(column).collect())
    }

    /// The share drawn for a variable in a run, between 0 and 1; one half where there is no such draw.
    pub(crate) fn share(&self, variable: usize, run: usize) -> f64 {
        self.0.get(variable).and_then(|column| column.get(run)).copied().unwrap_or(0.5).clamp(1e-9, 1.0 - 1e-9)
    }
}

/// The value that the latest of several stays below with a share of `q`, by so many even draws.
///
/// What meets at one job is waited for together: the latest of two is later than either as a rule (merge bias).
pub fn latest_of(spreads: &[Spread], q: f64, runs: usize) -> f64 {
    let draws = Draws::of(spreads.len(), runs, 1);
    let latest =
        |run| spreads.iter().enumerate().map(|(at, one)| one.quantile(draws.share(at, run))).fold(0.0, f64::max);
    let mut values: Vec<f64> = (0..runs).map(latest).collect();
    values.sort_by(f64::total_cmp);
    values.get((runs as f64 * q) as usize).or(values.last()).copied().unwrap_or(0.0)
}

impl Delivery {
    /// How the days are spread.
    pub(crate) fn spread(&self) -> Spread {
        if self.long_tail == Some(true) {
            return Spread::Lognormal { median: self.likely_days, p90: self.most_days };
        }
        Spread::Triangular { least: self.least_days, likely: self.likely_days, most: self.most_days }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn draws_fall_once_into_every_share_and_in_another_order_for_each_variable() {
        let draws = Draws::of(2, 500, 7);
        for variable in 0..2 {
            let mut shares: Vec<usize> = (0..500).map(|run| (draws.share(variable, run) * 500.0) as usize).collect();
            assert_ne!(shares[..4], [0, 1, 2, 3]);
            shares.sort_unstable();
            assert_eq!(shares, (0..500).collect::<Vec<_>>());
        }
        let both: f64 =
            (0..500).map(|run| (draws.share(0, run) - 0.5) * (draws.share(1, run) - 0.5)).sum::<f64>() / 500.0;
        assert!(both.abs() < 0.01, "unlike variables go their own ways: {both}");
    }

    /// scipy: the product of both distribution functions, halves at 8.7443 and four fifths at 11.6158.
    #[test]
    fn the_latest_of_two_is_where_the_product_of_both_distributions_is() {
        let lognormal = Spread::Lognormal { median: 7.0, p90: 7.0 * (0.5_f64 * 1.281_551_565_5).exp() };
        let two = [Spread::Triangular { least: 2.0, likely: 5.0, most: 14.0 }, lognormal];
        assert!((latest_of(&two, 0.5, 2_000) - 8.7443).abs() < 0.15);
        assert!((latest_of(&two, 0.8, 2_000) - 11.6158).abs() < 0.25);
    }

    #[test]
    fn no_width_gives_the_middle_and_what_is_no_share_does_not_panic() {
        for q in [0.0, 0.3, 1.0, -0.1, 1.1, f64::NAN] {
            assert_eq!(triangular_quantile(3.0, 3.0, 3.0, q), 3.0);
            assert_eq!(lognormal_quantile(7.0, 7.0, q), 7.0);
        }
        assert_eq!(triangular_quantile(2.0, 5.0, 14.0, f64::NAN), 5.0);
        assert_eq!((triangular_quantile(2.0, 5.0, 14.0, 0.0), triangular_quantile(2.0, 5.0, 14.0, 1.0)), (2.0, 14.0));
    }
}
