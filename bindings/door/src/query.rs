//! The queries, and those answers that belong to no area of the trade.

use layshaft_core::bounds::BoundCard;
pub use layshaft_core::brakes::{BrakeAnswer, BrakeAsk};
pub use layshaft_core::coating::{CureAnswer, CureAsk, ProcessAnswer, ProcessAsk};
pub use layshaft_core::electrical::{
    ChargingAnswer, ChargingAsk, LoadAnswer, LoadAsk, UsualAnswer, WireAnswer, WireAsk,
};
pub use layshaft_core::events::{AlarmsAnswer, CalendarAnswer, CalendarAsk, CalendarEntry};
pub use layshaft_core::fasteners::{FastenerAnswer, FastenerAsk};
pub use layshaft_core::faults::{FaultAnswer, FaultAsk};
pub use layshaft_core::fluids::{FillAnswer, FillAsk, MixAnswer, MixAsk};
pub use layshaft_core::gearing::{
    ChainWearAnswer, ChainWearAsk, GearingAnswer, GearingAsk, SprocketChoiceAnswer, SprocketChoiceAsk, ThrustAnswer,
    ThrustAsk,
};
pub use layshaft_core::handbook::Formula;
pub use layshaft_core::harness::{HarnessAnswer, HarnessAsk, LampAnswer, LampsAsk};
pub use layshaft_core::inspection::{InspectionAnswer, InspectionAsk};
use layshaft_core::plan::Arrival;
pub use layshaft_core::plan::{PlanAnswer, PlanAsk, PlanRow};
pub use layshaft_core::quantity::{Figures, FormulaCard};
pub use layshaft_core::ready_made::{JobOffer, PackageOffer, StartingAnswer};
pub use layshaft_core::record::{BenchTime, Coat, Delivery, Process, Product, RecordCard, SystemCard};
use layshaft_core::record::{Climate, Identity, Part, Photo, Place, PutAwayCard, Reading, Spec, Tightening};
pub use layshaft_core::ripple::{RippleAnswer, RippleAsk};
pub use layshaft_core::today::{TodayAnswer, TodayAsk};
pub use layshaft_core::tyres::{TyreAnswer, TyreAsk};
use layshaft_wire::wire;

use crate::queries;

mod work;

pub use work::*;

