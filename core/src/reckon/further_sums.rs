//! The sums of tyres, deliveries, chain wear, sprockets, thrust and electrics: one formula each, with its inputs. The macro adds
//! them to the enum of all sums.

/// Adds these sums to the enum that stands in its braces.
macro_rules! with_further_sums {
    ($(#[$meta:meta])* pub enum $name:ident { $($body:tt)* }) => {
        $(#[$meta])*
        pub enum $name {
            $($body)*
            /// One tyre against another: height of the axle, turns, speedometer.
            TyreChange {
                /// Size as on the sidewall, before.
                tyre: String,
                /// Size as on the sidewall, after.
                new_tyre: String,
            },
            /// What a tyre may carry, and how fast.
            TyreRating {
                /// Size as on the sidewall, with load index and speed symbol.
                tyre: String,
            },
            /// Age of a tyre from its date code.
            TyreAge {
                /// Week and year on the sidewall.
                date_code: String,
                /// Day of asking, `YYYY-MM-DD`.
                day: String,
            },
            /// What a triangular spread stays below.
            TriangularQuantile {
                /// At best.
                least: f64,
                /// As a rule.
                likely: f64,
                /// At worst.
                most: f64,
                /// Share, 0 to 1.
                share: f64,
            },
            /// What a lognormal spread stays below.
            LognormalQuantile {
                /// Median.
                median: f64,
                /// The 90th percentile: what nine in ten stay below.
                p90: f64,
                /// Share, 0 to 1.
                share: f64,
            },
            /// What the later of two parcels stays below, by drawing.
            LaterOfTwo {
                /// The triangular one: at best, days.
                least: f64,
                /// As a rule, days.
                likely: f64,
                /// At worst, days.
                most: f64,
                /// The lognormal one: median, days.
                median: f64,
                /// The 90th percentile: what nine in ten stay below, days.
                p90: f64,
                /// Share, 0 to 1.
                share: f64,
            },
            /// Final drive ratio that gives a road speed at an engine speed.
            WantedRatio {
                /// Engine speed, revolutions a minute.
                engine_rpm: f64,
                /// Road speed, km/h.
                road_speed_kmh: f64,
                /// Primary reduction.
                primary_ratio: f64,
                /// Gear ratio.
                gear_ratio: f64,
                /// Rolling circumference, millimetres.
                circumference_mm: f64,
            },
            /// How often the same tooth meets the same link.
            Hunting {
                /// Teeth.
                teeth: u32,
                /// Links.
                chain_links: u32,
            },
            /// Dimensions of a chain size.
            ChainDimensions {
                /// Size as written on the chain.
                chain_size: String,
            },
            /// Whether a chain runs on a sprocket: refused where it does not.
            ChainOnSprocket {
                /// Size of the chain.
                chain_size: String,
                /// Size that the sprocket is cut for.
                sprocket_size: String,
            },
            /// Elongation of a chain from a measured length.
            ChainElongation {
                /// Length, millimetres.
                measured_mm: f64,
                /// Pitches that it goes over.
                pitches: u32,
                /// Pitch, millimetres.
                pitch_mm: f64,
            },
            /// Length of a worn chain over some pitches.
            WornLength {
                /// Pitches.
                pitches: u32,
                /// Pitch, millimetres.
                pitch_mm: f64,
                /// Elongation, per cent.
                elongation_percent: f64,
            },
            /// Centre distance that a worn chain gives.
            WornCentreDistance {
                /// Teeth of the gearbox sprocket.
                front_teeth: u32,
                /// Teeth of the wheel sprocket.
                rear_teeth: u32,
                /// Links.
                chain_links: u32,
                /// Pitch, millimetres.
                pitch_mm: f64,
                /// Elongation, per cent.
                elongation_percent: f64,
            },
            /// Ratio of a speedometer corrector.
            CorrectorRatio {
                /// Reading over true speed.
                reading_factor: f64,
            },
            /// Engine speed after changing gear at the same road speed.
            GearDrop {
                /// Engine speed, revolutions a minute.
                engine_rpm: f64,
                /// Ratio of the gear.
                gear_ratio: f64,
                /// Ratio of the next one.
                next_gear_ratio: f64,
            },
            /// Density of the air on the standard day at a height.
            StandardAir {
                /// Height above the sea, metres.
                altitude_metres: f64,
            },
            /// Rolling coefficient of a motorcycle tyre by pressure and speed.
            RollingCoefficient {
                /// Tyre pressure, bar.
                tyre_bar: f64,
                /// Road speed, km/h, up to 165.
                road_speed_kmh: f64,
            },
            /// What holds a machine back at a speed.
            RoadLoad {
                /// Road speed, km/h.
                road_speed_kmh: f64,
                /// Machine and rider, kilograms.
                mass_kg: f64,
                /// Rolling coefficient.
                rolling_coefficient: f64,
                /// Drag area, square metres.
                drag_area_m2: f64,
                /// Density of the air, kilograms in a cubic metre.
                air_density: f64,
                /// Grade, per cent.
                grade_percent: f64,
                /// Head wind, km/h.
                head_wind_kmh: f64,
            },
            /// Speed at which resistance takes all of a power at the wheel.
            PowerSpeed {
                /// Power at the wheel, kilowatts.
                wheel_kw: f64,
                /// Machine and rider, kilograms.
                mass_kg: f64,
                /// Rolling coefficient.
                rolling_coefficient: f64,
                /// Drag area, square metres.
                drag_area_m2: f64,
                /// Density of the air, kilograms in a cubic metre.
                air_density: f64,
                /// Grade, per cent.
                grade_percent: f64,
                /// Head wind, km/h.
                head_wind_kmh: f64,
            },
            /// Thrust at the tyre.
            Thrust {
                /// Torque at the crankshaft, newton metres.
                crank_nm: f64,
                /// Overall ratio.
                overall_ratio: f64,
                /// Share of the power that reaches the wheel.
                drive_efficiency: f64,
                /// Radius of the wheel, millimetres.
                wheel_radius_mm: f64,
            },
            /// Power of a spark-ignition engine from its peak power, by the cubic law.
            CubicPower {
                /// Engine speed, revolutions a minute.
                engine_rpm: f64,
                /// Peak power, kilowatts.
                peak_power_kw: f64,
                /// Engine speed of peak power, revolutions a minute.
                peak_power_rpm: f64,
            },
            /// Power of an engine from its peak power and its peak torque, by the assumed shape between and beside them.
            PeaksPower {
                /// Engine speed, revolutions a minute.
                engine_rpm: f64,
                /// Peak power, kilowatts.
                peak_power_kw: f64,
                /// Engine speed of peak power, revolutions a minute.
                peak_power_rpm: f64,
                /// Peak torque, newton metres.
                peak_torque_nm: f64,
                /// Engine speed of peak torque, revolutions a minute.
                peak_torque_rpm: f64,
            },
            /// Light of a filament lamp off its test voltage.
            LampLight {
                /// Light at the test voltage, lumens.
                lumens: f64,
                /// Test voltage, volts.
                test_volts: f64,
                /// Voltage, volts.
                volts: f64,
            },
            /// Flashes a minute of a thermal flasher.
            ThermalFlasher {
                /// Load over rated load, per cent.
                load_percent: f64,
                /// Closing over opening temperature rise of its contacts.
                contacts: f64,
                /// Flashes a minute at the rated load.
                flashes_minute: f64,
            },
            /// Flashes a minute from a count.
            FlashCount {
                /// Flashes.
                flashes: u32,
                /// Seconds.
                seconds: f64,
            },
            /// Load resistor beside an LED lamp.
            LoadResistor {
                /// Voltage, volts.
                volts: f64,
                /// Watts of the old lamp at that voltage.
                old_watts: f64,
                /// Watts of the new lamp at that voltage.
                new_watts: f64,
            },
            /// Charge from specific gravity.
            GravityCharge {
                /// Specific gravity.
                gravity: f64,
                /// Temperature of the acid, °C.
                celsius: f64,
            },
            /// Days until a drain has emptied a battery.
            DaysToFlat {
                /// Capacity, ampere-hours.
                battery_ah: f64,
                /// Charge, per cent.
                charge_percent: f64,
                /// Drain, milliamperes.
                drain_milliamperes: f64,
            },
            /// Hours to charge a battery.
            RechargeHours {
                /// Capacity, ampere-hours.
                battery_ah: f64,
                /// Charge, per cent.
                charge_percent: f64,
                /// Current of the charger, amperes.
                charger_amperes: f64,
            },
            /// Resistance of a metre of wire and what it loses.
            WireDrop {
                /// Section, mm².
                section_mm2: f64,
                /// How the conductor is made: ideal, solid, flexible or tinned.
                conductor: String,
                /// Temperature, °C.
                celsius: f64,
                /// Current, amperes.
                amperes: f64,
                /// Length out, metres.
                out_metres: f64,
                /// Length back, metres.
                back_metres: f64,
            },
            /// Diameter and section of a wire of the American gauge.
            WireGauge {
                /// Gauge, a whole number; 0 to -3 for 1/0 to 4/0.
                gauge: f64,
            },
        }
    };
}
pub(super) use with_further_sums;
