//! Reads a sidewall: metric, inch, low-section inch and alpha codes with what usually follows them.
//!
//! The forms are the trade's: `130/90-16 67H`, `130/90 B 16`, `120/70ZR17 M/C (58W) TL`, `2.75-18 42P`, `3.00 S 18 4PR TT`,
//! `4.60-18`, `4.25/85H18`, `2 1/4-17`, `MT90-16`. A code that cannot be read is refused with the part that failed; nothing
//! is guessed.

use std::iter::Peekable;
use std::vec::IntoIter;

use super::message::SidewallMessage;
use super::rating::{Service, SpeedSymbol};
use super::size::{AlphaLetter, Construction, Section, Tube, TyreSize};
use crate::bounds::{self, Bound};
use crate::check;
use crate::error::Refused;
use crate::message::FieldMessage;

impl TyreSize {
    /// Reads a size as the sidewall has it; refuses with the part that cannot be read.
    ///
    /// ```
    /// use layshaft_core::record::TyreSize;
    /// assert_eq!(TyreSize::read("130/90 B 16 67H TL").unwrap().to_string(), "130/90B16 67H TL");
    /// assert!(TyreSize::read("MX90-16").is_err());
    /// ```
    pub fn read(code: &str) -> Result<Self, Refused> {
        read(code)
    }
}

/// Reads a whole code.
fn read(code: &str) -> Result<TyreSize, Refused> {
    let code = check::check_text("tyre", FieldMessage::TyreSize, code, 40)?;
    let mut reader = Reader { rest: code.chars().map(plain).collect::<Vec<_>>().into_iter().peekable(), code };
    let section = reader.section()?;
    let (size_speed, construction) = reader.between()?;
    let rim_code = reader.whole(&RIM, |code| SidewallMessage::Rim { code })?;
    let mut size = TyreSize {
        section,
        construction,
        rim_code,
        size_speed,
        motorcycle: false,
        service: None,
        ply: None,
        reinforced: false,
        tube: None,
    };
    reader.marks(&mut size)?;
    Ok(size)
}

/// A character in the one form that the reader knows: capital, plain dash, decimal point.
fn plain(character: char) -> char {
    match character {
        '\u{2010}'..='\u{2015}' | '\u{2212}' => '-',
        '×' => 'X',
        ',' => '.',
        other if other.is_whitespace() => ' ',
        other => other.to_ascii_uppercase(),
    }
}

const RIM: Bound = bounds::RIM_CODE.of("tyre");
const RATIO: Bound = bounds::ASPECT_RATIO.of("tyre");
const WIDTH: Bound = bounds::TYRE_WIDTH.of("tyre");
const INCH_WIDTH: Bound = bounds::TYRE_WIDTH_INCH.of("tyre");
const LOAD: Bound = bounds::LOAD_INDEX.of("tyre");
const PLY: Bound = bounds::PLY_RATING.of("tyre");

/// How a part that cannot be read is said, from the whole code.
type Part = fn(String) -> SidewallMessage;

struct Reader {
    code: String,
    rest: Peekable<IntoIter<char>>,
}

impl Reader {
    /// Width and height.
    fn section(&mut self) -> Result<Section, Refused> {
        if self.take('M') {
            return self.alpha();
        }
        let whole = self.digits();
        if whole.is_empty() {
            return Err(self.unreadable(|code| SidewallMessage::Width { code }));
        }
        if self.take('.') {
            return self.decimal_inch(&whole);
        }
        let spaced = self.rest.peek() == Some(&' ');
        self.spaces();
        if spaced && self.rest.peek().is_some_and(char::is_ascii_digit) {
            return self.fraction_inch(&whole);
        }
        let width_mm = self.number(&whole, &WIDTH, |code| SidewallMessage::Width { code })?;
        if !self.take('/') {
            return Err(self.unreadable(|code| SidewallMessage::Height { code }));
        }
        Ok(Section::Metric { width_mm, ratio: self.ratio()? })
    }

