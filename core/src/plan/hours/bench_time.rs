//! The mechanic's hours on the calendar: which stretches of bench time lie between two instants.

use std::collections::BTreeSet;

use super::work_span::WorkSpan;
use crate::record::{BenchTime, Span, spans_in_order};
use crate::time::{DAY_MS, Day, Moment, Zone};

/// How far ahead the next bench time is looked for.
const LOOKS_AHEAD_MS: i64 = 60 * DAY_MS;

impl BenchTime {
    /// The bench time between two instants, in order, cut off at both.
    pub(crate) fn between(&self, zone: &Zone, from_ms: i64, to_ms: i64) -> Vec<WorkSpan> {
        let (pattern, days_off, extra) = (self.pattern(), self.read_days_off(), self.read_extra());
        let mut spans: Vec<WorkSpan> = Vec::new();
        let mut day = zone.day_at(from_ms).plus(-1);
        while zone.instant_of(day, 0) < to_ms {
            let usual = pattern.iter().filter(|span| span.weekday == day.weekday() && !days_off.contains(&day));
            let more: Vec<&Span> = extra.iter().filter(|(on, _)| *on == day).map(|(_, span)| span).collect();
            let of_day = if more.is_empty() {
                usual.cloned().collect()
            } else {
                spans_in_order(usual.chain(more).map(|span| Span { weekday: day.weekday(), ..span.clone() }).collect())
            };
            for span in &of_day {
                let from = zone.instant_of(day, span.from_minute).max(from_ms);
                let to = zone.instant_of(day, span.to_minute).min(to_ms);
                // A zone with its shifts out of order must not make stretches overlap.
                let from = spans.last().map_or(from, |last| from.max(last.to_ms));
                if from < to {
                    spans.push(WorkSpan { from_ms: from, to_ms: to });
                }
            }
            day = day.plus(1);
        }
        spans
    }

    /// When a second pair of hands is there between two instants, in order, cut off at both.
    pub(crate) fn helper_between(&self, zone: &Zone, from_ms: i64, to_ms: i64) -> Vec<WorkSpan> {
        let spans = self.helper.iter().flatten().filter(|span| span.check().is_ok()).cloned().collect();
        let helper = BenchTime { spans, ..BenchTime::default() };
        if helper.said() { helper.between(zone, from_ms, to_ms) } else { Vec::new() }
    }

    /// When the bench time ends that runs or comes next; none when there is none within two months.
    pub(crate) fn next_ends_ms(&self, moment: &Moment) -> Option<i64> {
        let now_ms = moment.at_ms();
        self.between(&moment.zone, now_ms, now_ms.saturating_add(LOOKS_AHEAD_MS)).first().map(|span| span.to_ms)
    }

    /// Bench time on single days that can be reckoned with.
    fn read_extra(&self) -> Vec<(Day, Span)> {
        let extra = self.extra.iter().flatten().filter(|extra| extra.span().check().is_ok());
        extra.filter_map(|extra| Some((Day::read(&extra.day)?, extra.span()))).collect()
    }

