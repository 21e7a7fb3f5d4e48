//! The modules of `core`, read from its source: which file each is in, what it defines, and what it passes on.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use syn::{Attribute, Item, Meta, UseTree, Visibility};

/// A `use` line with one name, as written.
pub struct Import {
    /// The path, its last segment the name (or `*`).
    pub path: Vec<String>,
    /// Whether others see the name too.
    pub passed_on: bool,
}

/// A module; inline modules share the file of the one around them.
#[derive(Default)]
pub struct Module {
    /// The module around it.
    pub parent: Option<usize>,
    /// Its file, as a place in [`House::files`].
    pub file: usize,
    /// Modules inside it.
    pub children: BTreeMap<String, usize>,
    /// Names that it defines itself.
    pub names: BTreeSet<String>,
    /// Names that it takes in or passes on.
    pub imports: BTreeMap<String, Import>,
    /// Modules from which it takes everything in.
    pub globs: Vec<Vec<String>>,
    /// What it is made of, without `use`, `mod` and tests.
    pub items: Vec<Item>,
}

/// What a path leads to.
#[derive(Clone, PartialEq)]
pub enum Target {
    /// A module.
    Module(usize),
    /// A name, the module that defines it, and what follows in the path.
    Name(usize, String, Vec<String>),
}

/// All modules of a crate.
#[derive(Default)]
pub struct House {
    /// Files below `src`, as `plan/slack.rs`.
    pub files: Vec<String>,
    /// Modules; the first is the root.
    pub modules: Vec<Module>,
}

/// Whether code is there only for tests.
pub fn only_for_tests(attributes: &[Attribute]) -> bool {
    attributes.iter().any(|attribute| match &attribute.meta {
        Meta::List(list) => list.path.is_ident("cfg") && list.tokens.to_string() == "test",
        Meta::Path(path) => path.is_ident("test"),
        Meta::NameValue(_) => false,
    })
}

/// Each name of a `use` line with its path and the name that it goes by here.
pub fn leaves(tree: &UseTree, before: &[String], found: &mut Vec<(Vec<String>, String)>) {
    let with = |name: &syn::Ident| [before, &[name.to_string()]].concat();
    let mut leaf = |name: &syn::Ident, here: &syn::Ident| {
        // `x::{self}` means `x`.
        let path = if name == "self" && !before.is_empty() { before.to_vec() } else { with(name) };
        let here = if here == "self" { path.last().cloned().unwrap_or_default() } else { here.to_string() };
        found.push((path, here));
    };
    match tree {
        UseTree::Path(path) => leaves(&path.tree, &with(&path.ident), found),
        UseTree::Name(name) => leaf(&name.ident, &name.ident),
        UseTree::Rename(renamed) => leaf(&renamed.ident, &renamed.rename),
        UseTree::Glob(_) => found.push(([before, &["*".to_owned()]].concat(), "*".to_owned())),
        UseTree::Group(group) => group.items.iter().for_each(|item| leaves(item, before, found)),
    }
}

fn name_of(item: &Item) -> Option<String> {
    Some(match item {
        Item::Const(item) => item.ident.to_string(),
        Item::Enum(item) => item.ident.to_string(),
        Item::Fn(item) => item.sig.ident.to_string(),
        Item::Static(item) => item.ident.to_string(),
        Item::Struct(item) => item.ident.to_string(),
        Item::Trait(item) => item.ident.to_string(),
        Item::Type(item) => item.ident.to_string(),
        Item::Macro(item) => item.ident.as_ref()?.to_string(),
        _ => return None,
    })
}

fn attributes_of(item: &Item) -> &[Attribute] {
    match item {
        Item::Const(item) => &item.attrs,
        Item::Enum(item) => &item.attrs,
        Item::Fn(item) => &item.attrs,
        Item::Impl(item) => &item.attrs,
        Item::Macro(item) => &item.attrs,
        Item::Mod(item) => &item.attrs,
        Item::Static(item) => &item.attrs,
        Item::Struct(item) => &item.attrs,
        Item::Trait(item) => &item.attrs,
        Item::Type(item) => &item.attrs,
        Item::Use(item) => &item.attrs,
        _ => &[],
    }
}

impl House {
    /// Reads the crate whose sources lie in a folder.
    pub fn read(src: &Path) -> House {
        let mut house = House::default();
        house.read_file(src, &src.join("lib.rs"), None);
        house
    }

