//! Choosing sprockets: every pair that the bike takes, from the nearest to what is wanted to the farthest.
//!
//! Reading order: what is wanted (`goal`), what the bike takes (`limits`), one pair with all that follows (`pair`), the order
//! of the list (`order`), and the answer (`sheet`).

mod answer;
mod goal;
mod limits;
mod order;
mod pair;
#[cfg(test)]
mod tests;

pub use answer::{AdjusterSpan, SprocketChoiceAnswer, SprocketChoiceAsk, sprocket_choice_answer};

pub use goal::SprocketGoal;
pub use limits::TeethLimits;
pub use pair::{Hunting, SprocketPair};
