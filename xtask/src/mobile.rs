//! Type-checks the window for phones, on a machine that has no SDK.
//!
//! It shows that the Rust compiles under `cfg(mobile)`. It does not show that C compiles, that anything links, or that it
//! runs: for that a real SDK is needed. A stand-in for the C compiler writes empty objects.

use std::os::unix::fs::PermissionsExt;
use std::path::PathBuf;

use crate::command::{Outcome, at_path, run};
use crate::needs;
use crate::{paths, window};

const TARGETS: [&str; 2] = ["aarch64-linux-android", "aarch64-apple-ios"];

/// Checks the window for both phones.
pub fn check() -> Outcome {
    window::stand_in_page()?;
    let (compiler, archiver, sdk) =
        (stand_in("cc", COMPILER)?, stand_in("ar", ARCHIVER)?, paths::made("stand-in/iPhoneOS.sdk"));
    at_path(&sdk, std::fs::create_dir_all(&sdk))?;
    for triple in TARGETS {
        let rust = needs::rust_for(triple)?;
        let mut check = rust.cargo("check");
        check.args(["--package", "layshaft-shell", "--lib", "--profile", "dev"]);
        let suffix = triple.replace('-', "_");
        check.env(format!("CC_{suffix}"), &compiler).env(format!("AR_{suffix}"), &archiver);
        // In a folder of its own: it may be another compiler, and it must not keep other builds waiting.
        check.env("CARGO_TARGET_DIR", paths::target("mobile"));
        check.env("SDKROOT", &sdk).env("IPHONEOS_DEPLOYMENT_TARGET", "14.0");
        run(&mut check)?;
    }
    println!("The window type-checks for {}. Nothing was linked or run.", TARGETS.join(" and "));
    Ok(())
}

/// Writes an empty object wherever it is told to write one, and answers what build scripts ask.
const COMPILER: &str = "#!/bin/sh
while [ $# -gt 0 ]; do
  case \"$1\" in
    -o) : > \"$2\"; shift ;;
    -E) exit 0 ;;
    --version) echo 'clang version 14.0.0' ;;
  esac
  shift
done
";

/// Makes an empty archive of the name that follows the flags.
const ARCHIVER: &str = "#!/bin/sh
for word in \"$@\"; do
  case \"$word\" in *.a) printf '!<arch>\\n' > \"$word\"; exit 0 ;; esac
done
";

fn stand_in(name: &str, script: &str) -> Outcome<PathBuf> {
    let path = paths::made("stand-in").join(name);
    at_path(&path, std::fs::create_dir_all(paths::made("stand-in")))?;
    at_path(&path, std::fs::write(&path, script))?;
    at_path(&path, std::fs::set_permissions(&path, std::fs::Permissions::from_mode(0o755)))?;
    Ok(path)
}
