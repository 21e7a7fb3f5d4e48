//! The commands: what the mechanic did. One payload struct each.

use layshaft_core::bike::{
    Brake, Climate, Consumer, Drive, End, Fluid, Identity, Indication, Job, Part, Place, Reading, Side, Supply,
    Tightening, Wheel,
};
use layshaft_core::coating::{Process, Product, Stay};
use layshaft_core::faults::{Evidence, FaultClosing, Trouble};
use layshaft_core::harness::ElementChange;
use layshaft_core::inspection::ItemAnswer;
use layshaft_core::plan::BenchTime;
use layshaft_wire::wire;

use crate::commands;

/// Makes the enum of all commands from the registry.
macro_rules! make_command {
    ($($(#[$doc:meta])* $method:ident $name:ident;)*) => {
        /// Something the mechanic did.
        #[wire]
        #[allow(clippy::large_enum_variant)]
        pub enum Command {
            $($(#[$doc])* $name($name),)*
        }

        $(impl From<$name> for Command {
            fn from(payload: $name) -> Self {
                Command::$name(payload)
            }
        })*
    };
}
commands!(make_command);

/// Starts a bike and opens it.
#[wire]
pub struct StartBike {
    /// Who it is.
    pub identity: Identity,
}

/// Puts the demo bike on the shelf and opens it.
#[wire]
pub struct LoadDemo {}

/// Opens a bike of the shelf.
#[wire]
pub struct OpenBike {
    /// Its mark.
    pub bike: String,
}

/// Puts a bike away; its facts stay.
#[wire]
pub struct PutBikeAway {
    /// Its mark.
    pub bike: String,
}

/// Brings a bike back.
#[wire]
pub struct BringBikeBack {
    /// Its mark.
    pub bike: String,
}

/// Says who the bike is.
#[wire]
pub struct DescribeBike {
    /// Who it is.
    pub identity: Identity,
}

/// Says where it stands.
#[wire]
pub struct DescribePlace {
    /// Where it stands.
    pub place: Place,
}

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
    /// Its mark; left out: a new one.
    pub id: Option<String>,
    /// The consumer.
    pub consumer: Consumer,
}

/// Takes a consumer off.
#[wire]
pub struct RemoveConsumer {
    /// Which spec.
    pub side: Side,
    /// Its mark.
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
    /// Its mark; left out: a new one.
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
    /// Mark of the place.
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
    /// Mark of the circuit.
    pub circuit: String,
    /// Mark of the element.
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
    /// Mark of the search.
    pub search: String,
    /// The answer.
    pub answer: Evidence,
}

/// Takes the last answer of a search back.
#[wire]
pub struct UndoFaultStep {
    /// Mark of the search.
    pub search: String,
}

/// Ends a search.
#[wire]
pub struct CloseFault {
    /// Mark of the search.
    pub search: String,
    /// How it ended.
    pub closing: FaultClosing,
}

/// Adds a job.
#[wire]
pub struct AddJob {
    /// The job.
    pub job: Job,
}

/// Adds a ready-made job.
#[wire]
pub struct AddReadyMade {
    /// Its mark.
    pub ready_made: String,
}

/// Changes a job.
#[wire]
pub struct ChangeJob {
    /// Its mark.
    pub id: String,
    /// The job as it shall be.
    pub job: Job,
}

/// Puts a job away.
#[wire]
pub struct PutJobAway {
    /// Its mark.
    pub id: String,
}

/// Brings a job back.
#[wire]
pub struct BringJobBack {
    /// Its mark.
    pub id: String,
}

/// Begins a job.
#[wire]
pub struct BeginJob {
    /// Its mark.
    pub id: String,
}

/// Ticks steps of a job off.
#[wire]
pub struct TickStep {
    /// Its mark.
    pub id: String,
    /// Steps done, from the first.
    pub steps_done: u32,
}

/// Finishes a job.
#[wire]
pub struct FinishJob {
    /// Its mark.
    pub id: String,
}

/// Opens a finished job again.
#[wire]
pub struct ReopenJob {
    /// Its mark.
    pub id: String,
}

/// Records a part.
#[wire]
pub struct RecordPart {
    /// Its mark; left out: a new one.
    pub id: Option<String>,
    /// The part.
    pub part: Part,
}

/// Puts a part away.
#[wire]
pub struct PutPartAway {
    /// Its mark.
    pub id: String,
}

/// Records the maker's torque of a joint.
#[wire]
pub struct RecordTightening {
    /// Its mark; left out: a new one.
    pub id: Option<String>,
    /// The torque with its source.
    pub tightening: Tightening,
}

/// Puts a torque away.
#[wire]
pub struct PutTighteningAway {
    /// Its mark.
    pub id: String,
}

/// Keeps a photo of something.
#[wire]
pub struct AttachPhoto {
    /// Kind of the record that it shows.
    pub of_kind: String,
    /// Mark of that record.
    pub of: String,
    /// Media type: `image/jpeg`, `image/png` or `image/webp`.
    pub media: String,
    /// The picture file, base64 in JSON.
    #[serde(with = "crate::json::bytes")]
    #[cfg_attr(feature = "ts", ts(type = "string"))]
    pub bytes: Vec<u8>,
    /// What it shows.
    pub caption: Option<String>,
}

/// Puts a photo away.
#[wire]
pub struct PutPhotoAway {
    /// Its mark.
    pub id: String,
}

/// Puts a coat on and starts its clock.
#[wire]
pub struct StartCure {
    /// On what.
    pub title: String,
    /// With what.
    pub product: Product,
    /// For which job.
    pub job: Option<String>,
    /// When, milliseconds since 1970 (UTC); left out: now.
    pub applied_ms: Option<i64>,
}

/// Ends the clock of a coat.
#[wire]
pub struct EndCure {
    /// Mark of the coat.
    pub id: String,
}

/// Says where a coat stands from a moment on. A moment of 0 means now.
#[wire]
pub struct MoveCoat {
    /// Mark of the coat.
    pub id: String,
    /// Where, and how warm it is there.
    pub stay: Stay,
}

/// Starts a paint job in several coats.
#[wire]
pub struct StartProcess {
    /// The plan.
    pub process: Process,
}

/// Lays the next coat or decal of a paint job.
#[wire]
pub struct LayCoat {
    /// Mark of the paint job.
    pub process: String,
    /// When, milliseconds since 1970 (UTC); left out: now.
    pub applied_ms: Option<i64>,
    /// Another product than planned.
    pub product: Option<Product>,
    /// It went on although it was too soon, or without sanding; left out: then it is refused.
    pub anyway: Option<bool>,
}

/// Notes that the topmost coat of a paint job was sanded.
#[wire]
pub struct SandCoat {
    /// Mark of the paint job.
    pub process: String,
}

/// Ends a paint job before its time.
#[wire]
pub struct EndProcess {
    /// Mark of the paint job.
    pub process: String,
}

/// Notes temperature and humidity. A moment of 0 means now.
#[wire]
pub struct NoteClimate {
    /// The reading.
    pub climate: Climate,
}

/// Takes a reading. A moment of 0 means now.
#[wire]
pub struct TakeReading {
    /// The reading.
    pub reading: Reading,
}

/// Answers an inspection item.
#[wire]
pub struct AnswerItem {
    /// Mark of the pack.
    pub pack: String,
    /// Mark of the item.
    pub item: String,
    /// The answer.
    pub answer: ItemAnswer,
}

/// Sets the weekly bench time.
#[wire]
pub struct SetBenchTime {
    /// The pattern.
    pub bench_time: BenchTime,
}

/// Takes a command back.
#[wire]
pub struct Undo {
    /// The batch of the command.
    pub batch: String,
}

/// Lets the value that lost a concurrent edit hold after all.
#[wire]
pub struct Settle {
    /// Kind of the record.
    pub record_kind: String,
    /// The record's mark.
    pub record: String,
    /// The field.
    pub field: String,
    /// Stamp of the value that shall hold.
    pub stamp: String,
}

/// Notes that the open bike was carried out as a bundle: the file is where the owner wanted it.
#[wire]
pub struct NoteExport {}

/// Takes a bundle in.
#[wire]
pub struct ReceiveBundle {
    /// The bytes of the file, base64 in JSON.
    #[serde(with = "crate::json::bytes")]
    #[cfg_attr(feature = "ts", ts(type = "string"))]
    pub bundle: Vec<u8>,
    /// Accepts a bundle that holds another bike, as a second one.
    pub as_second_bike: bool,
}

/// What a command did.
#[wire]
pub struct Outcome {
    /// The command's own mark; `Undo` takes it back.
    pub batch: String,
    /// Facts written.
    pub changes: u32,
    /// Queries whose answers may be different now.
    pub stale: Vec<String>,
    /// Mark of what was made.
    pub made: Option<String>,
    /// What came in with a bundle.
    pub received: Option<Received>,
}

/// What came in with a bundle.
#[wire]
pub struct Received {
    /// Facts that were new here.
    pub changes: u32,
    /// Facts that were here already.
    pub known: u32,
    /// Attachments that were new here.
    pub attachments: u32,
    /// Bikes in the bundle.
    pub bikes: u32,
    /// Values that now stand against another device's value.
    pub rivals: u32,
}
