//! The teeth that a bike takes: as entered, else a window round what was made, which says that it is assumed.

use layshaft_wire::wire;

use crate::bounds::{self, Bound};
use crate::error::Refused;
use crate::record::Drive;

/// The teeth that are looked through.
#[wire]
pub struct TeethLimits {
    /// Fewest in front.
    pub front_from: u32,
    /// Most in front.
    pub front_to: u32,
    /// Both ends in front are entered on the bike; else assumed.
    pub front_known: bool,
    /// Fewest behind.
    pub rear_from: u32,
    /// Most behind.
    pub rear_to: u32,
    /// Both ends behind are entered on the bike; else assumed.
    pub rear_known: bool,
}

/// Teeth either side of what was made that are looked through where no limit is known (common practice: what usually goes in
/// without other parts).
const FRONT_WINDOW: u32 = 2;
const REAR_WINDOW: u32 = 6;

impl TeethLimits {
    /// The limits of a drive, round the teeth as made where it says nothing.
    pub(super) fn of(drive: &Drive, (front, rear): (u32, u32)) -> Self {
        let (front_from, front_to) =
            window(&bounds::FRONT_TEETH, (drive.front_teeth_min, drive.front_teeth_max), front, FRONT_WINDOW);
        let (rear_from, rear_to) =
            window(&bounds::REAR_TEETH, (drive.rear_teeth_min, drive.rear_teeth_max), rear, REAR_WINDOW);
        Self {
            front_from,
            front_to,
            front_known: drive.front_teeth_min.is_some() && drive.front_teeth_max.is_some(),
            rear_from,
            rear_to,
            rear_known: drive.rear_teeth_min.is_some() && drive.rear_teeth_max.is_some(),
        }
    }

    /// Every pair inside, of the sizes that can be had; an empty list of sizes means any.
    pub(super) fn pairs<'a>(
        &'a self,
        front_sizes: &'a [u32],
        rear_sizes: &'a [u32],
    ) -> impl Iterator<Item = (u32, u32)> + 'a {
        let had = |sizes: &[u32], teeth: u32| sizes.is_empty() || sizes.contains(&teeth);
        let fronts = (self.front_from..=self.front_to).filter(move |teeth| had(front_sizes, *teeth));
        fronts.flat_map(move |front| {
            let rears = (self.rear_from..=self.rear_to).filter(move |teeth| had(rear_sizes, *teeth));
            rears.map(move |rear| (front, rear))
        })
    }
}

fn window(bound: &Bound, (least, most): (Option<u32>, Option<u32>), made: u32, either_side: u32) -> (u32, u32) {
    let (floor, ceiling) = (bound.min as u32, bound.max as u32);
    let from = least.unwrap_or(made.saturating_sub(either_side).min(most.unwrap_or(ceiling)));
    let to = most.unwrap_or((made + either_side).max(from));
    (from.clamp(floor, ceiling), to.clamp(floor, ceiling))
}

/// Sizes that can be had, each inside its range.
pub(super) fn check_sizes(front: &[u32], rear: &[u32]) -> Result<(), Refused> {
    for teeth in front {
        bounds::FRONT_TEETH.of("frontSizes").check(f64::from(*teeth))?;
    }
    for teeth in rear {
        bounds::REAR_TEETH.of("rearSizes").check(f64::from(*teeth))?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limits_of_the_bike_stand_and_the_rest_is_a_window_that_says_so() {
        let drive = Drive {
            front_teeth_min: Some(13),
            front_teeth_max: Some(17),
            rear_teeth_max: Some(43),
            ..Drive::default()
        };
        let limits = TeethLimits::of(&drive, (15, 41));
        assert_eq!((limits.front_from, limits.front_to, limits.front_known), (13, 17, true));
        assert_eq!((limits.rear_from, limits.rear_to, limits.rear_known), (35, 43, false));
        assert_eq!(limits.pairs(&[], &[]).count(), 5 * 9);
        assert_eq!(limits.pairs(&[15, 20], &[41]).collect::<Vec<_>>(), [(15, 41)]);
    }

    #[test]
    fn the_window_never_leaves_the_range_and_never_turns_over() {
        let limits = TeethLimits::of(&Drive::default(), (9, 80));
        assert_eq!((limits.front_from, limits.front_to, limits.rear_from, limits.rear_to), (9, 11, 74, 80));
        let low = Drive { rear_teeth_max: Some(30), ..Drive::default() };
        let limits = TeethLimits::of(&low, (15, 41));
        assert_eq!((limits.rear_from, limits.rear_to), (30, 30));
    }
}
