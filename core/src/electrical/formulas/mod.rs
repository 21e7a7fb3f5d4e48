//! The formulas of the electrics: lamps, load and output, battery, fuses, wires, flashers.

mod alternating;
mod battery;
mod cap;
mod charge_state;
mod drawn;
pub(crate) mod flasher;
mod fuse;
mod lamp;
mod load;
mod output;
mod resistor;
mod riding;
pub(crate) mod sources;
mod volts;
mod wire;
mod wire_loss;

pub use alternating::{
    CoilCurrent, CoilEmf, CoilLampVolts, DiodeCharge, HALF_OF_THE_WAVE, RectifiedWave, coil_current, coil_lamp_volts,
    diode_charge, rectified_wave,
};
pub(crate) use battery::rested_rows;
pub use battery::{BatteryHours, ChargeBetween, RestedCharge, battery_hours, rested_charge};
pub(crate) use cap::cap_source;
pub use cap::{CapFit, cap_fits};
pub(crate) use charge_state::gravity_rows;
pub use charge_state::{
    DaysToFlat, GravityCharge, RechargeHours, charge_from_gravity, days_to_flat, gravity_at_25, recharge_hours,
};
pub use drawn::{ChargeCurrent, ConsumerPower, FlasherShare, LoadSum, charge_current};
pub use flasher::{
    CountedFlashes, FLASH_RULE, FlashBand, Flashing, ThermalFlasher, counted_rate, flash_band, thermal_rate,
};
#[cfg(test)]
pub(crate) use fuse::CARRIED;
#[cfg(test)]
pub(crate) use fuse::TIMES;
pub(crate) use fuse::fuse_source;
pub use fuse::{BLADE_FUSES, BLOWS_FROM, LeastFuse, TimeBand, fuse_between, fuse_time, least_fuse};
pub(crate) use lamp::light_source;
pub use lamp::{
    LampAtWork, LampCard, LampLight, LampWatts, check_lamp_volts, lamp_at_work, lamp_cards, lamp_life, lamp_lumens,
};
pub(crate) use load::drawn;
pub use load::{consumer_watts, indicating_watts, lamp_watts, load_sum, load_watts, share_of_time};
pub use output::{NominalOutput, balance_speed, drawn_output, nominal_output, output_at};
pub(crate) use resistor::{LOAD_RESISTORS, resistor_source, with_resistors};
pub use resistor::{LoadResistance, LoadResistor, ResistorWatts, load_resistance, load_resistor, resistor_watts};
pub use riding::RidingState;
pub use volts::Volts;
pub(crate) use wire::wire_sources;
pub use wire::{
    Conductor, CurrentList, ampacity, check_wire, gauge_diameter, gauge_section, voltage_drop, wire_resistance,
};
pub use wire_loss::{WireDrop, WireGauge};
