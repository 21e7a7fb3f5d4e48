//! The Tauri window around the door: the same pages as in the browser, over a native SQLite file.
//!
//! The pages can call three commands, `act`, `ask` and, before these, `use_language`, and nothing else of ours. Files are
//! reached only where the person pointed at them in a file dialog.

// On a phone the entry point's macro writes a public function without documentation.
#![cfg_attr(mobile, allow(missing_docs))]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing))]

mod bench;
mod notices;

use std::process::ExitCode;

use tauri::Manager;

/// Opens the window and stays until it is closed.
#[cfg_attr(mobile, tauri::mobile_entry_point)]
pub fn run() -> ExitCode {
    let started = tauri::Builder::default()
        .plugin(tauri_plugin_dialog::init())
        .plugin(tauri_plugin_fs::init())
        .plugin(tauri_plugin_notification::init())
        .setup(|app| {
            let folder = app.path().app_data_dir()?;
            let announcer = notices::Announcer::start(app.handle().clone());
            app.manage(bench::Desk::open(&folder, move |notices| announcer.expect(notices)));
            Ok(())
        })
        .invoke_handler(tauri::generate_handler![bench::act, bench::ask, bench::use_language])
        .run(tauri::generate_context!());
    match started {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("Layshaft could not open its window: {error}");
            ExitCode::FAILURE
        }
    }
}
