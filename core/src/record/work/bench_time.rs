//! The mechanic's hours as they are kept: a weekly pattern with exceptions.

use layshaft_wire::wire;

use super::message::JobMessage;
use crate::bounds;
use crate::error::Refused;
use crate::message::FieldMessage;
use crate::time::check_day;

/// A stretch of bench time on one day of the week.
#[wire(stored)]
pub struct Span {
    /// Day of the week, Monday is 1.
    pub weekday: u32,
    /// From, minutes after midnight, local time.
    pub from_minute: u32,
    /// To, minutes after midnight, local time.
    pub to_minute: u32,
}

/// A day on which the pattern does not hold.
#[wire(stored)]
pub struct DayOff {
    /// The day, `YYYY-MM-DD`.
    pub day: String,
}

/// Bench time on one day beside the pattern.
#[wire(stored)]
pub struct ExtraTime {
    /// The day, `YYYY-MM-DD`.
    pub day: String,
    /// From, minutes after midnight, local time.
    pub from_minute: u32,
    /// To, minutes after midnight, local time.
    pub to_minute: u32,
}

/// Hours of every day.
#[wire(stored)]
pub struct DayHours {
    /// From, minutes after midnight, local time.
    pub from_minute: u32,
    /// To, minutes after midnight, local time; before `from` where the hours run over midnight.
    pub to_minute: u32,
}

/// Bench time.
#[wire(lenient, stored)]
pub struct BenchTime {
    /// The weekly pattern.
    pub spans: Vec<Span>,
    /// Days without bench time.
    pub days_off: Vec<DayOff>,
    /// Bench time on single days, beside the pattern and also on a day off.
    pub extra: Option<Vec<ExtraTime>>,
    /// When a second pair of hands is there, by the week; left out: whenever a job asks for it, which the plan says that
    /// it assumes; empty: never.
    pub helper: Option<Vec<Span>>,
    /// When there is daylight; left out: 8:00 to 18:00.
    pub daylight: Option<DayHours>,
    /// When no noise may be made; left out: never.
    pub quiet: Option<DayHours>,
}

/// The pattern that stands in until the mechanic says what it is: two evenings and a Saturday. An assumption of ours.
/// The catalogue names it: `-plan-assumed-hours`.
const ASSUMED: [(u32, u32, u32); 3] = [(2, 19 * 60, 21 * 60), (4, 19 * 60, 21 * 60), (6, 9 * 60, 16 * 60)];

impl ExtraTime {
    /// As a span of whatever weekday.
    pub(crate) fn span(&self) -> Span {
        Span { weekday: 1, from_minute: self.from_minute, to_minute: self.to_minute }
    }
}

impl Span {
    /// Refuses a span that cannot be.
    pub(crate) fn check(&self) -> Result<(), Refused> {
        bounds::WEEKDAY.check(f64::from(self.weekday))?;
        bounds::BENCH_START.check(f64::from(self.from_minute))?;
        bounds::BENCH_END.check(f64::from(self.to_minute))?;
        if self.from_minute >= self.to_minute {
            return Err(Refused::Conflict {
                field: bounds::BENCH_END.field.to_owned(),
                reason: JobMessage::BenchTimeOrder { ends: clock(self.to_minute), begins: clock(self.from_minute) }
                    .into(),
            });
        }
        Ok(())
    }
}

/// Spans in the order of the week; those that touch or overlap become one.
pub(crate) fn spans_in_order(mut spans: Vec<Span>) -> Vec<Span> {
    spans.sort_by_key(|span| (span.weekday, span.from_minute, span.to_minute));
    let mut merged: Vec<Span> = Vec::new();
    for span in spans {
        match merged.last_mut() {
            Some(last) if last.weekday == span.weekday && span.from_minute <= last.to_minute => {
                last.to_minute = last.to_minute.max(span.to_minute);
            }
            _ => merged.push(span),
        }
    }
    merged
}

/// Minutes after midnight as a clock shows them.
pub(crate) fn clock(minute: u32) -> String {
    format!("{}:{:02}", minute / 60, minute % 60)
}

impl BenchTime {
    /// Bench time in the order of the week with spans that touch or overlap made one, or the first field that cannot
    /// be accepted.
    ///
    /// ```
    /// use layshaft_core::record::{BenchTime, Span};
    /// let span = |from_minute, to_minute| Span { weekday: 6, from_minute, to_minute };
    /// let saturday = BenchTime { spans: vec![span(780, 960), span(540, 800)], days_off: Vec::new(), ..BenchTime::default() };
    /// assert_eq!(saturday.checked().unwrap().spans, [span(540, 960)]);
    /// ```
    pub fn checked(mut self) -> Result<Self, Refused> {
        for span in &self.spans {
            span.check()?;
        }
        for off in &self.days_off {
            check_day("daysOff", FieldMessage::DayWithoutBenchTime, &off.day)?;
        }
        for extra in self.extra.iter().flatten() {
            check_day("extra", FieldMessage::DayWithMoreBenchTime, &extra.day)?;
            extra.span().check()?;
        }
        for span in self.helper.iter().flatten() {
            span.check()?;
        }
        for hours in [&self.daylight, &self.quiet].into_iter().flatten() {
            bounds::BENCH_START.check(f64::from(hours.from_minute))?;
            bounds::BENCH_END.check(f64::from(hours.to_minute))?;
        }
        self.days_off.sort_by(|a, b| a.day.cmp(&b.day));
        self.days_off.dedup();
        self.spans = spans_in_order(self.spans);
        Ok(self)
    }

    /// Whether the mechanic has said when there is bench time.
    pub(crate) fn said(&self) -> bool {
        !self.usable_spans().is_empty()
    }

    /// Hours of bench time in a week without exceptions.
    pub(crate) fn weekly_hours(&self) -> f64 {
        self.pattern().iter().map(|span| f64::from(span.to_minute - span.from_minute) / 60.0).sum()
    }

    /// The weekly pattern in order: what the mechanic said, else the assumed one.
    pub(crate) fn pattern(&self) -> Vec<Span> {
        if self.said() {
            return self.usable_spans();
        }
        ASSUMED.iter().map(|&(weekday, from_minute, to_minute)| Span { weekday, from_minute, to_minute }).collect()
    }

    /// Spans that can be reckoned with; a record of another program may hold others.
    fn usable_spans(&self) -> Vec<Span> {
        spans_in_order(self.spans.iter().filter(|span| span.check().is_ok()).cloned().collect())
    }
}
