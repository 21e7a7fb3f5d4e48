//! What the charging page asks and answers.

use layshaft_wire::wire;

use crate::electrical::judge::{ChargingPattern, TestLine};
use crate::message::Message;
use crate::quantity::{Finding, Working};

/// What was measured. What is left out is unknown; the rested voltage is taken from the bike's readings when left out.
#[wire(lenient)]
pub struct ChargingAsk {
    /// Voltage of the battery after hours of rest, volts.
    pub rested_volts: Option<f64>,
    /// Voltage at idle, volts.
    pub idle_volts: Option<f64>,
    /// Voltage at 5,000 rpm, volts.
    pub fast_volts: Option<f64>,
    /// Specific gravity of each cell.
    pub gravities: Vec<f64>,
    /// Temperature of the acid, °C; left out: 25.
    pub acid_celsius: Option<f64>,
    /// Current from the battery with the key off, milliamperes.
    pub drain_milliamperes: Option<f64>,
    /// Current of the charger, amperes; left out: a tenth of the capacity.
    pub charger_amperes: Option<f64>,
}

/// The charging page.
#[wire]
pub struct ChargingAnswer {
    /// System voltage, volts.
    pub system_volts: f64,
    /// Cells of the battery, two volts apiece; none where there is no battery to charge.
    pub cells: Option<u32>,
    /// The tests, in their order.
    pub tests: Vec<TestLine>,
    /// What they mean together.
    pub pattern: ChargingPattern,
    /// The same in words, and what to do next.
    pub means: Message,
    /// Charge from the rested voltage, per cent.
    pub charge_by_volts: Option<f64>,
    /// Charge of the weakest cell from its specific gravity, per cent.
    pub charge_by_gravity: Option<f64>,
    /// Greatest difference of the cells' gravities.
    pub gravity_spread: Option<f64>,
    /// Days until the drain has emptied the battery.
    pub days_to_flat: Option<f64>,
    /// Current of the charger, amperes.
    pub charger_amperes: Option<f64>,
    /// Hours to fill it.
    pub recharge_hours: Option<f64>,
    /// What is worth saying.
    pub findings: Vec<Finding>,
    /// How it was worked out.
    pub working: Working,
}
