//! Chain length and centre distance, by exact geometry on the pitch circles.
//!
//! The chain is taken as an open belt on two circles whose circumference is teeth times pitch (the classical open-belt
//! geometry). ISO 606 and the engineers' handbooks print an approximation of the same thing; the two differ by less
//! than a thousandth of a link on a motorcycle.

use std::f64::consts::PI;

use crate::error::Refused;
use crate::gearing::message::GearingRefused;
use crate::units::Unit;

/// Pitch diameter of a sprocket, mm: the circle on which the pins of the chain lie.
///
/// `d = p / sin(180° / z)`
///
/// - `p` pitch, mm; `z` teeth
///
/// Source: ISO 606, pitch circle (from memory); the form and a table of 145 values, z = 8 to 152 at one inch, at
/// tandwiel.info “pitch diameter of roller chain wheels” (second hand; every row agrees). Range: 2 teeth and more.
///
/// ```
/// let d = layshaft_core::gearing::pitch_diameter(17, 25.4);
/// assert!((d - 138.23).abs() < 0.005);
/// ```
pub fn pitch_diameter(teeth: u32, pitch_mm: f64) -> f64 {
    pitch_mm / (PI / f64::from(teeth)).sin()
}

/// Links that a chain needs at a centre distance, with decimals.
///
/// `sin α = (z₂ − z₁) / (2π·C)`, `X = 2·C·cos α + (z₁ + z₂)/2 + (z₂ − z₁)·α/π`
///
/// - `z₁`, `z₂` teeth; `C` centre distance in pitches (`centre_distance_mm / pitch_mm`); `α` radian; `X` links
///
/// Source: classical open-belt geometry on pitch arcs (from memory); ISO 606 and Machinery's Handbook print its
/// approximation. Range: one run of chain round two sprockets, no tensioner, no sag; the pitch circles stay apart.
/// When they do not, the answer is a refusal.
///
/// ```
/// let links = layshaft_core::gearing::chain_length(15, 45, 600.0, 15.875).unwrap();
/// assert!((links - 106.1945).abs() < 5e-5);
/// ```
pub fn chain_length(front_teeth: u32, rear_teeth: u32, centre_distance_mm: f64, pitch_mm: f64) -> Result<f64, Refused> {
    let least = touching_distance(front_teeth, rear_teeth, pitch_mm);
    if centre_distance_mm.is_nan() || centre_distance_mm <= least {
        return Err(Refused::Conflict {
            field: "centreDistanceMm".to_owned(),
            reason: GearingRefused::SprocketsTouch {
                distance: Unit::Millimetre.of(centre_distance_mm),
                front: front_teeth,
                rear: rear_teeth,
                least: Unit::Millimetre.of(least),
            }
            .into(),
        });
    }
    Ok(links_at(front_teeth, rear_teeth, centre_distance_mm / pitch_mm))
}

/// The next even count of links: a chain closes only on an even count, because inner and outer links take turns.
///
/// `n = 2·⌈X / 2⌉`, links. An excess of up to a millionth of a link counts as none.
///
/// Source: chain makers' practice, ramseychain.com “chain length calculations” (second hand). Range: an odd count needs a
/// cranked link, which has no place on a motorcycle (common practice).
///
/// ```
/// use layshaft_core::gearing::next_even;
/// assert_eq!(next_even(106.1945), 108);
/// assert_eq!(next_even(116.000_000_000_1), 116);
/// ```
pub fn next_even(links: f64) -> u32 {
    // The cast saturates: what is no number becomes 0, what is too large the largest count.
    (((links - 1e-6) / 2.0).ceil().max(0.0) as u32).saturating_mul(2)
}

/// Centre distance that a count of links gives, mm: [`chain_length`] turned round.
///
/// Solves `X(C) = links` by Newton steps kept inside a bracket. `dX/dC = 2·cos α` is positive, so there is just one
/// answer; it lies between the touching pitch circles and half the chain. Result to better than 1e-9 mm.
///
/// - `links` count; `pitch_mm` mm
///
/// Source: computed; agrees with the table form `C = p·f₄·(2X − z₁ − z₂)` of ISO 606 (second hand). Range: as
/// [`chain_length`]; a chain too short for the teeth is refused.
///
/// ```
/// let mm = layshaft_core::gearing::centre_distance(15, 45, 108, 15.875).unwrap();
/// assert!((mm - 614.4439).abs() < 5e-5);
/// ```
pub fn centre_distance(front_teeth: u32, rear_teeth: u32, links: u32, pitch_mm: f64) -> Result<f64, Refused> {
    worn_centre_distance(front_teeth, rear_teeth, links, pitch_mm, 0.0)
}

