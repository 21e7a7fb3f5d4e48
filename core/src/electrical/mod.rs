//! Electrical load against output: what the lamps draw, what the alternator gives, how long the battery lasts.
//!
//! Reading order: `formulas`, what they give on a bike and how it is judged (`judge`), and the pages (`page`).

pub(crate) mod formulas;
mod judge;
mod message;
mod page;

pub use formulas::{
    BLADE_FUSES, BLOWS_FROM, BatteryHours, CapFit, ChargeBetween, ChargeCurrent, CoilCurrent, CoilEmf, CoilLampVolts,
    Conductor, ConsumerPower, CountedFlashes, CurrentList, DaysToFlat, DiodeCharge, FLASH_RULE, FlashBand,
    FlasherShare, Flashing, GravityCharge, HALF_OF_THE_WAVE, LampAtWork, LampCard, LampLight, LampWatts, LeastFuse,
    LoadResistance, LoadResistor, LoadSum, NominalOutput, RechargeHours, RectifiedWave, ResistorWatts, RestedCharge,
    RidingState, ThermalFlasher, TimeBand, Volts, WireDrop, WireGauge, ampacity, balance_speed, battery_hours,
    cap_fits, charge_current, charge_from_gravity, check_lamp_volts, check_wire, coil_current, coil_lamp_volts,
    consumer_watts, counted_rate, days_to_flat, diode_charge, drawn_output, flash_band, fuse_between, fuse_time,
    gauge_diameter, gauge_section, gravity_at_25, indicating_watts, lamp_at_work, lamp_cards, lamp_life, lamp_lumens,
    lamp_watts, least_fuse, load_resistance, load_resistor, load_sum, load_watts, nominal_output, output_at,
    recharge_hours, rectified_wave, resistor_watts, rested_charge, share_of_time, thermal_rate, voltage_drop,
    wire_resistance,
};
pub(crate) use formulas::{cap_source, light_source, resistor_source, with_resistors};
pub(crate) use judge::{BURNS_OUT, ChargingMessage, LoadMessage, electrically_sound, on_coil};
pub use judge::{
    Balance, ChargingPattern, ChargingTest, CoilLamps, StateLoad, Stationary, TestLine, TestVerdict, charging_limits,
    derive_electrical,
};
pub use message::FuseColour;
pub(crate) use message::{ElectricalMessage, ElectricalSource};
pub use page::{
    Binding, ChargingAnswer, ChargingAsk, LoadAnswer, LoadAsk, UsualAnswer, UsualConsumer, WireAnswer, WireAsk,
    WireChoice, charging_answer, load_answer, usual_answer, usual_consumer, wire_answer,
};
pub(crate) use page::{ChargingPageMessage, ElectricalWorking, LoadPageMessage, WireMessage};
