//! How a cure runs: the climate, the pace at a temperature, the dew point.

mod activation;
mod climate;
mod cure;
mod cure_rate;
mod dew;

pub use activation::{ActivationFrom, activation_of};
pub use climate::ClimateLog;
pub use cure::{Milestone, cure_end_ms, equivalent_age, paced_rate, rate_factor};
pub(crate) use cure::{Pace, USUAL_REFERENCE, ages_at, horizon_ms, hours_between, when_reached};
pub use cure_rate::{Activation, CureAge, CurePace, CureRate, HoursAtRate};
pub use dew::{DewPoint, SurfaceMargin, dew_point, surface_margin};
