//! The technical spec of one side of the bike: standard (as made) or fitted (as it is being built).

use std::collections::BTreeMap;

use layshaft_wire::wire;

use super::brake::Brake;
use super::consumer::Consumer;
use super::drive::Drive;
use super::fluid::Fluid;
use super::indication::Indication;
use super::role::ConsumerRole;
use super::supply::Supply;
use super::wheel::Wheel;
use crate::changes::{Fields, read};
use crate::message::choices;

/// Which spec.
#[wire]
pub enum Side {
    /// As made.
    Standard,
    /// As it is being built. What is not said here is as standard.
    Fitted,
}

/// Front or rear.
#[wire]
pub enum End {
    /// Front.
    Front,
    /// Rear.
    Rear,
}

choices! { End; }

/// Makes the spec from the list of kinds, and its reading from slots whose layers are merged.
macro_rules! make_spec {
    (
        one { $($one:tt)* } many { $($many:tt)* } log { $($log:tt)* }
        slots { $($slot_type:ident = $slot_kind:literal in
            $($(#[$slot_doc:meta])* $slot:ident $slot_name:literal),*;)* }
        listed { $($listed_type:ident = $listed_kind:literal in
            $(#[$listed_doc:meta])* $listed:ident: $card:ident { $inner:ident };)* }
    ) => {
        /// One side of the bike.
        #[wire(lenient)]
        pub struct Spec {
            $($($(#[$slot_doc])* pub $slot: $slot_type,)*)*
            $($(#[$listed_doc])* pub $listed: Vec<$card>,)*
        }

        impl Spec {
            /// The kinds of record that it is made of.
            pub(crate) const KINDS: &[&str] = &[$($slot_kind,)* $($listed_kind,)*];

            /// Reads a spec. `slots` gives the fields in each slot of a kind.
            pub(crate) fn read(slots: impl Fn(&'static str) -> BTreeMap<String, Fields>) -> Spec {
                let spec = Spec {
                    $($($slot: read(&slots($slot_kind).remove($slot_name).unwrap_or_default()),)*)*
                    $($listed: slots($listed_kind).into_iter().map(|(id, fields)| $card { id, $inner: read(&fields) }).collect(),)*
                };
                spec.with_roles()
            }
        }
    };
}
crate::records!(make_spec);

impl Spec {
    /// The spec in which a consumer stored before roles were has the role of its place.
    fn with_roles(mut self) -> Spec {
        for Slot { id, consumer } in &mut self.consumers {
            consumer.role = consumer.role.or_else(|| ConsumerRole::of_old_place(id));
        }
        self
    }

    /// The first consumer whose role is as asked for.
    pub fn consumer_as(&self, role: impl Fn(ConsumerRole) -> bool) -> Option<&Slot> {
        self.consumers.iter().find(|slot| slot.consumer.role.is_some_and(&role))
    }
}

/// A consumer with its id, the same id on both sides of the bike.
#[wire]
pub struct Slot {
    /// Id.
    pub id: String,
    /// The consumer there.
    pub consumer: Consumer,
}

/// A filling with its id, the same id on both sides of the bike.
#[wire]
pub struct Filling {
    /// Id.
    pub id: String,
    /// The filling.
    pub fluid: Fluid,
}
