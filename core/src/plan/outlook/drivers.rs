//! What holds the ready date: the jobs and parcels that do so in enough of the runs through the plan, the worst first.

use std::collections::BTreeMap;

use layshaft_wire::wire;

use crate::record::Bike;

/// So many are told.
const MOST: usize = 6;
/// Shares of the runs below this are noise to the reader.
const TELLING: f64 = 0.01;

/// What kind of thing holds the date.
#[wire]
pub enum HolderKind {
    /// A job.
    Job,
    /// A part that is not here yet.
    Parcel,
}

/// A job or a parcel that holds the date in a share of the runs.
#[wire]
pub struct Holder {
    /// Job or parcel.
    pub kind: HolderKind,
    /// Id of the job, or of the part.
    pub id: String,
    /// What it is.
    pub title: String,
    /// Share of the runs, 0 to 1.
    pub share: f64,
}

/// The holders by how often they hold the date; `jobs` and `parcels` are shares of the runs by id.
pub(crate) fn holders(bike: &Bike, jobs: &BTreeMap<&str, f64>, parcels: &BTreeMap<&str, f64>) -> Vec<Holder> {
    let holder =
        |kind, id: &str, title: &str, share| Holder { kind, id: id.to_owned(), title: title.to_owned(), share };
    let jobs =
        jobs.iter().filter_map(|(id, share)| Some(holder(HolderKind::Job, id, &bike.jobs.get(*id)?.title, *share)));
    let parcels = parcels
        .iter()
        .filter_map(|(id, share)| Some(holder(HolderKind::Parcel, id, &bike.parts.get(*id)?.title, *share)));
    let mut all: Vec<Holder> = jobs.chain(parcels).filter(|each| each.share >= TELLING).collect();
    all.sort_by(|one, other| other.share.total_cmp(&one.share));
    all.truncate(MOST);
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::tests::example::{bike, job, part};
    use crate::record::PartState;

    fn made() -> Bike {
        let titles = ["seals", "engine", "tank", "chain", "lamps", "tyre", "ride"];
        let mut made = bike(titles.iter().map(|title| job(title, 1.0, &[])).collect());
        made.parts.insert("kit".to_owned(), part("Seal kit", PartState::Ordered, None));
        made
    }

    #[test]
    fn jobs_and_parcels_stand_together_the_worst_first() {
        let list =
            holders(&made(), &BTreeMap::from([("seals", 0.4), ("engine", 0.9)]), &BTreeMap::from([("kit", 0.6)]));
        let told: Vec<(HolderKind, &str, &str, f64)> =
            list.iter().map(|each| (each.kind, each.id.as_str(), each.title.as_str(), each.share)).collect();
        assert_eq!(
            told,
            [
                (HolderKind::Job, "engine", "engine", 0.9),
                (HolderKind::Parcel, "kit", "Seal kit", 0.6),
                (HolderKind::Job, "seals", "seals", 0.4),
            ]
        );
    }

    #[test]
    fn what_holds_it_in_less_than_one_run_of_a_hundred_is_left_out() {
        let jobs = BTreeMap::from([("seals", 0.01), ("engine", 0.0099), ("tank", 0.0)]);
        let ids: Vec<String> = holders(&made(), &jobs, &BTreeMap::new()).into_iter().map(|each| each.id).collect();
        assert_eq!(ids, ["seals"]);
    }

    #[test]
    fn six_are_told_of_more() {
        let made = made();
        let jobs: BTreeMap<&str, f64> =
            made.jobs.keys().enumerate().map(|(at, id)| (id.as_str(), 0.9 - 0.1 * at as f64)).collect();
        let list = holders(&made, &jobs, &BTreeMap::from([("kit", 0.05)]));
        assert_eq!(list.len(), 6);
        assert!(list.iter().all(|each| each.share > 0.3), "the least of them are left out");
    }
}
