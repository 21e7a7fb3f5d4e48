//! What of the ready-made jobs and packages is offered for a bike, and why something is not.

use layshaft_wire::wire;

use super::jobs::{ReadyMade, ready_made};
use super::packages::{Package, packages};
use super::suits::Fit;
use crate::message::Message;
use crate::record::Bike;

/// Whether a ready-made job is offered.
#[wire]
pub enum OfferState {
    /// It is offered.
    Offered,
    /// It is in the plan already, open or done.
    InPlan,
    /// It does not suit the bike.
    Unsuited,
}

/// A ready-made job as it is offered for the bike.
#[wire]
pub struct JobOffer {
    /// The job.
    pub ready_made: ReadyMade,
    /// Whether it is offered.
    pub state: OfferState,
    /// Why it does not suit, or on what that depends.
    pub why: Option<Message>,
}

/// A job of a package.
#[wire]
pub struct PackageJob {
    /// Id of the ready-made job.
    pub id: String,
    /// What is done.
    pub title: String,
    /// Whether the package brings it.
    pub state: OfferState,
    /// Why it does not suit, or on what that depends.
    pub why: Option<Message>,
}

/// Ready-made jobs that are taken together.
#[wire]
pub struct PackageOffer {
    /// Id.
    pub id: String,
    /// What it is called.
    pub title: String,
    /// What it is for, in one sentence.
    pub purpose: String,
    /// Its jobs, in the order of a rebuild.
    pub jobs: Vec<PackageJob>,
}

/// Every ready-made job as it is offered for a bike, in the order of a rebuild.
pub fn job_offers(bike: &Bike) -> Vec<JobOffer> {
    ready_made().into_iter().map(|ready| offer(bike, ready)).collect()
}

/// Every package as it is offered for a bike.
pub fn package_offers(bike: &Bike) -> Vec<PackageOffer> {
    let offers = job_offers(bike);
    packages().into_iter().map(|package| of_package(&offers, package)).collect()
}

fn of_package(offers: &[JobOffer], Package { id, title, purpose, jobs }: Package) -> PackageOffer {
    let job = |mark: &String| {
        let JobOffer { ready_made, state, why } = offers.iter().find(|offer| offer.ready_made.id == *mark)?;
        let title = ready_made.job.title.clone();
        Some(PackageJob { id: mark.clone(), title, state: *state, why: why.clone() })
    };
    PackageOffer { id, title, purpose, jobs: jobs.iter().filter_map(job).collect() }
}

fn offer(bike: &Bike, ready_made: ReadyMade) -> JobOffer {
    let in_plan = bike.jobs.values().any(|job| job.ready_made.as_ref() == Some(&ready_made.id));
    let (state, why) = match ready_made.suits.on(bike) {
        _ if in_plan => (OfferState::InPlan, None),
        Fit::Suits => (OfferState::Offered, None),
        Fit::Depends(why) => (OfferState::Offered, Some(why.into())),
        Fit::Not(why) => (OfferState::Unsuited, Some(why.into())),
    };
    JobOffer { ready_made, state, why }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ready_made::ready_made_job;
    use crate::record::{BrakeKind, Cooling, Job};

    fn state(bike: &Bike, id: &str) -> (OfferState, bool) {
        let offer = offer(bike, ready_made_job(id).unwrap());
        (offer.state, offer.why.is_some())
    }

    #[test]
    fn a_job_is_offered_by_what_the_bike_is_and_what_is_in_the_plan() {
        let mut bike = Bike::default();
        assert_eq!(state(&bike, "caliper-rebuild"), (OfferState::Offered, true), "nobody knows yet");
        bike.fitted.front_brake.brake = Some(BrakeKind::Drum);
        bike.fitted.rear_brake.brake = Some(BrakeKind::Drum);
        bike.identity.cooling = Some(Cooling::Air);
        assert_eq!(state(&bike, "caliper-rebuild"), (OfferState::Unsuited, true));
        assert_eq!(state(&bike, "cooling"), (OfferState::Unsuited, true));
        assert_eq!(state(&bike, "drum-shoes"), (OfferState::Offered, false));
        let there = Job { ready_made: Some("drum-shoes".to_owned()), ..Job::default() };
        bike.jobs.insert("shoes".to_owned(), there);
        assert_eq!(state(&bike, "drum-shoes"), (OfferState::InPlan, false));
    }
}
