//! Bench time joined end to end: a place on it is the bench time that has passed since now, in milliseconds.
//!
//! Work is placed on this line, where it has no gaps; the calendar with its evenings and Saturdays comes back when a
//! place is turned into an instant. The method (a working-time axis that both directions read by binary search) is our
//! own and needs no source.

use super::work_span::WorkSpan;
use crate::time::MINUTE_MS;

/// Bench time from now on: all of it, or that in which a kind of job can be done.
#[derive(Debug)]
pub(crate) struct TimeAxis {
    slots: Vec<Slot>,
    longest_ms: i64,
}

/// A stretch of bench time, and how much came before it.
#[derive(Debug)]
struct Slot {
    from_ms: i64,
    to_ms: i64,
    passed_ms: i64,
}

impl TimeAxis {
    /// Lays stretches out that stand in order and do not overlap; those that touch become one.
    pub(crate) fn of(spans: &[WorkSpan]) -> TimeAxis {
        let mut slots: Vec<Slot> = Vec::with_capacity(spans.len());
        let mut total_ms = 0;
        for &WorkSpan { from_ms, to_ms } in spans {
            match slots.last_mut().filter(|last| last.to_ms == from_ms) {
                Some(last) => last.to_ms = to_ms,
                None => slots.push(Slot { from_ms, to_ms, passed_ms: total_ms }),
            }
            total_ms += to_ms - from_ms;
        }
        let longest_ms = slots.iter().map(|slot| slot.to_ms - slot.from_ms).max().unwrap_or(0);
        TimeAxis { slots, longest_ms }
    }

    /// The length of the longest stretch, milliseconds; 0 where there is none.
    pub(crate) fn longest_ms(&self) -> i64 {
        self.longest_ms
    }

    /// The first instant from which so much work is done in one stretch, from an instant on.
    pub(crate) fn first_stretch(&self, from_ms: i64, work_ms: i64) -> Option<i64> {
        if work_ms > self.longest_ms {
            return None;
        }
        let first = self.slots.partition_point(|slot| slot.to_ms <= from_ms);
        let mut later = self.slots.iter().skip(first).map(|slot| (slot.from_ms.max(from_ms), slot.to_ms));
        later.find(|(begin_ms, to_ms)| begin_ms + work_ms <= *to_ms).map(|(begin_ms, _)| begin_ms)
    }

    /// The first instant from an instant on at which at least so much work has been done in the same stretch.
    pub(crate) fn first_end(&self, from_ms: i64, piece_ms: i64) -> Option<i64> {
        let first = self.slots.partition_point(|slot| slot.to_ms < from_ms);
        let mut later = self.slots.iter().skip(first).map(|slot| (from_ms.max(slot.from_ms + piece_ms), slot.to_ms));
        later.find(|(end_ms, to_ms)| end_ms <= to_ms).map(|(end_ms, _)| end_ms)
    }

    /// The last beginning and end, within a stretch of the calendar, of work that begins at `begin_by_ms` at the latest.
    pub(crate) fn last_within(
        &self,
        within: (i64, i64),
        work_ms: i64,
        in_one_go: bool,
        begin_by_ms: i64,
    ) -> Option<(i64, i64)> {
        if in_one_go {
            let count = self.slots.partition_point(|slot| slot.from_ms < within.1);
            let before = self.slots.iter().take(count).rev().take_while(|slot| slot.to_ms > within.0);
            let mut begins =
                before.map(|slot| (slot.from_ms.max(within.0), (slot.to_ms.min(within.1) - work_ms).min(begin_by_ms)));
            return begins.find(|(from_ms, begin_ms)| from_ms <= begin_ms).map(|(_, begin)| (begin, begin + work_ms));
        }
        let mut begin = self.place_of(within.1) - work_ms;
        if begin >= 0 && self.begin_ms(begin)? > begin_by_ms {
            begin = self.place_of(begin_by_ms) - MINUTE_MS;
        }
        let (begin_ms, end_ms) = (self.begin_ms(begin).filter(|_| begin >= 0)?, self.end_ms(begin + work_ms)?);
        (within.0 <= begin_ms && end_ms <= within.1 && begin_ms <= begin_by_ms).then_some((begin_ms, end_ms))
    }

