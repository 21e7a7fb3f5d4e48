//! Activity lists: how they are drawn by urgency, crossed and shaken. Every list that comes out holds each activity
//! once, after all that it follows.

use super::dice::Dice;
use super::serial::Net;

/// The stretch that a child has from its mother, as shares of the list.
const STRETCH: (f64, f64) = (0.1, 0.5);

/// A list drawn by urgency: next is always the most urgent of those whose needs stand already. Of equals, that of the
/// higher rank.
pub(crate) fn drawn(net: &Net, mirrored: &Net, urgency: &[f64], rank: &[u16]) -> Vec<u16> {
    let count = urgency.len() as u16;
    let urgency = |activity: u16| urgency.get(usize::from(activity)).copied().unwrap_or(0.0);
    let rank = |activity: u16| rank.get(usize::from(activity)).copied();
    let mut open: Vec<usize> = (0..count).map(|activity| net.before(activity).len()).collect();
    let mut free: Vec<u16> = (0..count).filter(|activity| net.before(*activity).is_empty()).collect();
    let mut list = Vec::with_capacity(open.len());
    let order = |one: &u16, other: &u16| urgency(*one).total_cmp(&urgency(*other)).then(rank(*one).cmp(&rank(*other)));
    while let Some((place, _)) = free.iter().enumerate().max_by(|(_, one), (_, other)| order(one, other)) {
        let activity = free.swap_remove(place);
        list.push(activity);
        for (follower, _) in mirrored.before(activity) {
            if let Some(left) = open.get_mut(usize::from(*follower)) {
                *left -= 1;
                if *left == 0 {
                    free.push(*follower);
                }
            }
        }
    }
    list
}

/// A child that keeps a stretch of the mother's list as it is. What the mother does before the stretch stays before it
/// and what she does after stays after it, both in the father's order.
pub(crate) fn crossed(mother: &[u16], father: &[u16], parts: &mut [u8], child: &mut Vec<u16>, dice: &mut Dice) {
    let count = mother.len();
    let share = STRETCH.0 + (STRETCH.1 - STRETCH.0) * dice.roll();
    let long = ((share * count as f64) as usize).max(1);
    let from = dice.below(count + 1 - long);
    for (place, activity) in mother.iter().enumerate() {
        if let Some(part) = parts.get_mut(usize::from(*activity)) {
            *part = u8::from(place >= from) + u8::from(place >= from + long);
        }
    }
    child.clear();
    let part = |activity: u16| parts.get(usize::from(activity)).copied();
    child.extend(father.iter().filter(|activity| part(**activity) == Some(0)));
    child.extend(mother.iter().skip(from).take(long));
    child.extend(father.iter().filter(|activity| part(**activity) == Some(2)));
}

/// Moves one activity to another place in the list, between what it follows and what follows it.
pub(crate) fn shake(net: &Net, mirrored: &Net, list: &mut [u16], dice: &mut Dice) {
    let from = dice.below(list.len());
    let Some(&activity) = list.get(from) else { return };
    let is_in = |links: &[(u16, u32)], other: u16| links.iter().any(|(link, _)| *link == other);
    let (before, behind) = (net.before(activity), mirrored.before(activity));
    let earliest = list
        .get(..from)
        .and_then(|part| part.iter().rposition(|other| is_in(before, *other)))
        .map_or(0, |place| place + 1);
    let latest = list
        .get(from + 1..)
        .and_then(|part| part.iter().position(|other| is_in(behind, *other)))
        .map_or(list.len() - 1, |gap| from + gap);
    let to = earliest + dice.below(latest + 1 - earliest);
    if to < from {
        if let Some(part) = list.get_mut(to..=from) {
            part.rotate_right(1);
        }
    } else if let Some(part) = list.get_mut(from..=to) {
        part.rotate_left(1);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::search::rcpsp::model::{Activity, After, Project};

    /// Three chains side by side, each of five.
    fn chains() -> (Net, Net) {
        let one = |place: usize| {
            let after = (place >= 3).then(|| After { activity: place - 3, lag: 0 });
            Activity { duration: 1, after: after.into_iter().collect(), ..Activity::default() }
        };
        Net::both(&Project::new((0..15).map(one).collect(), vec![]).unwrap())
    }

    fn holds(list: &[u16]) -> bool {
        let place = |activity: u16| list.iter().position(|other| *other == activity).unwrap();
        list.len() == 15 && (3..15).all(|activity| place(activity - 3) < place(activity)) && place(0) < 15
    }

    #[test]
    fn every_list_holds_each_activity_once_after_what_it_follows() {
        let (net, mirrored) = chains();
        let rank: Vec<u16> = (0..15).collect();
        let mut dice = Dice::of(3);
        let some = |dice: &mut Dice| {
            let urgency: Vec<f64> = (0..15).map(|_| dice.roll()).collect();
            drawn(&net, &mirrored, &urgency, &rank)
        };
        let (mut parts, mut child) = (vec![0; 15], Vec::new());
        let mut changed = 0;
        for _ in 0..200 {
            let (mother, father) = (some(&mut dice), some(&mut dice));
            assert!(holds(&mother) && holds(&father));
            crossed(&mother, &father, &mut parts, &mut child, &mut dice);
            assert!(holds(&child), "{mother:?} {father:?} {child:?}");
            changed += u32::from(child != mother && child != father);
            shake(&net, &mirrored, &mut child, &mut dice);
            assert!(holds(&child), "{child:?}");
        }
        assert!(changed > 100, "{changed}");
    }

    #[test]
    fn the_most_urgent_comes_first_and_then_that_of_the_higher_rank() {
        let (net, mirrored) = chains();
        let rank: Vec<u16> = (0..15).collect();
        let mut urgency = vec![0.0; 15];
        urgency[1] = 1.0;
        let list = drawn(&net, &mirrored, &urgency, &rank);
        assert_eq!(list[..3], [1, 4, 7]);
    }
}
