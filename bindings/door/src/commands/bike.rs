//! Starting, opening and describing bikes.

use layshaft_core::changes::Edit;
use layshaft_core::error::Refusal;
use layshaft_core::record::{BenchTime, Identity, Place};

use super::changed;
use crate::act::{Act, Call};
use crate::bench::unknown;
use crate::command::{
    BringBikeBack, DemoBike, DescribeBike, DescribePlace, LoadDemo, OpenBike, PutBikeAway, SetBenchTime, StartBike,
};
use crate::message::DoorMessage;
use crate::write::Writing;
use crate::{Bench, demo};

impl Act for StartBike {
    fn write(&self, _: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let identity = self.identity.clone().checked()?;
        let edits = layshaft_core::changes::edits("bike", &identity, None);
        Ok(Writing { project: Some(call.id.to_owned()), open: true, ..Writing::making(call.id, edits) })
    }
}

impl Act for LoadDemo {
    fn write(&self, _: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let edits = demo::edits(self.demo.unwrap_or(DemoBike::OrrinTern175), call.moment)?;
        Ok(Writing { project: Some(call.id.to_owned()), open: true, ..Writing::making(call.id, edits) })
    }
}

impl Act for OpenBike {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        on_shelf(bench, &self.bike)?;
        Ok(Writing { project: Some(self.bike.clone()), open: true, ..Writing::default() })
    }
}

impl Act for PutBikeAway {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        on_shelf(bench, &self.bike)?;
        Ok(Writing { project: Some(self.bike.clone()), ..Writing::of(vec![Edit::gone::<Identity>("bike", true)]) })
    }
}

impl Act for BringBikeBack {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        on_shelf(bench, &self.bike)?;
        let edits = vec![Edit::gone::<Identity>("bike", false)];
        Ok(Writing { project: Some(self.bike.clone()), open: true, ..Writing::of(edits) })
    }
}

impl Act for DescribeBike {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        Ok(Writing::of(changed(bench, "bike", &self.identity.clone().checked()?)))
    }
}

impl Act for DescribePlace {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        Ok(Writing::of(changed::<Place>(bench, "bike", &self.place.clone().checked()?)))
    }
}

impl Act for SetBenchTime {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        Ok(Writing::of(changed::<BenchTime>(bench, "bike", &self.bench_time.clone().checked()?)))
    }
}

fn on_shelf(bench: &Bench, id: &str) -> Result<(), Refusal> {
    match bench.bikes().iter().any(|(bike, _, _)| bike == id) {
        true => Ok(()),
        false => Err(unknown(DoorMessage::WhatBike, id)),
    }
}
