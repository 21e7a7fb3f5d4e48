//! The drawing of small made-up crates: what it has to see, and what it has to leave out.

use tempfile::TempDir;

use super::Drawn;
use super::graph::circles;

/// Every edge of a crate of these files below `src`, as “from knows to by names”.
fn edges(files: &[(&str, &str)]) -> Vec<String> {
    told(&drawn(files).1)
}

fn told(drawn: &Drawn) -> Vec<String> {
    drawn.told(|_, _| true).lines().map(|line| line.trim().to_owned()).collect()
}

fn drawn(files: &[(&str, &str)]) -> (TempDir, Drawn) {
    let folder = TempDir::new().unwrap();
    for (name, text) in files {
        let file = folder.path().join(name);
        std::fs::create_dir_all(file.parent().unwrap()).unwrap();
        std::fs::write(file, text).unwrap();
    }
    let drawn = Drawn::of(folder.path());
    (folder, drawn)
}

#[test]
fn a_name_that_is_passed_on_leads_to_the_file_that_defines_it() {
    let found = edges(&[
        ("lib.rs", "pub mod low; pub mod high;"),
        ("low/mod.rs", "mod a; pub use a::{A, f};"),
        ("low/a.rs", "pub struct A; pub fn f() {}"),
        ("high.rs", "use crate::low::{self, A}; pub fn g(_: A) { low::f() }"),
    ]);
    assert_eq!(found, ["high.rs knows low/mod.rs by crate::low", "high.rs knows low/a.rs by A, f"]);
}

#[test]
fn paths_in_types_expressions_and_macros_count_and_tests_do_not() {
    let found = edges(&[
        ("lib.rs", "mod a; mod b; mod c; mod d;"),
        ("a.rs", "pub fn x(y: crate::b::B) -> String { format!(\"{:?}\", crate::c::c(y)) }"),
        ("b.rs", "pub struct B; #[cfg(test)] mod tests { use crate::d::D; }"),
        ("c.rs", "pub fn c<T>(t: T) -> T { t }"),
        ("d.rs", "pub struct D; #[cfg(test)] fn only_here() { crate::c::c(1); }"),
    ]);
    assert_eq!(found, ["a.rs knows b.rs by B", "a.rs knows c.rs by c"]);
}

#[test]
fn a_method_that_another_file_adds_leads_to_that_file() {
    let found = edges(&[
        ("lib.rs", "mod low; mod high; mod between;"),
        ("low.rs", "pub struct Low; impl Low { pub fn own(&self) {} }"),
        ("high.rs", "use crate::low::Low; impl Low { pub fn added(&self) {} }"),
        ("between.rs", "pub fn f(low: &crate::low::Low) { low.own(); low.added() }"),
    ]);
    let expected =
        ["high.rs knows low.rs by Low", "between.rs knows low.rs by Low", "between.rs knows high.rs by .added()"];
    assert_eq!(found, expected);
}

#[test]
fn two_that_know_each_other_by_a_third_are_a_circle() {
    let (_folder, drawn) = drawn(&[
        ("lib.rs", "mod a; mod b; mod c; mod d;"),
        ("a.rs", "pub use crate::b::B; pub struct A;"),
        ("b.rs", "pub struct B(super::c::C);"),
        ("c.rs", "pub struct C; pub fn c() -> crate::a::A { todo!() }"),
        ("d.rs", "use crate::a::A; pub struct D(A);"),
    ]);
    assert_eq!(circles(&drawn.edges, |file| drawn.area(file)), [["a", "b", "c"]]);
}
