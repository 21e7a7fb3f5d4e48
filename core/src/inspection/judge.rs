//! Judging one item.
//!
//! In this order: the year of first use and the displacement say whether it is asked at all; then what was answered; then
//! whether the bike has what is looked at, where nothing was answered; then a reading against the limit; then what follows
//! from the bike; then the word. An answer to the same question in another pack counts here too. Three rules hold on every
//! path:
//!
//! - **A number passes by a number.** An item with a limit does not pass on the word “good”.
//! - **“Not good” fails**, whatever was measured or worked out: the person has seen it.
//! - **A measurement in person beats a prediction**, and a prediction beats a bare “good”. Where they differ the
//!   reason tells both. Where the derived quantity has no limit of its own in the pack, the person's reading counts
//!   when it comes with the word “good”.

use layshaft_wire::wire;

use super::Verdict;
use super::equipped::not_there;
use super::message::InspectionMessage;
use super::pack::Item;
use super::verdict::{self, Said};
use super::written::built_in;
use crate::message::Message;
use crate::quantity::{Derived, Source};
use crate::record::{AnswerWord, Bike, Identity, ItemAnswer, JobLink, JobReason, job_for};
use crate::units::Unit;

/// An item with its verdict and the reason.
#[wire]
pub struct ItemVerdict {
    /// The item.
    pub item: Item,
    /// The verdict today.
    pub verdict: Verdict,
    /// Why, in a sentence.
    pub reason: Message,
    /// Forbids riding as it is.
    pub stopper: bool,
    /// What was answered.
    pub answer: Option<ItemAnswer>,
    /// The derived value that decided, where one did.
    pub derived_value: Option<f64>,
    /// The limit's standing is second-hand or from memory: shown as unconfirmed.
    pub unconfirmed: bool,
    /// Where the rule comes from.
    pub source: Source,
    /// The job that puts it right, or did so last.
    pub job: Option<JobLink>,
    /// The bike answers it by itself: it has no such thing. Who knows better answers it all the same.
    pub by_itself: bool,
}

/// Judges an item of the pack with the id `pack` from the bike's answers and its derived quantities.
///
/// ```
/// use layshaft_core::record::{Bike, ItemAnswer};
/// use layshaft_core::inspection::{Verdict, judge_item, packs};
/// use layshaft_core::quantity::Derived;
///
/// let pack = packs().into_iter().find(|pack| pack.id == "gb").unwrap();
/// let rate = pack.items.iter().find(|item| item.id == "indicator.rate").unwrap();
/// let mut bike = Bike::default();
/// assert_eq!(judge_item(&bike, &Derived::default(), "gb", rate).verdict, Verdict::Unknown);
///
/// bike.answers.insert("gb/indicator.rate".into(), ItemAnswer { value: Some(148.0), ..ItemAnswer::default() });
/// let judged = judge_item(&bike, &Derived::default(), "gb", rate);
/// assert_eq!(judged.verdict, Verdict::Fail);
/// // In words: “148 /min is above 120 /min.”
/// assert_eq!(judged.reason.message_id, "inspection-reading");
/// ```
pub fn judge_item(bike: &Bike, derived: &Derived, pack: &str, item: &Item) -> ItemVerdict {
    let (answer, elsewhere) = answer_to(bike, pack, item);
    let reason = JobReason::Item { pack: pack.to_owned(), item: item.id.clone() };
    let job = job_for(&bike.jobs, &reason);
    let rule = not_asked(&bike.identity, item);
    let answered = rule.is_some() || answer.is_some_and(says_something);
    let not_there = if answered { None } else { not_there(bike, item) };
    let by_itself = not_there.is_some();
    let said = match rule.or(not_there) {
        Some(reason) => Said::new(Verdict::DoesNotApply, reason),
        None => {
            let mut said = verdict::of_answer(item, answer, derived);
            if let Some(job) = job.as_ref().filter(|job| said.verdict == Verdict::Fail && since(job, answer)) {
                said = look_again(item, derived, job);
            }
            if let Some(place) = elsewhere {
                said.reason = verdict::and(said.reason, InspectionMessage::AnsweredElsewhere { place });
            }
            if let Some(doubt) = doubt(&bike.identity, item) {
                said.reason = verdict::and(said.reason, doubt);
            }
            said
        }
    };
    ItemVerdict {
        item: item.clone(),
        verdict: said.verdict,
        reason: said.reason,
        stopper: item.stopper && said.verdict == Verdict::Fail,
        answer: answer.cloned(),
        derived_value: said.derived_value,
        unconfirmed: item.is_unconfirmed(),
        source: item.source.clone(),
        job,
        by_itself,
    }
}

