//! The sums of filling, mixing, paint, painted areas and cures: one formula each, with its inputs. The macro adds them to the
//! enum of all sums and hands it on to `further_sums`.

/// Adds these sums to the enum that stands in its braces, and those of `further_sums` after them.
macro_rules! with_paint_sums {
    ($(#[$meta:meta])* pub enum $name:ident { $($body:tt)* }) => {
        $crate::reckon::further_sums::with_further_sums! {
        $(#[$meta])*
        pub enum $name {
            $($body)*
            /// Dew point of the air.
            DewPoint {
                /// Temperature, °C.
                celsius: f64,
                /// Relative humidity, per cent.
                humidity: f64,
            },
            /// How fast a cure runs against the reference temperature.
            CureRate {
                /// Temperature, °C.
                celsius: f64,
                /// Reference temperature, °C.
                at_celsius: f64,
                /// Activation temperature, kelvin.
                activation_kelvin: f64,
            },
            /// Equivalent age after two spells at one temperature each.
            CureAge {
                /// First spell, hours.
                hours: f64,
                /// Its temperature, °C.
                celsius: f64,
                /// Second spell, hours.
                then_hours: f64,
                /// Its temperature, °C.
                then_celsius: f64,
                /// Reference temperature, °C.
                at_celsius: f64,
                /// Activation temperature, kelvin.
                activation_kelvin: f64,
            },
            /// Activation temperature from two times of one sheet at two temperatures.
            Activation {
                /// Time at the one temperature, hours.
                hours: f64,
                /// The one temperature, °C.
                celsius: f64,
                /// Time at the other temperature, hours.
                other_hours: f64,
                /// The other temperature, °C.
                other_celsius: f64,
            },
            /// How far a surface is above the dew point of the air.
            SurfaceMargin {
                /// Temperature of the air, °C.
                celsius: f64,
                /// Relative humidity, per cent.
                humidity: f64,
                /// Temperature of the surface, °C.
                surface_celsius: f64,
            },
            /// A volume poured with one cup.
            PourSplit {
                /// Volume, litres.
                litres: f64,
                /// Cup, millilitres.
                cup_ml: u32,
            },
            /// Oil for premix.
            Premix {
                /// Fuel, litres.
                fuel_litres: f64,
                /// Parts of fuel to one of oil.
                parts_fuel: f64,
            },
            /// Base, hardener and thinner of an amount ready to use.
            TwoPart {
                /// Amount ready to use, millilitres.
                ready_ml: f64,
                /// Parts of base.
                parts_base: f64,
                /// Parts of hardener.
                parts_hardener: f64,
                /// Thinner, per cent.
                thinner_percent: f64,
                /// The per cent is meant of the base alone.
                thinner_of_base: bool,
            },
            /// Thinner into a one-part paint.
            Thinning {
                /// Unthinned paint, millilitres.
                paint_ml: f64,
                /// Thinner, per cent of it.
                thinner_percent: f64,
            },
            /// Paint and cans for an area.
            PaintNeeded {
                /// Area, square metres.
                square_metres: f64,
                /// Coats.
                coats: u32,
                /// Solids by volume, per cent.
                solids_percent: f64,
                /// Dry film of one coat, micrometres.
                dry_micrometres: f64,
                /// Loss, per cent.
                loss_percent: f64,
                /// Can, millilitres.
                can_ml: f64,
            },
            /// Area of a shell: tank, mudguard, side panel.
            ShellArea {
                /// Length along the part, millimetres.
                length_mm: f64,
                /// Girth across it at its widest, millimetres.
                girth_mm: f64,
                /// Painted inside too.
                both_sides: bool,
                /// How many alike.
                count: u32,
            },
            /// Area of a rim.
            RimArea {
                /// Diameter, millimetres.
                diameter_mm: f64,
                /// Girth across the rim, millimetres.
                girth_mm: f64,
                /// How many alike.
                count: u32,
            },
            /// Area of a tube or rod without its ends.
            TubeArea {
                /// Outer diameter, millimetres.
                diameter_mm: f64,
                /// Length, millimetres.
                length_mm: f64,
                /// How many alike.
                count: u32,
            },
            /// Solids and wet film of thinned paint.
            ThinnedFilm {
                /// Solids of the paint by volume, per cent.
                solids_percent: f64,
                /// Thinner, per cent of the paint.
                thinner_percent: f64,
                /// Dry film of one coat, micrometres.
                dry_micrometres: f64,
            },
        }
        }
    };
}
pub(super) use with_paint_sums;
