//! Declares the three commands of the window, so that each needs its own permission.

fn main() {
    // The pages become part of the program, so it is built anew when they were.
    println!("cargo::rerun-if-changed=../ui/dist");
    let commands = tauri_build::AppManifest::new().commands(&["act", "ask", "use_language"]);
    let attributes = tauri_build::Attributes::new().app_manifest(commands);
    if let Err(error) = tauri_build::try_build(attributes) {
        println!("cargo::error={error:#}");
    }
}
