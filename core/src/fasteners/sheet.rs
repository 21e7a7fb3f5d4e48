//! The answer of the fastener page: which thread, what it bears, how hard to pull it, how far it must go in.

use layshaft_wire::wire;

use super::engagement::{FINE_FACTOR, ScrewPlace, SubstituteRule, TappedInto, engagement_length};
use super::findings::findings;
use super::identify::{Identified, ThreadMatch, identify};
use super::strength::{PropertyClass, screw_load};
use super::thread::{ThreadFamily, flank_diameter, pitch_of_turns, stress_area};
use super::torque::{Seat, preload_from_torque, tighten};
use super::words;
use crate::bounds::{self, Bound};
use crate::error::Refused;
use crate::quantity::{Finding, Working};

/// How thread and head are lubricated.
#[wire]
pub enum Lubrication {
    /// As it comes, dry and clean.
    Dry,
    /// A drop of oil.
    Oiled,
    /// Grease, copper or ceramic paste.
    Paste,
    /// Liquid thread lock.
    ThreadLock,
}

impl Lubrication {
    /// Least and greatest friction of thread and head. Common practice, no source; the spread between two screws of one box is
    /// as wide.
    ///
    /// ```
    /// assert_eq!(layshaft_core::fasteners::Lubrication::Oiled.friction(), (0.10, 0.14));
    /// ```
    pub fn friction(self) -> (f64, f64) {
        match self {
            Self::Dry => (0.12, 0.18),
            Self::Oiled => (0.10, 0.14),
            Self::Paste => (0.08, 0.12),
            Self::ThreadLock => (0.12, 0.16),
        }
    }

    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Dry => "dry",
            Self::Oiled => "oiled",
            Self::Paste => "with paste",
            Self::ThreadLock => "with thread lock",
        }
    }
}

/// A torque from the maker's manual, with where it stands.
#[wire]
pub struct MakerTorque {
    /// Torque, N m.
    pub torque_nm: f64,
    /// Where it stands: manual and page.
    pub source: String,
}

/// What to work out. Diameter and pitch are needed; the rest gives what it can.
#[wire(lenient)]
pub struct FastenerAsk {
    /// Measured outer diameter of the screw, mm.
    pub diameter_mm: Option<f64>,
    /// Measured pitch, mm.
    pub pitch_mm: Option<f64>,
    /// Or turns in an inch.
    pub turns_per_inch: Option<f64>,
    /// Or turns counted over a length.
    pub turns: Option<f64>,
    /// The length over which they were counted, mm.
    pub over_mm: Option<f64>,
    /// Name of one of the threads that fit, when the nearest is not the one.
    pub thread: Option<String>,
    /// Property class on the head: 8.8.
    pub property_class: Option<String>,
    /// How it is lubricated; left out: oiled.
    pub lubrication: Option<Lubrication>,
    /// Outer diameter of the seat under the head, mm; left out: that of a hexagon head.
    pub bearing_mm: Option<f64>,
    /// Clearance hole, mm; left out: a medium hole.
    pub hole_mm: Option<f64>,
    /// What it goes into.
    pub tapped_into: Option<TappedInto>,
    /// Shear strength of that, MPa, where it is known.
    pub shear_mpa: Option<f64>,
    /// Thread engaged, mm.
    pub engagement_mm: Option<f64>,
    /// The maker's figure; it wins.
    pub maker: Option<MakerTorque>,
    /// Where it sits, for what may replace it.
    pub place: Option<ScrewPlace>,
}

/// What a screw bears.
#[wire]
pub struct ScrewStrength {
    /// Property class.
    pub property_class: String,
    /// Stress area, mm².
    pub stress_area_mm2: f64,
    /// Proof load, N.
    pub proof_newtons: f64,
    /// Load at which it breaks, N.
    pub tensile_newtons: f64,
}

/// Preload and torque at one friction.
#[wire]
pub struct TorquePoint {
    /// Friction of thread and head.
    pub friction: f64,
    /// Preload, N.
    pub preload_newtons: f64,
    /// Torque, N m.
    pub torque_nm: f64,
}

/// The torque as a band.
#[wire]
pub struct TorqueBand {
    /// How it is lubricated.
    pub lubrication: Lubrication,
    /// At the least friction: the torque that is safe for every screw of the band.
    pub least: TorquePoint,
    /// In the middle.
    pub middle: TorquePoint,
    /// At the greatest friction.
    pub most: TorquePoint,
    /// The maker's figure, where it was given. It wins.
    pub maker: Option<MakerTorque>,
    /// Preload that the maker's figure gives at the greatest friction, N.
    pub maker_preload_least: Option<f64>,
    /// Preload that the maker's figure gives at the least friction, N.
    pub maker_preload_most: Option<f64>,
}

