//! What the program brings along, to be taken over and changed: ready-made jobs, alone and in packages, kinds of bikes to
//! start from, and typical product sheets.

mod jobs;
mod kinds;
mod message;
mod needs;
mod offers;
mod packages;
mod products;
mod remedies;
mod suits;

pub use jobs::{ReadyMade, WorkKind, last_steps, ready_made, ready_made_job};
pub use kinds::{BikeKind, KindOffer, StartingAnswer, WeekOffer, starting_answer};
pub(crate) use message::{KindMessage, ReadyMadeFit, ReadyMadeSource, Remedied, WeekMessage};
pub use needs::{NeededPart, SizeOf};
pub use offers::{JobOffer, OfferState, PackageJob, PackageOffer, job_offers, package_offers};
pub use packages::{Package, packages};
pub use products::{products, source_of, typical_product};
pub(crate) use remedies::done_after;
pub use remedies::{Remedy, end_named, remedy};
pub use suits::Suits;
