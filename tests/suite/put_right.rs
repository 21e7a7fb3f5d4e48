//! What was found becomes a job in one step, linked both ways, on a bike entered by hand.

use layshaft_core::faults::{KNOWLEDGE, knowledge_case, next_check};
use layshaft_core::inspection::{InspectionAsk, ItemVerdict, Verdict, packs};
use layshaft_core::ready_made::ready_made_job;
use layshaft_core::record::{
    AnswerWord, Brake, BrakeKind, End, Evidence, FaultClosing, Identity, ItemAnswer, JobReason, JobState, Side, Trouble,
};
use layshaft_door::Bench;
use layshaft_door::command::{
    AddReadyMade, AnswerFault, AnswerItem, CloseFault, FinishJob, Outcome, PutRight, RecordBrake, ReopenJob, StartBike,
    StartFault, Undo,
};
use layshaft_door::query::{FaultAnswer, FaultAsk, IdAsk, JobAnswer, PlanAsk};

use crate::{English, HOUR, SATURDAY, act, at};

fn own_bike() -> Bench {
    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, StartBike { identity: Identity { name: "Barn find".into(), ..Identity::default() } }, SATURDAY)
        .unwrap();
    bench
}

fn item_reason(item: &str) -> JobReason {
    JobReason::Item { pack: "gb".into(), item: item.into() }
}

fn put_right(bench: &mut Bench, reason: JobReason) -> Outcome {
    act(bench, PutRight { reason, title: None, proposals: Vec::new() }, SATURDAY + HOUR).unwrap()
}

fn answer(bench: &mut Bench, item: &str, word: AnswerWord, at_ms: i64) {
    let answer = ItemAnswer { word: Some(word), ..ItemAnswer::default() };
    act(bench, AnswerItem { pack: "gb".into(), item: item.into(), answer }, at_ms).unwrap();
}

fn item(bench: &Bench, id: &str) -> ItemVerdict {
    let ask = InspectionAsk { pack: Some("gb".into()) };
    let items = bench.inspection(&ask, &at(SATURDAY)).unwrap().items;
    items.into_iter().find(|item| item.item.id == id).unwrap()
}

fn job(bench: &Bench, id: &str) -> JobAnswer {
    bench.job(&IdAsk { id: id.into() }, &at(SATURDAY)).unwrap()
}

fn jobs(bench: &Bench) -> usize {
    bench.plan(&PlanAsk::default(), &at(SATURDAY)).unwrap().rows.len()
}

#[test]
fn a_failed_item_becomes_the_ready_made_job_and_each_names_the_other() {
    let mut bench = own_bike();
    answer(&mut bench, "horn", AnswerWord::NotGood, SATURDAY);
    let made = put_right(&mut bench, item_reason("horn"));
    let id = made.made.unwrap();
    let shown = job(&bench, &id);
    assert_eq!(shown.job.ready_made.as_deref(), Some("horn-switches"));
    assert_eq!(shown.reasons[0].reason, item_reason("horn"));
    assert_eq!(shown.reasons[0].name.english(), item(&bench, "horn").item.title);
    let link = item(&bench, "horn").job.unwrap();
    assert_eq!((link.job, link.state), (id, JobState::Open));
    act(&mut bench, Undo { batch: made.batch }, SATURDAY + HOUR).unwrap();
    assert_eq!((jobs(&bench), item(&bench, "horn").job), (0, None));
}

