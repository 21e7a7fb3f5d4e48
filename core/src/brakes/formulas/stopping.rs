//! Stopping: distance from deceleration and back, and the least that rules ask for.
//!
//! Uniform deceleration after a reaction. The lines of law are those of Directive 93/14/EEC (read) and of the British
//! inspection (read in quotation).

use layshaft_wire::wire;

use super::sources::uniform;
use crate::bounds;
use crate::brakes::message::{BrakesMessage, BrakesRefused, BrakesSource};
use crate::error::Refused;
use crate::message::{List, ListStyle, Message};
use crate::quantity::{Accepts, Source, Standing, formula, within};
use crate::record::End;
use crate::units::{GRAVITY, Unit};

/// Distance covered before the brake works, m: `s_r = v / 3.6 · t_r`, `v` in km/h, `t_r` in s.
///
/// Source: uniform motion; computed. Range: any.
///
/// ```
/// assert!((layshaft_core::brakes::reaction_distance(36.0, 1.0) - 10.0).abs() < 1e-12);
/// ```
pub fn reaction_distance(road_speed_kmh: f64, reaction_seconds: f64) -> f64 {
    road_speed_kmh / 3.6 * reaction_seconds
}

/// Distance covered while braking, m.
///
/// `s_b = (v / 3.6)² / (2 · a)`, `v` in km/h, `a` in m/s²
///
/// Source: uniform deceleration; computed. Range: brake full on from the first metre, dry level road, `a` above zero.
///
/// ```
/// assert!((layshaft_core::brakes::braking_distance(60.0, 5.0) - 27.7778).abs() < 5e-5);
/// ```
pub fn braking_distance(road_speed_kmh: f64, deceleration: f64) -> f64 {
    let metres_per_second = road_speed_kmh / 3.6;
    metres_per_second * metres_per_second / (2.0 * deceleration)
}

/// Deceleration from a measured stopping distance, m/s²: [`reaction_distance`] and [`braking_distance`] turned round.
///
/// `a = (v / 3.6)² / (2 · (s − v / 3.6 · t_r))`
///
/// Refused where the reaction alone takes the whole distance. Source: computed. Range: as there.
///
/// ```
/// use layshaft_core::brakes::deceleration_from_distance;
/// assert!((deceleration_from_distance(60.0, 27.77778, 0.0).unwrap() - 5.0).abs() < 1e-5);
/// assert!(deceleration_from_distance(60.0, 10.0, 1.0).is_err());
/// ```
pub fn deceleration_from_distance(road_speed_kmh: f64, metres: f64, reaction_seconds: f64) -> Result<f64, Refused> {
    let reaction = reaction_distance(road_speed_kmh, reaction_seconds);
    if metres <= reaction {
        return Err(Refused::Conflict {
            field: "metres".to_owned(),
            reason: BrakesRefused::AllReaction {
                reaction: Unit::Second.of(reaction_seconds),
                way: Unit::Metre.of(reaction),
                distance: Unit::Metre.of(metres),
            }
            .into(),
        });
    }
    let metres_per_second = road_speed_kmh / 3.6;
    Ok(metres_per_second * metres_per_second / (2.0 * (metres - reaction)))
}

/// Brake efficiency, per cent of the weight: `z = a / g · 100`, `a` in m/s², `g` = 9.80665 m/s².
///
/// Source: definition in the British inspection manual (read in quotation). Range: retarding force over weight of machine
/// and rider; on the level that is `a / g`.
///
/// ```
/// assert!((layshaft_core::brakes::efficiency(2.941995) - 30.0).abs() < 1e-9);
/// ```
pub fn efficiency(deceleration: f64) -> f64 {
    deceleration / GRAVITY * 100.0
}

/// Deceleration that an efficiency means, m/s²: [`efficiency`] turned round, `a = z / 100 · g`.
///
/// Source: computed. Range: as there.
///
/// ```
/// assert!((layshaft_core::brakes::deceleration_from_efficiency(25.0) - 2.452).abs() < 5e-4);
/// ```
pub fn deceleration_from_efficiency(percent: f64) -> f64 {
    percent / 100.0 * GRAVITY
}

/// One of the stopping distances of Directive 93/14/EEC.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DirectiveLine {
    /// What is braked, in one word: the name that a sum gives it.
    pub name: &'static str,
    /// Divisor of the square of the speed, km²/h² a metre.
    pub divisor: f64,
    /// Mean deceleration as printed beside it, m/s².
    pub printed: f64,
    /// Speed of the test, km/h.
    pub test_kmh: f64,
}

/// The lines of the Directive: motorcycles at 60 km/h, mopeds at 40 km/h.
///
/// Source: Directive 93/14/EEC, Annex, appendix 1, read at legislation.gov.uk (seen). The printed decelerations are
/// rounded; the divisor is what counts (25.92 times the deceleration).
pub const DIRECTIVE_LINES: [DirectiveLine; 6] = [
    line("front", 115.0, 4.4, 60.0),
    line("rear", 75.0, 2.9, 60.0),
    line("sidecar", 95.0, 3.6, 60.0),
    line("mopedFront", 90.0, 3.4, 40.0),
    line("mopedRear", 70.0, 2.7, 40.0),
    line("unladen", 65.0, 2.5, 60.0),
];

