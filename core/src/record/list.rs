//! The kinds of records, listed here once.
//!
//! The list is handed to another macro (`records!(make)` calls `make! { … }`), which makes of it what it needs: the kinds as
//! data here, [`Bike`](super::Bike) and its reading in `assemble.rs`, [`Spec`](super::Spec) in `spec/side.rs`, and in the door
//! what a change can make old. The views of a database and the words of the history page come from the kinds as data.
//!
//! A line says where a kind stands in the bike, its type, and its name in the table of changes (which never changes). The
//! fields stand at the type, marked `#[wire(lenient, stored)]`. The catalogue names both: `record-job` (`kind-job` within a
//! sentence), `record-job-title`.

use crate::changes::{Record, RecordKind, Stored};

/// Hands the list of kinds to a macro.
#[macro_export]
macro_rules! records {
    ($make:ident) => {
        $make! {
            // A bike has one of it, under the id `bike`.
            one {
                /// Who it is.
                identity: Identity = "bike";
                /// Where it stands.
                place: Place = "place";
                /// The mechanic's hours.
                bench_time: BenchTime = "benchTime";
            }
            // Any number, by their ids.
            many {
                /// Parts.
                parts: Part = "part";
                /// The maker's torques.
                tightenings: Tightening = "tightening";
                /// Coats that cure or have cured.
                coats: Coat = "coat";
                /// Paint jobs in several coats.
                processes: Process = "process";
                /// Measured values.
                readings: Reading = "reading";
                /// Photos.
                photos: Photo = "photo";
                /// Jobs.
                jobs: Job = "job";
                /// Answers to inspection items, by `pack/item`.
                answers: ItemAnswer = "answer";
                /// What the owner changed in circuits, by `circuit/element`.
                circuits: ElementChange = "circuitElement";
                /// Searches for faults.
                searches: FaultSearch = "faultSearch";
            }
            // Any number, in the order of a moment.
            log {
                /// Temperature and humidity log, oldest first.
                climate: Climate by from_ms = "climate";
            }
            // One for each slot of a spec. The id is `standard/slot` or `fitted/slot`; what is not said on the fitted side
            // is as standard.
            slots {
                Drive = "drive" in
                    /// Drive train.
                    drive "drive";
                Wheel = "wheel" in
                    /// Front wheel.
                    front_wheel "front",
                    /// Rear wheel.
                    rear_wheel "rear";
                Supply = "supply" in
                    /// Battery and alternator.
                    supply "supply";
                Brake = "brake" in
                    /// Front brake.
                    front_brake "front",
                    /// Rear brake.
                    rear_brake "rear";
                Indication = "indication" in
                    /// Flasher, pilots and load resistors.
                    indication "indication";
            }
            // Any number in a spec, each under a slot of its own.
            listed {
                Consumer = "consumer" in
                    /// Consumers by their id.
                    consumers: Slot { consumer };
                Fluid = "fluid" in
                    /// Fillings by their id.
                    fluids: Filling { fluid };
            }
        }
    };
}

/// Makes of each type a record, and of the list the kinds as data.
macro_rules! make_kinds {
    (
        one { $($(#[$one_doc:meta])* $one:ident: $one_type:ident = $one_kind:literal;)* }
        many { $($(#[$many_doc:meta])* $many:ident: $many_type:ident = $many_kind:literal;)* }
        log { $($(#[$log_doc:meta])* $log:ident: $log_type:ident by $by:ident = $log_kind:literal;)* }
        slots { $($slot_type:ident = $slot_kind:literal in
            $($(#[$slot_doc:meta])* $slot:ident $slot_name:literal),*;)* }
        listed { $($listed_type:ident = $listed_kind:literal in
            $(#[$listed_doc:meta])* $listed:ident: $card:ident { $inner:ident };)* }
    ) => {
        make_kinds! { @each
            $($one_type $one_kind;)*
            $($slot_type $slot_kind;)*
            $($listed_type $listed_kind;)*
            $($many_type $many_kind;)*
            $($log_type $log_kind;)*
        }
    };
    (@each $($of:ident $kind:literal;)*) => {
        $(impl Record for super::$of {
            const KIND: &'static str = $kind;
            const WITHIN: &'static str = concat!("kind-", $kind);
        })*

        /// Every kind of record that a bike can have.
        pub const KINDS: &[RecordKind] = &[
            $(RecordKind { kind: $kind, words: concat!("record-", $kind), fields: <super::$of as Stored>::FIELDS },)*
        ];
    };
}
records!(make_kinds);

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use serde_json::Value;

    use super::*;
    use crate::record::*;

    /// The names under which serde writes a record, in their order.
    fn written<R: Record>() -> (&'static str, Vec<String>) {
        let Ok(Value::Object(map)) = serde_json::to_value(R::default()) else { panic!("{} is no object", R::KIND) };
        (R::KIND, map.keys().cloned().collect())
    }

    macro_rules! make_written {
        (@each $($of:ident $kind:literal;)*) => { vec![$(written::<$of>(),)*] };
        (
            one { $($(#[$d1:meta])* $f1:ident: $t1:ident = $k1:literal;)* }
            many { $($(#[$d2:meta])* $f2:ident: $t2:ident = $k2:literal;)* }
            log { $($(#[$d3:meta])* $f3:ident: $t3:ident by $by:ident = $k3:literal;)* }
            slots { $($t4:ident = $k4:literal in $($(#[$d4:meta])* $f4:ident $s4:literal),*;)* }
            listed { $($t5:ident = $k5:literal in $(#[$d5:meta])* $f5:ident: $c5:ident { $i5:ident };)* }
        ) => { vec![$(written::<$t1>(),)* $(written::<$t2>(),)* $(written::<$t3>(),)* $(written::<$t4>(),)* $(written::<$t5>(),)*] };
    }

    #[test]
    fn the_fields_of_every_kind_are_named_as_they_are_stored() {
        let written: Vec<(&str, Vec<String>)> = records!(make_written);
        assert_eq!(written.len(), KINDS.len());
        for (kind, mut names) in written {
            let found = KINDS.iter().find(|found| found.kind == kind).unwrap();
            let mut declared: Vec<String> = found.fields.iter().map(|field| field.name.to_owned()).collect();
            declared.sort();
            names.sort();
            assert_eq!(declared, names, "{kind}");
        }
    }

    #[test]
    fn no_two_kinds_share_a_name_or_words() {
        let names: BTreeSet<&str> = KINDS.iter().map(|kind| kind.kind).collect();
        let words: BTreeSet<&str> = KINDS.iter().map(|kind| kind.words).collect();
        assert_eq!((names.len(), words.len()), (KINDS.len(), KINDS.len()));
    }

    #[test]
    fn what_a_field_holds_is_named_with_it() {
        let job = KINDS.iter().find(|kind| kind.kind == "job").unwrap().words_of_fields();
        let words = |name: &str| job.iter().find(|(found, _)| found == name).map(|(_, words)| *words);
        assert_eq!(words("handsOnMinutes"), Some("record-job-handsOnMinutes"));
        assert_eq!(words("wait.atMostHours"), Some("record-wait-atMostHours"));
        assert_eq!(words("gone"), Some("record-gone"));
        assert_eq!(words("wait.gone"), None);
    }
}