/// How far it must go in.
#[wire]
pub struct EngagementAdvice {
    /// What it goes into.
    pub tapped_into: TappedInto,
    /// The shorter of the rules, mm.
    pub least_mm: f64,
    /// The longer of the rules, mm.
    pub most_mm: f64,
    /// So that the screw breaks before the thread strips, mm, where the shear strength is known.
    pub screw_breaks_first_mm: Option<f64>,
    /// What is engaged, mm.
    pub engaged_mm: Option<f64>,
    /// Advice on an insert.
    pub insert: String,
}

/// The fastener page.
#[wire]
pub struct FastenerSheet {
    /// Measured pitch, mm.
    pub pitch_mm: f64,
    /// Measured turns in an inch.
    pub turns_per_inch: f64,
    /// The thread that the rest is worked out for.
    pub thread: Option<ThreadMatch>,
    /// Threads that fit, the nearest first.
    pub likely: Vec<ThreadMatch>,
    /// Threads that could be taken for it.
    pub neighbours: Vec<ThreadMatch>,
    /// What it bears, where the class is known.
    pub strength: Option<ScrewStrength>,
    /// Torque, where class and seat are known.
    pub torque: Option<TorqueBand>,
    /// How far it must go in, where that is asked.
    pub engagement: Option<EngagementAdvice>,
    /// What may replace it: the rule of its place, else all of them.
    pub substitutes: Vec<SubstituteRule>,
    /// What is worth saying.
    pub findings: Vec<Finding>,
    /// How it was worked out.
    pub working: Working,
}

/// Works the fastener page out.
///
/// Refused: no diameter, no pitch in any form, a number outside its range, a class or thread that cannot be read.
pub fn fastener_sheet(ask: &FastenerAsk) -> Result<FastenerSheet, Refused> {
    let diameter_mm = bounds::THREAD_DIAMETER.need(ask.diameter_mm)?;
    let pitch_mm = pitch(ask)?;
    checked(ask)?;
    let Identified { likely, neighbours } = identify(diameter_mm, pitch_mm);
    let thread = chosen(ask.thread.as_deref(), &likely, &neighbours)?;
    let class = ask.property_class.as_deref().map(PropertyClass::read).transpose()?;

    let strength = thread.as_ref().zip(class).map(|(thread, class)| strength(thread, &class));
    let torque = match thread.as_ref().zip(class) {
        Some((thread, class)) => torque(ask, thread, &class)?,
        None => None,
    };
    let engagement =
        thread.as_ref().zip(ask.tapped_into).map(|(thread, into)| engagement(ask, thread, into, strength.as_ref()));
    let substitutes = match ask.place {
        Some(place) => vec![place.rule()],
        None => ScrewPlace::ALL.map(ScrewPlace::rule).to_vec(),
    };
    let findings = findings(ask, &likely, thread.as_ref(), torque.as_ref(), engagement.as_ref());
    let working = words::working(thread.as_ref(), strength.as_ref(), torque.as_ref(), engagement.as_ref());
    Ok(FastenerSheet {
        pitch_mm,
        turns_per_inch: super::INCH_MM / pitch_mm,
        thread,
        likely,
        neighbours,
        strength,
        torque,
        engagement,
        substitutes,
        findings,
        working,
    })
}

/// The pitch in millimetres from whichever way it was measured; two ways at once must not be given.
fn pitch(ask: &FastenerAsk) -> Result<f64, Refused> {
    let counted = match (ask.turns, ask.over_mm) {
        (Some(turns), Some(over)) => Some(bounds::OVER_LENGTH.check(over)? / bounds::THREAD_TURNS.check(turns)?),
        (None, None) => None,
        (Some(_), None) => {
            return bounds::OVER_LENGTH.need(None);
        }
        (None, Some(_)) => {
            return bounds::THREAD_TURNS.need(None);
        }
    };
    let ways = [
        bounds::THREAD_PITCH.check_known(ask.pitch_mm)?,
        bounds::TURNS_INCH.check_known(ask.turns_per_inch)?.map(pitch_of_turns),
        counted,
    ];
    let mut given = ways.into_iter().flatten();
    match (given.next(), given.next()) {
        (Some(pitch), None) => Bound { label: "Pitch", ..bounds::THREAD_PITCH }.check(pitch),
        (None, _) => bounds::THREAD_PITCH.need(None),
        (Some(_), Some(_)) => Err(Refused::Conflict {
            field: "pitchMm".to_owned(),
            reason: "give the pitch one way only: millimetres, turns in an inch, or turns over a length".to_owned(),
        }),
    }
}

fn checked(ask: &FastenerAsk) -> Result<(), Refused> {
    let seat = Bound { field: "bearingMm", label: "Seat under the head", ..bounds::THREAD_DIAMETER };
    Bound { max: 60.0, ..seat }.check_known(ask.bearing_mm)?;
    Bound { field: "holeMm", label: "Clearance hole", max: 30.0, ..bounds::THREAD_DIAMETER }
        .check_known(ask.hole_mm)?;
    bounds::SHEAR_STRENGTH.check_known(ask.shear_mpa)?;
    bounds::ENGAGEMENT.check_known(ask.engagement_mm)?;
    if let Some(maker) = &ask.maker {
        bounds::TORQUE.check(maker.torque_nm)?;
        bounds::check_title("source", "Where the maker's torque stands", &maker.source)?;
    }
    if let (Some(bearing), Some(hole)) = (ask.bearing_mm, ask.hole_mm)
        && bearing <= hole
    {
        return Err(Refused::Conflict {
            field: "bearingMm".to_owned(),
            reason: format!("a seat of {bearing} mm falls through a hole of {hole} mm"),
        });
    }
    Ok(())
}

