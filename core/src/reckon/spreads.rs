//! Sums of spreads: every input against its range, then the formula.

use super::figure::{Figure, figure};
use crate::bounds::{self, Bound};
use crate::error::Refused;
use crate::plan::{Spread, latest_of};
use crate::units::Unit;

type Given = Result<Vec<Figure>, Refused>;

/// Draws behind the later of two.
const DRAWS: usize = 20_000;

pub(super) fn triangular(least: f64, likely: f64, most: f64, share: f64) -> Given {
    let spread = triangle(least, likely, most)?;
    Ok(vec![figure("quantile", spread.quantile(checked(share)?), Unit::Day)])
}

pub(super) fn lognormal(median: f64, p90: f64, share: f64) -> Given {
    let spread = long_tail(median, p90)?;
    Ok(vec![figure("quantile", spread.quantile(checked(share)?), Unit::Day)])
}

pub(super) fn later_of_two((least, likely, most): (f64, f64, f64), (median, p90): (f64, f64), share: f64) -> Given {
    let both = [triangle(least, likely, most)?, long_tail(median, p90)?];
    Ok(vec![figure("quantile", latest_of(&both, checked(share)?, DRAWS), Unit::Day)])
}

fn triangle(least: f64, likely: f64, most: f64) -> Result<Spread, Refused> {
    let days = |field, value| Bound { field, ..bounds::MOST_DAYS }.check(value);
    let (least, likely, most) = (days("least", least)?, days("likely", likely)?, days("most", most)?);
    in_order("likely", &[least, likely, most])?;
    Ok(Spread::Triangular { least, likely, most })
}

fn long_tail(median: f64, p90: f64) -> Result<Spread, Refused> {
    let days = |field, value| Bound { field, min: 0.01, ..bounds::MOST_DAYS }.check(value);
    let (median, p90) = (days("median", median)?, days("p90", p90)?);
    in_order("p90", &[median, p90])?;
    Ok(Spread::Lognormal { median, p90 })
}

fn in_order(field: &str, days: &[f64]) -> Result<(), Refused> {
    if days.is_sorted() {
        return Ok(());
    }
    let reason = format!("{days:?} days must stand in this order");
    Err(Refused::Conflict { field: field.to_owned(), reason })
}

fn checked(share: f64) -> Result<f64, Refused> {
    Bound { field: "share", label: "Share", min: 0.001, max: 0.999, ..bounds::DUTY }.check(share)
}