/// Centre distance that a worn chain gives, mm: [`centre_distance`] with every pitch grown.
///
/// `X · (1 + e/100)` links in place of `X`; `e` elongation, per cent, the sprockets keep their pitch.
///
/// Source: computed. Range: as [`centre_distance`]; a worn chain rides higher on the teeth, which adds some tenths of a
/// millimetre that are left out.
///
/// ```
/// use layshaft_core::gearing::{centre_distance, worn_centre_distance};
/// let (new, worn) = (centre_distance(15, 41, 116, 12.7).unwrap(), worn_centre_distance(15, 41, 116, 12.7, 1.0).unwrap());
/// // 1.16 links more, half of them on each run.
/// assert!((worn - new - 0.58 * 12.7).abs() < 0.1);
/// ```
pub fn worn_centre_distance(
    front_teeth: u32,
    rear_teeth: u32,
    links: u32,
    pitch_mm: f64,
    elongation_percent: f64,
) -> Result<f64, Refused> {
    let shortest = touching_distance(front_teeth, rear_teeth, pitch_mm) / pitch_mm;
    let least_links = links_at(front_teeth, rear_teeth, shortest);
    let reach = f64::from(links) * (1.0 + elongation_percent / 100.0);
    if reach <= least_links {
        return Err(Refused::Conflict {
            field: "chainLinks".to_owned(),
            reason: GearingRefused::ChainTooShort {
                links,
                front: front_teeth,
                rear: rear_teeth,
                least: Unit::Links.of(least_links),
            }
            .into(),
        });
    }
    Ok(distance_for(front_teeth, rear_teeth, reach, shortest) * pitch_mm)
}

/// Turns of a sprocket until the same tooth meets the same link again. The more, the more evenly both wear.
///
/// `turns = X / gcd(z, X)`, links over the greatest common divisor of teeth and links.
///
/// Source: number theory (computed); odd teeth on an even chain are the handbooks' advice (second hand,
/// mechanical-design-handbook.blogspot.com 2011/03). Range: whole counts above zero.
///
/// ```
/// use layshaft_core::gearing::turns_until_same_link;
/// assert_eq!(turns_until_same_link(15, 110), 22);
/// assert_eq!(turns_until_same_link(17, 110), 110);
/// assert_eq!(turns_until_same_link(14, 112), 8);
/// ```
pub fn turns_until_same_link(teeth: u32, links: u32) -> u32 {
    links.checked_div(common_divisor(teeth, links)).unwrap_or(0)
}

/// Greatest common divisor of teeth and links: a tooth meets only one link in so many. 1 is best.
///
/// Euclid's algorithm. Source: number theory (computed). Range: whole counts above zero.
///
/// ```
/// use layshaft_core::gearing::common_divisor;
/// assert_eq!((common_divisor(15, 110), common_divisor(17, 110), common_divisor(14, 112)), (5, 1, 14));
/// ```
pub fn common_divisor(teeth: u32, links: u32) -> u32 {
    let (mut divisor, mut rest) = (links, teeth);
    while rest != 0 {
        (divisor, rest) = (rest, divisor % rest);
    }
    divisor
}

/// Centre distance at which the pitch circles touch, mm.
fn touching_distance(front_teeth: u32, rear_teeth: u32, pitch_mm: f64) -> f64 {
    (pitch_diameter(front_teeth, pitch_mm) + pitch_diameter(rear_teeth, pitch_mm)) / 2.0
}

/// The open-belt formula itself; `distance` in pitches, beyond the touching distance.
fn links_at(front_teeth: u32, rear_teeth: u32, distance: f64) -> f64 {
    let (front, rear) = (f64::from(front_teeth), f64::from(rear_teeth));
    let lean = lean(front_teeth, rear_teeth, distance);
    2.0 * distance * lean.cos() + (front + rear) / 2.0 + f64::from(rear_teeth.abs_diff(front_teeth)) * lean / PI
}

/// Angle between the run of the chain and the line of centres, radian.
fn lean(front_teeth: u32, rear_teeth: u32, distance: f64) -> f64 {
    (f64::from(rear_teeth.abs_diff(front_teeth)) / (2.0 * PI * distance)).asin()
}

