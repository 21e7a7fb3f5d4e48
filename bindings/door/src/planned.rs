//! The plan of the open bike, worked out once for each minute and each new fact, and the order in which it stood before.
//!
//! The order is a setting of this device: it decides between plans that are ready together, nothing else, so that a new
//! fact moves only what it has to. A bench without it plans just as well.

use std::cell::{Cell, RefCell};
use std::sync::Arc;

use layshaft_core::plan::{PreviousOrder, Scheduled, schedule_keeping};
use layshaft_core::record::Bike;
use layshaft_core::time::Moment;

/// Name of the device-local setting with the order of a bike's plan; the bike's id follows.
pub(crate) const STOOD: &str = "stood.";
const MINUTE_MS: i64 = 60_000;

/// What was worked out last.
#[derive(Default)]
pub(crate) struct Planned {
    before: PreviousOrder,
    plain: RefCell<Option<Kept>>,
    with_odds: RefCell<Option<Kept>>,
    /// How often one was worked out.
    pub worked_out: Cell<u32>,
}

struct Kept {
    moment: Moment,
    scheduled: Arc<Scheduled>,
}

impl Planned {
    /// With the order that stood before, as it was stored; none that can be read is none.
    pub fn after(stored: Option<&str>) -> Planned {
        let before = stored.and_then(|text| serde_json::from_str(text).ok()).unwrap_or_default();
        Planned { before, ..Planned::default() }
    }

    /// The schedule of the minute.
    pub fn schedule(&self, bike: &Bike, moment: &Moment, with_odds: bool) -> Arc<Scheduled> {
        let minute = Moment { now_ms: moment.now_ms.div_euclid(MINUTE_MS).saturating_mul(MINUTE_MS), ..moment.clone() };
        let slot = if with_odds { &self.with_odds } else { &self.plain };
        if let Some(kept) = slot.borrow().as_ref().filter(|kept| kept.moment == minute) {
            return Arc::clone(&kept.scheduled);
        }
        self.worked_out.set(self.worked_out.get().saturating_add(1));
        let scheduled = Arc::new(schedule_keeping(bike, &minute, &self.before, with_odds));
        *slot.borrow_mut() = Some(Kept { moment: minute, scheduled: Arc::clone(&scheduled) });
        scheduled
    }

    /// The order of the last plan, to be stored, where it is another than before.
    pub fn order_that_moved(&self) -> Option<String> {
        let standing = self.last_order().filter(|standing| *standing != self.before)?;
        serde_json::to_string(&standing).ok()
    }

    /// A fact is new: what was worked out no longer holds, and the next plan goes on from the order of the last one.
    pub fn go_on(&mut self) {
        if let Some(standing) = self.last_order() {
            self.before = standing;
        }
        (self.plain, self.with_odds) = Default::default();
    }

    fn last_order(&self) -> Option<PreviousOrder> {
        let order = |slot: &RefCell<Option<Kept>>| Some(slot.borrow().as_ref()?.scheduled.standing.clone());
        order(&self.plain).or_else(|| order(&self.with_odds))
    }
}
