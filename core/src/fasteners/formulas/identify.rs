//! Which thread is this: the threads of the tables that fit a measured diameter and pitch, and what they are confused with.
//!
//! How far a screw may measure below its nominal size, and how well a pitch is read, is common practice; no source.

use layshaft_wire::wire;

use crate::fasteners::message::ThreadMessage;
use crate::message::Message;

use super::thread::{INCH_MM, THREADS, Thread, ThreadFamily};

/// A screw measures this much above its nominal diameter at the most, mm: caliper and dirt. Common practice.
const ABOVE_MM: f64 = 0.08;
/// A screw measures below nominal by the tolerance and by wear: a fixed part, mm, and a share of the pitch.
/// Common practice, close to the 6g tolerance of ISO 965-1.
const BELOW_MM: f64 = 0.1;
/// See [`BELOW_MM`].
const BELOW_SHARE: f64 = 0.16;
/// Pitches that differ by less than this share fit the measurement. Common practice.
const PITCH_FITS: f64 = 0.025;
/// Pitches that differ by less than this share are taken for each other over a few turns. Common practice.
const PITCH_NEAR: f64 = 0.13;
/// Diameters that differ by less than this, mm, are taken for each other.
const DIAMETER_NEAR_MM: f64 = 0.45;

/// A thread that fits, or one that could be taken for it.
#[wire]
pub struct ThreadMatch {
    /// As one writes it.
    pub name: String,
    /// Family.
    pub family: ThreadFamily,
    /// Family in words.
    pub family_words: Message,
    /// Nominal diameter, mm.
    pub diameter_mm: f64,
    /// Pitch, mm.
    pub pitch_mm: f64,
    /// Turns in an inch.
    pub turns_per_inch: f64,
    /// Angle of the flanks, degrees.
    pub flank_degrees: f64,
    /// Measured diameter below nominal, mm; negative above.
    pub below_nominal_mm: f64,
    /// Measured pitch against nominal, per cent.
    pub pitch_off_percent: f64,
    /// It fits within what measuring and wear allow.
    pub fits: bool,
    /// What tells it apart, or where it is met.
    pub hint: Option<Message>,
}

/// Threads that fit, the nearest first, and the neighbours that could be taken for them.
#[derive(Clone, Debug, PartialEq)]
pub struct Identified {
    /// That fit.
    pub likely: Vec<ThreadMatch>,
    /// That are near without fitting.
    pub neighbours: Vec<ThreadMatch>,
}

/// Names the threads that a measured outer diameter (mm) and pitch (mm) can be.
///
/// A screw measures a little below its nominal size, by its tolerance and by wear, never much above. Source: method of our
/// own over the tables; limits common practice. Range: outer threads; measure a nut by the screw that fits it.
///
/// ```
/// let found = layshaft_core::fasteners::identify(9.9, 1.25);
/// assert_eq!(found.likely[0].name, "M10 × 1.25");
/// assert!(found.neighbours.iter().any(|thread| thread.name == "3/8-20 BSF"));
/// ```
pub fn identify(diameter_mm: f64, pitch_mm: f64) -> Identified {
    let mut scored: Vec<(f64, ThreadMatch)> = THREADS
        .iter()
        .map(|thread| (misfit(thread, diameter_mm, pitch_mm), set_against(thread, diameter_mm, pitch_mm)))
        .collect();
    scored.sort_by(|a, b| a.0.total_cmp(&b.0));
    let (likely, others): (Vec<_>, Vec<_>) = scored.into_iter().map(|(_, found)| found).partition(|found| found.fits);
    let neighbours = others.into_iter().filter(near).collect();
    Identified { likely, neighbours }
}

/// How badly a thread fits: pitch and diameter, each against what it may be off by.
fn misfit(thread: &Thread, diameter_mm: f64, pitch_mm: f64) -> f64 {
    let below = thread.diameter_mm - diameter_mm;
    // The middle of what a used screw measures is where it fits best.
    let middle = (BELOW_MM + BELOW_SHARE * thread.pitch_mm - ABOVE_MM) / 2.0;
    let pitch_off = (pitch_mm / thread.pitch_mm - 1.0).abs();
    (below - middle).abs() / DIAMETER_NEAR_MM + pitch_off / PITCH_FITS
}

