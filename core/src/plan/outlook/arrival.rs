//! When a part comes: the day to expect, and the day by which it is here nine times of ten.

use layshaft_wire::wire;

use super::monte_carlo::arrival_day;
use crate::plan::tasks::{likely_day, missing};
use crate::record::Part;
use crate::time::{Day, Moment};

/// When a part comes.
#[wire]
pub struct Arrival {
    /// Day to expect, `YYYY-MM-DD`.
    pub likely: String,
    /// Day by which it is here nine times of ten, `YYYY-MM-DD`; none where nothing is known but one day.
    pub safe: Option<String>,
    /// It is not ordered yet: both hold if it is ordered today.
    pub if_ordered_today: bool,
}

/// Nine times of ten.
const SAFE: f64 = 0.9;

/// When a part comes, by its day and its delivery; none where it is here, or where nobody knows anything.
pub fn arrival(part: &Part, moment: &Moment) -> Option<Arrival> {
    if !missing(part) {
        return None;
    }
    let expected = part.expected.as_deref().and_then(Day::read);
    let likely = expected.or_else(|| likely_day(part, moment))?;
    let safe = part.delivery.as_ref().map(|delivery| arrival_day(delivery, moment, SAFE).max(likely));
    let if_ordered_today = part.is_to_order() && expected.is_none();
    Some(Arrival { likely: likely.text(), safe: safe.map(Day::text), if_ordered_today })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{Delivery, PartState};

    fn part(state: PartState, expected: Option<&str>, ordered: Option<&str>) -> Part {
        let delivery = Delivery { ordered: ordered.map(str::to_owned), ..Delivery::usual() };
        Part { state, expected: expected.map(str::to_owned), delivery: Some(delivery), ..Part::default() }
    }

    fn told(part: &Part) -> Option<(String, Option<String>, bool)> {
        let moment = Moment { now_ms: 1_774_688_400_000, ..Moment::default() };
        arrival(part, &moment).map(|arrival| (arrival.likely, arrival.safe, arrival.if_ordered_today))
    }

    #[test]
    fn a_part_comes_as_a_rule_on_one_day_and_is_here_nine_times_of_ten_on_a_later_one() {
        let day = |text: &str| text.to_owned();
        let wanted = part(PartState::Wanted, None, None);
        assert_eq!(told(&wanted), Some((day("2026-04-04"), Some(day("2026-04-08")), true)));
        let ordered = part(PartState::Ordered, None, Some("2026-03-26"));
        assert_eq!(told(&ordered), Some((day("2026-04-02"), Some(day("2026-04-06")), false)));
        let promised = part(PartState::Ordered, Some("2026-04-20"), Some("2026-03-26"));
        assert_eq!(told(&promised), Some((day("2026-04-20"), Some(day("2026-04-20")), false)), "never before its day");
        let alone = Part { delivery: None, ..promised };
        assert_eq!(told(&alone), Some((day("2026-04-20"), None, false)));
        assert_eq!(told(&part(PartState::Here, None, None)), None);
        assert_eq!(told(&Part::default()), None);
    }
}
