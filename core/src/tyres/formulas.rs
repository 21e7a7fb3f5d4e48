//! The formulas of the tyres by name: size, rating, age, one against another.

use super::age::{age_source, tyre_age};
use super::compare::{compare_tyres, ride_height_change, turns_per_km};
use super::message::{TyresRefused, TyresSource};
use super::wheel::{scaled_circumference, tyre_source};
use crate::bounds;
use crate::error::Refused;
use crate::message::FieldMessage;
use crate::quantity::{Accepts, Source, Standing, formula, within};
use crate::record::{End, SpeedSymbol, SpeedometerDrive, TyreSize, Wheel, load_kg};
use crate::time::check_day;

formula! {
    /// Outer diameter and rolling circumference from a sidewall.
    TyreDiameter in Tyres, "D = d + 2 · H, U = π · D"
    takes {
        /// Size as on the sidewall.
        "size" tyre: String = Accepts::Text;
    }
    gives {
        /// Outer diameter.
        outer_diameter "D" Millimetre;
        /// Rolling circumference.
        circumference "U" Millimetre;
        /// Outer diameter, least.
        outer_diameter_least "D" Millimetre;
        /// Outer diameter, most.
        outer_diameter_most "D" Millimetre;
    }
    from tyre_source(false);
    it => TyreSize::read(&it.tyre).map(|size| {
        let (least, most) = size.outer_diameter_range_mm();
        [size.outer_diameter_mm(), size.circumference_mm(), least, most]
    })
}

formula! {
    /// One tyre against another: height of the axle, turns, speedometer.
    TyreAgainst in Tyres, "Δh = (D₂ − D₁) / 2, turns = 10⁶ / (π · D)"
    takes {
        /// Size as on the sidewall, before.
        "size₁" tyre: String = Accepts::Text;
        /// Size as on the sidewall, after.
        "size₂" new_tyre: String = Accepts::Text;
    }
    gives {
        /// Height of the axle.
        ride_height "Δh" Millimetre;
        /// Height of the axle, least.
        ride_height_least "Δh" Millimetre;
        /// Height of the axle, most.
        ride_height_most "Δh" Millimetre;
        /// Outer diameter.
        diameter_change "ΔD" Percent;
        /// Turns a kilometre before.
        turns_per_km "turns" None;
        /// Turns a kilometre after.
        new_turns_per_km "turns" None;
        /// Speedometer driven by this wheel.
        speedometer "Δk" Percent;
    }
    from tyre_source(false);
    it => TyreSize::read(&it.tyre).and_then(|_| {
        TyreSize::read(&it.new_tyre).map_err(|refused| refused.named("newTyre", TyresRefused::LabelNewSize))?;
        let wheel = |code: &str| Wheel { tyre: Some(code.to_owned()), ..Wheel::default() };
        let sender = Some(SpeedometerDrive::RearWheel);
        let change = compare_tyres(&wheel(&it.tyre), &wheel(&it.new_tyre), End::Rear, sender)
            .ok_or_else(|| missing(TyresRefused::LabelSizes, TyresRefused::EnterBothSizes))?;
        Ok([
            Some(change.ride_height_mm),
            Some(change.ride_height_least_mm),
            Some(change.ride_height_most_mm),
            Some(change.diameter_percent),
            Some(change.turns_per_km_before),
            Some(change.turns_per_km_after),
            change.speedometer_percent,
        ])
    })
}

formula! {
    /// How much higher the axle stands on another tyre.
    RideHeight in Tyres, "Δh = (D₂ − D₁) / 2"
    takes {
        /// Outer diameter before, millimetres.
        "D₁" diameter_mm: f64 = within(&bounds::OUTER_DIAMETER);
        /// Outer diameter after, millimetres.
        "D₂" new_diameter_mm: f64 = within(&bounds::OUTER_DIAMETER);
    }
    gives {
        /// Height of the axle.
        ride_height "Δh" Millimetre;
    }
    from geometry();
    it => Ok([ride_height_change(it.diameter_mm, it.new_diameter_mm)])
}

formula! {
    /// Turns of a wheel in a kilometre.
    TurnsPerKilometre in Tyres, "n = 10⁶ / U"
    takes {
        /// Rolling circumference, millimetres.
        "U" circumference_mm: f64 = within(&bounds::CIRCUMFERENCE);
    }
    gives {
        /// Turns.
        turns_per_km "n" None;
    }
    from geometry();
    it => Ok([turns_per_km(it.circumference_mm)])
}

formula! {
    /// Circumference of a tyre by the roll-out of another one.
    ScaledCircumference in Tyres, "U₂ = U₁ · D₂ / D₁"
    takes {
        /// Circumference of the one, rolled out, millimetres.
        "U₁" circumference_mm: f64 = within(&bounds::CIRCUMFERENCE);
        /// Its outer diameter by the code, millimetres.
        "D₁" diameter_mm: f64 = within(&bounds::OUTER_DIAMETER);
        /// Outer diameter of the other, millimetres.
        "D₂" new_diameter_mm: f64 = within(&bounds::OUTER_DIAMETER);
    }
    gives {
        /// Rolling circumference.
        circumference "U₂" Millimetre;
    }
    from geometry();
    it => Ok([scaled_circumference(it.circumference_mm, it.diameter_mm, it.new_diameter_mm)])
}

formula! {
    /// What a tyre may carry, and how fast.
    TyreRating in Tyres, "by table"
    takes {
        /// Size as on the sidewall, with load index and speed symbol.
        "size" tyre: String = Accepts::Text;
    }
    gives {
        /// Load.
        load "m" Kilogram;
        /// Speed.
        speed "v" KilometreHour;
    }
    from Source::new(TyresSource::Ratings, Standing::Memory);
    it => TyreSize::read(&it.tyre).and_then(|size| {
        let carries = size.service.and_then(|service| load_kg(service.load_index)).map(f64::from);
        let kmh = size.speed().and_then(SpeedSymbol::kmh).map(f64::from);
        match carries.or(kmh) {
            None => Err(missing(TyresRefused::LabelRating, TyresRefused::EnterRating)),
            Some(_) => Ok([carries, kmh]),
        }
    })
}

formula! {
    /// Age of a tyre from its date code.
    AgeOfTyre in Tyres, "age = day − Monday of the week; three figures leave the decade open"
    takes {
        /// Week and year on the sidewall.
        "code" date_code: String = Accepts::Text;
        /// Day of asking, `YYYY-MM-DD`.
        "day" day: String = Accepts::Text;
    }
    gives {
        /// Years, least.
        least_years "age" None;
        /// Years, most.
        most_years "age" None;
        /// Latest year that the code can mean.
        latest_year "year" Year;
        /// Weeks that the code can mean.
        decades "n" None;
    }
    from age_source();
    it => check_day("day", FieldMessage::DayOfAsking, &it.day).and_then(|_| {
        let age = tyre_age(&it.date_code, &it.day)?;
        let latest = age.weeks.first().map_or(0.0, |week| f64::from(week.year));
        let count = u32::try_from(age.weeks.len()).unwrap_or(0);
        Ok([age.least_years, age.most_years, latest, f64::from(count)])
    })
}

fn geometry() -> Source {
    Source::new(TyresSource::Geometry, Standing::Computed)
}

fn missing(label: TyresRefused, help: TyresRefused) -> Refused {
    Refused::Missing { field: "tyre".to_owned(), label: label.into(), help: help.into() }
}
