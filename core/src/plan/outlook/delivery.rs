//! The formulas of deliveries by name.

use super::distribution::{Spread, latest_of};
use crate::bounds;
use crate::error::Refused;
use crate::plan::message::PlanRefusedMessage;
use crate::quantity::{Source, Standing, formula, within};
use crate::units::Unit;

/// Draws behind the later of two.
const DRAWS: usize = 20_000;

formula! {
    /// What a triangular spread stays below.
    TriangularQuantile in Plan, "q < c: x = a + √(q · (b − a) · (m − a)), else x = b − √((1 − q) · (b − a) · (b − m)), c = (m − a) / (b − a)"
    takes {
        /// At best, days.
        "a" least: f64 = within(&bounds::MOST_DAYS);
        /// As a rule, days.
        "m" likely: f64 = within(&bounds::MOST_DAYS);
        /// At worst, days.
        "b" most: f64 = within(&bounds::MOST_DAYS);
        /// Share, 0 to 1.
        "q" share: f64 = within(&bounds::QUANTILE);
    }
    gives {
        /// Quantile.
        quantile "x" Day;
    }
    from quantiles();
    it => triangle(it.least, it.likely, it.most).map(|spread| [spread.quantile(it.share)])
}

formula! {
    /// What a lognormal spread stays below.
    LognormalQuantile in Plan, "x = P50 · exp(σ · z(q)), σ = ln(P90 / P50) / z(0.9)"
    takes {
        /// Median, days.
        "P50" median: f64 = within(&bounds::TAIL_DAYS);
        /// The 90th percentile: what nine in ten stay below, days.
        "P90" p90: f64 = within(&bounds::TAIL_DAYS);
        /// Share, 0 to 1.
        "q" share: f64 = within(&bounds::QUANTILE);
    }
    gives {
        /// Quantile.
        quantile "x" Day;
    }
    from quantiles();
    it => long_tail(it.median, it.p90).map(|spread| [spread.quantile(it.share)])
}

formula! {
    /// What the later of two parcels stays below, by drawing.
    LaterOfTwo in Plan, "x = quantile q of max(triangular, lognormal), 20,000 even draws"
    takes {
        /// The triangular one at best, days.
        "a" least: f64 = within(&bounds::MOST_DAYS);
        /// The triangular one as a rule, days.
        "m" likely: f64 = within(&bounds::MOST_DAYS);
        /// The triangular one at worst, days.
        "b" most: f64 = within(&bounds::MOST_DAYS);
        /// The lognormal one: median, days.
        "P50" median: f64 = within(&bounds::TAIL_DAYS);
        /// The lognormal one: what nine in ten stay below, days.
        "P90" p90: f64 = within(&bounds::TAIL_DAYS);
        /// Share, 0 to 1.
        "q" share: f64 = within(&bounds::QUANTILE);
    }
    gives {
        /// Quantile.
        quantile "x" Day;
    }
    from quantiles();
    it => triangle(it.least, it.likely, it.most).and_then(|first| {
        let second = long_tail(it.median, it.p90)?;
        Ok([latest_of(&[first, second], it.share, DRAWS)])
    })
}

fn triangle(least: f64, likely: f64, most: f64) -> Result<Spread, Refused> {
    let [at_best, as_rule, at_worst] = [least, likely, most].map(|days| Unit::Day.of(days));
    let unless = PlanRefusedMessage::DaysOutOfOrder { least: at_best, likely: as_rule, most: at_worst };
    in_order("likely", &[least, likely, most], unless)?;
    Ok(Spread::Triangular { least, likely, most })
}

fn long_tail(median: f64, p90: f64) -> Result<Spread, Refused> {
    let unless = PlanRefusedMessage::MedianTooLate { median: Unit::Day.of(median), p90: Unit::Day.of(p90) };
    in_order("p90", &[median, p90], unless)?;
    Ok(Spread::Lognormal { median, p90 })
}

fn in_order(field: &str, days: &[f64], unless: PlanRefusedMessage) -> Result<(), Refused> {
    if days.is_sorted() {
        return Ok(());
    }
    Err(Refused::Conflict { field: field.to_owned(), reason: unless.into() })
}

fn quantiles() -> Source {
    Source::new(PlanRefusedMessage::SourceQuantiles, Standing::Computed)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_out_of_order_are_refused_with_each_of_them() {
        let refused = triangle(1.0, 4.5, 3.0).unwrap_err().english();
        assert!(refused.starts_with("1 day at best, 4.5 days as a rule and 3 days at worst"), "{refused}");
        let refused = long_tail(9.0, 5.0).unwrap_err().english();
        assert!(refused.starts_with("9 days in half of the cases and 5 days in nine of ten"), "{refused}");
        assert!(triangle(2.0, 2.0, 2.0).is_ok() && long_tail(5.0, 9.0).is_ok());
    }
}
