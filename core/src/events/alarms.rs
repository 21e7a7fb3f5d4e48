//! What is still to come and worth ringing for.

use layshaft_wire::wire;

use super::due::{Due, DueKind, dues};
use crate::plan::PlanRow;
use crate::record::Bike;
use crate::time::Moment;

/// The alarms.
#[wire]
pub struct AlarmsAnswer {
    /// Earliest first.
    pub alarms: Vec<Due>,
}

/// Everything that is still to come by the rows of a plan. Drying to the touch is no reason to ring.
pub fn alarms_answer(bike: &Bike, moment: &Moment, rows: &[PlanRow]) -> AlarmsAnswer {
    let ahead = |due: &Due| due.at_ms > moment.now_ms && due.due != DueKind::TouchDry;
    AlarmsAnswer { alarms: dues(bike, rows, moment).into_iter().filter(ahead).collect() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::schedule;
    use crate::plan::tests::example::tuesday_noon;
    use crate::ready_made::typical_product;
    use crate::record::Coat;

    #[test]
    fn the_same_bike_at_the_same_moment_rings_alike_and_only_for_what_is_ahead() {
        let mut bike = Bike { id: "orrin".to_owned(), ..Bike::default() };
        let product = typical_product("tank-liner").unwrap();
        let applied_ms = tuesday_noon().now_ms - 20 * 3_600_000;
        bike.coats.insert("tank".to_owned(), Coat { title: "Tank".to_owned(), product, applied_ms, ..Coat::default() });
        let rows = schedule(&bike, &tuesday_noon()).rows;
        let answer = alarms_answer(&bike, &tuesday_noon(), &rows);
        assert_eq!(answer, alarms_answer(&bike, &tuesday_noon(), &rows));
        let kinds: Vec<DueKind> = answer.alarms.iter().map(|alarm| alarm.due).collect();
        assert_eq!(kinds, [DueKind::Handle, DueKind::Cured]);
        assert_eq!(answer.alarms[1].summary, "Tank: fully cured");
        assert!(alarms_answer(&Bike::default(), &tuesday_noon(), &[]).alarms.is_empty());
    }
}
