//! What an order of tasks is made from: how long each takes and what it follows.

/// A task as far as an order has to know it. Each stands after all that it must follow.
#[derive(Clone, Debug, Default)]
pub(crate) struct Outline {
    /// Hands-on time, hours.
    pub(crate) work_hours: f64,
    /// About how long the wait after it lasts, hours.
    pub(crate) wait_hours: f64,
    /// Not before so many hours from now.
    pub(crate) from_hours: f64,
    /// Tasks that must be done before.
    pub(crate) after: Vec<usize>,
    /// What follows has to begin within a time from its end.
    pub(crate) limits: bool,
    /// It is begun, and nothing keeps it: it stays before all others.
    pub(crate) first: bool,
}
