//! Which bikes a ready-made job suits, by what their records know.

use layshaft_wire::wire;

use super::message::ReadyMadeFit;
use crate::record::{Bike, BrakeKind, Cooling, Starter, Strokes};

/// Which bikes a job suits; what is left out does not matter.
#[wire(lenient)]
pub struct Suits {
    /// A brake of this kind at one end at least.
    pub brake: Option<BrakeKind>,
    /// What cools the engine.
    pub cooling: Option<Cooling>,
    /// Two-stroke or four-stroke.
    pub strokes: Option<Strokes>,
    /// What turns the engine over.
    pub starter: Option<Starter>,
}

/// How a job goes with a bike.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Fit {
    /// It suits.
    Suits,
    /// Nobody knows yet, and why.
    Depends(ReadyMadeFit),
    /// It does not suit, and why.
    Not(ReadyMadeFit),
}

impl Suits {
    /// How a job goes with the bike as it is being built. What rules it out is said before what is not known.
    pub(super) fn on(&self, bike: &Bike) -> Fit {
        let brakes = [bike.fitted.front_brake.brake, bike.fitted.rear_brake.brake];
        let fits = [
            self.brake.map(|wanted| on_brakes(wanted, brakes)),
            self.cooling.map(|wanted| on_cooling(wanted, bike.identity.cooling)),
            self.strokes.map(|wanted| on_strokes(wanted, bike.identity.strokes)),
            self.starter.map(|wanted| on_starter(wanted, bike.identity.starter)),
        ];
        let told: Vec<Fit> = fits.into_iter().flatten().collect();
        let not = told.iter().find(|fit| matches!(fit, Fit::Not(_)));
        not.or_else(|| told.iter().find(|fit| matches!(fit, Fit::Depends(_)))).cloned().unwrap_or(Fit::Suits)
    }
}

fn on_brakes(wanted: BrakeKind, brakes: [Option<BrakeKind>; 2]) -> Fit {
    if brakes.contains(&Some(wanted)) {
        Fit::Suits
    } else if brakes.contains(&None) {
        Fit::Depends(ReadyMadeFit::BrakesUnknown)
    } else {
        Fit::Not(match wanted {
            BrakeKind::Disc => ReadyMadeFit::NoDisc,
            BrakeKind::Drum => ReadyMadeFit::NoDrum,
        })
    }
}

fn on_cooling(wanted: Cooling, cooling: Option<Cooling>) -> Fit {
    match cooling {
        None => Fit::Depends(ReadyMadeFit::CoolingUnknown),
        Some(known) if known == wanted => Fit::Suits,
        Some(Cooling::Air) => Fit::Not(ReadyMadeFit::CooledByAir),
        Some(Cooling::Liquid) => Fit::Not(ReadyMadeFit::CooledByLiquid),
    }
}

fn on_strokes(wanted: Strokes, strokes: Option<Strokes>) -> Fit {
    match strokes {
        None => Fit::Depends(ReadyMadeFit::StrokesUnknown),
        Some(known) if known == wanted => Fit::Suits,
        Some(Strokes::Two) => Fit::Not(ReadyMadeFit::TwoStroke),
        Some(Strokes::Four) => Fit::Not(ReadyMadeFit::FourStroke),
    }
}

fn on_starter(wanted: Starter, starter: Option<Starter>) -> Fit {
    match starter {
        None => Fit::Depends(ReadyMadeFit::StarterUnknown),
        Some(known) if known == wanted => Fit::Suits,
        Some(Starter::Kick) => Fit::Not(ReadyMadeFit::KickOnly),
        Some(Starter::Electric) => Fit::Not(ReadyMadeFit::StartsByMotor),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_brake_of_the_kind_is_enough_and_an_unknown_one_leaves_it_open() {
        use BrakeKind::{Disc, Drum};
        assert_eq!(on_brakes(Disc, [Some(Disc), None]), Fit::Suits);
        assert_eq!(on_brakes(Disc, [Some(Drum), Some(Drum)]), Fit::Not(ReadyMadeFit::NoDisc));
        assert_eq!(on_brakes(Disc, [Some(Drum), None]), Fit::Depends(ReadyMadeFit::BrakesUnknown));
    }

    #[test]
    fn what_rules_a_job_out_is_said_before_what_is_not_known() {
        let mut bike = Bike::default();
        let suits = Suits {
            brake: Some(BrakeKind::Disc),
            cooling: Some(Cooling::Liquid),
            strokes: Some(Strokes::Four),
            starter: None,
        };
        assert_eq!(suits.on(&bike), Fit::Depends(ReadyMadeFit::BrakesUnknown));
        bike.identity.cooling = Some(Cooling::Air);
        assert_eq!(suits.on(&bike), Fit::Not(ReadyMadeFit::CooledByAir));
        assert_eq!(Suits::default().on(&bike), Fit::Suits);
    }
}