#[test]
fn an_item_that_was_put_right_asks_to_be_looked_at_again_and_never_passes_by_itself() {
    let mut bench = own_bike();
    answer(&mut bench, "mirrors", AnswerWord::NotGood, SATURDAY);
    let id = put_right(&mut bench, item_reason("mirrors")).made.unwrap();
    assert_eq!(item(&bench, "mirrors").verdict, Verdict::Fail, "a job that is planned puts nothing right");
    act(&mut bench, FinishJob { id: id.clone(), ..FinishJob::default() }, SATURDAY + 2 * HOUR).unwrap();
    let judged = item(&bench, "mirrors");
    assert_eq!(judged.verdict, Verdict::Unknown);
    assert!(judged.reason.english().starts_with("Put right by “"), "{}", judged.reason.english());
    answer(&mut bench, "mirrors", AnswerWord::NotGood, SATURDAY + 3 * HOUR);
    assert_eq!(item(&bench, "mirrors").verdict, Verdict::Fail, "somebody has looked again");
    act(&mut bench, ReopenJob { id }, SATURDAY + 4 * HOUR).unwrap();
    answer(&mut bench, "mirrors", AnswerWord::Good, SATURDAY + 4 * HOUR);
    assert_eq!(item(&bench, "mirrors").verdict, Verdict::Pass);
}

#[test]
fn a_plain_job_carries_how_to_look_again_and_says_that_its_minutes_are_assumed() {
    let mut bench = own_bike();
    let mut plain = |title: Option<&str>, item: &str| {
        let command = PutRight { reason: item_reason(item), title: title.map(str::to_owned), proposals: Vec::new() };
        let made = act(&mut bench, command, SATURDAY).unwrap();
        (job(&bench, &made.made.unwrap()).job, made.notes[0].english())
    };
    let (mirrors, note) = plain(None, "mirrors");
    assert_eq!(mirrors.steps[0].text, item(&own_bike(), "mirrors").item.how);
    assert!(note.contains("60 min of work are assumed"), "{note}");
    let (named, _) = plain(Some(" Straighten the guard "), "mudguards");
    assert_eq!((named.title.as_str(), named.ready_made), ("Straighten the guard", None));
}

#[test]
fn an_open_job_is_named_or_takes_it_on_and_nothing_is_made_twice() {
    let mut bench = own_bike();
    let there = act(&mut bench, AddReadyMade { ready_made: "chain-sprockets".into() }, SATURDAY).unwrap().made;
    let taken = put_right(&mut bench, item_reason("chain.wear"));
    assert_eq!((&taken.made, jobs(&bench)), (&there, 1));
    assert!(taken.notes[0].english().contains("takes this on"), "{:?}", taken.notes);
    put_right(&mut bench, item_reason("chain.adjuster"));
    assert_eq!(job(&bench, &there.unwrap()).reasons.len(), 2);
    let again = PutRight {
        reason: JobReason::Item { pack: "eu".into(), item: "chain.wear".into() },
        title: None,
        proposals: Vec::new(),
    };
    let refused = act(&mut bench, again, SATURDAY).unwrap_err();
    assert_eq!(refused.field.as_deref(), Some("reason"), "the other walk-through asks the same");
    assert!(refused.message.english().contains("Chain and sprockets"), "{}", refused.message.english());
}

#[test]
fn a_ready_made_job_is_taken_only_where_it_is_known_to_suit() {
    let mut bench = own_bike();
    let origin = |bench: &mut Bench| {
        let made = put_right(bench, item_reason("brake.fluid"));
        let origin = job(bench, made.made.as_deref().unwrap()).job.ready_made;
        act(bench, Undo { batch: made.batch }, SATURDAY + HOUR).unwrap();
        origin
    };
    assert_eq!(origin(&mut bench), None, "nobody knows what brakes it has");
    let brake = Brake { brake: Some(BrakeKind::Disc), ..Brake::default() };
    act(&mut bench, RecordBrake { side: Side::Standard, end: End::Front, brake }, SATURDAY).unwrap();
    assert_eq!(origin(&mut bench).as_deref(), Some("brake-bleed"));
}

fn searched(bench: &Bench, search: &str) -> FaultAnswer {
    bench.fault(&FaultAsk { search: Some(search.into()) }, &at(SATURDAY)).unwrap()
}

