//! What a consumer is to the bike. The lamp page, the circuits and the load find a consumer by its role, whatever the owner
//! calls it.

use layshaft_wire::wire;

use crate::message::choices;

/// What a consumer is to the bike.
#[wire(stored)]
pub enum ConsumerRole {
    /// One headlamp, whose beams draw alike.
    Headlamp,
    /// Dipped beam, where main beam draws otherwise.
    DippedBeam,
    /// Main beam, where dipped beam draws otherwise.
    MainBeam,
    /// Front position lamp.
    Position,
    /// Tail lamp.
    Tail,
    /// Lamp of the number plate.
    NumberPlate,
    /// Stop lamp.
    Stop,
    /// All indicators, where front and rear are alike; counted on one side.
    Indicators,
    /// Front indicators, counted on one side.
    IndicatorsFront,
    /// Rear indicators, counted on one side.
    IndicatorsRear,
    /// Pilot lamp of the indicators.
    IndicatorPilot,
    /// Pilot lamp of main beam.
    MainBeamPilot,
    /// Pilot lamp of neutral.
    NeutralPilot,
    /// Lamp in speedometer or tachometer.
    Instrument,
    /// Horn.
    Horn,
    /// Ignition.
    Ignition,
}

choices! { ConsumerRole; }

impl ConsumerRole {
    /// Whether it is an indicator, of whichever end.
    pub fn is_indicator(self) -> bool {
        matches!(self, Self::Indicators | Self::IndicatorsFront | Self::IndicatorsRear)
    }

    /// Whether a bike cannot have both: the same thing twice, or a whole beside its part. Lamps in instruments and over the
    /// plate may be several.
    ///
    /// ```
    /// use layshaft_core::record::ConsumerRole::{DippedBeam, Headlamp, IndicatorsRear, Instrument, MainBeam};
    /// assert!(Headlamp.excludes(DippedBeam) && IndicatorsRear.excludes(IndicatorsRear));
    /// assert!(!DippedBeam.excludes(MainBeam) && !Instrument.excludes(Instrument));
    /// ```
    pub fn excludes(self, other: Self) -> bool {
        use ConsumerRole::{DippedBeam, Headlamp, Indicators, Instrument, MainBeam, NumberPlate};
        match (self, other) {
            (Instrument, Instrument) | (NumberPlate, NumberPlate) => false,
            (Headlamp, DippedBeam | MainBeam) | (DippedBeam | MainBeam, Headlamp) => true,
            (Indicators, one) | (one, Indicators) if one.is_indicator() => true,
            (one, other) => one == other,
        }
    }

    /// The role of a consumer stored before roles were, by the id that its place had then.
    pub(super) fn of_old_place(id: &str) -> Option<Self> {
        Some(match id {
            "headlamp" => Self::Headlamp,
            "tail" => Self::Tail,
            "stop" => Self::Stop,
            "indicators" => Self::Indicators,
            "pilot" => Self::IndicatorPilot,
            "speedometer-lamp" => Self::Instrument,
            "horn" => Self::Horn,
            "ignition" => Self::Ignition,
            _ => return None,
        })
    }
}
