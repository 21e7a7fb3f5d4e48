//! What a harness shows with each of many faults, in each of some settings: only what a search compares, and quickly.
//!
//! The answers are those of `solve` on the harness with the fault. They come sooner because the sound harness is worked out
//! first: a fault exchanges one branch or two, begins from the sound voltages, and uses the same order of elimination as long
//! as it joins the same points; where it changes no branch in a setting, it shows there what the sound harness shows.

use std::rc::Rc;

use super::fault::{Fault, touched};
use crate::error::Refused;
use crate::harness::model::{Element, Harness, Setting, refuse_unsound, refuse_unsound_element};
use crate::harness::solver::{Branch, Circuit, LampLook, Network, States, lamp_look, network, settled, volt};
use crate::record::Component;

/// What a fault shows in a setting.
#[derive(Debug, PartialEq)]
pub(crate) struct Shown {
    /// Voltages of the points of the sound harness against earth, in their order, volts.
    volts: Vec<f64>,
    /// The look of each element of the sound harness, in their order; none where it is no consumer.
    looks: Vec<Option<LampLook>>,
}

/// What each of many faults shows in each of some settings.
pub(crate) struct Predictions {
    points: Vec<String>,
    earth: String,
    /// For each fault and each setting; none where it did not settle.
    shown: Vec<Vec<Option<Rc<Shown>>>>,
}

/// The sound harness in a setting.
struct Sound<'a> {
    setting: &'a Setting,
    at_rest: Vec<Branch>,
    way: Vec<(States, Vec<f64>)>,
    shown: Option<Rc<Shown>>,
}

impl Predictions {
    /// Works out every fault in every setting; refused where the harness is unsound or a fault cannot be in it.
    pub(crate) fn of(harness: &Harness, faults: &[Fault], settings: &[Setting]) -> Result<Self, Refused> {
        refuse_unsound(harness)?;
        settings.iter().try_for_each(|setting| harness.check_setting(setting))?;
        let circuit = Circuit::of(harness);
        let mut joined = network(&circuit, &circuit.branches(&Setting::default(), &States::default()));
        let sound: Vec<Sound<'_>> = settings.iter().map(|setting| sound(&circuit, setting, &mut joined)).collect();
        let shown = faults.iter().map(|fault| Ok(with(&circuit, &sound, &mut joined, &touched(harness, fault)?)));
        Ok(Self {
            points: circuit.points.iter().map(|point| (*point).to_owned()).collect(),
            earth: harness.earth.clone(),
            shown: shown.collect::<Result<_, Refused>>()?,
        })
    }

    /// For each fault the voltage of a point against earth in a setting, volts; none where it did not settle.
    pub(crate) fn volts(&self, setting: usize, point: &str) -> Vec<Option<f64>> {
        let number = self.points.iter().position(|name| name == point);
        let earth = point == self.earth;
        let volts = |shown: &Shown| match number {
            Some(number) => shown.volts.get(number).copied(),
            None => earth.then_some(0.0),
        };
        self.shown.iter().map(|shown| shown.get(setting)?.as_deref().and_then(volts)).collect()
    }

    /// For each fault the look of the element with this number in a setting; none where it did not settle.
    pub(crate) fn looks(&self, setting: usize, element: usize) -> Vec<Option<LampLook>> {
        self.shown.iter().map(|shown| shown.get(setting)?.as_ref()?.looks.get(element).copied()?).collect()
    }
}

fn sound<'a>(circuit: &Circuit<'_>, setting: &'a Setting, joined: &mut Network) -> Sound<'a> {
    let at_rest = circuit.branches(setting, &States::default());
    let (way, shown) = match settled(circuit, setting, &at_rest, joined, &[]) {
        Ok(settled) => {
            let shown = shown(circuit, &settled);
            (settled.way, Some(Rc::new(shown)))
        }
        Err(_) => (Vec::new(), None),
    };
    Sound { setting, at_rest, way, shown }
}

fn shown(sound: &Circuit<'_>, settled: &crate::harness::solver::Settled<'_>) -> Shown {
    Shown {
        volts: (0..sound.points.len()).map(|point| volt(&settled.volts, Some(point))).collect(),
        looks: (0..sound.elements.len()).map(|at| lamp_look(settled, at).map(|(_, look)| look)).collect(),
    }
}

