//! Reads a million mutated tyre codes (or as many as the first argument says) and prints how many were accepted; ends in failure
//! at the first one that is misread.

#[path = "../src/record/sidewall/fuzz.rs"]
mod fuzz;

use layshaft_core::record::{DateCode, Section, TyreSize};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let inputs = std::env::args().nth(1).map_or(Ok(1_000_000), |count| count.parse())?;
    let met = fuzz::fuzz(inputs, 0x9E37_79B9_7F4A_7C15)?;
    println!("{} mutated codes: {} sizes and {} date codes accepted, none misread", met.inputs, met.sizes, met.dates);
    Ok(())
}
