//! What was put away: its facts stay, so it can be listed and come back.

use layshaft_wire::wire;

use super::message::RecordMessage;
use super::{Consumer, Job, Part, Photo, Tightening};
use crate::changes::{Fields, GONE, Ledger, Record, read};
use crate::message::Message;

/// Something that was put away.
#[wire]
pub struct PutAwayCard {
    /// Kind of the record: `job`, `part`.
    pub record_kind: String,
    /// Its id.
    pub id: String,
    /// What it is called.
    pub title: Message,
    /// When it was put away, milliseconds since 1970 (UTC).
    pub put_away_ms: i64,
}

/// How a reader knows a record that was put away.
trait Titled: Record {
    fn title(&self) -> Message;
}

/// One line a kind that can be put away: how it is called.
macro_rules! can_be_put_away {
    ($($kind:ident: $record:ident -> $title:expr;)*) => {
        $(impl Titled for $kind {
            fn title(&self) -> Message {
                let $record = self;
                $title
            }
        })*

        /// The kinds that can be put away, by their names in the table of changes.
        pub const CAN_BE_PUT_AWAY: &[&str] = &[$($kind::KIND),*];

        /// Everything of a bike that was put away, the last first.
        pub fn put_away(ledger: &Ledger, project: &str) -> Vec<PutAwayCard> {
            let mut cards = Vec::new();
            $(cards.extend(of_kind::<$kind>(ledger, project));)*
            cards.sort_by(|one, other| (other.put_away_ms, &one.id).cmp(&(one.put_away_ms, &other.id)));
            cards
        }
    };
}
can_be_put_away! {
    Job: job -> Message::as_entered(&job.title);
    Part: part -> Message::as_entered(&part.title);
    Tightening: tightening -> Message::as_entered(&tightening.joint);
    Photo: photo -> photo.caption.as_deref().map_or_else(|| RecordMessage::PhotoWithoutCaption.into(), Message::as_entered);
    Consumer: consumer -> Message::as_entered(&consumer.name);
}

fn of_kind<R: Titled>(ledger: &Ledger, project: &str) -> Vec<PutAwayCard> {
    let away = ledger.of_kind(project, R::KIND).filter(|(_, fields)| fields.gone());
    let card = |(key, fields): (&crate::changes::Key, &Fields)| PutAwayCard {
        record_kind: R::KIND.to_owned(),
        id: key.record.clone(),
        title: read::<R>(fields).title(),
        put_away_ms: fields.stamp(GONE).and_then(|stamp| i64::try_from(stamp.millis).ok()).unwrap_or_default(),
    };
    away.map(card).collect()
}
