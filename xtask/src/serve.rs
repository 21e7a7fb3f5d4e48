//! Serves the built pages, on this machine only, as any file server would.
//!
//! Answers `GET` and `HEAD`, one request a connection. A path without a file and without an extension is one of the
//! app's own addresses and gets `index.html`. Nothing outside the folder can be reached.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::mpsc::Sender;
use std::time::Duration;

use crate::command::{Failure, Outcome, at_path, program, succeeds};
use crate::site::rules::{cache_rule, content_type};
use crate::web;

const DEFAULT_PORT: u16 = 4713;
/// No page's address is longer than this; a request that is gets no answer.
const LONGEST_REQUEST: u64 = 16 * 1024;

/// Serves until the process is ended, and opens the browser if there is one to open.
pub fn until_interrupted(port: Option<u16>, open: bool) -> Outcome {
    let address = start(port.unwrap_or(DEFAULT_PORT))?;
    println!("\nLayshaft is at {address}  (Ctrl-C ends it)");
    if open {
        open_browser(&address);
    }
    loop {
        std::thread::park();
    }
}

/// Starts serving the built pages in the background and gives the address. Port 0 takes any that is free.
pub fn start(port: u16) -> Outcome<String> {
    start_folder(&web::dist(), port)
}

/// The same for any folder of pages.
pub fn start_folder(folder: &Path, port: u16) -> Outcome<String> {
    serve_in_background(folder, port, None).map(|port| format!("http://localhost:{port}/"))
}

/// The same, but it gives the port, and tells each file that is handed out by its path within the folder.
pub fn watched(folder: &Path, port: u16, seen: Sender<String>) -> Outcome<u16> {
    serve_in_background(folder, port, Some(seen))
}

fn serve_in_background(folder: &Path, port: u16, seen: Option<Sender<String>>) -> Outcome<u16> {
    let folder = at_path(folder, folder.canonicalize())?;
    let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port)).map_err(|error| {
        Failure(format!(
            "Port {port} cannot be used: {error}. Give another one with --port N (0 takes any that is free). What was entered \
             under one port is not seen under another: take it along as a bundle."
        ))
    })?;
    let port = listener.local_addr().map_err(|error| Failure(error.to_string()))?.port();
    std::thread::spawn(move || {
        for stream in listener.incoming().flatten() {
            let (folder, seen) = (folder.clone(), seen.clone());
            // A browser that hangs up early is no fault of ours.
            std::thread::spawn(move || answer(stream, &folder, seen.as_ref()).ok());
        }
    });
    Ok(port)
}

fn open_browser(address: &str) {
    let has_display = ["DISPLAY", "WAYLAND_DISPLAY"].iter().any(|name| std::env::var_os(name).is_some());
    let opener = if cfg!(target_os = "macos") { "open" } else { "xdg-open" };
    if (has_display || cfg!(target_os = "macos")) && !succeeds(program(opener).arg(address)) {
        println!("(No browser could be opened: open the address yourself.)");
    }
}

fn answer(mut stream: TcpStream, folder: &Path, seen: Option<&Sender<String>>) -> std::io::Result<()> {
    stream.set_read_timeout(Some(Duration::from_secs(10)))?;
    let mut reader = BufReader::new(stream.try_clone()?.take(LONGEST_REQUEST));
    let mut request = String::new();
    reader.read_line(&mut request)?;
    let mut header = String::new();
    while reader.read_line(&mut header)? > 2 {
        header.clear();
    }
    let mut words = request.split_whitespace();
    let (method, target) = (words.next().unwrap_or_default(), words.next().unwrap_or_default());
    if method != "GET" && method != "HEAD" {
        return write!(
            stream,
            "HTTP/1.1 405 Method Not Allowed\r\nAllow: GET, HEAD\r\nContent-Length: 0\r\nConnection: close\r\n\r\n"
        );
    }
    let Some(file) = file_for(target, folder) else {
        return write!(stream, "HTTP/1.1 404 Not Found\r\nContent-Length: 0\r\nConnection: close\r\n\r\n");
    };
    let body = std::fs::read(&file)?;
    write!(
        stream,
        "HTTP/1.1 200 OK\r\nContent-Type: {}\r\nContent-Length: {}\r\nCache-Control: {}\r\n\
         X-Content-Type-Options: nosniff\r\nConnection: close\r\n\r\n",
        content_type(&file),
        body.len(),
        cache_rule(&file),
    )?;
    if method == "GET" {
        stream.write_all(&body)?;
    }
    stream.flush()?;
    if let (Some(seen), Ok(path)) = (seen, file.strip_prefix(folder)) {
        // Whoever listened has gone: nothing to tell.
        let _ = seen.send(path.to_string_lossy().into_owned());
    }
    Ok(())
}

