//! Dice that fall the same way for the same seed (xorshift, Marsaglia, “Xorshift RNGs”, Journal of Statistical
//! Software 8, 2003, standing: from memory). Chance comes in as a seed; the core has none of its own.

/// The dice.
#[derive(Clone, Debug)]
pub(crate) struct Dice(u64);

impl Dice {
    /// Dice of a seed. Seeds are spread out first (multiplied by the golden ratio), so that 1 and 2 fall unlike.
    pub(crate) fn of(seed: u64) -> Dice {
        Dice(seed.wrapping_add(1).wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1)
    }

    fn next(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0
    }

    /// A number from 0 up to, but not, 1.
    pub(crate) fn roll(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// A whole number below `sides`; 0 where there are none.
    pub(crate) fn below(&mut self, sides: usize) -> usize {
        (((self.next() >> 32) * sides as u64) >> 32) as usize
    }
}

#[cfg(test)]
mod tests {
    use super::Dice;

    #[test]
    fn the_same_seed_falls_the_same_way_and_evenly() {
        let mut dice = Dice::of(7);
        let rolls: Vec<f64> = (0..20_000).map(|_| dice.roll()).collect();
        let mut again = Dice::of(7);
        assert!(rolls.iter().all(|roll| *roll == again.roll() && (0.0..1.0).contains(roll)));
        assert!((rolls.iter().sum::<f64>() / 20_000.0 - 0.5).abs() < 0.01);
        let mut sides = [0_u32; 6];
        (0..60_000).for_each(|_| sides[dice.below(6)] += 1);
        assert!(sides.iter().all(|times| (9_500..10_500).contains(times)), "{sides:?}");
    }
}
