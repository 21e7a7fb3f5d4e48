//! The answer of the lamp page: standard, fitted and proposed side by side, and for indicators both cures compared.

use layshaft_wire::wire;

use super::alternating::of_lamp;
use super::message::{HarnessWorking, LampsMessage};
use crate::bounds;
use crate::electrical::formulas::{ConsumerPower, FlasherShare, LoadResistance, ResistorWatts, flasher, sources};
use crate::electrical::{
    CapFit, FLASH_RULE, Flashing, LampAtWork, LampCard, LoadResistor, Volts, cap_fits, cap_source, consumer_watts,
    counted_rate, lamp_at_work, lamp_cards, light_source, load_resistor, resistor_source,
};
use crate::error::Refused;
use crate::harness::lamps::{Indicators, indicators, pilot};
use crate::message::{ListStyle, Message};
use crate::quantity::{Finding, FindingCode, Line, Weight, Working};
use crate::record::{Bike, Consumer, ConsumerRole, FlasherKind, Indication, LightSource, PilotFitting, Slot, Spec};
use crate::units::Unit;

/// Flashes counted over a time.
#[wire]
pub struct FlashCount {
    /// Flashes.
    pub flashes: u32,
    /// Time that they took, seconds.
    pub seconds: f64,
}

/// What to look at. What is left out is taken from the fitted bike.
#[wire(lenient)]
pub struct LampsAsk {
    /// Id of the consumer; left out: the indicators, else the first lamp.
    pub place: Option<String>,
    /// Lamp to try there.
    pub proposed: Option<Consumer>,
    /// How many lamps of each place or side are replaced; left out: all of them.
    pub replaced: Option<u32>,
    /// Flasher, pilots and resistors to try; fields left out are as fitted.
    pub indication: Option<Indication>,
    /// Flashes that were counted.
    pub counted: Option<FlashCount>,
}

/// Which of the lamps that are compared.
#[wire]
pub enum LampSide {
    /// As made.
    Standard,
    /// As fitted now.
    Fitted,
    /// As proposed.
    Proposed,
    /// As proposed, with a load resistor beside each lamp.
    WithResistors,
    /// As proposed, with an electronic flasher of three terminals, and the pilot through two diodes.
    WithFlasher,
}

impl LampSide {
    /// The line of a working on its share of the load.
    fn share(self) -> HarnessWorking {
        match self {
            LampSide::Standard => HarnessWorking::ShareStandard,
            LampSide::Fitted => HarnessWorking::ShareFitted,
            LampSide::Proposed => HarnessWorking::ShareProposed,
            LampSide::WithResistors => HarnessWorking::ShareWithResistors,
            LampSide::WithFlasher => HarnessWorking::ShareWithFlasher,
        }
    }
}

/// One lamp in the comparison.
#[wire]
pub struct LampColumn {
    /// Which.
    pub side: LampSide,
    /// The lamp.
    pub consumer: Consumer,
    /// One lamp at the battery's voltage, engine off.
    pub standing: LampAtWork,
    /// One lamp at the regulated voltage.
    pub charging: LampAtWork,
}

/// The indicators in one of the compared states.
#[wire]
pub struct FlashColumn {
    /// Which.
    pub side: LampSide,
    /// Load, rate, pilot.
    pub indicators: Indicators,
    /// What will be seen, in a sentence or two.
    pub text: Message,
    /// What it takes, one line each: parts and work.
    pub takes: Vec<Message>,
}

/// The lamp page.
#[wire]
pub struct LampAnswer {
    /// Id of the consumer.
    pub place: String,
    /// Standard, fitted, proposed, as far as they are there.
    pub lamps: Vec<LampColumn>,
    /// Whether the lamp tried (or fitted) goes into the holder as made.
    pub fits: CapFit,
    /// Why.
    pub fits_why: Message,
    /// For indicators: standard, fitted, proposed and both cures; empty for other lamps.
    pub flashing: Vec<FlashColumn>,
    /// The load resistor beside each lamp, where the lamp tried takes less.
    pub resistor: Option<LoadResistor>,
    /// Fewest flashes a minute that the rules allow.
    pub least_per_minute: f64,
    /// Most flashes a minute that the rules allow.
    pub most_per_minute: f64,
    /// Flashes a minute as counted.
    pub counted_per_minute: Option<f64>,
    /// How to count.
    pub how_to_count: Message,
    /// Types of filament lamps to choose from.
    pub types: Vec<LampCard>,
    /// What is worth saying.
    pub findings: Vec<Finding>,
    /// How it was worked out.
    pub working: Working,
}

