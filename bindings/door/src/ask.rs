//! `ask`: one method for each query. The areas of the trade answer; this file only hands them the open bike.

use layshaft_core::error::Refusal;
use layshaft_core::plan::plan_answer;
use layshaft_core::record::{Delivery, ElectricalSystem, Job, JobPlace, JobReason, record_cards};
use layshaft_core::time::Moment;
use layshaft_core::{
    bounds, brakes, coating, electrical, events, fasteners, faults, fluids, gearing, handbook, harness, inspection,
    ready_made, ripple, today, tyres,
};

use crate::Bench;
use crate::bench::no_such;
use crate::found::{found, name_of};
use crate::query::*;

impl Bench {
    /// Accepted ranges, and what records are called.
    pub fn tables(&self, _: &BareAsk, _: &Moment) -> Result<TablesAnswer, Refusal> {
        let bounds = bounds::ALL.iter().map(bounds::Bound::card).collect();
        let systems = ElectricalSystem::ALL.map(ElectricalSystem::card).to_vec();
        Ok(TablesAnswer { bounds, records: record_cards(), systems, usual_delivery: Delivery::usual() })
    }

    /// What to do next, what cures, when the bike will be ready.
    pub fn today(&self, ask: &TodayAsk, moment: &Moment) -> Result<TodayAnswer, Refusal> {
        self.open_bike_id()?;
        Ok(today::today_answer(&self.bike, ask, moment, &self.planned.schedule(&self.bike, moment, false))?)
    }

    /// The jobs on the calendar.
    pub fn plan(&self, ask: &PlanAsk, moment: &Moment) -> Result<PlanAnswer, Refusal> {
        self.open_bike_id()?;
        let with_odds = ask.how_sure == Some(true);
        Ok(plan_answer(&self.bike, ask, moment, &self.planned.schedule(&self.bike, moment, with_odds))?)
    }

    /// One job at the bench.
    pub fn job(&self, ask: &IdAsk, moment: &Moment) -> Result<JobAnswer, Refusal> {
        // Out of the bike: there it follows only what is there.
        let job = self.bike.jobs.get(&ask.id).cloned().ok_or_else(|| no_such::<Job>(&ask.id))?;
        let scheduled = self.planned.schedule(&self.bike, moment, false);
        let row = scheduled.rows.iter().find(|row| row.job == ask.id).cloned();
        let coats =
            self.bike.coats.iter().filter(|(_, coat)| coat.job.as_deref() == Some(&ask.id) && coat.ended_ms.is_none());
        let cures = coats
            .map(|(id, _)| {
                let ask = CureAsk { coat: Some(id.clone()), ..CureAsk::default() };
                coating::cure_answer(&self.bike, &ask, moment)
            })
            .collect::<Result<_, _>>()?;
        let ready = job.ready_made.as_deref().and_then(ready_made::ready_made_job);
        let process = coating::process_of_job(&self.bike, &ask.id, moment);
        let in_coats = ready.as_ref().is_some_and(|ready| !ready.coats.is_empty());
        let paints = process.is_some() || in_coats || job.place == Some(JobPlace::SprayPlace);
        let (supplies, mut lays) = ready.map(|ready| (ready.supplies, ready.lays)).unwrap_or_default();
        if let Some(product) = job.wait.as_ref().and_then(|wait| wait.product.clone()) {
            lays.retain(|name| *name != product);
            lays.insert(0, product);
        }
        let (id, tools) = (ask.id.clone(), self.tools_of(&job));
        let minutes_since_begun = job.minutes_since_begun(moment.now_ms);
        let card = |reason: &JobReason| Some(ReasonCard { reason: reason.clone(), name: name_of(&self.bike, reason)? });
        let reasons = job.reasons.iter().filter_map(card).collect();
        Ok(JobAnswer { id, tools, minutes_since_begun, job, row, cures, lays, supplies, process, paints, reasons })
    }

