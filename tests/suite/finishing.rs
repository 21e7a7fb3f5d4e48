//! Finishing a job is one fact of one moment, with its clock, its parts, its time and its note, and one step takes it back.

use layshaft_core::error::Code;
use layshaft_core::ready_made::typical_product;
use layshaft_core::record::{Identity, Job, JobState, Part, PartState, StayPlace};
use layshaft_door::command::{
    AddJob, AddReadyMade, BeginJob, FinishJob, NewJob, RecordPart, ReopenJob, StartBike, StartClock, TickStep, Undo,
};
use layshaft_door::query::{BareAsk, CureAsk, IdAsk, JobAnswer, TodayAsk};
use layshaft_door::{Bench, Command};

use crate::{English, HOUR, SATURDAY, act, at};

/// A bike entered by hand, with one tank to be lined and one part that this takes.
struct Garage {
    bench: Bench,
    job: String,
    part: String,
}

impl Garage {
    fn new() -> Garage {
        let mut bench = Bench::in_memory().unwrap();
        let mut does = |command: Command| act(&mut bench, command, SATURDAY).unwrap().made.unwrap_or_default();
        does(StartBike { identity: Identity { name: "Own".into(), ..Identity::default() } }.into());
        let seal = Part { title: "Tap seal".into(), state: PartState::Here, ..Part::default() };
        let part = does(RecordPart { id: None, part: seal }.into());
        let job = does(AddReadyMade { ready_made: "tank-reline".into() }.into());
        let mut stored = bench.job(&IdAsk { id: job.clone() }, &at(SATURDAY)).unwrap().job;
        stored.parts = vec![part.clone()];
        let change = layshaft_door::command::ChangeJob { id: job.clone(), job: stored };
        act(&mut bench, change, SATURDAY).unwrap();
        Garage { bench, job, part }
    }

    fn shown(&self) -> JobAnswer {
        self.bench.job(&IdAsk { id: self.job.clone() }, &at(SATURDAY + HOUR)).unwrap()
    }

    fn part(&self) -> PartState {
        let bike = self.bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap();
        bike.parts.iter().find(|each| each.id == self.part).unwrap().part.state
    }

    fn plain(&self) -> FinishJob {
        FinishJob { id: self.job.clone(), ..FinishJob::default() }
    }

    /// Everything that a finishing can say.
    fn whole(&self) -> FinishJob {
        let product = typical_product("tank-liner").unwrap();
        let started_ms = Some(SATURDAY - HOUR);
        let clock = StartClock { product, title: None, place: Some(StayPlace::House), celsius: None, started_ms };
        FinishJob {
            start_clock: Some(clock),
            parts_fitted: vec![self.part.clone()],
            minutes_taken: Some(95.0),
            note: Some("  Two turns were enough. ".into()),
            ..self.plain()
        }
    }
}

#[test]
fn the_id_alone_finishes_a_job_and_says_nothing_else() {
    let mut garage = Garage::new();
    assert_eq!(garage.shown().lays, ["Tank liner, two-part"]);
    let said: Command = serde_json::from_value(serde_json::json!({ "kind": "finishJob", "id": garage.job })).unwrap();
    let outcome = act(&mut garage.bench, said, SATURDAY).unwrap();
    let JobAnswer { job, cures, .. } = garage.shown();
    assert_eq!((job.state, job.done_ms), (JobState::Done, Some(SATURDAY)));
    assert_eq!((job.minutes_taken, job.note, outcome.made), (None, None, None));
    assert!(cures.is_empty());
    assert_eq!(garage.part(), PartState::Here);
}

#[test]
fn clock_part_time_and_note_are_kept_together_and_taken_back_together() {
    let mut garage = Garage::new();
    let whole = garage.whole();
    let outcome = act(&mut garage.bench, whole, SATURDAY).unwrap();
    let JobAnswer { job, cures, .. } = garage.shown();
    assert_eq!((job.minutes_taken, job.note.as_deref()), (Some(95.0), Some("Two turns were enough.")));
    assert_eq!(garage.part(), PartState::Fitted);
    assert_eq!(cures.len(), 1);
    assert_eq!((cures[0].coat.clone(), cures[0].title.as_str()), (outcome.made.clone(), "Reline the tank"));
    let coat = CureAsk { coat: outcome.made, ..CureAsk::default() };
    assert!(garage.bench.cure(&coat, &at(SATURDAY)).unwrap().percent > 0.0, "it went on an hour ago");
    let today = garage.bench.today(&TodayAsk::default(), &at(SATURDAY)).unwrap();
    assert_eq!(today.cures.len(), 1, "Today knows of it");

    act(&mut garage.bench, Undo { batch: outcome.batch }, SATURDAY).unwrap();
    let JobAnswer { job, cures, .. } = garage.shown();
    assert_eq!((job.state, job.minutes_taken, job.note), (JobState::Open, None, None));
    assert!(cures.is_empty());
    assert_eq!(garage.part(), PartState::Here);
}

