//! Which answers a command makes old: what each answer is worked out from, held against what moved.
//!
//! What moved is read off the bike itself, before and after, so it is the same for a command, an undo, a settled value and
//! a bundle. `tests/suite/stale` asks every query before and after, and takes this list at its word both ways.

use std::collections::BTreeSet;

use layshaft_core::record::{Bike, Spec};

/// What an answer may be worked out from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Source {
    /// How many facts each bike has, which bike is open, when it was exported.
    Shelf,
    /// Every fact of the open bike, also one that does not hold.
    Facts,
    /// The values of the open bike that lost a concurrent edit.
    Rivals,
    /// Attachments.
    Files,
    Identity,
    Place,
    Drive,
    Wheels,
    Supply,
    Consumers,
    Brakes,
    Fluids,
    Indication,
    Parts,
    Tightenings,
    Coats,
    Processes,
    Climate,
    Readings,
    Photos,
    Jobs,
    Answers,
    Circuits,
    Searches,
    BenchTime,
}

/// What moved with a command.
pub(crate) type Moved = BTreeSet<Source>;

/// Makes the list of all queries, each to be told apart below.
macro_rules! make_asked {
    ($($(#[$doc:meta])* $method:ident $name:ident($ask:ident) -> $answer:ident;)*) => {
        #[derive(Clone, Copy)]
        enum Asked { $($name,)* }

        const ALL: &[(Asked, &str)] = &[$((Asked::$name, stringify!($name)),)*];
    };
}
crate::queries!(make_asked);

/// What makes a plan: jobs, what they wait for, the hours and the air in which they are done.
const PLAN: &[Source] = {
    use Source::*;
    &[Jobs, Parts, BenchTime, Coats, Processes, Climate, Place]
};

/// What the inspection is judged by: its answers, and what the packs want worked out of the machine.
const INSPECTION: &[Source] = {
    use Source::*;
    &[Answers, Identity, Drive, Wheels, Supply, Consumers, Indication]
};

/// What the answers to a query are worked out from, whatever is asked. A query that stands here with nothing never goes old.
fn reads(asked: Asked) -> &'static [&'static [Source]] {
    use Source::*;
    match asked {
        Asked::Shelf => &[&[Shelf]],
        Asked::SetAside | Asked::Tables | Asked::ReadyMade | Asked::Products | Asked::Evaluate | Asked::Handbook => &[],
        Asked::Fasteners | Asked::Mixing | Asked::Wire => &[],
        Asked::Today => &[PLAN, INSPECTION],
        Asked::Plan | Asked::Job => &[PLAN],
        Asked::Alarms => &[&[Jobs, Parts, Coats, Processes, Climate, Place]],
        Asked::Gearing | Asked::SprocketChoice => &[&[Drive, Wheels]],
        Asked::ChainWear => &[&[Drive, Readings]],
        Asked::Thrust | Asked::Tyres => &[&[Drive, Wheels, Identity]],
        Asked::Load => &[&[Supply, Consumers, Indication, Drive]],
        Asked::Charging => &[&[Supply, Readings]],
        Asked::Lamps => &[&[Supply, Consumers, Indication]],
        Asked::Brakes => &[&[Brakes, Wheels, Identity]],
        Asked::Filling => &[&[Fluids]],
        Asked::Harness => &[&[Circuits, Supply, Consumers, Indication]],
        Asked::Fault => &[&[Searches, Identity, Circuits, Supply, Consumers, Indication]],
        Asked::Cure => &[&[Coats, Climate, Place]],
        Asked::Process => &[&[Processes, Coats, Climate, Place]],
        Asked::Inspection => &[INSPECTION],
        Asked::Ripple => &[INSPECTION, &[Brakes, Readings]],
        Asked::Bike => &[
            &[Rivals, Identity, Place, Drive, Wheels, Supply, Consumers, Brakes, Fluids, Indication],
            &[Parts, Tightenings, Coats, Climate, Readings, Photos, BenchTime],
        ],
        Asked::History => &[&[Facts]],
        Asked::Photo => &[&[Photos, Files]],
        Asked::Bundle => &[&[Facts, Files]],
    }
}

/// The queries whose answers may be others now.
pub(crate) fn queries(moved: &Moved) -> Vec<String> {
    named(|sources| sources.iter().any(|source| moved.contains(source)))
}

/// Every query that can go old: another bike is open, or nobody knows what the caller has seen.
pub(crate) fn every_query() -> Vec<String> {
    named(|sources| !sources.is_empty())
}

/// Whether the plan that was worked out no longer holds.
pub(crate) fn moves_the_plan(moved: &Moved) -> bool {
    PLAN.iter().any(|source| moved.contains(source))
}

fn named(goes_old: impl Fn(&[Source]) -> bool) -> Vec<String> {
    let old = ALL.iter().filter(|(asked, _)| reads(*asked).iter().any(|sources| goes_old(sources)));
    old.map(|(_, name)| camel(name)).collect()
}

/// A variant's name as it stands in JSON.
fn camel(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map(|first| first.to_ascii_lowercase().to_string() + letters.as_str()).unwrap_or_default()
}

/// In what a bike differs from what it was. Whoever adds something to the bike says here what it is.
pub(crate) fn moved(before: &Bike, after: &Bike) -> Moved {
    use Source::*;
    let Bike {
        id: _,
        identity,
        place,
        standard,
        fitted,
        parts,
        tightenings,
        coats,
        processes,
        climate,
        readings,
        photos,
        jobs,
        answers,
        circuits,
        searches,
        bench_time,
    } = before;
    let mut moved: Moved = [
        (Identity, *identity != after.identity),
        (Place, *place != after.place),
        (Parts, *parts != after.parts),
        (Tightenings, *tightenings != after.tightenings),
        (Coats, *coats != after.coats),
        (Processes, *processes != after.processes),
        (Climate, *climate != after.climate),
        (Readings, *readings != after.readings),
        (Photos, *photos != after.photos),
        (Jobs, *jobs != after.jobs),
        (Answers, *answers != after.answers),
        (Circuits, *circuits != after.circuits),
        (Searches, *searches != after.searches),
        (BenchTime, *bench_time != after.bench_time),
    ]
    .into_iter()
    .filter_map(|(source, differs)| differs.then_some(source))
    .collect();
    moved.extend(of_spec(standard, &after.standard));
    moved.extend(of_spec(fitted, &after.fitted));
    moved
}

fn of_spec(before: &Spec, after: &Spec) -> impl Iterator<Item = Source> {
    use Source::*;
    let Spec { drive, front_wheel, rear_wheel, supply, consumers, front_brake, rear_brake, fluids, indication } =
        before;
    [
        (Drive, *drive != after.drive),
        (Wheels, *front_wheel != after.front_wheel || *rear_wheel != after.rear_wheel),
        (Supply, *supply != after.supply),
        (Consumers, *consumers != after.consumers),
        (Brakes, *front_brake != after.front_brake || *rear_brake != after.rear_brake),
        (Fluids, *fluids != after.fluids),
        (Indication, *indication != after.indication),
    ]
    .into_iter()
    .filter_map(|(source, differs)| differs.then_some(source))
}
