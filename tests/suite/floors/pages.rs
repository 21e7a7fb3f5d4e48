//! The floors of the pages: what a file of `ui/src` may import, read from its `import` and `export … from` lines.

use std::collections::BTreeSet;
use std::path::{Component, Path, PathBuf};

use super::crowded;
use super::graph::{Edges, circles};

/// The folders of `ui/src`, the lowest first; each knows only what stands below it. Last the frame, which lies in no folder.
const FLOORS: [&str; 8] = ["door", "words", "app", "show", "parts", "pictures", "places", ""];

/// What the words alone read from outside `src`: the catalogue, its ids as types, and the table of units.
const CATALOGUE: [&str; 3] = ["fixtures/words/", ".build/words/", "bindings/generated/units.json"];

/// The one folder that its neighbours in a place may import.
const SHARED: &str = "shared";

/// The files of the pages, and which of them imports which.
pub struct Pages {
    /// Below `src`, in order.
    files: Vec<String>,
    edges: Edges,
    /// Imports that lead out of `src`, and those that lead to no file.
    out: Vec<(usize, String)>,
    lost: Vec<(usize, String)>,
}

impl Pages {
    /// Reads all scripts and components below a folder.
    pub fn read(src: &Path) -> Pages {
        let mut files = Vec::new();
        below(src, src, &mut files);
        files.sort();
        let mut pages = Pages { files, edges: Edges::new(), out: Vec::new(), lost: Vec::new() };
        for from in 0..pages.files.len() {
            let file = pages.files[from].clone();
            for path in imports(&std::fs::read_to_string(src.join(&file)).unwrap()) {
                pages.follow(src, from, &path);
            }
        }
        pages
    }

    fn follow(&mut self, src: &Path, from: usize, path: &str) {
        let own = Path::new(&self.files[from]).parent().unwrap().join(path.split('?').next().unwrap());
        let Some(target) = plain(&own) else { return self.out.push((from, path.to_owned())) };
        match self.files.binary_search(&target) {
            Ok(to) => drop(self.edges.entry((from, to)).or_default().insert(path.to_owned())),
            // A style sheet has no imports that matter here.
            Err(_) if src.join(&target).is_file() => {}
            Err(_) => self.lost.push((from, path.to_owned())),
        }
    }

    fn folder(&self, file: usize) -> &str {
        self.files[file].rsplit_once('/').map_or("", |(folder, _)| folder)
    }

    fn floor(&self, file: usize) -> Option<usize> {
        let first = self.folder(file).split('/').next();
        FLOORS.iter().position(|folder| Some(*folder) == first)
    }

    /// A line for each import that a function picks.
    fn told(&self, pick: impl Fn(usize, usize) -> bool) -> Vec<String> {
        let picked = self.edges.keys().filter(|(from, to)| pick(*from, *to));
        picked.map(|(from, to)| format!("{} imports {}", self.files[*from], self.files[*to])).collect()
    }

    /// Files in a folder that has no floor.
    pub fn homeless(&self) -> Vec<&str> {
        (0..self.files.len()).filter(|file| self.floor(*file).is_none()).map(|file| self.files[file].as_str()).collect()
    }

    /// Imports that go up a floor.
    pub fn upward(&self) -> Vec<String> {
        self.told(|from, to| self.floor(from).zip(self.floor(to)).is_some_and(|(from, to)| from < to))
    }

    /// Imports of a neighbour: two places know nothing of each other, nor do two rooms of a place. What they share lies in a
    /// folder of that name beside them, or on a lower floor.
    pub fn sideways(&self) -> Vec<String> {
        self.told(|from, to| {
            let (from, to) = (self.folder(from), self.folder(to));
            let mut steps = from.split('/').zip(to.split('/'));
            from.starts_with("places/")
                && to.starts_with("places/")
                && steps.find(|(one, other)| one != other).is_some_and(|(_, other)| other != SHARED)
        })
    }

    /// Folders that know each other, with the imports that make the circle.
    pub fn circles(&self) -> Vec<String> {
        let mut found = Vec::new();
        for members in circles(&self.edges, |file| self.folder(file)) {
            found.push(format!("circle of {}", members.join(", ")));
            let member = |file| members.contains(&self.folder(file));
            found.extend(self.told(|from, to| self.folder(from) != self.folder(to) && member(from) && member(to)));
        }
        found
    }

