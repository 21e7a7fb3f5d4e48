//! One pair of sprockets with everything that follows: speed, chain, axle, hunting, speedometer.

use layshaft_wire::wire;

use super::goal::{SprocketGoal, gear_ratio};
use crate::gearing::formulas::{
    common_divisor, engine_speed, final_ratio, overall_ratio, pitch, road_speed, turns_until_same_link,
};
use crate::gearing::judge::{Axle, ChainFit, SpeedometerShift, choose_links, counts_that_fit, fit_chain, speedometer};
use crate::message::Message;
use crate::quantity::{Judgement, percent_change};
use crate::record::{Bike, Drive, Spec};
use crate::tyres::Rolling;

/// How often the same tooth meets the same link. The more turns, the more evenly both wear; 1 is the best divisor.
#[wire]
pub struct Hunting {
    /// Turns of the gearbox sprocket until the same tooth meets the same link.
    pub front_turns: u32,
    /// Turns of the wheel sprocket until the same tooth meets the same link.
    pub rear_turns: u32,
    /// Greatest common divisor of front teeth and links.
    pub front_divisor: u32,
    /// Greatest common divisor of rear teeth and links.
    pub rear_divisor: u32,
}

/// A pair of sprockets.
#[wire]
pub struct SprocketPair {
    /// Teeth of the gearbox sprocket.
    pub front_teeth: u32,
    /// Teeth of the wheel sprocket.
    pub rear_teeth: u32,
    /// It is what is on the bike.
    pub fitted: bool,
    /// Final drive ratio.
    pub final_ratio: f64,
    /// Speed at the same engine speed against what is fitted, per cent; above zero is taller.
    pub speed_change_percent: f64,
    /// Engine speed at the same road speed against what is fitted, per cent.
    pub rpm_change_percent: f64,
    /// How far from the goal, per cent of the speed wanted (or of the true speed for the speedometer); above zero is more.
    pub off_goal_percent: Option<f64>,
    /// Speed in the gear of the goal at its engine speed, km/h.
    pub kmh_at_goal_rpm: Option<f64>,
    /// Engine speed in top at the comparison speed, revolutions a minute.
    pub rpm_at_road_speed: Option<f64>,
    /// Speed in top at the engine speed limit, km/h.
    pub kmh_at_limit: Option<f64>,
    /// The chain, where its size and the axle are known.
    pub chain: Option<ChainFit>,
    /// Whether the chain on the bike can stay; unknown where its links are.
    pub chain_stays: Option<bool>,
    /// Why no chain runs on it.
    pub cannot_run: Option<Message>,
    /// Hunting, where the links are known.
    pub hunting: Option<Hunting>,
    /// The speedometer, where its drive is known.
    pub speedometer: Option<SpeedometerShift>,
    /// Fine: the axle lands inside the adjuster. Outside: it does not, or no chain runs. Open: not known.
    pub judgement: Judgement,
}

/// Travel that a new chain leaves in front of the axle, mm, so that its slack can be set (common practice).
const SLACK_ROOM_MM: f64 = 3.0;

/// What all pairs are worked out with.
pub(super) struct PairInputs<'a> {
    pub bike: &'a Bike,
    pub goal: Option<&'a SprocketGoal>,
    pub wanted_ratio: Option<f64>,
    pub fitted: (u32, u32),
    pub axle: Option<&'a Axle>,
    pub rear: Option<Rolling>,
    pub road_speed_kmh: f64,
}

