//! How a chain fits: the count of links, where the axle comes to stand, and what is left of the adjuster.

use layshaft_wire::wire;

use super::wear::{WearLimit, WearRule};
use crate::bounds::{self, Bound};
use crate::error::Refused;
use crate::gearing::formulas::{
    adjuster_used, centre_distance, chain_dimensions, chain_length, free_chain, next_even, pitch, worn_centre_distance,
};
use crate::message::FieldMessage;
use crate::quantity::percent_change;
use crate::record::{ChainSize, Drive};

/// How a chain fits.
#[wire]
pub struct ChainFit {
    /// Chain size as written on it: 428.
    pub size: String,
    /// Links that the sprockets ask for at the present centre distance, with decimals.
    pub links_exact: f64,
    /// The next even count.
    pub links_even: u32,
    /// Links of the chain that this answer is for.
    pub links: u32,
    /// Centre distance that these links give, millimetres.
    pub centre_distance_mm: f64,
    /// How far the axle moves back (positive) or forward (negative) from where it is, millimetres.
    pub axle_shift_mm: f64,
    /// Whether that lies inside the adjuster, where its ends are known.
    pub inside_adjuster: Option<bool>,
    /// Adjuster travel used there, per cent, where its ends are known.
    pub travel_used_percent: Option<f64>,
    /// Adjuster travel used there, millimetres, where its near end is known.
    pub travel_used_mm: Option<f64>,
    /// Adjuster travel left there, millimetres, where its far end is known.
    pub travel_left_mm: Option<f64>,
    /// Stretch of the chain that the adjuster can still take up from there, per cent, where its far end is known.
    pub wear_room_percent: Option<f64>,
    /// Where the axle comes to stand at each limit of wear.
    pub worn: Vec<WornPosition>,
    /// How much of the chain is free with the wheel fully forward, millimetres, where that end is known. Below zero it cannot be
    /// closed there.
    pub free_forward_mm: Option<f64>,
    /// Whether the chain can be closed with the wheel forward; unknown where that end is.
    pub fits_forward: Option<bool>,
}

/// Where the axle stands with a worn chain.
#[wire]
pub struct WornPosition {
    /// Elongation, per cent.
    pub wear_percent: f64,
    /// The limit that this is; none for a measured chain.
    pub rule: Option<WearRule>,
    /// Centre distance, millimetres.
    pub centre_distance_mm: f64,
    /// Whether that lies inside the adjuster, where its ends are known.
    pub inside_adjuster: Option<bool>,
    /// Adjuster travel left, millimetres, where its far end is known.
    pub travel_left_mm: Option<f64>,
}

/// Where the axle stands, and how far the adjuster lets it go.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Axle {
    /// Centre distance now, mm.
    pub present_mm: f64,
    /// The distance was measured; else it follows from the chain that is fitted.
    pub measured: bool,
    /// Least centre distance, mm.
    pub from_mm: Option<f64>,
    /// Greatest centre distance, mm.
    pub to_mm: Option<f64>,
}

impl Axle {
    /// The axle as it stands with the drive that is fitted now; none where neither the distance nor the chain is known.
    pub fn of(now: &Drive) -> Result<Option<Self>, Refused> {
        let measured = bounds::CENTRE_DISTANCE.check_known(now.centre_distance_mm)?;
        let Some(present_mm) = measured.or_else(|| distance_of_fitted(now)) else { return Ok(None) };
        let mut from_mm = FROM.check_known(now.adjuster_from_mm)?;
        let mut to_mm = TO.check_known(now.adjuster_to_mm)?;
        if ends_swapped(now) {
            (from_mm, to_mm) = (None, None);
        }
        Ok(Some(Self { present_mm, measured: measured.is_some(), from_mm, to_mm }))
    }

    /// Whether a centre distance lies inside the adjuster; unknown where an end that matters is.
    pub fn holds(&self, mm: f64) -> Option<bool> {
        let short = self.from_mm.is_some_and(|from| mm < from);
        let long = self.to_mm.is_some_and(|to| mm > to);
        match (short || long, self.from_mm, self.to_mm) {
            (true, ..) => Some(false),
            (false, Some(_), Some(_)) => Some(true),
            _ => None,
        }
    }
}

const FROM: Bound = bounds::CENTRE_DISTANCE.named("adjusterFromMm", FieldMessage::LeastCentre);
const TO: Bound = bounds::CENTRE_DISTANCE.named("adjusterToMm", FieldMessage::GreatestCentre);

