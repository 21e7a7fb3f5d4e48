//! Compiles the generated Kotlin binding with its test and runs both on the Java machine.

use std::path::{Path, PathBuf};

use crate::command::{Outcome, at_path, fresh_folder, program, run};
use crate::needs;
use crate::{generate, paths};

/// The npm package that holds a whole Kotlin compiler.
const COMPILER: &str = "tests/bindings/node_modules/kotlin-compiler";

/// Runs `tests/bindings/Main.kt` on the committed Kotlin binding.
pub fn binding() -> Outcome {
    let library = generate::library()?;
    needs::java()?;
    needs::npm_packages("tests/bindings")?;
    let compiler = paths::at(COMPILER);
    let coroutines = compiler.join("lib/kotlinx-coroutines-core-jvm.jar");
    let reflection = compiler.join("lib/kotlin-reflect.jar");
    let classes = paths::made("bindings/kotlin");
    fresh_folder(&classes)?;

    let mut sources = ["Main.kt", "Vectors.kt"].map(|name| paths::at("tests/bindings").join(name)).to_vec();
    collect(&paths::at("bindings/generated/kotlin"), &mut sources)?;
    let mut compile = program("bash");
    // The compiler comes out of the npm package without the mark that lets it be run directly.
    compile.arg(compiler.join("bin/kotlinc")).args(["-nowarn", "-jvm-target", "17", "-cp"]);
    compile.arg(class_path(&[Path::new(needs::JNA), &coroutines, &reflection])).arg("-d").arg(&classes).args(&sources);
    // The compiler lives for less than a minute: the quick half of Java's own compiler serves it best.
    compile.env("JAVA_OPTS", "-Xmx1500m -XX:TieredStopAtLevel=1 -XX:+UseSerialGC");
    run(&mut compile)?;

    let mut script = program("java");
    script.arg(format!("-Djna.library.path={}", library.parent().unwrap_or(&library).display()));
    let standard = compiler.join("lib/kotlin-stdlib.jar");
    script.arg("-cp").arg(class_path(&[&classes, &standard, &reflection, &coroutines, Path::new(needs::JNA)]));
    // With it, error texts would carry a backtrace.
    run(script.arg("MainKt").arg(paths::at("fixtures/vectors")).env_remove("RUST_BACKTRACE"))
}

fn class_path(parts: &[&Path]) -> String {
    let parts: Vec<String> = parts.iter().map(|part| part.display().to_string()).collect();
    parts.join(":")
}

fn collect(folder: &Path, sources: &mut Vec<PathBuf>) -> Outcome {
    for entry in at_path(folder, std::fs::read_dir(folder))?.flatten() {
        let path = entry.path();
        if path.is_dir() {
            collect(&path, sources)?;
        } else if path.extension().is_some_and(|extension| extension == "kt") {
            sources.push(path);
        }
    }
    Ok(())
}
