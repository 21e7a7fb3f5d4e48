//! Sorting a list by the ends of a schedule, the last first, which is the order to draw the plan to the other side in.

/// Times are counted instead of compared where there are at most so many for each activity.
const SPREAD: usize = 8;

/// Sorts activities by their ends, again and again in the same room.
#[derive(Clone, Debug, Default)]
pub(crate) struct Sorting {
    /// The activities, each after all that it follows: so ties come out the right way round.
    order: Vec<u16>,
    slots: Vec<u32>,
}

impl Sorting {
    pub(crate) fn new(order: &[u16]) -> Sorting {
        Sorting { order: order.to_vec(), slots: Vec::new() }
    }

    /// Sorts the list, the last end first. Of ends at the same time the follower comes first when the ends are those of
    /// the plan forwards, and last when they are those of the plan back to front.
    pub(crate) fn by_ends(&mut self, ends: &[u32], back_to_front: bool, list: &mut Vec<u16>) {
        let last = ends.iter().max().copied().unwrap_or(0);
        let end = |activity: u16| ends.get(usize::from(activity)).copied().unwrap_or(0);
        list.clear();
        list.extend_from_slice(&self.order);
        if !back_to_front {
            list.reverse();
        }
        if last as usize > SPREAD * ends.len() {
            list.sort_by_key(|activity| std::cmp::Reverse(end(*activity)));
            return;
        }
        // A counting sort: where the activities of each end begin in the list, the last end first.
        self.slots.clear();
        self.slots.resize(last as usize + 2, 0);
        for end in ends {
            if let Some(slot) = self.slots.get_mut((last - end) as usize + 1) {
                *slot += 1;
            }
        }
        let mut before = 0;
        for slot in &mut self.slots {
            before += *slot;
            *slot = before;
        }
        let mut put = |activity: &u16| {
            if let Some(slot) = self.slots.get_mut((last - end(*activity)) as usize) {
                if let Some(place) = list.get_mut(*slot as usize) {
                    *place = *activity;
                }
                *slot += 1;
            }
        };
        if back_to_front {
            self.order.iter().for_each(&mut put);
        } else {
            self.order.iter().rev().for_each(&mut put);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn counted_and_compared_come_to_the_same() {
        let order: Vec<u16> = vec![2, 0, 1, 3, 4];
        let (mut sorting, mut list) = (Sorting::new(&order), Vec::new());
        for (far, back_to_front) in [(1, true), (1, false), (1_000, true), (1_000, false)] {
            let ends: Vec<u32> = [7, 3, 7, 0, 3].iter().map(|end| end * far).collect();
            sorting.by_ends(&ends, back_to_front, &mut list);
            assert_eq!(list, if back_to_front { [2, 0, 1, 4, 3] } else { [0, 2, 4, 1, 3] });
        }
    }
}
