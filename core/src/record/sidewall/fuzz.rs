//! Real codes, mutated: whatever the readers accept must print to a text that reads back equal and must carry every number of
//! the input, so that nothing is silently misread; and nothing may panic.
//!
//! Compiled into the tests of the crate, and into `core/examples/fuzz_tyres.rs`, which prints what it met. Deterministic: same seed, same
//! inputs.

use rand_pcg::Pcg32;
use rand_pcg::rand_core::{Rng, SeedableRng};

use super::{DateCode, Section, TyreSize};

/// Codes as sidewalls have them.
const CODES: [&str; 26] = [
    "2.75-18 42P",
    "3.00-18 52P TT",
    "3,25-19 4PR",
    "3.00 S 18 4PR",
    "3.50H18",
    "4.10-19",
    "4.60-18 64H",
    "4.25/85H18",
    "2 1/4-17 38J",
    "2 1/2-16",
    "2 3/4 - 17 REINF",
    "130/90-16 67H",
    "130/90 B 16 M/C 73H TL",
    "110/80 17 54H",
    "120/90-V18",
    "120/70ZR17 M/C (58W) TL",
    "180/55 ZR 17 M/C (73 W)",
    "150/70VB17",
    "90/90-18 51S tubeless",
    "80/100-21 M/C 51M TT",
    "MT90-16 74H",
    "MU85 B 16 REINF",
    "MH90-21",
    "MP85–18",
    "MV85B15 77H",
    "3.00x18",
];
const DATES: [&str; 5] = ["3202", "324", "324◁", "DOT XA3B 4C5D 3202", "0100"];
/// Characters that are put in: those of sidewalls, and some that no sidewall has.
const LETTERS: [char; 48] = [
    '0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '0', '1', '8', '9', '/', '/', '-', '.', ',', ' ', ' ', '(', ')',
    'M', 'T', 'B', 'R', 'H', 'V', 'Z', 'P', 'C', 'L', 'S', 'W', 'D', 'X', 'J', 'N', 'U', 'O', 'I', 'm', '×', '–', '◁',
    'Ä', '７',
];

/// What a run met.
#[derive(Debug, Default)]
pub struct Met {
    /// Inputs.
    pub inputs: u64,
    /// Sizes that were accepted.
    pub sizes: u64,
    /// Date codes that were accepted.
    pub dates: u64,
}

/// Dice of a seed.
struct Dice(Pcg32);

impl Dice {
    fn roll(&mut self, sides: usize) -> usize {
        usize::try_from(self.0.next_u32()).unwrap_or(0) % sides.max(1)
    }

    fn pick<T: Copy>(&mut self, from: &[T], otherwise: T) -> T {
        from.get(self.roll(from.len())).copied().unwrap_or(otherwise)
    }
}

/// Reads so many mutated codes; the first fault ends the run with what was wrong.
pub fn fuzz(inputs: u64, seed: u64) -> Result<Met, String> {
    let mut dice = Dice(Pcg32::seed_from_u64(seed));
    let mut met = Met::default();
    for _ in 0..inputs {
        met.inputs += 1;
        if dice.roll(8) == 0 {
            let text = mutated(&DATES, &mut dice);
            met.dates += u64::from(date(&text)?);
        } else {
            let text = mutated(&CODES, &mut dice);
            met.sizes += u64::from(size(&text)?);
        }
    }
    Ok(met)
}

/// A code with one to four changes.
fn mutated(seeds: &[&str], dice: &mut Dice) -> String {
    let mut text: Vec<char> = dice.pick(seeds, "").chars().collect();
    for _ in 0..=dice.roll(4) {
        let (at, other) = (dice.roll(text.len()), dice.roll(text.len()));
        let letter = dice.pick(&LETTERS, ' ');
        match dice.roll(8) {
            0 if !text.is_empty() => drop(text.remove(at)),
            1 => text.insert(at, letter),
            2 | 3 => text.splice(at..text.len().min(at + 1), [letter]).for_each(drop),
            4 if !text.is_empty() => text.swap(at, other),
            5 => text.truncate(at + 1),
            6 => text.extend_from_within(at..text.len().min(at + 1 + dice.roll(4))),
            // The end of another code behind this one: second ratings, second marks.
            _ => {
                let tail: Vec<char> = dice.pick(seeds, "").chars().collect();
                text.push(' ');
                text.extend(tail.into_iter().skip(dice.roll(12)));
            }
        }
    }
    text.into_iter().collect()
}

/// Whether a size was accepted; a fault where it was accepted and misread.
fn size(text: &str) -> Result<bool, String> {
    let Ok(size) = TyreSize::read(text) else { return Ok(false) };
    let shown = size.to_string();
    if TyreSize::read(&shown).as_ref() != Ok(&size) {
        return Err(format!("“{text}” was read as “{shown}”, which does not read back"));
    }
    let diameter = size.outer_diameter_mm();
    if !(200.0..1500.0).contains(&diameter) {
        return Err(format!("“{text}” was read as “{shown}”, {diameter} mm"));
    }
    // Inches may change their look (3.5, 2 1/4), so their width is left out on both sides.
    let (given, kept) = match size.section {
        Section::Inch { .. } => (numbers_behind_width(text), numbers_behind_width(&shown)),
        Section::Metric { .. } | Section::Alpha { .. } => (numbers(text), numbers(&shown)),
    };
    if given != kept {
        return Err(format!("“{text}” was read as “{shown}”: the numbers differ"));
    }
    Ok(true)
}

/// Whether a date code was accepted; a fault where it was accepted and misread.
fn date(text: &str) -> Result<bool, String> {
    let Ok(code) = DateCode::read(text) else { return Ok(false) };
    let shown = code.to_string();
    if DateCode::read(&shown) != Ok(code) {
        return Err(format!("“{text}” was read as “{shown}”, which does not read back"));
    }
    let figures: String = shown.chars().filter(char::is_ascii_digit).collect();
    if !text.contains(&figures) || code.weeks().is_empty() {
        return Err(format!("“{text}” was read as “{shown}”"));
    }
    Ok(true)
}

/// The numbers of a text in ascending order, without leading zeros.
fn numbers(text: &str) -> Vec<u64> {
    let parts = text.split(|letter: char| !letter.is_ascii_digit());
    let mut numbers: Vec<u64> = parts.filter_map(|part| part.parse().ok()).collect();
    numbers.sort_unstable();
    numbers
}

/// The numbers behind a width in inches: `2 1/4` and `2.25` take up three numbers and two.
fn numbers_behind_width(text: &str) -> Vec<u64> {
    let width = text.trim_start();
    let point = width.find(['.', ',']).unwrap_or(usize::MAX);
    let stroke = width.find('/').unwrap_or(usize::MAX);
    let from = point.min(stroke);
    let rest = width.get(from..).unwrap_or_default();
    numbers(rest.trim_start_matches(['.', ',', '/']).trim_start_matches(|letter: char| letter.is_ascii_digit()))
}

#[cfg(test)]
#[test]
fn mutated_codes_are_never_misread_and_never_panic() {
    let met = fuzz(1_000_000, 0x2545_F491_4F6C_DD1D).unwrap();
    assert_eq!(met.inputs, 1_000_000);
    assert!(met.sizes > 40_000 && met.dates > 20_000, "too few were accepted to say anything: {met:?}");
}
