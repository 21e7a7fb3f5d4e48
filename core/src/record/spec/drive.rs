//! The drive train of a spec: ratios, sprockets, chain and what limits them, and the engine's power.

use layshaft_wire::wire;

use super::message::SpecMessage;
use crate::bounds::{self, Bound};
use crate::error::Refused;
use crate::message::FieldMessage;

/// Motorcycle chain sizes. The first digit is the pitch in eighths of an inch.
#[wire(stored)]
pub enum ChainSize {
    /// 12.7 mm pitch, 4.76 mm between the inner plates.
    C415,
    /// 12.7 mm pitch, 6.35 mm between the inner plates.
    C420,
    /// 12.7 mm pitch, 7.94 mm between the inner plates.
    C428,
    /// 15.875 mm pitch, 6.35 mm between the inner plates.
    C520,
    /// 15.875 mm pitch, 7.94 mm between the inner plates.
    C525,
    /// 15.875 mm pitch, 9.53 mm between the inner plates.
    C530,
    /// 15.875 mm pitch, 9.53 mm between the inner plates, thicker rollers than 530.
    C532,
    /// 19.05 mm pitch, 9.53 mm between the inner plates.
    C630,
}

impl ChainSize {
    /// Its number, as it is stamped.
    pub const fn number(self) -> &'static str {
        match self {
            Self::C415 => "415",
            Self::C420 => "420",
            Self::C428 => "428",
            Self::C520 => "520",
            Self::C525 => "525",
            Self::C530 => "530",
            Self::C532 => "532",
            Self::C630 => "630",
        }
    }
}

/// What drives the speedometer.
#[wire(stored)]
pub enum SpeedometerDrive {
    /// The gearbox output or its sprocket: gearing and rear tyre shift the reading.
    Gearbox,
    /// The front wheel: only the front tyre shifts the reading.
    FrontWheel,
    /// The rear wheel: only the rear tyre shifts the reading.
    RearWheel,
}

/// Whether the joints of a chain keep their own grease in.
#[wire(stored)]
pub enum ChainKind {
    /// Plain: pins and bushes are oiled from outside.
    Plain,
    /// Sealed: rings keep the grease between pin and bush.
    Sealed,
}

/// How the two ends of a chain are joined.
#[wire(stored)]
pub enum ChainJoint {
    /// Link with a spring clip.
    Clip,
    /// Link with riveted pins.
    Rivet,
    /// No joint; it goes on with the swing arm out.
    Endless,
}

/// One point of the engine's power curve.
#[wire(stored)]
pub struct PowerPoint {
    /// Engine speed, revolutions a minute.
    pub rpm: f64,
    /// Power, kilowatts.
    pub kw: f64,
}

/// The drive train from crankshaft to wheel.
#[wire(lenient, stored)]
pub struct Drive {
    /// Primary reduction, crankshaft turns for one turn of the clutch.
    pub primary_ratio: Option<f64>,
    /// Gear ratios, first gear first.
    pub gear_ratios: Vec<f64>,
    /// Teeth of the gearbox sprocket.
    pub front_teeth: Option<u32>,
    /// Teeth of the wheel sprocket.
    pub rear_teeth: Option<u32>,
    /// Chain size.
    pub chain_size: Option<ChainSize>,
    /// Links of the chain.
    pub chain_links: Option<u32>,
    /// Distance between the sprocket centres with that chain, millimetres.
    pub centre_distance_mm: Option<f64>,
    /// Least centre distance that the adjuster gives, millimetres.
    pub adjuster_from_mm: Option<f64>,
    /// Greatest centre distance that the adjuster gives, millimetres.
    pub adjuster_to_mm: Option<f64>,
    /// What drives the speedometer.
    pub speedometer: Option<SpeedometerDrive>,
    /// How far the speedometer reads high as made, per cent of true speed, where it was measured.
    pub speedometer_over_percent: Option<f64>,
    /// Ratio of the corrector in the speedometer drive, turns out for one turn in; none fitted is 1.
    pub speedometer_corrector: Option<f64>,
    /// Engine speed limit, revolutions a minute.
    pub rev_limit_rpm: Option<f64>,
    /// Fewest teeth in front before the chain rubs on the swing arm.
    pub front_teeth_min: Option<u32>,
    /// Most teeth in front that clear crankcase and cover.
    pub front_teeth_max: Option<u32>,
    /// Fewest teeth behind that leave room for the bolts.
    pub rear_teeth_min: Option<u32>,
    /// Most teeth behind that clear swing arm and guard.
    pub rear_teeth_max: Option<u32>,
    /// Chain size that the gearbox sprocket is cut for.
    pub front_sprocket_size: Option<ChainSize>,
    /// Chain size that the wheel sprocket is cut for.
    pub rear_sprocket_size: Option<ChainSize>,
    /// Plain or sealed chain.
    pub chain_kind: Option<ChainKind>,
    /// How the chain is joined.
    pub chain_joint: Option<ChainJoint>,
    /// Wear at which the chain is renewed, per cent, by the manual.
    pub chain_wear_limit_percent: Option<f64>,
    /// Least slack that the manual asks for, millimetres.
    pub chain_slack_from_mm: Option<f64>,
    /// Most slack that the manual allows, millimetres.
    pub chain_slack_to_mm: Option<f64>,
    /// Power at the crankshaft against engine speed, lowest speed first.
    pub power_curve: Vec<PowerPoint>,
    /// Drag area of machine and rider (coefficient times frontal area), square metres.
    pub drag_area_m2: Option<f64>,
    /// Share of the crankshaft's power that reaches the rear wheel.
    pub drive_efficiency: Option<f64>,
}

