//! Alternating current: what diodes make of it, and what a lighting coil makes of its lamps.

mod coil;
mod diode;
mod wave;

pub use coil::{CoilLampVolts, coil_lamp_volts};
pub use diode::{DiodeCharge, diode_charge};
pub use wave::{HALF_OF_THE_WAVE, RectifiedWave, rectified_wave};