/// The distance in pitches that takes `links`, between `shortest` and half the chain.
fn distance_for(front_teeth: u32, rear_teeth: u32, links: f64, shortest: f64) -> f64 {
    let (mut low, mut high) = (shortest, links / 2.0);
    let mut distance = high;
    for _ in 0..200 {
        let excess = links_at(front_teeth, rear_teeth, distance) - links;
        if excess > 0.0 {
            high = distance;
        } else {
            low = distance;
        }
        let newton = distance - excess / (2.0 * lean(front_teeth, rear_teeth, distance).cos());
        let next = if newton > low && newton < high { newton } else { f64::midpoint(low, high) };
        if (next - distance).abs() < 1e-13 * links {
            return next;
        }
        distance = next;
    }
    distance
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    /// The approximation that standards and handbooks print, as an independent check.
    fn handbook_length(front: f64, rear: f64, distance: f64) -> f64 {
        2.0 * distance + (front + rear) / 2.0 + ((rear - front) / (2.0 * PI)).powi(2) / distance
    }

    #[test]
    fn pitch_diameters_agree_with_the_published_table_at_one_inch() {
        for (teeth, published) in [(8, 66.37), (9, 74.26), (15, 122.17), (17, 138.23), (45, 364.12), (152, 1229.02)] {
            assert!((pitch_diameter(teeth, 25.4) - published).abs() < 0.0051, "{teeth} teeth");
        }
    }

    #[test]
    fn pitch_diameters_of_other_pitches_scale_with_the_pitch() {
        for (teeth, per_pitch) in [(9, 2.9238), (15, 4.8097), (17, 5.4422), (45, 14.3356)] {
            assert!((pitch_diameter(teeth, 1.0) - per_pitch).abs() < 5.1e-5, "{teeth} teeth");
        }
        for (teeth, mm) in [(15, 76.3545), (45, 227.5774)] {
            assert!((pitch_diameter(teeth, 15.875) - mm).abs() < 5.1e-5, "{teeth} teeth");
        }
    }

    #[test]
    fn the_printed_approximation_gives_its_own_worked_values() {
        // 15/45 at 600 mm, 14/42 at 550 mm, 17/42 at 650 mm, 17/34 at 40 pitches.
        for (front, rear, pitches, links) in [
            (15.0, 45.0, 600.0 / 15.875, 106.1937),
            (14.0, 42.0, 550.0 / 12.7, 115.0727),
            (17.0, 42.0, 650.0 / 15.875, 111.7764),
            (17.0, 34.0, 40.0, 105.6830),
        ] {
            assert!((handbook_length(front, rear, pitches) - links).abs() < 6e-5);
        }
        // And turned round: C = ¼ (S + √(S² − 8 ((z₂ − z₁) / 2π)²)), S = X − (z₁ + z₂) / 2.
        for (front, rear, pitch, links, near) in [
            (15.0, 45.0, 15.875, 108.0, 614.4499),
            (14.0, 42.0, 12.7, 116.0, 555.9191),
            (17.0, 42.0, 15.875, 112.0, 651.7831),
        ] {
            let (rest, lean): (f64, f64) = (links - (front + rear) / 2.0, (rear - front) / (2.0 * PI));
            let distance = (rest + (rest * rest - 8.0 * lean * lean).sqrt()) / 4.0 * pitch;
            assert!((distance - near).abs() < 6e-5, "{distance}");
            let exact = centre_distance(front as u32, rear as u32, links as u32, pitch).unwrap();
            assert!((distance - exact).abs() < 0.007);
        }
    }

    #[test]
    fn the_same_tooth_meets_the_same_link_after_the_turns_of_the_table() {
        for (teeth, links, divisor, turns) in [(15, 110, 5, 22), (17, 110, 1, 110), (14, 112, 14, 8)] {
            assert_eq!((common_divisor(teeth, links), turns_until_same_link(teeth, links)), (divisor, turns));
        }
    }

    #[test]
    fn lengths_and_distances_agree_with_the_worked_cases() {
        for (front, rear, pitch, mm, links, even, even_mm) in [
            (15, 45, 15.875, 600.0, 106.1945, 108, 614.4439),
            (14, 42, 12.7, 550.0, 115.0731, 116, 555.9166),
            (17, 42, 15.875, 650.0, 111.7767, 112, 651.7807),
        ] {
            let exact = chain_length(front, rear, mm, pitch).unwrap();
            assert!((exact - links).abs() < 6e-5, "{exact}");
            assert_eq!(next_even(exact), even);
            assert!((centre_distance(front, rear, even, pitch).unwrap() - even_mm).abs() < 6e-5);
        }
        assert!((chain_length(17, 34, 40.0, 1.0).unwrap() - 105.6831).abs() < 6e-5);
    }

    #[test]
    fn the_table_form_of_the_standard_gives_the_same_distance() {
        // f4 = 1 / (2π sin α (2k − 1)) at k = cos α/(π sin α) + 1/2 + α/π; the values computed apart.
        for (k, published) in [
            (13.0, 0.24992),
            (10.0, 0.24986),
            (5.0, 0.24937),
            (3.0, 0.24795),
            (2.0, 0.24421),
            (1.5, 0.23648),
            (1.25, 0.22442),
        ] {
            let (mut low, mut high) = (1e-6, PI / 2.0 - 1e-6);
            for _ in 0..200 {
                let lean = f64::midpoint(low, high);
                // k falls as the lean grows.
                if lean.cos() / (PI * lean.sin()) + 0.5 + lean / PI > k { low = lean } else { high = lean }
            }
            let f4 = 1.0 / (2.0 * PI * low.sin() * (2.0 * k - 1.0));
            assert!((f4 - published).abs() < 6e-6, "{f4}");
            let (front, rear) = (15.0, 45.0);
            let links = k * (rear - front) + front;
            let distance = f4 * (2.0 * links - front - rear);
            assert!((links_at(15, 45, distance) - links).abs() < 1e-9);
        }
    }

    #[test]
    fn sprockets_that_run_into_each_other_are_refused_in_trade_words() {
        let refused = chain_length(15, 45, 140.0, 15.875).unwrap_err();
        assert!(matches!(&refused, Refused::Conflict { field, .. } if field == "centreDistanceMm"));
        assert!(refused.english().contains("run into each other"), "{refused}");
        assert!(chain_length(15, 45, f64::NAN, 15.875).is_err());
    }

    #[test]
    fn a_chain_too_short_for_the_teeth_is_refused_in_trade_words() {
        let refused = centre_distance(15, 45, 40, 15.875).unwrap_err();
        assert!(matches!(&refused, Refused::Conflict { field, .. } if field == "chainLinks"));
        assert!(refused.english().contains("too short for 15 and 45 teeth"), "{refused}");
    }

    #[test]
    fn next_even_takes_whole_even_counts_as_they_are() {
        assert_eq!([next_even(115.0), next_even(116.0), next_even(116.01), next_even(f64::NAN)], [116, 116, 118, 0]);
    }

    proptest! {
        // The largest pair touches at 94 links; shorter chains are refused.
        #[test]
        fn length_and_distance_lead_back_to_each_other(front in 9u32..=30, rear in 20u32..=80, links in 100u32..=200) {
            let pitch = 12.7;
            let mm = centre_distance(front, rear, links, pitch).unwrap();
            prop_assert!((chain_length(front, rear, mm, pitch).unwrap() - f64::from(links)).abs() < 1e-9);
        }

        #[test]
        fn distance_and_length_lead_back_to_each_other(front in 9u32..=30, rear in 20u32..=80, mm in 400.0..1200.0) {
            let pitch = 15.875;
            let links = chain_length(front, rear, mm, pitch).unwrap();
            let shortest = touching_distance(front, rear, pitch) / pitch;
            prop_assert!((distance_for(front, rear, links, shortest) * pitch - mm).abs() < 1e-9);
        }

        #[test]
        fn a_chain_ends_where_the_handbook_says(front in 9u32..=20, rear in 30u32..=60, mm in 500.0..800.0) {
            let exact = chain_length(front, rear, mm, 12.7).unwrap();
            let near = handbook_length(f64::from(front), f64::from(rear), mm / 12.7);
            prop_assert!((exact - near).abs() < 0.02, "{exact} {near}");
        }

        #[test]
        fn a_longer_chain_moves_the_axle_back(front in 9u32..=30, rear in 20u32..=60, links in 90u32..=198) {
            let near = centre_distance(front, rear, links, 12.7).unwrap();
            let far = centre_distance(front, rear, links + 2, 12.7).unwrap();
            // Two links make one pitch between equal sprockets, a little more between others.
            prop_assert!(far - near > 12.7 - 1e-9 && far - near < 2.0 * 12.7);
        }
    }
}