impl Drive {
    /// The drive train, or the first field that cannot be accepted.
    pub fn checked(mut self) -> Result<Self, Refused> {
        bounds::PRIMARY_RATIO.check_known(self.primary_ratio)?;
        for ratio in &self.gear_ratios {
            bounds::GEAR_RATIO.check(*ratio)?;
        }
        bounds::GEARS.check(self.gear_ratios.len() as f64)?;
        bounds::FRONT_TEETH.check_known(self.front_teeth.map(f64::from))?;
        bounds::REAR_TEETH.check_known(self.rear_teeth.map(f64::from))?;
        bounds::CHAIN_LINKS.check_known(self.chain_links.map(f64::from))?;
        bounds::CENTRE_DISTANCE.check_known(self.centre_distance_mm)?;
        let from = bounds::CENTRE_DISTANCE
            .named("adjusterFromMm", FieldMessage::AdjusterLeast)
            .check_known(self.adjuster_from_mm)?;
        let to = bounds::CENTRE_DISTANCE
            .named("adjusterToMm", FieldMessage::AdjusterMost)
            .check_known(self.adjuster_to_mm)?;
        if from.zip(to).is_some_and(|(from, to)| from >= to) {
            return Err(Refused::Conflict {
                field: "adjusterToMm".to_owned(),
                reason: SpecMessage::AdjusterOrder.into(),
            });
        }
        bounds::SPEEDOMETER_OVER.check_known(self.speedometer_over_percent)?;
        bounds::CORRECTOR.check_known(self.speedometer_corrector)?;
        bounds::REV_LIMIT.check_known(self.rev_limit_rpm)?;
        self.check_limits()?;
        self.check_chain()?;
        bounds::DRAG_AREA.check_known(self.drag_area_m2)?;
        bounds::DRIVE_EFFICIENCY.check_known(self.drive_efficiency)?;
        self.power_curve = power_in_order(self.power_curve)?;
        Ok(self)
    }

    /// Teeth that fit the bike.
    fn check_limits(&self) -> Result<(), Refused> {
        let known = |bound: Bound, teeth: Option<u32>| bound.check_known(teeth.map(f64::from));
        let [front_min, front_max, rear_min, rear_max] = TEETH_LIMITS;
        let front = known(front_min, self.front_teeth_min)?.zip(known(front_max, self.front_teeth_max)?);
        let rear = known(rear_min, self.rear_teeth_min)?.zip(known(rear_max, self.rear_teeth_max)?);
        rising(front, "frontTeethMax", SpecMessage::FrontTeethOrder)?;
        rising(rear, "rearTeethMax", SpecMessage::RearTeethOrder)
    }

    /// What the manual says about the chain.
    fn check_chain(&self) -> Result<(), Refused> {
        bounds::CHAIN_WEAR_LIMIT.check_known(self.chain_wear_limit_percent)?;
        let [from, to] = SLACK;
        let slack = from.check_known(self.chain_slack_from_mm)?.zip(to.check_known(self.chain_slack_to_mm)?);
        rising(slack, "chainSlackToMm", SpecMessage::ChainSlackOrder)
    }
}

