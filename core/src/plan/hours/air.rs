//! What the air has to be like while a job is done: warm enough and dry enough for paint and sealant. The hours come from
//! the log of the place and its usual days; where nothing is known of them, that is said and nothing is barred.

use super::work_span::WorkSpan;
use crate::coating::ClimateLog;
use crate::message::{List, ListStyle, Measure, Message};
use crate::plan::message::{PlanAskedMessage, PlanFindingMessage};
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{Air, Bike, JobState};
use crate::units::Unit;

/// What the air has to be like, in tenths, so that it can be compared and sorted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct AirLimits {
    lowest: Option<i32>,
    highest: Option<i32>,
    dampest: Option<i32>,
}

impl AirLimits {
    /// What a job asks.
    pub(crate) fn of(air: Option<&Air>) -> AirLimits {
        let tenths =
            |value: Option<f64>| value.filter(|value| value.is_finite()).map(|value| (value * 10.0).round() as i32);
        air.map_or_else(AirLimits::default, |air| AirLimits {
            lowest: tenths(air.lowest_celsius),
            highest: tenths(air.highest_celsius),
            dampest: tenths(air.highest_humidity),
        })
    }

    /// Whether it matters.
    pub(crate) fn asks(self) -> bool {
        self != AirLimits::default()
    }

    /// What both ask for together.
    pub(crate) fn with(self, other: AirLimits) -> AirLimits {
        let least = |one: Option<i32>, other: Option<i32>| one.into_iter().chain(other).min();
        AirLimits {
            lowest: self.lowest.max(other.lowest),
            highest: least(self.highest, other.highest),
            dampest: least(self.dampest, other.dampest),
        }
    }

    /// The part of some stretches in which the air is like that. Where the humidity is not known, it bars nothing.
    pub(crate) fn within(self, spans: &[WorkSpan], climate: &ClimateLog) -> Vec<WorkSpan> {
        if !self.asks() {
            return spans.to_vec();
        }
        let ok = |celsius: f64, humidity: Option<f64>| {
            let tenths = (celsius * 10.0).round() as i32;
            self.lowest.is_none_or(|lowest| tenths >= lowest)
                && self.highest.is_none_or(|highest| tenths <= highest)
                && self.dampest.zip(humidity).is_none_or(|(dampest, damp)| damp * 10.0 <= f64::from(dampest))
        };
        let suits = spans.iter().flat_map(|span| climate.suits((span.from_ms, span.to_ms), ok));
        suits.map(|(from_ms, to_ms)| WorkSpan { from_ms, to_ms }).collect()
    }

    /// What it asks for, as when a job is done: “at 12 °C or more”.
    pub(crate) fn asked(self) -> impl Iterator<Item = Message> {
        let asked = [
            self.lowest.map(|lowest| PlanAskedMessage::AtLowest { celsius: whole(lowest, Unit::Celsius) }),
            self.highest.map(|highest| PlanAskedMessage::AtHighest { celsius: whole(highest, Unit::Celsius) }),
            self.dampest.map(|dampest| PlanAskedMessage::AtDampest { humidity: whole(dampest, Unit::Percent) }),
        ];
        asked.into_iter().flatten().map(Message::from)
    }

    /// What it asks for, as things that one needs: “12 °C or more”.
    fn needed(self) -> impl Iterator<Item = Message> {
        let needed = [
            self.lowest.map(|lowest| PlanAskedMessage::NeedsLowest { celsius: whole(lowest, Unit::Celsius) }),
            self.highest.map(|highest| PlanAskedMessage::NeedsHighest { celsius: whole(highest, Unit::Celsius) }),
            self.dampest.map(|dampest| PlanAskedMessage::NeedsDampest { humidity: whole(dampest, Unit::Percent) }),
        ];
        needed.into_iter().flatten().map(Message::from)
    }
}

/// Tenths as they were entered.
fn whole(tenths: i32, unit: Unit) -> Measure {
    unit.of(f64::from(tenths) / 10.0)
}

/// What a job asks of the air, as things that one needs.
pub fn air_needed(air: Option<&Air>) -> Vec<Message> {
    AirLimits::of(air).needed().collect()
}

