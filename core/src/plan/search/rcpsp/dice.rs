//! Dice that fall the same way for the same seed, on every platform. Chance comes in as a seed; the core has none of its own.
//!
//! The generator is PCG32 of the crate `rand_pcg`; its version is pinned, and with it what falls.

use rand_pcg::Pcg32;
use rand_pcg::rand_core::{Rng, SeedableRng};

/// The dice.
#[derive(Clone, Debug)]
pub(crate) struct Dice(Pcg32);

impl Dice {
    /// Dice of a seed. Seeds are spread out first, so that 1 and 2 fall unlike.
    pub(crate) fn of(seed: u64) -> Dice {
        Dice(Pcg32::seed_from_u64(seed))
    }

    /// A number from 0 up to, but not, 1.
    pub(crate) fn roll(&mut self) -> f64 {
        f64::from(self.0.next_u32()) / (u64::from(u32::MAX) + 1) as f64
    }

    /// A whole number below `sides`; 0 where there are none.
    pub(crate) fn below(&mut self, sides: usize) -> usize {
        ((u64::from(self.0.next_u32()) * sides as u64) >> 32) as usize
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
