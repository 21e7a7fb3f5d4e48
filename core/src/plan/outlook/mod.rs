//! How sure the ready date is: the plan is lived through many times, each time with other parcels and hands-on times.

mod arrival;
mod dates;
mod delivery;
mod distribution;
mod drivers;
mod monte_carlo;
mod order_first;
mod simulated_run;

pub use arrival::{Arrival, arrival};
pub use delivery::{LaterOfTwo, LognormalQuantile, TriangularQuantile};
pub use distribution::{Spread, latest_of, lognormal_quantile, triangular_quantile};
pub use drivers::{Holder, HolderKind};
pub(crate) use monte_carlo::chances;
pub use monte_carlo::{Odds, OddsPoint};
pub use order_first::ToOrder;
pub(crate) use order_first::order_first;
