//! With a stand-in for `adb` that records what it is asked; no phone takes part.

use std::io::{Read, Write};
use std::net::TcpStream;
use std::os::unix::fs::PermissionsExt;
use std::path::{Path, PathBuf};
use std::time::Duration;

use super::{Adb, put};
use crate::command::Failure;

/// A folder with pages, and a stand-in that lists these devices and fails when it is asked for what `refuses` names.
struct Bench {
    folder: PathBuf,
    adb: Adb,
}

fn bench(name: &str, devices: &str, refuses: &str) -> std::io::Result<Bench> {
    let folder = std::env::temp_dir().join(format!("layshaft-phone-{name}-{}", std::process::id()));
    let pages = folder.join("pages");
    std::fs::create_dir_all(pages.join("assets"))?;
    std::fs::write(pages.join("index.html"), "page")?;
    std::fs::write(pages.join("assets/door-1a2b.wasm"), "module")?;
    std::fs::write(pages.join("sw.js"), r#"precacheAndRoute([{url:"index.html"},{url:"assets/door-1a2b.wasm"}])"#)?;
    let script = format!(
        "#!/bin/sh\necho \"$@\" >> '{log}'\ncase \"$*\" in\n  devices) printf 'List of devices attached\\n{devices}\\n' ;;\n  \
         *'{refuses}'*) echo 'cannot bind listener' >&2; exit 1 ;;\nesac\n",
        log = folder.join("log").display(),
    );
    let program = folder.join("adb");
    std::fs::write(&program, script)?;
    std::fs::set_permissions(&program, std::fs::Permissions::from_mode(0o755))?;
    Ok(Bench { folder, adb: Adb { program, device: None } })
}

impl Bench {
    fn asked(&self) -> Vec<String> {
        let log = std::fs::read_to_string(self.folder.join("log")).unwrap_or_default();
        log.lines().map(str::to_owned).collect()
    }

    /// Puts the pages on, while a browser asks for these files as soon as it has been opened.
    ///
    /// Whoever waits for something that comes waits long, so that a busy machine changes nothing.
    fn put(&self, files: &'static [&'static str]) -> Result<(), Failure> {
        let first = if files.is_empty() { Duration::from_millis(50) } else { Duration::from_secs(60) };
        let quiet = if files.len() == 4 { Duration::from_secs(60) } else { Duration::from_millis(50) };
        let log = self.folder.join("log");
        let browser = std::thread::spawn(move || browse(&log, files));
        let outcome = put(&self.adb, &self.folder.join("pages"), (first, quiet));
        let _ = browser.join();
        outcome
    }
}

/// The browser of the phone: it finds the port in what `adb` was asked, and fetches the files through it.
fn browse(log: &Path, files: &[&str]) {
    let opened = |text: &str| text.contains("android.intent.action.VIEW");
    let port = (0..6000).find_map(|_| {
        let text = std::fs::read_to_string(log).unwrap_or_default();
        if !opened(&text) {
            std::thread::sleep(Duration::from_millis(10));
            return None;
        }
        text.lines().find_map(|line| line.split("tcp:").nth(2)?.trim().parse::<u16>().ok())
    });
    for file in files {
        let Some(mut stream) = port.and_then(|port| TcpStream::connect(("127.0.0.1", port)).ok()) else { return };
        let _ = write!(stream, "GET /{file} HTTP/1.1\r\nHost: localhost\r\n\r\n");
        let _ = stream.read_to_end(&mut Vec::new());
    }
}

fn refusal(outcome: Result<(), Failure>) -> String {
    outcome.err().map_or(String::new(), |Failure(text)| text)
}

#[test]
fn by_a_stand_in_adb_the_phone_gets_all_files_through_its_own_localhost_and_the_way_is_closed_again()
-> std::io::Result<()> {
    let bench = bench("all", "A1B2\\tdevice", "nothing at all")?;
    assert!(bench.put(&["", "sw.js", "index.html", "assets/door-1a2b.wasm"]).is_ok());
    let asked = bench.asked();
    let [listed, led, opened, led_no_more] = asked.as_slice() else {
        return Err(std::io::Error::other(format!("{asked:?}")));
    };
    assert_eq!(listed, "devices");
    assert!(led.starts_with("-s A1B2 reverse tcp:4713 tcp:"), "{led}");
    assert_eq!(opened, "-s A1B2 shell am start -a android.intent.action.VIEW -d http://localhost:4713/");
    assert_eq!(led_no_more, "-s A1B2 reverse --remove tcp:4713");
    std::fs::remove_dir_all(&bench.folder)
}

#[test]
fn by_a_stand_in_adb_a_phone_that_has_the_pages_is_done_and_one_that_never_opens_them_is_told() -> std::io::Result<()> {
    let has_all = bench("again", "A1B2\\tdevice", "nothing at all")?;
    assert!(has_all.put(&["sw.js", "index.html"]).is_ok());
    let never = bench("never", "A1B2\\tdevice", "nothing at all")?;
    assert!(refusal(never.put(&[])).contains("has not opened the page"));
    assert_eq!(never.asked().last().map(String::as_str), Some("-s A1B2 reverse --remove tcp:4713"));
    std::fs::remove_dir_all(&has_all.folder)?;
    std::fs::remove_dir_all(&never.folder)
}

#[test]
fn by_a_stand_in_adb_no_phone_two_phones_one_that_has_not_allowed_it_and_a_port_in_use_are_said_in_words()
-> std::io::Result<()> {
    for (name, devices, refuses, words) in [
        ("none", "", "nothing at all", "No phone is at the cable"),
        ("two", "A1B2\\tdevice\\nC3D4\\tdevice", "nothing at all", "--device SERIAL"),
        ("asks", "A1B2\\tunauthorized", "nothing at all", "Allow USB debugging?"),
        ("lost", "A1B2\\toffline", "nothing at all", "“offline”"),
        ("port", "A1B2\\tdevice", "reverse tcp", "does not give its port 4713 away"),
    ] {
        let bench = bench(name, devices, refuses)?;
        assert!(refusal(put(&bench.adb, &bench.folder.join("pages"), Default::default())).contains(words), "{name}");
        std::fs::remove_dir_all(&bench.folder)?;
    }
    let mut chosen = bench("chosen", "A1B2\\tdevice\\nC3D4\\tdevice", "nothing at all")?;
    chosen.adb.device = Some("C3D4".to_owned());
    assert_eq!(chosen.adb.phone().ok().as_deref(), Some("C3D4"));
    std::fs::remove_dir_all(&chosen.folder)
}