/// What the circuit shows in each setting with these elements exchanged or added.
fn with(
    circuit: &Circuit<'_>,
    sound: &[Sound<'_>],
    joined: &mut Network,
    changed: &[Element],
) -> Vec<Option<Rc<Shown>>> {
    if changed.iter().any(|element| refuse_unsound_element(circuit.harness, element).is_err()) {
        return vec![None; sound.len()];
    }
    let mut faulty = circuit.clone();
    let places: Vec<usize> = changed.iter().map(|element| faulty.exchange(element)).collect();
    // What a coil or a fuse does is not seen from its branch at rest.
    let moves = |element: &Element| {
        matches!(element.component, Component::Coil { .. } | Component::RelayContact { .. } | Component::Fuse { .. })
    };
    let plain = !changed.iter().any(moves);
    let mut own: Option<Network> = None;
    let one = |sound: &Sound<'_>| {
        let at_rest = faulty.exchanged(&sound.at_rest, &places, sound.setting);
        if plain && at_rest == sound.at_rest {
            return sound.shown.clone();
        }
        let ends = |branch: &Branch| (branch.from, branch.to);
        let network = if at_rest.iter().map(ends).eq(sound.at_rest.iter().map(ends)) {
            &mut *joined
        } else {
            own.get_or_insert_with(|| network(&faulty, &at_rest))
        };
        let settled = settled(&faulty, sound.setting, &at_rest, network, &sound.way).ok()?;
        Some(Rc::new(shown(circuit, &settled)))
    };
    sound.iter().map(one).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::harness::diagnosis::fault::with_fault;
    use crate::harness::diagnosis::places::fault_places;
    use crate::harness::solver::{few_settings, solve};
    use crate::harness::templates::{TEMPLATES, template};

    /// Largest difference of any voltage, volts, over every fault of a template in these settings; each look the same.
    fn furthest(id: &str, settings: &[Setting], every: usize) -> f64 {
        let harness = template(id, 12.0).unwrap();
        let faults: Vec<Fault> = fault_places(&harness).into_iter().step_by(every).collect();
        let predicted = Predictions::of(&harness, &faults, settings).unwrap();
        let mut furthest = 0.0_f64;
        for (which, setting) in settings.iter().enumerate() {
            let solved: Vec<_> =
                faults.iter().map(|fault| solve(&with_fault(&harness, fault).unwrap(), setting).ok()).collect();
            for (at, element) in harness.elements.iter().enumerate() {
                let looks: Vec<_> = solved.iter().map(|point| point.as_ref()?.look(&element.id)).collect();
                assert_eq!(predicted.looks(which, at), looks, "{id}, {}, {}", setting.id(), element.id);
            }
            for point in harness.nodes() {
                for (quick, slow) in predicted.volts(which, point).into_iter().zip(&solved) {
                    let slow = slow.as_ref().and_then(|slow| slow.between(point, &harness.earth));
                    assert_eq!(quick.is_some(), slow.is_some());
                    furthest = furthest.max((quick.unwrap_or(0.0) - slow.unwrap_or(0.0)).abs());
                }
            }
        }
        furthest
    }

    #[test]
    fn every_fault_shows_what_the_solver_says_of_the_harness_with_it() {
        for template in TEMPLATES.iter().filter(|template| !template.id.ends_with("whole")) {
            let settings = few_settings(&crate::harness::templates::template(template.id, 12.0).unwrap());
            let off = furthest(template.id, &settings, 1);
            assert!(off < 1e-6, "{}: {off} V", template.id);
        }
        let positions = [("key", "on"), ("lights", "head"), ("rear brake", "pressed"), ("start button", "pressed")];
        let off = furthest("whole", &[Setting::of(&positions), Setting::of(&positions[..1])], 5);
        assert!(off < 1e-6, "{off} V");
    }

    #[test]
    fn an_unsound_harness_a_fault_that_cannot_be_and_an_unknown_position_are_refused() {
        let horn = template("horn", 12.0).unwrap();
        let of =
            |faults: &[Fault], settings: &[Setting]| Predictions::of(&horn, faults, settings).err().unwrap().english();
        let fault = Fault::WrongLamp { element: "horn".to_owned(), watts: 5.0 };
        assert!(of(&[fault], &[Setting::default()]).contains("Horn is no lamp"));
        assert!(of(&[], &[Setting::of(&[("key", "half")])]).contains("no position of Key"));
        let bare = Harness { elements: Vec::new(), ..horn.clone() };
        assert!(Predictions::of(&bare, &[], &[]).is_err());
    }
}
