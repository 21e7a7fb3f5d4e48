//! What a lamp, horn or ignition of a small motorcycle usually is, so that an owner checks figures in place of typing them.

use layshaft_wire::wire;

use super::message::LoadPageMessage;
use crate::electrical::{LampCard, Volts, lamp_cards};
use crate::quantity::{Source, Standing};
use crate::record::{Bike, Consumer, ConsumerRole, LampCap, LightSource, Use};

/// What stands for one role on most small motorcycles.
#[wire]
pub struct UsualConsumer {
    /// What it is to the bike.
    pub role: ConsumerRole,
    /// Whether another consumer of the fitted bike has the role, or one that goes with it.
    pub taken: bool,
    /// Whether it is counted on one side of the bike.
    pub on_one_side: bool,
    /// Its figures. The name is left to whoever shows it.
    pub consumer: Consumer,
}

/// What to choose from when a consumer is entered.
#[wire]
pub struct UsualAnswer {
    /// One for each role, in the order in which a bike is walked round.
    pub consumers: Vec<UsualConsumer>,
    /// Types of filament lamps for the voltage of the bike.
    pub types: Vec<LampCard>,
    /// Where the figures come from.
    pub source: Source,
}

/// One line of the table.
struct Usual {
    role: ConsumerRole,
    /// Watts in a 12 V and in a 6 V system.
    watts: [f64; 2],
    count: u32,
    used: Use,
    source: LightSource,
    cap: Option<LampCap>,
}

/// What is usual. Common practice, no source.
fn table() -> [Usual; 16] {
    use ConsumerRole as Role;
    let lamp =
        |role, watts, used, cap| Usual { role, watts, count: 1, used, source: LightSource::Filament, cap: Some(cap) };
    [
        lamp(Role::Headlamp, [35.0, 25.0], Use::Lights, LampCap::Ba20d),
        lamp(Role::DippedBeam, [35.0, 25.0], Use::Lights, LampCap::Ba20d),
        lamp(Role::MainBeam, [35.0, 25.0], Use::Lights, LampCap::Ba20d),
        lamp(Role::Position, [4.0, 4.0], Use::Lights, LampCap::Ba9s),
        lamp(Role::Tail, [5.0, 5.0], Use::Lights, LampCap::Bay15d),
        lamp(Role::NumberPlate, [5.0, 5.0], Use::Lights, LampCap::Ba15s),
        lamp(Role::Stop, [21.0, 21.0], Use::Braking, LampCap::Bay15d),
        Usual { count: 2, ..lamp(Role::Indicators, [10.0, 10.0], Use::Indicating, LampCap::Ba15s) },
        lamp(Role::IndicatorsFront, [10.0, 10.0], Use::Indicating, LampCap::Ba15s),
        lamp(Role::IndicatorsRear, [10.0, 10.0], Use::Indicating, LampCap::Ba15s),
        lamp(Role::IndicatorPilot, [3.0, 3.0], Use::Indicating, LampCap::Ba9s),
        lamp(Role::MainBeamPilot, [1.7, 1.7], Use::Lights, LampCap::Ba9s),
        lamp(Role::NeutralPilot, [3.0, 3.0], Use::Moment, LampCap::Ba9s),
        lamp(Role::Instrument, [1.7, 1.7], Use::Lights, LampCap::Ba9s),
        Usual {
            role: Role::Horn,
            watts: [30.0, 15.0],
            count: 1,
            used: Use::Moment,
            source: LightSource::Motor,
            cap: None,
        },
        Usual {
            role: Role::Ignition,
            watts: [18.0, 12.0],
            count: 1,
            used: Use::Steady,
            source: LightSource::Electronics,
            cap: None,
        },
    ]
}

impl Usual {
    fn at(self, system_volts: f64) -> Consumer {
        let [twelve, six] = self.watts;
        Consumer {
            role: Some(self.role),
            // Half way between the two systems that the table knows.
            watts: if system_volts < 9.0 { six } else { twelve },
            count: self.count,
            used: Some(self.used),
            source: Some(self.source),
            cap: self.cap,
            ..Consumer::default()
        }
    }
}

/// What usually has a role in a system of this voltage. The name is left to whoever shows it.
pub fn usual_consumer(role: ConsumerRole, system_volts: f64) -> Option<Consumer> {
    table().into_iter().find(|usual| usual.role == role).map(|usual| usual.at(system_volts))
}

/// What is usual on this bike, by the voltage of its system. Nothing is stored.
pub fn usual_answer(bike: &Bike) -> UsualAnswer {
    let volts = Volts::of(&bike.fitted.supply).system;
    let consumer = |usual: Usual| UsualConsumer {
        taken: bike.fitted.consumer_as(|role| role.excludes(usual.role)).is_some(),
        role: usual.role,
        on_one_side: usual.role.is_indicator(),
        consumer: usual.at(volts),
    };
    UsualAnswer {
        consumers: table().into_iter().map(consumer).collect(),
        types: lamp_cards(volts),
        source: Source::new(LoadPageMessage::SourceUsual, Standing::CommonPractice),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{Slot, Spec, Supply};

    fn of(volts: f64, consumers: Vec<Slot>) -> Vec<UsualConsumer> {
        let supply = Supply { system_volts: Some(volts), ..Supply::default() };
        usual_answer(&Bike { fitted: Spec { supply, consumers, ..Spec::default() }, ..Bike::default() }).consumers
    }

    #[test]
    fn everything_usual_can_be_stored_once_it_has_a_name() {
        for UsualConsumer { role, consumer, .. } in of(12.0, Vec::new()).into_iter().chain(of(6.0, Vec::new())) {
            let named = Consumer { name: "Lamp".to_owned(), ..consumer };
            assert_eq!(named.clone().checked(), Ok(named), "{role:?}");
        }
    }

    #[test]
    fn the_voltage_chooses_the_watts_and_what_is_fitted_is_taken() {
        let head = |volts| of(volts, Vec::new())[0].consumer.watts;
        assert_eq!((head(12.0), head(6.0)), (35.0, 25.0));
        let rear = Consumer { role: Some(ConsumerRole::IndicatorsRear), ..Consumer::default() };
        let usual = of(6.0, vec![Slot { id: "a".to_owned(), consumer: rear }]);
        let taken: Vec<ConsumerRole> = usual.iter().filter(|each| each.taken).map(|each| each.role).collect();
        assert_eq!(taken, [ConsumerRole::Indicators, ConsumerRole::IndicatorsRear]);
    }
}