const fn line(name: &'static str, divisor: f64, printed: f64, test_kmh: f64) -> DirectiveLine {
    DirectiveLine { name, divisor, printed, test_kmh }
}

impl DirectiveLine {
    /// The line with a name.
    pub fn named(name: &str) -> Result<Self, Refused> {
        DIRECTIVE_LINES.into_iter().find(|line| line.name == name).ok_or_else(|| Refused::Unreadable {
            field: "line".to_owned(),
            label: BrakesRefused::LabelDirectiveLine.into(),
            reason: BrakesRefused::NoSuchLine {
                name: name.to_owned(),
                lines: List(ListStyle::Comma, DIRECTIVE_LINES.map(|line| Message::as_entered(line.name)).to_vec()),
            }
            .into(),
        })
    }

    /// Longest distance that is allowed, m: `S = 0.1 · V + V² / k`, `V` in km/h.
    ///
    /// Source: Directive 93/14/EEC, Annex, appendix 1 (seen). Range: tested at [`test_kmh`](Self::test_kmh).
    ///
    /// ```
    /// use layshaft_core::brakes::DirectiveLine;
    /// let front = DirectiveLine::named("front").unwrap();
    /// assert!((front.longest(60.0) - 37.304).abs() < 5e-4);
    /// ```
    pub fn longest(&self, road_speed_kmh: f64) -> f64 {
        0.1 * road_speed_kmh + road_speed_kmh * road_speed_kmh / self.divisor
    }

    /// Deceleration that the divisor means, m/s²: `a = k / 25.92`.
    ///
    /// Source: computed from [`longest`](Self::longest). Range: after the allowance of 0.1 · V for the response.
    ///
    /// ```
    /// use layshaft_core::brakes::DirectiveLine;
    /// assert!((DirectiveLine::named("front").unwrap().implied() - 4.437).abs() < 5e-4);
    /// ```
    pub fn implied(&self) -> f64 {
        self.divisor / 25.92
    }
}

/// A line to set a stop against.
#[wire]
pub struct StoppingLine {
    /// Whose line it is.
    pub label: Message,
    /// Least deceleration, m/s².
    pub deceleration: f64,
    /// Longest distance at the speed of the page, m, with the allowance that the rule itself gives for the response.
    pub metres: f64,
    /// Where it is written.
    pub source: Source,
}

/// The lines for one end of a solo motorcycle.
pub fn stopping_lines(end: End, road_speed_kmh: f64) -> Vec<StoppingLine> {
    let [front, rear, ..] = DIRECTIVE_LINES;
    let law = if end == End::Front { front } else { rear };
    let directive = StoppingLine {
        label: BrakesMessage::DirectiveLine { end }.into(),
        deceleration: law.implied(),
        metres: law.longest(road_speed_kmh),
        source: Source::new(
            BrakesSource::DirectiveLine {
                divisor: Unit::None.of(law.divisor),
                speed: Unit::KilometreHour.of(law.test_kmh),
            },
            Standing::Seen,
        ),
    };
    let stronger = BrakesMessage::BritishStronger { efficiency: Unit::Percent.of(30.0) };
    let other = BrakesMessage::BritishOther { efficiency: Unit::Percent.of(25.0) };
    let british = [(30.0, stronger), (25.0, other)].map(|(percent, label)| {
        let deceleration = deceleration_from_efficiency(percent);
        StoppingLine {
            label: label.into(),
            deceleration,
            metres: braking_distance(road_speed_kmh, deceleration),
            source: Source::new(BrakesSource::British, Standing::SecondHand),
        }
    });
    std::iter::once(directive).chain(british).collect()
}

formula! {
    /// Stopping distance from deceleration.
    StoppingDistance in Brakes, "s = v / 3.6 · t + (v / 3.6)² / (2 · a)"
    takes {
        /// Speed before braking, km/h.
        "v" road_speed_kmh: f64 = within(&bounds::BRAKING_SPEED);
        /// Deceleration, m/s².
        "a" deceleration: f64 = within(&bounds::DECELERATION);
        /// Reaction, seconds.
        "t" reaction_seconds: f64 = within(&bounds::REACTION);
    }
    gives {
        /// Stopping distance.
        distance "s" Metre;
        /// Of that before the brake works.
        reaction "v / 3.6 · t" Metre;
        /// Of that braking.
        braking "(v / 3.6)² / (2 · a)" Metre;
    }
    from uniform();
    it => {
        let reaction = reaction_distance(it.road_speed_kmh, it.reaction_seconds);
        let braking = braking_distance(it.road_speed_kmh, it.deceleration);
        Ok([reaction + braking, reaction, braking])
    }
}