/// Makes the enum of all queries from the registry.
macro_rules! make_query {
    ($($(#[$doc:meta])* $method:ident $name:ident($ask:ident) -> $answer:ident;)*) => {
        /// A question.
        #[wire]
        #[allow(clippy::large_enum_variant)]
        pub enum Query {
            $($(#[$doc])* $name($ask),)*
        }
    };
}
queries!(make_query);

/// Asks without saying more.
#[wire]
pub struct BareAsk {}

/// Asks about one record.
#[wire]
pub struct IdAsk {
    /// Its id.
    pub id: String,
}

/// Asks for every value that a record has had.
#[wire]
pub struct HistoryAsk {
    /// Kind of the record.
    pub record_kind: String,
    /// The record's id.
    pub record: String,
}

/// Asks for the results of one formula.
#[wire]
pub struct EvaluateAsk {
    /// The formula with its inputs.
    pub formula: Formula,
}

/// A bike on the shelf.
#[wire]
pub struct BikeCard {
    /// Its id.
    pub id: String,
    /// What the owner calls it.
    pub name: String,
    /// Make and model.
    pub model: Option<String>,
    /// Everything about it is invented.
    pub invented: bool,
    /// Put away.
    pub away: bool,
    /// When the last fact was written, milliseconds since 1970 (UTC).
    pub last_change_ms: Option<i64>,
    /// Facts.
    pub changes: u32,
}

/// The bikes on this device, and how the data is kept.
#[wire]
pub struct ShelfAnswer {
    /// The bikes.
    pub bikes: Vec<BikeCard>,
    /// The open one.
    pub open: Option<String>,
    /// When the open bike was last exported, milliseconds since 1970 (UTC).
    pub exported_ms: Option<i64>,
    /// Facts written since that export.
    pub changes_since_export: u32,
    /// Name under which a damaged database was set aside, at this start or before.
    pub set_aside: Option<String>,
    /// This device's id.
    pub device: String,
}

/// A damaged database that was set aside.
#[wire]
pub struct SetAsideAnswer {
    /// The database, and its write-ahead log where it had one.
    pub files: Vec<SetAsideFile>,
}

/// A file that was set aside.
#[wire]
pub struct SetAsideFile {
    /// Its name.
    pub file_name: String,
    /// The bytes of the file, base64 in JSON.
    #[serde(with = "crate::json::bytes")]
    #[cfg_attr(feature = "ts", ts(type = "string"))]
    pub bytes: Vec<u8>,
}

/// Accepted ranges, and what records are called.
#[wire]
pub struct TablesAnswer {
    /// Accepted ranges.
    pub bounds: Vec<BoundCard>,
    /// Kinds of records and their fields in words.
    pub records: Vec<RecordCard>,
    /// The electrical systems, with what each has and is not asked for.
    pub systems: Vec<SystemCard>,
    /// How long a part takes to come, where somebody begins who has no better number.
    pub usual_delivery: Delivery,
}

/// Every formula.
#[wire]
pub struct HandbookAnswer {
    /// Formulas, those of one area together.
    pub formulas: Vec<FormulaCard>,
}

/// Jobs and packages that can be added as they are, and what suits the bike.
#[wire]
pub struct ReadyMadeAnswer {
    /// The jobs, in the order of a rebuild.
    pub jobs: Vec<JobOffer>,
    /// Packages of them.
    pub packages: Vec<PackageOffer>,
}

/// Coating products to start from.
#[wire]
pub struct ProductsAnswer {
    /// Typical products; read your can.
    pub products: Vec<Product>,
    /// Paint jobs in several coats to start from, with these products.
    pub processes: Vec<Process>,
}

/// A record with its id.
#[wire]
pub struct Kept {
    /// Kind of the record.
    pub record_kind: String,
    /// The record's id.
    pub record: String,
    /// The field.
    pub field: String,
    /// The value that holds, as JSON.
    pub holds: String,
    /// The value that lost, as JSON.
    pub lost: String,
    /// Stamp of the value that lost.
    pub stamp: String,
}

/// A part with its id.
#[wire]
pub struct PartCard {
    /// Its id.
    pub id: String,
    /// The part.
    pub part: Part,
    /// When it comes.
    pub arrival: Option<Arrival>,
}

/// The maker's torque of a joint with its id.
#[wire]
pub struct TighteningCard {
    /// Its id.
    pub id: String,
    /// The torque.
    pub tightening: Tightening,
}

/// A coat with its id.
#[wire]
pub struct CoatCard {
    /// Its id.
    pub id: String,
    /// The coat.
    pub coat: Coat,
}

/// A reading with its id.
#[wire]
pub struct ReadingCard {
    /// Its id.
    pub id: String,
    /// The reading.
    pub reading: Reading,
}

/// A photo with its id, without its bytes.
#[wire]
pub struct PhotoCard {
    /// Its id.
    pub id: String,
    /// The photo.
    pub photo: Photo,
}

/// A photo with its bytes.
#[wire]
pub struct PhotoAnswer {
    /// The photo.
    pub photo: Photo,
    /// The picture file, base64 in JSON.
    #[serde(with = "crate::json::bytes")]
    #[cfg_attr(feature = "ts", ts(type = "string"))]
    pub bytes: Vec<u8>,
}

/// Money spent in one currency.
#[wire]
pub struct Spend {
    /// Currency by its ISO 4217 code; empty when not said.
    pub currency: String,
    /// Sum of the parts ordered, here or fitted, in the smallest unit.
    pub minor: f64,
}

/// Everything known about the open bike.
#[wire]
pub struct BikeAnswer {
    /// Its id.
    pub id: String,
    /// Who it is.
    pub identity: Identity,
    /// Where it stands.
    pub place: Place,
    /// As made.
    pub standard: Spec,
    /// As it is being built.
    pub fitted: Spec,
    /// Parts.
    pub parts: Vec<PartCard>,
    /// The maker's torques, by joint.
    pub tightenings: Vec<TighteningCard>,
    /// Money spent.
    pub spend: Vec<Spend>,
    /// Coats.
    pub coats: Vec<CoatCard>,
    /// Measured values.
    pub readings: Vec<ReadingCard>,
    /// Photos.
    pub photos: Vec<PhotoCard>,
    /// The last note of temperature and humidity.
    pub climate: Option<Climate>,
    /// The mechanic's hours.
    pub bench_time: BenchTime,
    /// Values that lost a concurrent edit and wait for a decision.
    pub rivals: Vec<Kept>,
}

/// One value that a field has had.
#[wire]
pub struct Fact {
    /// The field.
    pub field: String,
    /// The value, as JSON.
    pub value: String,
    /// When, milliseconds since 1970 (UTC).
    pub at_ms: i64,
    /// Stamp.
    pub stamp: String,
    /// Device.
    pub device: String,
    /// It holds now.
    pub holds: bool,
}

/// Every value that a record has had, newest first.
#[wire]
pub struct HistoryAnswer {
    /// The facts.
    pub facts: Vec<Fact>,
}

/// What was put away and can come back.
#[wire]
pub struct PutAwayAnswer {
    /// The last one first.
    pub records: Vec<PutAwayCard>,
}

/// The open bike as a bundle.
#[wire]
pub struct BundleAnswer {
    /// A name for the file.
    pub file_name: String,
    /// The bytes of the file, base64 in JSON.
    #[serde(with = "crate::json::bytes")]
    #[cfg_attr(feature = "ts", ts(type = "string"))]
    pub bundle: Vec<u8>,
    /// Facts in it.
    pub changes: u32,
}