/// Whether a job was done since the item was answered.
fn since(job: &JobLink, answer: Option<&ItemAnswer>) -> bool {
    job.done_ms.is_some() && answer.is_some_and(|answer| job.done_ms >= answer.answered_ms)
}

/// What holds once a job put right what was answered before it: nobody knows until somebody looks again, unless the bike itself fails.
fn look_again(item: &Item, derived: &Derived, job: &JobLink) -> Said {
    let by_itself = verdict::of_answer(item, None, derived);
    match by_itself.verdict {
        Verdict::Fail => by_itself,
        _ => Said::new(Verdict::Unknown, InspectionMessage::LookAgain { job: job.title.clone() }),
    }
}

/// What was answered last: in this pack, or to the same question in another one, with the place of that one. It is the same
/// question where id, words and unit are the same; the limit may be another.
fn answer_to<'a>(bike: &'a Bike, pack: &str, item: &Item) -> (Option<&'a ItemAnswer>, Option<String>) {
    let unit = |item: &Item| item.measure.value().map(|(unit, _)| unit);
    let same = |other: &Item| other.id == item.id && other.title == item.title && unit(other) == unit(item);
    let of = |pack: &str| bike.answers.get(&format!("{pack}/{}", item.id));
    let others = built_in().iter().filter(|other| other.id != pack && other.items.iter().any(same));
    let others = others.filter_map(|other| Some((of(&other.id)?, Some(other.place.clone()))));
    // Of two that were given at once the own one is the last.
    let last = others.chain(of(pack).map(|own| (own, None))).max_by_key(|(answer, _)| answer.answered_ms);
    last.map_or((None, None), |(answer, place)| (Some(answer), place))
}

/// Whether an answer says more than that nobody looked.
fn says_something(answer: &ItemAnswer) -> bool {
    answer.value.is_some() || answer.word.as_ref().is_some_and(|word| *word != AnswerWord::NotChecked)
}

/// Why the item is not asked of this machine, when it is not. An unknown year or displacement asks.
fn not_asked(identity: &Identity, item: &Item) -> Option<InspectionMessage> {
    if let Some(year) = identity.first_used {
        if let Some(from) = item.from_year.filter(|from| year < *from) {
            return Some(InspectionMessage::FromYear { from: Unit::Year.of(from), year: Unit::Year.of(year) });
        }
        if let Some(to) = item.to_year.filter(|to| year > *to) {
            return Some(InspectionMessage::ToYear { to: Unit::Year.of(to), year: Unit::Year.of(year) });
        }
    }
    let cc = identity.displacement_cc.filter(|cc| cc.is_finite())?;
    let above = item.above_cc.filter(|above| cc <= *above)?;
    Some(InspectionMessage::AboveDisplacement { above: Unit::None.of(above), displacement: Unit::None.of(cc) })
}

/// What must be said when the item is asked though it might not be: an unknown year or displacement, or the very year
/// in which the rule begins or ends.
fn doubt(identity: &Identity, item: &Item) -> Option<InspectionMessage> {
    let switched_by_year = item.from_year.or(item.to_year).is_some();
    match identity.first_used {
        None if switched_by_year => return Some(InspectionMessage::YearUnknown),
        Some(year) if item.from_year == Some(year) => {
            return Some(InspectionMessage::YearBegins { year: Unit::Year.of(year) });
        }
        Some(year) if item.to_year == Some(year) => {
            return Some(InspectionMessage::YearEnds { year: Unit::Year.of(year) });
        }
        _ => {}
    }
    let unknown_cc = !identity.displacement_cc.is_some_and(f64::is_finite);
    (unknown_cc && item.above_cc.is_some()).then_some(InspectionMessage::DisplacementUnknown)
}

#[cfg(test)]
#[path = "judge_tests.rs"]
mod tests;
