//! The quantities of gearing, chain, speedometer and tyre that take part in ripple and readiness.
//!
//! What cannot be derived from what is known is simply absent. A quantity is judged only where there is a limit, and it stays
//! open where the limit or the measurement behind it is unknown.

use super::formulas::{final_ratio, geometry, kinematics, pitch, road_speed, turns_until_same_link, wear_source};
use super::judge::{
    Axle, ChainFit, GearTrain, SpeedometerShift, WearRule, choose_links, corrector, corrector_of, findings, fit_chain,
    gear_train, judge_wear, links_of, noted_elongation, speedometer, speedometer_source, teeth, wear_limits,
};
use super::message::GearingMessage;
use super::thrust::derive_thrust;
use crate::bounds;
use crate::error::Refused;
use crate::message::Message;
use crate::quantity::{Finding, FindingCode, Judgement, Quantity, Source, Weight};
use crate::record::{Bike, Drive, End, Spec};
use crate::tyres::{Rolling, rolling_pair, tyre_source};
use crate::units::Unit;

/// Road speed at which engine speed and speedometer are compared, km/h.
const COMPARED_KMH: f64 = 80.0;

/// Everything that follows from the drive and the wheels of a spec, with what is worth saying about it.
pub fn derive_gearing(bike: &Bike, spec: &Spec) -> (Vec<Quantity>, Vec<Finding>) {
    let mut quantities = Vec::new();
    let mut found = Vec::new();
    let rear = rolling_pair(&bike.standard.rear_wheel, &spec.rear_wheel).1.ok();
    let front = rolling_pair(&bike.standard.front_wheel, &spec.front_wheel).1.ok();
    for (end, mark, rolling) in [(End::Front, "front", front), (End::Rear, "rear", rear)] {
        quantities.extend(rolling.map(|rolling| circumference(end, mark, rolling)));
    }
    if let Ok((front, rear)) = teeth(&spec.drive) {
        let ratio = final_ratio(front, rear);
        quantities.push(open("gearing.final-ratio", GearingMessage::FinalRatio, ratio, Unit::None, kinematics()));
        found.extend(findings::on_clearance(bike, (front, rear)));
    }
    let train = rear.and_then(|rear| gear_train(&spec.drive, rear, COMPARED_KMH).ok());
    if let Some(train) = &train {
        quantities.extend(on_train(train, spec.drive.rev_limit_rpm, bike.identity.peak_power_rpm));
        found.extend(findings::on_tyre(&spec.rear_wheel, train.circumference_measured));
    }

    let axle = Axle::of(&bike.fitted.drive).ok().flatten();
    let fit = match chain(bike, spec, axle.as_ref()) {
        Ok(fit) => fit,
        Err(refused) => {
            found.push(Finding::new(FindingCode::ChainCannotRun, Weight::Care, refused.message()));
            None
        }
    };
    if let Some(fit) = &fit {
        quantities.extend(on_chain(fit, spec.drive.front_teeth));
    }
    found.extend(findings::on_chain(bike, &spec.drive, axle.as_ref(), fit.as_ref()));

    let shift = speedometer(bike, spec).ok().flatten();
    if let Some(shift) = &shift {
        quantities.extend(on_speedometer(shift, &spec.drive));
    }
    found.extend(findings::on_speedometer(&spec.drive, shift.as_ref()));
    quantities.extend(noted_wear(bike, spec));
    quantities.extend(derive_thrust(bike, spec));
    (quantities, found)
}

fn chain(bike: &Bike, spec: &Spec, axle: Option<&Axle>) -> Result<Option<ChainFit>, Refused> {
    let (Some(size), Some(axle), Ok(teeth)) = (spec.drive.chain_size, axle, teeth(&spec.drive)) else {
        return Ok(None);
    };
    let links = choose_links(pitch(size), teeth, links_of(&spec.drive)?, &bike.fitted.drive, axle)?;
    fit_chain(size, teeth, links, axle, &wear_limits(&spec.drive, None)?).map(Some)
}