    /// The rest of an alpha code, after the M.
    fn alpha(&mut self) -> Result<Section, Refused> {
        self.spaces();
        let known = self.rest.peek().copied().and_then(AlphaLetter::of);
        let Some(letter) = known else {
            let letters = AlphaLetter::all().map(String::from).collect::<Vec<_>>().join(" ");
            return Err(self.unreadable(|code| SidewallMessage::WidthLetter { code, letters }));
        };
        self.rest.next();
        Ok(Section::Alpha { letter, ratio: self.ratio()? })
    }

    /// The rest of a width in inches, after the point.
    fn decimal_inch(&mut self, whole: &str) -> Result<Section, Refused> {
        let decimals = self.digits();
        let hundredths = match decimals.len() {
            1 => format!("{whole}{decimals}0"),
            2 => format!("{whole}{decimals}"),
            _ => return Err(self.unreadable(|code| SidewallMessage::WidthInches { code })),
        };
        self.inch(&hundredths)
    }

    /// The rest of a width in inches and a fraction, as moped tyres had it: `2 1/4`.
    fn fraction_inch(&mut self, whole: &str) -> Result<Section, Refused> {
        let above = self.digits();
        let below = if self.take('/') { self.digits() } else { String::new() };
        let hundredths = match (above.as_str(), below.as_str()) {
            ("1", "4") => "25",
            ("1", "2") => "50",
            ("3", "4") => "75",
            _ => return Err(self.unreadable(|code| SidewallMessage::WidthFraction { code })),
        };
        self.inch(&format!("{whole}{hundredths}"))
    }

    /// An inch section from hundredths, with the height where it is written.
    fn inch(&mut self, hundredths: &str) -> Result<Section, Refused> {
        let Ok(hundredths) = hundredths.parse::<u32>() else {
            return Err(self.unreadable(|code| SidewallMessage::WidthInches { code }));
        };
        INCH_WIDTH.check(f64::from(hundredths) / 100.0)?;
        // A blank is left standing where no height follows: it parts section and rim, as in 4.00 21.
        let mut ahead = self.rest.clone();
        while ahead.next_if_eq(&' ').is_some() {}
        let ratio = if ahead.next_if_eq(&'/').is_some() {
            self.rest = ahead;
            Some(self.ratio()?)
        } else {
            None
        };
        Ok(Section::Inch { hundredths, ratio })
    }

    fn ratio(&mut self) -> Result<u32, Refused> {
        self.whole(&RATIO, |code| SidewallMessage::Ratio { code })
    }

    /// What stands between section and rim: a dash, the construction, a speed symbol.
    fn between(&mut self) -> Result<(Option<SpeedSymbol>, Construction), Refused> {
        let mut letters = Vec::new();
        let mut parted = false;
        while let Some(next) = self.rest.next_if(|next| matches!(next, ' ' | '-') || next.is_ascii_uppercase()) {
            match next {
                ' ' | '-' => parted = true,
                letter => letters.push(letter),
            }
        }
        let carcass = |letter: char| match letter {
            'D' => Some(Construction::Diagonal),
            'B' => Some(Construction::BiasBelted),
            'R' => Some(Construction::Radial),
            _ => None,
        };
        let read = match letters.as_slice() {
            // Some write 3.00x18; it says no more than a dash.
            [] if parted => Some((None, Construction::Diagonal)),
            ['X'] => Some((None, Construction::Diagonal)),
            [one] => carcass(*one)
                .map(|construction| (None, construction))
                .or_else(|| SpeedSymbol::of(*one).map(|speed| (Some(speed), Construction::Diagonal))),
            [speed, construction] => SpeedSymbol::of(*speed)
                .zip(carcass(*construction))
                .map(|(speed, construction)| (Some(speed), construction)),
            _ => None,
        };
        read.ok_or_else(|| self.unreadable(|code| SidewallMessage::Between { code }))
    }

    /// Everything after the rim, in any order.
    fn marks(&mut self, size: &mut TyreSize) -> Result<(), Refused> {
        loop {
            self.spaces();
            let Some(next) = self.rest.peek().copied() else { return Ok(()) };
            if next == '(' || next.is_ascii_digit() {
                self.rated(size)?;
            } else {
                self.worded(size)?;
            }
        }
    }