/// A search that somebody answers until it asks no more.
fn searched_to_the_end(bench: &mut Bench, trouble: Trouble) -> String {
    let search = act(bench, StartFault { trouble }, SATURDAY).unwrap().made.unwrap();
    while let Some(question) = searched(bench, &search).state.unwrap().question {
        let outcome = searched(bench, &search).state.unwrap().meanings[0].outcome.clone();
        let answer = Evidence::Seen { check: question.check, outcome };
        act(bench, AnswerFault { search: search.clone(), answer }, SATURDAY).unwrap();
    }
    search
}

#[test]
fn the_end_of_a_search_is_a_job_and_what_was_learned() {
    let mut bench = own_bike();
    let table = Trouble::Table { table: "oil-leak".into() };
    let search = searched_to_the_end(&mut bench, table);
    let cure = searched(&bench, &search).cures[0].clone();
    let reason = JobReason::Fault { search: search.clone(), suspect: cure.suspect };
    let id = put_right(&mut bench, reason).made.unwrap();
    assert_eq!(job(&bench, &id).reasons[0].name.english(), "Oil leak: where does it come from");
    assert_eq!(searched(&bench, &search).cures[0].job.as_ref().unwrap().job, id);

    let ended = |cure: &str| CloseFault {
        search: search.clone(),
        closing: FaultClosing::Cured { cure: cure.into() },
        learned: Some(" Dry it first, then look. ".into()),
    };
    let refused = act(&mut bench, ended("  "), SATURDAY).unwrap_err();
    assert_eq!(refused.field.as_deref(), Some("cure"));
    assert_eq!(searched(&bench, &search).searches[0].closing, None, "nothing is stored by half");
    act(&mut bench, ended("New washer"), SATURDAY).unwrap();
    assert_eq!(searched(&bench, &search).searches[0].learned.as_deref(), Some("Dry it first, then look."));
}

#[test]
fn a_cure_of_the_wiring_needs_a_name_only_where_no_ready_made_job_is_known() {
    let mut bench = own_bike();
    let search = searched_to_the_end(&mut bench, Trouble::Wiring { circuit: "horn".into(), reworked: None });
    let cure = searched(&bench, &search).cures[0].clone();
    let made = put_right(&mut bench, JobReason::Fault { search: search.clone(), suspect: cure.suspect }).made.unwrap();
    assert!(job(&bench, &made).job.ready_made.is_some());
    let stranger = JobReason::Fault { search, suspect: "mood".into() };
    assert!(act(&mut bench, PutRight { reason: stranger, title: None, proposals: Vec::new() }, SATURDAY).is_err());
}

#[test]
fn every_ready_made_job_that_packs_and_tables_name_is_there_and_one_cure_is_one_job() {
    let of_items = packs().into_iter().flat_map(|pack| pack.items).filter_map(|item| item.job);
    let cases: Vec<_> = KNOWLEDGE.iter().map(|table| knowledge_case(table).unwrap()).collect();
    let of_cures = cases.iter().flat_map(|case| &case.suspects).filter_map(|suspect| suspect.job.clone());
    let named: Vec<String> = of_items.chain(of_cures).collect();
    assert!(named.len() > 60, "{}", named.len());
    for id in named {
        assert!(ready_made_job(&id).is_some(), "{id}");
    }
    for case in cases {
        for (one, other) in case.suspects.iter().flat_map(|one| case.suspects.iter().map(move |other| (one, other))) {
            assert!(one.cure != other.cure || one.job == other.job, "{} and {}", one.id, other.id);
        }
    }
}

#[test]
fn a_plain_job_of_an_item_carries_the_caution_of_the_item_at_its_step() {
    let mut cautioned = 0;
    for known in packs() {
        for item in known.items {
            let mut bench = own_bike();
            let reason = JobReason::Item { pack: known.id.clone(), item: item.id.clone() };
            let made = put_right(&mut bench, reason).made.unwrap();
            let JobAnswer { job, .. } = job(&bench, &made);
            // A ready-made job has the cautions of its own steps.
            if job.ready_made.is_none() {
                assert_eq!(job.steps[0].caution, item.caution, "{}", item.id);
                cautioned += u32::from(item.caution.is_some());
            }
        }
    }
    assert!(cautioned > 0, "at least one of them has one");
}

