//! Bench time laid end to end: a place on it is the bench time that has passed since now, in milliseconds.
//!
//! Work is laid onto this line, where it has no gaps; the calendar with its evenings and Saturdays comes back when a
//! place is turned into an instant. The method (a working-time axis that both directions read by binary search) is our
//! own and needs no source.

use super::{BenchTime, Moment, WorkSpan};

/// How far ahead bench time is laid out, days: five years. Work that does not fit in there is not planned.
const FARTHEST_DAYS: i64 = 1_826;

/// The bench time from now on.
#[derive(Debug)]
pub(crate) struct Bench {
    slots: Vec<Slot>,
}

/// A stretch of bench time, and how much came before it.
#[derive(Debug)]
struct Slot {
    from_ms: i64,
    to_ms: i64,
    passed_ms: i64,
}

impl Bench {
    /// Lays out the bench time from a moment on.
    pub(crate) fn from(bench_time: &BenchTime, moment: &Moment) -> Bench {
        let now_ms = moment.at_ms();
        let farthest_ms = moment.zone.instant_of(moment.zone.day_at(now_ms).plus(FARTHEST_DAYS), 0);
        let spans = bench_time.between(&moment.zone, now_ms, farthest_ms);
        let mut total_ms = 0;
        let slots = spans
            .into_iter()
            .map(|WorkSpan { from_ms, to_ms }| {
                let passed_ms = total_ms;
                total_ms += to_ms - from_ms;
                Slot { from_ms, to_ms, passed_ms }
            })
            .collect();
        Bench { slots }
    }

    /// The place at which work may begin that must not begin before an instant.
    pub(crate) fn place_of(&self, instant_ms: i64) -> i64 {
        let begun = self.slots.partition_point(|slot| slot.from_ms <= instant_ms);
        let Some(slot) = begun.checked_sub(1).and_then(|place| self.slots.get(place)) else { return 0 };
        slot.passed_ms + instant_ms.min(slot.to_ms) - slot.from_ms
    }

    /// The instant at which work begins that is laid from a place on.
    pub(crate) fn begin_ms(&self, place: i64) -> Option<i64> {
        let slot = self.slots.get(self.slots.partition_point(|slot| slot.passed_ms <= place).checked_sub(1)?)?;
        let begin = slot.from_ms + place - slot.passed_ms;
        (begin < slot.to_ms).then_some(begin)
    }

    /// The instant at which work ends that is laid up to a place.
    pub(crate) fn end_ms(&self, place: i64) -> Option<i64> {
        let slot = self.slots.get(self.slots.partition_point(|slot| slot.passed_ms < place).checked_sub(1)?)?;
        let end = slot.from_ms + place - slot.passed_ms;
        (end <= slot.to_ms).then_some(end)
    }

    /// Whether work that ends at one place and work that ends at the other end in the same stretch of bench time.
    pub(crate) fn same_sitting(&self, end: i64, other_end: i64) -> bool {
        let sitting = |place| self.slots.partition_point(|slot| slot.passed_ms < place);
        sitting(end) == sitting(other_end)
    }

    /// Whether there is no bench time, or only that of one stretch, between two instants.
    pub(crate) fn within_one_sitting(&self, from_ms: i64, to_ms: i64) -> bool {
        let (from, to) = (self.place_of(from_ms), self.place_of(to_ms));
        from == to || self.same_sitting(from + 1, to)
    }

    /// The stretches of the calendar between two places.
    pub(crate) fn stretches(&self, from: i64, to: i64) -> Vec<WorkSpan> {
        let first = self.slots.partition_point(|slot| slot.passed_ms + slot.to_ms - slot.from_ms <= from);
        let touched = self.slots.iter().skip(first).take_while(|slot| slot.passed_ms < to);
        touched
            .map(|slot| WorkSpan {
                from_ms: slot.from_ms + (from - slot.passed_ms).max(0),
                to_ms: slot.to_ms.min(slot.from_ms + to - slot.passed_ms),
            })
            .filter(|span| span.from_ms < span.to_ms)
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::super::calendar::HOUR_MS;
    use super::super::{Span, Zone};
    use super::*;

    /// Thursday, 1 January 1970, midnight: bench time each Thursday 10:00 to 12:00 and Friday 10:00 to 11:00.
    fn bench() -> Bench {
        let span = |weekday, from_minute, to_minute| Span { weekday, from_minute, to_minute };
        let bench_time = BenchTime { spans: vec![span(4, 600, 720), span(5, 600, 660)], ..BenchTime::default() };
        Bench::from(&bench_time, &Moment { now_ms: 0, zone: Zone::default() })
    }

    #[test]
    fn a_place_at_the_seam_of_two_spans_ends_in_the_first_and_begins_in_the_second() {
        let (bench, hour) = (bench(), HOUR_MS);
        assert_eq!(bench.end_ms(2 * hour), Some(12 * hour));
        assert_eq!(bench.begin_ms(2 * hour), Some(34 * hour));
        assert_eq!(bench.begin_ms(0), Some(10 * hour));
        assert_eq!(bench.end_ms(hour / 2), Some(10 * hour + hour / 2));
    }

    #[test]
    fn an_instant_outside_bench_time_is_the_place_of_the_next_span() {
        let (bench, hour) = (bench(), HOUR_MS);
        assert_eq!(
            [0, 10 * hour, 11 * hour, 12 * hour, 20 * hour, 34 * hour].map(|at| bench.place_of(at)),
            [0, 0, hour, 2 * hour, 2 * hour, 2 * hour]
        );
    }

    #[test]
    fn stretches_are_cut_from_the_spans_that_they_touch() {
        let (bench, hour) = (bench(), HOUR_MS);
        let stretches = bench.stretches(hour, 4 * hour);
        let expected = [(11, 12), (34, 35), (7 * 24 + 10, 7 * 24 + 11)];
        assert_eq!(stretches.iter().map(|span| (span.from_ms / hour, span.to_ms / hour)).collect::<Vec<_>>(), expected);
        assert!(bench.stretches(2 * hour, 2 * hour).is_empty());
    }

    #[test]
    fn a_sitting_is_one_span_and_its_end_belongs_to_it() {
        let (bench, hour) = (bench(), HOUR_MS);
        assert!(bench.same_sitting(hour, 2 * hour));
        assert!(!bench.same_sitting(2 * hour, 2 * hour + 1));
        assert!(bench.within_one_sitting(0, 12 * hour));
        assert!(bench.within_one_sitting(12 * hour, 35 * hour));
        assert!(!bench.within_one_sitting(11 * hour, 35 * hour));
    }

    #[test]
    fn beyond_what_is_laid_out_there_is_no_instant() {
        let bench = bench();
        let total = bench.slots.iter().map(|slot| slot.to_ms - slot.from_ms).sum::<i64>();
        assert!(bench.end_ms(total).is_some() && bench.begin_ms(total).is_none());
        assert!(bench.end_ms(total + 1).is_none());
    }
}
