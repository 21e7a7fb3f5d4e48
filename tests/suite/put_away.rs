//! What is put away: the order of jobs closes up and opens again, everything is listed and comes back. On a bike entered by hand.

use layshaft_core::message::Message;
use layshaft_core::record::{Identity, Part};
use layshaft_door::Bench;
use layshaft_door::command::{
    AddJob, AttachPhoto, BringBack, ChangeJob, NewJob, PutJobAway, PutPartAway, PutPhotoAway, RecordPart, StartBike,
};
use layshaft_door::query::{BareAsk, IdAsk};

use crate::{English, HOUR, SATURDAY, act, at};

fn own_bike() -> Bench {
    let mut bench = Bench::in_memory().unwrap();
    let identity = Identity { name: "Barn find".to_owned(), ..Identity::default() };
    act(&mut bench, StartBike { identity }, SATURDAY).unwrap();
    bench
}

fn job(bench: &mut Bench, title: &str, after: &[&String]) -> String {
    let after = after.iter().map(|id| (*id).clone()).collect();
    let job = NewJob {
        title: title.to_owned(),
        hands_on_minutes: 30.0,
        after,
        ..serde_json::from_str(r#"{"title":"","handsOnMinutes":1}"#).unwrap()
    };
    act(bench, AddJob { job }, SATURDAY).unwrap().made.unwrap()
}

fn follows(bench: &Bench, id: &str) -> Vec<String> {
    bench.job(&IdAsk { id: id.to_owned() }, &at(SATURDAY)).unwrap().job.after
}

fn said(notes: &[Message]) -> Vec<String> {
    notes.iter().map(English::english).collect()
}

#[test]
fn the_order_closes_up_around_a_job_put_away_and_opens_when_it_comes_back() {
    let mut bench = own_bike();
    let clean = job(&mut bench, "Clean the hub", &[]);
    let paint = job(&mut bench, "Paint the hub", &[&clean]);
    let fit = job(&mut bench, "Fit the wheel", &[&paint]);

    let outcome = act(&mut bench, PutJobAway { id: paint.clone() }, SATURDAY).unwrap();
    assert_eq!(said(&outcome.notes), ["“Fit the wheel” now follows Clean the hub."]);
    assert_eq!(follows(&bench, &fit), std::slice::from_ref(&clean));

    // What follows can still be changed, and the old order is kept behind it.
    let shown = bench.job(&IdAsk { id: fit.clone() }, &at(SATURDAY)).unwrap().job;
    let longer = ChangeJob { id: fit.clone(), job: layshaft_core::record::Job { hands_on_minutes: 45.0, ..shown } };
    act(&mut bench, longer, SATURDAY).unwrap();
    assert_eq!(follows(&bench, &fit), std::slice::from_ref(&clean));

    act(&mut bench, BringBack { record_kind: "job".to_owned(), id: paint.clone() }, SATURDAY).unwrap();
    assert_eq!((follows(&bench, &fit), follows(&bench, &paint)), (vec![paint.clone()], vec![clean.clone()]));

    // The first of the row: what followed it waits for nothing.
    let outcome = act(&mut bench, PutJobAway { id: clean }, SATURDAY).unwrap();
    assert_eq!(said(&outcome.notes), ["“Paint the hub” no longer waits for “Clean the hub”."]);
    assert!(follows(&bench, &paint).is_empty());
}

#[test]
fn a_circle_through_a_job_put_away_is_still_refused() {
    let mut bench = own_bike();
    let clean = job(&mut bench, "Clean the hub", &[]);
    let paint = job(&mut bench, "Paint the hub", &[&clean]);
    let fit = job(&mut bench, "Fit the wheel", &[&paint]);
    act(&mut bench, PutJobAway { id: paint }, SATURDAY).unwrap();
    let first = bench.job(&IdAsk { id: clean.clone() }, &at(SATURDAY)).unwrap().job;
    let turned = ChangeJob { id: clean, job: layshaft_core::record::Job { after: vec![fit], ..first } };
    let refused = act(&mut bench, turned, SATURDAY).unwrap_err();
    assert_eq!(refused.field.as_deref(), Some("after"));
}

#[test]
fn everything_put_away_is_listed_with_its_day_and_comes_back() {
    let mut bench = own_bike();
    let fit = job(&mut bench, "Fit the wheel", &[]);
    let part = Part { title: "Spokes".to_owned(), ..Part::default() };
    let part = act(&mut bench, RecordPart { id: None, part }, SATURDAY).unwrap().made.unwrap();
    let photo = AttachPhoto {
        of_kind: "job".to_owned(),
        of: fit.clone(),
        media: "image/png".to_owned(),
        bytes: vec![1, 2, 3],
        caption: None,
    };
    let photo = act(&mut bench, photo, SATURDAY).unwrap().made.unwrap();
    act(&mut bench, PutJobAway { id: fit.clone() }, SATURDAY + HOUR).unwrap();
    act(&mut bench, PutPartAway { id: part.clone() }, SATURDAY + 2 * HOUR).unwrap();
    act(&mut bench, PutPhotoAway { id: photo.clone() }, SATURDAY + 3 * HOUR).unwrap();

    let listed = bench.put_away(&BareAsk {}, &at(SATURDAY + 4 * HOUR)).unwrap().records;
    let seen: Vec<_> =
        listed.iter().map(|card| (card.record_kind.as_str(), card.title.english(), card.put_away_ms)).collect();
    assert_eq!(
        seen,
        [
            ("photo", "Photo without a caption".to_owned(), SATURDAY + 3 * HOUR),
            ("part", "Spokes".to_owned(), SATURDAY + 2 * HOUR),
            ("job", "Fit the wheel".to_owned(), SATURDAY + HOUR),
        ]
    );
    for card in listed {
        act(&mut bench, BringBack { record_kind: card.record_kind, id: card.id }, SATURDAY + 5 * HOUR).unwrap();
    }
    let bike = bench.bike(&BareAsk {}, &at(SATURDAY + 5 * HOUR)).unwrap();
    assert_eq!((bike.parts[0].id.as_str(), bike.photos[0].id.as_str()), (part.as_str(), photo.as_str()));
    assert!(bench.put_away(&BareAsk {}, &at(SATURDAY + 5 * HOUR)).unwrap().records.is_empty());
}