/// The wear that was noted, as long as the chain is the one that it was measured on.
fn noted_wear(bike: &Bike, spec: &Spec) -> Option<Quantity> {
    let (now, then) = (&spec.drive, &bike.fitted.drive);
    let same = (now.chain_size, now.chain_links) == (then.chain_size, then.chain_links);
    let percent = noted_elongation(bike).filter(|_| same)?;
    let (judgement, why) = judge_wear(percent, &wear_limits(now, None).ok()?);
    let quantity = open("chain.elongation", GearingMessage::Elongation, percent, Unit::Percent, wear_source());
    Some(Quantity { judgement, why: (judgement != Judgement::Open).then_some(why), ..quantity })
}

fn circumference(end: End, mark: &str, rolling: Rolling) -> Quantity {
    open(
        &format!("tyre.{mark}.circumference"),
        GearingMessage::Circumference { end },
        rolling.circumference_mm,
        Unit::Millimetre,
        tyre_source(rolling.measured),
    )
}

fn on_train(train: &GearTrain, limit: Option<f64>, peak_power_rpm: Option<f64>) -> Vec<Quantity> {
    let mut quantities = Vec::new();
    for line in &train.gears {
        let (gear, ratio) = (line.gear, line.overall_ratio);
        quantities.push(open(
            &format!("gearing.gear{gear}.overall-ratio"),
            GearingMessage::OverallRatio { gear },
            ratio,
            Unit::None,
            kinematics(),
        ));
        quantities.extend(line.kmh_at_limit.map(|kmh| {
            let label = GearingMessage::SpeedAtLimit { gear };
            open(&format!("speed.gear{gear}.at-limit"), label, kmh, Unit::KilometreHour, kinematics())
        }));
    }
    let Some(top) = train.top() else { return quantities };
    let label = GearingMessage::EngineSpeedInTop { speed: Unit::KilometreHour.of(COMPARED_KMH) };
    quantities.push(judged(
        open("rpm.top.at-80", label, top.rpm_at_road_speed, Unit::Rpm, kinematics()),
        limit.map(|limit| (top.rpm_at_road_speed <= limit, GearingMessage::EngineLimit { limit: Unit::Rpm.of(limit) })),
    ));
    if let Ok(Some(rpm)) = (bounds::REV_LIMIT.of("peakPowerRpm")).check_known(peak_power_rpm) {
        let kmh = road_speed(rpm, top.overall_ratio, train.circumference_mm);
        let label = GearingMessage::SpeedAtPeakPower;
        quantities.push(open("speed.top.at-peak-power", label, kmh, Unit::KilometreHour, kinematics()));
    }
    quantities
}

