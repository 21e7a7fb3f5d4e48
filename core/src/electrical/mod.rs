//! Electrical load against output: what the lamps draw, what the alternator gives, how long the battery lasts.

mod battery;
mod cap;
mod charge_state;
mod charging;
mod charging_sheet;
mod derived;
mod findings;
mod flasher;
mod flashing;
mod fuse;
mod indication;
mod lamp;
mod lamp_sheet;
mod load;
mod output;
mod pilot;
mod resistor;
mod sheet;
mod sources;
mod volts;
mod wire;

pub use battery::{battery_hours, rested_charge};
pub use cap::{CapFit, LampCap, cap_fits};
pub use charge_state::{charge_from_gravity, charge_from_volts, days_to_flat, gravity_at_25, recharge_hours};
pub use charging::{ChargingPattern, ChargingTest, TestLine, TestVerdict, charging_limits};
pub use charging_sheet::{ChargingAsk, ChargingSheet, charging_sheet};
pub use derived::derive_electrical;
pub use flasher::{FLASH_RULE, FlashBand, Flashing, counted_rate, flash_band, thermal_rate};
pub use flashing::{Indicators, indicators};
pub use fuse::{
    BLADE_FUSES, BLOWS_FROM, Binding, TimeBand, WireAsk, WireChoice, WireSheet, fuse_between, fuse_time, wire_sheet,
};
pub use lamp::{LampAtWork, LampCard, lamp_at_work, lamp_cards, lamp_life, lamp_lumens};
pub use lamp_sheet::{FlashColumn, FlashCount, LampColumn, LampSheet, LampSide, LampsAsk, lamp_sheet};
pub use load::{RidingState, consumer_watts, indicating_watts, lamp_watts, load_watts, share_of_time};
pub use output::{balance_speed, drawn_output, nominal_output, output_at};
pub use pilot::{PilotBehaviour, pilot_behaviour};
pub use resistor::{LoadResistor, load_resistance, load_resistor};
pub use sheet::{Balance, LoadAsk, LoadSheet, StateLoad, Stationary, load_sheet};
pub use volts::Volts;
pub use wire::{
    Conductor, CurrentList, ampacity, check_wire, gauge_diameter, gauge_section, voltage_drop, wire_resistance,
};