fn set_against(thread: &Thread, diameter_mm: f64, pitch_mm: f64) -> ThreadMatch {
    let below = thread.diameter_mm - diameter_mm;
    let off = pitch_mm / thread.pitch_mm - 1.0;
    ThreadMatch {
        name: thread.name.to_owned(),
        family: thread.family,
        family_words: thread.family.words(),
        diameter_mm: thread.diameter_mm,
        pitch_mm: thread.pitch_mm,
        turns_per_inch: INCH_MM / thread.pitch_mm,
        flank_degrees: thread.family.flank_degrees(),
        below_nominal_mm: below,
        pitch_off_percent: off * 100.0,
        fits: below >= -ABOVE_MM && below <= BELOW_MM + BELOW_SHARE * thread.pitch_mm && off.abs() <= PITCH_FITS,
        hint: hint(thread),
    }
}

fn near(found: &ThreadMatch) -> bool {
    found.below_nominal_mm.abs() <= DIAMETER_NEAR_MM && found.pitch_off_percent.abs() <= PITCH_NEAR * 100.0
}

/// What tells a thread apart. JIS habits and heads are from memory, so they are unconfirmed.
fn hint(thread: &Thread) -> Option<Message> {
    let hint = match (thread.family, thread.name) {
        (_, "M6 × 1") => ThreadMessage::HintMetricSix,
        (_, "M8 × 1.25") => ThreadMessage::HintMetricEight,
        (_, "M10 × 1.25") => ThreadMessage::HintMetricTen,
        (_, "M12 × 1.25") => ThreadMessage::HintMetricTwelve,
        (_, "M10 × 1") => ThreadMessage::HintBanjo,
        (_, "M14 × 1.25") => ThreadMessage::HintPlug,
        (ThreadFamily::OldJis, _) => ThreadMessage::HintOldJis,
        (ThreadFamily::Whitworth, _) => ThreadMessage::HintWhitworth,
        (ThreadFamily::Bsf, _) => ThreadMessage::HintBsf,
        (ThreadFamily::Cycle, _) => ThreadMessage::HintCycle,
        _ => return None,
    };
    Some(hint.into())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(found: &[ThreadMatch]) -> Vec<&str> {
        found.iter().map(|thread| thread.name.as_str()).collect()
    }

    #[test]
    fn every_thread_is_found_by_its_own_measures_as_a_screw_measures() {
        for thread in THREADS {
            let measured = thread.diameter_mm - 0.05 - 0.05 * thread.pitch_mm;
            let found = identify(measured, thread.pitch_mm);
            assert!(names(&found.likely).contains(&thread.name), "{}: {:?}", thread.name, names(&found.likely));
        }
    }

    #[test]
    fn a_metric_screw_is_told_from_its_inch_neighbour_and_the_neighbour_is_named() {
        let found = identify(7.9, 1.25);
        assert_eq!(names(&found.likely), ["M8 × 1.25"]);
        assert!(names(&found.neighbours).contains(&"5/16-18 UNC") || names(&found.neighbours).contains(&"5/16-22 BSF"));
        let found = identify(5.9, 1.0);
        assert_eq!(found.likely[0].name, "M6 × 1");
        assert!(names(&found.neighbours).contains(&"1/4-26 BSF"));
    }

    #[test]
    fn threads_that_cannot_be_told_apart_by_caliper_and_gauge_all_stand_there() {
        let quarter = identify(6.27, 1.27);
        assert_eq!(names(&quarter.likely), ["1/4-20 UNC", "1/4-20 BSW"]);
        let cycle = identify(6.27, 25.4 / 26.0);
        assert!(names(&cycle.likely).contains(&"1/4-26 BSF") && names(&cycle.likely).contains(&"1/4-26 cycle"));
    }

    #[test]
    fn what_is_none_of_them_finds_nothing() {
        assert!(identify(9.0, 0.35).likely.is_empty());
        // Half a millimetre above nominal is no M6.
        assert!(!names(&identify(6.5, 1.0).likely).contains(&"M6 × 1"));
    }
}
