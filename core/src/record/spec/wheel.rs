//! A wheel with its tyre.

use layshaft_wire::wire;

use crate::bounds;
use crate::error::Refused;
use crate::message::FieldMessage;
use crate::record::sidewall::{DateCode, TyreSize};

/// A wheel with its tyre.
#[wire(lenient, stored)]
pub struct Wheel {
    /// Size as on the sidewall.
    pub tyre: Option<String>,
    /// Rolling circumference by roll-out with the rider up, millimetres; it overrides the size.
    pub circumference_mm: Option<f64>,
    /// Whether a tube is fitted.
    pub tube: Option<bool>,
    /// Sizes that are printed on the tube: it fits those and no others.
    pub tube_sizes: Vec<String>,
    /// Week and year on the sidewall of the tyre that is fitted: `3202`, or `324` on old tyres.
    pub date_code: Option<String>,
    /// Load on this wheel with rider and luggage up, kilograms.
    pub axle_load_kg: Option<f64>,
    /// Width of the rim between its flanges, inches.
    pub rim_width_inch: Option<f64>,
    /// Whether the rim hangs in wire spokes.
    pub spoked: Option<bool>,
}

impl Wheel {
    /// The wheel, or the first field that cannot be accepted.
    pub fn checked(self) -> Result<Self, Refused> {
        if let Some(tyre) = &self.tyre {
            TyreSize::read(tyre)?;
        }
        bounds::CIRCUMFERENCE.check_known(self.circumference_mm)?;
        for size in &self.tube_sizes {
            TyreSize::read(size).map_err(|refused| refused.named("tubeSizes", FieldMessage::SizePrintedOnTheTube))?;
        }
        if let Some(code) = &self.date_code {
            DateCode::read(code)?;
        }
        bounds::AXLE_LOAD.check_known(self.axle_load_kg)?;
        bounds::RIM_WIDTH.check_known(self.rim_width_inch)?;
        Ok(self)
    }

    /// This wheel laid over another, field by field: what is not said here is as below. Another tyre brings its own date, and
    /// a tyre of other dimensions its own roll-out: neither is taken over.
    pub fn over(self, below: &Wheel) -> Wheel {
        let size = |tyre: &Option<String>| tyre.as_deref().and_then(|code| TyreSize::read(code).ok());
        let rolls_alike = self.tyre.is_none()
            || size(&self.tyre).zip(size(&below.tyre)).is_some_and(|(this, other)| this.same_dimensions(&other));
        let old_date = below.date_code.clone().filter(|_| self.tyre.is_none());
        Wheel {
            tyre: self.tyre.or_else(|| below.tyre.clone()),
            circumference_mm: self.circumference_mm.or(below.circumference_mm.filter(|_| rolls_alike)),
            tube: self.tube.or(below.tube),
            tube_sizes: if self.tube_sizes.is_empty() { below.tube_sizes.clone() } else { self.tube_sizes },
            date_code: self.date_code.or(old_date),
            axle_load_kg: self.axle_load_kg.or(below.axle_load_kg),
            rim_width_inch: self.rim_width_inch.or(below.rim_width_inch),
            spoked: self.spoked.or(below.spoked),
        }
    }
}