formula! {
    /// Deceleration from a measured stopping distance.
    StoppingDeceleration in Brakes, "a = (v / 3.6)² / (2 · (s − v / 3.6 · t))"
    takes {
        /// Speed before braking, km/h.
        "v" road_speed_kmh: f64 = within(&bounds::BRAKING_SPEED);
        /// Stopping distance, metres.
        "s" metres: f64 = within(&bounds::STOPPING_DISTANCE);
        /// Reaction that is in it, seconds.
        "t" reaction_seconds: f64 = within(&bounds::REACTION);
    }
    gives {
        /// Deceleration.
        deceleration "a" MetreSecondSquared;
        /// Brake efficiency.
        efficiency "a / g" Percent;
    }
    from uniform();
    it => deceleration_from_distance(it.road_speed_kmh, it.metres, it.reaction_seconds)
        .map(|slows| [slows, efficiency(slows)])
}

formula! {
    /// Force and deceleration that a brake efficiency means.
    BrakeEfficiency in Brakes, "a = z / 100 · g, g = 9.80665"
    takes {
        /// Brake efficiency, per cent of the weight.
        "z" percent: f64 = within(&bounds::BRAKE_EFFICIENCY);
        /// Machine and rider, kilograms.
        "m" mass_kg: f64 = within(&bounds::RIDING_MASS);
    }
    gives {
        /// Deceleration.
        deceleration "a" MetreSecondSquared;
        /// Retarding force.
        force "m · a" Newton;
        /// Retarding force on a tester that reads kilograms.
        force_kilograms "m · a / g" Kilogram;
    }
    from Source::new(BrakesSource::Efficiency, Standing::SecondHand);
    it => {
        let slows = deceleration_from_efficiency(it.percent);
        Ok([slows, slows * it.mass_kg, slows * it.mass_kg / GRAVITY])
    }
}

formula! {
    /// Longest stop that Directive 93/14/EEC allows.
    DirectiveStop in Brakes, "s = 0.1 · v + v² / k"
    takes {
        /// Which line of the Directive.
        "k" line: String = Accepts::OneOf(&["front", "rear", "sidecar", "mopedFront", "mopedRear", "unladen"]);
        /// Speed before braking, km/h.
        "v" road_speed_kmh: f64 = within(&bounds::BRAKING_SPEED);
    }
    gives {
        /// Longest stop.
        longest "s" Metre;
        /// Of that braking.
        braking "v² / k" Metre;
        /// Deceleration that it means.
        deceleration "k / 25.92" MetreSecondSquared;
    }
    from Source::new(BrakesSource::Directive, Standing::Seen);
    it => DirectiveLine::named(&it.line).map(|line| {
        let braking = it.road_speed_kmh * it.road_speed_kmh / line.divisor;
        [line.longest(it.road_speed_kmh), braking, line.implied()]
    })
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn the_printed_decelerations_are_the_divisors_rounded() {
        let implied = DIRECTIVE_LINES.map(|line| line.implied());
        for (got, wanted) in implied.into_iter().zip([4.437, 2.894, 3.665, 3.472, 2.701, 2.508]) {
            assert!((got - wanted).abs() < 5e-4, "{got} {wanted}");
        }
        assert!(DIRECTIVE_LINES.iter().all(|line| (line.implied() - line.printed).abs() < 0.08));
    }

    #[test]
    fn a_line_nobody_wrote_is_refused() {
        assert!(matches!(DirectiveLine::named("tricycle"), Err(Refused::Unreadable { .. })));
    }

    #[test]
    fn each_end_is_set_against_its_own_line() {
        let metres = |end| stopping_lines(end, 60.0).iter().map(|line| line.metres).collect::<Vec<_>>();
        assert!((metres(End::Front)[0] - 37.304).abs() < 5e-4 && (metres(End::Rear)[0] - 54.0).abs() < 1e-9);
        assert!((metres(End::Front)[1] - (60.0_f64 / 3.6).powi(2) / (2.0 * 0.3 * GRAVITY)).abs() < 1e-9);
    }

    proptest! {
        #[test]
        fn distance_and_deceleration_turn_each_other_round(kmh in 10.0..200.0, slows in 0.5..12.0, reaction in 0.0..3.0) {
            let metres = reaction_distance(kmh, reaction) + braking_distance(kmh, slows);
            let back = deceleration_from_distance(kmh, metres, reaction).unwrap();
            prop_assert!((back - slows).abs() < 1e-9 * slows);
        }

        #[test]
        fn who_brakes_harder_stops_shorter(kmh in 10.0..200.0, slows in 0.5..12.0, more in 1.01..2.0) {
            prop_assert!(braking_distance(kmh, slows * more) < braking_distance(kmh, slows));
            prop_assert!(braking_distance(kmh * more, slows) > braking_distance(kmh, slows));
        }
    }
}
