//! Writes the JavaScript and the TypeScript declarations beside a compiled web module.
//!
//! `layshaft-bindgen MODULE.wasm FOLDER NAME` does what the `wasm-bindgen` program does with `--target web`. As a library
//! its version is pinned in the one lock file together with the crate that it must match exactly.

use std::process::ExitCode;

use wasm_bindgen_cli_support::Bindgen;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [module, folder, name] = arguments.as_slice() else {
        eprintln!("layshaft-bindgen MODULE.wasm FOLDER NAME");
        return ExitCode::FAILURE;
    };
    let mut bindgen = Bindgen::new();
    bindgen.input_path(module).out_name(name).typescript(true).remove_name_section(true).remove_producers_section(true);
    match bindgen.web(true).and_then(|web| web.generate(folder)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{module}: {error:#}");
            ExitCode::FAILURE
        }
    }
}
