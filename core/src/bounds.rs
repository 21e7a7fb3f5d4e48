//! Accepted ranges. Every range of the program stands here once, with its unit; the UI reads the same table.
//!
//! A range is what the *program* accepts, wide enough for any small motorcycle: it catches slips of the thumb, it
//! judges nothing. The ranges are our own; no source.

use layshaft_wire::wire;

use crate::error::Refused;
use crate::units::Unit;

/// An accepted range.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bound {
    /// Field name as it crosses the door.
    pub field: &'static str,
    /// Field in words.
    pub label: &'static str,
    /// Least accepted.
    pub min: f64,
    /// Most accepted.
    pub max: f64,
    /// Unit of the value and the limits.
    pub unit: Unit,
}

/// An accepted range as the UI reads it.
#[wire]
pub struct BoundCard {
    /// Field name as it crosses the door.
    pub field: String,
    /// Field in words.
    pub label: String,
    /// Least accepted.
    pub min: f64,
    /// Most accepted.
    pub max: f64,
    /// Unit of the value and the limits.
    pub unit: Unit,
}

impl Bound {
    /// The value itself when it lies inside the range.
    ///
    /// ```
    /// use layshaft_core::bounds::FRONT_TEETH;
    /// assert_eq!(FRONT_TEETH.check(15.0), Ok(15.0));
    /// assert!(FRONT_TEETH.check(0.0).is_err());
    /// assert!(FRONT_TEETH.check(f64::NAN).is_err());
    /// ```
    pub fn check(&self, value: f64) -> Result<f64, Refused> {
        let (field, label) = (self.field.to_owned(), self.label.to_owned());
        let (min, max, unit) = (self.min, self.max, self.unit.symbol().to_owned());
        if !value.is_finite() {
            return Err(Refused::NotANumber { field, label, min, max, unit });
        }
        if value < min || value > max {
            return Err(Refused::OutOfRange { field, label, value, min, max, unit });
        }
        Ok(value)
    }

    /// Like [`check`](Self::check) for a value that may be unknown.
    pub fn check_known(&self, value: Option<f64>) -> Result<Option<f64>, Refused> {
        value.map(|known| self.check(known)).transpose()
    }

    /// The value, checked; when it is unknown, a refusal that says which value to enter.
    pub fn need(&self, value: Option<f64>) -> Result<f64, Refused> {
        match value {
            Some(known) => self.check(known),
            None => Err(Refused::Missing {
                field: self.field.to_owned(),
                label: self.label.to_owned(),
                help: "enter it on the bike".to_owned(),
            }),
        }
    }

    /// The range as the UI reads it.
    pub fn card(&self) -> BoundCard {
        BoundCard {
            field: self.field.to_owned(),
            label: self.label.to_owned(),
            min: self.min,
            max: self.max,
            unit: self.unit,
        }
    }
}

/// Declares the ranges and the list of all of them.
macro_rules! bounds {
    ($($name:ident $field:literal $label:literal $min:literal $max:literal $unit:ident;)*) => {
        $(#[doc = concat!($label, ", ", $min, " to ", $max, ".")]
        pub const $name: Bound = Bound { field: $field, label: $label, min: $min, max: $max, unit: Unit::$unit };)*
        /// Every range, in the order of the declaration.
        pub const ALL: &[Bound] = &[$($name,)*];
    };
}