impl PairInputs<'_> {
    /// A pair with everything that follows.
    pub fn pair(&self, (front_teeth, rear_teeth): (u32, u32)) -> SprocketPair {
        let drive = &self.bike.fitted.drive;
        let ratio = final_ratio(front_teeth, rear_teeth);
        let fitted_ratio = final_ratio(self.fitted.0, self.fitted.1);
        let (chain, cannot_run) = self.chain(drive, (front_teeth, rear_teeth));
        let links = chain.as_ref().map(|fit| fit.links).or(drive.chain_links).filter(|_| cannot_run.is_none());
        let shift = self.speedometer((front_teeth, rear_teeth));
        let judgement = match (&cannot_run, chain.as_ref().and_then(|fit| fit.inside_adjuster)) {
            (Some(_), _) | (None, Some(false)) => Judgement::Outside,
            (None, Some(true)) => Judgement::Fine,
            (None, None) => Judgement::Open,
        };
        SprocketPair {
            front_teeth,
            rear_teeth,
            fitted: (front_teeth, rear_teeth) == self.fitted,
            final_ratio: ratio,
            speed_change_percent: (fitted_ratio / ratio - 1.0) * 100.0,
            rpm_change_percent: (ratio / fitted_ratio - 1.0) * 100.0,
            off_goal_percent: self.off_goal(ratio, shift.as_ref()),
            kmh_at_goal_rpm: self.kmh_at_goal_rpm((front_teeth, rear_teeth)),
            rpm_at_road_speed: self
                .top(drive, (front_teeth, rear_teeth))
                .map(|(overall, mm)| engine_speed(self.road_speed_kmh, overall, mm)),
            kmh_at_limit: self
                .top(drive, (front_teeth, rear_teeth))
                .zip(drive.rev_limit_rpm)
                .map(|((overall, mm), limit)| road_speed(limit, overall, mm)),
            chain_stays: chain.as_ref().zip(drive.chain_links).map(|(fit, links)| fit.links == links),
            chain,
            cannot_run,
            hunting: links.map(|links| Hunting {
                front_turns: turns_until_same_link(front_teeth, links),
                rear_turns: turns_until_same_link(rear_teeth, links),
                front_divisor: common_divisor(front_teeth, links),
                rear_divisor: common_divisor(rear_teeth, links),
            }),
            speedometer: shift,
            judgement,
        }
    }

    /// The chain of a pair: the one on the bike where the adjuster takes it; else the shortest even count that lands inside with room
    /// to slacken, because it leaves the most for wear; else the next even count where the axle stands.
    fn chain(&self, drive: &Drive, teeth: (u32, u32)) -> (Option<ChainFit>, Option<Message>) {
        let (Some(size), Some(axle)) = (drive.chain_size, self.axle) else { return (None, None) };
        let fit = |links: u32| fit_chain(size, teeth, links, axle, &[]);
        let chosen = choose_links(pitch(size), teeth, None, drive, axle).and_then(|links| {
            if teeth == self.fitted || drive.chain_links == Some(links) {
                return fit(links);
            }
            let counts = counts_that_fit(pitch(size), teeth, axle);
            let roomy = counts.iter().find(|count| {
                fit(**count).is_ok_and(|fit| fit.travel_used_mm.is_some_and(|used| used >= SLACK_ROOM_MM))
            });
            fit(roomy.or(counts.first()).copied().unwrap_or(links))
        });
        match chosen {
            Ok(fit) => (Some(fit), None),
            Err(refused) => (None, Some(refused.message())),
        }
    }

    /// Overall ratio in top and rolling circumference, where both are known.
    fn top(&self, drive: &Drive, (front, rear): (u32, u32)) -> Option<(f64, f64)> {
        let overall = overall_ratio(drive.primary_ratio?, *drive.gear_ratios.last()?, front, rear);
        Some((overall, self.rear?.circumference_mm))
    }

    fn kmh_at_goal_rpm(&self, (front, rear): (u32, u32)) -> Option<f64> {
        let Some(SprocketGoal::SpeedAtRpm { engine_rpm, gear, .. }) = self.goal else { return None };
        let drive = &self.bike.fitted.drive;
        let overall = overall_ratio(drive.primary_ratio?, gear_ratio(drive, *gear).ok()?, front, rear);
        Some(road_speed(*engine_rpm, overall, self.rear?.circumference_mm))
    }

    fn off_goal(&self, ratio: f64, shift: Option<&SpeedometerShift>) -> Option<f64> {
        match self.goal? {
            SprocketGoal::Speedometer => shift.map(|shift| percent_change(80.0, shift.shown_at_80_kmh)),
            _ => self.wanted_ratio.map(|wanted| percent_change(ratio, wanted)),
        }
    }

    fn speedometer(&self, (front, rear): (u32, u32)) -> Option<SpeedometerShift> {
        let fitted = &self.bike.fitted;
        let drive = Drive {
            front_teeth: Some(front),
            rear_teeth: Some(rear),
            speedometer: fitted.drive.speedometer,
            speedometer_over_percent: fitted.drive.speedometer_over_percent,
            speedometer_corrector: fitted.drive.speedometer_corrector,
            ..Drive::default()
        };
        let spec = Spec {
            drive,
            front_wheel: fitted.front_wheel.clone(),
            rear_wheel: fitted.rear_wheel.clone(),
            ..Spec::default()
        };
        speedometer(self.bike, &spec).ok().flatten()
    }
}
