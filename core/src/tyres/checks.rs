//! A tyre against its wheel and its machine: load, speed, rim and tube. Unknown is never fine.

use layshaft_wire::wire;

use super::message::{TyreCheckMessage, TyresSource};
use crate::message::{List, ListStyle, Message};
use crate::quantity::{Judgement, Source, Standing};
use crate::record::{Section, SpeedSymbol, Tube, TyreSize, Wheel, load_kg};
use crate::units::Unit;

/// Rim widths that are fitted, as a share of the nominal width of the tyre, least and most. Wide on purpose: from memory,
/// unconfirmed; the tyre maker's list for the size decides. High sections sit on narrow rims, low ones on wide rims.
const RIM_SHARES: [(u32, f64, f64); 3] = [(85, 0.45, 0.75), (65, 0.48, 0.82), (0, 0.65, 0.90)];
/// Above this speed Z begins, km/h.
const Z_FROM_KMH: f64 = 240.0;

/// What a tyre is checked for.
#[wire]
pub enum TyreLimit {
    /// The load on the wheel.
    Load,
    /// The speed of the machine.
    Speed,
    /// The width of the rim.
    Rim,
    /// The tube.
    Tube,
}

/// One thing that a tyre is judged by.
#[wire]
pub struct TyreCheck {
    /// What it is checked for.
    pub limit: TyreLimit,
    /// In words.
    pub label: Message,
    /// Least allowed, where there is a least.
    pub allowed_from: Option<f64>,
    /// Most allowed, where it is known.
    pub allowed_to: Option<f64>,
    /// What the bike asks for, where it is known.
    pub actual: Option<f64>,
    /// Most allowed less what is asked for.
    pub margin: Option<f64>,
    /// Unit of the four.
    pub unit: Unit,
    /// Judgement.
    pub judgement: Judgement,
    /// Why, or what is not known.
    pub why: Message,
    /// Where the limit comes from.
    pub source: Source,
}

/// The load index against the load on the wheel, kg.
pub fn load_check(size: &TyreSize, axle_load_kg: Option<f64>) -> TyreCheck {
    let index = size.service.map(|service| service.load_index);
    let allowed = index.and_then(load_kg).map(f64::from);
    let kg = |value: f64| Unit::Kilogram.of(value);
    let (judgement, why) = match (index, allowed, axle_load_kg) {
        (None, _, _) => (Judgement::Open, TyreCheckMessage::NoLoadIndex),
        (Some(index), None, _) => (Judgement::Open, TyreCheckMessage::IndexOutsideTable { index }),
        (_, Some(allowed), None) => (Judgement::Open, TyreCheckMessage::LoadUnknown { allowed: kg(allowed) }),
        (_, Some(allowed), Some(load)) if load <= allowed => {
            (Judgement::Fine, TyreCheckMessage::Carries { allowed: kg(allowed), load: kg(load) })
        }
        (_, Some(allowed), Some(load)) => {
            (Judgement::Outside, TyreCheckMessage::Overloaded { allowed: kg(allowed), load: kg(load) })
        }
    };
    let source = Source::new(TyresSource::LoadIndex, Standing::SecondHand);
    check(TyreLimit::Load, (None, allowed), axle_load_kg, Unit::Kilogram, judgement, why, source)
}

/// The speed symbol against the top speed, km/h.
pub fn speed_check(size: &TyreSize, top_kmh: Option<f64>) -> TyreCheck {
    let symbol = size.speed();
    let allowed = symbol.and_then(SpeedSymbol::kmh).map(f64::from);
    // Z and brackets say “more than” their figure, and not how much more.
    let beyond = symbol.is_some() && (allowed.is_none() || size.service.is_some_and(|service| service.beyond));
    let (judgement, why) = match (symbol, top_kmh) {
        (None, _) => (Judgement::Open, TyreCheckMessage::NoSpeedSymbol),
        (Some(symbol), None) => (Judgement::Open, TyreCheckMessage::TopSpeedUnknown { symbol: symbol.to_string() }),
        (Some(symbol), Some(reached)) => {
            let most = allowed.unwrap_or(Z_FROM_KMH);
            let symbol = symbol.to_string();
            let (limit, top) = (Unit::KilometreHour.of(most), Unit::KilometreHour.of(reached));
            if reached <= most {
                (Judgement::Fine, TyreCheckMessage::FastEnough { symbol, limit, top })
            } else if beyond {
                (Judgement::Open, TyreCheckMessage::MoreThan { limit })
            } else {
                (Judgement::Outside, TyreCheckMessage::TooFast { symbol, limit, top })
            }
        }
    };
    let source = Source::new(TyresSource::SpeedSymbol, Standing::SecondHand);
    check(TyreLimit::Speed, (None, allowed), top_kmh, Unit::KilometreHour, judgement, why, source)
}

