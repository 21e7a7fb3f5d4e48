//! Runs other programs, shows what is run, and turns a bad end into a message that names the program.

use std::ffi::OsStr;
use std::path::Path;
use std::process::{Command, Stdio};

use crate::paths;

/// Why a command could not be carried out, in words for the person at the keyboard.
#[derive(Debug)]
pub struct Failure(pub String);

impl Failure {
    pub fn new(text: impl Into<String>) -> Self {
        Self(text.into())
    }
}

pub type Outcome<T = ()> = Result<T, Failure>;

/// A program that is to run at the root of the work tree.
pub fn program(name: impl AsRef<OsStr>) -> Command {
    let mut command = Command::new(name);
    command.current_dir(paths::root());
    command
}

/// Cargo, the same one that started us.
pub fn cargo() -> Command {
    program(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()))
}

/// Shows the command, runs it and waits for it; a bad end is a failure.
pub fn run(command: &mut Command) -> Outcome {
    println!("  $ {}", shown(command));
    let status = command.status().map_err(|error| cannot_start(command, &error))?;
    if status.success() {
        return Ok(());
    }
    Err(Failure(format!("`{}` ended with {status}.", shown(command))))
}

/// Runs a command unseen and gives what it printed.
pub fn output(command: &mut Command) -> Outcome<String> {
    let done = command.stderr(Stdio::inherit()).output().map_err(|error| cannot_start(command, &error))?;
    if !done.status.success() {
        return Err(Failure(format!("`{}` ended with {}.", shown(command), done.status)));
    }
    Ok(String::from_utf8_lossy(&done.stdout).trim().to_owned())
}

/// Whether a command can be started and ends well; what it says is not shown.
pub fn succeeds(command: &mut Command) -> bool {
    command.stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::null());
    command.status().is_ok_and(|status| status.success())
}

/// Whether a program answers when it is asked for its version.
pub fn exists(name: &str) -> bool {
    succeeds(program(name).arg("--version"))
}

/// Turns an error of the file system into a failure that names the path.
pub fn at_path<T>(path: &Path, result: std::io::Result<T>) -> Outcome<T> {
    result.map_err(|error| Failure(format!("{}: {error}", path.display())))
}

/// Removes a folder with all that is in it, if it is there, and makes it anew.
pub fn fresh_folder(path: &Path) -> Outcome {
    if path.exists() {
        at_path(path, std::fs::remove_dir_all(path))?;
    }
    at_path(path, std::fs::create_dir_all(path))
}

/// Copies a file into a folder, under its own name.
pub fn copy_into(file: &Path, folder: &Path) -> Outcome {
    let copy = folder.join(file.file_name().unwrap_or_default());
    at_path(file, std::fs::copy(file, copy)).map(|_| ())
}

fn cannot_start(command: &Command, error: &std::io::Error) -> Failure {
    Failure(format!("`{}` could not be started: {error}.", shown(command)))
}

/// The command line as a person would type it, with paths shortened.
fn shown(command: &Command) -> String {
    let root = format!("{}/", paths::root().display());
    let program = Path::new(command.get_program()).file_name().unwrap_or_default();
    let words = std::iter::once(program).chain(command.get_args());
    let line: Vec<String> = words.map(|word| word.to_string_lossy().replace(&root, "")).collect();
    line.join(" ")
}
