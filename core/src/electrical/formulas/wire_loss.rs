//! The formulas of the wire by name.

use super::wire::{Conductor, check_wire, gauge_diameter, gauge_section, voltage_drop, wire_resistance, wire_sources};
use crate::bounds;
use crate::electrical::message::ElectricalMessage;
use crate::error::Refused;
use crate::quantity::{Accepts, FormulaSource, Source, Standing, formula, within};
use crate::units::Unit;

formula! {
    /// Resistance of a metre of wire and what it loses.
    WireDrop in Electrics, "V = I · R′ · (L₁ + L₂) / 1000, R′ = R′₂₀ · (1 + 0.00393 · (T − 20))"
    takes {
        /// Section, mm².
        "A" section_mm2: f64 = within(&bounds::WIRE_SECTION);
        /// How the conductor is made.
        "made" conductor: String = Accepts::OneOf(&["ideal", "solid", "flexible", "tinned"]);
        /// Temperature of the wire, °C.
        "T" celsius: f64 = within(&bounds::WIRE_TEMPERATURE);
        /// Current, amperes.
        "I" amperes: f64 = within(&bounds::AMPERES);
        /// Length out, metres.
        "L₁" out_metres: f64 = within(&bounds::WIRE_LENGTH);
        /// Length back, metres.
        "L₂" back_metres: f64 = within(&bounds::WIRE_BACK);
    }
    gives {
        /// Voltage lost.
        volts "V" Volt;
        /// Milliohms a metre.
        milliohms_metre "R′" None;
    }
    from wire_source();
    it => check_wire(it.section_mm2, it.out_metres, it.celsius).map(|()| {
        let resistance = wire_resistance(it.section_mm2, made(&it.conductor), it.celsius);
        [voltage_drop(it.amperes, resistance, it.out_metres, it.back_metres), resistance]
    })
}

formula! {
    /// Diameter and section of a wire of the American gauge.
    WireGauge in Electrics, "A = π · d² / 4, d = 0.127 · 92^((36 − n) / 39)"
    takes {
        /// Gauge, a whole number; 0 to -3 for 1/0 to 4/0.
        "n" gauge: f64 = within(&bounds::WIRE_GAUGE);
    }
    gives {
        /// Section.
        section "A" SquareMillimetre;
        /// Diameter.
        diameter "d" Millimetre;
    }
    from Source::new(FormulaSource::WireGauge, Standing::SecondHand);
    it => {
        if it.gauge.fract() == 0.0 {
            let gauge = it.gauge as i32;
            Ok([gauge_section(gauge), gauge_diameter(gauge)])
        } else {
            let reason = ElectricalMessage::GaugeNotWhole { gauge: Unit::None.of(it.gauge) };
            Err(Refused::Conflict { field: "gauge".to_owned(), reason: reason.into() })
        }
    }
}

/// A conductor by its word; any other word was refused before.
fn made(word: &str) -> Conductor {
    match word {
        "solid" => Conductor::Solid,
        "flexible" => Conductor::Flexible,
        "tinned" => Conductor::Tinned,
        _ => Conductor::Ideal,
    }
}

fn wire_source() -> Source {
    let [tabulated, _] = wire_sources();
    tabulated
}
