//! What the service description on a sidewall means: load index and speed symbol.
//!
//! Tables: oocities.org “Motor Cycle Tyre Codes” and thsmoto.co.nz “Understanding tyre sizes and ratings”, which agree from
//! index 43 to 90 (second hand; ISO 4223-1 and UN Regulation No. 75 Annex 4 are behind them). Below 43 only the first has
//! them. The speeds are those of the first: the second prints K, L and Q after a round trip through miles.

use std::fmt;

/// Kilograms that one tyre may carry at a load index; none outside the table, 30 to 95.
///
/// Source: tables named in the module, second hand. The law `45 · 10^(LI/80)` is only near: at index 67 it gives 309.6 kg.
///
/// ```
/// assert_eq!(layshaft_core::record::load_kg(67), Some(307));
/// assert_eq!(layshaft_core::record::load_kg(20), None);
/// ```
pub fn load_kg(load_index: u32) -> Option<u32> {
    const FIRST: u32 = 30;
    #[rustfmt::skip]
    const KILOGRAMS: [u32; 66] = [
        106, 109, 112, 115, 118, 121, 125, 128, 132, 136,
        140, 145, 150, 155, 160, 165, 170, 175, 180, 185,
        190, 195, 200, 206, 212, 218, 224, 230, 236, 243,
        250, 257, 265, 272, 280, 290, 300, 307, 315, 325,
        335, 345, 355, 365, 375, 387, 400, 412, 425, 437,
        450, 462, 475, 487, 500, 515, 530, 545, 560, 580,
        600, 615, 630, 650, 670, 690,
    ];
    KILOGRAMS.get(load_index.checked_sub(FIRST)? as usize).copied()
}

/// A speed symbol.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SpeedSymbol(char);

/// Letters and the speed up to which each is good, km/h. Z has no upper end: it says more than 240.
const SPEEDS: [(char, u32); 18] = [
    ('B', 50),
    ('F', 80),
    ('G', 90),
    ('J', 100),
    ('K', 110),
    ('L', 120),
    ('M', 130),
    ('N', 140),
    ('P', 150),
    ('Q', 160),
    ('R', 170),
    ('S', 180),
    ('T', 190),
    ('U', 200),
    ('H', 210),
    ('V', 240),
    ('W', 270),
    ('Y', 300),
];

impl SpeedSymbol {
    /// The symbol for a letter; none where the letter is no speed symbol.
    pub fn of(letter: char) -> Option<Self> {
        (letter == 'Z' || SPEEDS.iter().any(|(known, _)| *known == letter)).then_some(Self(letter))
    }

    /// Speed up to which the tyre is good, km/h; none for Z, which says “more than 240” and no more.
    ///
    /// ```
    /// use layshaft_core::record::SpeedSymbol;
    /// // H stands out of the alphabet's order.
    /// assert_eq!(SpeedSymbol::of('H').unwrap().kmh(), Some(210));
    /// assert_eq!(SpeedSymbol::of('Z').unwrap().kmh(), None);
    /// assert_eq!(SpeedSymbol::of('I'), None);
    /// ```
    pub fn kmh(self) -> Option<u32> {
        SPEEDS.iter().find(|(letter, _)| *letter == self.0).map(|(_, kmh)| *kmh)
    }

    /// Every symbol.
    pub fn all() -> impl Iterator<Item = Self> {
        SPEEDS.iter().map(|(letter, _)| Self(*letter)).chain([Self('Z')])
    }
}

impl fmt::Display for SpeedSymbol {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.0)
    }
}

/// Load index and speed symbol together, as `67H`; in brackets, `(73W)`, the tyre may go faster than the symbol says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Service {
    /// Load index.
    pub load_index: u32,
    /// Speed symbol.
    pub speed: SpeedSymbol,
    /// In brackets on the sidewall.
    pub beyond: bool,
}

impl fmt::Display for Service {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.beyond {
            write!(f, "({}{})", self.load_index, self.speed)
        } else {
            write!(f, "{}{}", self.load_index, self.speed)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn load_indices_agree_with_both_published_tables() {
        for (index, kilograms) in [
            (40, 140),
            (45, 165),
            (47, 175),
            (50, 190),
            (51, 195),
            (52, 200),
            (53, 206),
            (54, 212),
            (55, 218),
            (56, 224),
            (57, 230),
            (58, 236),
            (59, 243),
            (60, 250),
            (61, 257),
            (62, 265),
            (63, 272),
            (64, 280),
            (65, 290),
            (66, 300),
            (67, 307),
            (68, 315),
            (69, 325),
            (70, 335),
            (71, 345),
            (72, 355),
            (73, 365),
            (74, 375),
            (75, 387),
            (76, 400),
            (77, 412),
            (78, 425),
            (79, 437),
            (80, 450),
            (85, 515),
            (90, 600),
            (95, 690),
        ] {
            assert_eq!(load_kg(index), Some(kilograms), "index {index}");
        }
        assert_eq!((load_kg(29), load_kg(96)), (None, None));
    }

    /// Speeds: bulldog-bt1100.de “Reifenbezeichnung” beside the table above, which agree (second hand).
    #[test]
    fn speed_symbols_agree_with_the_second_table() {
        let speeds = "B50 F80 G90 J100 K110 L120 M130 N140 P150 Q160 R170 S180 T190 U200 H210 V240 W270 Y300";
        for row in speeds.split(' ') {
            let (letter, kmh) = (row.chars().next().unwrap(), row[1..].parse().unwrap());
            assert_eq!(SpeedSymbol::of(letter).unwrap().kmh(), Some(kmh), "{letter}");
        }
        assert_eq!(speeds.split(' ').count() + 1, SpeedSymbol::all().count());
    }

    #[test]
    fn the_law_behind_the_table_is_near_every_row() {
        for index in 30..=95 {
            let near = 45.0 * 10f64.powf(f64::from(index) / 80.0);
            let kilograms = f64::from(load_kg(index).unwrap());
            assert!((kilograms / near - 1.0).abs() < 0.02, "index {index}: {kilograms} kg, law {near:.1} kg");
        }
    }

    #[test]
    fn speeds_rise_along_the_symbols_and_letters_that_mean_nothing_are_refused() {
        assert!(SPEEDS.windows(2).all(|pair| pair[0].1 < pair[1].1));
        for letter in ['A', 'C', 'D', 'E', 'I', 'O', 'X', 'h', '7', '–'] {
            assert_eq!(SpeedSymbol::of(letter), None, "{letter}");
        }
    }
}
