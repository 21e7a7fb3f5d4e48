//! The formulas of the cure by name.

use super::cure::{equivalent_age, paced_rate, rate_factor};
use crate::bounds;
use crate::coating::message::CoatingMessage;
use crate::error::Refused;
use crate::quantity::{Source, Standing, formula, within};
use crate::record::activation;

formula! {
    /// How fast a cure runs against the reference temperature.
    CureRate in Paint, "r = exp(−Q · (1 / (T + 273.15) − 1 / (T_r + 273.15)))"
    takes {
        /// Temperature, °C.
        "T" celsius: f64 = within(&bounds::TEMPERATURE);
        /// Reference temperature, °C.
        "T_r" at_celsius: f64 = within(&bounds::TEMPERATURE);
        /// Activation temperature, kelvin.
        "Q" activation_kelvin: f64 = within(&bounds::ACTIVATION);
    }
    gives {
        /// Rate.
        rate "r" None;
    }
    from equivalent();
    it => Ok([rate_factor(it.celsius, it.at_celsius, it.activation_kelvin)])
}

formula! {
    /// The same for a product that stands still below a temperature.
    CurePace in Paint, "r = exp(−Q · (1 / (T + 273.15) − 1 / (T_r + 273.15))) · (T ≥ T_l)"
    takes {
        /// Temperature, °C.
        "T" celsius: f64 = within(&bounds::TEMPERATURE);
        /// Lowest temperature of the can, °C.
        "T_l" lowest_celsius: f64 = within(&bounds::TEMPERATURE);
        /// Reference temperature, °C.
        "T_r" at_celsius: f64 = within(&bounds::TEMPERATURE);
        /// Activation temperature, kelvin.
        "Q" activation_kelvin: f64 = within(&bounds::ACTIVATION);
    }
    gives {
        /// Rate.
        rate "r" None;
    }
    from equivalent();
    it => Ok([paced_rate(it.celsius, it.lowest_celsius, it.at_celsius, it.activation_kelvin)])
}

formula! {
    /// Hours here as hours on the can, or the other way round.
    HoursAtRate in Paint, "t₂ = t₁ · r"
    takes {
        /// Hours.
        "t₁" hours: f64 = within(&bounds::CURE_HOURS);
        /// Hours of the one kind for an hour of the other, mean of the time.
        "r" rate: f64 = within(&bounds::MEAN_RATE);
    }
    gives {
        /// Hours.
        hours "t₂" Hour;
    }
    from equivalent();
    it => Ok([it.hours * it.rate])
}

formula! {
    /// Equivalent age after two spells at one temperature each.
    CureAge in Paint, "t = r(T₁) · t₁ + r(T₂) · t₂, r as for the rate of a cure"
    takes {
        /// First spell, hours.
        "t₁" hours: f64 = within(&bounds::CURE_HOURS);
        /// Temperature of the first spell, °C.
        "T₁" celsius: f64 = within(&bounds::TEMPERATURE);
        /// Second spell, hours.
        "t₂" then_hours: f64 = within(&bounds::CURE_HOURS);
        /// Temperature of the second spell, °C.
        "T₂" then_celsius: f64 = within(&bounds::TEMPERATURE);
        /// Reference temperature, °C.
        "T_r" at_celsius: f64 = within(&bounds::TEMPERATURE);
        /// Activation temperature, kelvin.
        "Q" activation_kelvin: f64 = within(&bounds::ACTIVATION);
    }
    gives {
        /// Equivalent age at the reference temperature.
        equivalent_age "t" Hour;
    }
    from equivalent();
    it => {
        let spells = [(it.hours, it.celsius), (it.then_hours, it.then_celsius)];
        Ok([equivalent_age(&spells, it.at_celsius, it.activation_kelvin)])
    }
}

formula! {
    /// Activation temperature from two times of one sheet at two temperatures.
    Activation in Paint, "Q = ln(t₁ / t₂) / (1 / (T₁ + 273.15) − 1 / (T₂ + 273.15))"
    takes {
        /// Time at the one temperature, hours.
        "t₁" hours: f64 = within(&bounds::CURE_HOURS);
        /// The one temperature, °C.
        "T₁" celsius: f64 = within(&bounds::TEMPERATURE);
        /// Time at the other temperature, hours.
        "t₂" other_hours: f64 = within(&bounds::CURE_HOURS);
        /// The other temperature, °C.
        "T₂" other_celsius: f64 = within(&bounds::TEMPERATURE);
    }
    gives {
        /// Activation temperature.
        activation "Q" Kelvin;
    }
    from equivalent();
    it => activation((it.hours, it.celsius), (it.other_hours, it.other_celsius))
        .ok_or_else(|| Refused::Conflict {
            field: "otherHours".to_owned(),
            reason: CoatingMessage::ShorterWhereWarmer.into(),
        })
        .and_then(|kelvin| Ok([bounds::ACTIVATION.check(kelvin)?]))
}

fn equivalent() -> Source {
    Source::new(CoatingMessage::SourceEquivalentAge, Standing::Memory)
}
