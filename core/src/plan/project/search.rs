//! The search: a population of activity lists that are crossed, shaken and justified, always the same for the same
//! project, seed and budget. The budget counts schedules, not seconds: the core has no clock.
//!
//! Method, by idea only: activity lists with two-point crossover (Hartmann, Naval Research Logistics 45, 1998), each
//! schedule drawn to the right and to the left again (Valls, Ballestín and Quintanilla, European Journal of Operational
//! Research 165, 2005; standing of both: from memory). Shaking a list moves a few activities within what their links
//! allow. Where a population has become one family, all but its best is drawn anew.

use super::Dice;
use super::bound::{heads_and_tails, lower_bound};
use super::model::Project;
use super::serial::{Net, Profile};

/// Members of the population: few for large projects, which leave time for fewer schedules.
const POPULATION: (usize, usize) = (60, 30);
/// A project is large from so many activities on.
const LARGE: usize = 90;
/// Of ten children so many are shaken copies, the others are crossed.
const SHAKEN_OF_TEN: usize = 4;
/// The population is drawn anew after so many children for each member without a better plan.
const PATIENCE: usize = 250;

/// A plan in the population.
#[derive(Clone, Debug, Default)]
struct Member {
    /// The activities in the order in which they begin.
    list: Vec<u16>,
    /// When all is over.
    length: u32,
    /// The sum of all ends, which tells plans of one length apart.
    sum: u64,
}

/// A search that can be taken further.
#[derive(Clone, Debug)]
pub struct Search {
    net: Net,
    mirrored: Net,
    /// Where each activity stands among all, each after what it follows.
    rank: Vec<u16>,
    /// How urgent each is: the way from its beginning to the end of all.
    tails: Vec<u32>,
    profile: Profile,
    population: Vec<Member>,
    dice: Dice,
    best: Vec<u32>,
    length: u32,
    bound: u32,
    schedules: u64,
    idle: usize,
    keys: Vec<u64>,
    ends: Vec<u32>,
    taken: Vec<bool>,
}

impl Search {
    /// Begins a search with the plan by the longest tail, which is there at once.
    ///
    /// ```
    /// use layshaft_core::plan::project::{Activity, Project, Search};
    /// let hands = |duration| Activity { duration, demand: vec![1], ..Activity::default() };
    /// let project = Project::new(vec![hands(2), hands(3)], vec![1]).unwrap();
    /// let search = Search::new(&project, 1);
    /// assert_eq!((search.length(), search.bound(), search.begins().len()), (5, 5, 2));
    /// ```
    pub fn new(project: &Project, seed: u64) -> Search {
        let (net, mirrored) = Net::both(project);
        let count = project.activities().len();
        let mut rank = vec![0; count];
        for (place, activity) in project.order().iter().enumerate() {
            if let Some(own) = rank.get_mut(usize::from(*activity)) {
                *own = place as u16;
            }
        }
        let (_, tails) = heads_and_tails(project);
        let tails = tails.iter().zip(project.activities()).map(|(tail, one)| tail + one.duration).collect();
        let mut search = Search {
            net,
            mirrored,
            rank,
            tails,
            profile: Profile::default(),
            population: Vec::new(),
            dice: Dice::of(seed),
            best: vec![0; count],
            length: u32::MAX,
            bound: lower_bound(project),
            schedules: 0,
            idle: 0,
            keys: Vec::with_capacity(count),
            ends: vec![0; count],
            taken: vec![false; count],
        };
        let first = search.sampled(0.0);
        let first = search.justified(first);
        search.population.push(first);
        search
    }

    /// Searches on until so many more schedules are generated, or until the plan is proved to be the shortest.
    pub fn run(&mut self, schedules: u64) {
        let until = self.schedules.saturating_add(schedules);
        let members = if self.best.len() < LARGE { POPULATION.0 } else { POPULATION.1 };
        while self.schedules < until && self.length > self.bound && self.best.len() > 1 {
            if self.population.len() < members {
                let list = self.sampled(0.6);
                let member = self.justified(list);
                self.population.push(member);
                continue;
            }
            self.breed();
            if self.idle > PATIENCE * members {
                self.population.sort_by_key(|member| (member.length, member.sum));
                self.population.truncate(1);
                self.idle = 0;
            }
        }
    }

    /// When all is over by the best plan so far.
    pub fn length(&self) -> u32 {
        self.length
    }

    /// What no plan can be shorter than.
    pub fn bound(&self) -> u32 {
        self.bound
    }

    /// Schedules generated so far.
    pub fn schedules(&self) -> u64 {
        self.schedules
    }

    /// When each activity begins by the best plan so far.
    pub fn begins(&self) -> Vec<u32> {
        self.best.iter().zip(&self.net.works).map(|(end, work)| end - work.duration).collect()
    }

    /// The activities in the order in which they begin by the best plan so far.
    pub(crate) fn list(&self) -> Vec<usize> {
        let mut list: Vec<usize> = (0..self.best.len()).collect();
        let begins = self.begins();
        list.sort_by_key(|place| (begins.get(*place).copied(), self.rank.get(*place).copied()));
        list
    }

