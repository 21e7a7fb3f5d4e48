//! What a fault looks like: the difference between the sound harness and the faulty one in a setting.

use layshaft_wire::wire;

use super::fault::{Fault, with_fault};
use super::message::SymptomMessage;
use crate::harness::model::{Harness, Setting};
use crate::harness::solver::{LampLook, OperatingPoint, Unsolved, solve};
use crate::message::Message;

/// Kind of symptom.
#[wire]
pub enum SymptomKind {
    /// A lamp, horn or starter does less than it should.
    Weaker,
    /// One does something although it should not, or more than it should.
    Stronger,
    /// A fuse blows.
    FuseBlows,
    /// A relay or solenoid chatters.
    Chatters,
    /// A flasher no longer flashes.
    NotFlashing,
}

/// One thing that is seen or heard.
#[wire]
pub struct Symptom {
    /// Kind.
    pub kind: SymptomKind,
    /// Id of the element it is seen at.
    pub element: String,
    /// In words.
    pub text: Message,
}

/// The symptoms that a fault shows in a setting; none when it hides there.
///
/// ```
/// use layshaft_core::harness::{Fault, Setting, symptoms, template};
/// let harness = template("lighting", 12.0).unwrap();
/// let night = Setting::of(&[("key", "on"), ("lights", "head")]);
/// let seen = symptoms(&harness, &Fault::Open { element: "tail".to_owned() }, &night).unwrap();
/// assert_eq!(seen[0].element, "tail");
/// ```
pub fn symptoms(harness: &Harness, fault: &Fault, setting: &Setting) -> Result<Vec<Symptom>, Unsolved> {
    let sound = solve(harness, setting)?;
    let faulty = solve(&with_fault(harness, fault)?, setting)?;
    Ok(difference(harness, &sound, &faulty))
}

pub(crate) fn difference(harness: &Harness, sound: &OperatingPoint, faulty: &OperatingPoint) -> Vec<Symptom> {
    let label = |id: &str| harness.element(id).map_or(id, |element| element.label.as_str()).to_owned();
    let mut seen = Vec::new();
    for lamp in &sound.lamps {
        let Some(now) = faulty.look(&lamp.element).filter(|now| *now != lamp.look) else { continue };
        let kind = if now < lamp.look { SymptomKind::Weaker } else { SymptomKind::Stronger };
        let (now, sound) = (look_spoken(now), look_spoken(lamp.look));
        let text = SymptomMessage::Instead { element: lamp.label.clone(), now, sound };
        seen.push(Symptom { kind, element: lamp.element.clone(), text: text.into() });
    }
    let mut fresh = |kind, what: fn(String) -> SymptomMessage, before: &[String], after: &[String]| {
        for id in after.iter().filter(|id| !before.contains(id)) {
            seen.push(Symptom { kind, element: id.clone(), text: what(label(id)).into() });
        }
    };
    let blows = |element| SymptomMessage::Blows { element };
    fresh(SymptomKind::FuseBlows, blows, &sound.blown, &faulty.blown);
    let chatters = |element| SymptomMessage::Chatters { element };
    fresh(SymptomKind::Chatters, chatters, &sound.chattering, &faulty.chattering);
    let does_not_flash = |element| SymptomMessage::DoesNotFlash { element };
    fresh(SymptomKind::NotFlashing, does_not_flash, &sound.not_flashing, &faulty.not_flashing);
    seen
}

/// A look in words.
pub fn look_spoken(look: LampLook) -> Message {
    let said = match look {
        LampLook::Off => SymptomMessage::LookOff,
        LampLook::Glow => SymptomMessage::LookGlow,
        LampLook::Dim => SymptomMessage::LookDim,
        LampLook::Full => SymptomMessage::LookFull,
        LampLook::TooBright => SymptomMessage::LookTooBright,
    };
    said.into()
}

/// A look as the id of an answer. Kept searches name their answers so.
pub fn look_id(look: LampLook) -> &'static str {
    match look {
        LampLook::Off => "off",
        LampLook::Glow => "only glowing",
        LampLook::Dim => "dim",
        LampLook::Full => "full",
        LampLook::TooBright => "too bright",
    }
}
