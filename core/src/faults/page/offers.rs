//! What can be searched, and what of it the bike has.

use layshaft_wire::wire;

use super::searched::{name_of_circuit, name_of_table};
use crate::faults::knowledge::KNOWLEDGE;
use crate::faults::reach::searchable;
use crate::message::Message;
use crate::record::{Bike, BrakeKind, ConsumerRole, Starter, Trouble};

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
    let offer =
        |trouble, name, id: &str| TroubleOffer { trouble, name, noticed_at: noticed_at(id), suits: suits(bike, id) };
    let table = |id: &&str| offer(Trouble::Table { table: (*id).to_owned() }, name_of_table(id), id);
    let circuit = |id: &str| offer(Trouble::Wiring { circuit: id.to_owned(), reworked: None }, name_of_circuit(id), id);
    KNOWLEDGE.iter().map(table).chain(searchable().map(circuit)).collect()
}

fn noticed_at(id: &str) -> NoticedAt {
    match id {
        "charging-weak" | "charging" | "charging-three-phase" => NoticedAt::Battery,
        "turns-but-does-not-start" | "overheats" | "starter" => NoticedAt::Engine,
        "brake-lever-spongy" | "clutch-drags" => NoticedAt::Controls,
        "oil-leak" => NoticedAt::Floor,
        _ => NoticedAt::Lamps,
    }
}

/// Whether the bike has what the trouble is about.
fn suits(bike: &Bike, id: &str) -> bool {
    let drums =
        [&bike.fitted.front_brake, &bike.fitted.rear_brake].iter().all(|end| end.brake == Some(BrakeKind::Drum));
    let lamps_known = !bike.fitted.consumers.is_empty();
    let has = |of: fn(ConsumerRole) -> bool| !lamps_known || bike.fitted.consumer_as(of).is_some();
    match id {
        "brake-lever-spongy" => !drums,
        "charging-weak" | "charging" | "charging-three-phase" => bike.fitted.supply.kind().has_battery(),
        "starter" => bike.identity.starter != Some(Starter::Kick),
        "indicators-one-pilot" | "indicators-two-pilots" => has(ConsumerRole::is_indicator),
        "stop-lamp" => has(|role| role == ConsumerRole::Stop),
        "horn" => has(|role| role == ConsumerRole::Horn),
        _ => true,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{Consumer, ElectricalSystem, Slot};

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
        assert_eq!(unsuited(&bike), [""; 0]);
        bike.fitted.front_brake.brake = Some(BrakeKind::Drum);
        assert_eq!(unsuited(&bike), [""; 0], "the rear brake may be a disc");
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
            "indicators-one-pilot",
            "indicators-two-pilots",
            "starter",
            "stop-lamp",
        ];
        assert_eq!(left, wanted);
    }
}
