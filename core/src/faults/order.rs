//! The order in which to try things of which each finds or clears one suspect, with covers that several share.
//!
//! Method: without covers the expected time is least when sorted by probability over minutes (Heckerman, Breese and
//! Rommelse 1995, *Communications of the ACM* 38(3), formula from memory). A cover is a job of no probability that must come
//! before those behind it; for such trees the order by best block is optimal (Horn 1972, *SIAM J. Appl. Math.* 23, from
//! memory): a cover is taken together with as many of the things behind it as raise the ratio of the block.

use layshaft_wire::wire;

use crate::bounds;
use crate::error::Refused;

/// Something to try.
#[wire]
pub struct TryOut {
    /// Its id.
    pub id: String,
    /// Probability that this is it.
    pub probability: f64,
    /// Minutes it takes once in reach.
    pub minutes: f64,
    /// The cover in the way, if any.
    pub cover: Option<String>,
    /// Minutes of that cover; zero without one.
    pub cover_minutes: f64,
}

/// A run of try-outs that are done one after the other.
struct Block {
    members: Vec<usize>,
    probability: f64,
    minutes: f64,
}

/// Expected minutes until it is found, when tried in this order.
///
/// `sum over i of (1 - sum of p_j before i) c_i`, c_i with the cover when it is the first behind it; minutes. Every line is
/// paid for, the last one too.
///
/// ```
/// use layshaft_core::faults::{TryOut, expected_minutes};
/// let of = |id: &str, probability, minutes| TryOut { id: id.to_owned(), probability, minutes, cover: None, cover_minutes: 0.0 };
/// let tries = [of("C", 0.20, 5.0), of("D", 0.15, 6.0), of("A", 0.30, 13.0), of("B", 0.25, 13.0), of("E", 0.10, 10.0)];
/// assert!((expected_minutes(&tries) - 23.80).abs() < 1e-9);
/// ```
pub fn expected_minutes(tries: &[TryOut]) -> f64 {
    let mut left = 1.0;
    let mut off: Vec<&str> = Vec::new();
    let mut sum = 0.0;
    for one in tries {
        let mut minutes = one.minutes;
        if let Some(cover) = one.cover.as_deref().filter(|cover| !off.contains(cover)) {
            minutes += one.cover_minutes;
            off.push(cover);
        }
        sum += left * minutes;
        left -= one.probability;
    }
    sum
}

/// The try-outs in the order of least expected time.
///
/// ```
/// use layshaft_core::faults::{TryOut, try_order};
/// let of = |id: &str, probability, minutes| TryOut { id: id.to_owned(), probability, minutes, cover: None, cover_minutes: 0.0 };
/// let tries = [of("A", 0.30, 13.0), of("B", 0.25, 13.0), of("C", 0.20, 5.0), of("D", 0.15, 6.0), of("E", 0.10, 10.0)];
/// let order: Vec<String> = try_order(&tries).unwrap().into_iter().map(|one| one.id).collect();
/// assert_eq!(order.concat(), "CDABE");
/// ```
pub fn try_order(tries: &[TryOut]) -> Result<Vec<TryOut>, Refused> {
    for one in tries {
        bounds::CHECK_MINUTES.check(one.minutes)?;
        bounds::CHECK_MINUTES.of("coverMinutes").check(one.cover_minutes)?;
        bounds::PROBABILITY.check(one.probability)?;
    }
    let mut blocks = Vec::new();
    for cover in covers(tries) {
        blocks.extend(blocks_behind(tries, cover));
    }
    // A stable sort keeps the blocks of one cover, whose ratios fall, in their order.
    blocks.sort_by(|one, other| ratio(other).total_cmp(&ratio(one)));
    let order = blocks.iter().flat_map(|block| block.members.iter());
    Ok(order.filter_map(|at| tries.get(*at).cloned()).collect())
}

fn covers(tries: &[TryOut]) -> Vec<Option<&str>> {
    let mut covers: Vec<Option<&str>> = vec![None];
    for one in tries {
        let cover = one.cover.as_deref();
        if !covers.contains(&cover) {
            covers.push(cover);
        }
    }
    covers
}

/// The blocks behind one cover: the first takes the cover off and goes on as long as that raises its ratio.
fn blocks_behind(tries: &[TryOut], cover: Option<&str>) -> Vec<Block> {
    let behind = tries.iter().enumerate().filter(|(_, one)| one.cover.as_deref() == cover);
    let access = behind.clone().map(|(_, one)| one.cover_minutes).fold(0.0, f64::max);
    let mut singles: Vec<Block> = behind
        .map(|(at, one)| Block { members: vec![at], probability: one.probability, minutes: one.minutes })
        .collect();
    singles.sort_by(|one, other| ratio(other).total_cmp(&ratio(one)));
    if cover.is_none() {
        return singles;
    }
    let mut first = Block { members: Vec::new(), probability: 0.0, minutes: access };
    let mut rest = Vec::new();
    for single in singles {
        if rest.is_empty() && (first.members.is_empty() || ratio(&single) > ratio(&first)) {
            first.members.extend(single.members);
            first.probability += single.probability;
            first.minutes += single.minutes;
        } else {
            rest.push(single);
        }
    }
    rest.insert(0, first);
    rest
}