bounds! {
    FRONT_TEETH "frontTeeth" "Gearbox sprocket" 9.0 30.0 Teeth;
    REAR_TEETH "rearTeeth" "Wheel sprocket" 20.0 80.0 Teeth;
    PRIMARY_RATIO "primaryRatio" "Primary reduction" 1.0 6.0 None;
    GEAR_RATIO "gearRatios" "Gear ratio" 0.4 5.0 None;
    GEARS "gearRatios" "Number of gears" 0.0 8.0 None;
    CHAIN_LINKS "chainLinks" "Chain length" 60.0 200.0 Links;
    CENTRE_DISTANCE "centreDistanceMm" "Centre distance" 200.0 1200.0 Millimetre;
    OVERALL_RATIO "overallRatio" "Overall ratio" 1.0 60.0 None;
    PITCH "pitchMm" "Chain pitch" 6.0 26.0 Millimetre;
    REV_LIMIT "revLimitRpm" "Engine speed limit" 2000.0 20000.0 Rpm;
    ENGINE_SPEED "engineRpm" "Engine speed" 0.0 20000.0 Rpm;
    ROAD_SPEED "roadSpeedKmh" "Road speed" 0.0 300.0 KilometreHour;
    CIRCUMFERENCE "circumferenceMm" "Rolling circumference" 500.0 3000.0 Millimetre;
    FINAL_RATIO "finalRatio" "Final drive ratio" 0.5 10.0 None;
    SPROCKET_TEETH "teeth" "Teeth" 8.0 152.0 Teeth;
    SPEEDOMETER_OVER "speedometerOverPercent" "Speedometer reads high by" -30.0 50.0 Percent;
    GEAR "gear" "Gear" 1.0 8.0 None;
    TALLER "tallerPercent" "Taller by" -50.0 100.0 Percent;
    PAIRS_SHOWN "most" "Pairs shown" 1.0 1500.0 None;
    CHAIN_WEAR_LIMIT "chainWearLimitPercent" "Wear limit of the chain" 0.2 5.0 Percent;
    CHAIN_SLACK "slackMm" "Chain slack" 0.0 200.0 Millimetre;
    PITCHES "pitches" "Pitches measured" 4.0 200.0 None;
    MEASURED_CHAIN "measuredMm" "Length over these pitches" 20.0 4000.0 Millimetre;
    CORRECTOR "speedometerCorrector" "Ratio of the speedometer corrector" 0.3 3.0 None;
    READING_FACTOR "readingFactor" "Reading over true speed" 0.5 2.0 None;
    PEAK_TORQUE "peakTorqueNm" "Peak torque" 0.5 400.0 NewtonMetre;
    PEAK_TORQUE_RPM "peakTorqueRpm" "Engine speed of peak torque" 500.0 20000.0 Rpm;
    REV_POINT "powerCurve" "Engine speed of a point" 300.0 20000.0 Rpm;
    CRANK_TORQUE "crankNm" "Torque at the crankshaft" 0.0 400.0 NewtonMetre;
    DRAG_AREA "dragAreaM2" "Drag area" 0.1 2.0 SquareMetre;
    DRIVE_EFFICIENCY "driveEfficiency" "Share of the power that reaches the wheel" 0.5 1.0 None;
    ROLLING "rollingCoefficient" "Rolling coefficient" 0.003 0.1 None;
    TYRE_PRESSURE "tyreBar" "Tyre pressure" 0.8 5.0 Bar;
    GRADE "gradePercent" "Grade" -30.0 40.0 Percent;
    HEAD_WIND "headWindKmh" "Head wind" -60.0 100.0 KilometreHour;
    ALTITUDE "altitudeMetres" "Height above the sea" -400.0 5000.0 Metre;
    AIR_DENSITY "airDensity" "Density of the air" 0.6 1.6 KilogramCubicMetre;
    TYRE_WIDTH "tyreWidthMm" "Tyre width" 50.0 350.0 Millimetre;
    TYRE_WIDTH_INCH "tyreWidthIn" "Tyre width" 1.5 8.0 Inch;
    ASPECT_RATIO "aspectRatio" "Aspect ratio" 25.0 110.0 Percent;
    RIM_CODE "rimCode" "Rim diameter code" 8.0 26.0 Inch;
    LOAD_INDEX "loadIndex" "Load index" 10.0 130.0 None;
    PLY_RATING "plyRating" "Ply rating" 2.0 12.0 None;
    TYRE_WEEK "tyreWeek" "Week in the tyre's date code" 1.0 53.0 None;
    AXLE_LOAD "axleLoadKg" "Load on the wheel, rider and luggage up" 20.0 500.0 Kilogram;
    RIM_WIDTH "rimWidthInch" "Rim width" 0.8 8.0 Inch;
    WATTS "watts" "Power" 0.0 500.0 Watt;
    COUNT "count" "How many" 1.0 20.0 None;
    DUTY "duty" "Share of the time on" 0.0 1.0 None;
    TEST_VOLTS "testVolts" "Voltage of the rating" 4.0 30.0 Volt;
    SYSTEM_VOLTS "systemVolts" "System voltage" 6.0 24.0 Volt;
    CHARGING_VOLTS "chargingVolts" "Regulated voltage" 6.0 30.0 Volt;
    BATTERY_AH "batteryAh" "Battery capacity" 1.0 60.0 AmpereHour;
    RATED_HOURS "ratedHours" "Hours of the rating" 1.0 100.0 Hour;
    PEUKERT "peukert" "Peukert exponent" 1.0 1.6 None;
    AMPERES "amperes" "Current" 0.01 300.0 Ampere;
    RESTED_VOLTS "volts" "Rested voltage" 9.0 14.0 Volt;
    ALTERNATOR_WATTS "alternatorWatts" "Alternator output" 5.0 1500.0 Watt;
    TEMPERATURE "celsius" "Temperature" -30.0 60.0 Celsius;
    BAKE_TEMPERATURE "surfaceCelsius" "Surface temperature" -30.0 250.0 Celsius;
    LOWEST_AIR "lowestCelsius" "Lowest temperature" -30.0 60.0 Celsius;
    HIGHEST_AIR "highestCelsius" "Highest temperature" -30.0 60.0 Celsius;
    DAMPEST_AIR "highestHumidity" "Highest humidity" 1.0 100.0 RelativeHumidity;
    HUMIDITY "humidity" "Relative humidity" 1.0 100.0 RelativeHumidity;
    CURE_HOURS "hours" "Time" 0.02 2000.0 Hour;
    ACTIVATION "activationKelvin" "Activation temperature" 1000.0 15000.0 Kelvin;
    HANDS_ON "handsOnMinutes" "Hands-on time" 1.0 2880.0 Minute;
    LEAST_MINUTES "leastMinutes" "Least hands-on time" 1.0 2880.0 Minute;
    MOST_MINUTES "mostMinutes" "Most hands-on time" 1.0 5760.0 Minute;
    AT_MOST_HOURS "atMostHours" "Time limit for what follows" 0.1 2000.0 Hour;
    LEAST_DAYS "leastDays" "Delivery at best" 0.0 365.0 Day;
    LIKELY_DAYS "likelyDays" "Delivery as a rule" 0.0 365.0 Day;
    COLDER "colderKelvin" "Colder by" -30.0 30.0 Kelvin;
    MOST_DAYS "mostDays" "Delivery at worst" 0.0 730.0 Day;
    WAIT_HOURS "waitHours" "Wait" 0.0 2000.0 Hour;
    SPOT_HOURS "hoursAfter" "Hours that a spot stays taken" 0.0 2000.0 Hour;
    MODEL_YEAR "modelYear" "Model year" 1885.0 2100.0 Year;
    DRY_MASS "dryMassKg" "Dry mass" 20.0 500.0 Kilogram;
    DISPLACEMENT "displacementCc" "Displacement" 20.0 2500.0 None;
    PEAK_POWER "peakPowerKw" "Peak power" 0.3 200.0 Kilowatt;
    BORE "boreMm" "Bore" 5.0 80.0 Millimetre;
    DISC "discMm" "Disc diameter" 80.0 400.0 Millimetre;
    DRUM "drumMm" "Drum diameter" 60.0 300.0 Millimetre;
    LEVER_RATIO "leverRatio" "Lever ratio" 1.0 12.0 None;
    PISTONS "pistons" "Pistons" 1.0 12.0 None;
    LITRES "litres" "Volume" 0.01 60.0 Litre;
    MONEY "priceMinor" "Price" 0.0 100000000.0 None;
    READING "reading" "Reading" -1000000.0 1000000.0 None;
    BENCH_START "fromMinute" "Bench time from" 0.0 1440.0 Minute;
    BENCH_END "toMinute" "Bench time to" 0.0 1440.0 Minute;
    TIME_AT_HAND "minutesAtHand" "Time at hand" 1.0 1440.0 Minute;
    WEEKDAY "weekday" "Day of the week" 1.0 7.0 None;
    DAYS_SHOWN "days" "Days shown" 1.0 366.0 Day;
    PAD_FRICTION "padFriction" "Friction of the linings" 0.05 0.8 None;
    EFFECTIVE_RADIUS "effectiveRadiusMm" "Effective radius of the disc" 20.0 200.0 Millimetre;
    PAD_CLEARANCE "padClearanceMm" "Running clearance of a pad" 0.0 2.0 Millimetre;
    HOSE_LENGTH "hoseMm" "Length of the brake hose" 50.0 4000.0 Millimetre;
    HOSE_BORE "hoseBoreMm" "Bore of the brake hose" 1.0 8.0 Millimetre;
    HOSE_SWELL "hoseSwellMlM" "Swelling of a metre of hose at 69 bar" 0.0 10.0 Millilitre;
    MASTER_STROKE "masterStrokeMm" "Stroke of the master cylinder" 1.0 40.0 Millimetre;
    CAM_ARM "camArmMm" "Length of the cam lever" 20.0 200.0 Millimetre;
    CAM_ANGLE "camDegrees" "Angle between rod and cam lever at rest" 10.0 150.0 Degree;
    ROD_TRAVEL "rodTravelMm" "Travel of the rod or cable" 0.0 100.0 Millimetre;
    SHOE_SHARE "pivotShare" "Pivot from the middle of the drum, share of its radius" 0.4 1.0 None;
    LEVER_FORCE "leverNewtons" "Force at the lever" 0.0 1000.0 Newton;
    WHEEL_RADIUS "wheelRadiusMm" "Radius of the wheel" 100.0 500.0 Millimetre;
    RIDING_MASS "massKg" "Machine and rider" 30.0 900.0 Kilogram;
    LOAD_MASS "loadKg" "Rider, luggage and fluids" 0.0 400.0 Kilogram;
    ROAD_FRICTION "roadFriction" "Grip of the road" 0.05 1.5 None;
    DECELERATION "deceleration" "Deceleration" 0.1 15.0 MetreSecondSquared;
    BRAKE_EFFICIENCY "percent" "Brake efficiency" 1.0 150.0 Percent;
    BRAKING_SPEED "roadSpeedKmh" "Speed before braking" 1.0 300.0 KilometreHour;
    REACTION "reactionSeconds" "Reaction" 0.0 5.0 Second;
    STOPPING_DISTANCE "metres" "Stopping distance" 0.1 2000.0 Metre;
    FLUID_YEARS "fluidYears" "Age of the brake fluid" 0.0 60.0 Year;
    WATER_PERCENT "waterPercent" "Water in the brake fluid" 0.0 20.0 Percent;
    THREAD_DIAMETER "diameterMm" "Outer diameter of the thread" 1.5 26.0 Millimetre;
    THREAD_PITCH "pitchMm" "Pitch of the thread" 0.2 4.0 Millimetre;
    TURNS_INCH "turnsPerInch" "Turns per inch" 6.0 120.0 TurnsInch;
    THREAD_TURNS "turns" "Turns counted" 1.0 60.0 None;
    OVER_LENGTH "overMm" "Length over which they were counted" 1.0 100.0 Millimetre;
    THREAD_FRICTION "friction" "Friction of thread and head" 0.04 0.4 None;
    TORQUE "torqueNm" "Torque" 0.1 500.0 NewtonMetre;
    NUT_FACTOR "nutFactor" "Nut factor" 0.05 0.5 None;
    PRELOAD_SHARE "sharePercent" "Share of the proof load" 1.0 100.0 Percent;
    SCREW_LOAD "loadNewtons" "Load of the screw" 1.0 500000.0 Newton;
    SHEAR_STRENGTH "shearMpa" "Shear strength of the tapped material" 20.0 1000.0 Megapascal;
    ENGAGEMENT "engagementMm" "Thread engaged" 0.5 100.0 Millimetre;
    CUP "cupMl" "Cup" 1.0 20000.0 Millilitre;
    CUPS "cupsMl" "Number of cups" 1.0 12.0 None;
    FUEL "fuelLitres" "Fuel" 0.05 60.0 Litre;
    PREMIX_PARTS "partsFuel" "Parts of fuel to one of oil" 10.0 200.0 None;
    READY_ML "readyMl" "Ready to use" 1.0 20000.0 Millilitre;
    READY_GRAM "readyGrams" "Ready to use" 1.0 30000.0 Gram;
    MIX_PARTS "partsBase" "Parts" 0.1 1000.0 None;
    THINNER "thinnerPercent" "Thinner" 0.0 300.0 Percent;
    PAINTED_AREA "squareMetres" "Area" 0.001 100.0 SquareMetre;
    SOLIDS "solidsPercent" "Solids by volume" 1.0 100.0 Percent;
    FILM "dryMicrometres" "Dry film of one coat" 1.0 2000.0 Micrometre;
    SPRAY_LOSS "lossPercent" "Loss" 0.0 95.0 Percent;
    COATS "coats" "Coats" 1.0 20.0 None;
    CAN "canMl" "Can" 10.0 20000.0 Millilitre;
    DENSITY "density" "Density" 0.5 4.0 GramMillilitre;
    SPREADING "spreadingRate" "Spreading rate" 0.1 200.0 SquareMetreLitre;
    WIRE_SECTION "sectionMm2" "Section of wire" 0.1 70.0 SquareMillimetre;
    WIRE_LENGTH "outMetres" "Length of wire" 0.01 30.0 Metre;
    WIRE_BACK "backMetres" "Length of wire back" 0.0 30.0 Metre;
    WIRE_TEMPERATURE "celsius" "Temperature of the wire" -30.0 120.0 Celsius;
    ALLOWED_DROP "allowedVolts" "Accepted drop" 0.01 6.0 Volt;
    EMF "emfVolts" "Voltage without load" 0.1 30.0 Volt;
    CIRCUIT_OHMS "ohms" "Resistance" 0.0001 10000000.0 Ohm;
    CIRCUIT_WATTS "watts" "Power" 0.01 5000.0 Watt;
    CIRCUIT_VOLTS "volts" "Voltage" 0.1 30.0 Volt;
    FUSE_RATING "ratedAmperes" "Fuse rating" 0.5 200.0 Ampere;
    METER_READING "volts" "Reading" -40.0 40.0 Volt;
    FLASHER_WATTS "flasherWatts" "Load that the flasher is made for" 1.0 200.0 Watt;
    FLASH_RATE "flashesMinute" "Flashes a minute" 30.0 240.0 FlashesMinute;
    LOAD_RESISTOR "resistorOhms" "Load resistor" 0.5 10000.0 Ohm;
    RESISTORS "resistorsPerSide" "Load resistors on each side" 0.0 4.0 None;
    FLASHES "flashes" "Flashes counted" 1.0 1000.0 None;
    COUNTED_SECONDS "seconds" "Seconds counted" 0.5 600.0 Second;
    LUMENS "lumens" "Light" 0.0 20000.0 Lumen;
    IDLE_VOLTS "idleVolts" "Voltage at idle" 0.0 40.0 Volt;
    FAST_VOLTS "fastVolts" "Voltage at 5,000 rpm" 0.0 40.0 Volt;
    GRAVITY "gravity" "Specific gravity" 1.0 1.4 None;
    DRAIN "drainMilliamperes" "Current with the key off" 0.0 30000.0 Milliampere;
    CHARGER "chargerAmperes" "Current of the charger" 0.05 20.0 Ampere;
    HARNESS_AGE "ageYears" "Age of the harness" 0.0 120.0 Year;
    POT_LIFE "potLifeMinutes" "Pot life" 1.0 2880.0 Minute;
    SURFACE_LENGTH "lengthMm" "Length along the part" 1.0 5000.0 Millimetre;
    SURFACE_GIRTH "girthMm" "Girth across the part" 1.0 5000.0 Millimetre;
    SURFACE_DIAMETER "diameterMm" "Diameter" 1.0 1000.0 Millimetre;
    PIECES "count" "How many alike" 1.0 100.0 None;
    TURNING_SPEED "engineRpm" "Engine speed" 100.0 20000.0 Rpm;
    MOVING_SPEED "roadSpeedKmh" "Road speed" 1.0 300.0 KilometreHour;
    ROLLING_SPEED "roadSpeedKmh" "Road speed" 0.0 165.0 KilometreHour;
    ELONGATION "elongationPercent" "Elongation" -1.0 6.0 Percent;
    ROD_PULL "rodNewtons" "Pull of the rod" 0.0 5000.0 Newton;
    CHARGE "chargePercent" "Charge" 0.0 100.0 Percent;
    STEADY_DRAIN "drainMilliamperes" "Drain" 0.001 30000.0 Milliampere;
    FLASHER_LOAD "loadPercent" "Load" 1.0 300.0 Percent;
    FLASHER_CONTACTS "contacts" "Closing over opening temperature" 0.1 0.99 None;
    WIRE_GAUGE "gauge" "Gauge" -3.0 40.0 None;
    TAIL_DAYS "median" "Delivery with a long tail" 0.01 730.0 Day;
    QUANTILE "share" "Share" 0.001 0.999 None;
    PROCESS_STEPS "steps" "Steps" 1.0 20.0 None;
}

