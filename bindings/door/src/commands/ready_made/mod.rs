//! Ready-made jobs and packages of them: each finds its place among the jobs that are there.

mod placing;
mod put_right;
mod want_part;

use layshaft_core::error::{Refusal, Refused};
use layshaft_core::message::Message;
use layshaft_core::ready_made::{OfferState, PackageJob, PackageOffer, package_offers, ready_made};

use self::placing::Placing;
use crate::Bench;
use crate::act::{Act, Call};
use crate::bench::unknown;
use crate::command::{AddPackage, AddReadyMade};
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

impl Act for AddPackage {
    /// Adds what suits and is not there yet, in one transaction.
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        bench.open_bike_id()?;
        let offers = package_offers(&bench.bike);
        let Some(package) = offers.into_iter().find(|offer| offer.id == self.package) else {
            return Err(unknown_in("package", DoorMessage::WhatPackage, &self.package));
        };
        let wanted = self.wanted(&package)?;
        let known = ready_made();
        let mut placing = Placing::among(&bench.bike, &known);
        for found in known.iter().filter(|ready| wanted.contains(&ready.id.as_str())) {
            placing.add(format!("{}-{}", call.id, found.id), found);
        }
        let (notes, edits) = (placing.notes(), placing.edits(bench)?);
        Ok(Writing { notes, ..Writing::of(edits) })
    }
}

impl AddPackage {
    /// The jobs that are left to be added, or why there are none.
    fn wanted<'a>(&self, package: &'a PackageOffer) -> Result<Vec<&'a str>, Refusal> {
        let leave_out = self.leave_out.as_deref().unwrap_or_default();
        if let Some(stray) = leave_out.iter().find(|id| package.jobs.iter().all(|job| job.id != **id)) {
            return Err(unknown_in("leaveOut", DoorMessage::WhatPackageJob, stray));
        }
        let offered: Vec<&PackageJob> = package.jobs.iter().filter(|job| job.state == OfferState::Offered).collect();
        let wanted: Vec<&str> =
            offered.iter().map(|job| job.id.as_str()).filter(|id| !leave_out.iter().any(|left| left == id)).collect();
        let title = package.title.clone();
        let (field, reason) = match (offered.is_empty(), wanted.is_empty()) {
            (true, _) => ("package", DoorMessage::PackageIsThere { package: title }),
            (_, true) => ("leaveOut", DoorMessage::PackageLeftOut { package: title }),
            _ => return Ok(wanted),
        };
        Err(Refused::Conflict { field: field.to_owned(), reason: reason.into() }.into())
    }
}

/// A refusal of an id that is not known, at its field.
fn unknown_in(field: &str, what: impl Into<Message>, id: &str) -> Refusal {
    Refusal { field: Some(field.to_owned()), ..unknown(what, id) }
}
