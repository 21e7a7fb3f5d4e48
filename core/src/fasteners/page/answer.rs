//! The answer of the fastener page: which thread, what it bears, how hard to pull it, how far it must go in.

use super::findings::findings;
use super::words;
use crate::bounds;
use crate::check;
use crate::error::Refused;
use crate::fasteners::formulas::{
    Identified, PropertyClass, ScrewPlace, Seat, TappedInto, ThreadMatch, engaged_by_rule, engagement_length,
    flank_diameter, identify, pitch_of_turns, preload_from_torque, screw_load, stress_area, tighten,
};
use crate::fasteners::message::{ScrewMessage, ThreadMessage};
use crate::fasteners::{
    EngagementAdvice, FastenerAnswer, FastenerAsk, Lubrication, ScrewStrength, TorqueBand, TorquePoint,
};
use crate::message::FieldMessage;
use crate::units::Unit;

/// Works the fastener page out.
///
/// Refused: no diameter, no pitch in any form, a number outside its range, a class or thread that cannot be read.
pub fn fastener_answer(ask: &FastenerAsk) -> Result<FastenerAnswer, Refused> {
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
    let seat = thread.as_ref().and_then(|thread| seat(ask, thread).ok()?);
    let screw = thread.as_ref().map(|thread| words::Screw { thread, class, seat, shear_mpa: ask.shear_mpa });
    let working = words::working(screw.as_ref(), strength.as_ref(), torque.as_ref(), engagement.as_ref());
    Ok(FastenerAnswer {
        pitch_mm,
        turns_per_inch: crate::fasteners::formulas::INCH_MM / pitch_mm,
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
        (Some(pitch), None) => bounds::THREAD_PITCH.named("pitchMm", FieldMessage::Pitch).check(pitch),
        (None, _) => bounds::THREAD_PITCH.need(None),
        (Some(_), Some(_)) => {
            Err(Refused::Conflict { field: "pitchMm".to_owned(), reason: ThreadMessage::PitchOneWay.into() })
        }
    }
}

fn checked(ask: &FastenerAsk) -> Result<(), Refused> {
    bounds::SEAT_DIAMETER.check_known(ask.bearing_mm)?;
    bounds::HOLE_DIAMETER.check_known(ask.hole_mm)?;
    bounds::SHEAR_STRENGTH.check_known(ask.shear_mpa)?;
    bounds::ENGAGEMENT.check_known(ask.engagement_mm)?;
    if let Some(maker) = &ask.maker {
        bounds::TORQUE.check(maker.torque_nm)?;
        check::check_title("source", ScrewMessage::MakerSource, &maker.source)?;
    }
    if let (Some(bearing), Some(hole)) = (ask.bearing_mm, ask.hole_mm)
        && bearing <= hole
    {
        return Err(Refused::Conflict {
            field: "bearingMm".to_owned(),
            reason: ScrewMessage::SeatFallsThrough {
                seat: Unit::Millimetre.of(bearing),
                hole: Unit::Millimetre.of(hole),
            }
            .into(),
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
            reason: ThreadMessage::NotNear { thread: name.to_owned() }.into(),
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
            reason: ScrewMessage::SeatDoesNotBear {
                seat: Unit::Millimetre.of(bearing_mm),
                hole: Unit::Millimetre.of(hole_mm),
                thread: thread.name.clone(),
            }
            .into(),
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
    let fine = thread.family.is_fine();
    let (d, p) = (thread.diameter_mm, thread.pitch_mm);
    // Basic sizes: tolerances take away a few per cent of the overlap, which the longer rule covers.
    let breaks_first = strength
        .zip(ask.shear_mpa)
        .map(|(strength, shear)| engagement_length(strength.tensile_newtons, p, d, flank_diameter(d, p), shear));
    EngagementAdvice {
        tapped_into: into,
        least_mm: engaged_by_rule(least, d, fine),
        most_mm: engaged_by_rule(most, d, fine),
        screw_breaks_first_mm: breaks_first,
        engaged_mm: ask.engagement_mm,
        insert: ScrewMessage::Insert.into(),
    }
}

#[cfg(test)]
#[path = "answer_tests.rs"]
mod tests;
