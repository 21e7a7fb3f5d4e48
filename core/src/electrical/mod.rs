//! Electrical load against output: what the lamps draw, what the alternator gives, how long the battery lasts.

mod battery;
mod cap;
mod charge_state;
mod charging;
mod charging_sheet;
mod derived;
mod findings;
pub(crate) mod flasher;
mod fuse;
mod lamp;
mod load;
mod output;
mod resistor;
mod sheet;
pub(crate) mod sources;
mod volts;
mod wire;

pub(crate) use cap::cap_source;
pub(crate) use derived::electrically_sound;
pub(crate) use lamp::light_source;
pub(crate) use resistor::{resistor_source, with_resistors};

pub use battery::{battery_hours, rested_charge};
pub use cap::{CapFit, cap_fits};
pub use charge_state::{charge_from_gravity, charge_from_volts, days_to_flat, gravity_at_25, recharge_hours};
pub use charging::{ChargingPattern, ChargingTest, TestLine, TestVerdict, charging_limits};
pub use charging_sheet::{ChargingAsk, ChargingSheet, charging_sheet};
pub use derived::derive_electrical;
pub use flasher::{FLASH_RULE, FlashBand, Flashing, counted_rate, flash_band, thermal_rate};
pub use fuse::{
    BLADE_FUSES, BLOWS_FROM, Binding, TimeBand, WireAsk, WireChoice, WireSheet, fuse_between, fuse_time, wire_sheet,
};
pub use lamp::{LampAtWork, LampCard, lamp_at_work, lamp_cards, lamp_life, lamp_lumens};
pub use load::{RidingState, consumer_watts, indicating_watts, lamp_watts, load_watts, share_of_time};
pub use output::{balance_speed, drawn_output, nominal_output, output_at};
pub use resistor::{LoadResistor, load_resistance, load_resistor};
pub use sheet::{Balance, LoadAsk, LoadSheet, StateLoad, Stationary, load_sheet};
pub use volts::Volts;
pub use wire::{
    Conductor, CurrentList, ampacity, check_wire, gauge_diameter, gauge_section, voltage_drop, wire_resistance,
};
