//! Writes the Kotlin, Swift and Python sources from the compiled library; `cargo xtask generate` calls it.

fn main() {
    uniffi::uniffi_bindgen_main();
}