    /// Imports from outside `src` by anything but the door, and but for the words, which read their catalogue there.
    pub fn past_the_door(&self) -> Vec<String> {
        let past = self.out.iter().filter(|(from, path)| match self.folder(*from) {
            "door" => false,
            "words" => !CATALOGUE.iter().any(|read| path.contains(read)),
            _ => true,
        });
        past.map(|(from, path)| format!("{} imports {path}", self.files[*from])).collect()
    }

    /// Imports that lead to no file.
    pub fn lost(&self) -> Vec<String> {
        self.lost.iter().map(|(from, path)| format!("{} imports {path}", self.files[*from])).collect()
    }

    /// How many folders take part.
    fn folders(&self) -> usize {
        (0..self.files.len()).map(|file| self.folder(file)).collect::<BTreeSet<_>>().len()
    }
}

fn below(src: &Path, folder: &Path, found: &mut Vec<String>) {
    for entry in std::fs::read_dir(folder).unwrap().flatten() {
        let path = entry.path();
        if path.is_dir() {
            below(src, &path, found);
        } else if path.extension().is_some_and(|ending| ending == "ts" || ending == "svelte") {
            found.push(path.strip_prefix(src).unwrap().to_string_lossy().into_owned());
        }
    }
}

/// A path without `.` and `..`; none when it leads out of its root.
fn plain(path: &Path) -> Option<String> {
    let mut kept = PathBuf::new();
    for part in path.components() {
        match part {
            Component::Normal(name) => kept.push(name),
            Component::ParentDir if !kept.pop() => return None,
            _ => {}
        }
    }
    Some(kept.to_string_lossy().into_owned())
}

/// The relative paths that a script imports: `import x from './a'`, `export … from './a'`, `import './a'`, `import('./a')`,
/// `import.meta.glob<T>('./a/*')`.
/// A line of a comment is none.
fn imports(text: &str) -> Vec<String> {
    const QUOTES: [char; 2] = ['\'', '"'];
    let mut found = Vec::new();
    for line in text.lines().map(str::trim_start).filter(|line| !line.starts_with("//") && !line.starts_with('*')) {
        let mut rest = line;
        while let Some(at) =
            ["from", "import", "meta.glob"].iter().filter_map(|word| Some(rest.find(word)? + word.len())).min()
        {
            let many = rest[..at].ends_with("glob");
            rest = &rest[at..];
            let quoted = if many {
                rest.trim_start_matches(|each| !QUOTES.contains(&each))
            } else {
                rest.trim_start_matches([' ', '('])
            };
            let Some(quote) = quoted.chars().next().filter(|first| QUOTES.contains(first)) else { continue };
            let path = quoted[1..].split(quote).next().unwrap();
            if path.starts_with('.') {
                found.push(path.to_owned());
            }
        }
    }
    found
}

fn ours() -> Pages {
    let pages = Pages::read(&crate::root().join("mobile-shell/ui/src"));
    assert!(pages.files.len() > 200 && pages.edges.len() > 1_000 && pages.folders() > 30, "the search is stale");
    pages
}

fn none(found: &[impl std::fmt::Display], what: &str) {
    let lines: Vec<String> = found.iter().map(|line| format!("  {line}")).collect();
    assert!(found.is_empty(), "{what}:\n{}", lines.join("\n"));
}

#[test]
fn pages_know_only_what_stands_below_them() {
    let pages = ours();
    none(&pages.homeless(), "in a folder without a floor");
    none(&pages.upward(), "imports that go up a floor");
    none(&pages.past_the_door(), "imports from outside, which are for the door alone");
    none(&pages.lost(), "imports that lead to no file");
}

#[test]
fn no_folders_of_the_pages_know_each_other() {
    none(&ours().circles(), "circles of folders");
}

#[test]
fn a_trade_or_a_place_imports_no_other() {
    none(&ours().sideways(), "imports of a neighbour");
}

#[test]
fn no_folder_of_the_pages_has_more_files_than_one_can_look_over() {
    none(&crowded(&crate::root().join("mobile-shell/ui/src")), "too many files");
}
