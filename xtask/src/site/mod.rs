//! The folder that is put on a web server: the built pages, compressed copies beside them, settings for servers, and the list of
//! all files by which a host can be checked.

pub mod rules;
mod settings;
mod walk;

use std::path::{Path, PathBuf};

pub use walk::test;

use crate::command::{Failure, Outcome, at_path, program, run};
use crate::needs;
use crate::{paths, serve, shipped, web};

/// Where the folder is made.
pub fn folder() -> PathBuf {
    paths::made("site")
}

/// Builds the pages and makes the folder of them.
pub fn build() -> Outcome {
    web::build()?;
    make()?;
    let shown = Path::new(".build").join("site");
    println!("\nPut {} on a host with HTTPS, under any path; nginx.conf in it says how for nginx.", shown.display());
    println!("Then `cargo xtask check-site URL` says what that host does wrong.");
    Ok(())
}

/// Makes the folder of the pages that were built last.
pub fn make() -> Outcome {
    let site = folder();
    run(program("node").arg("xtask/site/make.mjs").arg(web::dist()).arg(&site))?;
    for (name, text) in
        [("_headers", settings::headers_file()), (".htaccess", settings::htaccess()), ("nginx.conf", settings::nginx())]
    {
        let file = site.join(name);
        at_path(&file, std::fs::write(&file, text))?;
    }
    shipped::refuse_local_paths(&site)
}

/// Says what a host, or a folder as it would be served, does wrong.
pub fn check(target: &str) -> Outcome {
    needs::node()?;
    let address = if target.starts_with("https://") || target.starts_with("http://") {
        target.to_owned()
    } else {
        let folder = paths::given(PathBuf::from(target));
        if !folder.join("files.json").is_file() {
            return Err(Failure(format!(
                "{} is no folder of built pages: it has no files.json. `cargo xtask build` makes one in .build/site.",
                folder.display()
            )));
        }
        println!("{} as `cargo xtask serve` would serve it:", folder.display());
        serve::start_folder(&folder, 0)?
    };
    run(program("node").arg("xtask/site/check.mjs").arg(address))
        .map_err(|_| Failure::new("The host does something wrong: see the lines marked with ✗."))
}