fn on_chain(fit: &ChainFit, front_teeth: Option<u32>) -> Vec<Quantity> {
    let inside = fit.inside_adjuster;
    let verdict = |inside: bool| (inside, GearingMessage::AdjusterHolds { inside });
    let mut quantities = vec![
        open("chain.links-needed", GearingMessage::LinksNeeded, fit.links_exact, Unit::Links, geometry()),
        judged(
            open("chain.links", GearingMessage::Links, f64::from(fit.links), Unit::Links, geometry()),
            Some((fit.links.is_multiple_of(2), GearingMessage::EvenCount)),
        ),
        judged(
            open(
                "chain.centre-distance",
                GearingMessage::CentreDistance,
                fit.centre_distance_mm,
                Unit::Millimetre,
                geometry(),
            ),
            inside.map(verdict),
        ),
        open("chain.axle-shift", GearingMessage::AxleShift, fit.axle_shift_mm, Unit::Millimetre, geometry()),
    ];
    quantities.extend(fit.travel_used_percent.map(|used| {
        judged(
            open("chain.adjuster-used", GearingMessage::AdjusterUsed, used, Unit::Percent, geometry()),
            inside.map(verdict),
        )
    }));
    quantities.extend(fit.wear_room_percent.map(|room| {
        // Chain makers and manuals differ on the limit (1 to 3 %), so only “none left” is judged.
        let none_left = (room < 0.0).then_some((false, GearingMessage::AtAdjusterEnd));
        judged(open("chain.wear-room", GearingMessage::WearRoom, room, Unit::Percent, geometry()), none_left)
    }));
    // The owner's own limit stands first; else the usual one of manuals, the least that is in use.
    quantities.extend(fit.worn.first().map(|worn| {
        judged(
            open(
                "chain.axle-at-wear-limit",
                GearingMessage::WornCentreDistance { wear: Unit::Percent.of(worn.wear_percent) },
                worn.centre_distance_mm,
                Unit::Millimetre,
                geometry(),
            ),
            // The common limits differ, so only the owner's own is judged.
            worn.inside_adjuster.filter(|_| worn.rule == Some(WearRule::Entered)).map(verdict),
        )
    }));
    quantities.extend(front_teeth.map(|teeth| {
        let turns = f64::from(turns_until_same_link(teeth, fit.links));
        open("chain.same-link-turns", GearingMessage::SameLinkTurns, turns, Unit::None, geometry())
    }));
    quantities
}

fn on_speedometer(shift: &SpeedometerShift, drive: &Drive) -> [Quantity; 3] {
    let corrector = corrector(shift, drive.speedometer_over_percent, corrector_of(drive));
    let needed = corrector.needed.map(|needed| {
        let (least, most) = (Unit::None.of(corrector.band_from), Unit::None.of(corrector.band_to));
        (!needed, GearingMessage::CorrectorAllowed { least, most })
    });
    let kmh = |value: f64| Unit::KilometreHour.of(value);
    let speed = kmh(COMPARED_KMH);
    let band = shift.in_band.map(|inside| {
        let (least, most) = (kmh(shift.allowed_from_at_80_kmh), kmh(shift.allowed_to_at_80_kmh));
        (inside, GearingMessage::SpeedometerAllowed { least, most, speed })
    });
    [
        open("speedometer.shift", GearingMessage::SpeedometerShift, shift.shift_percent, Unit::Percent, kinematics()),
        judged(
            open(
                "speedometer.shown-at-80",
                GearingMessage::SpeedometerShown { speed },
                shift.shown_at_80_kmh,
                Unit::KilometreHour,
                speedometer_source(),
            ),
            band,
        ),
        judged(
            open(
                "speedometer.corrector",
                GearingMessage::CorrectorRatio,
                corrector.to_true,
                Unit::None,
                speedometer_source(),
            ),
            needed,
        ),
    ]
}

fn open(id: &str, label: impl Into<Message>, value: f64, unit: Unit, source: Source) -> Quantity {
    Quantity::new(id, label, value, unit, (Judgement::Open, None), source)
}

/// The quantity with a verdict, where there is one.
fn judged(quantity: Quantity, verdict: Option<(bool, GearingMessage)>) -> Quantity {
    let Some((fine, why)) = verdict else { return quantity };
    let judgement = if fine { Judgement::Fine } else { Judgement::Outside };
    Quantity { judgement, why: Some(why.into()), ..quantity }
}

