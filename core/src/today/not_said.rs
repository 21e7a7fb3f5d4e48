//! What is still to be said of a bike before the plan is the owner's own.

use layshaft_wire::wire;

use crate::ready_made::BikeKind;
use crate::record::Bike;

/// Something that the plan or the inspection is better for, and that nobody has said yet.
#[wire]
pub enum NotSaid {
    /// What kind of bike it is.
    Kind,
    /// What is to be done on it.
    Work,
    /// When there is bench time.
    Hours,
    /// Where it is to be inspected.
    Inspection,
}

/// What is not said yet, in the order in which it helps.
pub(super) fn not_said(bike: &Bike) -> Vec<NotSaid> {
    let BikeKind { strokes, cooling, system_volts, front_brake, rear_brake, .. } = BikeKind::of(bike);
    // Whether it has indicators and a starter changes little; whoever said the rest has said what they know.
    let kind = strokes.is_some()
        && cooling.is_some()
        && system_volts.is_some()
        && front_brake.is_some()
        && rear_brake.is_some();
    let said = [
        (NotSaid::Kind, kind),
        (NotSaid::Work, !bike.jobs.is_empty()),
        (NotSaid::Hours, bike.bench_time.said()),
        (NotSaid::Inspection, bike.identity.pack.is_some()),
    ];
    said.into_iter().filter(|(_, said)| !said).map(|(what, _)| what).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{BenchTime, Span};

    #[test]
    fn of_a_new_bike_everything_is_to_be_said_and_what_is_said_is_not_asked_again() {
        let mut bike = Bike::default();
        assert_eq!(not_said(&bike), [NotSaid::Kind, NotSaid::Work, NotSaid::Hours, NotSaid::Inspection]);
        bike.identity.pack = Some("gb".to_owned());
        bike.bench_time =
            BenchTime { spans: vec![Span { weekday: 6, from_minute: 540, to_minute: 960 }], ..BenchTime::default() };
        assert_eq!(not_said(&bike), [NotSaid::Kind, NotSaid::Work]);
    }
}
