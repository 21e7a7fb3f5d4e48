//! The line of a working on how a wheel comes to its circumference.

use super::formulas::ScaledCircumference;
use crate::quantity::{Line, WorkLine};
use crate::record::{RollingCircumference, TyreSize, Wheel};
use crate::tyres::message::TyresWorking;
use crate::units::Unit;

/// How a wheel comes to its circumference: rolled out, by its size, or scaled from the other wheel of the pair. The line says that
/// it is the rear wheel where another one could be meant.
pub(crate) fn rolling_line(rear: bool, other: &Wheel, wheel: &Wheel, (mm, measured): (f64, bool)) -> Option<WorkLine> {
    let diameter = |wheel: &Wheel| Some(TyreSize::read(wheel.tyre.as_deref()?).ok()?.outer_diameter_mm());
    let rolled_out = || Some(WorkLine::measured(TyresWorking::RolledOut { rear }, mm, Unit::Millimetre));
    if measured {
        return rolled_out();
    }
    let Some(diameter_mm) = diameter(wheel) else { return rolled_out() };
    let by_size = RollingCircumference { diameter_mm }.line(TyresWorking::Circumference { rear })?;
    if (by_size.value - mm).abs() < 1e-6 {
        return Some(by_size);
    }
    let scaled = ScaledCircumference {
        circumference_mm: other.circumference_mm?,
        diameter_mm: diameter(other)?,
        new_diameter_mm: diameter_mm,
    };
    scaled.line(TyresWorking::FromRollOut { rear })
}
