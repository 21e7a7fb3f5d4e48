//! Parts that a ready-made job asks for, with the size that the bike knows.

use layshaft_wire::wire;

use crate::record::{Bike, Brake, BrakeKind, Delivery, Drive, Part, Spec, Wheel};

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
    /// The cable of a brake; none where both are discs.
    BrakeCable,
    /// Brake fluid.
    BrakeFluid,
    /// The bore of the master cylinder.
    MasterCylinder,
    /// The pistons of the caliper.
    CaliperPistons,
    /// The drum in which the shoes run.
    DrumShoes,
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
    /// What to read off or measure before it is ordered, where the bike does not know the size.
    pub ask: String,
}

impl NeededPart {
    /// The part as it goes on the list: wanted, with its size where the bike knows it. It comes in the usual time until
    /// its owner says better: without any time to come there would be no ready date.
    pub fn part(&self, bike: &Bike) -> Part {
        let size = self.size.and_then(|size| size.on(bike));
        // Whoever orders it without a size orders the wrong one.
        let note = size.is_none().then(|| self.ask.clone());
        Part { title: self.title.clone(), size, note, delivery: Some(Delivery::usual()), ..Part::default() }
    }

    /// Whether another build of the bike takes it in another size.
    pub fn differs(&self, bike: &Bike, build: &Bike) -> bool {
        self.size.is_some_and(|size| size.on(bike) != size.on(build))
    }

    /// Whether the bike has no use for it: a tube where the tyre runs without, a cable where both brakes are discs.
    pub fn is_idle_on(&self, bike: &Bike) -> bool {
        let without = |wheel: &Wheel| wheel.tube == Some(false);
        match self.size {
            Some(SizeOf::FrontTube) => without(&bike.fitted.front_wheel),
            Some(SizeOf::RearTube) => without(&bike.fitted.rear_wheel),
            Some(SizeOf::BrakeCable) => {
                let Spec { front_brake, rear_brake, .. } = &bike.fitted;
                [front_brake, rear_brake].iter().all(|brake| brake.brake == Some(BrakeKind::Disc))
            }
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
            Self::BrakeCable => None,
            Self::BrakeFluid => alike(bike, |brake| brake.fluid.map(|grade| grade.name().to_owned())),
            Self::MasterCylinder => alike(bike, |brake| Some(millimetres(brake.master_mm?))),
            Self::CaliperPistons => alike(bike, |brake| Some(millimetres(brake.piston_mm?))),
            Self::DrumShoes => {
                let drum = |brake: &Brake| brake.brake == Some(BrakeKind::Drum);
                alike(bike, |brake| brake.rotor_mm.filter(|_| drum(brake)).map(millimetres))
            }
        }
    }
}

/// What the brakes of the bike know, where it is one thing: of two sizes nobody knows which one is meant.
fn alike(bike: &Bike, known: impl Fn(&Brake) -> Option<String>) -> Option<String> {
    let front = known(&bike.fitted.front_brake);
    let rear = known(&bike.fitted.rear_brake);
    match (front, rear) {
        (Some(front), Some(rear)) => (front == rear).then_some(front),
        (front, rear) => front.or(rear),
    }
}

fn millimetres(value: f64) -> String {
    format!("{value} mm")
}

/// A tube goes by the tyre that it lies in.
fn tube(wheel: &Wheel) -> Option<String> {
    wheel.tyre.clone()
}

fn sprocket(drive: &Drive, teeth: Option<u32>) -> Option<String> {
    let teeth = format!("{}T", teeth?);
    Some(drive.chain_size.map_or_else(|| teeth.clone(), |size| format!("{}, {teeth}", size.number())))
}
