//! Another clock: the whole run may be put under `faketime`, to see that no check depends on the day.

use std::path::Path;
use std::process::Command;

/// The variable by which a library is loaded into every program.
const PRELOAD: &str = "LD_PRELOAD";
/// Programs of Rust's toolchain: their allocator and the library of `faketime` wait for each other for ever.
const COMPILERS: [&str; 3] = ["rustc", "cargo", "rustup"];

/// Programs whose waits end by the machine's clock alone: under another one Java may wait for ever. Chromium wants it otherwise.
const WAIT_BY_THE_MACHINE: [&str; 2] = ["java", "bash"];

/// Lets all that is started go by one clock that runs on, where a clock is set; the compilers keep the machine's.
pub fn share(command: &mut Command) {
    let Some(library) = std::env::var(PRELOAD).ok().filter(|library| library.contains("faketime")) else { return };
    command.env("FAKETIME_DONT_RESET", "1");
    let name = Path::new(command.get_program()).file_name().unwrap_or_default().to_string_lossy().into_owned();
    if WAIT_BY_THE_MACHINE.contains(&name.as_str()) {
        command.env("FAKETIME_DONT_FAKE_MONOTONIC", "1");
    }
    if COMPILERS.contains(&name.as_str()) {
        command.env_remove(PRELOAD);
        // Cargo hands what it has compiled to this, so that the tests go by the clock that is set.
        let runner = format!("CARGO_TARGET_{}_UNKNOWN_LINUX_GNU_RUNNER", std::env::consts::ARCH.to_uppercase());
        command.env(runner, format!("env {PRELOAD}={library}"));
    }
}
