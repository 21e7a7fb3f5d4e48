//! The population: plans that breed, the better ones more often, and make room for better children.

use super::dice::Dice;

/// A parent is the best of so many drawn by chance; a child may take the place of the worst of so many.
const TRIED: (usize, usize) = (3, 4);

/// How good a plan is, the smaller the better: when all is over, then the sum of all ends, which tells plans of one
/// length apart.
pub(crate) type Score = (u32, u64);

/// A plan in the population.
#[derive(Clone, Debug, Default)]
pub(crate) struct Member {
    /// The activities in the order in which they begin.
    pub(crate) list: Vec<u16>,
    pub(crate) score: Score,
}

/// Plans, in no order. The scores stand apart, because they are looked at more often than the lists.
#[derive(Clone, Debug, Default)]
pub(crate) struct Population {
    scores: Vec<Score>,
    lists: Vec<Vec<u16>>,
}

impl Population {
    pub(crate) fn len(&self) -> usize {
        self.scores.len()
    }

    /// Takes a member in without another's leaving.
    pub(crate) fn add(&mut self, member: Member) {
        self.scores.push(member.score);
        self.lists.push(member.list);
    }

    /// The list of a parent.
    pub(crate) fn parent(&self, dice: &mut Dice) -> Option<&Vec<u16>> {
        let place = (0..TRIED.0).map(|_| dice.below(self.len())).min_by_key(|place| self.scores.get(*place))?;
        self.lists.get(place)
    }

    /// Lets a child take the place of a member that is no better, unless its like is there already: the population would
    /// become one family. Returns the list that is free to be used again.
    pub(crate) fn offer(&mut self, child: Member, dice: &mut Dice) -> Vec<u16> {
        let there = self.scores.contains(&child.score);
        let loser = (0..TRIED.1).map(|_| dice.below(self.len())).max_by_key(|place| self.scores.get(*place));
        let Some(place) = loser.filter(|_| !there) else { return child.list };
        match (self.scores.get_mut(place), self.lists.get_mut(place)) {
            (Some(score), Some(list)) if child.score <= *score => {
                *score = child.score;
                std::mem::replace(list, child.list)
            }
            _ => child.list,
        }
    }

    /// Sends all away but the best.
    pub(crate) fn keep_best(&mut self) {
        let Some(best) = (0..self.len()).min_by_key(|place| self.scores.get(*place)) else { return };
        self.scores.swap(0, best);
        self.lists.swap(0, best);
        self.scores.truncate(1);
        self.lists.truncate(1);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn member(length: u32, sum: u64) -> Member {
        Member { list: vec![length as u16], score: (length, sum) }
    }

    #[test]
    fn a_child_replaces_the_worse_and_never_the_better_nor_its_like() {
        let mut population = Population::default();
        population.add(member(5, 9));
        let mut dice = Dice::of(1);
        assert_eq!(population.offer(member(6, 1), &mut dice), vec![6]);
        assert_eq!(population.offer(member(5, 9), &mut dice), vec![5]);
        assert_eq!(population.offer(member(4, 12), &mut dice), vec![5]);
        assert_eq!(population.parent(&mut dice), Some(&vec![4]));
        population.add(member(3, 1));
        population.add(member(7, 1));
        population.keep_best();
        assert_eq!((population.len(), population.parent(&mut dice)), (1, Some(&vec![3])));
    }
}
