//! How much paint an area takes, and how many cans that is.
//!
//! Spreading rate from solids and film, or as printed on the can; loss by method is common practice.

use crate::bounds;
use crate::fluids::message::MixMessage;
use crate::quantity::{Source, Standing, formula, within};
use crate::record::PutOn;

/// Theoretical spreading rate, m²/L: `R = 10 · VS / DFT`, `VS` solids by volume in per cent, `DFT` dry film in µm.
///
/// Source: arithmetic of volume (1 L on 1 m² is 1 mm); a published table agrees (second hand). Range: one coat, no loss.
///
/// ```
/// assert_eq!(layshaft_core::fluids::spreading_rate(60.0, 50.0), 12.0);
/// ```
pub fn spreading_rate(solids_percent: f64, dry_micrometres: f64) -> f64 {
    10.0 * solids_percent / dry_micrometres
}

/// Wet film that dries to a dry film, µm: `WFT = 100 · DFT / VS`.
///
/// Source: arithmetic of volume; published example VS 71 %, DFT 125 gives 176 µm (second hand). Range: unthinned.
///
/// ```
/// assert!((layshaft_core::fluids::wet_film(71.0, 125.0) - 176.06).abs() < 0.005);
/// ```
pub fn wet_film(solids_percent: f64, dry_micrometres: f64) -> f64 {
    100.0 * dry_micrometres / solids_percent
}

/// Solids of thinned paint, per cent by volume: `VS′ = VS / (1 + t)`, `t` thinner, per cent of the paint over 100.
///
/// The dry film that a litre of *unthinned* paint leaves stays the same; the wet film to aim at grows. Source: arithmetic
/// of volume; computed. Range: thinner that evaporates.
///
/// ```
/// assert_eq!(layshaft_core::fluids::thinned_solids(60.0, 20.0), 50.0);
/// ```
pub fn thinned_solids(solids_percent: f64, thinner_percent: f64) -> f64 {
    solids_percent / (1.0 + thinner_percent / 100.0)
}

/// Paint for an area, mL: `V = 1000 · A · n / (R · (1 − L))`.
///
/// - `A` area, m²; `n` coats; `R` spreading rate of one coat, m²/L; `L` loss, per cent over 100
///
/// Source: arithmetic; computed. Range: loss below 100 %.
///
/// ```
/// // 0.9 m² twice at 12 m²/L with half lost: 300 mL.
/// assert!((layshaft_core::fluids::paint_needed(0.9, 2, 12.0, 50.0) - 300.0).abs() < 1e-9);
/// ```
pub fn paint_needed(square_metres: f64, coats: u32, spreading_rate: f64, loss_percent: f64) -> f64 {
    1000.0 * square_metres * f64::from(coats) / (spreading_rate * (1.0 - loss_percent / 100.0))
}

/// Whole cans for a volume: `n = ⌈V / c⌉`. A millionth of a can over is not another can.
///
/// Source: arithmetic. Range: can above nothing.
///
/// ```
/// assert_eq!(layshaft_core::fluids::cans(300.0, 400.0), 1);
/// assert_eq!(layshaft_core::fluids::cans(801.0, 400.0), 3);
/// ```
pub fn cans(millilitres: f64, can_ml: f64) -> u32 {
    (millilitres / can_ml - 1e-6).ceil().max(0.0) as u32
}

impl PutOn {
    /// Least and greatest loss on small parts, per cent. Common practice, no source.
    ///
    /// ```
    /// assert_eq!(layshaft_core::record::PutOn::Brush.loss_percent(), (5.0, 15.0));
    /// ```
    pub fn loss_percent(self) -> (f64, f64) {
        match self {
            Self::Brush => (5.0, 15.0),
            Self::Roller => (10.0, 20.0),
            Self::Aerosol => (40.0, 60.0),
            Self::Gun => (50.0, 70.0),
            Self::LowPressureGun => (30.0, 50.0),
        }
    }
}