    fn read_days_off(&self) -> BTreeSet<Day> {
        self.days_off.iter().filter_map(|off| Day::read(&off.day)).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{BenchTime, DayOff, Span};
    use crate::time::{HOUR_MS, MINUTE_MS, ZoneShift};

    fn at(text: &str, minute: u32, zone: &Zone) -> i64 {
        zone.instant_of(Day::read(text).unwrap(), minute)
    }

    fn span(weekday: u32, from_minute: u32, to_minute: u32) -> Span {
        Span { weekday, from_minute, to_minute }
    }

    #[test]
    fn each_bad_span_is_refused_with_field_value_and_range() {
        let refuse = |span: Span| {
            BenchTime { spans: vec![span], days_off: Vec::new(), ..BenchTime::default() }
                .checked()
                .unwrap_err()
                .english()
        };
        assert!(refuse(span(8, 0, 60)).starts_with("Day of the week: 8"));
        assert_eq!(refuse(span(1, 0, 1500)), "Bench time to: 1 500 min is outside 0 to 1 440 min");
        assert_eq!(refuse(span(1, 2000, 60)), "Bench time from: 2 000 min is outside 0 to 1 440 min");
        assert!(refuse(span(1, 960, 540)).contains("ends at 9:00 and begins at 16:00"));
        assert!(refuse(span(1, 540, 540)).contains("the end must come after the beginning"));
        let off = BenchTime {
            spans: Vec::new(),
            days_off: vec![DayOff { day: "2026-02-30".to_owned() }],
            ..BenchTime::default()
        };
        assert!(off.checked().unwrap_err().english().starts_with("Day without bench time: “2026-02-30”"));
    }

    #[test]
    fn spans_that_touch_or_overlap_become_one_and_others_stay_apart() {
        let spans = vec![span(6, 780, 960), span(2, 1140, 1260), span(6, 540, 780), span(6, 1000, 1100)];
        let checked = BenchTime { spans, ..BenchTime::default() }.checked().unwrap();
        assert_eq!(checked.spans, [span(2, 1140, 1260), span(6, 540, 960), span(6, 1000, 1100)]);
    }

    #[test]
    fn bench_time_is_cut_off_at_both_ends_and_left_out_on_days_off() {
        let zone = Zone::default();
        let days_off = vec![DayOff { day: "2026-03-26".to_owned() }];
        let bench = BenchTime {
            spans: vec![span(2, 1140, 1260), span(4, 1140, 1260), span(6, 540, 960)],
            days_off,
            ..BenchTime::default()
        };
        // Tuesday 24 March, 20:00, to Saturday 28 March, 12:00.
        let spans = bench.between(&zone, at("2026-03-24", 1200, &zone), at("2026-03-28", 720, &zone));
        let expected = [("2026-03-24", 1200, 1260), ("2026-03-28", 540, 720)];
        assert_eq!(spans.len(), expected.len());
        for (found, (day, from, to)) in spans.iter().zip(expected) {
            assert_eq!((found.from_ms, found.to_ms), (at(day, from, &zone), at(day, to, &zone)));
        }
    }

    #[test]
    fn without_a_pattern_two_evenings_and_a_saturday_are_assumed() {
        let bench = BenchTime::default();
        assert!(!bench.said());
        assert_eq!(bench.weekly_hours(), 11.0);
        let zone = Zone::default();
        let week = bench.between(&zone, at("2026-03-23", 0, &zone), at("2026-03-30", 0, &zone));
        assert_eq!(week.iter().map(|span| (span.to_ms - span.from_ms) / HOUR_MS).collect::<Vec<_>>(), [2, 2, 7]);
    }

    #[test]
    fn a_span_loses_the_hour_that_the_clock_skips_and_gains_the_one_it_repeats() {
        let shift = |from_ms, offset_minutes| ZoneShift { from_ms, offset_minutes };
        let shifts = vec![shift(0, 60), shift(1_774_746_000_000, 120), shift(1_792_890_000_000, 60)];
        let zone = Zone { name: "Europe/Berlin".to_owned(), shifts };
        let sunday = BenchTime { spans: vec![span(7, 60, 240)], days_off: Vec::new(), ..BenchTime::default() };
        let minutes = |day: &str| -> i64 {
            let spans = sunday.between(&zone, at(day, 0, &zone), at(day, 1440, &zone));
            spans.iter().map(|span| (span.to_ms - span.from_ms) / MINUTE_MS).sum()
        };
        assert_eq!(minutes("2026-03-22"), 180);
        assert_eq!(minutes("2026-03-29"), 120);
        assert_eq!(minutes("2026-10-25"), 240);
        let night = BenchTime { spans: vec![span(7, 125, 170)], days_off: Vec::new(), ..BenchTime::default() };
        assert!(night.between(&zone, at("2026-03-29", 0, &zone), at("2026-03-29", 1440, &zone)).is_empty());
    }

    #[test]
    fn a_span_up_to_midnight_ends_there() {
        let zone = Zone::default();
        let bench = BenchTime { spans: vec![span(5, 1380, 1440)], days_off: Vec::new(), ..BenchTime::default() };
        let spans = bench.between(&zone, at("2026-03-27", 0, &zone), at("2026-03-29", 0, &zone));
        assert_eq!(spans.iter().map(|span| span.to_ms).collect::<Vec<_>>(), [at("2026-03-28", 0, &zone)]);
    }
}
