//! The dates by which a share of the runs through a plan are ready.
//!
//! Work ends when there is bench time, so the dates lie in heaps, days apart, and a plain quantile of them leaps from one
//! heap to the next for a run more or less. Here each day counts up to the middle of its runs, and between two days the
//! date moves evenly: one more run moves it by hours.
//!
//! Source of the method: quantiles of the mid-distribution function, Ma, Genton and Parzen, “Asymptotic properties of
//! sample quantiles of discrete distributions”, Annals of the Institute of Statistical Mathematics 63, 2011, standing:
//! from memory.

use crate::time::Zone;

/// The days on which runs are ready.
#[derive(Debug, Default)]
pub(crate) struct Dates {
    days: Vec<Heap>,
    /// The share of runs that are ready at all.
    ready: f64,
}

/// The runs that are ready on one day.
#[derive(Debug)]
struct Heap {
    /// Their mean instant, milliseconds since 1970 (UTC).
    at_ms: i64,
    /// The share of runs that are ready before half of these are.
    middle: f64,
}

impl Dates {
    /// The dates of runs, each given as the instant at which it is ready; none where it never is.
    pub(crate) fn of(ends: &[Option<i64>], zone: &Zone) -> Dates {
        let mut ready: Vec<i64> = ends.iter().copied().flatten().collect();
        ready.sort_unstable();
        let runs = ends.len().max(1) as f64;
        let mut days = Vec::new();
        let mut before = 0;
        for of_day in ready.chunk_by(|one, other| zone.day_at(*one) == zone.day_at(*other)) {
            let first = of_day.first().copied().unwrap_or(0);
            let after_first: i64 = of_day.iter().map(|end| end - first).sum();
            let at_ms = first + after_first / of_day.len() as i64;
            days.push(Heap { at_ms, middle: (before as f64 + of_day.len() as f64 / 2.0) / runs });
            before += of_day.len();
        }
        Dates { days, ready: ready.len() as f64 / runs }
    }

    /// The instant by which a share of the runs, 0 to 1, is ready; none where less are ever ready.
    pub(crate) fn at(&self, share: f64) -> Option<i64> {
        if share > self.ready {
            return None;
        }
        let later = self.days.partition_point(|day| day.middle < share);
        let before = later.checked_sub(1).and_then(|place| self.days.get(place));
        match (before, self.days.get(later)) {
            (Some(before), Some(after)) => {
                let part = (share - before.middle) / (after.middle - before.middle);
                Some(before.at_ms + ((after.at_ms - before.at_ms) as f64 * part).round() as i64)
            }
            (one, other) => Some(one.or(other)?.at_ms),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::time::{DAY_MS, HOUR_MS};

    /// So many runs that are ready on each of some days, at an hour.
    fn runs(heaps: &[(i64, i64, usize)]) -> Vec<Option<i64>> {
        let heap = |&(day, hour, runs): &(i64, i64, usize)| vec![Some(day * DAY_MS + hour * HOUR_MS); runs];
        heaps.iter().flat_map(heap).collect()
    }

    #[test]
    fn a_date_lies_between_the_middles_of_two_days_in_the_proportion_of_the_runs() {
        // Of ten runs, 6 on day 2 at noon, 2 on day 4 and 2 on day 9: middles at 0.3, 0.7 and 0.9.
        let dates = Dates::of(&runs(&[(4, 12, 2), (2, 12, 6), (9, 12, 2)]), &Zone::default());
        let days = |share| dates.at(share).map(|at_ms| at_ms as f64 / DAY_MS as f64 - 0.5);
        assert_eq!([0.1, 0.3, 0.7, 0.9, 0.95].map(days), [2.0, 2.0, 4.0, 9.0, 9.0].map(Some));
        assert!((days(0.5).unwrap() - 3.0).abs() < 1e-6 && (days(0.75).unwrap() - 5.25).abs() < 1e-6);
    }

    #[test]
    fn the_runs_of_a_day_stand_at_their_mean() {
        let dates = Dates::of(&runs(&[(3, 10, 1), (3, 16, 2)]), &Zone::default());
        assert_eq!(dates.at(0.5), Some(3 * DAY_MS + 14 * HOUR_MS));
    }

    #[test]
    fn what_is_never_ready_has_no_date() {
        let mut ends = runs(&[(3, 10, 8)]);
        ends.extend([None, None]);
        let dates = Dates::of(&ends, &Zone::default());
        assert_eq!((dates.at(0.8).is_some(), dates.at(0.9)), (true, None));
        assert_eq!(Dates::of(&[], &Zone::default()).at(0.5), None);
        assert_eq!(Dates::of(&[None], &Zone::default()).at(0.5), None);
    }
}