    /// One child, which takes the place of a worse member.
    fn breed(&mut self) {
        let (one, other) = (self.picked(), self.picked());
        let mut list = match (self.population.get(one), self.population.get(other)) {
            (Some(mother), Some(father)) => {
                let (mother, father) = (mother.list.clone(), father.list.clone());
                if self.dice.below(10) < SHAKEN_OF_TEN || one == other {
                    mother
                } else {
                    self.crossed(&mother, &father)
                }
            }
            _ => return,
        };
        let moves = 1 + self.dice.below(3);
        for _ in 0..moves {
            self.shake(&mut list);
        }
        let child = self.justified(list);
        self.idle += 1;
        if self.population.iter().any(|member| (member.length, member.sum) == (child.length, child.sum)) {
            return;
        }
        let loser = (0..4)
            .map(|_| self.dice.below(self.population.len()))
            .max_by_key(|place| self.population.get(*place).map(|member| (member.length, member.sum)));
        if let Some(member) = loser.and_then(|place| self.population.get_mut(place))
            && (child.length, child.sum) <= (member.length, member.sum)
        {
            *member = child;
        }
    }

    /// The better of two members.
    fn picked(&mut self) -> usize {
        let (one, other) = (self.dice.below(self.population.len()), self.dice.below(self.population.len()));
        let score = |place: usize| self.population.get(place).map(|member| (member.length, member.sum));
        if score(one) <= score(other) { one } else { other }
    }

    /// Two-point crossover: a stretch of the mother's list in the father's order. What precedes in both still precedes.
    fn crossed(&mut self, mother: &[u16], father: &[u16]) -> Vec<u16> {
        let count = mother.len();
        let long = (1 + self.dice.below(count)).min(count);
        let from = self.dice.below(count - long + 1);
        self.taken.fill(false);
        let mut child = Vec::with_capacity(count);
        let draw = |parent: &[u16], until: usize, child: &mut Vec<u16>, taken: &mut [bool]| {
            for &activity in parent {
                if child.len() >= until {
                    break;
                }
                if let Some(taken) = taken.get_mut(usize::from(activity)).filter(|taken| !**taken) {
                    *taken = true;
                    child.push(activity);
                }
            }
        };
        draw(mother, from, &mut child, &mut self.taken);
        draw(father, from + long, &mut child, &mut self.taken);
        draw(mother, count, &mut child, &mut self.taken);
        child
    }

    /// Moves one activity to another place in the list, between what it follows and what follows it.
    fn shake(&mut self, list: &mut [u16]) {
        let from = self.dice.below(list.len());
        let Some(&activity) = list.get(from) else { return };
        let is_in = |links: &[(u16, u32)], other: u16| links.iter().any(|(link, _)| *link == other);
        let (before, behind) = (self.net.before(activity), self.mirrored.before(activity));
        let earliest = list
            .get(..from)
            .and_then(|part| part.iter().rposition(|other| is_in(before, *other)))
            .map_or(0, |place| place + 1);
        let latest = list
            .get(from + 1..)
            .and_then(|part| part.iter().position(|other| is_in(behind, *other)))
            .map_or(list.len() - 1, |gap| from + gap);
        let to = earliest + self.dice.below(latest + 1 - earliest);
        if to < from {
            if let Some(part) = list.get_mut(to..=from) {
                part.rotate_right(1);
            }
        } else if let Some(part) = list.get_mut(from..=to) {
            part.rotate_left(1);
        }
    }

    /// A list drawn by urgency, with so much chance in it (0: none).
    fn sampled(&mut self, chance: f64) -> Vec<u16> {
        let urgency: Vec<f64> =
            self.tails.iter().map(|tail| f64::from(*tail) * (1.0 - chance * self.dice.roll())).collect();
        let mut left: Vec<u16> = (0..self.best.len() as u16).collect();
        left.sort_by_key(|activity| self.rank.get(usize::from(*activity)).copied());
        let mut list = Vec::with_capacity(left.len());
        self.taken.fill(false);
        while !left.is_empty() {
            let free = |activity: u16| {
                let done = |need: u16| self.taken.get(usize::from(need)).copied().unwrap_or(true);
                self.net.before(activity).iter().all(|(need, _)| done(*need))
            };
            let urgent = |activity: u16| urgency.get(usize::from(activity)).copied().unwrap_or(0.0);
            let can = left.iter().enumerate().filter(|(_, activity)| free(**activity));
            let Some((place, _)) = can.max_by(|(_, one), (_, other)| urgent(**one).total_cmp(&urgent(**other))) else {
                break;
            };
            let activity = left.remove(place);
            if let Some(taken) = self.taken.get_mut(usize::from(activity)) {
                *taken = true;
            }
            list.push(activity);
        }
        list
    }

    /// The plan of a list, drawn to the right and to the left again.
    fn justified(&mut self, mut list: Vec<u16>) -> Member {
        self.profile.lay(&self.net, &list, &mut self.ends);
        self.by_ends(&mut list, false);
        self.profile.lay(&self.mirrored, &list, &mut self.ends);
        self.by_ends(&mut list, true);
        let length = self.profile.lay(&self.net, &list, &mut self.ends);
        self.schedules += 3;
        if length < self.length {
            self.length = length;
            self.idle = 0;
            self.best.clone_from(&self.ends);
        }
        let sum = self.ends.iter().map(|end| u64::from(*end)).sum();
        Member { list, length, sum }
    }

    /// Sorts the list by the ends of the last schedule, the last first; ties keep every activity on the right side of
    /// what it follows.
    fn by_ends(&mut self, list: &mut [u16], back_to_front: bool) {
        self.keys.clear();
        for (activity, (end, rank)) in self.ends.iter().zip(&self.rank).enumerate() {
            let tie = if back_to_front { 0xFFFF - rank } else { *rank };
            self.keys.push((u64::from(*end) << 32) | (u64::from(tie) << 16) | activity as u64);
        }
        self.keys.sort_unstable();
        for (slot, key) in list.iter_mut().zip(self.keys.iter().rev()) {
            *slot = *key as u16;
        }
    }
}