/// Whether the ends of the adjuster were entered the wrong way round.
pub(crate) fn ends_swapped(drive: &Drive) -> bool {
    drive.adjuster_from_mm.zip(drive.adjuster_to_mm).is_some_and(|(from, to)| from >= to)
}

/// The centre distance that the chain on the bike gives by geometry.
fn distance_of_fitted(now: &Drive) -> Option<f64> {
    let (front, rear) = teeth(now).ok()?;
    let links = links_of(now).ok()??;
    centre_distance(front, rear, links, pitch(now.chain_size?)).ok()
}

/// Teeth of both sprockets, or a refusal that says which is missing or out of range.
pub(crate) fn teeth(drive: &Drive) -> Result<(u32, u32), Refused> {
    let front = need(&bounds::FRONT_TEETH, drive.front_teeth)?;
    let rear = need(&bounds::REAR_TEETH, drive.rear_teeth)?;
    Ok((front, rear))
}

fn need(bound: &Bound, value: Option<u32>) -> Result<u32, Refused> {
    bound.need(value.map(f64::from))?;
    Ok(value.unwrap_or_default())
}

/// Links of the chain on a drive, checked.
pub(crate) fn links_of(drive: &Drive) -> Result<Option<u32>, Refused> {
    bounds::CHAIN_LINKS.check_known(drive.chain_links.map(f64::from))?;
    Ok(drive.chain_links)
}

/// Links of the chain for a pair of sprockets: those asked for; else the fitted count where it keeps the axle inside the
/// adjuster (or the sprockets stay as they are); else the next even count where the axle stands now. As long as the ends
/// of the adjuster are unknown, the fitted count stands when it is no more than one link off. `now` is the drive that is
/// fitted; where its chain size or its centre distance is unknown, only what is asked is known.
pub fn links_for(now: &Drive, front_teeth: u32, rear_teeth: u32, asked: Option<u32>) -> Result<Option<u32>, Refused> {
    let (Some(size), Some(axle)) = (now.chain_size, Axle::of(now)?) else { return Ok(asked) };
    choose_links(pitch(size), (front_teeth, rear_teeth), asked, now, &axle).map(Some)
}

/// The choice of [`links_for`], for a drive and an axle.
pub(crate) fn choose_links(
    pitch_mm: f64,
    (front, rear): (u32, u32),
    asked: Option<u32>,
    now: &Drive,
    axle: &Axle,
) -> Result<u32, Refused> {
    if let Some(asked) = asked {
        bounds::CHAIN_LINKS.check(f64::from(asked))?;
        return Ok(asked);
    }
    let unchanged = (now.front_teeth, now.rear_teeth) == (Some(front), Some(rear));
    let needed = chain_length(front, rear, axle.present_mm, pitch_mm)?;
    if let Some(fitted) = links_of(now)?
        && let Ok(distance) = centre_distance(front, rear, fitted, pitch_mm)
        && (unchanged || axle.holds(distance).unwrap_or((f64::from(fitted) - needed).abs() <= 1.0))
    {
        return Ok(fitted);
    }
    Ok(next_even(needed))
}

/// How a chain of `links` fits a pair of sprockets at an axle.
pub(crate) fn fit_chain(
    size: ChainSize,
    (front, rear): (u32, u32),
    links: u32,
    axle: &Axle,
    limits: &[WearLimit],
) -> Result<ChainFit, Refused> {
    let dimensions = chain_dimensions(size);
    let links_exact = chain_length(front, rear, axle.present_mm, dimensions.pitch_mm)?;
    let distance = centre_distance(front, rear, links, dimensions.pitch_mm)?;
    let travel_used_percent = axle.from_mm.zip(axle.to_mm).map(|(from, to)| adjuster_used(distance, from, to));
    let wear_room_percent = match axle.to_mm {
        Some(to) => Some(percent_change(f64::from(links), chain_length(front, rear, to, dimensions.pitch_mm)?)),
        None => None,
    };
    let free_forward_mm = match axle.from_mm {
        Some(from) => {
            let needed = chain_length(front, rear, from, dimensions.pitch_mm)?;
            Some(free_chain(links, needed, dimensions.pitch_mm))
        }
        None => None,
    };
    Ok(ChainFit {
        size: dimensions.name.to_owned(),
        links_exact,
        links_even: next_even(links_exact),
        links,
        centre_distance_mm: distance,
        axle_shift_mm: distance - axle.present_mm,
        inside_adjuster: axle.holds(distance),
        travel_used_percent,
        travel_used_mm: axle.from_mm.map(|from| distance - from),
        travel_left_mm: axle.to_mm.map(|to| to - distance),
        wear_room_percent,
        worn: worn_positions(size, (front, rear), links, axle, limits)?,
        free_forward_mm,
        fits_forward: free_forward_mm.map(|free| free >= 0.0),
    })
}

