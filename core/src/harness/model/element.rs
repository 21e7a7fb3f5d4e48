//! What a harness is made of: elements between two named points, switches with positions.

use layshaft_wire::wire;

use super::message::ModelMessage;
use crate::content::Content;
use crate::error::Refused;
use crate::message::{ListStyle, Message};
use crate::record::Component;

/// A harness: everything between battery or coil and the lamps, as a list.
#[wire]
pub struct Harness {
    /// What it is called.
    pub name: String,
    /// The point all voltages are measured from: the negative terminal of the battery, or the engine that a coil is earthed at.
    pub earth: String,
    /// The frame, where a chafed wire ends up.
    pub frame: String,
    /// The switches and what else is in one of several states.
    pub switches: Vec<SwitchCard>,
    /// The elements.
    pub elements: Vec<Element>,
}

/// Something with positions: a switch, a brake lever, or the state of the engine.
#[wire]
pub struct SwitchCard {
    /// Its id.
    pub id: String,
    /// In words.
    pub label: String,
    /// Its positions by their ids, the resting one first.
    pub positions: Vec<String>,
    /// The positions in words, in the same order.
    pub position_words: Vec<String>,
}

impl SwitchCard {
    /// A switch under the names that it and its positions have in the language in use.
    pub(crate) fn named(id: &str, positions: &[&str]) -> Self {
        let content = Content::in_use();
        Self {
            id: id.to_owned(),
            label: content.circuit_name("switches", id).to_owned(),
            positions: positions.iter().map(|position| (*position).to_owned()).collect(),
            position_words: positions
                .iter()
                .map(|position| content.circuit_name("positions", position).to_owned())
                .collect(),
        }
    }
}

/// One element between two points. Voltage and current count positive from `from` to `to`.
#[wire]
pub struct Element {
    /// Its id.
    pub id: String,
    /// In words.
    pub label: String,
    /// The point it begins at; the positive side of what has one.
    pub from: String,
    /// The point it ends at.
    pub to: String,
    /// What it is.
    pub component: Component,
    /// Colour code of a wire, such as `RD` or `GN/YE`.
    pub colour: Option<String>,
    /// What is wrong with it; none when it is sound.
    pub condition: Option<Condition>,
}

/// What is wrong with an element.
#[wire]
pub enum Condition {
    /// No current passes.
    Open,
    /// A bad joint in series with it.
    BadJoint {
        /// Resistance of the joint, ohms.
        ohms: f64,
    },
    /// A contact that is always made.
    Stuck,
}

/// The position of one switch.
#[wire]
pub struct SwitchPosition {
    /// Id of the switch.
    pub switch: String,
    /// Its position.
    pub position: String,
}

/// The positions of the switches. A switch that is not named rests in its first position.
#[wire(lenient)]
pub struct Setting {
    /// Positions that are not the resting one.
    pub positions: Vec<SwitchPosition>,
}

impl Element {
    /// A sound element without a colour, under the name that its id has in the language in use.
    pub(crate) fn named(id: &str, from: &str, to: &str, component: Component) -> Self {
        Self {
            id: id.to_owned(),
            label: Content::in_use().circuit_name("elements", id).to_owned(),
            from: from.to_owned(),
            to: to.to_owned(),
            component,
            colour: None,
            condition: None,
        }
    }
}

impl Setting {
    /// A setting from pairs of switch and position.
    pub fn of(pairs: &[(&str, &str)]) -> Self {
        let position = |(switch, position): &(&str, &str)| SwitchPosition {
            switch: (*switch).to_owned(),
            position: (*position).to_owned(),
        };
        Self { positions: pairs.iter().map(position).collect() }
    }

    /// What tells it from every other, as part of the id of a check: `key on, dip high`. Kept searches name their checks so.
    pub fn id(&self) -> String {
        if self.positions.is_empty() {
            return "everything at rest".to_owned();
        }
        let words: Vec<String> = self.positions.iter().map(|at| format!("{} {}", at.switch, at.position)).collect();
        words.join(", ")
    }

    /// In words.
    pub fn spoken(&self) -> Message {
        if self.positions.is_empty() {
            return ModelMessage::AtRest.into();
        }
        let at = |at: &SwitchPosition| {
            let id = format!("{} {}", at.switch, at.position);
            Message::as_entered(Content::in_use().circuit_name("settings", &id))
        };
        Message::joined(ListStyle::Comma, self.positions.iter().map(at).collect())
    }
}

impl Harness {
    /// The position of a switch in a setting; its resting position when the setting does not name it.
    pub fn position<'a>(&'a self, switch: &str, setting: &'a Setting) -> Option<&'a str> {
        let named = setting.positions.iter().find(|at| at.switch == switch).map(|at| at.position.as_str());
        named.or_else(|| self.switches.iter().find(|card| card.id == switch)?.positions.first().map(String::as_str))
    }

    /// Whether a coil feeds it with alternating current: voltages and currents are effective values, and nothing has a way round.
    pub fn is_alternating(&self) -> bool {
        self.elements.iter().any(|element| matches!(element.component, Component::LightingCoil { .. }))
    }

    /// An element by its id.
    pub fn element(&self, id: &str) -> Option<&Element> {
        self.elements.iter().find(|element| element.id == id)
    }

    /// Every named point, in the order of the elements.
    pub fn nodes(&self) -> Vec<&str> {
        let mut seen = std::collections::BTreeSet::new();
        let ends = self.elements.iter().flat_map(|element| [element.from.as_str(), element.to.as_str()]);
        ends.filter(|node| seen.insert(*node)).collect()
    }

    /// A setting whose switches and positions all exist, or the refusal that names the wrong one.
    pub fn check_setting(&self, setting: &Setting) -> Result<(), Refused> {
        for at in &setting.positions {
            let unknown = |what: ModelMessage, id: &str| Refused::Unknown { what: what.into(), id: id.to_owned() };
            let card = self.switches.iter().find(|card| card.id == at.switch);
            let card = card.ok_or_else(|| unknown(ModelMessage::WhatSwitch, &at.switch))?;
            if !card.positions.contains(&at.position) {
                return Err(unknown(ModelMessage::WhatPosition { switch: card.label.clone() }, &at.position));
            }
        }
        Ok(())
    }
}

/// Every combination of switch positions, the resting one first. The number is the product of the numbers of positions.
pub fn every_setting(harness: &Harness) -> Vec<Setting> {
    let mut settings = vec![Setting::default()];
    for card in &harness.switches {
        let with = |setting: &Setting| -> Vec<Setting> {
            let at = |(which, position): (usize, &String)| {
                let mut positions = setting.positions.clone();
                if which > 0 {
                    positions.push(SwitchPosition { switch: card.id.clone(), position: position.clone() });
                }
                Setting { positions }
            };
            card.positions.iter().enumerate().map(at).collect()
        };
        settings = settings.iter().flat_map(with).collect();
    }
    settings
}
