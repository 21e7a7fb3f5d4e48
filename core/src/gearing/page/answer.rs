//! The answer of the gearing page: standard and proposed side by side.

use layshaft_wire::wire;

use super::working;
use crate::bounds;
use crate::error::Refused;
use crate::gearing::formulas::{engine_speed_change, pitch};
use crate::gearing::judge::{
    Axle, ChainFit, Corrector, GearTrain, Sender, SpeedometerShift, choose_links, corrector, corrector_of, findings,
    fit_chain, gear_train, speedometer, teeth, wear_limits,
};
use crate::quantity::{Finding, WorkLine, Working};
use crate::record::{Bike, Spec};
use crate::tyres::rolling_pair;

/// What to work out. What is left out is taken from the fitted bike.
#[wire(lenient)]
pub struct GearingAsk {
    /// Teeth of the gearbox sprocket.
    pub front_teeth: Option<u32>,
    /// Teeth of the wheel sprocket.
    pub rear_teeth: Option<u32>,
    /// Links of the chain; left out: the fitted chain's, or the next even count.
    pub chain_links: Option<u32>,
    /// Road speed for the comparison, km/h; left out: 80.
    pub road_speed_kmh: Option<f64>,
}

/// The gearing page.
#[wire]
pub struct GearingAnswer {
    /// As made, where it is known well enough.
    pub standard: Option<GearTrain>,
    /// As asked.
    pub proposed: GearTrain,
    /// Change of engine speed at the same road speed against standard, in top gear, per cent; negative is slower.
    pub engine_speed_change_percent: Option<f64>,
    /// Road speed of the comparison, km/h.
    pub road_speed_kmh: f64,
    /// Engine speed limit, revolutions a minute.
    pub rev_limit_rpm: Option<f64>,
    /// The chain, where its size and centre distance are known.
    pub chain: Option<ChainFit>,
    /// The speedometer, where its drive is known.
    pub speedometer: Option<SpeedometerShift>,
    /// What a corrector must do, where the shift is known.
    pub corrector: Option<Corrector>,
    /// What is worth saying.
    pub findings: Vec<Finding>,
    /// How it was worked out.
    pub working: Working,
}

/// Road speed of the comparison where none is asked for, km/h.
const USUAL_ROAD_SPEED_KMH: f64 = 80.0;

/// Works the gearing page out: every gear as made and as asked, the chain, the speedometer.
///
/// A value that the speeds cannot do without is a refusal that names it; what only the chain or the speedometer needs is a
/// finding, and that part is left out.
pub fn gearing_answer(bike: &Bike, ask: &GearingAsk) -> Result<GearingAnswer, Refused> {
    let road_speed_kmh = bounds::ROAD_SPEED.check(ask.road_speed_kmh.unwrap_or(USUAL_ROAD_SPEED_KMH))?;
    let asked = asked_spec(bike, ask);
    let drive = &asked.drive;
    let (standard_wheel, wheel) = rolling_pair(&bike.standard.rear_wheel, &asked.rear_wheel);
    teeth(drive)?;
    let proposed = gear_train(drive, wheel?, road_speed_kmh)?;
    let standard = standard_wheel.and_then(|wheel| gear_train(&bike.standard.drive, wheel, road_speed_kmh)).ok();
    let change = standard.as_ref().and_then(|standard| change_in_top(standard, &proposed));

    let axle = Axle::of(&bike.fitted.drive)?;
    let chain = chain(bike, &asked, ask.chain_links, axle.as_ref())?;
    let speedometer = speedometer(bike, &asked)?;
    let corrector =
        speedometer.as_ref().map(|shift| corrector(shift, drive.speedometer_over_percent, corrector_of(drive)));

    let mut found = findings::on_gears(bike, &proposed, standard.is_some(), road_speed_kmh);
    found.extend(findings::on_tyre(&asked.rear_wheel, proposed.circumference_measured));
    found.extend(findings::on_chain(bike, drive, axle.as_ref(), chain.as_ref()));
    found.extend(findings::on_speedometer(drive, speedometer.as_ref()));

    let mut lines = working::on_gears(drive, (&bike.standard.rear_wheel, &asked.rear_wheel), &proposed, road_speed_kmh);
    lines.extend(standard.as_ref().and_then(|standard| working::on_change(standard, &proposed)));
    lines.extend(chain_lines(&asked, axle.as_ref(), chain.as_ref()));
    let sender = drive.speedometer.and_then(|sender| Sender::of(sender, &bike.standard, &asked));
    if let (Some(sender), Some(shift)) = (&sender, &speedometer) {
        lines.extend(working::on_speedometer(drive, sender, shift));
    }
    lines.extend(corrector.as_ref().and_then(working::on_corrector));
    let working = working::working(lines, proposed.circumference_measured, chain.is_some(), speedometer.is_some());

    Ok(GearingAnswer {
        standard,
        engine_speed_change_percent: change,
        road_speed_kmh,
        rev_limit_rpm: drive.rev_limit_rpm,
        proposed,
        chain,
        speedometer,
        corrector,
        findings: found,
        working,
    })
}

