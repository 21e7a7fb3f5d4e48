//! Serial schedule generation: activities taken in an order, each placed as early as what it follows and the free
//! resources allow (Kolisch, “Serial and parallel resource-constrained project scheduling methods revisited”, European
//! Journal of Operational Research 90, 1996, standing: from memory).
//!
//! The free units of all resources at a time stand in one word, one byte each with a guard bit on top: one subtraction
//! and one mask tell whether an activity fits. The same code schedules the project back to front, for justification.

use super::model::{GUARD, Project};

/// A project as the generator reads it, in one direction of time.
#[derive(Clone, Debug)]
pub(crate) struct Net {
    pub(crate) works: Vec<Work>,
    links: Vec<(u16, u32)>,
    whole: u64,
}

/// An activity in one direction of time.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Work {
    pub(crate) duration: u32,
    release: u32,
    demand: u64,
    links: (u32, u32),
}

impl Net {
    /// The project forwards, and back to front.
    pub(crate) fn both(project: &Project) -> (Net, Net) {
        let forwards = project
            .activities()
            .iter()
            .map(|one| one.after.iter().map(|need| (need.activity as u16, need.lag)).collect());
        let mut backwards: Vec<Vec<(u16, u32)>> = vec![Vec::new(); project.activities().len()];
        for (place, one) in project.activities().iter().enumerate() {
            for need in &one.after {
                if let Some(list) = backwards.get_mut(need.activity) {
                    list.push((place as u16, need.lag));
                }
            }
        }
        (Net::of(project, forwards.collect(), true), Net::of(project, backwards, false))
    }

    fn of(project: &Project, lists: Vec<Vec<(u16, u32)>>, forwards: bool) -> Net {
        let packed =
            |units: &[u32]| units.iter().rev().fold(0_u64, |word, units| (word << 8) | u64::from(units & 0x7F));
        let mut links = Vec::new();
        let works = project
            .activities()
            .iter()
            .zip(lists)
            .map(|(one, list)| {
                let from = links.len() as u32;
                links.extend(list);
                let release = if forwards { one.release } else { 0 };
                let demand = packed(&one.demand);
                Work { duration: one.duration, release, demand, links: (from, links.len() as u32) }
            })
            .collect();
        Net { works, links, whole: packed(project.capacity()) | GUARD }
    }

    /// What an activity comes after in this direction.
    pub(crate) fn before(&self, place: u16) -> &[(u16, u32)] {
        let (from, to) = self.works.get(usize::from(place)).map_or((0, 0), |work| work.links);
        self.links.get(from as usize..to as usize).unwrap_or_default()
    }
}

/// Room for generating schedules, used again and again.
#[derive(Clone, Debug, Default)]
pub(crate) struct Profile {
    free: Vec<u64>,
    used: usize,
}

impl Profile {
    /// Lays the activities in an order; `ends` receives when each is over. Returns when all are.
    pub(crate) fn schedule(&mut self, net: &Net, order: &[u16], ends: &mut [u32]) -> u32 {
        if let Some(used) = self.free.get_mut(..self.used) {
            used.fill(net.whole);
        }
        let mut last = 0;
        for &place in order {
            let Some(&work) = net.works.get(usize::from(place)) else { continue };
            let mut earliest = work.release;
            for &(need, lag) in net.before(place) {
                earliest = earliest.max(ends.get(usize::from(need)).map_or(0, |end| end + lag));
            }
            let begin =
                if work.duration == 0 || work.demand == 0 { earliest } else { self.take(net.whole, work, earliest) };
            let end = begin + work.duration;
            if let Some(own) = ends.get_mut(usize::from(place)) {
                *own = end;
            }
            last = last.max(end);
        }
        self.used = (last as usize).min(self.free.len());
        last
    }

    /// The first time from `earliest` on at which the work fits; its units are taken there.
    #[inline]
    fn take(&mut self, whole: u64, work: Work, earliest: u32) -> u32 {
        let (long, demand) = (work.duration as usize, work.demand);
        let mut begin = earliest as usize;
        loop {
            if self.free.len() < begin + long {
                self.free.resize((begin + long) * 2, whole);
            }
            let Some(stretch) = self.free.get_mut(begin..begin + long) else { return begin as u32 };
            // From the back: the last clash pushes the beginning furthest.
            match stretch.iter().rposition(|free| (free - demand) & GUARD != GUARD) {
                Some(clash) => begin += clash + 1,
                None => {
                    stretch.iter_mut().for_each(|free| *free -= demand);
                    return begin as u32;
                }
            }
        }
    }
}
