//! What can be searched, and what of it the bike has.

use layshaft_wire::wire;

use super::searched::{name_of_circuit, name_of_table};
use crate::faults::knowledge::KNOWLEDGE;
use crate::faults::reach::searchable;
use crate::harness::TEMPLATES;
use crate::message::Message;
use crate::record::{Bike, BrakeKind, Trouble};

/// Where somebody notices that something is wrong.
#[wire]
pub enum NoticedAt {
    /// The engine: it does not turn, start, or stay cool.
    Engine,
    /// A lamp or the horn.
    Lamps,
    /// The battery.
    Battery,
    /// Lever and pedal.
    Controls,
    /// The floor below it.
    Floor,
}

/// Trouble that can be searched.
#[wire]
pub struct TroubleOffer {
    /// The trouble.
    pub trouble: Trouble,
    /// In words.
    pub name: Message,
    /// Where it is noticed.
    pub noticed_at: NoticedAt,
    /// Whether the bike has what it is about. What nobody has told counts as there.
    pub suits: bool,
}

/// Everything that can be searched, in the order in which it is shown.
pub(super) fn offers(bike: &Bike) -> Vec<TroubleOffer> {
    let table = |id: &&str| TroubleOffer {
        trouble: Trouble::Table { table: (*id).to_owned() },
        name: name_of_table(id),
        noticed_at: noticed_at(id),
        suits: suits(bike, id),
    };
    let circuit = |id: &str| TroubleOffer {
        trouble: Trouble::Wiring { circuit: id.to_owned(), reworked: None },
        name: name_of_circuit(id),
        noticed_at: noticed_at(id),
        suits: TEMPLATES.iter().any(|template| template.id == id && template.suits(bike)),
    };
    KNOWLEDGE.iter().map(table).chain(searchable().map(circuit)).collect()
}

fn noticed_at(id: &str) -> NoticedAt {
    match id {
        "charging-weak" | "charging" | "charging-three-phase" => NoticedAt::Battery,
        "turns-but-does-not-start" | "overheats" | "starter" | "ignition-stop" => NoticedAt::Engine,
        "brake-lever-spongy" | "clutch-drags" => NoticedAt::Controls,
        "oil-leak" => NoticedAt::Floor,
        _ => NoticedAt::Lamps,
    }
}

/// Whether the bike has what a table is about; a circuit says it of itself.
fn suits(bike: &Bike, id: &str) -> bool {
    let drums =
        [&bike.fitted.front_brake, &bike.fitted.rear_brake].iter().all(|end| end.brake == Some(BrakeKind::Drum));
    match id {
        "brake-lever-spongy" => !drums,
        "charging-weak" => bike.fitted.supply.kind().has_battery(),
        _ => true,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{Consumer, ConsumerRole, ElectricalSystem, Slot, Starter};

    fn unsuited(bike: &Bike) -> Vec<String> {
        let left = offers(bike).into_iter().filter(|offer| !offer.suits);
        left.map(|offer| match offer.trouble {
            Trouble::Table { table } => table,
            Trouble::Wiring { circuit, .. } => circuit,
        })
        .collect()
    }

    #[test]
    fn of_an_empty_bike_everything_may_be_and_of_a_plain_one_only_what_it_has() {
        let mut bike = Bike::default();
        let on_coil = ["coil-lighting", "coil-stop-lamp", "coil-horn"];
        assert_eq!(unsuited(&bike), on_coil, "a bike that says nothing has a battery");
        bike.fitted.front_brake.brake = Some(BrakeKind::Drum);
        assert_eq!(unsuited(&bike), on_coil, "the rear brake may be a disc");
        bike.fitted.rear_brake.brake = Some(BrakeKind::Drum);
        bike.identity.starter = Some(Starter::Kick);
        bike.fitted.supply.system = Some(ElectricalSystem::LightingCoil);
        let horn = Consumer { role: Some(ConsumerRole::Horn), ..Consumer::default() };
        bike.fitted.consumers = vec![Slot { id: "h".to_owned(), consumer: horn }];
        let mut left = unsuited(&bike);
        left.sort_unstable();
        let wanted = [
            "brake-lever-spongy",
            "charging",
            "charging-three-phase",
            "charging-weak",
            "coil-stop-lamp",
            "horn",
            "indicators-one-pilot",
            "indicators-two-pilots",
            "lighting",
            "neutral",
            "starter",
            "stop-lamp",
        ];
        assert_eq!(left, wanted);
    }
}
