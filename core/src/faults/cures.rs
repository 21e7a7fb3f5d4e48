//! Suspects that one cure puts right.

use super::case::TroubleCase;
use crate::message::Message;

/// Which cure puts each suspect right, told apart once: a search asks for it thousands of times.
pub(super) struct Cures {
    /// Number of the cure of each suspect, in the order of the suspects.
    of_suspect: Vec<usize>,
    /// How many cures there are.
    count: usize,
}

impl Cures {
    pub(super) fn of(case: &TroubleCase) -> Self {
        let mut told: Vec<&Message> = Vec::new();
        let mut of_suspect = Vec::with_capacity(case.suspects.len());
        for suspect in &case.suspects {
            let known = told.iter().position(|cure| **cure == suspect.cure);
            of_suspect.push(known.unwrap_or(told.len()));
            if known.is_none() {
                told.push(&suspect.cure);
            }
        }
        Self { of_suspect, count: told.len() }
    }

    /// The cures of those suspects that are kept, in the order of all.
    pub(super) fn of_those(&self, kept: impl Iterator<Item = bool>) -> Self {
        let kept = self.of_suspect.iter().zip(kept).filter(|(_, keep)| *keep);
        Self { of_suspect: kept.map(|(cure, _)| *cure).collect(), count: self.count }
    }

    /// The greatest share that one cure holds.
    pub(super) fn settled_share(&self, shares: &[f64]) -> f64 {
        let mut held = vec![0.0_f64; self.count];
        for (cure, share) in self.of_suspect.iter().zip(shares) {
            if let Some(sum) = held.get_mut(*cure) {
                *sum += share;
            }
        }
        held.into_iter().fold(0.0, f64::max)
    }
}
