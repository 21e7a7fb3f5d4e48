//! Kinds of small motorcycles to start from: one tap says most of what can be seen by walking round the bike.

use layshaft_wire::wire;

use super::message::{KindMessage, WeekMessage};
use crate::bounds;
use crate::error::Refused;
use crate::message::Message;
use crate::quantity::{Source, Standing};
use crate::record::{BenchTime, Bike, BrakeKind, ConsumerRole, Cooling, ElectricalSystem, Span, Starter, Strokes};

/// What kind of bike it is. What is left out is not known.
#[wire(lenient)]
#[derive(Copy)]
pub struct BikeKind {
    /// Two-stroke or four-stroke.
    pub strokes: Option<Strokes>,
    /// What cools the engine.
    pub cooling: Option<Cooling>,
    /// What turns the engine over.
    pub starter: Option<Starter>,
    /// What the electrical system is made of.
    pub system: Option<ElectricalSystem>,
    /// Nominal voltage of the system, volts.
    pub system_volts: Option<f64>,
    /// Front brake.
    pub front_brake: Option<BrakeKind>,
    /// Rear brake.
    pub rear_brake: Option<BrakeKind>,
    /// Whether it has indicators.
    pub indicators: Option<bool>,
}

/// A kind that many bikes are of.
#[wire]
pub struct KindOffer {
    /// Id.
    pub id: String,
    /// In words.
    pub name: Message,
    /// What is typical of it.
    pub bike_kind: BikeKind,
}

/// A usual week at the bench.
#[wire]
pub struct WeekOffer {
    /// Id.
    pub id: String,
    /// In words.
    pub name: Message,
    /// Its hours.
    pub spans: Vec<Span>,
}

/// What a bike is started from.
#[wire]
pub struct StartingAnswer {
    /// Kinds to choose from, the plainest first.
    pub kinds: Vec<KindOffer>,
    /// What is known of the open bike.
    pub bike_kind: BikeKind,
    /// Whether its lamps are entered: then they say whether it has indicators.
    pub lamps_known: bool,
    /// Usual weeks to choose from.
    pub weeks: Vec<WeekOffer>,
    /// Where kinds and weeks come from.
    pub source: Source,
}

impl BikeKind {
    /// The kind, or the first field that cannot be accepted.
    pub fn checked(self) -> Result<Self, Refused> {
        bounds::SYSTEM_VOLTS.check_known(self.system_volts)?;
        Ok(self)
    }

    /// What is known of a bike as it is being built.
    pub fn of(bike: &Bike) -> Self {
        let has = |of: fn(ConsumerRole) -> bool| bike.fitted.consumer_as(of).is_some();
        Self {
            strokes: bike.identity.strokes,
            cooling: bike.identity.cooling,
            starter: bike.identity.starter,
            system: bike.fitted.supply.system,
            system_volts: bike.fitted.supply.system_volts,
            front_brake: bike.fitted.front_brake.brake,
            rear_brake: bike.fitted.rear_brake.brake,
            indicators: (!bike.fitted.consumers.is_empty()).then(|| has(ConsumerRole::is_indicator)),
        }
    }

    /// What draws current on a bike of this kind.
    pub fn roles(&self) -> impl Iterator<Item = ConsumerRole> {
        use ConsumerRole::{Headlamp, Horn, Ignition, IndicatorPilot, Indicators, Instrument, Stop, Tail};
        let signals = if self.indicators == Some(true) { [Indicators, IndicatorPilot].as_slice() } else { &[] };
        // Without a battery the spark comes from a coil of its own and draws nothing from that of the lamps.
        let own_spark = self.system.is_some_and(|system| !system.has_battery());
        let all = [Headlamp, Tail, Stop, Instrument, Horn, Ignition].iter().chain(signals).copied();
        all.filter(move |role| !(own_spark && *role == Ignition))
    }
}