/// The file that a request's target stands for, if there is one inside `folder`.
fn file_for(target: &str, folder: &Path) -> Option<PathBuf> {
    let path = target.split(['?', '#']).next()?;
    let relative = decode(path.strip_prefix('/')?)?;
    let wanted = folder.join(&relative);
    // Resolving the path first shuts out `..`, absolute paths and links that lead outside.
    let found = wanted.canonicalize().ok().filter(|file| file.starts_with(folder));
    match found {
        Some(file) if file.is_file() => Some(file),
        Some(place) if place.join("index.html").is_file() => Some(place.join("index.html")),
        _ if Path::new(&relative).extension().is_none() && !relative.contains("..") => Some(folder.join("index.html")),
        _ => None,
    }
}

/// Undoes percent encoding; `None` when it is broken or not UTF-8.
fn decode(path: &str) -> Option<String> {
    let mut bytes = path.bytes();
    let mut plain = Vec::with_capacity(path.len());
    while let Some(byte) = bytes.next() {
        if byte == b'%' {
            let digits = [bytes.next()?, bytes.next()?];
            plain.push(u8::from_str_radix(std::str::from_utf8(&digits).ok()?, 16).ok()?);
        } else {
            plain.push(byte);
        }
    }
    String::from_utf8(plain).ok().filter(|text| !text.contains('\0'))
}

#[cfg(test)]
mod tests {
    use std::path::PathBuf;

    use super::file_for;

    /// A folder with a page, a script and a neighbour that must not be reached.
    fn site(name: &str) -> std::io::Result<PathBuf> {
        let outer = std::env::temp_dir().join(format!("layshaft-serve-{name}-{}", std::process::id()));
        let folder = outer.join("dist");
        std::fs::create_dir_all(folder.join("assets"))?;
        std::fs::write(outer.join("secret.txt"), "not served")?;
        std::fs::write(folder.join("index.html"), "page")?;
        std::fs::write(folder.join("assets/door-1a2b.wasm"), "module")?;
        folder.canonicalize()
    }

    #[test]
    fn files_are_found_and_own_addresses_get_the_page() -> std::io::Result<()> {
        let folder = site("found")?;
        let page = Some(folder.join("index.html"));
        assert_eq!(file_for("/", &folder), page);
        assert_eq!(file_for("/numbers/gearing?rpm=5000", &folder), page);
        assert_eq!(file_for("/assets/door-1a2b.wasm", &folder), Some(folder.join("assets/door-1a2b.wasm")));
        assert_eq!(file_for("/assets/gone.js", &folder), None);
        std::fs::remove_dir_all(folder.with_file_name(""))
    }

    #[test]
    fn nothing_outside_the_folder_is_reached() -> std::io::Result<()> {
        let folder = site("outside")?;
        for target in [
            "/../secret.txt",
            "/%2e%2e/secret.txt",
            "/assets/../../secret.txt",
            "//etc/hostname.txt",
            "/%zz",
            "/%00",
            "secret.txt",
        ] {
            assert_eq!(file_for(target, &folder), None, "{target}");
        }
        std::fs::remove_dir_all(folder.with_file_name(""))
    }
}