/// Says where a job asks for air of which nothing is known.
pub(crate) fn unknown_air(bike: &Bike, climate: &ClimateLog, now_ms: i64, findings: &mut Vec<Finding>) {
    let open = bike.jobs.values().filter(|job| job.state != JobState::Done);
    let asking: Vec<_> = open.map(|job| (job, AirLimits::of(job.air.as_ref()))).filter(|(_, air)| air.asks()).collect();
    let first = |asks: fn(&AirLimits) -> bool| {
        let (job, air) = asking.iter().find(|(_, air)| asks(air))?;
        Some((job.title.clone(), List(ListStyle::And, air.asked().collect())))
    };
    let mut note = |text| findings.push(Finding::new(FindingCode::PlanAirUnknown, Weight::Care, text));
    if climate.is_guessed()
        && let Some((job, asked)) = first(|air| air.lowest.is_some() || air.highest.is_some())
    {
        note(PlanFindingMessage::TemperatureUnknown { job, asked });
    }
    if climate.humidity_at(now_ms).is_none()
        && let Some((job, asked)) = first(|air| air.dampest.is_some())
    {
        note(PlanFindingMessage::HumidityUnknown { job, asked });
    }
}

#[cfg(test)]
mod tests {
    use crate::plan::schedule::schedule;
    use crate::plan::tests::example::*;
    use crate::record::{Air, Bike, Climate, Job, Place};

    /// Paint that wants so many degrees and air no damper than so much, in a garage of 6 to 14 °C and 80 %.
    fn painting(lowest: f64, dampest: Option<f64>) -> Bike {
        let air = Air { lowest_celsius: Some(lowest), highest_humidity: dampest, ..Air::default() };
        let mut made = bike(vec![Job { air: Some(air), ..job("paint", 1.0, &[]) }, job("tyre", 3.0, &[])]);
        made.place = Place { night_celsius: Some(6.0), day_celsius: Some(14.0), humidity: Some(80.0) };
        made
    }

    #[test]
    fn paint_is_planned_for_hours_that_are_warm_enough() {
        // The wave is 10 + 4·cos of the hours from 15:00, in steps at half past: 13.7 °C from 13 to 17 on the clock.
        let plan = schedule(&painting(13.5, None), &tuesday_noon());
        assert_eq!(work_ms(&plan, "paint"), (at("2026-03-28", 13 * 60), at("2026-03-28", 14 * 60)));
        assert!(plan.held_by.english().contains("can only be done at 13.5 °C or more"), "{}", plan.held_by);
        // In a warm house it is done first of all.
        let mut warm = painting(13.5, None);
        warm.place.night_celsius = Some(20.0);
        warm.place.day_celsius = Some(20.0);
        assert_eq!(work_ms(&schedule(&warm, &tuesday_noon()), "paint").0, at("2026-03-24", 19 * 60));
    }

    #[test]
    fn where_it_never_gets_warm_there_is_no_date_and_what_would_help_is_said() {
        let plan = schedule(&painting(18.0, None), &tuesday_noon());
        assert_eq!((plan.ready_ms, codes(&plan)), (None, vec!["plan.no-own-time"]));
        assert!(plan.held_by.english().contains("A warmer or drier place would help"), "{}", plan.held_by);
    }

    #[test]
    fn damp_air_bars_paint_until_a_reading_says_otherwise_and_unknown_humidity_is_said() {
        let mut damp = painting(5.0, Some(70.0));
        assert_eq!(schedule(&damp, &tuesday_noon()).ready_ms, None);
        damp.climate.push(Climate { from_ms: tuesday_noon().now_ms, celsius: 12.0, humidity: Some(60.0) });
        let dry = schedule(&damp, &tuesday_noon());
        assert_eq!(work_ms(&dry, "paint").0, at("2026-03-24", 19 * 60));
        let mut unknown = painting(5.0, Some(70.0));
        unknown.place.humidity = None;
        let plan = schedule(&unknown, &tuesday_noon());
        assert!(plan.ready_ms.is_some() && codes(&plan) == ["plan.air-unknown"], "{:?}", plan.findings);
        assert!(plan.findings[0].text.english().contains("the humidity of the garage is not known"));
    }

    #[test]
    fn a_lowest_above_the_highest_is_refused() {
        let air = Air { lowest_celsius: Some(20.0), highest_celsius: Some(10.0), ..Air::default() };
        let refused = Job { air: Some(air), ..job("paint", 1.0, &[]) }.checked().unwrap_err().english();
        assert!(refused.contains("20 °C, must not lie above the highest, 10 °C"), "{refused}");
    }
}
