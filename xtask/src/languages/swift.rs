//! Swift: its sources are generated, and no compiler has seen them yet.

use super::{Language, generate, library};
use crate::command::{Failure, Outcome, fresh_folder};
use crate::paths;

/// Generates the Swift sources, and sees that each crate has got its own.
pub fn test() -> Outcome {
    let folder = paths::made("bindings/swift");
    fresh_folder(&folder)?;
    generate(Language::Swift, &library()?, &folder)?;
    for file in ["layshaft_core.swift", "layshaft_door.swift", "layshaft_uniffi.swift"] {
        if !folder.join(file).is_file() {
            return Err(Failure(format!("The generator wrote no {file}.")));
        }
    }
    Ok(())
}
