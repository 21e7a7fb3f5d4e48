//! Puts the pages on a phone at the cable. The phone's own `localhost` leads here while they are fetched, which browsers trust as
//! they trust HTTPS; afterwards the phone has them and needs nobody.

mod adb;
#[cfg(all(test, unix))]
mod tests;

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, channel};
use std::time::Duration;

use adb::Adb;

use crate::command::{Failure, Outcome, at_path};
use crate::{needs, serve, web};

/// The port on the phone. It is always the same: what is stored on the phone belongs to its address, and the port is part of it.
const PHONE_PORT: u16 = 4713;
/// After so long without a request, a phone that had the pages already has what is new.
const QUIET: Duration = Duration::from_secs(12);
/// So long a phone may take to ask for the first file.
const FIRST: Duration = Duration::from_secs(90);

/// Builds the pages, and puts them on the phone.
pub fn run(device: Option<String>) -> Outcome {
    needs::phone_bridge()?;
    web::build()?;
    put(&Adb { program: PathBuf::from("adb"), device }, &web::dist(), (FIRST, QUIET))
}

/// Hands the pages out until the phone has them all.
fn put(adb: &Adb, pages: &Path, (first, quiet): (Duration, Duration)) -> Outcome {
    let serial = adb.phone()?;
    let wanted = kept_offline(pages)?;
    let all = wanted.len();
    let (seen, asked) = channel();
    let port = serve::watched(pages, 0, seen)?;
    adb.lead(&serial, PHONE_PORT, port)?;
    let address = format!("http://localhost:{PHONE_PORT}/");
    let outcome = adb.open(&serial, &address).and_then(|()| {
        println!("\nThe phone opens {address}");
        until_fetched(&asked, wanted, (first, quiet))
    });
    adb.lead_no_more(&serial, PHONE_PORT)?;
    let fetched = outcome?;
    if fetched == all {
        println!("All {all} files are on the phone: it works without this machine from now on.");
    } else {
        println!("The phone asked for {fetched} of {all} files, and has the others from an earlier time.");
        println!(
            "If its page does not say “Kept for offline use” under This device, run this again with the screen on."
        );
    }
    println!("Add it to the home screen from the menu of the browser, or with the button that the page shows.");
    Ok(())
}

/// The files that the service worker keeps, by their paths.
fn kept_offline(pages: &Path) -> Outcome<BTreeSet<String>> {
    let file = pages.join("sw.js");
    let text = at_path(&file, std::fs::read_to_string(&file))?;
    let listed = text.split("url:\"").skip(1).filter_map(|rest| rest.split('"').next());
    let kept: BTreeSet<String> = listed.map(str::to_owned).collect();
    if kept.is_empty() {
        return Err(Failure(format!("{} names no file that it keeps.", file.display())));
    }
    Ok(kept)
}

/// Waits until the phone has asked for every file, or for the service worker and then for nothing more: what it did not ask for, it
/// has from an earlier time. Gives how many it asked for.
fn until_fetched(
    asked: &Receiver<String>,
    mut wanted: BTreeSet<String>,
    (first, quiet): (Duration, Duration),
) -> Outcome<usize> {
    let (all, mut worker_asked) = (wanted.len(), false);
    while !(wanted.is_empty() && worker_asked) {
        match asked.recv_timeout(if worker_asked { quiet } else { first }) {
            Ok(path) => {
                worker_asked |= path == "sw.js";
                wanted.remove(&path);
            }
            Err(_) if worker_asked => break,
            Err(_) => {
                return Err(Failure::new(
                    "The phone has not opened the page. Unlock it, look whether it asks which browser to take, and run this again.",
                ));
            }
        }
    }
    Ok(all - wanted.len())
}