fn chosen(
    name: Option<&str>,
    likely: &[ThreadMatch],
    neighbours: &[ThreadMatch],
) -> Result<Option<ThreadMatch>, Refused> {
    let Some(name) = name else { return Ok(likely.first().cloned()) };
    match likely.iter().chain(neighbours).find(|thread| thread.name == name) {
        Some(thread) => Ok(Some(thread.clone())),
        None => Err(Refused::Conflict {
            field: "thread".to_owned(),
            reason: format!("“{name}” is not near what was measured; measure again or choose one of those that fit"),
        }),
    }
}

fn strength(thread: &ThreadMatch, class: &PropertyClass) -> ScrewStrength {
    let area = stress_area(thread.diameter_mm, thread.pitch_mm);
    ScrewStrength {
        property_class: class.name.to_owned(),
        stress_area_mm2: area,
        proof_newtons: screw_load(area, class.proof(thread.diameter_mm)),
        tensile_newtons: screw_load(area, class.tensile(thread.diameter_mm)),
    }
}

/// The band; none where neither a table nor the ask gives a seat (inch sizes).
fn torque(ask: &FastenerAsk, thread: &ThreadMatch, class: &PropertyClass) -> Result<Option<TorqueBand>, Refused> {
    let size = (thread.diameter_mm, thread.pitch_mm);
    let Some(seat) = seat(ask, thread)? else { return Ok(None) };
    let lubrication = ask.lubrication.unwrap_or(Lubrication::Oiled);
    let (low, high) = lubrication.friction();
    let point = |friction| {
        let (preload_newtons, torque_nm) = tighten(size, class, &seat, friction);
        TorquePoint { friction, preload_newtons, torque_nm }
    };
    let preload = |friction| {
        ask.maker.as_ref().map(|maker| preload_from_torque(maker.torque_nm, size, &seat, friction, friction))
    };
    Ok(Some(TorqueBand {
        lubrication,
        least: point(low),
        middle: point((low + high) / 2.0),
        most: point(high),
        maker: ask.maker.clone(),
        maker_preload_least: preload(high),
        maker_preload_most: preload(low),
    }))
}

fn seat(ask: &FastenerAsk, thread: &ThreadMatch) -> Result<Option<Seat>, Refused> {
    let table = Seat::of(thread.diameter_mm).ok();
    let bearing_mm = ask.bearing_mm.or(table.map(|seat| seat.bearing_mm));
    let hole_mm = ask.hole_mm.or(table.map(|seat| seat.hole_mm));
    let (Some(bearing_mm), Some(hole_mm)) = (bearing_mm, hole_mm) else { return Ok(None) };
    if bearing_mm <= hole_mm || bearing_mm <= thread.diameter_mm {
        return Err(Refused::Conflict {
            field: "bearingMm".to_owned(),
            reason: format!("a seat of {bearing_mm} mm does not bear on a hole of {hole_mm} mm for {}", thread.name),
        });
    }
    Ok(Some(Seat { bearing_mm, hole_mm }))
}

fn engagement(
    ask: &FastenerAsk,
    thread: &ThreadMatch,
    into: TappedInto,
    strength: Option<&ScrewStrength>,
) -> EngagementAdvice {
    let (least, most) = into.diameters();
    let fine = match thread.family {
        ThreadFamily::MetricFine | ThreadFamily::Unf | ThreadFamily::Bsf | ThreadFamily::Cycle => FINE_FACTOR,
        _ => 1.0,
    };
    let (d, p) = (thread.diameter_mm, thread.pitch_mm);
    // Basic sizes: tolerances take away a few per cent of the overlap, which the longer rule covers.
    let breaks_first = strength
        .zip(ask.shear_mpa)
        .map(|(strength, shear)| engagement_length(strength.tensile_newtons, p, d, flank_diameter(d, p), shear));
    EngagementAdvice {
        tapped_into: into,
        least_mm: least * d * fine,
        most_mm: most * d * fine,
        screw_breaks_first_mm: breaks_first,
        engaged_mm: ask.engagement_mm,
        insert: "A stripped thread in aluminium is saved by a wire insert or a solid bush of the same thread: drill and tap square, \
                 no deeper than the maker allows, insert half a turn below the surface. Not where the brake, the axle or the \
                 steering hangs on it, unless a workshop answers for it."
            .to_owned(),
    }
}

#[cfg(test)]
#[path = "sheet_tests.rs"]
mod tests;