/// The lamp page for a place of the bike. Nothing is stored.
pub fn lamp_answer(bike: &Bike, ask: &LampsAsk) -> Result<LampAnswer, Refused> {
    let place = ask.place.clone().or_else(|| first_place(bike)).ok_or_else(|| Refused::Missing {
        field: "place".to_owned(),
        label: LampsMessage::AnyLamp.into(),
        help: LampsMessage::EnterConsumers.into(),
    })?;
    let proposed = ask.proposed.clone().map(Consumer::checked).transpose()?;
    let tried = ask.indication.clone().unwrap_or_default().over(&bike.fitted.indication).checked()?;
    let counted_per_minute =
        ask.counted.as_ref().map(|count| counted_rate(count.flashes, count.seconds)).transpose()?;
    let spec = Spec { supply: bike.fitted.supply.clone().checked()?, indication: tried, ..bike.fitted.clone() };
    bounds::COUNT.check_known(ask.replaced.map(f64::from))?;
    let tried = with_lamp(&spec, &place, proposed.as_ref(), ask.replaced);
    let standard = at(&bike.standard, &place);
    let Some(now) = at(&tried, &place).or_else(|| standard.clone()) else {
        return Err(Refused::Missing {
            field: "place".to_owned(),
            label: LampsMessage::LampWithId { place }.into(),
            help: LampsMessage::EnterConsumers.into(),
        });
    };
    let volts = Volts::of(&spec.supply);
    let is_indicator = now.role.is_some_and(ConsumerRole::is_indicator);
    let old = standard.clone().unwrap_or_else(|| now.clone());
    let watts = |lamp: &Consumer| consumer_watts(&Consumer { count: 1, ..lamp.clone() }, volts.test, volts.charging);
    let resistor = if is_indicator { load_resistor(volts.charging, watts(&old), watts(&now)) } else { None };
    let flashing = if is_indicator {
        compared(bike, &tried, proposed.is_some(), resistor.as_ref().map(|one| (one, now.count)))
    } else {
        Vec::new()
    };
    let (fits, fits_why) = cap_fits(old.cap, now.cap);
    let mut lamps: Vec<LampColumn> = Vec::new();
    let mut column = |side, consumer: Option<Consumer>| {
        lamps.extend(consumer.map(|consumer| LampColumn {
            side,
            standing: lamp_at_work(&consumer, volts.test, volts.standing),
            charging: lamp_at_work(&consumer, volts.test, volts.charging),
            consumer,
        }));
    };
    column(LampSide::Standard, standard);
    column(LampSide::Fitted, at(&bike.fitted, &place).map(|lamp| own_light(&old, lamp)));
    column(LampSide::Proposed, proposed.clone());
    let mut findings = findings(&old, &now, &fits, &flashing, counted_per_minute, is_indicator);
    findings.extend(of_lamp(&spec.supply, &now, &tried.indication));
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    let working = working(&lamps, &flashing, resistor.as_ref(), &volts, [watts(&old), watts(&now)]);
    Ok(LampAnswer {
        place,
        lamps,
        fits,
        fits_why,
        flashing,
        resistor,
        least_per_minute: FLASH_RULE.0,
        most_per_minute: FLASH_RULE.1,
        counted_per_minute,
        how_to_count: LampsMessage::HowToCount.into(),
        types: lamp_cards(Volts::of(&bike.fitted.supply).system),
        findings,
        working,
    })
}

/// Where to look first: at the indicators, else at any lamp.
fn first_place(bike: &Bike) -> Option<String> {
    let is_lamp = |slot: &&Slot| matches!(slot.consumer.source, Some(LightSource::Filament | LightSource::Led));
    let specs = [&bike.fitted, &bike.standard];
    let indicators = specs.iter().find_map(|spec| spec.consumer_as(ConsumerRole::is_indicator));
    indicators.or_else(|| specs.iter().find_map(|spec| spec.consumers.iter().find(is_lamp))).map(|slot| slot.id.clone())
}

fn at(spec: &Spec, place: &str) -> Option<Consumer> {
    spec.consumers.iter().find(|slot| slot.id == place).map(|slot| slot.consumer.clone())
}

