//! The phone at the cable, by way of `adb`: which it is, the way from its own `localhost` to this machine, and its browser.

use std::path::PathBuf;
use std::process::Command;

use crate::command::{Failure, Outcome, program};

/// The program, and the phone that is meant where there are several.
pub struct Adb {
    /// The program.
    pub program: PathBuf,
    /// Serial number of the phone; none: the only one.
    pub device: Option<String>,
}

/// A device in the list of `adb devices`.
#[derive(Debug, PartialEq)]
struct Device {
    serial: String,
    state: String,
}

/// The devices that `adb devices` lists: a serial number and a state a line, after a heading.
fn devices(listed: &str) -> Vec<Device> {
    let lines = listed.lines().filter(|line| !line.starts_with("List of") && !line.starts_with('*'));
    let pair =
        |line: &str| line.split_once('\t').map(|(serial, state)| (serial.trim().to_owned(), state.trim().to_owned()));
    lines.filter_map(pair).map(|(serial, state)| Device { serial, state }).collect()
}

impl Adb {
    /// The serial number of the phone that is meant, ready to be talked to; or why there is none, and what to do.
    pub fn phone(&self) -> Outcome<String> {
        let mut found = devices(&self.said(&["devices"])?);
        if let Some(wanted) = &self.device {
            found.retain(|device| device.serial == *wanted);
        }
        let serials: Vec<&str> = found.iter().map(|device| device.serial.as_str()).collect();
        let words = match (found.as_slice(), &self.device) {
            ([], Some(wanted)) => format!("No phone with the serial number {wanted} is at the cable."),
            ([], None) => "No phone is at the cable. Plug it in; on the phone, switch on “USB debugging” under the developer options.".to_owned(),
            ([only], _) => match only.state.as_str() {
                "device" => return Ok(only.serial.clone()),
                "unauthorized" => "The phone has not allowed this machine yet. Unlock it, and say yes to “Allow USB debugging?”.".to_owned(),
                state => format!("The phone {} answers “{state}”. Unplug it, plug it in again, and unlock it.", only.serial),
            },
            _ => format!("Several phones are at the cable: {}. Say which, with --device SERIAL.", serials.join(", ")),
        };
        Err(Failure(words))
    }

    /// Lets a port of the phone's own `localhost` lead to a port of this machine.
    pub fn lead(&self, serial: &str, there: u16, here: u16) -> Outcome {
        let (from, to) = (format!("tcp:{there}"), format!("tcp:{here}"));
        self.said(&["-s", serial, "reverse", &from, &to]).map(|_| ()).map_err(|Failure(reason)| {
            Failure(format!("The phone does not give its port {there} away. Is another program using it?\n{reason}"))
        })
    }

    /// Takes that way away again.
    pub fn lead_no_more(&self, serial: &str, there: u16) -> Outcome {
        self.said(&["-s", serial, "reverse", "--remove", &format!("tcp:{there}")]).map(|_| ())
    }

    /// Opens an address in the phone's browser.
    pub fn open(&self, serial: &str, address: &str) -> Outcome {
        let view = ["-s", serial, "shell", "am", "start", "-a", "android.intent.action.VIEW", "-d", address];
        self.said(&view).map(|_| ())
    }

    fn said(&self, words: &[&str]) -> Outcome<String> {
        let mut command: Command = program(&self.program);
        let done = command.args(words).output().map_err(|error| Failure(format!("adb cannot be started: {error}.")))?;
        if done.status.success() {
            return Ok(String::from_utf8_lossy(&done.stdout).into_owned());
        }
        Err(Failure(format!("adb {} said: {}", words.join(" "), String::from_utf8_lossy(&done.stderr).trim())))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_list_of_devices_is_read_without_its_heading_and_what_the_daemon_says() {
        let listed =
            "* daemon started successfully\nList of devices attached\nA1B2\tdevice\nemulator-5554\toffline\n\n";
        let device = |serial: &str, state: &str| Device { serial: serial.into(), state: state.into() };
        assert_eq!(devices(listed), [device("A1B2", "device"), device("emulator-5554", "offline")]);
        assert!(devices("List of devices attached\n\n").is_empty());
    }
}
