//! The search: a population of activity lists that are crossed, shaken and justified, always the same for the same
//! project, seed and budget. The budget counts schedules, not seconds: the core has no clock.
//!
//! Method, by idea only: activity lists that are crossed (Hartmann, Naval Research Logistics 45, 1998), each schedule
//! drawn to the right and to the left again (Valls, Ballestín and Quintanilla, European Journal of Operational Research
//! 165, 2005). A child keeps a stretch of one parent as it is and has what comes before and after in the order of the
//! other (Debels and Vanhoucke, Lecture Notes in Computer Science 3483, 2005; standing of all three: from memory).
//! Shaking a list moves a few activities within what their links allow.
//!
//! The population is small at first, so that a short search breeds too. When the search goes on, all but the best is
//! drawn anew, and many more: a small population becomes one family long before a large project is well planned. Where
//! that has happened to the large one too, all but its best is drawn anew again.

use super::bound::{heads_and_tails, lower_bound};
use super::dice::Dice;
use super::lists::{crossed, drawn, shake};
use super::model::Project;
use super::population::{Member, Population};
use super::serial::{Net, Profile};
use super::sorting::Sorting;

/// Members of the population in a short search, and in one that goes on.
const MEMBERS: (usize, usize) = (60, 400);
/// A search is short up to so many schedules.
const SHORT: u64 = 1_000;
/// How much of the urgency is left to chance where a list is drawn.
const CHANCE: f64 = 0.6;
/// At most so many activities of a child are moved, at least one.
const MOVES: usize = 3;
/// The population is drawn anew after so many children for each member without a better plan.
const PATIENCE: usize = 40;

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
    population: Population,
    sorting: Sorting,
    dice: Dice,
    best: Vec<u32>,
    length: u32,
    bound: u32,
    schedules: u64,
    /// How many members the population shall have.
    members: usize,
    /// Children since the last better plan.
    idle: usize,
    ends: Vec<u32>,
    /// Room for breeding.
    parts: Vec<u8>,
    spare: Vec<u16>,
}

impl Search {
    /// Begins a search with the plan by the longest tail, which is there at once.
    ///
    /// ```
    /// use layshaft_core::plan::rcpsp::{Activity, Project, Search};
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
            population: Population::default(),
            sorting: Sorting::new(project.order()),
            dice: Dice::of(seed),
            best: vec![0; count],
            length: u32::MAX,
            bound: lower_bound(project),
            schedules: 0,
            members: MEMBERS.0,
            idle: 0,
            ends: vec![0; count],
            parts: vec![0; count],
            spare: Vec::new(),
        };
        search.newcomer(0.0);
        search
    }

    /// Searches on until so many more schedules are generated, or until the plan is proved to be the shortest.
    pub fn run(&mut self, schedules: u64) {
        let until = self.schedules.saturating_add(schedules);
        while self.schedules < until && self.length > self.bound && self.best.len() > 1 {
            if self.population.len() < self.members {
                self.newcomer(CHANCE);
                continue;
            }
            self.breed();
            let short_over = self.members == MEMBERS.0 && self.schedules > SHORT;
            if short_over || self.idle > PATIENCE * self.members {
                self.members = MEMBERS.1;
                self.population.keep_best();
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

    /// A member drawn by urgency, with so much chance in it (0: none).
    fn newcomer(&mut self, chance: f64) {
        let urgency: Vec<f64> =
            self.tails.iter().map(|tail| f64::from(*tail) * (1.0 - chance * self.dice.roll())).collect();
        let list = drawn(&self.net, &self.mirrored, &urgency, &self.rank);
        let member = self.justified(list);
        self.population.add(member);
    }

    /// One child, which takes the place of a worse member.
    fn breed(&mut self) {
        let (mother, father) = (self.population.parent(&mut self.dice), self.population.parent(&mut self.dice));
        let Some((mother, father)) = mother.zip(father) else { return };
        let mut list = std::mem::take(&mut self.spare);
        crossed(mother, father, &mut self.parts, &mut list, &mut self.dice);
        for _ in 0..=self.dice.below(MOVES) {
            shake(&self.net, &self.mirrored, &mut list, &mut self.dice);
        }
        self.idle += 1;
        let child = self.justified(list);
        self.spare = self.population.offer(child, &mut self.dice);
    }

    /// The plan of a list, drawn to the right and to the left again.
    fn justified(&mut self, mut list: Vec<u16>) -> Member {
        self.profile.schedule(&self.net, &list, &mut self.ends);
        self.sorting.by_ends(&self.ends, false, &mut list);
        self.profile.schedule(&self.mirrored, &list, &mut self.ends);
        self.sorting.by_ends(&self.ends, true, &mut list);
        let length = self.profile.schedule(&self.net, &list, &mut self.ends);
        self.schedules += 3;
        if length < self.length {
            self.length = length;
            self.idle = 0;
            self.best.clone_from(&self.ends);
        }
        let sum = self.ends.iter().map(|end| u64::from(*end)).sum();
        Member { list, score: (length, sum) }
    }
}
