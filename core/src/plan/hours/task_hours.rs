//! The hours of a task: the bench time in which a job of its kind can be done. Some jobs want daylight, some a second pair of
//! hands, some may not be heard in quiet hours, some want warm and dry air; each kind has a calendar of its own, cut from the
//! bench time.

use super::air::AirLimits;
use super::time_axis::TimeAxis;
use super::work_span::WorkSpan;
use crate::coating::ClimateLog;
use crate::message::{List, ListStyle};
use crate::plan::message::PlanAskedMessage;
use crate::record::{BenchTime, DayHours, Job, JobPlace};
use crate::time::{Day, Moment, Zone};

/// How far ahead bench time is worked out, days: five years. Work that does not fit in there is not planned.
const FARTHEST_DAYS: i64 = 1_826;
/// Daylight where the bike does not say when there is any: 8:00 to 18:00. An assumption of ours.
const ASSUMED_DAYLIGHT: DayHours = DayHours { from_minute: 8 * 60, to_minute: 18 * 60 };

/// What a job asks of the hours in which it is done.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct HoursAsked {
    /// It wants daylight.
    pub(crate) daylight: bool,
    /// It wants a second pair of hands.
    pub(crate) helper: bool,
    /// It is heard, and keeps out of quiet hours.
    pub(crate) noisy: bool,
    /// What the air has to be like.
    pub(crate) air: AirLimits,
}

impl HoursAsked {
    /// What a job asks.
    pub(crate) fn of(job: &Job) -> HoursAsked {
        HoursAsked {
            daylight: matches!(job.place, Some(JobPlace::Daylight | JobPlace::SprayPlace)),
            helper: job.helper == Some(true),
            noisy: job.noisy == Some(true),
            air: AirLimits::of(job.air.as_ref()),
        }
    }

    /// Whether all bench time will do.
    pub(crate) fn asks_nothing(self) -> bool {
        self == HoursAsked::default()
    }

    /// Whether it asks for all that another kind asks for, so that its hours lie within the other's.
    pub(crate) fn asks(self, other: HoursAsked) -> bool {
        self.with(other) == self
    }

    /// What both ask for together.
    pub(crate) fn with(self, other: HoursAsked) -> HoursAsked {
        HoursAsked {
            daylight: self.daylight || other.daylight,
            helper: self.helper || other.helper,
            noisy: self.noisy || other.noisy,
            air: self.air.with(other.air),
        }
    }

    /// What it asks for: “by daylight and while a helper is there”.
    pub(crate) fn asked(self) -> List {
        let asks = [
            (self.daylight, PlanAskedMessage::ByDaylight),
            (self.helper, PlanAskedMessage::WithHelper),
            (self.noisy, PlanAskedMessage::OutsideQuietHours),
        ];
        let asked = asks.into_iter().filter(|(asked, _)| *asked).map(|(_, said)| said.into());
        List(ListStyle::And, asked.chain(self.air.asked()).collect())
    }
}

/// The bench time of each kind of job.
#[derive(Debug)]
pub(crate) struct TimeAxes {
    whole: TimeAxis,
    kinds: Vec<(HoursAsked, TimeAxis)>,
}

impl TimeAxes {
    /// Works out the bench time from a moment on, for each of the kinds.
    pub(crate) fn of(
        bench_time: &BenchTime,
        moment: &Moment,
        climate: &ClimateLog,
        kinds: impl IntoIterator<Item = HoursAsked>,
    ) -> TimeAxes {
        let now_ms = moment.at_ms();
        let farthest_ms = moment.zone.instant_of(moment.zone.day_at(now_ms).plus(FARTHEST_DAYS), 0);
        let limits = (now_ms, farthest_ms);
        let whole = bench_time.between(&moment.zone, now_ms, farthest_ms);
        let mut axes: Vec<(HoursAsked, TimeAxis)> = Vec::new();
        for kind in kinds.into_iter().filter(|kind| !kind.asks_nothing()) {
            if axes.iter().all(|(own, _)| *own != kind) {
                let hours = cut(&whole, bench_time, &moment.zone, limits, kind);
                axes.push((kind, TimeAxis::of(&kind.air.within(&hours, climate))));
            }
        }
        TimeAxes { whole: TimeAxis::of(&whole), kinds: axes }
    }

    /// All the bench time.
    pub(crate) fn whole(&self) -> &TimeAxis {
        &self.whole
    }

    /// The bench time of a kind of job.
    pub(crate) fn axis(&self, kind: HoursAsked) -> &TimeAxis {
        if kind.asks_nothing() {
            return &self.whole;
        }
        self.kinds.iter().find(|(own, _)| *own == kind).map_or(&self.whole, |(_, bench)| bench)
    }
}

/// The part of the bench time that a kind of job can use, whatever the air is like.
fn cut(whole: &[WorkSpan], bench_time: &BenchTime, zone: &Zone, limits: (i64, i64), kind: HoursAsked) -> Vec<WorkSpan> {
    let mut own = whole.to_vec();
    if kind.daylight {
        own = both(&own, &daily(bench_time.daylight.as_ref().unwrap_or(&ASSUMED_DAYLIGHT), zone, limits));
    }
    if kind.helper && bench_time.helper.is_some() {
        own = both(&own, &bench_time.helper_between(zone, limits.0, limits.1));
    }
    if let (true, Some(quiet)) = (kind.noisy, &bench_time.quiet) {
        own = without(&own, &daily(quiet, zone, limits));
    }
    own
}