/// The rim width, inches, against a wide rule of thumb. Inside it is not yet right; outside it is worth a question.
///
/// `b ≈ 0.45·S to 0.9·S`, by height: see the table of this file; `S` nominal width of the tyre, inches
///
/// Source: from memory, unconfirmed. Range: road tyres; the tyre maker's list of rims for the size decides.
pub fn rim_check(size: &TyreSize, rim_width_inch: Option<f64>) -> TyreCheck {
    let (narrow, wide) = rim_widths_inch(size);
    let (least, most) = (Unit::Inch.of(narrow), Unit::Inch.of(wide));
    let (judgement, why) = match rim_width_inch {
        None => (Judgement::Open, TyreCheckMessage::RimUnknown { least, most }),
        Some(width) if width < narrow || width > wide => {
            (Judgement::Outside, TyreCheckMessage::RimOutside { least, most, rim: Unit::Inch.of(width) })
        }
        Some(width) => (Judgement::Open, TyreCheckMessage::RimInside { least, most, rim: Unit::Inch.of(width) }),
    };
    let source = Source::new(TyresSource::RimWidths, Standing::Memory);
    check(TyreLimit::Rim, (Some(narrow), Some(wide)), rim_width_inch, Unit::Inch, judgement, why, source)
}

/// Least and most rim width by the rule of thumb, inches.
fn rim_widths_inch(size: &TyreSize) -> (f64, f64) {
    let ratio = match size.section {
        Section::Metric { ratio, .. } | Section::Alpha { ratio, .. } => ratio,
        Section::Inch { ratio, .. } => ratio.unwrap_or(100),
    };
    let (_, least, most) = RIM_SHARES.into_iter().find(|(from, ..)| ratio >= *from).unwrap_or((0, 0.45, 0.90));
    let (narrow, wide) = size.width_range_mm();
    (narrow / 25.4 * least, wide / 25.4 * most)
}

/// The tube: whether there must be one, and whether it is marked with the size of the tyre.
pub fn tube_check(size: &TyreSize, wheel: &Wheel) -> TyreCheck {
    let (judgement, why) = judge_tube(size, wheel);
    let source = Source::new(TyresSource::Tubes, Standing::CommonPractice);
    check(TyreLimit::Tube, (None, None), None, Unit::None, judgement, why, source)
}

fn judge_tube(size: &TyreSize, wheel: &Wheel) -> (Judgement, TyreCheckMessage) {
    match (wheel.tube, size.tube) {
        (Some(false), Some(Tube::TubeType)) => (Judgement::Outside, TyreCheckMessage::NeedsTube),
        (Some(false), _) if wheel.spoked == Some(true) => (Judgement::Outside, TyreCheckMessage::SpokesLeak),
        (Some(false), Some(Tube::Tubeless)) => (Judgement::Open, TyreCheckMessage::TubelessRim),
        (Some(false), None) => (Judgement::Open, TyreCheckMessage::NoTube),
        (None, _) => (Judgement::Open, TyreCheckMessage::TubeUnknown),
        (Some(true), _) => tube_sizes(size, wheel),
    }
}

fn tube_sizes(size: &TyreSize, wheel: &Wheel) -> (Judgement, TyreCheckMessage) {
    if wheel.tube_sizes.is_empty() {
        return (Judgement::Open, TyreCheckMessage::TubeSizesUnknown);
    }
    let sizes = List(ListStyle::Comma, wheel.tube_sizes.iter().map(Message::as_entered).collect());
    let mut named = wheel.tube_sizes.iter().filter_map(|code| TyreSize::read(code).ok());
    if named.any(|tube| tube.same_dimensions(size)) {
        return (Judgement::Fine, TyreCheckMessage::TubeFits { sizes });
    }
    (Judgement::Outside, TyreCheckMessage::TubeWrong { sizes })
}

fn check(
    limit: TyreLimit,
    (allowed_from, allowed_to): (Option<f64>, Option<f64>),
    actual: Option<f64>,
    unit: Unit,
    judgement: Judgement,
    why: TyreCheckMessage,
    source: Source,
) -> TyreCheck {
    let margin = allowed_to.zip(actual).map(|(allowed, actual)| allowed - actual);
    let label = match limit {
        TyreLimit::Load => TyreCheckMessage::LabelLoad,
        TyreLimit::Speed => TyreCheckMessage::LabelSpeed,
        TyreLimit::Rim => TyreCheckMessage::LabelRim,
        TyreLimit::Tube => TyreCheckMessage::LabelTube,
    };
    TyreCheck {
        limit,
        label: label.into(),
        allowed_from,
        allowed_to,
        actual,
        margin,
        unit,
        judgement,
        why: why.into(),
        source,
    }
}