#[test]
fn one_part_that_is_refused_leaves_all_of_it_undone() {
    let mut garage = Garage::new();
    let strange = act(
        &mut garage.bench,
        RecordPart { id: None, part: Part { title: "Horn".into(), ..Part::default() } },
        SATURDAY,
    );
    let strange = strange.unwrap();
    let facts = |garage: &Garage| garage.bench.facts().collect::<Vec<_>>();
    let before = facts(&garage);
    let refused = |garage: &mut Garage, finish: FinishJob, field: &str, says: &str| {
        let refusal = act(&mut garage.bench, finish, SATURDAY).unwrap_err();
        assert_eq!(refusal.field.as_deref(), Some(field), "{}", refusal.message.english());
        assert!(refusal.message.english().contains(says), "{}", refusal.message.english());
    };
    let whole = garage.whole();
    refused(&mut garage, FinishJob { minutes_taken: Some(-5.0), ..whole.clone() }, "minutesTaken", "−5 min");
    refused(&mut garage, FinishJob { minutes_taken: Some(1441.0), ..whole.clone() }, "minutesTaken", "is outside");
    refused(&mut garage, FinishJob { note: Some("x".repeat(601)), ..whole.clone() }, "note", "600");
    let other = vec![strange.made.unwrap()];
    refused(&mut garage, FinishJob { parts_fitted: other, ..whole.clone() }, "partsFitted", "does not need the part");
    let ahead = whole.start_clock.clone().map(|clock| StartClock { started_ms: Some(SATURDAY + HOUR), ..clock });
    refused(&mut garage, FinishJob { start_clock: ahead, ..whole.clone() }, "appliedMs", "lies ahead");
    let gone = FinishJob { parts_fitted: vec!["no-such".into()], ..whole };
    assert_eq!(act(&mut garage.bench, gone, SATURDAY).unwrap_err().code, Code::Unknown);
    assert_eq!(facts(&garage), before, "nothing is stored by half");
    assert_eq!((garage.shown().job.state, garage.part()), (JobState::Open, PartState::Here));
    assert!(garage.shown().cures.is_empty());
}

#[test]
fn a_job_that_is_opened_again_forgets_how_it_went_and_says_that_its_clock_goes_on() {
    let mut garage = Garage::new();
    let whole = garage.whole();
    act(&mut garage.bench, whole, SATURDAY).unwrap();
    let reopen = ReopenJob { id: garage.job.clone() };
    let outcome = act(&mut garage.bench, reopen.clone(), SATURDAY).unwrap();
    assert!(outcome.notes[0].english().starts_with("The clock of “Reline the tank” goes on"), "{:?}", outcome.notes);
    let JobAnswer { job, cures, .. } = garage.shown();
    let how = (job.state, job.steps_done, job.done_ms, job.begun_ms, job.minutes_taken, job.note);
    assert_eq!(how, (JobState::Open, 0, None, None, None, None));
    assert_eq!(cures.len(), 1, "the coat is on");

    let mut plain = Garage::new();
    let finish = plain.plain();
    act(&mut plain.bench, finish, SATURDAY).unwrap();
    let reopen = ReopenJob { id: plain.job.clone() };
    assert!(act(&mut plain.bench, reopen, SATURDAY).unwrap().notes.is_empty());
}

#[test]
fn a_job_knows_when_it_was_begun_and_the_plan_follows_the_steps_that_are_done() {
    let mut garage = Garage::new();
    let new = NewJob { title: "Own".into(), hands_on_minutes: 60.0, ..NewJob::default() };
    act(&mut garage.bench, AddJob { job: new }, SATURDAY).unwrap();
    let id = garage.job.clone();
    act(&mut garage.bench, BeginJob { id: id.clone() }, SATURDAY).unwrap();
    let left = |garage: &Garage| garage.shown().row.unwrap().minutes_left;
    let all = left(&garage);
    let begun: Job = garage.shown().job;
    assert_eq!((begun.begun_ms, begun.steps_done), (Some(SATURDAY), 0));
    assert_eq!(garage.shown().minutes_since_begun, Some(60.0));
    act(&mut garage.bench, TickStep { id: id.clone(), steps_done: 3 }, SATURDAY + HOUR).unwrap();
    assert_eq!(garage.shown().job.begun_ms, Some(SATURDAY), "it was begun once");
    assert!(left(&garage) < all);
    act(&mut garage.bench, TickStep { id, steps_done: 0 }, SATURDAY + HOUR).unwrap();
    assert_eq!(left(&garage), all);
}

#[test]
fn a_job_whose_estimate_does_not_add_up_is_done_all_the_same() {
    let mut garage = Garage::new();
    let job = garage.shown().job;
    // Under an id that is there already, a new job has the least time of the old one: more than it takes.
    let short = NewJob { title: "Rinse it".into(), hands_on_minutes: 5.0, ..NewJob::default() };
    garage.bench.act(&garage.job.clone(), &Command::from(AddJob { job: short }), &at(SATURDAY)).unwrap();
    assert!(job.least_minutes > Some(5.0));
    let plain = garage.plain();
    act(&mut garage.bench, plain, SATURDAY).unwrap();
    assert_eq!(garage.shown().job.state, JobState::Done);
}