/// What is typical of a few kinds. Common practice, no source.
fn kinds() -> Vec<KindOffer> {
    use BrakeKind::{Disc, Drum};
    use KindMessage as Name;
    use Starter::{Electric, Kick};
    use Strokes::{Four, Two};
    let kind = |id: &str,
                name: KindMessage,
                strokes,
                cooling,
                starter,
                (system, volts),
                brakes: [BrakeKind; 2],
                indicators| {
        let [front, rear] = brakes.map(Some);
        let bike_kind = BikeKind {
            strokes: Some(strokes),
            cooling: Some(cooling),
            starter: Some(starter),
            system,
            system_volts: Some(volts),
            front_brake: front,
            rear_brake: rear,
            indicators: Some(indicators),
        };
        KindOffer { id: id.to_owned(), name: name.into(), bike_kind }
    };
    // With 6 V and a battery, one diode is as common as a coil beside it: that is asked.
    let (coil, six) = ((Some(ElectricalSystem::LightingCoil), 6.0), (None, 6.0));
    let twelve = (Some(ElectricalSystem::RegulatedBattery), 12.0);
    vec![
        kind("two-6-coil", Name::TwoStrokeSixVoltsCoil, Two, Cooling::Air, Kick, coil, [Drum, Drum], false),
        kind("two-6-drums", Name::TwoStrokeSixVoltsDrums, Two, Cooling::Air, Kick, six, [Drum, Drum], false),
        kind("four-6-drums", Name::FourStrokeSixVoltsDrums, Four, Cooling::Air, Kick, six, [Drum, Drum], true),
        kind("two-12-disc", Name::TwoStrokeTwelveVoltsDisc, Two, Cooling::Air, Kick, twelve, [Disc, Drum], true),
        kind("four-12-disc", Name::FourStrokeTwelveVoltsDisc, Four, Cooling::Air, Electric, twelve, [Disc, Drum], true),
        kind("four-12-discs", Name::CooledByLiquidDiscs, Four, Cooling::Liquid, Electric, twelve, [Disc, Disc], true),
    ]
}

/// Usual weeks. Judgement of our own; the first is the one that the plan assumes.
fn weeks() -> Vec<WeekOffer> {
    let day = |weekday, from: u32, to: u32| Span { weekday, from_minute: from * 60, to_minute: to * 60 };
    let week = |id: &str, name: WeekMessage, spans| WeekOffer { id: id.to_owned(), name: name.into(), spans };
    vec![
        week("two-evenings", WeekMessage::TwoEveningsAndSaturday, BenchTime::default().pattern()),
        week("saturdays", WeekMessage::Saturdays, vec![day(6, 9, 16)]),
        week("weekends", WeekMessage::Weekends, vec![day(6, 9, 16), day(7, 10, 16)]),
        week("evenings", WeekMessage::FiveEvenings, (1..=5).map(|weekday| day(weekday, 19, 21)).collect()),
    ]
}

/// What a bike is started from, and what is known of it already.
pub fn starting_answer(bike: &Bike) -> StartingAnswer {
    StartingAnswer {
        kinds: kinds(),
        bike_kind: BikeKind::of(bike),
        lamps_known: !bike.fitted.consumers.is_empty(),
        weeks: weeks(),
        source: Source::new(KindMessage::Source, Standing::CommonPractice),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_and_week_is_accepted_and_no_two_are_alike() {
        let kinds = kinds();
        for (at, offer) in kinds.iter().enumerate() {
            assert!(offer.bike_kind.checked().is_ok(), "{}", offer.id);
            assert!(kinds[..at].iter().all(|other| other.bike_kind != offer.bike_kind), "{}", offer.id);
        }
        for week in weeks() {
            let spans = week.spans.clone();
            assert_eq!(BenchTime { spans, ..BenchTime::default() }.checked().map(|time| time.spans), Ok(week.spans));
        }
    }

    #[test]
    fn of_an_empty_bike_nothing_is_known_and_without_indicators_there_are_no_pilots() {
        assert_eq!(BikeKind::of(&Bike::default()), BikeKind::default());
        let roles = |indicators| BikeKind { indicators, ..BikeKind::default() }.roles().collect::<Vec<_>>();
        assert!(!roles(Some(false)).contains(&ConsumerRole::IndicatorPilot));
        assert_eq!(roles(None), roles(Some(false)));
        assert_eq!(roles(Some(true)).len(), roles(None).len() + 2);
        let coil = BikeKind { system: Some(ElectricalSystem::LightingCoil), ..BikeKind::default() };
        assert!(
            coil.roles().all(|role| role != ConsumerRole::Ignition) && roles(None).contains(&ConsumerRole::Ignition)
        );
    }
}