fn ratio(block: &Block) -> f64 {
    block.probability / block.minutes.max(1e-9)
}

#[cfg(test)]
mod tests {
    use rand_pcg::Pcg32;
    use rand_pcg::rand_core::{Rng, SeedableRng};

    use super::*;

    fn of(id: &str, probability: f64, minutes: f64, cover: Option<(&str, f64)>) -> TryOut {
        TryOut {
            id: id.to_owned(),
            probability,
            minutes,
            cover: cover.map(|(name, _)| name.to_owned()),
            cover_minutes: cover.map_or(0.0, |(_, minutes)| minutes),
        }
    }

    fn names(order: &[TryOut]) -> String {
        order.iter().map(|one| one.id.as_str()).collect::<Vec<_>>().join(" ")
    }

    /// Every order, by Heap's method.
    fn best(tries: &mut Vec<TryOut>, upto: usize, least: &mut f64) {
        if upto <= 1 {
            *least = least.min(expected_minutes(tries));
            return;
        }
        for at in 0..upto {
            best(tries, upto - 1, least);
            tries.swap(if upto.is_multiple_of(2) { at } else { 0 }, upto - 1);
        }
    }

    fn optimum(tries: &[TryOut]) -> f64 {
        let mut least = f64::INFINITY;
        best(&mut tries.to_vec(), tries.len(), &mut least);
        least
    }

    #[test]
    fn five_causes_of_a_dead_circuit_come_in_the_checked_order() {
        let tries = [
            of("stator", 0.10, 20.0, None),
            of("regulator", 0.30, 10.0, None),
            of("fuse", 0.25, 1.0, None),
            of("ground", 0.20, 4.0, None),
            of("terminal", 0.15, 2.0, None),
        ];
        let order = try_order(&tries).unwrap();
        assert_eq!(names(&order), "fuse terminal ground regulator stator");
        // With the repairs (2, 1, 3, 40 and 60 minutes, each paid for only when it is the culprit) it is 30.15.
        let repairs = 0.25 * 2.0 + 0.15 * 1.0 + 0.20 * 3.0 + 0.30 * 40.0 + 0.10 * 60.0;
        assert!((expected_minutes(&order) + repairs - 30.15).abs() < 1e-9);
        let mut worst = order;
        worst.reverse();
        assert!((expected_minutes(&worst) + repairs - 51.70).abs() < 1e-9);
    }

    #[test]
    fn a_shared_cover_turns_the_order_around() {
        let cover = Some(("cover", 6.0));
        let tries =
            [of("A", 0.13, 7.0, None), of("B", 0.27, 2.0, None), of("C", 0.49, 7.0, cover), of("D", 0.11, 1.0, cover)];
        let order = try_order(&tries).unwrap();
        assert_eq!(names(&order), "B D C A");
        assert!((expected_minutes(&order) - 12.36).abs() < 1e-9);
        assert!((optimum(&tries) - 12.36).abs() < 1e-9);
        let naive = [tries[1].clone(), tries[2].clone(), tries[0].clone(), tries[3].clone()];
        assert!((expected_minutes(&naive) - 13.28).abs() < 1e-9);
    }

    #[test]
    fn five_hundred_random_cases_with_shared_covers_are_within_two_per_cent_of_the_best_order() {
        let mut chance = Pcg32::seed_from_u64(20_240_229);
        let mut draw = |below: u32| chance.next_u32() % below;
        let (mut worst, mut naive_loses) = (1.0_f64, 0);
        for _ in 0..500 {
            let weights: Vec<f64> = (0..6).map(|_| 1.0 + f64::from(draw(40))).collect();
            let sum: f64 = weights.iter().sum();
            let minutes = [f64::from(draw(20)), f64::from(draw(20))];
            let tries: Vec<TryOut> = (0..6)
                .map(|at| {
                    let cover = match draw(3) {
                        0 => None,
                        1 => Some(("seat", minutes[0])),
                        _ => Some(("tank", minutes[1])),
                    };
                    of(&at.to_string(), weights[at] / sum, 1.0 + f64::from(draw(15)), cover)
                })
                .collect();
            let best = optimum(&tries);
            worst = worst.max(expected_minutes(&try_order(&tries).unwrap()) / best);
            let mut naive = tries.clone();
            naive.sort_by(|a, b| (b.probability / b.minutes).total_cmp(&(a.probability / a.minutes)));
            naive_loses += usize::from(expected_minutes(&naive) > 1.02 * best);
        }
        assert!(worst <= 1.02, "{worst}");
        assert!(naive_loses > 100, "the plain ratio must fail often, or this test shows nothing: {naive_loses}");
    }

    #[test]
    fn a_time_below_zero_is_refused() {
        assert!(try_order(&[of("A", 0.5, -1.0, None)]).unwrap_err().english().contains("−1 min"));
    }
}
