//! Parts that a ready-made job asks for, with the size that the bike knows.

use layshaft_wire::wire;

use crate::record::{Bike, Delivery, Drive, Part, Wheel};

/// Where on the bike the size of a part is known.
#[wire]
pub enum SizeOf {
    /// The front tyre.
    FrontTyre,
    /// The rear tyre.
    RearTyre,
    /// The tube in the front tyre.
    FrontTube,
    /// The tube in the rear tyre.
    RearTube,
    /// The chain.
    Chain,
    /// The sprocket at the gearbox.
    GearboxSprocket,
    /// The sprocket at the wheel.
    WheelSprocket,
}

/// A part that a ready-made job asks for.
#[wire]
pub struct NeededPart {
    /// Id within the job.
    pub id: String,
    /// What it is.
    pub title: String,
    /// Where its size is known.
    pub size: Option<SizeOf>,
}

impl NeededPart {
    /// The part as it goes on the list: wanted, with its size where the bike knows it. It comes in the usual time until
    /// its owner says better: without any time to come there would be no ready date.
    pub fn part(&self, bike: &Bike) -> Part {
        let size = self.size.and_then(|size| size.on(bike));
        Part { title: self.title.clone(), size, delivery: Some(Delivery::usual()), ..Part::default() }
    }

    /// Whether another build of the bike takes it in another size.
    pub fn differs(&self, bike: &Bike, build: &Bike) -> bool {
        self.size.is_some_and(|size| size.on(bike) != size.on(build))
    }

    /// Whether the bike has no use for it: a tube where the tyre runs without.
    pub fn is_idle_on(&self, bike: &Bike) -> bool {
        let without = |wheel: &Wheel| wheel.tube == Some(false);
        match self.size {
            Some(SizeOf::FrontTube) => without(&bike.fitted.front_wheel),
            Some(SizeOf::RearTube) => without(&bike.fitted.rear_wheel),
            _ => false,
        }
    }
}

impl SizeOf {
    /// The size as the trade writes it, where the bike knows it.
    ///
    /// ```
    /// use layshaft_core::ready_made::SizeOf;
    /// use layshaft_core::record::{Bike, ChainSize};
    /// let mut bike = Bike::default();
    /// assert_eq!(SizeOf::Chain.on(&bike), None);
    /// bike.fitted.drive.chain_size = Some(ChainSize::C428);
    /// bike.fitted.drive.chain_links = Some(118);
    /// bike.fitted.drive.front_teeth = Some(15);
    /// assert_eq!(SizeOf::Chain.on(&bike).as_deref(), Some("428 × 118"));
    /// assert_eq!(SizeOf::GearboxSprocket.on(&bike).as_deref(), Some("428, 15T"));
    /// ```
    pub fn on(self, bike: &Bike) -> Option<String> {
        let (front, rear, drive) = (&bike.fitted.front_wheel, &bike.fitted.rear_wheel, &bike.fitted.drive);
        match self {
            Self::FrontTyre => front.tyre.clone(),
            Self::RearTyre => rear.tyre.clone(),
            Self::FrontTube => tube(front),
            Self::RearTube => tube(rear),
            Self::Chain => {
                let size = drive.chain_size?.number();
                Some(drive.chain_links.map_or_else(|| size.to_owned(), |links| format!("{size} × {links}")))
            }
            Self::GearboxSprocket => sprocket(drive, drive.front_teeth),
            Self::WheelSprocket => sprocket(drive, drive.rear_teeth),
        }
    }
}

/// A tube goes by the tyre that it lies in.
fn tube(wheel: &Wheel) -> Option<String> {
    wheel.tyre.clone()
}

fn sprocket(drive: &Drive, teeth: Option<u32>) -> Option<String> {
    let teeth = format!("{}T", teeth?);
    Some(drive.chain_size.map_or_else(|| teeth.clone(), |size| format!("{}, {teeth}", size.number())))
}
