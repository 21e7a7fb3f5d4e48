//! A code said in words and figures: what the sidewall means, and what stands near it.

use layshaft_wire::wire;

use super::compare::turns_per_km;
use super::message::{TyresMessage, TyresSource};
use super::wheel::Rolling;
use crate::message::Message;
use crate::quantity::{Source, Standing};
use crate::record::{AlphaLetter, Construction, Section, SpeedSymbol, Tube, TyreSize, is_low_section, load_kg};
use crate::units::Unit;

/// Another code that stands near an open one.
#[wire]
pub struct TyreEquivalent {
    /// The code.
    pub code: String,
    /// Outer diameter by that code, mm.
    pub outer_diameter_mm: f64,
    /// Who says so.
    pub source: Source,
}

/// A sidewall, read.
#[wire]
pub struct TyreReading {
    /// The code in its plain form.
    pub code: String,
    /// Width and height in words.
    pub section: Message,
    /// Carcass.
    pub construction: Construction,
    /// Carcass in words.
    pub carcass: Message,
    /// Rim diameter code, inches.
    pub rim_inch: u32,
    /// Load index.
    pub load_index: Option<u32>,
    /// What one tyre may carry by that index, kg.
    pub load_kg: Option<u32>,
    /// Speed symbol.
    pub speed_symbol: Option<String>,
    /// Speed that it allows, km/h; none for Z.
    pub speed_kmh: Option<u32>,
    /// Tube or tubeless, where it is marked.
    pub marked: Option<Tube>,
    /// Outer diameter as designed, mm.
    pub outer_diameter_mm: f64,
    /// Least that the sources give for this code, mm.
    pub outer_diameter_least_mm: f64,
    /// Most that the sources give, mm.
    pub outer_diameter_most_mm: f64,
    /// Least that a new tyre of this code may have, mm.
    pub new_least_mm: f64,
    /// Most that a new tyre may have, mm.
    pub new_most_mm: f64,
    /// Rolling circumference, mm.
    pub circumference_mm: f64,
    /// The circumference is a roll-out.
    pub measured: bool,
    /// Turns in a kilometre.
    pub turns_per_km: f64,
    /// Codes that stand near, where this one leaves width or height open.
    pub equivalents: Vec<TyreEquivalent>,
    /// What the sources disagree about.
    pub dispute: Option<Message>,
}

/// Says a code in words and figures; `rolling` is the circumference on which the wheel runs, where it is known better than
/// from the code.
pub fn tyre_reading(size: &TyreSize, rolling: Option<Rolling>) -> TyreReading {
    let (least, most) = size.outer_diameter_range_mm();
    let (new_least_mm, new_most_mm) = size.new_tyre_range_mm();
    let rolling = rolling.unwrap_or(Rolling { circumference_mm: size.circumference_mm(), measured: false });
    let load_index = size.service.map(|service| service.load_index);
    let speed = size.speed();
    TyreReading {
        code: size.to_string(),
        section: section_in_words(size.section).into(),
        construction: size.construction,
        carcass: carcass(size.construction).into(),
        rim_inch: size.rim_code,
        load_index,
        load_kg: load_index.and_then(load_kg),
        speed_symbol: speed.map(|speed| speed.to_string()),
        speed_kmh: speed.and_then(SpeedSymbol::kmh),
        marked: size.tube,
        outer_diameter_mm: size.outer_diameter_mm(),
        outer_diameter_least_mm: least,
        outer_diameter_most_mm: most,
        new_least_mm,
        new_most_mm,
        circumference_mm: rolling.circumference_mm,
        measured: rolling.measured,
        turns_per_km: turns_per_km(rolling.circumference_mm),
        equivalents: equivalents(size),
        dispute: dispute(size.section).map(Into::into),
    }
}

/// The carcass in words.
fn carcass(construction: Construction) -> TyresMessage {
    match construction {
        Construction::Diagonal => TyresMessage::CrossPly,
        Construction::BiasBelted => TyresMessage::BiasBelted,
        Construction::Radial => TyresMessage::Radial,
    }
}

fn section_in_words(section: Section) -> TyresMessage {
    let inches = |hundredths: u32| Unit::Inch.of(f64::from(hundredths) / 100.0);
    let share = |ratio: u32| Unit::Percent.of(ratio);
    let mm = |width: f64| Unit::Millimetre.of(width);
    match section {
        Section::Metric { width_mm, ratio } => {
            TyresMessage::Section { width: Unit::Millimetre.of(width_mm), ratio: share(ratio) }
        }
        Section::Inch { hundredths, ratio: Some(ratio) } => {
            TyresMessage::SectionInchRatio { width: inches(hundredths), ratio: share(ratio) }
        }
        Section::Inch { hundredths, ratio: None } if is_low_section(hundredths) => {
            TyresMessage::SectionLow { width: inches(hundredths) }
        }
        Section::Inch { hundredths, ratio: None } => TyresMessage::SectionInch { width: inches(hundredths) },
        Section::Alpha { letter, ratio } => match letter.widths_mm() {
            (least, most) if least < most => {
                TyresMessage::SectionEither { least: mm(least), most: mm(most), ratio: share(ratio) }
            }
            (width, _) => TyresMessage::SectionAbout { width: mm(width), ratio: share(ratio) },
        },
    }
}

/// The same tyre size with another section, without its ratings.
fn with(size: &TyreSize, section: Section, source: Source) -> TyreEquivalent {
    let near = TyreSize {
        section,
        size_speed: None,
        motorcycle: false,
        service: None,
        ply: None,
        reinforced: false,
        tube: None,
        ..size.clone()
    };
    TyreEquivalent { code: near.to_string(), outer_diameter_mm: near.outer_diameter_mm(), source }
}

