//! Packages: ready-made jobs that are taken together. They stand under `fixtures/packages`.

use serde::Deserialize;

use crate::content::Content;

/// Ready-made jobs that are taken together.
#[derive(Clone, Debug)]
pub struct Package {
    /// Id.
    pub id: String,
    /// What it is called.
    pub title: String,
    /// What it is for, in one sentence.
    pub purpose: String,
    /// Ready-made jobs, by their ids.
    pub jobs: Vec<String>,
}

/// A package as it stands in its file.
#[derive(Deserialize)]
struct PackageFile {
    title: String,
    purpose: String,
    jobs: Vec<String>,
}

/// The files of the packages, in the order in which they are shown.
const FILES: [&str; 6] = [
    "stood-for-years",
    "tyres-and-chain",
    "brakes-all-round",
    "paint-everything",
    "electrics-from-scratch",
    "before-the-inspection",
];

/// The packages, in the order in which they are shown. A file that cannot be read is left out; a test holds that all can.
///
/// ```
/// let packages = layshaft_core::ready_made::packages();
/// assert_eq!(packages[0].title, "Stood for years");
/// ```
pub fn packages() -> Vec<Package> {
    FILES.iter().filter_map(|id| read(Content::in_use(), id)).collect()
}

fn read(content: &Content, id: &str) -> Option<Package> {
    let PackageFile { title, purpose, jobs } = content.file("packages", id).ok()?;
    Some(Package { id: id.to_owned(), title, purpose, jobs })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ready_made::ready_made;

    #[test]
    fn every_file_is_read_and_listed() {
        let mut listed = FILES.to_vec();
        listed.sort_unstable();
        assert_eq!(Content::english().files("packages"), listed);
        assert_eq!(packages().len(), FILES.len());
    }

    #[test]
    fn the_jobs_of_a_package_exist_and_stand_in_the_order_of_a_rebuild() {
        let all: Vec<String> = ready_made().into_iter().map(|ready| ready.id).collect();
        for Package { id, jobs, purpose, .. } in packages() {
            let places: Vec<_> = jobs.iter().map(|job| all.iter().position(|known| known == job)).collect();
            assert!(places.iter().all(Option::is_some), "{id}: {jobs:?}");
            assert!(places.is_sorted_by(|one, next| one < next), "{id}: {jobs:?}");
            assert!(jobs.len() >= 4 && purpose.ends_with('.'), "{id}");
        }
    }
}
