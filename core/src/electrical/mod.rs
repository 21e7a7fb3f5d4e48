//! Electrical load against output: what the lamps draw, what the alternator gives, how long the battery lasts.

mod battery;
mod derived;
mod findings;
mod load;
mod output;
mod sheet;
mod sources;
mod volts;

pub use battery::{battery_hours, rested_charge};
pub use derived::derive_electrical;
pub use load::{RidingState, consumer_watts, indicating_watts, lamp_watts, load_watts, share_of_time};
pub use output::{balance_speed, drawn_output, nominal_output, output_at};
pub use sheet::{Balance, LoadAsk, LoadSheet, StateLoad, Stationary, load_sheet};
pub use volts::Volts;