/// A fitted lamp of another kind does not have the light of the one as made, though that shows through where it says none.
fn own_light(standard: &Consumer, fitted: Consumer) -> Consumer {
    let inherited = fitted.source != standard.source && fitted.lumens == standard.lumens;
    Consumer { lumens: if inherited { None } else { fitted.lumens }, ..fitted }
}

/// The spec with the lamp in its place. Where only some are replaced, the rest stays beside them under an id of its own.
fn with_lamp(spec: &Spec, place: &str, lamp: Option<&Consumer>, replaced: Option<u32>) -> Spec {
    let mut tried = spec.clone();
    if let Some(lamp) = lamp {
        match tried.consumers.iter_mut().find(|slot| slot.id == place) {
            Some(slot) => {
                let old = slot.consumer.clone();
                let count = replaced.unwrap_or(lamp.count);
                let of_all = old.role == Some(ConsumerRole::Indicators) && count < old.count;
                let role = |apart| if of_all { Some(apart) } else { lamp.role.or(old.role) };
                let (front, rear) = (role(ConsumerRole::IndicatorsFront), role(ConsumerRole::IndicatorsRear));
                slot.consumer = Consumer { count: count.min(lamp.count), role: front, ..lamp.clone() };
                if count < old.count {
                    let rest = Consumer { count: old.count - count, role: rear, ..old };
                    tried.consumers.push(Slot { id: format!("{place}-rest"), consumer: rest });
                }
            }
            None => tried.consumers.push(Slot { id: place.to_owned(), consumer: lamp.clone() }),
        }
    }
    tried
}

/// Standard, fitted, proposed, and the two cures on top of what is tried: a resistor beside each of so many lamps of a side.
fn compared(bike: &Bike, tried: &Spec, is_tried: bool, resistor: Option<(&LoadResistor, u32)>) -> Vec<FlashColumn> {
    let mut columns = Vec::new();
    let mut add = |side, spec: &Spec, takes: Vec<LampsMessage>| {
        columns.extend(indicators(bike, spec).map(|indicators| FlashColumn {
            side,
            text: in_words(&indicators),
            indicators,
            takes: takes.into_iter().map(Into::into).collect(),
        }));
    };
    add(LampSide::Standard, &Spec { supply: tried.supply.clone(), ..bike.standard.clone() }, Vec::new());
    add(LampSide::Fitted, &bike.fitted, Vec::new());
    if is_tried || tried.indication != bike.fitted.indication {
        add(LampSide::Proposed, tried, Vec::new());
    }
    if let Some((resistor, count)) = resistor {
        let indication = Indication {
            resistor_ohms: Some(resistor.buy_ohms),
            resistors_per_side: Some(count),
            ..tried.indication.clone()
        };
        let takes = vec![
            LampsMessage::TakesResistors {
                count: 2 * count,
                ohms: Unit::Ohm.of(resistor.buy_ohms),
                watts: Unit::Watt.of(resistor.rating_watts),
            },
            LampsMessage::TakesMetal,
            LampsMessage::TakesHeat { watts: Unit::Watt.of(f64::from(count) * resistor.mean_watts) },
        ];
        add(LampSide::WithResistors, &Spec { indication, ..tried.clone() }, takes);
        let between = tried.indication.pilot == Some(PilotFitting::BetweenSides);
        let pilot = if between { Some(PilotFitting::OneWithDiodes) } else { tried.indication.pilot };
        let indication = Indication { flasher: Some(FlasherKind::ElectronicThree), pilot, ..tried.indication.clone() };
        let mut takes = vec![LampsMessage::TakesFlasher, LampsMessage::TakesEarthWire];
        if between {
            takes.push(LampsMessage::TakesDiodes);
        }
        add(LampSide::WithFlasher, &Spec { indication, ..tried.clone() }, takes);
    }
    columns
}

fn in_words(indicators: &Indicators) -> Message {
    let rate = indicators.rate.as_ref().map(|band| {
        let (least, most) = (Unit::FlashesMinute.of(band.from), Unit::FlashesMinute.of(band.to));
        let rate = if band.to - band.from < 0.5 {
            LampsMessage::RateAbout { rate: least }
        } else {
            LampsMessage::RateBetween { least, most }
        };
        Message::from(rate)
    });
    let rate = match (indicators.flashing, rate) {
        (Some(Flashing::Stops), _) => LampsMessage::Stop,
        (Some(Flashing::TooFast), Some(rate)) => LampsMessage::TooFast { rate },
        (Some(Flashing::Right), Some(rate)) => LampsMessage::Right { rate },
        (Some(Flashing::Count), Some(rate)) => LampsMessage::Count { rate },
        _ => LampsMessage::RateUnknown,
    };
    let out = indicators.outage_tells.map(|tells| match tells {
        true => LampsMessage::OutageTells,
        false => LampsMessage::OutageHides,
    });
    let pilot = match &indicators.behaviour {
        Some(_) if indicators.both_sides() => LampsMessage::BothSides,
        Some(_) => LampsMessage::OtherSideDark,
        None => LampsMessage::PilotUnknown,
    };
    let said = [Some(rate), out, Some(pilot)].into_iter().flatten().map(Into::into);
    Message::joined(ListStyle::Sentences, said.collect())
}