fn equivalents(size: &TyreSize) -> Vec<TyreEquivalent> {
    match size.section {
        Section::Alpha { letter, ratio } => alpha_equivalents(size, letter, ratio),
        Section::Inch { hundredths, ratio: None } if is_low_section(hundredths) => {
            let height = |ratio| Section::Inch { hundredths, ratio: Some(ratio) };
            vec![
                with(size, height(82), Source::new(TyresSource::LowSection82, Standing::Memory)),
                with(size, height(90), Source::new(TyresSource::LowSection90, Standing::SecondHand)),
            ]
        }
        Section::Metric { .. } | Section::Inch { .. } => Vec::new(),
    }
}

fn alpha_equivalents(size: &TyreSize, letter: AlphaLetter, ratio: u32) -> Vec<TyreEquivalent> {
    let (least, most) = letter.widths_mm();
    let mut widths = vec![least];
    widths.extend((most > least).then_some(most));
    widths
        .into_iter()
        .map(|width| {
            let width_mm = width as u32;
            with(size, Section::Metric { width_mm, ratio }, Source::new(TyresSource::Charts, Standing::SecondHand))
        })
        .collect()
}

fn dispute(section: Section) -> Option<TyresMessage> {
    match section {
        Section::Alpha { letter, .. } => Some(match letter.widths_mm() {
            (least, most) if least < most => {
                TyresMessage::DisputedWidth { least: Unit::Millimetre.of(least), most: Unit::Millimetre.of(most) }
            }
            _ => TyresMessage::DisputedNearest,
        }),
        Section::Inch { hundredths, ratio: None } if is_low_section(hundredths) => Some(TyresMessage::DisputedHeight),
        Section::Metric { .. } | Section::Inch { .. } => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn reading(code: &str) -> TyreReading {
        tyre_reading(&TyreSize::read(code).unwrap(), None)
    }

    #[test]
    fn load_and_speed_are_said_in_kilograms_and_kilometres_an_hour() {
        let read = reading("130/90-16 67H TL");
        assert_eq!((read.load_index, read.load_kg), (Some(67), Some(307)));
        assert_eq!((read.speed_symbol.as_deref(), read.speed_kmh), (Some("H"), Some(210)));
        assert_eq!((read.marked, read.carcass.english().as_str()), (Some(Tube::Tubeless), "cross-ply"));
        let bare = reading("3.00-18 4PR");
        assert_eq!((bare.load_kg, bare.speed_kmh, bare.equivalents.len()), (None, None, 0));
        assert_eq!(reading("3.00S18").speed_kmh, Some(180));
        assert_eq!(reading("180/55ZR17").speed_kmh, None);
    }

    /// MT90-16 beside 130/90-16: conversion charts (second hand), tolerance 0 by convention.
    #[test]
    fn an_alpha_size_names_its_nearest_metric_size_and_says_what_is_disputed() {
        let read = reading("MT90B16 74H");
        assert_eq!(read.equivalents.len(), 1);
        assert_eq!((read.equivalents[0].code.as_str(), read.equivalents[0].outer_diameter_mm), ("130/90B16", 640.4));
        let disputed = reading("MP90-18");
        let codes: Vec<_> = disputed.equivalents.iter().map(|near| near.code.as_str()).collect();
        assert_eq!(codes, ["110/90-18", "120/90-18"]);
        assert!(disputed.dispute.unwrap().english().contains("disagree"));
    }

    /// 4.60-18: 648.8 mm at 82 %, 667.5 mm at 90 %.
    #[test]
    fn a_low_section_inch_size_stands_between_two_heights() {
        let read = reading("4.60-18");
        let near: Vec<_> = read.equivalents.iter().map(|near| (near.code.as_str(), near.outer_diameter_mm)).collect();
        assert_eq!(near[0].0, "4.60/82-18");
        assert!((near[0].1 - 648.8176).abs() < 1e-6 && (near[1].1 - 667.512).abs() < 1e-6, "{near:?}");
        assert_eq!((read.outer_diameter_least_mm, read.outer_diameter_most_mm), (near[0].1, near[1].1));
        assert!(read.dispute.is_some() && reading("130/90-16").dispute.is_none());
    }

    /// Letters of the conversion charts at wcpmx.com and webbikeworld.com (second hand).
    #[test]
    fn every_letter_of_the_charts_gives_its_widths() {
        for (letter, widths) in [
            ('H', vec![80]),
            ('J', vec![90]),
            ('M', vec![100]),
            ('N', vec![110]),
            ('P', vec![110, 120]),
            ('R', vec![120]),
            ('T', vec![130]),
            ('U', vec![140]),
            ('V', vec![150]),
        ] {
            let near: Vec<_> =
                reading(&format!("M{letter}90-16")).equivalents.into_iter().map(|near| near.code).collect();
            let wanted: Vec<_> = widths.into_iter().map(|width| format!("{width}/90-16")).collect();
            assert_eq!(near, wanted, "{letter}");
        }
    }

    #[test]
    fn a_known_circumference_stands_before_the_one_of_the_code() {
        let size = TyreSize::read("3.00-18").unwrap();
        let read = tyre_reading(&size, Some(Rolling { circumference_mm: 1880.0, measured: true }));
        assert!(read.measured && read.circumference_mm == 1880.0);
        assert!((read.turns_per_km - 531.914_893_6).abs() < 1e-6);
    }
}