    /// The stretches of the calendar in which work is done that begins and ends at two instants.
    pub(crate) fn work_between(&self, begin_ms: i64, end_ms: i64) -> Vec<WorkSpan> {
        self.stretches(self.place_of(begin_ms), self.place_of(end_ms))
    }

    /// The place at which work may begin that must not begin before an instant.
    pub(crate) fn place_of(&self, instant_ms: i64) -> i64 {
        let begun = self.slots.partition_point(|slot| slot.from_ms <= instant_ms);
        let Some(slot) = begun.checked_sub(1).and_then(|place| self.slots.get(place)) else { return 0 };
        slot.passed_ms + instant_ms.min(slot.to_ms) - slot.from_ms
    }

    /// The instant at which work begins that starts at a place on the axis.
    pub(crate) fn begin_ms(&self, place: i64) -> Option<i64> {
        let slot = self.slots.get(self.slots.partition_point(|slot| slot.passed_ms <= place).checked_sub(1)?)?;
        let begin = slot.from_ms + place - slot.passed_ms;
        (begin < slot.to_ms).then_some(begin)
    }

    /// The instant at which work ends that fills the axis up to a place.
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
    use super::*;
    use crate::record::{BenchTime, Span};
    use crate::time::{HOUR_MS, Zone};

    /// Thursday, 1 January 1970, midnight: bench time each Thursday 10:00 to 12:00 and Friday 10:00 to 11:00.
    fn bench() -> TimeAxis {
        let span = |weekday, from_minute, to_minute| Span { weekday, from_minute, to_minute };
        let bench_time = BenchTime { spans: vec![span(4, 600, 720), span(5, 600, 660)], ..BenchTime::default() };
        TimeAxis::of(&bench_time.between(&Zone::default(), 0, 1_826 * 24 * HOUR_MS))
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
    fn stretches_that_touch_are_one() {
        let span = |from_ms, to_ms| WorkSpan { from_ms, to_ms };
        let bench = TimeAxis::of(&[span(0, 10), span(10, 30), span(40, 45)]);
        assert_eq!((bench.longest_ms(), bench.first_stretch(5, 25)), (30, Some(5)));
        assert_eq!((bench.first_stretch(6, 25), bench.first_stretch(26, 5)), (None, Some(40)));
        assert_eq!(bench.work_between(5, 42), [span(5, 30), span(40, 42)]);
    }

    #[test]
    fn an_end_has_a_piece_of_work_before_it_in_its_stretch() {
        let span = |from_ms, to_ms| WorkSpan { from_ms, to_ms };
        let bench = TimeAxis::of(&[span(0, 10), span(20, 22), span(30, 40)]);
        assert_eq!([0, 7, 10, 11, 36].map(|from| bench.first_end(from, 3)), [3, 7, 10, 33, 36].map(Some));
        assert_eq!(bench.first_end(41, 3), None);
    }

    #[test]
    fn work_put_off_lies_as_late_as_its_limits_allow() {
        let span = |from_ms, to_ms| WorkSpan { from_ms, to_ms };
        let minute = MINUTE_MS;
        let bench = TimeAxis::of(&[span(0, 10 * minute), span(20 * minute, 30 * minute)]);
        let last = |to, work, in_one_go, by| {
            let last = bench.last_within((0, to * minute), work * minute, in_one_go, by * minute);
            last.map(|(begin, end)| (begin / minute, end / minute))
        };
        assert_eq!(last(40, 4, true, 99), Some((26, 30)));
        assert_eq!(last(23, 4, true, 99), Some((6, 10)));
        assert_eq!(last(40, 4, true, 15), Some((6, 10)));
        assert_eq!(last(40, 12, true, 99), None);
        assert_eq!(last(40, 12, false, 99), Some((8, 30)));
        assert_eq!(last(25, 12, false, 99), Some((3, 25)));
        assert_eq!(last(40, 12, false, 5), Some((4, 26)));
    }

    #[test]
    fn beyond_what_is_set_out_there_is_no_instant() {
        let bench = bench();
        let total = bench.slots.iter().map(|slot| slot.to_ms - slot.from_ms).sum::<i64>();
        assert!(bench.end_ms(total).is_some() && bench.begin_ms(total).is_none());
        assert!(bench.end_ms(total + 1).is_none());
    }
}