    /// What came of what was found.
    pub fn found(&self, ask: &FoundAsk, moment: &Moment) -> Result<FoundAnswer, Refusal> {
        self.open_bike_id()?;
        Ok(FoundAnswer { found: ask.reasons.iter().filter_map(|reason| found(&self.bike, reason, moment)).collect() })
    }

    /// The tools of a job, each with the part that stands for it where it is not at hand.
    pub(crate) fn tools_of(&self, job: &layshaft_core::record::Job) -> Vec<JobTool> {
        let ready = || job.ready_made.as_deref().and_then(ready_made::ready_made_job);
        let names = job.tools.clone().or_else(|| Some(ready()?.tools)).unwrap_or_default();
        let stands_for = |name: &str| {
            let parts = job.parts.iter().filter_map(|id| self.bike.parts.get_key_value(id));
            parts.into_iter().find(|(_, part)| part.title == name)
        };
        let tool = |name: String| {
            let (part, state) = stands_for(&name).map(|(id, part)| (id.clone(), part.state)).unzip();
            JobTool { name, part, state }
        };
        names.into_iter().map(tool).collect()
    }

    /// Jobs and packages that can be added as they are, and what suits the bike.
    pub fn ready_made(&self, _: &BareAsk, _: &Moment) -> Result<ReadyMadeAnswer, Refusal> {
        let (jobs, packages) = (ready_made::job_offers(&self.bike), ready_made::package_offers(&self.bike));
        Ok(ReadyMadeAnswer { jobs, packages })
    }

    /// What a bike is started from: kinds to choose from, usual weeks.
    pub fn starting(&self, _: &BareAsk, _: &Moment) -> Result<StartingAnswer, Refusal> {
        Ok(ready_made::starting_answer(&self.bike))
    }

    /// Ratios, speeds, chain and speedometer.
    pub fn gearing(&self, ask: &GearingAsk, _: &Moment) -> Result<GearingAnswer, Refusal> {
        Ok(gearing::gearing_answer(&self.bike, ask)?)
    }

    /// Every pair of sprockets that the bike takes, best first.
    pub fn sprocket_choice(&self, ask: &SprocketChoiceAsk, _: &Moment) -> Result<SprocketChoiceAnswer, Refusal> {
        Ok(gearing::sprocket_choice_answer(&self.bike, ask)?)
    }

    /// How far a chain is worn, its tight spot, where the axle goes.
    pub fn chain_wear(&self, ask: &ChainWearAsk, _: &Moment) -> Result<ChainWearAnswer, Refusal> {
        Ok(gearing::chain_wear_answer(&self.bike, ask)?)
    }

    /// Thrust in each gear, resistance, top speed.
    pub fn thrust(&self, ask: &ThrustAsk, _: &Moment) -> Result<ThrustAnswer, Refusal> {
        Ok(gearing::thrust_answer(&self.bike, ask)?)
    }

    /// Electrical load against output.
    pub fn load(&self, ask: &LoadAsk, _: &Moment) -> Result<LoadAnswer, Refusal> {
        Ok(electrical::load_answer(&self.bike, ask)?)
    }

    /// A brake: pressure, clamp, lever travel, stopping.
    pub fn brakes(&self, ask: &BrakeAsk, _: &Moment) -> Result<BrakeAnswer, Refusal> {
        Ok(brakes::brake_answer(&self.bike, ask)?)
    }

    /// A tyre: its sidewall in words, load, speed, age, and what another one changes.
    pub fn tyres(&self, ask: &TyreAsk, moment: &Moment) -> Result<TyreAnswer, Refusal> {
        Ok(tyres::tyre_answer(&self.bike, ask, moment, |spec| gearing::derived_top_speed(&self.bike, spec))?)
    }

    /// A thread: which one, what torque, how deep.
    pub fn fasteners(&self, ask: &FastenerAsk, _: &Moment) -> Result<FastenerAnswer, Refusal> {
        Ok(fasteners::fastener_answer(ask)?)
    }

    /// A filling, poured with the cups at hand.
    pub fn filling(&self, ask: &FillAsk, _: &Moment) -> Result<FillAnswer, Refusal> {
        Ok(fluids::fill_answer(&self.bike, ask)?)
    }

