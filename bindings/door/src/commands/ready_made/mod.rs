//! Ready-made jobs and packages of them: each finds its place among the jobs that are there.

mod coats;
mod placing;
mod put_right;
mod want_part;

use layshaft_core::error::{Code, Refusal, Refused};
use layshaft_core::message::{List, ListStyle, Message};
use layshaft_core::ready_made::{OfferState, PackageJob, PackageOffer, package_offers, ready_made};

use self::placing::Placing;
use crate::Bench;
use crate::act::{Act, Call};
use crate::bench::unknown;
use crate::command::{AddPackages, AddReadyMade};
use crate::message::DoorMessage;
use crate::write::Writing;

impl Act for AddReadyMade {
    /// Adds the job behind those of the bike that come before it, and before those that come after it.
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let known = ready_made();
        let Some(found) = known.iter().find(|ready| ready.id == self.ready_made) else {
            return Err(unknown_in("readyMade", DoorMessage::WhatReadyMade, &self.ready_made));
        };
        let mut placing = Placing::among(&bench.bike, &known);
        placing.add(call.id.to_owned(), found);
        let (notes, edits) = (placing.notes(), placing.edits(bench)?);
        Ok(Writing { notes, ..Writing::making(call.id, edits) })
    }
}

impl Act for AddPackages {
    /// Adds what suits and is not there yet, in one transaction.
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        bench.open_bike_id()?;
        let packages = self.named(package_offers(&bench.bike))?;
        let wanted = self.wanted(&packages)?;
        let known = ready_made();
        let mut placing = Placing::among(&bench.bike, &known);
        for found in known.iter().filter(|ready| wanted.contains(&ready.id.as_str())) {
            placing.add(format!("{}-{}", call.id, found.id), found);
        }
        let (notes, edits) = (placing.notes(), placing.edits(bench)?);
        Ok(Writing { notes, ..Writing::of(edits) })
    }
}

impl AddPackages {
    /// The packages that are meant, or which of them is not there.
    fn named(&self, offers: Vec<PackageOffer>) -> Result<Vec<PackageOffer>, Refusal> {
        let unknown = self.packages.iter().find(|id| offers.iter().all(|offer| offer.id != **id));
        match (unknown, self.packages.is_empty()) {
            (Some(id), _) => Err(unknown_in("packages", DoorMessage::WhatPackage, id)),
            (None, true) => Err(Refusal {
                field: Some("packages".to_owned()),
                ..Refusal::new(Code::Missing, DoorMessage::NoPackageNamed)
            }),
            _ => Ok(offers.into_iter().filter(|offer| self.packages.contains(&offer.id)).collect()),
        }
    }

    /// The jobs that are left to be added, or why there are none.
    fn wanted<'a>(&self, packages: &'a [PackageOffer]) -> Result<Vec<&'a str>, Refusal> {
        let leave_out = self.leave_out.as_deref().unwrap_or_default();
        let all = || packages.iter().flat_map(|package| &package.jobs);
        if let Some(stray) = leave_out.iter().find(|id| all().all(|job| job.id != **id)) {
            return Err(unknown_in("leaveOut", DoorMessage::WhatPackageJob, stray));
        }
        let offered: Vec<&PackageJob> = all().filter(|job| job.state == OfferState::Offered).collect();
        let wanted: Vec<&str> =
            offered.iter().map(|job| job.id.as_str()).filter(|id| !leave_out.iter().any(|left| left == id)).collect();
        let titles = || List(ListStyle::And, packages.iter().map(|one| Message::as_entered(&one.title)).collect());
        let (field, reason) = match (offered.is_empty(), wanted.is_empty()) {
            (true, _) => ("packages", DoorMessage::PackageIsThere { packages: titles() }),
            (_, true) => ("leaveOut", DoorMessage::PackageLeftOut { packages: titles() }),
            _ => return Ok(wanted),
        };
        Err(Refused::Conflict { field: field.to_owned(), reason: reason.into() }.into())
    }
}

/// A refusal of an id that is not known, at its field.
fn unknown_in(field: &str, what: impl Into<Message>, id: &str) -> Refusal {
    Refusal { field: Some(field.to_owned()), ..unknown(what, id) }
}