/// Top speed of a spec on a level road, km/h; none where drag area, mass or power are not known.
pub fn derived_top_speed(bike: &Bike, spec: &Spec) -> Option<f64> {
    let (quantities, _) = derive_gearing(bike, spec);
    quantities.iter().find(|quantity| quantity.id == "speed.top").map(|quantity| quantity.value)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gearing::sample::demo_bike;
    use crate::record::Reading;

    fn value<'a>(quantities: &'a [Quantity], id: &str) -> &'a Quantity {
        quantities.iter().find(|quantity| quantity.id == id).unwrap_or_else(|| panic!("{id}"))
    }

    #[test]
    fn the_demo_bike_gives_every_quantity_with_its_own_mark() {
        let bike = demo_bike();
        let (quantities, findings) = derive_gearing(&bike, &bike.fitted);
        for (id, expected) in [
            ("tyre.front.circumference", 1875.22),
            ("tyre.rear.circumference", 1915.11),
            ("gearing.final-ratio", 2.7333),
            ("gearing.gear1.overall-ratio", 25.2261),
            ("speed.gear1.at-limit", 43.273),
            ("speed.gear5.at-limit", 143.85),
            ("rpm.top.at-80", 5283.4),
            ("speed.top.at-peak-power", 128.71),
            ("chain.links-needed", 115.9505),
            ("chain.links", 116.0),
            ("chain.centre-distance", 556.316),
            ("chain.axle-shift", 0.316),
            ("chain.adjuster-used", 41.2637),
            ("chain.wear-room", 1.985),
            ("chain.axle-at-wear-limit", 571.112),
            ("chain.same-link-turns", 116.0),
            ("speedometer.shift", 0.0),
            ("speedometer.shown-at-80", 80.0),
            ("speedometer.corrector", 1.0),
        ] {
            let quantity = value(&quantities, id);
            assert!((quantity.value - expected).abs() < 6e-5 * expected.max(10.0), "{id}: {}", quantity.value);
        }
        let mut ids: Vec<_> = quantities.iter().map(|quantity| &quantity.id).collect();
        let all = ids.len();
        ids.sort();
        ids.dedup();
        assert_eq!(ids.len(), all);
        assert!(findings.iter().all(|finding| finding.weight == Weight::Note), "{findings:?}");
    }

    #[test]
    fn other_sprockets_cross_no_limit_on_the_demo_bike_but_leave_the_speedometer_open() {
        let bike = demo_bike();
        let mut spec = bike.fitted.clone();
        (spec.drive.front_teeth, spec.drive.rear_teeth) = (Some(16), Some(38));
        let (quantities, findings) = derive_gearing(&bike, &spec);
        assert_eq!(value(&quantities, "chain.centre-distance").judgement, Judgement::Fine);
        assert!((value(&quantities, "chain.axle-shift").value - 7.394).abs() < 1e-3);
        assert_eq!(value(&quantities, "speedometer.shown-at-80").judgement, Judgement::Open);
        assert!((value(&quantities, "speedometer.shift").value + 13.11).abs() < 0.01);
        let codes: Vec<_> = findings.iter().map(|finding| finding.code.as_str()).collect();
        assert_eq!(codes, ["gearing.front-clearance", "chain.little-room-for-wear", "speedometer.may-read-low"]);
    }

    #[test]
    fn teeth_that_the_bike_does_not_take_are_named_instead_of_the_note_on_clearance() {
        let mut bike = demo_bike();
        (bike.fitted.drive.front_teeth_max, bike.fitted.drive.rear_teeth_min) = (Some(16), Some(38));
        let codes = |front, rear| {
            let mut spec = bike.fitted.clone();
            (spec.drive.front_teeth, spec.drive.rear_teeth) = (Some(front), Some(rear));
            let found = derive_gearing(&bike, &spec).1;
            found
                .into_iter()
                .map(|finding| finding.code.as_str())
                .filter(|code| code.starts_with("gearing."))
                .collect::<Vec<_>>()
        };
        assert!(codes(16, 38).is_empty());
        assert_eq!(codes(17, 37), ["gearing.front-limit", "gearing.rear-limit"]);
    }

    #[test]
    fn limits_are_judged_where_they_are_known() {
        let mut bike = demo_bike();
        bike.fitted.drive.speedometer_over_percent = Some(4.0);
        bike.fitted.drive.rev_limit_rpm = Some(5000.0);
        bike.fitted.drive.chain_links = Some(113);
        let (quantities, _) = derive_gearing(&bike, &bike.fitted);
        let judgement = |id| value(&quantities, id).judgement;
        assert_eq!(judgement("rpm.top.at-80"), Judgement::Outside);
        assert_eq!(judgement("chain.links"), Judgement::Outside);
        assert_eq!(judgement("chain.centre-distance"), Judgement::Outside);
        assert_eq!(judgement("chain.adjuster-used"), Judgement::Outside);
        assert_eq!(judgement("speedometer.shown-at-80"), Judgement::Fine);
        assert!(quantities.iter().all(|quantity| (quantity.judgement == Judgement::Open) == quantity.why.is_none()));
    }

    #[test]
    fn what_is_not_known_is_absent_and_never_guessed() {
        let bike = Bike::default();
        assert_eq!(derive_gearing(&bike, &bike.fitted).0, []);

        let mut bike = demo_bike();
        bike.fitted.drive.primary_ratio = None;
        bike.fitted.drive.adjuster_to_mm = None;
        let (quantities, _) = derive_gearing(&bike, &bike.fitted);
        let has = |id: &str| quantities.iter().any(|quantity| quantity.id == id);
        assert!(!has("rpm.top.at-80") && !has("chain.adjuster-used") && !has("chain.wear-room"));
        assert!(has("gearing.final-ratio") && has("chain.links-needed") && has("speedometer.shift"));
        assert_eq!(value(&quantities, "chain.centre-distance").judgement, Judgement::Open);
    }

    #[test]
    fn the_wear_noted_last_holds_for_the_chain_that_it_was_measured_on() {
        let mut bike = demo_bike();
        for (mark, taken_ms, value) in [("old", 1, 0.5), ("new", 2, 3.1)] {
            let what = crate::gearing::judge::ELONGATION_READING.to_owned();
            let reading = Reading { what, value, taken_ms: Some(taken_ms), ..Reading::default() };
            bike.readings.insert(mark.to_owned(), reading);
        }
        let (quantities, _) = derive_gearing(&bike, &bike.fitted);
        let worn = value(&quantities, "chain.elongation");
        assert_eq!((worn.value, worn.judgement), (3.1, Judgement::Outside));
        let mut spec = bike.fitted.clone();
        spec.drive.chain_links = Some(118);
        assert!(!derive_gearing(&bike, &spec).0.iter().any(|quantity| quantity.id == "chain.elongation"));
    }

    #[test]
    fn top_speed_is_derived_only_where_the_drag_area_is_known() {
        let mut bike = demo_bike();
        assert!(!derive_gearing(&bike, &bike.fitted).0.iter().any(|quantity| quantity.id == "speed.top"));
        bike.fitted.drive.drag_area_m2 = Some(0.45);
        let (quantities, _) = derive_gearing(&bike, &bike.fitted);
        let top = value(&quantities, "speed.top");
        assert!(top.value > 100.0 && top.value < 130.0 && top.judgement == Judgement::Open, "{}", top.value);
        assert!(value(&quantities, "gearing.top-against-peak-power").value < 0.0);
        bike.fitted.rear_wheel.tyre = Some("3.00-18 52J".to_owned());
        assert_eq!(value(&derive_gearing(&bike, &bike.fitted).0, "speed.top").judgement, Judgement::Outside);
    }

    #[test]
    fn a_chain_that_cannot_run_is_a_finding_and_gives_no_chain_quantities() {
        let mut bike = demo_bike();
        bike.fitted.drive.chain_links = Some(60);
        (bike.fitted.drive.front_teeth, bike.fitted.drive.rear_teeth) = (Some(30), Some(80));
        let (quantities, findings) = derive_gearing(&bike, &bike.fitted);
        assert!(!quantities.iter().any(|quantity| quantity.id.starts_with("chain.")));
        let found = findings.iter().find(|finding| finding.code.as_str() == "chain.cannot-run").unwrap();
        assert!(found.text.english().starts_with("A chain of 60 links is too short"), "{}", found.text);
    }
}