/// A title or name: 1 to 120 characters, not only spaces. Returns it trimmed.
pub fn check_title(field: &str, label: &str, text: &str) -> Result<String, Refused> {
    check_text(field, label, text, 120)
}

/// A text of 1 to `most` characters, not only spaces. Returns it trimmed.
pub fn check_text(field: &str, label: &str, text: &str, most: usize) -> Result<String, Refused> {
    let trimmed = text.trim();
    let given = trimmed.chars().count();
    if given == 0 || given > most {
        return Err(Refused::BadText { field: field.to_owned(), label: label.to_owned(), given, most });
    }
    Ok(trimmed.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_range_is_in_order_and_takes_its_ends() {
        for bound in ALL {
            assert!(bound.min < bound.max, "{bound:?}");
            assert!(bound.check(bound.min).is_ok() && bound.check(bound.max).is_ok());
            assert!(bound.check(bound.min - 1e-6).is_err() && bound.check(bound.max + 1e-3).is_err());
            assert!(bound.check(f64::NAN).is_err() && bound.check(f64::INFINITY).is_err());
        }
    }

    #[test]
    fn a_refusal_names_field_value_range_and_unit() {
        let text = REAR_TEETH.check(200.0).unwrap_err().to_string();
        assert_eq!(text, "Wheel sprocket: 200 teeth is outside 20 to 80 teeth");
    }

    #[test]
    fn an_empty_title_is_refused_and_a_good_one_is_trimmed() {
        assert!(check_title("title", "Title", "  ").is_err());
        assert_eq!(check_title("title", "Title", " Fork seals "), Ok("Fork seals".to_owned()));
    }
}
