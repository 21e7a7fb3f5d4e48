//! What a job needs, through the door: a tool that is not at hand becomes a part, and the plan waits for it; a plan that
//! stood moves only what it has to.

use layshaft_core::error::Code;
use layshaft_core::plan::{PlanAnswer, PlanAsk, PlanRow};
use layshaft_core::record::{Part, PartState};
use layshaft_door::Bench;
use layshaft_door::command::{LackTool, LoadDemo, RecordPart, Undo};
use layshaft_door::query::{BareAsk, IdAsk, JobAnswer};

use crate::{English, SATURDAY, act, at};

fn demo() -> Bench {
    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, LoadDemo::default(), SATURDAY).unwrap();
    bench
}

fn plan(bench: &Bench) -> PlanAnswer {
    bench.plan(&PlanAsk::default(), &at(SATURDAY)).unwrap()
}

fn job(bench: &Bench, id: &str) -> JobAnswer {
    bench.job(&IdAsk { id: id.to_owned() }, &at(SATURDAY)).unwrap()
}

#[test]
fn a_tool_that_is_not_at_hand_is_waited_for_like_a_part_and_undo_takes_it_back() {
    let mut bench = demo();
    let open = plan(&bench).rows.into_iter().find(|row| {
        let sheet = job(&bench, &row.job);
        row.blocked_by.is_empty() && !row.work.is_empty() && !sheet.tools.is_empty()
    });
    let id = open.unwrap().job;
    let tool = job(&bench, &id).tools[0].name.clone();
    let lack = LackTool { id: id.clone(), tool: tool.clone() };
    let part = act(&mut bench, lack.clone(), SATURDAY).unwrap().made.unwrap();
    let sheet = job(&bench, &id);
    assert_eq!((sheet.tools[0].part.as_ref(), sheet.tools[0].state), (Some(&part), Some(PartState::Wanted)));
    assert_eq!(sheet.row.unwrap().blocked_by.iter().map(English::english).collect::<Vec<_>>().join(", "), tool);
    assert_eq!(plan(&bench).ready_ms, None, "a tool without a day leaves no date");
    // Twice is refused, and so is a tool that the job does not name.
    assert_eq!(act(&mut bench, lack, SATURDAY).unwrap_err().code, Code::Conflict);
    let other = LackTool { id: id.clone(), tool: "a moon rock".to_owned() };
    assert_eq!(act(&mut bench, other, SATURDAY).unwrap_err().code, Code::Unknown);
    // With a day it is planned for that day.
    let listed =
        bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap().parts.into_iter().find(|entry| entry.id == part).unwrap();
    assert_eq!(listed.part.tool, Some(true));
    let ordered = Part { state: PartState::Ordered, expected: Some("2026-03-26".to_owned()), ..listed.part };
    act(&mut bench, RecordPart { id: Some(part.clone()), part: ordered }, SATURDAY).unwrap();
    let row = job(&bench, &id).row.unwrap();
    assert!(bench_day(&row).as_str() >= "2026-03-26", "{row:?}");
    act(&mut bench, Undo { batch: part }, SATURDAY).unwrap();
    assert_eq!(job(&bench, &id).tools[0].part, None);
}

fn bench_day(row: &PlanRow) -> String {
    at(0).zone.day_text_at(row.work[0].from_ms)
}

#[test]
fn a_late_parcel_moves_no_more_than_it_has_to_and_the_order_outlives_a_restart() {
    let begins = |sheet: &PlanAnswer| -> Vec<(String, Option<i64>)> {
        let mut rows: Vec<_> =
            sheet.rows.iter().map(|row| (row.job.clone(), row.work.first().map(|span| span.from_ms))).collect();
        rows.sort();
        rows
    };
    let moved = |one: &PlanAnswer, other: &PlanAnswer| {
        begins(one).iter().zip(begins(other)).filter(|(one, other)| **one != *other).count()
    };
    let parcel = |bench: &Bench| {
        let parts = bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap().parts;
        parts.into_iter().find(|entry| entry.part.state == PartState::Ordered && entry.part.expected.is_some()).unwrap()
    };
    let late = |bench: &mut Bench| {
        let entry = parcel(bench);
        let part = Part { expected: Some("2026-04-20".to_owned()), delivery: None, ..entry.part };
        act(bench, RecordPart { id: Some(entry.id), part }, SATURDAY).unwrap();
    };
    // One bench has looked at its plan before the parcel was late, the other plans anew.
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("bikes.layshaft");
    let before = {
        let mut looked = Bench::open_native(&path).unwrap();
        act(&mut looked, LoadDemo::default(), SATURDAY).unwrap();
        let before = plan(&looked);
        late(&mut looked);
        before
    };
    let looked = Bench::open_native(&path).unwrap();
    let mut anew = demo();
    late(&mut anew);
    let (kept, fresh) = (plan(&looked), plan(&anew));
    println!(
        "{} jobs moved, {} when planned anew, of {}",
        moved(&before, &kept),
        moved(&before, &fresh),
        kept.rows.len()
    );
    assert!(kept.ready_ms <= fresh.ready_ms);
    assert!(moved(&before, &kept) <= moved(&before, &fresh));
}
