//! The floors of `core` and of the pages: each area knows only what stands below it, and no two rooms know each other.

mod graph;
mod house;
mod made_up;
mod made_up_pages;
mod pages;

use std::fmt::Write;
use std::path::Path;

use graph::{Edges, circles, edges};
use house::House;

/// The floors, the lowest first. Areas of one floor may know each other, as long as that makes no circle.
const FLOORS: [&[&str]; 7] = [
    &["units", "bounds", "error", "check", "message", "time", "quantity", "content"],
    &["changes"],
    &["record", "ready_made"],
    &["gearing", "tyres", "brakes", "electrical", "harness", "fasteners", "fluids", "coating"],
    &["derive", "ripple", "inspection", "faults", "plan"],
    &["events", "today"],
    &["handbook", "catalogue"],
];

/// Circles of files inside one room that are kept, with the reason.
const KEPT: [(&[&str], &str); 0] = [];

/// Most files in a room.
const MOST_FILES: usize = 16;

struct Drawn {
    house: House,
    edges: Edges,
}

impl Drawn {
    fn core() -> Drawn {
        Drawn::of(&crate::root().join("core/src"))
    }

    fn of(src: &Path) -> Drawn {
        let house = House::read(src);
        let edges = edges(&house);
        Drawn { house, edges }
    }

    fn file(&self, file: usize) -> &str {
        &self.house.files[file]
    }

    /// The area of a file: its first folder, or the file itself.
    fn area(&self, file: usize) -> &str {
        self.file(file).split('/').next().unwrap().trim_end_matches(".rs")
    }

    /// The folder of a file.
    fn room(&self, file: usize) -> &str {
        self.file(file).rsplit_once('/').map_or(self.area(file), |(folder, _)| folder)
    }

    fn floor(&self, file: usize) -> Option<usize> {
        FLOORS.iter().position(|areas| areas.contains(&self.area(file)))
    }

    /// Every edge that a function picks, one line each with the names that make it.
    fn told(&self, pick: impl Fn(usize, usize) -> bool) -> String {
        let mut text = String::new();
        for ((from, to), names) in self.edges.iter().filter(|((from, to), _)| pick(*from, *to)) {
            let names = names.iter().cloned().collect::<Vec<_>>().join(", ");
            writeln!(text, "  {} knows {} by {names}", self.file(*from), self.file(*to)).unwrap();
        }
        text
    }

    /// Circles among groups of files, with the edges inside them.
    fn circles_told<'a>(&'a self, group: impl Fn(usize) -> &'a str) -> String {
        let mut text = String::new();
        for members in circles(&self.edges, &group) {
            writeln!(text, "circle of {}", members.join(", ")).unwrap();
            text += &self.told(|from, to| {
                group(from) != group(to) && members.contains(&group(from)) && members.contains(&group(to))
            });
        }
        text
    }
}

#[test]
fn every_area_of_core_has_a_floor() {
    let drawn = Drawn::core();
    for file in (0..drawn.house.files.len()).filter(|file| drawn.file(*file) != "lib.rs") {
        assert!(drawn.floor(file).is_some(), "{} stands on no floor", drawn.file(file));
    }
}

#[test]
fn nobody_knows_what_stands_on_a_higher_floor() {
    let drawn = Drawn::core();
    let up = drawn.told(|from, to| drawn.floor(from).zip(drawn.floor(to)).is_some_and(|(from, to)| from < to));
    assert!(up.is_empty(), "edges that go up a floor:\n{up}");
}

#[test]
fn no_areas_know_each_other() {
    let drawn = Drawn::core();
    let found = drawn.circles_told(|file| drawn.area(file));
    assert!(found.is_empty(), "{found}");
}

#[test]
fn no_rooms_know_each_other() {
    let drawn = Drawn::core();
    let found = drawn.circles_told(|file| drawn.room(file));
    assert!(found.is_empty(), "{found}");
}

#[test]
fn circles_inside_a_room_have_a_reason() {
    let drawn = Drawn::core();
    let found: Vec<Vec<&str>> = circles(&drawn.edges, |file| drawn.file(file));
    for members in &found {
        let kept = KEPT.iter().find(|(files, _)| files == members);
        let reason = kept.map(|(_, reason)| *reason);
        println!("{}: {}", members.join(", "), reason.unwrap_or("no reason given"));
        assert!(reason.is_some(), "circle without a reason:\n{}", drawn.circles_told(|file| drawn.file(file)));
    }
    for (files, _) in KEPT {
        assert!(found.iter().any(|members| members == files), "no circle any more: {}", files.join(", "));
    }
}

/// Rooms below a folder with more files than one can look over.
fn crowded(src: &Path) -> Vec<String> {
    let mut found = Vec::new();
    let mut open = vec![src.to_path_buf()];
    while let Some(folder) = open.pop() {
        let inside: Vec<_> = std::fs::read_dir(&folder).unwrap().flatten().map(|entry| entry.path()).collect();
        let (folders, files): (Vec<_>, Vec<_>) = inside.into_iter().partition(|path| path.is_dir());
        open.extend(folders);
        if files.len() > MOST_FILES {
            found.push(format!("{}: {} files", folder.strip_prefix(src).unwrap().display(), files.len()));
        }
    }
    found.sort();
    found
}

#[test]
fn no_room_has_more_files_than_one_can_look_over() {
    assert_eq!(crowded(&crate::root().join("core/src")), [""; 0]);
}
