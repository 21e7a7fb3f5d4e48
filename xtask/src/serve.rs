//! Serves the built pages, on this machine only, as any file server would.
//!
//! Answers `GET` and `HEAD`. A path without a file and without an extension is one of the app's own addresses and gets
//! `index.html`. Nothing outside the folder can be reached.

use std::net::Ipv4Addr;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use percent_encoding::percent_decode_str;
use tiny_http::{Header, Method, Request, Response, Server};

use crate::command::{Failure, Outcome, at_path, program, succeeds};
use crate::web;

const DEFAULT_PORT: u16 = 4713;
/// Requests that are answered at the same time: as many as a browser sends.
const WORKERS: usize = 6;

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

/// Starts serving in the background and gives the address. Port 0 takes any that is free.
pub fn start(port: u16) -> Outcome<String> {
    let folder = at_path(&web::dist(), web::dist().canonicalize())?;
    let server = Server::http((Ipv4Addr::LOCALHOST, port)).map_err(|error| {
        Failure(format!(
            "Port {port} cannot be used: {error}. Give another one with --port N (0 takes any that is free)."
        ))
    })?;
    let address = server.server_addr().to_ip().ok_or(Failure::new("The server has no address."))?;
    let server = Arc::new(server);
    for _ in 0..WORKERS {
        let (server, folder) = (Arc::clone(&server), folder.clone());
        std::thread::spawn(move || {
            while let Ok(request) = server.recv() {
                // A browser that hangs up early is no fault of ours.
                answer(request, &folder).ok();
            }
        });
    }
    Ok(format!("http://localhost:{}/", address.port()))
}

fn open_browser(address: &str) {
    let has_display = ["DISPLAY", "WAYLAND_DISPLAY"].iter().any(|name| std::env::var_os(name).is_some());
    let opener = if cfg!(target_os = "macos") { "open" } else { "xdg-open" };
    if (has_display || cfg!(target_os = "macos")) && !succeeds(program(opener).arg(address)) {
        println!("(No browser could be opened: open the address yourself.)");
    }
}

fn answer(request: Request, folder: &Path) -> std::io::Result<()> {
    if !matches!(request.method(), Method::Get | Method::Head) {
        return request.respond(Response::empty(405).with_header(header("Allow", "GET, HEAD")?));
    }
    let Some(file) = file_for(request.url(), folder) else {
        return request.respond(Response::empty(404));
    };
    // Whole files are small; their length is told, so that a broken answer is seen as one.
    let mut response = Response::from_data(std::fs::read(&file)?).with_chunked_threshold(usize::MAX);
    response.add_header(header("Content-Type", content_type(&file))?);
    response.add_header(header("Cache-Control", cache_rule(&file))?);
    response.add_header(header("X-Content-Type-Options", "nosniff")?);
    request.respond(response)
}

fn header(name: &str, value: &str) -> std::io::Result<Header> {
    Header::from_bytes(name, value).map_err(|()| std::io::Error::other(format!("{name}: {value} is no header")))
}

/// The file that a request's target stands for, if there is one inside `folder`.
fn file_for(target: &str, folder: &Path) -> Option<PathBuf> {
    let path = target.split(['?', '#']).next()?;
    let relative = percent_decode_str(path.strip_prefix('/')?).decode_utf8().ok()?;
    let wanted = folder.join(&*relative);
    // Resolving the path first shuts out `..`, absolute paths and links that lead outside.
    let found = wanted.canonicalize().ok().filter(|file| file.starts_with(folder));
    match found {
        Some(file) if file.is_file() => Some(file),
        Some(place) if place.join("index.html").is_file() => Some(place.join("index.html")),
        _ if Path::new(&*relative).extension().is_none() && !relative.contains("..") => Some(folder.join("index.html")),
        _ => None,
    }
}

fn content_type(file: &Path) -> &'static str {
    match file.extension().and_then(|extension| extension.to_str()).unwrap_or_default() {
        "html" => "text/html; charset=utf-8",
        "js" | "mjs" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "wasm" => "application/wasm",
        "json" => "application/json",
        "webmanifest" => "application/manifest+json",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "ico" => "image/x-icon",
        "woff2" => "font/woff2",
        "txt" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

/// Files below `assets` carry their hash in their name; all others must be asked for again, the service worker above all.
fn cache_rule(file: &Path) -> &'static str {
    let hashed = file.parent().is_some_and(|parent| parent.ends_with("assets"));
    if hashed { "public, max-age=31536000, immutable" } else { "no-cache" }
}

#[cfg(test)]
mod tests {
    use std::io::{Read, Write};
    use std::net::{Ipv4Addr, TcpStream};
    use std::path::{Path, PathBuf};

    use tiny_http::Server;

    use super::{answer, cache_rule, content_type, file_for};

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
            "/%00.txt",
            "/%ff",
            "secret.txt",
        ] {
            assert_eq!(file_for(target, &folder), None, "{target}");
        }
        std::fs::remove_dir_all(folder.with_file_name(""))
    }

    #[test]
    fn a_module_has_its_own_type_and_the_service_worker_is_always_asked_for_again() {
        assert_eq!(content_type(Path::new("door.wasm")), "application/wasm");
        assert_eq!(cache_rule(Path::new("/dist/sw.js")), "no-cache");
        assert!(cache_rule(Path::new("/dist/assets/door-1a2b.wasm")).contains("immutable"));
    }

    /// What comes back for a request line, with the headers in small letters.
    fn said(request: &str, folder: &Path) -> std::io::Result<(String, String)> {
        let server = Server::http((Ipv4Addr::LOCALHOST, 0)).map_err(std::io::Error::other)?;
        let address = server.server_addr().to_ip().ok_or_else(|| std::io::Error::other("no address"))?;
        assert!(address.ip().is_loopback());
        let mut stream = TcpStream::connect(address)?;
        write!(stream, "{request} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n")?;
        answer(server.recv()?, folder)?;
        let mut text = String::new();
        stream.read_to_string(&mut text)?;
        let (head, body) = text.split_once("\r\n\r\n").unwrap_or_default();
        Ok((head.to_lowercase(), body.to_owned()))
    }

    #[test]
    fn an_answer_carries_type_length_and_cache_rule_and_its_head_alone_carries_the_same() -> std::io::Result<()> {
        let folder = site("said")?;
        let (head, body) = said("GET /assets/door-1a2b.wasm", &folder)?;
        assert!(head.starts_with("http/1.1 200"), "{head}");
        for line in ["content-type: application/wasm", "content-length: 6", "immutable", "nosniff"] {
            assert!(head.contains(line), "{head}");
        }
        assert_eq!(body, "module");
        let (head, body) = said("HEAD /assets/door-1a2b.wasm", &folder)?;
        assert!(head.contains("content-length: 6") && body.is_empty(), "{head} {body}");
        assert!(said("GET /gone.js", &folder)?.0.starts_with("http/1.1 404"));
        let (head, _) = said("POST /", &folder)?;
        assert!(head.starts_with("http/1.1 405") && head.contains("allow: get, head"), "{head}");
        std::fs::remove_dir_all(folder.with_file_name(""))
    }
}