/// Every check of a tyre on its wheel.
pub fn tyre_checks(size: &TyreSize, wheel: &Wheel, top_kmh: Option<f64>) -> Vec<TyreCheck> {
    vec![
        load_check(size, wheel.axle_load_kg),
        speed_check(size, top_kmh),
        rim_check(size, wheel.rim_width_inch),
        tube_check(size, wheel),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn size(code: &str) -> TyreSize {
        TyreSize::read(code).unwrap()
    }

    #[test]
    fn the_load_is_fine_up_to_the_index_and_open_where_either_is_unknown() {
        // Index 67: 307 kg (both tables).
        let check = |code, load| load_check(&size(code), load);
        assert_eq!(check("130/90-16 67H", Some(307.0)).judgement, Judgement::Fine);
        let over = check("130/90-16 67H", Some(310.0));
        assert_eq!((over.judgement, over.margin), (Judgement::Outside, Some(-3.0)));
        assert_eq!(check("130/90-16 67H", None).judgement, Judgement::Open);
        assert_eq!(check("130/90-16", Some(100.0)).judgement, Judgement::Open);
        assert_eq!(check("3.00-18 4PR", Some(100.0)).judgement, Judgement::Open);
        assert_eq!(check("130/90-16 20H", Some(10.0)).judgement, Judgement::Open);
    }

    #[test]
    fn the_speed_symbol_holds_its_top_and_what_says_more_than_is_not_guessed() {
        let check = |code, top| speed_check(&size(code), top).judgement;
        assert_eq!(check("2.75-18 42P", Some(150.0)), Judgement::Fine);
        assert_eq!(check("2.75-18 42P", Some(151.0)), Judgement::Outside);
        assert_eq!(check("2.75-18 42P", None), Judgement::Open);
        assert_eq!(check("2.75-18", Some(90.0)), Judgement::Open);
        assert_eq!(check("3.00S18", Some(181.0)), Judgement::Outside);
        assert_eq!(check("180/55ZR17", Some(240.0)), Judgement::Fine);
        assert_eq!(check("180/55ZR17", Some(250.0)), Judgement::Open);
        assert_eq!(check("180/55ZR17 M/C (73W)", Some(280.0)), Judgement::Open);
    }

    /// Rims that are listed for these sizes, from memory; the rule must not call one of them uncommon.
    #[test]
    fn usual_rims_lie_inside_the_wide_rule_and_it_never_says_fine() {
        for (code, rims) in [
            ("2.75-18", [1.4, 1.85]),
            ("3.00-18", [1.6, 2.15]),
            ("130/90-16", [2.5, 3.5]),
            ("110/80-18", [2.15, 3.0]),
            ("150/70-17", [3.5, 4.5]),
            ("120/70ZR17", [3.5, 3.75]),
            ("180/55ZR17", [5.5, 6.0]),
        ] {
            for rim in rims {
                assert_eq!(rim_check(&size(code), Some(rim)).judgement, Judgement::Open, "{code} on {rim}");
            }
        }
        assert_eq!(rim_check(&size("3.00-18"), Some(3.5)).judgement, Judgement::Outside);
        assert_eq!(rim_check(&size("180/55ZR17"), Some(2.5)).judgement, Judgement::Outside);
        assert_eq!(rim_check(&size("3.00-18"), None).judgement, Judgement::Open);
    }

    #[test]
    fn a_tube_must_carry_the_size_and_a_spoked_rim_needs_one() {
        let wheel = |tube, spoked, sizes: &[&str]| Wheel {
            tube,
            spoked,
            tube_sizes: sizes.iter().map(|code| (*code).to_owned()).collect(),
            ..Wheel::default()
        };
        let judged = |code, wheel| tube_check(&size(code), &wheel).judgement;
        assert_eq!(judged("3.00-18", wheel(Some(true), None, &["2.75-18", "3.00-18"])), Judgement::Fine);
        assert_eq!(judged("3.00-18", wheel(Some(true), None, &["2.50-18"])), Judgement::Outside);
        assert_eq!(judged("3.00-18", wheel(Some(true), None, &[])), Judgement::Open);
        assert_eq!(judged("3.00-18 TT", wheel(Some(false), None, &[])), Judgement::Outside);
        assert_eq!(judged("110/90-18 TL", wheel(Some(false), Some(true), &[])), Judgement::Outside);
        assert_eq!(judged("110/90-18 TL", wheel(Some(false), Some(false), &[])), Judgement::Open);
        assert_eq!(judged("3.00-18", wheel(None, None, &[])), Judgement::Open);
    }
}