    /// A mark that begins with a number: `67H`, `(73W)`, `4PR`.
    fn rated(&mut self, size: &mut TyreSize) -> Result<(), Refused> {
        let beyond = self.take('(');
        let digits = self.digits();
        self.spaces();
        let letters = self.word();
        if letters == "PR" && !beyond {
            if size.ply.is_some() {
                return Err(self.unreadable(|code| SidewallMessage::SecondPly { code }));
            }
            size.ply = Some(self.number(&digits, &PLY, |code| SidewallMessage::Ply { code })?);
            return Ok(());
        }
        let mut letters = letters.chars();
        let speed = match (letters.next().and_then(SpeedSymbol::of), letters.next()) {
            (Some(speed), None) => speed,
            _ => return Err(self.unreadable(|code| SidewallMessage::Speed { code })),
        };
        self.spaces();
        if beyond && !self.take(')') {
            return Err(self.unreadable(|code| SidewallMessage::Bracket { code }));
        }
        let load_index = self.number(&digits, &LOAD, |code| SidewallMessage::Load { code })?;
        if size.service.is_some() {
            return Err(self.unreadable(|code| SidewallMessage::SecondLoad { code }));
        }
        size.service = Some(Service { load_index, speed, beyond });
        Ok(())
    }

    /// A mark in letters.
    fn worded(&mut self, size: &mut TyreSize) -> Result<(), Refused> {
        match self.word().as_str() {
            "M/C" | "MC" => size.motorcycle = true,
            "REINF" | "REINFORCED" => size.reinforced = true,
            "TL" | "TUBELESS" => return self.tubed(size, Tube::Tubeless),
            "TT" => return self.tubed(size, Tube::TubeType),
            other => {
                let mark = other.to_owned();
                return Err(self.unreadable(|code| SidewallMessage::Mark { code, mark }));
            }
        }
        Ok(())
    }

    /// A mark of tube or tubeless; a tyre cannot be both.
    fn tubed(&self, size: &mut TyreSize, tube: Tube) -> Result<(), Refused> {
        if size.tube.is_some_and(|before| before != tube) {
            return Err(self.unreadable(|code| SidewallMessage::TwoTubes { code }));
        }
        size.tube = Some(tube);
        Ok(())
    }

    fn whole(&mut self, bound: &Bound, part: Part) -> Result<u32, Refused> {
        self.spaces();
        let digits = self.digits();
        if digits.is_empty() {
            return Err(self.unreadable(part));
        }
        self.number(&digits, bound, part)
    }

    fn number(&self, digits: &str, bound: &Bound, part: Part) -> Result<u32, Refused> {
        // At most 40 digits come here, and a number of 40 digits still is one for the bound to refuse.
        let Ok(value) = digits.parse::<f64>() else { return Err(self.unreadable(part)) };
        bound.check(value)?;
        digits.parse().map_err(|_| self.unreadable(part))
    }

    fn digits(&mut self) -> String {
        self.while_true(|next| next.is_ascii_digit())
    }

    /// Letters, with the stroke of `M/C`.
    fn word(&mut self) -> String {
        self.while_true(|next| !matches!(next, ' ' | '(' | ')') && !next.is_ascii_digit())
    }

    fn while_true(&mut self, wanted: impl Fn(&char) -> bool) -> String {
        let mut taken = String::new();
        while let Some(next) = self.rest.next_if(|next| wanted(next)) {
            taken.push(next);
        }
        taken
    }

    fn spaces(&mut self) {
        self.while_true(|next| *next == ' ');
    }

    fn take(&mut self, wanted: char) -> bool {
        self.rest.next_if_eq(&wanted).is_some()
    }

    fn unreadable(&self, part: impl FnOnce(String) -> SidewallMessage) -> Refused {
        Refused::Unreadable {
            field: "tyre".to_owned(),
            label: FieldMessage::TyreSize.into(),
            reason: part(self.code.clone()).into(),
        }
    }
}

#[cfg(test)]
#[path = "reader_tests.rs"]
mod tests;