    /// Premix, two-part ratios, paint for an area.
    pub fn mixing(&self, ask: &MixAsk, _: &Moment) -> Result<MixAnswer, Refusal> {
        Ok(fluids::mix_answer(ask)?)
    }

    /// A wire and its fuse: drop, rating, the smallest that serve.
    pub fn wire(&self, ask: &WireAsk, _: &Moment) -> Result<WireAnswer, Refusal> {
        Ok(electrical::wire_answer(ask)?)
    }

    /// A lamp, flasher and pilot: standard, fitted, proposed and the cures.
    pub fn lamps(&self, ask: &LampsAsk, _: &Moment) -> Result<LampAnswer, Refusal> {
        Ok(harness::lamp_answer(&self.bike, ask)?)
    }

    /// What lamps, horn and ignition usually draw.
    pub fn usual_consumers(&self, _: &BareAsk, _: &Moment) -> Result<UsualAnswer, Refusal> {
        Ok(electrical::usual_answer(&self.bike))
    }

    /// The charging tests.
    pub fn charging(&self, ask: &ChargingAsk, _: &Moment) -> Result<ChargingAnswer, Refusal> {
        Ok(electrical::charging_answer(&self.bike, ask)?)
    }

    /// A circuit of the bike.
    pub fn harness(&self, ask: &HarnessAsk, _: &Moment) -> Result<HarnessAnswer, Refusal> {
        Ok(harness::harness_answer(&self.bike, ask)?)
    }

    /// A search for a fault.
    pub fn fault(&self, ask: &FaultAsk, _: &Moment) -> Result<FaultAnswer, Refusal> {
        Ok(faults::fault_answer(&self.bike, ask)?)
    }

    /// A cure.
    pub fn cure(&self, ask: &CureAsk, moment: &Moment) -> Result<CureAnswer, Refusal> {
        Ok(coating::cure_answer(&self.bike, ask, moment)?)
    }

    /// A paint job in several coats.
    pub fn process(&self, ask: &ProcessAsk, moment: &Moment) -> Result<ProcessAnswer, Refusal> {
        Ok(coating::process_answer(&self.bike, ask, moment)?)
    }

    /// A calendar file with entries in words.
    pub fn calendar(&self, ask: &CalendarAsk, moment: &Moment) -> Result<CalendarAnswer, Refusal> {
        Ok(events::calendar_answer(ask, moment))
    }

    /// What is still to come.
    pub fn alarms(&self, _: &BareAsk, moment: &Moment) -> Result<AlarmsAnswer, Refusal> {
        self.open_bike_id()?;
        Ok(events::alarms_answer(&self.bike, moment, &self.planned.schedule(&self.bike, moment, false).rows))
    }

    /// Coating products to start from.
    pub fn products(&self, _: &BareAsk, _: &Moment) -> Result<ProductsAnswer, Refusal> {
        Ok(ProductsAnswer { products: ready_made::products(), processes: coating::process_plans() })
    }

    /// The walk-through and its summary.
    pub fn inspection(&self, ask: &InspectionAsk, _: &Moment) -> Result<InspectionAnswer, Refusal> {
        self.open_bike_id()?;
        Ok(inspection::inspection_answer(&self.bike, ask)?)
    }

    /// What a proposal does to everything else.
    pub fn ripple(&self, ask: &RippleAsk, _: &Moment) -> Result<RippleAnswer, Refusal> {
        self.open_bike_id()?;
        Ok(ripple::ripple_answer(&self.bike, ask)?)
    }

    /// One formula with numbers given by hand.
    pub fn evaluate(&self, ask: &EvaluateAsk, _: &Moment) -> Result<Figures, Refusal> {
        Ok(handbook::evaluate(&ask.formula)?)
    }

    /// Every formula with its symbols, ranges and source.
    pub fn handbook(&self, _: &BareAsk, _: &Moment) -> Result<HandbookAnswer, Refusal> {
        Ok(HandbookAnswer { formulas: handbook::handbook() })
    }
}