/// Where the axle stands with a chain worn by so many per cent.
pub(crate) fn worn_position(
    size: ChainSize,
    (front, rear): (u32, u32),
    links: u32,
    axle: &Axle,
    wear_percent: f64,
    rule: Option<WearRule>,
) -> Result<WornPosition, Refused> {
    let distance = worn_centre_distance(front, rear, links, pitch(size), wear_percent)?;
    Ok(WornPosition {
        wear_percent,
        rule,
        centre_distance_mm: distance,
        inside_adjuster: axle.holds(distance),
        travel_left_mm: axle.to_mm.map(|to| to - distance),
    })
}

/// The same at each limit of wear.
pub(crate) fn worn_positions(
    size: ChainSize,
    teeth: (u32, u32),
    links: u32,
    axle: &Axle,
    limits: &[WearLimit],
) -> Result<Vec<WornPosition>, Refused> {
    limits.iter().map(|limit| worn_position(size, teeth, links, axle, limit.percent, Some(limit.rule))).collect()
}

/// Even counts near the one that is asked for which keep the axle inside the adjuster.
pub(crate) fn counts_that_fit(pitch_mm: f64, (front, rear): (u32, u32), axle: &Axle) -> Vec<u32> {
    let ends = axle.from_mm.zip(axle.to_mm);
    let Some((from, to)) = ends else { return Vec::new() };
    let counts = chain_length(front, rear, from, pitch_mm).ok().zip(chain_length(front, rear, to, pitch_mm).ok());
    let Some((least, most)) = counts else { return Vec::new() };
    (next_even(least)..=most.floor() as u32).step_by(2).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gearing::judge::wear::wear_limits;
    use crate::gearing::sample::demo_drive as demo;

    fn fit(drive: &Drive, teeth: (u32, u32), asked: Option<u32>) -> ChainFit {
        let axle = Axle::of(drive).unwrap().unwrap();
        let links = choose_links(12.7, teeth, asked, drive, &axle).unwrap();
        fit_chain(ChainSize::C428, teeth, links, &axle, &wear_limits(drive, None).unwrap()).unwrap()
    }

    #[test]
    fn the_demo_chain_is_the_one_its_centre_distance_asks_for() {
        let fit = fit(&demo(), (15, 41), None);
        assert!((fit.links_exact - 115.9505).abs() < 1e-4, "{}", fit.links_exact);
        assert_eq!((fit.links_even, fit.links), (116, 116));
        assert!((fit.centre_distance_mm - 556.316).abs() < 1e-3, "{}", fit.centre_distance_mm);
        assert_eq!(fit.inside_adjuster, Some(true));
    }

    #[test]
    fn the_demo_chain_closes_with_the_wheel_forward_and_reaches_the_end_at_two_per_cent() {
        let fit = fit(&demo(), (15, 41), None);
        assert!(
            (fit.travel_used_mm.unwrap() - 10.316).abs() < 1e-3 && (fit.travel_left_mm.unwrap() - 14.684).abs() < 1e-3
        );
        // 10.3 mm back on each run, less what the lean of the runs takes.
        assert!(fit.fits_forward == Some(true) && (fit.free_forward_mm.unwrap() - 20.5).abs() < 0.2);
        let worn: Vec<_> = fit.worn.iter().map(|at| (at.rule, at.inside_adjuster)).collect();
        assert_eq!(worn, [(Some(WearRule::Manuals), Some(false)), (Some(WearRule::ChainMakers), Some(false))]);
        assert!((fit.worn[0].centre_distance_mm - 571.112).abs() < 2e-3, "{}", fit.worn[0].centre_distance_mm);
        // The room for wear says the same from the other side.
        assert!((fit.wear_room_percent.unwrap() - 1.985).abs() < 1e-3);
    }

    #[test]
    fn a_chain_too_short_for_the_forward_end_cannot_be_closed_there() {
        let fit = fit(&demo(), (15, 41), Some(112));
        assert!(fit.fits_forward == Some(false) && fit.free_forward_mm.unwrap() < 0.0);
        let mut drive = demo();
        drive.adjuster_from_mm = None;
        let axle = Axle::of(&drive).unwrap().unwrap();
        let fit = fit_chain(ChainSize::C428, (15, 41), 116, &axle, &[]).unwrap();
        assert_eq!((fit.fits_forward, fit.travel_used_mm), (None, None));
    }

    #[test]
    fn smaller_sprockets_keep_the_fitted_chain_where_the_adjuster_takes_it() {
        let fit = fit(&demo(), (16, 38), None);
        assert_eq!(fit.links, 116);
        assert!((fit.centre_distance_mm - 563.394).abs() < 1e-3, "{}", fit.centre_distance_mm);
        assert!((fit.axle_shift_mm - 7.394).abs() < 1e-3);
        assert!((fit.travel_used_percent.unwrap() - 69.57).abs() < 0.01, "{:?}", fit.travel_used_percent);
        assert!((fit.wear_room_percent.unwrap() - 1.03).abs() < 0.01, "{:?}", fit.wear_room_percent);
    }

    #[test]
    fn larger_sprockets_take_the_next_even_count_where_the_adjuster_does_not() {
        let fit = fit(&demo(), (17, 48), None);
        assert!(fit.links > 116 && fit.links.is_multiple_of(2), "{}", fit.links);
        assert_eq!(fit.links, fit.links_even);
    }

    #[test]
    fn asked_links_stand_even_when_they_do_not_fit() {
        let fit = fit(&demo(), (15, 41), Some(110));
        assert_eq!((fit.links, fit.inside_adjuster), (110, Some(false)));
        assert!(fit.travel_used_percent.unwrap() < 0.0);
    }

    #[test]
    fn without_the_ends_nobody_knows_whether_it_lies_inside() {
        let mut drive = demo();
        (drive.adjuster_from_mm, drive.adjuster_to_mm) = (None, None);
        assert_eq!(fit(&drive, (15, 41), None).inside_adjuster, None);
        // With one end known it may still be surely outside.
        drive.adjuster_to_mm = Some(550.0);
        assert_eq!(fit(&drive, (15, 41), None).inside_adjuster, Some(false));
        drive.adjuster_to_mm = Some(570.0);
        assert_eq!(fit(&drive, (15, 41), None).inside_adjuster, None);
    }

    #[test]
    fn without_a_measured_distance_the_chain_on_the_bike_tells_it() {
        let mut drive = demo();
        drive.centre_distance_mm = None;
        let axle = Axle::of(&drive).unwrap().unwrap();
        assert!(!axle.measured && (axle.present_mm - 556.316).abs() < 1e-3);
        drive.chain_links = None;
        assert_eq!(Axle::of(&drive), Ok(None));
    }

    #[test]
    fn ends_the_wrong_way_round_count_as_unknown() {
        let mut drive = demo();
        (drive.adjuster_from_mm, drive.adjuster_to_mm) = (Some(571.0), Some(546.0));
        let axle = Axle::of(&drive).unwrap().unwrap();
        assert_eq!((axle.from_mm, axle.to_mm), (None, None));
        assert!(ends_swapped(&drive));
    }

    #[test]
    fn counts_that_fit_lie_inside_the_adjuster_and_their_neighbours_outside() {
        let drive = demo();
        let axle = Axle::of(&drive).unwrap().unwrap();
        let counts = counts_that_fit(12.7, (15, 41), &axle);
        assert_eq!(counts, [116, 118]);
        for (links, inside) in [(114, false), (116, true), (118, true), (120, false)] {
            let distance = centre_distance(15, 41, links, 12.7).unwrap();
            assert_eq!(axle.holds(distance), Some(inside), "{links} links: {distance:.1} mm");
        }
    }

    #[test]
    fn links_are_chosen_as_asked_or_as_they_fit() {
        assert_eq!(links_for(&demo(), 16, 38, None), Ok(Some(116)));
        assert_eq!(links_for(&demo(), 16, 38, Some(114)), Ok(Some(114)));
        assert_eq!(links_for(&Drive::default(), 16, 38, None), Ok(None));
        assert_eq!(links_for(&Drive::default(), 16, 38, Some(114)), Ok(Some(114)));
        assert!(links_for(&demo(), 16, 38, Some(7)).is_err());
    }

    #[test]
    fn without_the_ends_the_fitted_chain_stays_only_when_it_is_within_a_link() {
        let mut drive = demo();
        (drive.adjuster_from_mm, drive.adjuster_to_mm) = (None, None);
        // 115.9 and 118.1 links at 556 mm.
        assert_eq!(links_for(&drive, 14, 42, None), Ok(Some(116)));
        assert_eq!(links_for(&drive, 15, 45, None), Ok(Some(120)));
    }
}
