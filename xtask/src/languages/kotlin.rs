//! Kotlin: the jar with its classes and the library, and the test of it on the Java machine.

use std::path::{Path, PathBuf};

use super::{Language, examples, generate, library};
use crate::command::{Outcome, at_path, fresh_folder, program, run};
use crate::{needs, paths};

/// The npm package that holds a whole Kotlin compiler.
const COMPILER: &str = "tests/bindings/node_modules/kotlin-compiler";

/// Puts a file into an archive: the Java runtime alone has no program for it.
const ADD: &str = "import sys, zipfile; jar = zipfile.ZipFile(sys.argv[1], 'a', zipfile.ZIP_DEFLATED); \
    jar.write(sys.argv[2], sys.argv[3]); jar.close()";

/// Makes a jar in `out` with `library` in it; its classes are what `described_by`, the same unstripped, says.
pub fn jar(described_by: &Path, library: &Path, work: &Path, out: &Path) -> Outcome<PathBuf> {
    fresh_folder(work)?;
    generate(Language::Kotlin, described_by, work)?;
    let mut sources = Vec::new();
    collect(work, &mut sources)?;
    at_path(out, std::fs::create_dir_all(out))?;
    let jar = out.join(concat!("layshaft-", env!("CARGO_PKG_VERSION"), ".jar"));
    compile(&sources, &[], &jar)?;
    let name = library.file_name().unwrap_or_default().to_string_lossy();
    let mut add = program(needs::base_python()?);
    add.args(["-c", ADD]).arg(&jar).arg(library).arg(format!("{}/{name}", jna_folder()));
    run(&mut add)?;
    Ok(jar)
}

/// Runs the example of `bindings/README.md` and `tests/bindings/Main.kt` on the jar.
pub fn test() -> Outcome {
    let library = library()?;
    let folder = paths::made("bindings/kotlin");
    fresh_folder(&folder)?;
    let jar = jar(&library, &library, &folder.join("sources"), &folder)?;

    let example = examples::of("kotlin")?;
    let script = folder.join("Example.kt");
    at_path(&script, std::fs::write(&script, &example.script))?;
    let mut sources = ["Main.kt", "Vectors.kt"].map(|name| paths::at("tests/bindings").join(name)).to_vec();
    sources.push(script);
    let classes = folder.join("classes");
    let [standard, reflection] =
        ["kotlin-stdlib.jar", "kotlin-reflect.jar"].map(|name| compiler().join("lib").join(name));
    compile(&sources, &[&jar, &reflection], &classes)?;

    let java = |main: &str| {
        let mut java = program("java");
        java.arg("-cp").arg(class_path(&[&classes, &jar, &standard, &reflection, Path::new(needs::JNA)])).arg(main);
        // With it, error texts would carry a backtrace.
        java.env_remove("RUST_BACKTRACE");
        java
    };
    example.check(&mut java("ExampleKt"), &folder.join("run"))?;
    run(java("MainKt").arg(paths::at("fixtures/vectors")))
}

fn compiler() -> PathBuf {
    paths::at(COMPILER)
}

/// Compiles `sources` into a jar or a folder.
fn compile(sources: &[PathBuf], libraries: &[&Path], into: &Path) -> Outcome {
    needs::java()?;
    needs::npm_packages("tests/bindings")?;
    let mut compile = program("bash");
    // The compiler comes out of the npm package without the mark that lets it be run directly.
    compile.arg(compiler().join("bin/kotlinc")).args(["-nowarn", "-jvm-target", "17", "-cp"]);
    compile.arg(class_path(&[libraries, &[Path::new(needs::JNA)]].concat())).arg("-d").arg(into).args(sources);
    // The compiler lives for less than a minute: the quick half of Java's own compiler serves it best.
    compile.env("JAVA_OPTS", "-Xmx1500m -XX:TieredStopAtLevel=1 -XX:+UseSerialGC");
    run(&mut compile)
}

/// Where JNA looks for a library of this machine inside a jar.
fn jna_folder() -> String {
    let system = match std::env::consts::OS {
        "macos" => "darwin",
        "windows" => "win32",
        other => other,
    };
    let processor = match std::env::consts::ARCH {
        "x86_64" => "x86-64",
        other => other,
    };
    format!("{system}-{processor}")
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