/// The fitted spec with what is asked laid over it.
fn asked_spec(bike: &Bike, ask: &GearingAsk) -> Spec {
    let mut spec = bike.fitted.clone();
    spec.drive.front_teeth = ask.front_teeth.or(spec.drive.front_teeth);
    spec.drive.rear_teeth = ask.rear_teeth.or(spec.drive.rear_teeth);
    spec
}

fn change_in_top(standard: &GearTrain, proposed: &GearTrain) -> Option<f64> {
    let (before, after) = (standard.top()?.overall_ratio, proposed.top()?.overall_ratio);
    Some(engine_speed_change(before, after, standard.circumference_mm, proposed.circumference_mm))
}

fn chain(bike: &Bike, asked: &Spec, links: Option<u32>, axle: Option<&Axle>) -> Result<Option<ChainFit>, Refused> {
    bounds::CHAIN_LINKS.check_known(links.map(f64::from))?;
    let (Some(size), Some(axle)) = (asked.drive.chain_size, axle) else { return Ok(None) };
    let teeth = teeth(&asked.drive)?;
    let links = choose_links(pitch(size), teeth, links, &bike.fitted.drive, axle)?;
    fit_chain(size, teeth, links, axle, &wear_limits(&asked.drive, None)?).map(Some)
}

fn chain_lines(asked: &Spec, axle: Option<&Axle>, fit: Option<&ChainFit>) -> Vec<WorkLine> {
    match (asked.drive.chain_size, teeth(&asked.drive), axle, fit) {
        (Some(size), Ok(teeth), Some(axle), Some(fit)) => working::on_chain(size, teeth, axle, fit),
        _ => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gearing::sample::demo_bike;
    use crate::record::SpeedometerDrive;

    fn ask(front_teeth: u32, rear_teeth: u32) -> GearingAsk {
        GearingAsk { front_teeth: Some(front_teeth), rear_teeth: Some(rear_teeth), ..GearingAsk::default() }
    }

    fn codes(sheet: &GearingAnswer) -> Vec<&str> {
        sheet.findings.iter().map(|finding| finding.code.as_str()).collect()
    }

    #[track_caller]
    fn missing(bike: &Bike) -> String {
        match gearing_answer(bike, &GearingAsk::default()) {
            Err(Refused::Missing { field, .. }) => field,
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn taller_sprockets_slow_the_engine_in_every_gear() {
        let sheet = gearing_answer(&demo_bike(), &ask(16, 38)).unwrap();
        let standard = sheet.standard.as_ref().unwrap();
        assert!((standard.final_ratio - 2.733).abs() < 4e-4 && sheet.proposed.final_ratio == 2.375);
        assert!((sheet.engine_speed_change_percent.unwrap() + 13.1).abs() < 0.02);
        for (before, after) in standard.gears.iter().zip(&sheet.proposed.gears) {
            assert!((after.rpm_at_road_speed / before.rpm_at_road_speed - 2.375 * 15.0 / 41.0).abs() < 1e-12);
        }
        // Figures reckoned apart: 9,500 rpm and 80 km/h in fifth.
        let (before, after) = (standard.top().unwrap(), sheet.proposed.top().unwrap());
        assert!(
            (before.kmh_at_limit.unwrap() - 143.85).abs() < 0.01 && (after.kmh_at_limit.unwrap() - 165.55).abs() < 0.01
        );
        assert!((before.rpm_at_road_speed - 5283.4).abs() < 0.1 && (after.rpm_at_road_speed - 4590.8).abs() < 0.1);
    }

    #[test]
    fn the_page_as_the_bike_stands_changes_nothing() {
        let sheet = gearing_answer(&demo_bike(), &GearingAsk::default()).unwrap();
        assert_eq!(sheet.standard.as_ref(), Some(&sheet.proposed));
        assert_eq!(sheet.engine_speed_change_percent, Some(0.0));
        assert_eq!(sheet.speedometer.as_ref().unwrap().factor, 1.0);
        assert_eq!(sheet.chain.as_ref().unwrap().links, 116);
        assert!(
            sheet.findings.iter().all(|finding| finding.code.as_str() == "chain.little-room-for-wear"),
            "{:?}",
            codes(&sheet)
        );
    }

    #[test]
    fn a_gearbox_speedometer_that_may_now_read_low_is_said() {
        let mut bike = demo_bike();
        let sheet = gearing_answer(&bike, &ask(16, 38)).unwrap();
        assert_eq!(sheet.speedometer.as_ref().unwrap().in_band, None);
        assert!(codes(&sheet).contains(&"speedometer.may-read-low"));

        bike.fitted.drive.speedometer_over_percent = Some(5.0);
        let sheet = gearing_answer(&bike, &ask(16, 38)).unwrap();
        assert_eq!(sheet.speedometer.as_ref().unwrap().in_band, Some(false));
        assert!((sheet.speedometer.as_ref().unwrap().shown_at_80_kmh - 72.988).abs() < 1e-3);
        assert!(codes(&sheet).contains(&"speedometer.reads-low"));

        let sheet = gearing_answer(&bike, &ask(14, 45)).unwrap();
        assert!(codes(&sheet).contains(&"speedometer.reads-high"));

        bike.fitted.drive.speedometer = Some(SpeedometerDrive::FrontWheel);
        let sheet = gearing_answer(&bike, &ask(16, 38)).unwrap();
        assert_eq!(sheet.speedometer.as_ref().unwrap().in_band, Some(true));
        assert!(!codes(&sheet).iter().any(|code| code.starts_with("speedometer")));
    }

    #[test]
    fn a_chain_that_does_not_fit_names_the_counts_that_do() {
        let sheet = gearing_answer(&demo_bike(), &GearingAsk { chain_links: Some(113), ..ask(15, 41) }).unwrap();
        let found = codes(&sheet);
        assert!(found.contains(&"chain.odd-count") && found.contains(&"chain.another-chain"), "{found:?}");
        let outside = sheet.findings.iter().find(|finding| finding.code.as_str() == "chain.outside-adjuster").unwrap();
        assert!(outside.text.english().ends_with("116 or 118 links would fit."), "{}", outside.text);
    }

    #[test]
    fn a_chain_too_short_for_the_teeth_is_refused() {
        let refused = gearing_answer(&demo_bike(), &GearingAsk { chain_links: Some(60), ..ask(30, 80) }).unwrap_err();
        assert!(matches!(&refused, Refused::Conflict { field, .. } if field == "chainLinks"), "{refused:?}");
    }

    #[test]
    fn teeth_links_and_speed_outside_their_range_are_refused_by_field() {
        let bike = demo_bike();
        for (ask, wanted) in [
            (ask(0, 41), "frontTeeth"),
            (ask(15, 200), "rearTeeth"),
            (GearingAsk { chain_links: Some(1000), ..ask(15, 41) }, "chainLinks"),
            (GearingAsk { road_speed_kmh: Some(-1.0), ..ask(15, 41) }, "roadSpeedKmh"),
        ] {
            let refused = gearing_answer(&bike, &ask).unwrap_err();
            assert!(matches!(&refused, Refused::OutOfRange { field, .. } if field == wanted), "{refused:?}");
        }
        let refused = gearing_answer(&bike, &GearingAsk { road_speed_kmh: Some(f64::NAN), ..ask(15, 41) }).unwrap_err();
        assert!(matches!(refused, Refused::NotANumber { .. }));
    }

    #[test]
    fn what_the_speeds_cannot_do_without_is_named() {
        type Forget = fn(&mut Spec);
        for (forget, field) in [
            ((|spec| spec.drive.front_teeth = None) as Forget, "frontTeeth"),
            (|spec| spec.drive.rear_teeth = None, "rearTeeth"),
            (|spec| spec.drive.primary_ratio = None, "primaryRatio"),
            (|spec| spec.drive.gear_ratios.clear(), "gearRatios"),
            (|spec| spec.rear_wheel.tyre = None, "tyre"),
        ] {
            let mut bike = demo_bike();
            forget(&mut bike.standard);
            forget(&mut bike.fitted);
            assert_eq!(missing(&bike), field);
        }
        assert_eq!(missing(&Bike::default()), "frontTeeth");
    }

    #[test]
    fn what_only_chain_and_speedometer_need_is_left_out_and_said() {
        let mut bike = demo_bike();
        bike.standard = Spec::default();
        bike.fitted.drive.chain_size = None;
        bike.fitted.drive.speedometer = None;
        bike.fitted.drive.rev_limit_rpm = None;
        let sheet = gearing_answer(&bike, &GearingAsk::default()).unwrap();
        assert!(sheet.standard.is_none() && sheet.chain.is_none() && sheet.speedometer.is_none());
        assert!(sheet.proposed.gears.iter().all(|gear| gear.kmh_at_limit.is_none()));
        assert_eq!(
            codes(&sheet),
            [
                "gearing.standard-unknown",
                "gearing.missing-rev-limit",
                "gearing.missing-chain-size",
                "gearing.missing-speedometer"
            ]
        );
    }

    #[test]
    fn a_miscounted_chain_is_noticed() {
        let mut bike = demo_bike();
        bike.standard.drive.chain_links = Some(114);
        bike.fitted.drive.chain_links = Some(114);
        let sheet = gearing_answer(&bike, &GearingAsk::default()).unwrap();
        assert!(codes(&sheet).contains(&"chain.distance-disagrees"));
    }

    #[test]
    fn a_speed_beyond_the_limit_of_top_gear_is_said() {
        let sheet = gearing_answer(&demo_bike(), &GearingAsk { road_speed_kmh: Some(150.0), ..ask(15, 41) }).unwrap();
        assert!(codes(&sheet).contains(&"gearing.beyond-limit"));
    }

    #[test]
    fn a_low_section_inch_tyre_says_what_its_code_leaves_open() {
        let mut bike = demo_bike();
        bike.fitted.rear_wheel.tyre = Some("4.60-18".to_owned());
        let sheet = gearing_answer(&bike, &GearingAsk::default()).unwrap();
        assert!(codes(&sheet).contains(&"tyre.height-open"));
        bike.fitted.rear_wheel.circumference_mm = Some(2050.0);
        let sheet = gearing_answer(&bike, &GearingAsk::default()).unwrap();
        assert!(!codes(&sheet).contains(&"tyre.height-open") && sheet.proposed.circumference_measured);
    }

    #[test]
    fn a_roll_out_on_the_old_tyre_scales_to_the_new_one_and_says_so() {
        let mut bike = demo_bike();
        bike.standard.rear_wheel.circumference_mm = Some(1880.0);
        bike.fitted.rear_wheel.circumference_mm = Some(1880.0);
        let equation = |bike: &Bike| {
            let sheet = gearing_answer(bike, &GearingAsk::default()).unwrap();
            sheet.working.lines.into_iter().find(|line| line.label.english().starts_with("Rolling")).unwrap()
        };
        let line = equation(&bike);
        assert_eq!(
            (line.label.english().as_str(), line.equation.as_str()),
            ("Rolling circumference, rear, rolled out", "1880")
        );
        bike.fitted.rear_wheel.tyre = Some("3.25-18".to_owned());
        let line = equation(&bike);
        assert_eq!(line.equation, "1880 × 622.3 / 609.6");
        assert!(line.label.english().ends_with("from the roll-out of the other tyre"), "{}", line.label);
        assert!((line.value - 1880.0 * 622.3 / 609.6).abs() < 1e-9);
    }

    #[test]
    fn every_line_of_the_working_has_numbers_in_it_and_every_source_a_text() {
        let sheet = gearing_answer(&demo_bike(), &ask(16, 38)).unwrap();
        assert_eq!(sheet.working.lines.len(), 19, "{:#?}", sheet.working.lines);
        assert_eq!(sheet.working.lines[3].label, "Speed in top at 1 000 rpm");
        for line in &sheet.working.lines {
            assert!(line.equation.chars().any(|letter| letter.is_ascii_digit()) && line.value.is_finite(), "{line:?}");
        }
        assert!(
            sheet.working.sources.len() >= 5
                && sheet.working.sources.iter().all(|source| !source.text.english().is_empty())
        );
    }
}
