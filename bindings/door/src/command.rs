//! The commands: what the mechanic did. One payload struct each.

use layshaft_core::message::Message;
use layshaft_core::ready_made::BikeKind;
use layshaft_core::record::{
    BenchTime, ConsumerRole, Identity, ItemAnswer, Part, Place, Process, Product, Reading, StayPlace, Tightening,
};
use layshaft_wire::wire;

use crate::commands;

mod jobs;
mod spec;

pub use jobs::*;
pub use spec::*;

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

/// Says what kind of bike the open one is: strokes, cooling, starter, voltage, brakes, and what is usual on such a bike
/// where nothing that draws current is entered yet. What the kind leaves out stays as it is.
#[wire]
pub struct DescribeKind {
    /// What is said of it.
    pub bike_kind: BikeKind,
    /// What each role is called, in the language of whoever asks; a role without a name is not entered.
    pub names: Vec<RoleName>,
}

/// What something that draws current is called.
#[wire]
pub struct RoleName {
    /// What it is to the bike.
    pub role: ConsumerRole,
    /// Its name.
    pub name: String,
}

/// An invented bike to look around with.
#[wire]
pub enum DemoBike {
    /// The Orrin Tern 175: four-stroke, 12 V, battery and indicators.
    OrrinTern175,
    /// The Orrin Wren 50: two-stroke, 6 V from a lighting coil, drum brakes on cables.
    OrrinWren50,
}

/// Puts an invented bike on the shelf and opens it.
#[wire(lenient)]
pub struct LoadDemo {
    /// Which; left out: the Orrin Tern 175.
    pub demo: Option<DemoBike>,
}

/// Opens a bike of the shelf.
#[wire]
pub struct OpenBike {
    /// Its id.
    pub bike: String,
}

/// Puts a bike away; its facts stay.
#[wire]
pub struct PutBikeAway {
    /// Its id.
    pub bike: String,
}

/// Brings a bike back.
#[wire]
pub struct BringBikeBack {
    /// Its id.
    pub bike: String,
}

/// Brings back what was put away. What is there already stays as it is.
#[wire]
pub struct BringBack {
    /// Kind of the record: `job`, `part`, `tightening`, `photo`, `consumer`.
    pub record_kind: String,
    /// Its id, as the list of what was put away has it.
    pub id: String,
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

/// Records a part.
#[wire]
pub struct RecordPart {
    /// Its id; left out: a new one.
    pub id: Option<String>,
    /// The part.
    pub part: Part,
}

/// Puts a part away.
#[wire]
pub struct PutPartAway {
    /// Its id.
    pub id: String,
}

/// Records the maker's torque of a joint.
#[wire]
pub struct RecordTightening {
    /// Its id; left out: a new one.
    pub id: Option<String>,
    /// The torque with its source.
    pub tightening: Tightening,
}

/// Puts a torque away.
#[wire]
pub struct PutTighteningAway {
    /// Its id.
    pub id: String,
}

/// Keeps a photo of something.
#[wire]
pub struct AttachPhoto {
    /// Kind of the record that it shows.
    pub of_kind: String,
    /// Id of that record.
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
    /// Its id.
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
    /// Id of the coat.
    pub id: String,
}

/// Says where a coat stands from a moment on.
#[wire]
pub struct MoveCoat {
    /// Id of the coat.
    pub id: String,
    /// Where.
    pub place: StayPlace,
    /// Temperature there, °C; left out: the log in the garage, 20 °C in the house.
    pub celsius: Option<f64>,
    /// From when on, milliseconds since 1970 (UTC); left out: now.
    pub from_ms: Option<i64>,
}

/// Says in which coats a job is done, as long as none of them is on. Without a job they go to the one in the plan that paints such
/// a part, else that job comes with them.
#[wire]
pub struct StartProcess {
    /// The coats, with their job.
    pub process: Process,
}

/// Lays the next coat or decal of a paint job.
#[wire]
pub struct LayCoat {
    /// Id of the paint job.
    pub process: String,
    /// When, milliseconds since 1970 (UTC); left out: now.
    pub applied_ms: Option<i64>,
    /// Another product than planned.
    pub product: Option<Product>,
    /// It went on although it was too soon, without sanding, or in air that was too cold or too damp for it; left out:
    /// then it is refused.
    pub anyway: Option<bool>,
}

/// Notes that the topmost coat of a paint job was sanded.
#[wire]
pub struct SandCoat {
    /// Id of the paint job.
    pub process: String,
}

/// Ends a paint job before its time.
#[wire]
pub struct EndProcess {
    /// Id of the paint job.
    pub process: String,
}

/// Notes temperature and humidity where the bike stands.
#[wire]
pub struct NoteClimate {
    /// Temperature, °C.
    pub celsius: f64,
    /// Relative humidity, per cent.
    pub humidity: Option<f64>,
    /// From when on, milliseconds since 1970 (UTC); left out: now.
    pub from_ms: Option<i64>,
}

/// Takes a reading.
#[wire]
pub struct TakeReading {
    /// The reading.
    pub reading: Reading,
}

/// Answers an inspection item.
#[wire]
pub struct AnswerItem {
    /// Id of the pack.
    pub pack: String,
    /// Id of the item.
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
    /// The record's id.
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
    /// Accepts a bundle that holds another bike, as a second one; left out: no.
    #[wire(default)]
    pub as_second_bike: bool,
}

/// What a command did.
#[wire]
pub struct Outcome {
    /// The command's own id; `Undo` takes it back.
    pub batch: String,
    /// Facts written.
    pub changes: u32,
    /// Queries whose answers may be different now.
    pub stale: Vec<String>,
    /// Id of what was made.
    pub made: Option<String>,
    /// What came in with a bundle.
    pub received: Option<Received>,
    /// What else the command did that its caller may not expect.
    pub notes: Vec<Message>,
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
    /// Facts that could not be taken in; all others of the bundle are here now.
    pub not_taken: Vec<NotTaken>,
}

/// A fact of a bundle whose stamp stands for another value here: two devices work under one id, as a copied database
/// does. The value that was here stays, and this one is nowhere but in the bundle.
#[wire]
pub struct NotTaken {
    /// Name of the bike.
    pub bike: String,
    /// Kind of the record.
    pub record_kind: String,
    /// Id of the record.
    pub record: String,
    /// The field.
    pub field: String,
    /// The value here, as JSON.
    pub here: String,
    /// The value in the bundle, as JSON.
    pub came: String,
    /// The stamp of both.
    pub stamp: String,
}