    fn read_file(&mut self, src: &Path, file: &Path, parent: Option<usize>) -> usize {
        let text = std::fs::read_to_string(file).unwrap_or_else(|error| panic!("{}: {error}", file.display()));
        self.files.push(file.strip_prefix(src).unwrap().to_string_lossy().into_owned());
        let items = syn::parse_file(&text).unwrap().items;
        let stem = file.file_stem().unwrap().to_string_lossy().into_owned();
        let folder = file.parent().unwrap().to_path_buf();
        let inside = if ["mod", "lib"].contains(&stem.as_str()) { folder } else { folder.join(stem) };
        self.read_items(src, &inside, self.files.len() - 1, items, parent)
    }

    fn read_items(&mut self, src: &Path, inside: &Path, file: usize, items: Vec<Item>, parent: Option<usize>) -> usize {
        let at = self.modules.len();
        self.modules.push(Module { parent, file, ..Module::default() });
        for item in items {
            if only_for_tests(attributes_of(&item)) {
                continue;
            }
            self.modules[at].names.extend(name_of(&item));
            match item {
                Item::Use(line) => self.take_in(at, &line.vis, &line.tree),
                Item::Mod(module) => {
                    let name = module.ident.to_string();
                    let child = match module.content {
                        Some((_, items)) => self.read_items(src, &inside.join(&name), file, items, Some(at)),
                        None => self.read_file(src, &file_of(inside, &name), Some(at)),
                    };
                    self.modules[at].children.insert(name, child);
                }
                item => self.modules[at].items.push(item),
            }
        }
        at
    }

    fn take_in(&mut self, at: usize, seen_by: &Visibility, tree: &UseTree) {
        let mut found = Vec::new();
        leaves(tree, &[], &mut found);
        let passed_on = !matches!(seen_by, Visibility::Inherited);
        for (path, here) in found {
            if here == "*" {
                self.modules[at].globs.push(path[..path.len() - 1].to_vec());
            } else {
                self.modules[at].imports.insert(here, Import { path, passed_on });
            }
        }
    }

    /// Everything that a path may lead to, seen from a module; empty when it leaves the crate.
    pub fn targets(&self, from: usize, path: &[String], depth: usize) -> Vec<Target> {
        let Some((first, mut rest)) = path.split_first().filter(|_| depth < 16) else { return Vec::new() };
        let mut at = from;
        match first.as_str() {
            "crate" => at = 0,
            "self" => {}
            "super" => {
                at = self.modules[from].parent.unwrap_or(0);
                while rest.first().is_some_and(|next| next == "super") {
                    at = self.modules[at].parent.unwrap_or(0);
                    rest = &rest[1..];
                }
            }
            _ => rest = path,
        }
        self.below(at, rest, depth)
    }

    fn below(&self, at: usize, path: &[String], depth: usize) -> Vec<Target> {
        let Some((name, rest)) = path.split_first() else { return vec![Target::Module(at)] };
        let module = &self.modules[at];
        let mut found = Vec::new();
        if let Some(child) = module.children.get(name) {
            found.extend(self.below(*child, rest, depth));
            // A function may have the name of a module; a path that goes on means the module.
            if !rest.is_empty() && !found.is_empty() {
                return found;
            }
        }
        if module.names.contains(name) {
            found.push(Target::Name(at, name.clone(), rest.to_vec()));
        }
        if let Some(import) = module.imports.get(name).filter(|import| import.path != path) {
            for target in self.targets(at, &import.path, depth + 1) {
                match target {
                    Target::Module(there) => found.extend(self.below(there, rest, depth + 1)),
                    Target::Name(there, name, after) => {
                        found.push(Target::Name(there, name, [&after, rest].concat()));
                    }
                }
            }
        }
        if found.is_empty() {
            for glob in &module.globs {
                for target in self.targets(at, glob, depth + 1) {
                    if let Target::Module(there) = target
                        && there != at
                    {
                        found.extend(self.below(there, path, depth + 1));
                    }
                }
            }
        }
        // Names that a macro of the file defines are not seen; they count as the file's own.
        let made_by_macro = module.children.is_empty() && at != 0 && depth > 0 || at != 0 && found.is_empty();
        if found.is_empty() && made_by_macro && module.items.iter().any(is_macro_call) {
            found.push(Target::Name(at, name.clone(), rest.to_vec()));
        }
        found.dedup();
        found
    }
}

fn is_macro_call(item: &Item) -> bool {
    matches!(item, Item::Macro(call) if call.ident.is_none())
}

fn file_of(inside: &Path, name: &str) -> PathBuf {
    let flat = inside.join(format!("{name}.rs"));
    if flat.exists() { flat } else { inside.join(name).join("mod.rs") }
}
