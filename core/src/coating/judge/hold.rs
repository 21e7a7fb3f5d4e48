//! What has to wait for a cure, in the words of the bench.

use layshaft_wire::wire;

use crate::coating::message::CoatingMessage;
use crate::message::Message;
use crate::record::{PaintedPart, ProductKind};

/// Something that must not be done yet.
#[wire]
pub enum Hold {
    /// Touch or clamp it.
    Handle,
    /// Fit it to the bike.
    Mount,
    /// Paint over it.
    PaintOver,
    /// Fill fuel in, or let fuel reach it.
    Fuel,
    /// Fill oil, brake fluid or coolant in.
    Fill,
    /// Run the engine.
    RunEngine,
    /// Fit a tyre.
    FitTyre,
    /// Load, bend or drill it.
    Load,
    /// Ride.
    Ride,
}

/// Something on hold, with its end.
#[wire]
pub struct OnHold {
    /// What must not be done.
    pub hold: Hold,
    /// The same in words.
    pub text: Message,
    /// Until when, milliseconds since 1970 (UTC); none when no end is in sight.
    pub until_ms: Option<i64>,
}

impl Hold {
    /// In words: “do not fill it with fuel”.
    pub fn words(self) -> Message {
        match self {
            Self::Handle => CoatingMessage::HoldHandle,
            Self::Mount => CoatingMessage::HoldMount,
            Self::PaintOver => CoatingMessage::HoldPaintOver,
            Self::Fuel => CoatingMessage::HoldFuel,
            Self::Fill => CoatingMessage::HoldFill,
            Self::RunEngine => CoatingMessage::HoldRunEngine,
            Self::FitTyre => CoatingMessage::HoldFitTyre,
            Self::Load => CoatingMessage::HoldLoad,
            Self::Ride => CoatingMessage::HoldRide,
        }
        .into()
    }
}

/// What a product holds up until it is fully cured, on a part. Common practice, no source; the cautious side.
///
/// ```
/// use layshaft_core::coating::{Hold, holds_of};
/// use layshaft_core::record::{ProductKind, PaintedPart};
/// assert!(holds_of(ProductKind::TankLiner, PaintedPart::Tank).contains(&Hold::Fuel));
/// assert!(!holds_of(ProductKind::Paint, PaintedPart::SidePanel).contains(&Hold::Fuel));
/// ```
pub fn holds_of(product: ProductKind, part: PaintedPart) -> Vec<Hold> {
    let mut holds = match product {
        ProductKind::TankLiner => vec![Hold::Mount, Hold::PaintOver, Hold::Fuel, Hold::Ride],
        ProductKind::Sealant => vec![Hold::Fill, Hold::RunEngine, Hold::Ride],
        ProductKind::ThreadLock => vec![Hold::Load, Hold::Ride],
        ProductKind::Epoxy => vec![Hold::Mount, Hold::Load],
        ProductKind::Paint | ProductKind::Primer | ProductKind::Clear | ProductKind::RustConverter => vec![Hold::Mount],
    };
    match part {
        PaintedPart::Tank => holds.extend([Hold::Fuel, Hold::Ride]),
        PaintedPart::Wheel => holds.extend([Hold::FitTyre, Hold::Ride]),
        PaintedPart::Mudguard | PaintedPart::SidePanel | PaintedPart::Frame | PaintedPart::Other => {}
    }
    holds.sort_unstable();
    holds.dedup();
    holds
}

/// The holds of one coat with their ends: touching until it may be handled, the rest until it is fully cured.
pub(crate) fn on_hold(
    product: ProductKind,
    part: PaintedPart,
    (handle, handle_ms): (bool, Option<i64>),
    cured_ms: Option<i64>,
) -> Vec<OnHold> {
    let line = |hold: Hold, until_ms| OnHold { hold, text: hold.words(), until_ms };
    let touch = handle.then(|| line(Hold::Handle, handle_ms));
    touch.into_iter().chain(holds_of(product, part).into_iter().map(|hold| line(hold, cured_ms))).collect()
}

/// Both together: each hold once, until the later end. No end in sight is later than any end.
pub(crate) fn together(mut these: Vec<OnHold>, those: Vec<OnHold>) -> Vec<OnHold> {
    for other in those {
        match these.iter_mut().find(|line| line.hold == other.hold) {
            Some(line) => line.until_ms = line.until_ms.zip(other.until_ms).map(|(one, two)| one.max(two)),
            None => these.push(other),
        }
    }
    these.sort_by_key(|line| line.hold);
    these
}
