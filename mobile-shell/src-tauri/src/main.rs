//! Starts the window on a desktop. A phone enters through the library instead.
#![cfg_attr(not(debug_assertions), windows_subsystem = "windows")]

fn main() -> std::process::ExitCode {
    layshaft_shell::run()
}
