//! Alternating current: what diodes make of it, what a lighting coil makes of its lamps, and the coil as a source.

mod coil;
mod diode;
mod source;
mod wave;

pub use coil::{CoilLampVolts, coil_lamp_volts};
pub use diode::{DiodeCharge, diode_charge};
pub use source::{CoilCurrent, CoilEmf, coil_current};
pub use wave::{HALF_OF_THE_WAVE, RectifiedWave, rectified_wave};
