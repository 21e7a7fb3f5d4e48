//! Pouring a volume with the cups one owns, to the millilitre.
//!
//! Whole millilitres throughout, so that the pours add up exactly. Full cups first, the rest in the smallest cup that holds
//! it, because a small cup reads finer: common practice, no source.

use layshaft_wire::wire;

use crate::bounds;
use crate::error::Refused;
use crate::fluids::message::FillMessage;
use crate::message::{Measure, Message};
use crate::quantity::{FormulaSource, Source, Standing, formula, within};
use crate::units::Unit;

/// A cup filled so many times.
#[wire]
pub struct Pour {
    /// Size of the cup, mL.
    pub cup_ml: u32,
    /// How often.
    pub times: u32,
    /// How much each time, mL: the whole cup, or up to a mark.
    pub each_ml: u32,
}

impl Pour {
    /// What it pours, mL.
    pub fn ml(&self) -> u64 {
        u64::from(self.times) * u64::from(self.each_ml)
    }
}

/// Splits a volume over the cups one owns: the largest cup full as often as it goes, and the rest in the smallest cup that
/// holds it. `n = ⌊V / c⌋` full cups of the largest size `c`, then `V − n·c`; all in mL. No other split has fewer pours.
///
/// Source: arithmetic; computed. Range: 1 to 12 cups with a scale on them.
///
/// ```
/// use layshaft_core::fluids::{Pour, split_pours};
/// // 1.1 L with a 1 L cup: 1 L + 100 mL (arithmetic).
/// let pours = split_pours(1100, &[1000]).unwrap();
/// assert_eq!(pours, [Pour { cup_ml: 1000, times: 1, each_ml: 1000 }, Pour { cup_ml: 1000, times: 1, each_ml: 100 }]);
/// ```
pub fn split_pours(volume_ml: u32, cups_ml: &[u32]) -> Result<Vec<Pour>, Refused> {
    bounds::CUPS.check(cups_ml.len() as f64)?;
    for cup in cups_ml {
        bounds::CUP.check(f64::from(*cup))?;
    }
    let Some(largest) = cups_ml.iter().copied().max() else { return Ok(Vec::new()) };
    let (times, rest) = (volume_ml / largest, volume_ml % largest);
    let mut pours = Vec::new();
    if times > 0 {
        pours.push(Pour { cup_ml: largest, times, each_ml: largest });
    }
    if rest > 0 {
        // The largest cup always holds the rest, so there is one.
        let cup_ml = cups_ml.iter().copied().filter(|cup| *cup >= rest).min().unwrap_or(largest);
        pours.push(Pour { cup_ml, times: 1, each_ml: rest });
    }
    Ok(pours)
}

/// The pours in one line: “1 L + 100 mL”, with the cup named where there are several.
pub(crate) fn in_words(pours: &[Pour], cups: usize) -> Message {
    let said = |pour: &Pour| {
        let volume = volume(pour.each_ml);
        let said = match pour.times {
            1 => FillMessage::Pour { volume },
            times => FillMessage::PourTimes { times, volume },
        };
        if cups > 1 && pour.cup_ml != pour.each_ml {
            FillMessage::PourInCup { pour: said.into(), cup: self::volume(pour.cup_ml) }.into()
        } else {
            said.into()
        }
    };
    let all = pours.iter().map(said).reduce(|before, pour| FillMessage::ThenPour { before, pour }.into());
    all.unwrap_or_else(|| FillMessage::Pour { volume: volume(0) }.into())
}

/// A volume as one says it: litres where they come out whole, else millilitres.
pub(crate) fn volume(ml: u32) -> Measure {
    if ml >= 1000 && ml.is_multiple_of(1000) { Unit::Litre.of(ml / 1000) } else { Unit::Millilitre.of(ml) }
}

/// What cups poured full and a last pour come to, mL.
///
/// ```
/// assert_eq!(layshaft_core::fluids::poured(2, 500.0, 300.0), 1300.0);
/// ```
pub fn poured(times: u32, cup_ml: f64, last_ml: f64) -> f64 {
    f64::from(times) * cup_ml + last_ml
}

