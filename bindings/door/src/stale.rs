//! Which answers a command makes old: what each answer is worked out from, held against what moved.
//!
//! What moved is read off the bike itself, before and after, so it is the same for a command, an undo, a settled value and
//! a bundle. `tests/suite/stale` asks every query before and after, and takes this list at its word both ways.

use std::collections::BTreeSet;

use layshaft_core::record::{Bike, Spec};

/// Makes of the list of kinds what an answer may be worked out from, and in what a bike differs from what it was.
macro_rules! make_source {
    (
        one { $($(#[$one_doc:meta])* $one:ident: $one_type:ident = $one_kind:literal;)* }
        many { $($(#[$many_doc:meta])* $many:ident: $many_type:ident = $many_kind:literal;)* }
        log { $($(#[$log_doc:meta])* $log:ident: $log_type:ident by $by:ident = $log_kind:literal;)* }
        slots { $($slot_type:ident = $slot_kind:literal in $($(#[$slot_doc:meta])* $slot:ident $slot_name:literal),*;)* }
        listed { $($listed_type:ident = $listed_kind:literal in $(#[$listed_doc:meta])* $listed:ident: $card:ident { $inner:ident };)* }
    ) => {
        /// What an answer may be worked out from.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub(crate) enum Source {
            /// How many facts each bike has, which bike is open, when it was exported.
            Shelf,
            /// Every fact of the open bike, also one that does not hold.
            Facts,
            /// The values of the open bike that lost a concurrent edit.
            Rivals,
            /// What was put away on the open bike.
            Away,
            /// Attachments.
            Files,
            $($one_type,)*
            $($many_type,)*
            $($log_type,)*
            $($slot_type,)*
            $($listed_type,)*
        }

        /// In what a bike differs from what it was.
        pub(crate) fn moved(before: &Bike, after: &Bike) -> Moved {
            let mut moved: Moved = [
                $((Source::$one_type, before.$one != after.$one),)*
                $((Source::$many_type, before.$many != after.$many),)*
                $((Source::$log_type, before.$log != after.$log),)*
            ]
            .into_iter()
            .filter_map(|(source, differs)| differs.then_some(source))
            .collect();
            moved.extend(of_spec(&before.standard, &after.standard));
            moved.extend(of_spec(&before.fitted, &after.fitted));
            moved
        }

        fn of_spec(before: &Spec, after: &Spec) -> impl Iterator<Item = Source> {
            [
                $((Source::$slot_type, $(before.$slot != after.$slot)||*),)*
                $((Source::$listed_type, before.$listed != after.$listed),)*
            ]
            .into_iter()
            .filter_map(|(source, differs)| differs.then_some(source))
        }
    };
}
layshaft_core::records!(make_source);

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
    &[Job, Part, BenchTime, Coat, Process, Climate, Place]
};

/// What the inspection is judged by: its answers, the jobs that put right what was found, and what the packs want worked out of the machine.
const INSPECTION: &[Source] = {
    use Source::*;
    &[ItemAnswer, Job, Identity, Drive, Wheel, Brake, Supply, Consumer, Indication]
};

/// What the answers to a query are worked out from, whatever is asked. A query that stands here with nothing never goes old.
fn reads(asked: Asked) -> &'static [&'static [Source]] {
    use Source::*;
    match asked {
        Asked::Shelf => &[&[Shelf]],
        Asked::SetAside | Asked::Tables | Asked::Products | Asked::Evaluate | Asked::Handbook => &[],
        Asked::Calendar | Asked::Fasteners | Asked::Mixing | Asked::Wire => &[],
        Asked::ReadyMade => &[&[Job, Identity, Brake]],
        Asked::Starting => &[&[Identity, Supply, Brake, Consumer]],
        Asked::Today => &[PLAN, INSPECTION],
        Asked::Plan => &[PLAN],
        Asked::Job => &[PLAN, &[FaultSearch, Consumer]],
        Asked::Found => &[&[Job, Part, Reading, FaultSearch, Consumer]],
        Asked::Alarms => &[&[Job, Part, Coat, Process, Climate, Place]],
        Asked::Gearing | Asked::SprocketChoice => &[&[Drive, Wheel]],
        Asked::ChainWear => &[&[Drive, Reading, Job]],
        Asked::Thrust | Asked::Tyres => &[&[Drive, Wheel, Identity]],
        Asked::Load => &[&[Supply, Consumer, Indication, Drive]],
        Asked::UsualConsumers => &[&[Supply, Consumer]],
        Asked::Charging => &[&[Supply, Reading]],
        Asked::Lamps => &[&[Supply, Consumer, Indication]],
        Asked::Brakes => &[&[Brake, Wheel, Identity]],
        Asked::Filling => &[&[Fluid]],
        Asked::Harness => &[&[Identity, ElementChange, Supply, Consumer, Indication]],
        Asked::Fault => &[&[FaultSearch, Job, Identity, Brake, ElementChange, Supply, Consumer, Indication]],
        Asked::Cure => &[&[Coat, Climate, Place]],
        Asked::Process => &[&[Process, Job, Coat, Climate, Place]],
        Asked::Inspection => &[INSPECTION],
        Asked::Ripple => &[INSPECTION, &[Reading]],
        Asked::Bike => &[
            &[Rivals, Identity, Place, Drive, Wheel, Supply, Consumer, Brake, Fluid, Indication],
            &[Part, Tightening, Coat, Climate, Reading, Photo, BenchTime],
        ],
        Asked::History => &[&[Facts]],
        Asked::PutAway => &[&[Away]],
        Asked::Photo => &[&[Photo, Files]],
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
