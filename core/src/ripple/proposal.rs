//! Proposals: a change to the fitted spec that is tried before it is bought.

use layshaft_wire::wire;

use crate::bounds;
use crate::error::Refused;
use crate::gearing::{centre_distance, links_for, pitch};
use crate::record::{Bike, Brake, Consumer, Drive, End, Indication, Slot, Spec, Wheel};

/// What is proposed.
#[wire]
pub enum Proposal {
    /// Other sprockets (and a chain length).
    Sprockets {
        /// Teeth of the gearbox sprocket.
        front_teeth: u32,
        /// Teeth of the wheel sprocket.
        rear_teeth: u32,
        /// Links; left out: the fitted count where it still fits the adjuster, else the next even count.
        chain_links: Option<u32>,
    },
    /// Another consumer at a mark.
    Consumer {
        /// Id.
        id: String,
        /// What would stand there.
        consumer: Consumer,
    },
    /// Other parts in a brake.
    Brake {
        /// Which brake.
        end: End,
        /// What would be fitted; fields left out are as fitted now.
        brake: Brake,
    },
    /// Another flasher, other pilots, load resistors.
    Flasher {
        /// What would be fitted; fields left out are as fitted now.
        indication: Indication,
    },
    /// Another tyre, tube or rim.
    Tyre {
        /// Which wheel.
        end: End,
        /// What would be fitted; fields left out are as fitted now, but another tyre brings its own date and roll-out.
        wheel: Wheel,
    },
}

/// The fitted spec with the proposals on it.
pub fn propose(bike: &Bike, proposals: &[Proposal]) -> Result<Spec, Refused> {
    let mut spec = bike.fitted.clone();
    for proposal in proposals {
        match proposal {
            Proposal::Sprockets { front_teeth, rear_teeth, chain_links } => {
                spec.drive = with_sprockets(&spec.drive, *front_teeth, *rear_teeth, *chain_links)?;
            }
            Proposal::Consumer { id, consumer } => put_consumer(&mut spec, id, consumer.clone().checked()?),
            Proposal::Brake { end, brake } => {
                let below = match end {
                    End::Front => &mut spec.front_brake,
                    End::Rear => &mut spec.rear_brake,
                };
                *below = brake.clone().over(below).checked()?;
            }
            Proposal::Flasher { indication } => {
                spec.indication = indication.clone().over(&spec.indication).checked()?;
            }
            Proposal::Tyre { end, wheel } => {
                let below = match end {
                    End::Front => &mut spec.front_wheel,
                    End::Rear => &mut spec.rear_wheel,
                };
                *below = wheel.clone().over(below).checked()?;
            }
        }
    }
    Ok(spec)
}

/// The drive train with other sprockets. Without a chain length, the fitted chain stays where the adjuster still takes
/// it; else the next even count is meant. The centre distance follows the chain.
fn with_sprockets(drive: &Drive, front: u32, rear: u32, links: Option<u32>) -> Result<Drive, Refused> {
    bounds::FRONT_TEETH.check(f64::from(front))?;
    bounds::REAR_TEETH.check(f64::from(rear))?;
    bounds::CHAIN_LINKS.check_known(links.map(f64::from))?;
    let mut new = Drive { front_teeth: Some(front), rear_teeth: Some(rear), ..drive.clone() };
    let Some(links) = links_for(drive, front, rear, links)? else { return Ok(new) };
    new.chain_links = Some(links);
    if let Some(size) = drive.chain_size {
        new.centre_distance_mm = Some(centre_distance(front, rear, links, pitch(size))?);
    }
    Ok(new)
}

fn put_consumer(spec: &mut Spec, id: &str, consumer: Consumer) {
    match spec.consumers.iter_mut().find(|slot| slot.id == id) {
        // What hangs in a place is to the bike what hung there before, unless it says otherwise.
        Some(slot) => slot.consumer = Consumer { role: consumer.role.or(slot.consumer.role), ..consumer },
        None => spec.consumers.push(Slot { id: id.to_owned(), consumer }),
    }
}
