//! Rust for a machine other than this one: from rustup, else Debian's own compiler with its library sources.

use std::path::Path;
use std::process::Command;

use super::apt;
use crate::command::{Failure, Outcome, cargo, output, program, run, succeeds};

/// The browser.
pub const WASM: &str = "wasm32-unknown-unknown";

/// A cargo that compiles for `triple`.
pub struct RustTarget {
    pub triple: &'static str,
    origin: Origin,
}

enum Origin {
    /// The pinned toolchain has the target's library.
    Toolchain,
    /// Debian's compiler: it builds the library itself, and links with LLVM of the same version.
    Debian { llvm: String },
}

/// Finds or installs what compiles for `triple`.
pub fn rust_for(triple: &'static str) -> Outcome<RustTarget> {
    // The second way can be asked for, so that it can be tried on a machine where the first one works.
    let force_debian = std::env::var_os("XTASK_RUST").is_some_and(|wish| wish == "debian");
    if !force_debian && toolchain_has(triple) {
        return Ok(RustTarget { triple, origin: Origin::Toolchain });
    }
    if !force_debian && succeeds(program("rustup").arg("--version")) {
        // Where rustup cannot download there is still Debian's compiler.
        let _ = run(program("rustup").args(["target", "add", triple]));
        if toolchain_has(triple) {
            return Ok(RustTarget { triple, origin: Origin::Toolchain });
        }
    }
    let llvm = debian_compiler().map_err(|Failure(reason)| {
        Failure(format!(
            "Missing: Rust for {triple}. It is needed because the same core runs there.\n{reason}\n\
             To get it: rustup target add {triple}\n\
             or, on Debian: apt-get install rustc-web cargo-web rust-web-src, and clang, lld and llvm of the version that \
             `/usr/bin/rustc -vV` names."
        ))
    })?;
    Ok(RustTarget { triple, origin: Origin::Debian { llvm } })
}

impl RustTarget {
    /// A cargo `verb` for this target; the caller adds packages and profile.
    pub fn cargo(&self, verb: &str) -> Command {
        let mut command = match &self.origin {
            Origin::Toolchain => cargo(),
            Origin::Debian { .. } => program("/usr/bin/cargo"),
        };
        command.args([verb, "--target", self.triple]);
        if let Origin::Debian { llvm } = &self.origin {
            command.arg("-Zbuild-std=std,panic_abort");
            command.env("RUSTC", "/usr/bin/rustc").env("RUSTC_BOOTSTRAP", "1");
            // These point into the other toolchain.
            command.env_remove("LD_LIBRARY_PATH").env_remove("RUSTUP_TOOLCHAIN").env_remove("RUSTDOC");
            command.env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER", format!("/usr/bin/wasm-ld-{llvm}"));
        }
        command
    }

    /// Whether clippy knows this target: Debian's compiler comes without it.
    pub fn has_clippy(&self) -> bool {
        matches!(self.origin, Origin::Toolchain)
    }

    /// The sources of the standard library, as they would show up in what is built.
    pub fn sysroot(&self) -> Outcome<String> {
        match self.origin {
            Origin::Toolchain => output(program("rustc").args(["--print", "sysroot"])),
            Origin::Debian { .. } => output(program("/usr/bin/rustc").args(["--print", "sysroot"])),
        }
    }
}

fn toolchain_has(triple: &str) -> bool {
    let mut ask = program("rustc");
    ask.args(["--print", "target-libdir", "--target", triple]);
    ask.output().is_ok_and(|answer| {
        let folder = String::from_utf8_lossy(&answer.stdout).trim().to_owned();
        answer.status.success() && holds_a_core(Path::new(&folder))
    })
}

fn holds_a_core(folder: &Path) -> bool {
    let Ok(entries) = std::fs::read_dir(folder) else { return false };
    entries.flatten().any(|entry| entry.file_name().to_string_lossy().starts_with("libcore-"))
}

/// Installs Debian's compiler and gives the version of LLVM that goes with it.
fn debian_compiler() -> Outcome<String> {
    apt::install(&["rustc-web", "cargo-web", "rust-web-src"])?;
    let about = output(program("/usr/bin/rustc").arg("-vV"))?;
    let llvm =
        about.lines().find_map(|line| line.strip_prefix("LLVM version: ")).and_then(|text| text.split('.').next());
    let llvm = llvm.ok_or_else(|| Failure::new("/usr/bin/rustc does not name its LLVM version."))?.to_owned();
    let tools = ["lld", "clang", "llvm"].map(|tool| format!("{tool}-{llvm}"));
    apt::install(&tools.each_ref().map(String::as_str))?;
    Ok(llvm)
}
