//! Who knows whom: an edge for each path in the code of one file that leads to a name defined in another.

use std::collections::{BTreeMap, BTreeSet};

use petgraph::graphmap::DiGraphMap;
use syn::visit::{self, Visit};
use syn::{Item, Type};

use super::house::{House, Target, leaves, only_for_tests};

/// The edges of a crate, file to file, each with the names that make it.
pub type Edges = BTreeMap<(usize, usize), BTreeSet<String>>;

/// Draws the graph of a house.
pub fn edges(house: &House) -> Edges {
    let mut edges = Edges::new();
    let added = added_methods(house);
    for (at, module) in house.modules.iter().enumerate() {
        let is_door = house.files[module.file].ends_with("mod.rs") || house.files[module.file] == "lib.rs";
        let mut walk = Walk { house, at, added: &added, edges: &mut edges };
        for import in module.imports.values() {
            walk.lead(&import.path, import.passed_on && is_door);
        }
        for glob in &module.globs {
            walk.lead(glob, false);
        }
        for item in &module.items {
            walk.visit_item(item);
        }
    }
    edges
}

/// Methods that a file adds to a type of another file, by their name: the files that do so. A name that stands for more than
/// one thing is left out, because a call does not tell which is meant.
fn added_methods(house: &House) -> BTreeMap<String, usize> {
    let mut homes: BTreeMap<String, BTreeSet<(usize, bool)>> = BTreeMap::new();
    for (at, module) in house.modules.iter().enumerate() {
        for item in &module.items {
            let Item::Impl(block) = item else { continue };
            let Type::Path(of) = &*block.self_ty else { continue };
            let path: Vec<String> = of.path.segments.iter().map(|segment| segment.ident.to_string()).collect();
            let elsewhere = block.trait_.is_none()
                && house.targets(at, &path, 0).iter().any(|target| match target {
                    Target::Name(home, ..) => house.modules[*home].file != module.file,
                    Target::Module(_) => false,
                });
            for inner in &block.items {
                if let syn::ImplItem::Fn(method) = inner {
                    homes.entry(method.sig.ident.to_string()).or_default().insert((module.file, elsewhere));
                }
            }
        }
    }
    let only = |files: BTreeSet<(usize, bool)>| files.first().copied().filter(|_| files.len() == 1);
    homes
        .into_iter()
        .filter_map(|(name, files)| only(files).filter(|(_, elsewhere)| *elsewhere).map(|(file, _)| (name, file)))
        .collect()
}

struct Walk<'a> {
    house: &'a House,
    at: usize,
    added: &'a BTreeMap<String, usize>,
    edges: &'a mut Edges,
}

impl Walk<'_> {
    /// Follows a path to the files of the names that it may mean. What a folder passes on of its own is no edge.
    fn lead(&mut self, path: &[String], own_is_free: bool) {
        for target in self.house.targets(self.at, path, 0) {
            let (module, name) = match &target {
                Target::Module(module) => (*module, path.join("::")),
                Target::Name(module, name, rest) => {
                    if let Some(method) = rest.first().and_then(|method| self.added.get(method)) {
                        self.edge(*method, &format!("{name}::{}", rest[0]));
                    }
                    (*module, name.clone())
                }
            };
            if !(own_is_free && self.is_inside(module)) {
                self.edge(self.house.modules[module].file, &name);
            }
        }
    }

    fn is_inside(&self, module: usize) -> bool {
        let mut up = Some(module);
        while let Some(here) = up {
            if here == self.at {
                return true;
            }
            up = self.house.modules[here].parent;
        }
        false
    }

    fn edge(&mut self, to: usize, name: &str) {
        let from = self.house.modules[self.at].file;
        if from != to {
            self.edges.entry((from, to)).or_default().insert(name.to_owned());
        }
    }
}

impl<'ast> Visit<'ast> for Walk<'_> {
    fn visit_item(&mut self, item: &'ast Item) {
        visit::visit_item(self, item);
    }

    fn visit_item_fn(&mut self, item: &'ast syn::ItemFn) {
        if !only_for_tests(&item.attrs) {
            visit::visit_item_fn(self, item);
        }
    }

    fn visit_impl_item_fn(&mut self, item: &'ast syn::ImplItemFn) {
        if !only_for_tests(&item.attrs) {
            visit::visit_impl_item_fn(self, item);
        }
    }

    fn visit_item_use(&mut self, line: &'ast syn::ItemUse) {
        let mut found = Vec::new();
        leaves(&line.tree, &[], &mut found);
        for (path, _) in found {
            self.lead(path.strip_suffix(&["*".to_owned()]).unwrap_or(&path), false);
        }
    }

    fn visit_path(&mut self, path: &'ast syn::Path) {
        let names: Vec<String> = path.segments.iter().map(|segment| segment.ident.to_string()).collect();
        self.lead(&names, false);
        visit::visit_path(self, path);
    }

    fn visit_expr_method_call(&mut self, call: &'ast syn::ExprMethodCall) {
        let name = call.method.to_string();
        if let Some(file) = self.added.get(&name) {
            self.edge(*file, &format!(".{name}()"));
        }
        visit::visit_expr_method_call(self, call);
    }

    /// The inside of a macro is no syntax yet: whatever looks like a path is followed.
    fn visit_macro(&mut self, call: &'ast syn::Macro) {
        let text = call.tokens.to_string().replace(" :: ", "::").replace(" ::", "::").replace(":: ", "::");
        for word in text.split(|letter: char| !(letter.is_alphanumeric() || letter == '_' || letter == ':')) {
            let names: Vec<String> = word.split("::").filter(|name| !name.is_empty()).map(str::to_owned).collect();
            if names.len() > 1 {
                self.lead(&names, false);
            }
        }
        self.visit_path(&call.path);
    }

    fn visit_visibility(&mut self, _: &'ast syn::Visibility) {}
}

/// Circles among the groups (areas, rooms, files) that a function puts files in, each with the edges inside it.
pub fn circles<G>(edges: &Edges, group: impl Fn(usize) -> G) -> Vec<Vec<G>>
where
    G: Copy + Ord + std::hash::Hash,
{
    let pairs = edges.keys().map(|(from, to)| (group(*from), group(*to))).filter(|(from, to)| from != to);
    let graph: DiGraphMap<G, ()> = DiGraphMap::from_edges(pairs);
    let mut found: Vec<Vec<G>> = petgraph::algo::tarjan_scc(&graph);
    found.retain(|members: &Vec<G>| members.len() > 1);
    found.iter_mut().for_each(|members| members.sort());
    found.sort();
    found
}
