//! The quantities of the tyres that take part in ripple and readiness. What cannot be derived is absent.
//!
//! An age needs a day and none comes in here, so the year of making stands instead. Three figures are more than 25 years old on
//! any day that this program sees.

use super::checks::{TyreCheck, TyreLimit, load_check, speed_check, tube_check};
use super::findings::{self, mark};
use super::message::TyresMessage;
use super::wheel::tyre_source;
use crate::message::Message;
use crate::quantity::{Finding, Judgement, Quantity, Source};
use crate::record::{Bike, DateCode, End, Spec, TyreSize, Wheel, date_source, decade_source};
use crate::units::Unit;

/// Outer diameter, load and speed margin and year of making of both tyres, with what is worth saying about them.
///
/// `top_kmh` is the top speed that follows from the same spec, where it is known.
pub fn derive_tyres(bike: &Bike, spec: &Spec, top_kmh: Option<f64>) -> (Vec<Quantity>, Vec<Finding>) {
    let mut quantities = Vec::new();
    let mut found = Vec::new();
    for (end, standard, wheel) in [
        (End::Front, &bike.standard.front_wheel, &spec.front_wheel),
        (End::Rear, &bike.standard.rear_wheel, &spec.rear_wheel),
    ] {
        quantities.extend(made(end, wheel));
        let Some(size) = size_of(wheel) else { continue };
        let checks = [load_check(&size, wheel.axle_load_kg), speed_check(&size, top_kmh), tube_check(&size, wheel)];
        quantities.push(diameter(end, &size));
        quantities.extend(checks.iter().filter_map(|check| margin(end, check)));
        found.extend(findings::on_checks(end, &checks));
        found.extend(size_of(standard).iter().flat_map(|standard| findings::on_standard(end, standard, &size)));
    }
    let (front, rear) = (size_of(&spec.front_wheel), size_of(&spec.rear_wheel));
    found.extend(front.zip(rear).and_then(|(front, rear)| findings::on_mixing(&front, &rear)));
    (quantities, found)
}

/// The size of a wheel, where it is known and can be read.
pub(super) fn size_of(wheel: &Wheel) -> Option<TyreSize> {
    TyreSize::read(wheel.tyre.as_deref()?).ok()
}

fn diameter(end: End, size: &TyreSize) -> Quantity {
    let label = TyresMessage::OuterDiameter { end };
    open(
        &format!("tyre.{}.outer-diameter", mark(end)),
        label,
        size.outer_diameter_mm(),
        Unit::Millimetre,
        tyre_source(false),
    )
}

/// Load and speed that are left; only where both sides are known.
fn margin(end: End, check: &TyreCheck) -> Option<Quantity> {
    let (what, label) = match check.limit {
        TyreLimit::Load => ("load", TyresMessage::LoadLeft { end }),
        TyreLimit::Speed => ("speed", TyresMessage::SpeedLeft { end }),
        TyreLimit::Rim | TyreLimit::Tube => return None,
    };
    let id = format!("tyre.{}.{what}-margin", mark(end));
    let quantity = open(&id, label, check.margin?, check.unit, check.source.clone());
    Some(Quantity { judgement: check.judgement, why: Some(check.why.clone()), ..quantity })
}

/// Year of making, the latest that the code allows.
fn made(end: End, wheel: &Wheel) -> Option<Quantity> {
    let code = DateCode::read(wheel.date_code.as_deref()?).ok()?;
    let year = f64::from(code.weeks().first()?.year);
    let id = format!("tyre.{}.made-year", mark(end));
    if !code.is_short() {
        return Some(open(&id, TyresMessage::YearMade { end }, year, Unit::Year, date_source()));
    }
    let quantity = open(&id, TyresMessage::MadeAtLatest { end }, year, Unit::Year, decade_source());
    let why = TyresMessage::ThreeFiguresOld.into();
    Some(Quantity { judgement: Judgement::Outside, why: Some(why), ..quantity })
}

fn open(id: &str, label: impl Into<Message>, value: f64, unit: Unit, source: Source) -> Quantity {
    Quantity::new(id, label, value, unit, (Judgement::Open, None), source)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tyres::sample::demo_bike;

    fn value<'a>(quantities: &'a [Quantity], id: &str) -> &'a Quantity {
        quantities.iter().find(|quantity| quantity.id == id).unwrap_or_else(|| panic!("{id}"))
    }

    fn codes(found: &[Finding]) -> Vec<&str> {
        found.iter().map(|found| found.code.as_str()).collect()
    }

    #[test]
    fn the_demo_bike_has_load_left_and_an_old_rear_tyre() {
        let bike = demo_bike();
        let (quantities, found) = derive_tyres(&bike, &bike.fitted, Some(112.0));
        assert!((value(&quantities, "tyre.rear.outer-diameter").value - 609.6).abs() < 1e-9);
        // Index 52: 200 kg; symbol P: 150 km/h.
        let load = value(&quantities, "tyre.rear.load-margin");
        assert_eq!((load.value, load.judgement), (82.0, Judgement::Fine));
        assert_eq!(value(&quantities, "tyre.rear.speed-margin").value, 38.0);
        let rear = value(&quantities, "tyre.rear.made-year");
        assert_eq!((rear.value, rear.judgement), (1994.0, Judgement::Outside));
        assert_eq!(value(&quantities, "tyre.front.made-year").judgement, Judgement::Open);
        assert_eq!(codes(&found), Vec::<&str>::new());
    }

    #[test]
    fn an_overloaded_or_mixed_pair_is_found_on_its_end() {
        let bike = demo_bike();
        let mut spec = bike.fitted.clone();
        spec.rear_wheel.axle_load_kg = Some(210.0);
        spec.front_wheel.tyre = Some("90/90R18 51H".to_owned());
        let (quantities, found) = derive_tyres(&bike, &spec, None);
        assert_eq!(value(&quantities, "tyre.rear.load-margin").judgement, Judgement::Outside);
        assert!(!quantities.iter().any(|quantity| quantity.id.ends_with("speed-margin")));
        assert_eq!(codes(&found), ["tyre.front.tube", "tyre.front.other-size", "tyre.rear.load", "tyre.mixed"]);
    }

    #[test]
    fn nothing_known_gives_nothing() {
        assert_eq!(derive_tyres(&Bike::default(), &Spec::default(), Some(100.0)), (Vec::new(), Vec::new()));
    }
}