/// Hours of every day on the calendar, in order. Where from and to are the same, there are none.
fn daily(hours: &DayHours, zone: &Zone, (from_ms, to_ms): (i64, i64)) -> Vec<WorkSpan> {
    let over_midnight = hours.to_minute < hours.from_minute;
    let mut spans: Vec<WorkSpan> = Vec::new();
    let mut day: Day = zone.day_at(from_ms).plus(-1);
    while zone.instant_of(day, 0) < to_ms {
        let ends = if over_midnight { day.plus(1) } else { day };
        let (begin_ms, end_ms) = (zone.instant_of(day, hours.from_minute), zone.instant_of(ends, hours.to_minute));
        // A zone with its shifts out of order must not make stretches overlap.
        let begin_ms = spans.last().map_or(begin_ms, |last| begin_ms.max(last.to_ms));
        if begin_ms < end_ms {
            spans.push(WorkSpan { from_ms: begin_ms, to_ms: end_ms });
        }
        day = day.plus(1);
    }
    spans
}

/// What lies in both; each stands in order.
fn both(some: &[WorkSpan], others: &[WorkSpan]) -> Vec<WorkSpan> {
    let mut common = Vec::new();
    let mut first = 0;
    for one in some {
        first += others.iter().skip(first).take_while(|other| other.to_ms <= one.from_ms).count();
        for other in others.iter().skip(first).take_while(|other| other.from_ms < one.to_ms) {
            common.push(WorkSpan { from_ms: one.from_ms.max(other.from_ms), to_ms: one.to_ms.min(other.to_ms) });
        }
    }
    common
}

/// What lies in the first and not in the others; each stands in order.
fn without(some: &[WorkSpan], others: &[WorkSpan]) -> Vec<WorkSpan> {
    let mut left = Vec::new();
    let mut first = 0;
    for one in some {
        first += others.iter().skip(first).take_while(|other| other.to_ms <= one.from_ms).count();
        let mut from_ms = one.from_ms;
        for other in others.iter().skip(first).take_while(|other| other.from_ms < one.to_ms) {
            if from_ms < other.from_ms {
                left.push(WorkSpan { from_ms, to_ms: other.from_ms });
            }
            from_ms = from_ms.max(other.to_ms);
        }
        if from_ms < one.to_ms {
            left.push(WorkSpan { from_ms, to_ms: one.to_ms });
        }
    }
    left
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::tests::example::{at, tuesday_noon};
    use crate::record::Span;
    use crate::time::{DAY_MS, HOUR_MS};

    /// Bench time every day from 16 to 23, a helper on Saturday 18 to 20, daylight 7 to 19, quiet from 21 to 8.
    fn bench_time() -> BenchTime {
        let span = |weekday| Span { weekday, from_minute: 16 * 60, to_minute: 23 * 60 };
        BenchTime {
            spans: (1..=7).map(span).collect(),
            helper: Some(vec![Span { weekday: 6, from_minute: 18 * 60, to_minute: 20 * 60 }]),
            daylight: Some(DayHours { from_minute: 7 * 60, to_minute: 19 * 60 }),
            quiet: Some(DayHours { from_minute: 21 * 60, to_minute: 8 * 60 }),
            ..BenchTime::default()
        }
    }

    fn first(bench_time: &BenchTime, kind: HoursAsked) -> Option<(i64, i64)> {
        let climate = ClimateLog::of(&Default::default(), &tuesday_noon());
        let axes = TimeAxes::of(bench_time, &tuesday_noon(), &climate, [kind]);
        let own = axes.axis(kind);
        let begin_ms = own.begin_ms(0)?;
        Some((begin_ms, own.work_between(begin_ms, begin_ms + DAY_MS).first()?.to_ms))
    }

    #[test]
    fn each_kind_of_job_has_the_hours_that_it_asks_for() {
        let (hours, kind) = (bench_time(), HoursAsked::default());
        let tuesday = |from: u32, to: u32| Some((at("2026-03-24", from * 60), at("2026-03-24", to * 60)));
        let saturday = |from: u32, to: u32| Some((at("2026-03-28", from * 60), at("2026-03-28", to * 60)));
        assert_eq!(first(&hours, kind), tuesday(16, 23));
        assert_eq!(first(&hours, HoursAsked { daylight: true, ..kind }), tuesday(16, 19));
        assert_eq!(first(&hours, HoursAsked { noisy: true, ..kind }), tuesday(16, 21));
        assert_eq!(first(&hours, HoursAsked { helper: true, ..kind }), saturday(18, 20));
        assert_eq!(first(&hours, HoursAsked { daylight: true, helper: true, noisy: true, ..kind }), saturday(18, 19));
    }

    #[test]
    fn what_is_left_out_is_a_helper_on_call_a_usual_day_and_no_quiet_hours() {
        let hours = BenchTime { helper: None, daylight: None, quiet: None, ..bench_time() };
        let kind = HoursAsked::default();
        assert_eq!(first(&hours, HoursAsked { helper: true, ..kind }), first(&hours, kind));
        let never = BenchTime { helper: Some(Vec::new()), ..bench_time() };
        assert_eq!(first(&never, HoursAsked { helper: true, ..kind }), None);
        let daylight = first(&hours, HoursAsked { daylight: true, ..kind }).unwrap();
        assert_eq!((daylight.1 - daylight.0) / HOUR_MS, 2);
        assert_eq!(first(&hours, HoursAsked { noisy: true, ..kind }), first(&hours, kind));
        // Hours that never begin: a day without light, and no quiet hours.
        let none = Some(DayHours { from_minute: 600, to_minute: 600 });
        let hours = BenchTime { daylight: none.clone(), quiet: none, ..bench_time() };
        assert_eq!(first(&hours, HoursAsked { daylight: true, ..kind }), None);
        assert_eq!(first(&hours, HoursAsked { noisy: true, ..kind }), first(&hours, kind));
    }
}