formula! {
    /// Paint that an area takes at a spreading rate.
    PaintForArea in Paint, "V = 1000 · A · n / (R · (1 − l / 100))"
    takes {
        /// Area, m².
        "A" square_metres: f64 = within(&bounds::PAINTED_AREA);
        /// Coats.
        "n" coats: u32 = within(&bounds::COATS);
        /// Spreading rate, m² a litre.
        "R" spreading_rate: f64 = within(&bounds::SPREADING);
        /// Loss, per cent.
        "l" loss_percent: f64 = within(&bounds::SPRAY_LOSS);
    }
    gives {
        /// Paint.
        millilitres "V" Millilitre;
    }
    from volumes();
    it => Ok([paint_needed(it.square_metres, it.coats, it.spreading_rate, it.loss_percent)])
}

formula! {
    /// Paint and cans for an area.
    PaintNeeded in Paint, "V = 1000 · A · n / (R · (1 − l / 100)), R = 10 · s / DFT"
    takes {
        /// Area, square metres.
        "A" square_metres: f64 = within(&bounds::PAINTED_AREA);
        /// Coats.
        "n" coats: u32 = within(&bounds::COATS);
        /// Solids by volume, per cent.
        "s" solids_percent: f64 = within(&bounds::SOLIDS);
        /// Dry film of one coat, micrometres.
        "DFT" dry_micrometres: f64 = within(&bounds::FILM);
        /// Loss, per cent.
        "l" loss_percent: f64 = within(&bounds::SPRAY_LOSS);
        /// Can, millilitres.
        "c" can_ml: f64 = within(&bounds::CAN);
    }
    gives {
        /// Cans.
        cans "⌈V / c⌉" None;
        /// Paint.
        millilitres "V" Millilitre;
        /// Spreading rate.
        spreading_rate "R" SquareMetreLitre;
        /// Wet film.
        wet_film "100 · DFT / s" Micrometre;
    }
    from volumes();
    it => {
        let rate = spreading_rate(it.solids_percent, it.dry_micrometres);
        let millilitres = paint_needed(it.square_metres, it.coats, rate, it.loss_percent);
        let wet = wet_film(it.solids_percent, it.dry_micrometres);
        Ok([f64::from(cans(millilitres, it.can_ml)), millilitres, rate, wet])
    }
}

formula! {
    /// Solids and wet film of thinned paint.
    ThinnedFilm in Paint, "WFT = 100 · DFT / s′, s′ = s / (1 + t / 100)"
    takes {
        /// Solids of the paint by volume, per cent.
        "s" solids_percent: f64 = within(&bounds::SOLIDS);
        /// Thinner, per cent of the paint.
        "t" thinner_percent: f64 = within(&bounds::THINNER);
        /// Dry film of one coat, micrometres.
        "DFT" dry_micrometres: f64 = within(&bounds::FILM);
    }
    gives {
        /// Wet film.
        wet_film "WFT" Micrometre;
        /// Solids, thinned.
        solids "s′" Percent;
    }
    from volumes();
    it => {
        let solids = thinned_solids(it.solids_percent, it.thinner_percent);
        Ok([wet_film(solids, it.dry_micrometres), solids])
    }
}

fn volumes() -> Source {
    Source::new(MixMessage::SourceVolumes, Standing::SecondHand)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn the_published_rates_hold() {
        for (solids, film, rate) in [(60.0, 50.0, 12.0), (45.0, 75.0, 6.0), (100.0, 25.0, 40.0), (71.0, 125.0, 5.68)] {
            assert!((spreading_rate(solids, film) - rate).abs() < 1e-9);
        }
        assert!((wet_film(71.0, 125.0) - 176.0).abs() < 0.5);
    }

    proptest! {
        #[test]
        fn more_area_coats_or_loss_takes_more(area in 0.05..5.0, coats in 1u32..6, rate in 2.0..20.0, loss in 0.0..60.0) {
            let needed = paint_needed(area, coats, rate, loss);
            prop_assert!(paint_needed(area * 1.1, coats, rate, loss) > needed);
            prop_assert!(paint_needed(area, coats + 1, rate, loss) > needed);
            prop_assert!(paint_needed(area, coats, rate, loss + 5.0) > needed);
            let bought = cans(needed, 400.0);
            prop_assert!(f64::from(bought) * 400.0 >= needed - 1e-3 && f64::from(bought - 1) * 400.0 < needed);
        }
    }
}
