//! What was recorded of the bike and its circuits, what was fitted, and the searches for faults.

use layshaft_core::record::{
    Brake, Consumer, Drive, ElementChange, End, Evidence, FaultClosing, Fluid, Indication, Side, Supply, Trouble, Wheel,
};
use layshaft_wire::wire;

/// Records the drive train.
#[wire]
pub struct RecordDrive {
    /// Which spec.
    pub side: Side,
    /// The drive train.
    pub drive: Drive,
}

/// Records a wheel.
#[wire]
pub struct RecordWheel {
    /// Which spec.
    pub side: Side,
    /// Which wheel.
    pub end: End,
    /// The wheel.
    pub wheel: Wheel,
}

/// Records battery and alternator.
#[wire]
pub struct RecordSupply {
    /// Which spec.
    pub side: Side,
    /// Battery and alternator.
    pub supply: Supply,
}

/// Records a consumer.
#[wire]
pub struct RecordConsumer {
    /// Which spec.
    pub side: Side,
    /// Its id; left out: a new one.
    pub id: Option<String>,
    /// The consumer.
    pub consumer: Consumer,
}

/// Takes a consumer off.
#[wire]
pub struct RemoveConsumer {
    /// Which spec.
    pub side: Side,
    /// Its id.
    pub id: String,
}

/// Records a brake.
#[wire]
pub struct RecordBrake {
    /// Which spec.
    pub side: Side,
    /// Which brake.
    pub end: End,
    /// The brake.
    pub brake: Brake,
}

/// Records a filling.
#[wire]
pub struct RecordFluid {
    /// Which spec.
    pub side: Side,
    /// Its id; left out: a new one.
    pub id: Option<String>,
    /// The filling.
    pub fluid: Fluid,
}

/// Fits other sprockets.
#[wire]
pub struct FitSprockets {
    /// Teeth of the gearbox sprocket.
    pub front_teeth: u32,
    /// Teeth of the wheel sprocket.
    pub rear_teeth: u32,
    /// Links of the chain; left out: as in the ripple.
    pub chain_links: Option<u32>,
}

/// Fits another consumer.
#[wire]
pub struct FitConsumer {
    /// Id of the place.
    pub id: String,
    /// The consumer.
    pub consumer: Consumer,
}

/// Fits other parts in a brake.
#[wire]
pub struct FitBrake {
    /// Which brake.
    pub end: End,
    /// What is fitted; fields left out stay as they are.
    pub brake: Brake,
}

/// Fits another tyre, tube or rim.
#[wire]
pub struct FitTyre {
    /// Which wheel.
    pub end: End,
    /// What is fitted; fields left out stay as they are, but another tyre brings its own date and roll-out.
    pub wheel: Wheel,
}

/// Records flasher, pilots and load resistors.
#[wire]
pub struct RecordIndication {
    /// Which spec.
    pub side: Side,
    /// Flasher, pilots and load resistors.
    pub indication: Indication,
}

/// Fits another flasher, other pilots, load resistors.
#[wire]
pub struct FitFlasher {
    /// What is fitted; fields left out stay as they are.
    pub indication: Indication,
}

/// Changes an element of a circuit, or adds one.
#[wire]
pub struct AdaptCircuit {
    /// Id of the circuit.
    pub circuit: String,
    /// Id of the element.
    pub element: String,
    /// The change as it shall be; empty: as in the template again.
    pub change: ElementChange,
}

/// Begins a search for a fault.
#[wire]
pub struct StartFault {
    /// What is wrong.
    pub trouble: Trouble,
}

/// Answers a check of a search.
#[wire]
pub struct AnswerFault {
    /// Id of the search.
    pub search: String,
    /// The answer.
    pub answer: Evidence,
}

/// Takes the last answer of a search back.
#[wire]
pub struct UndoFaultStep {
    /// Id of the search.
    pub search: String,
}

/// Ends a search.
#[wire]
pub struct CloseFault {
    /// Id of the search.
    pub search: String,
    /// How it ended.
    pub closing: FaultClosing,
    /// What was learned, for the next time.
    pub learned: Option<String>,
}