const TEETH_LIMITS: [Bound; 4] = [
    bounds::FRONT_TEETH.named("frontTeethMin", FieldMessage::FewestTeethInFront),
    bounds::FRONT_TEETH.named("frontTeethMax", FieldMessage::MostTeethInFront),
    bounds::REAR_TEETH.named("rearTeethMin", FieldMessage::FewestTeethBehind),
    bounds::REAR_TEETH.named("rearTeethMax", FieldMessage::MostTeethBehind),
];

const SLACK: [Bound; 2] = [
    bounds::CHAIN_SLACK.named("chainSlackFromMm", FieldMessage::LeastChainSlack),
    bounds::CHAIN_SLACK.named("chainSlackToMm", FieldMessage::MostChainSlack),
];

fn rising(ends: Option<(f64, f64)>, field: &str, reason: SpecMessage) -> Result<(), Refused> {
    match ends {
        Some((least, most)) if least > most => {
            Err(Refused::Conflict { field: field.to_owned(), reason: reason.into() })
        }
        _ => Ok(()),
    }
}

/// A power curve with its points checked and in the order of engine speed; no speed twice.
pub(crate) fn power_in_order(mut curve: Vec<PowerPoint>) -> Result<Vec<PowerPoint>, Refused> {
    for point in &curve {
        bounds::REV_POINT.of("powerCurve").check(point.rpm)?;
        bounds::PEAK_POWER.of("powerCurve").check(point.kw)?;
    }
    curve.sort_by(|a, b| a.rpm.total_cmp(&b.rpm));
    let twice = curve.windows(2).any(|pair| matches!(pair, [a, b] if a.rpm >= b.rpm));
    if twice || curve.len() == 1 {
        return Err(Refused::Conflict { field: "powerCurve".to_owned(), reason: SpecMessage::PowerCurvePoints.into() });
    }
    Ok(curve)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn field(drive: Drive) -> String {
        match drive.checked() {
            Err(Refused::Conflict { field, .. } | Refused::OutOfRange { field, .. }) => field,
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn limits_the_wrong_way_round_are_refused_by_field() {
        assert_eq!(
            field(Drive { front_teeth_min: Some(16), front_teeth_max: Some(14), ..Drive::default() }),
            "frontTeethMax"
        );
        assert_eq!(
            field(Drive { rear_teeth_min: Some(50), rear_teeth_max: Some(40), ..Drive::default() }),
            "rearTeethMax"
        );
        let slack = Drive { chain_slack_from_mm: Some(30.0), chain_slack_to_mm: Some(20.0), ..Drive::default() };
        assert_eq!(field(slack), "chainSlackToMm");
        assert_eq!(field(Drive { rear_teeth_max: Some(90), ..Drive::default() }), "rearTeethMax");
        assert_eq!(field(Drive { speedometer_corrector: Some(0.0), ..Drive::default() }), "speedometerCorrector");
        assert_eq!(field(Drive { drag_area_m2: Some(9.0), ..Drive::default() }), "dragAreaM2");
    }

    #[test]
    fn a_power_curve_is_put_in_order_and_needs_two_points_of_their_own() {
        let point = |rpm, kw| PowerPoint { rpm, kw };
        let with = |curve| Drive { power_curve: curve, ..Drive::default() };
        let drive = with(vec![point(8000.0, 11.0), point(4000.0, 5.0)]).checked().unwrap();
        assert_eq!(drive.power_curve, [point(4000.0, 5.0), point(8000.0, 11.0)]);
        assert_eq!(field(with(vec![point(8000.0, 11.0)])), "powerCurve");
        assert_eq!(field(with(vec![point(8000.0, 11.0), point(8000.0, 12.0)])), "powerCurve");
        assert_eq!(field(with(vec![point(8000.0, -1.0), point(9000.0, 12.0)])), "powerCurve");
    }

    #[test]
    fn a_record_of_before_these_fields_still_reads() {
        let old: Drive = serde_json::from_str(r#"{"frontTeeth": 15, "gearRatios": [2.0]}"#).unwrap();
        assert_eq!((old.front_teeth, old.front_teeth_max, old.power_curve.len()), (Some(15), None, 0));
    }
}
