//! What the commands need on a machine: looked for, then installed where that can be done, else named with the reason.

mod apt;
mod clang;
mod node;
mod rust_targets;
mod stamp;
mod venv;

pub use clang::clang;
pub use node::{node, npm_packages, npm_script};
pub use rust_targets::{RustTarget, WASM, rust_for};
pub use venv::{base_python, venv};

use apt::Need;

use crate::command::{Outcome, exists, program, succeeds};

/// A C compiler and linker for this machine: SQLite is compiled from its source.
pub fn c_compiler() -> Outcome {
    apt::ensure(&Need {
        what: "a C compiler",
        why: "SQLite is compiled from its source",
        packages: &["build-essential", "pkg-config"],
        there: || succeeds(program("cc").arg("--version")) && succeeds(program("pkg-config").arg("--version")),
        otherwise: "install a C compiler and pkg-config",
    })
}

/// A web server, a network of its own for it, and a certificate that a browser trusts: for testing the folder for a web host.
pub fn web_host() -> Outcome {
    apt::ensure(&Need {
        what: "nginx, ip, openssl and certutil",
        why: "the pages are tested on a web host with HTTPS, in a network of the test's own",
        packages: &["nginx-light", "iproute2", "openssl", "libnss3-tools"],
        there: || succeeds(program("which").args(["nginx", "ip", "openssl", "certutil"])),
        otherwise: "install nginx, iproute2, openssl and the tools of NSS",
    })
}

/// The program that talks to a phone over the cable.
pub fn phone_bridge() -> Outcome {
    apt::ensure(&Need {
        what: "adb",
        why: "it talks to the phone over the cable",
        packages: &["adb"],
        there: || exists("adb"),
        otherwise: "install the platform tools of Android",
    })
}

/// The libraries of the web view that the window is made of.
pub fn web_view() -> Outcome {
    c_compiler()?;
    apt::ensure(&Need {
        what: "WebKitGTK 4.1 with its headers",
        why: "the window draws its pages with it",
        packages: &["libwebkit2gtk-4.1-dev", "libdbus-1-dev"],
        there: || succeeds(program("pkg-config").args(["--exists", "webkit2gtk-4.1", "dbus-1"])),
        otherwise: "install the development packages of webkit2gtk-4.1 and dbus",
    })
}

/// A screen that is not there, and the program that drives a web view: for testing the window.
pub fn window_driver() -> Outcome {
    apt::ensure(&Need {
        what: "Xvfb, xdotool, WebKitWebDriver, dbus-daemon and dbus-monitor",
        why: "the window is tested on a screen and a message bus of its own",
        packages: &["xvfb", "xdotool", "webkit2gtk-driver", "dbus", "fonts-dejavu-core"],
        there: || {
            succeeds(program("which").args(["Xvfb", "xdotool", "WebKitWebDriver", "dbus-daemon", "dbus-monitor"]))
        },
        otherwise: "install Xvfb, xdotool, WebKitWebDriver and dbus",
    })
}

/// A clock that can be set for one program: the window is tested at a fixed moment.
pub fn fake_clock() -> Outcome {
    apt::ensure(&Need {
        what: "faketime",
        why: "the window is tested at a fixed moment, whatever the day is",
        packages: &["faketime"],
        there: || succeeds(program("faketime").args(["-f", "+0", "printenv", "LD_PRELOAD"])),
        otherwise: "install libfaketime with its command `faketime`",
    })
}

/// Chromium and a font to fall back on: for the browser tests, the screenshots and the measurements.
pub fn chromium() -> Outcome<&'static str> {
    const CANDIDATES: [&str; 2] = ["/usr/bin/chromium", "/usr/bin/chromium-browser"];
    let find = || CANDIDATES.into_iter().find(|path| succeeds(program(path).arg("--version")));
    apt::ensure(&Need {
        what: "Chromium",
        why: "the pages are tested in a real browser",
        packages: &["chromium", "fonts-dejavu-core"],
        there: || CANDIDATES.iter().any(|path| succeeds(program(path).arg("--version"))),
        otherwise: "install Chromium so that /usr/bin/chromium starts it",
    })?;
    find().ok_or_else(|| crate::command::Failure::new("Chromium was installed but does not start."))
}

/// A circuit simulator: the harness is compared with it.
pub fn ngspice() -> Outcome {
    apt::ensure(&Need {
        what: "ngspice",
        why: "the harness is compared with it",
        packages: &["ngspice"],
        there: || succeeds(program("ngspice").arg("--version")),
        otherwise: "install ngspice so that it is found on the path",
    })
}

/// A Java runtime and JNA: the Kotlin binding is compiled and run with them.
pub fn java() -> Outcome {
    apt::ensure(&Need {
        what: "Java 17 or later with JNA",
        why: "the Kotlin binding is compiled and run on it",
        packages: &["default-jre-headless", "libjna-java"],
        there: || succeeds(program("java").arg("-version")) && std::path::Path::new(JNA).is_file(),
        otherwise: "install a Java runtime, and JNA as /usr/share/java/jna.jar",
    })
}

/// Where Debian and Ubuntu put JNA.
pub const JNA: &str = "/usr/share/java/jna.jar";