formula! {
    /// What cups come to.
    Poured in Fluids, "V = n · c + r"
    takes {
        /// Full cups.
        "n" times: u32 = within(&bounds::POURS);
        /// Cup, millilitres.
        "c" cup_ml: f64 = within(&bounds::CUP);
        /// Last pour, millilitres.
        "r" last_ml: f64 = within(&bounds::LAST_POUR);
    }
    gives {
        /// Together.
        together "V" Millilitre;
        /// Full cups.
        full "n · c" Millilitre;
    }
    from Source::new(FormulaSource::Arithmetic, Standing::Computed);
    it => Ok([poured(it.times, it.cup_ml, it.last_ml), poured(it.times, it.cup_ml, 0.0)])
}

formula! {
    /// A volume poured with one cup.
    PourSplit in Fluids, "n = ⌊1000 · V / c⌋, last = 1000 · V − n · c"
    takes {
        /// Volume, litres.
        "V" litres: f64 = within(&bounds::LITRES);
        /// Cup, millilitres.
        "c" cup_ml: u32 = within(&bounds::CUP);
    }
    gives {
        /// Full cups.
        full_cups "n" None;
        /// Last pour.
        last "last" Millilitre;
        /// Pours in all.
        pours "pours" None;
    }
    from Source::new(FormulaSource::Arithmetic, Standing::Computed);
    it => {
        let volume_ml = (it.litres * 1000.0).round() as u32;
        split_pours(volume_ml, &[it.cup_ml]).map(|pours| {
            let full: u32 = pours.iter().filter(|pour| pour.each_ml == it.cup_ml).map(|pour| pour.times).sum();
            let times: u32 = pours.iter().map(|pour| pour.times).sum();
            [f64::from(full), f64::from(volume_ml - full * it.cup_ml), f64::from(times)]
        })
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn the_pours_are_said_in_one_line_with_the_cup_where_there_are_several() {
        let said = |volume_ml, cups: &[u32]| in_words(&split_pours(volume_ml, cups).unwrap(), cups.len());
        assert_eq!(said(1100, &[1000]), "1 L + 100 mL");
        assert_eq!(said(2400, &[1000, 250]), "2 × 1 L + 400 mL in the 1 L cup");
    }

    proptest! {
        #[test]
        fn the_pours_add_up_exactly_and_no_cup_runs_over(
            volume in 1u32..60_000, cups in proptest::collection::vec(1u32..5_000, 1..6),
        ) {
            let pours = split_pours(volume, &cups).unwrap();
            prop_assert_eq!(pours.iter().map(Pour::ml).sum::<u64>(), u64::from(volume));
            prop_assert!(pours.iter().all(|pour| pour.each_ml <= pour.cup_ml && cups.contains(&pour.cup_ml)));
            // No way of pouring takes fewer cups than the largest one alone.
            let largest = cups.iter().copied().max().unwrap();
            let count: u32 = pours.iter().map(|pour| pour.times).sum();
            prop_assert_eq!(count, volume.div_ceil(largest));
        }
    }

    #[test]
    fn the_rest_goes_into_the_smallest_cup_that_holds_it() {
        let pours = split_pours(1200, &[1000, 250, 100]).unwrap();
        assert_eq!(pours[1], Pour { cup_ml: 250, times: 1, each_ml: 200 });
        assert_eq!(split_pours(250, &[1000, 250]).unwrap(), [Pour { cup_ml: 250, times: 1, each_ml: 250 }]);
    }

    #[test]
    fn no_cup_and_a_cup_of_nothing_are_refused() {
        assert!(matches!(split_pours(1000, &[]), Err(Refused::OutOfRange { field, .. }) if field == "cupsMl"));
        assert!(matches!(split_pours(1000, &[0]), Err(Refused::OutOfRange { field, .. }) if field == "cupMl"));
    }
}