fn findings(
    old: &Consumer,
    now: &Consumer,
    fits: &CapFit,
    flashing: &[FlashColumn],
    counted: Option<f64>,
    is_indicator: bool,
) -> Vec<Finding> {
    let mut findings = Vec::new();
    if *fits == CapFit::DoesNotFit {
        findings.push(Finding::new(FindingCode::LampCap, Weight::Care, LampsMessage::CapDoesNotFit));
    }
    if now.watts > 1.1 * old.watts && now.source == Some(LightSource::Filament) {
        let text = LampsMessage::MoreWatts { now: Unit::Watt.of(now.watts), made: Unit::Watt.of(old.watts) };
        findings.push(Finding::new(FindingCode::LampMoreWatts, Weight::Care, text));
    }
    if now.source == Some(LightSource::Led) && old.source == Some(LightSource::Filament) {
        let text = if is_indicator { LampsMessage::LedIndicatorApproval } else { LampsMessage::LedLampApproval };
        findings.push(Finding::new(FindingCode::LampLedApproval, Weight::Care, text));
        if now.polarised != Some(false) {
            findings.push(Finding::new(FindingCode::LampPolarity, Weight::Note, LampsMessage::LedPolarity));
        }
    }
    if let Some(rate) = counted {
        let (least, most) = FLASH_RULE;
        let inside = (least..=most).contains(&rate);
        let rate = Unit::FlashesMinute.of(rate);
        let (weight, text) = if inside {
            (Weight::Note, LampsMessage::CountedInside { rate })
        } else {
            (Weight::Stopper, LampsMessage::CountedOutside { rate })
        };
        findings.push(Finding::new(FindingCode::FlasherCounted, weight, text));
    }
    let cured = |column: &&FlashColumn| matches!(column.side, LampSide::WithResistors | LampSide::WithFlasher);
    let tried = flashing.iter().rfind(|column| !cured(column));
    findings.extend(tried.map(|column| crate::harness::lamps::findings(&column.indicators)).unwrap_or_default());
    findings
}

fn working(
    lamps: &[LampColumn],
    flashing: &[FlashColumn],
    resistor: Option<&LoadResistor>,
    volts: &Volts,
    [old_watts, new_watts]: [f64; 2],
) -> Working {
    let mut lines = Vec::new();
    for lamp in lamps {
        let consumer = &lamp.consumer;
        let power = ConsumerPower {
            count: 1,
            watts: consumer.watts,
            test_volts: consumer.test_volts.unwrap_or(volts.test),
            volts: volts.charging,
        };
        let filament = consumer.source == Some(LightSource::Filament);
        let amperes = if filament { "filament_amperes" } else { "steady_amperes" };
        lines.extend(power.line_of(amperes, HarnessWorking::Current { lamp: consumer.name.clone() }));
    }
    lines.extend(flashing.iter().filter_map(|column| {
        let (side_watts, flasher_watts) = (column.indicators.side_watts, column.indicators.made_for_watts?);
        FlasherShare { side_watts, flasher_watts }.line(column.side.share())
    }));
    if let Some(resistor) = resistor {
        let beside = LoadResistance { volts: volts.charging, old_watts, new_watts };
        lines.extend(beside.line(HarnessWorking::Resistor));
        let lit = ResistorWatts { volts: volts.charging, ohms: resistor.buy_ohms };
        lines.extend(lit.line(HarnessWorking::ResistorWatts));
    }
    let mut sources = vec![sources::filament_law(), light_source(), cap_source()];
    if !flashing.is_empty() {
        sources.extend([flasher::rule_source(), flasher::band_source(), pilot::pilot_source(), resistor_source()]);
    }
    Working { lines, sources, range: LampsMessage::Range.into() }
}

#[cfg(test)]
#[path = "lamps_tests.rs"]
mod tests;