#[test]
fn a_search_without_an_answer_ends_only_with_a_word_on_it() {
    let mut bench = own_bike();
    let search =
        act(&mut bench, StartFault { trouble: Trouble::Table { table: "oil-leak".into() } }, SATURDAY).unwrap();
    let search = search.made.unwrap();
    let end = |closing: FaultClosing, learned: Option<&str>| CloseFault {
        search: search.clone(),
        closing,
        learned: learned.map(str::to_owned),
    };
    for closing in [FaultClosing::GivenUp, FaultClosing::Cured { cure: "New washer".into() }] {
        let refused = act(&mut bench, end(closing, Some(" ")), SATURDAY).unwrap_err();
        assert_eq!(refused.field.as_deref(), Some("learned"));
        assert!(refused.message.english().contains("no question was answered"), "{}", refused.message.english());
        assert_eq!(searched(&bench, &search).searches[0].closing, None, "nothing is stored by half");
    }
    act(&mut bench, end(FaultClosing::GivenUp, Some("The bike is sold.")), SATURDAY).unwrap();
    assert_eq!(searched(&bench, &search).searches[0].closing, Some(FaultClosing::GivenUp));
}

#[test]
fn a_plain_job_of_a_cure_carries_the_caution_of_the_cure_at_its_step() {
    let mut plain = 0;
    for table in KNOWLEDGE {
        for suspect in knowledge_case(table).unwrap().suspects {
            let mut bench = own_bike();
            let start = StartFault { trouble: Trouble::Table { table: table.into() } };
            let search = act(&mut bench, start, SATURDAY).unwrap().made.unwrap();
            let made = put_right(&mut bench, JobReason::Fault { search, suspect: suspect.id.clone() }).made.unwrap();
            let JobAnswer { job, .. } = job(&bench, &made);
            if suspect.job.is_none() {
                assert_eq!(job.steps[0].text, suspect.cure.english());
                assert_eq!(job.steps[0].caution, suspect.caution.map(|caution| caution.english()));
                assert!(job.steps[0].caution.is_some(), "{table}: {}", suspect.id);
                plain += 1;
            }
        }
    }
    assert!(plain > 15, "{plain}");
}

#[test]
fn trouble_is_called_by_what_somebody_notices_and_a_check_comes_after_those_that_it_leans_on() {
    let bench = own_bike();
    let offers = bench.fault(&FaultAsk { search: None }, &at(SATURDAY)).unwrap().offers;
    let names: Vec<String> = offers.iter().map(|offer| offer.name.english()).collect();
    assert!(names.iter().any(|name| name.starts_with("The indicators do not flash")), "{names:?}");
    for words_of_the_drawing in ["phase", "circuit", "DC"] {
        assert!(names.iter().all(|name| !name.contains(words_of_the_drawing)), "{names:?}");
    }
    let mut leaning = 0;
    for table in KNOWLEDGE {
        let case = knowledge_case(table).unwrap();
        for check in &case.checks {
            assert!(check.after.iter().all(|id| case.check(id).is_ok()), "{table}: {}", check.id);
            leaning += u32::from(!check.after.is_empty());
        }
        let first = next_check(&case, &[]).unwrap().unwrap();
        assert!(case.check(&first.check).unwrap().after.is_empty(), "{table}");
    }
    assert!(leaning >= 5, "{leaning}");

    let case = knowledge_case("charging-weak").unwrap();
    let mut evidence: Vec<Evidence> = Vec::new();
    while let Some(next) = next_check(&case, &evidence).unwrap() {
        let check = case.check(&next.check).unwrap();
        for before in &check.after {
            assert!(evidence.iter().any(|answer| answer.was_done() && answer.check() == before), "{}", check.id);
        }
        evidence.push(Evidence::Skipped { check: next.check });
    }
    assert!(
        evidence.iter().all(|answer| !["running-lights", "drop"].contains(&answer.check())),
        "who skips one skips both"
    );
}
