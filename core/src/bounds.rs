//! Accepted ranges. Every range of the program stands here once, with its unit; the UI reads the same table.
//!
//! A range is what the *program* accepts, wide enough for any small motorcycle: it catches slips of the thumb, it
//! judges nothing. The ranges are our own; no source.

use layshaft_wire::wire;

use crate::units::Unit;

/// An accepted range.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bound {
    /// What tells it from every other.
    pub id: BoundId,
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
    /// What tells it from every other.
    pub id: BoundId,
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
    /// The same range for a field of another name.
    pub const fn of(self, field: &'static str) -> Self {
        Self { field, ..self }
    }

    /// The same range for a field of another name and label.
    pub const fn named(self, field: &'static str, label: &'static str) -> Self {
        Self { field, label, ..self }
    }

    /// The part of this range that the case leaves, such as the gears that a bike has.
    pub const fn narrowed(self, min: f64, max: f64) -> Self {
        Self { min, max, ..self }
    }

    /// The same range for a reading in another unit.
    pub const fn measured_in(self, unit: Unit) -> Self {
        Self { unit, ..self }
    }

    /// The range as the UI reads it.
    pub fn card(&self) -> BoundCard {
        BoundCard {
            id: self.id,
            field: self.field.to_owned(),
            label: self.label.to_owned(),
            min: self.min,
            max: self.max,
            unit: self.unit,
        }
    }
}

/// Declares the ranges, their ids and the list of all of them.
macro_rules! bounds {
    ($($name:ident $id:ident $field:literal $label:literal $min:literal $max:literal $unit:ident;)*) => {
        /// What tells an accepted range from every other.
        #[wire]
        pub enum BoundId {
            $(#[doc = $label] $id,)*
        }

        $(#[doc = concat!($label, ", ", $min, " to ", $max, ".")]
        pub const $name: Bound = Bound {
            id: BoundId::$id, field: $field, label: $label, min: $min, max: $max, unit: Unit::$unit
        };)*

        /// Every range, in the order of the declaration.
        pub const ALL: &[Bound] = &[$($name,)*];
    };
}

bounds! {
    FRONT_TEETH FrontTeeth "frontTeeth" "Gearbox sprocket" 9.0 30.0 Teeth;
    REAR_TEETH RearTeeth "rearTeeth" "Wheel sprocket" 20.0 80.0 Teeth;
    PRIMARY_RATIO PrimaryRatio "primaryRatio" "Primary reduction" 1.0 6.0 None;
    GEAR_RATIO GearRatio "gearRatios" "Gear ratio" 0.4 5.0 None;
    GEARS Gears "gearRatios" "Number of gears" 0.0 8.0 None;
    CHAIN_LINKS ChainLinks "chainLinks" "Chain length" 60.0 200.0 Links;
    CENTRE_DISTANCE CentreDistance "centreDistanceMm" "Centre distance" 200.0 1200.0 Millimetre;
    OVERALL_RATIO OverallRatio "overallRatio" "Overall ratio" 1.0 60.0 None;
    PITCH Pitch "pitchMm" "Chain pitch" 6.0 26.0 Millimetre;
    REV_LIMIT RevLimit "revLimitRpm" "Engine speed limit" 2000.0 20000.0 Rpm;
    ENGINE_SPEED EngineSpeed "engineRpm" "Engine speed" 0.0 20000.0 Rpm;
    ROAD_SPEED RoadSpeed "roadSpeedKmh" "Road speed" 0.0 300.0 KilometreHour;
    CIRCUMFERENCE Circumference "circumferenceMm" "Rolling circumference" 500.0 3000.0 Millimetre;
    FINAL_RATIO FinalRatio "finalRatio" "Final drive ratio" 0.5 10.0 None;
    SPROCKET_TEETH SprocketTeeth "teeth" "Teeth" 8.0 152.0 Teeth;
    SPEEDOMETER_OVER SpeedometerOver "speedometerOverPercent" "Speedometer reads high by" -30.0 50.0 Percent;
    GEAR Gear "gear" "Gear" 1.0 8.0 None;
    TALLER Taller "tallerPercent" "Taller by" -50.0 100.0 Percent;
    PAIRS_SHOWN PairsShown "most" "Pairs shown" 1.0 1500.0 None;
    CHAIN_WEAR_LIMIT ChainWearLimit "chainWearLimitPercent" "Wear limit of the chain" 0.2 5.0 Percent;
    CHAIN_SLACK ChainSlack "slackMm" "Chain slack" 0.0 200.0 Millimetre;
    PITCHES Pitches "pitches" "Pitches measured" 4.0 200.0 None;
    MEASURED_CHAIN MeasuredChain "measuredMm" "Length over these pitches" 20.0 4000.0 Millimetre;
    CORRECTOR Corrector "speedometerCorrector" "Ratio of the speedometer corrector" 0.3 3.0 None;
    READING_FACTOR ReadingFactor "readingFactor" "Reading over true speed" 0.5 2.0 None;
    PEAK_TORQUE PeakTorque "peakTorqueNm" "Peak torque" 0.5 400.0 NewtonMetre;
    PEAK_TORQUE_RPM PeakTorqueRpm "peakTorqueRpm" "Engine speed of peak torque" 500.0 20000.0 Rpm;
    REV_POINT RevPoint "powerCurve" "Engine speed of a point" 300.0 20000.0 Rpm;
    CRANK_TORQUE CrankTorque "crankNm" "Torque at the crankshaft" 0.0 400.0 NewtonMetre;
    DRAG_AREA DragArea "dragAreaM2" "Drag area" 0.1 2.0 SquareMetre;
    DRIVE_EFFICIENCY DriveEfficiency "driveEfficiency" "Share of the power that reaches the wheel" 0.5 1.0 None;
    ROLLING Rolling "rollingCoefficient" "Rolling coefficient" 0.003 0.1 None;
    TYRE_PRESSURE TyrePressure "tyreBar" "Tyre pressure" 0.8 5.0 Bar;
    GRADE Grade "gradePercent" "Grade" -30.0 40.0 Percent;
    HEAD_WIND HeadWind "headWindKmh" "Head wind" -60.0 100.0 KilometreHour;
    ALTITUDE Altitude "altitudeMetres" "Height above the sea" -400.0 5000.0 Metre;
    AIR_DENSITY AirDensity "airDensity" "Density of the air" 0.6 1.6 KilogramCubicMetre;
    TYRE_WIDTH TyreWidth "tyreWidthMm" "Tyre width" 50.0 350.0 Millimetre;
    TYRE_WIDTH_INCH TyreWidthInch "tyreWidthIn" "Tyre width" 1.5 8.0 Inch;
    ASPECT_RATIO AspectRatio "aspectRatio" "Aspect ratio" 25.0 110.0 Percent;
    SECTION_HEIGHT SectionHeight "heightMm" "Section height" 10.0 350.0 Millimetre;
    OUTER_DIAMETER OuterDiameter "diameterMm" "Outer diameter of the tyre" 150.0 1500.0 Millimetre;
    AGE_DAYS AgeDays "days" "Days" 0.0 60000.0 Day;
    RIM_CODE RimCode "rimCode" "Rim diameter code" 8.0 26.0 Inch;
    LOAD_INDEX LoadIndex "loadIndex" "Load index" 10.0 130.0 None;
    PLY_RATING PlyRating "plyRating" "Ply rating" 2.0 12.0 None;
    TYRE_WEEK TyreWeek "tyreWeek" "Week in the tyre's date code" 1.0 53.0 None;
    AXLE_LOAD AxleLoad "axleLoadKg" "Load on the wheel, rider and luggage up" 20.0 500.0 Kilogram;
    RIM_WIDTH RimWidth "rimWidthInch" "Rim width" 0.8 8.0 Inch;
    WATTS Watts "watts" "Power" 0.0 500.0 Watt;
    CONSUMER_WATTS ConsumerWatts "watts" "Power" 0.0 10000.0 Watt;
    COUNT Count "count" "How many" 1.0 20.0 None;
    DUTY Duty "duty" "Share of the time on" 0.0 1.0 None;
    TEST_VOLTS TestVolts "testVolts" "Voltage of the rating" 4.0 30.0 Volt;
    SYSTEM_VOLTS SystemVolts "systemVolts" "System voltage" 6.0 24.0 Volt;
    CHARGING_VOLTS ChargingVolts "chargingVolts" "Regulated voltage" 6.0 30.0 Volt;
    BATTERY_AH BatteryAh "batteryAh" "Battery capacity" 1.0 60.0 AmpereHour;
    RATED_HOURS RatedHours "ratedHours" "Hours of the rating" 1.0 100.0 Hour;
    PEUKERT Peukert "peukert" "Peukert exponent" 1.0 1.6 None;
    AMPERES Amperes "amperes" "Current" 0.01 300.0 Ampere;
    RESTED_VOLTS RestedVolts "volts" "Rested voltage" 9.0 14.0 Volt;
    ALTERNATOR_WATTS AlternatorWatts "alternatorWatts" "Alternator output" 5.0 1500.0 Watt;
    TEMPERATURE Temperature "celsius" "Temperature" -30.0 60.0 Celsius;
    BAKE_TEMPERATURE BakeTemperature "surfaceCelsius" "Surface temperature" -30.0 250.0 Celsius;
    LOWEST_AIR LowestAir "lowestCelsius" "Lowest temperature" -30.0 60.0 Celsius;
    HIGHEST_AIR HighestAir "highestCelsius" "Highest temperature" -30.0 60.0 Celsius;
    DAMPEST_AIR DampestAir "highestHumidity" "Highest humidity" 1.0 100.0 RelativeHumidity;
    HUMIDITY Humidity "humidity" "Relative humidity" 1.0 100.0 RelativeHumidity;
    CURE_HOURS CureHours "hours" "Time" 0.02 2000.0 Hour;
    MEAN_RATE MeanRate "rate" "Rate" 0.0 10000.0 None;
    ACTIVATION Activation "activationKelvin" "Activation temperature" 1000.0 15000.0 Kelvin;
    HANDS_ON HandsOn "handsOnMinutes" "Hands-on time" 1.0 2880.0 Minute;
    LEAST_MINUTES LeastMinutes "leastMinutes" "Least hands-on time" 1.0 2880.0 Minute;
    MOST_MINUTES MostMinutes "mostMinutes" "Most hands-on time" 1.0 5760.0 Minute;
    AT_MOST_HOURS AtMostHours "atMostHours" "Time limit for what follows" 0.1 2000.0 Hour;
    LEAST_DAYS LeastDays "leastDays" "Delivery at best" 0.0 365.0 Day;
    LIKELY_DAYS LikelyDays "likelyDays" "Delivery as a rule" 0.0 365.0 Day;
    COLDER Colder "colderKelvin" "Colder by" -30.0 30.0 Kelvin;
    MOST_DAYS MostDays "mostDays" "Delivery at worst" 0.0 730.0 Day;
    WAIT_HOURS WaitHours "waitHours" "Wait" 0.0 2000.0 Hour;
    SPOT_HOURS SpotHours "hoursAfter" "Hours that a spot stays taken" 0.0 2000.0 Hour;
    MODEL_YEAR ModelYear "modelYear" "Model year" 1885.0 2100.0 Year;
    DRY_MASS DryMass "dryMassKg" "Dry mass" 20.0 500.0 Kilogram;
    DISPLACEMENT Displacement "displacementCc" "Displacement" 20.0 2500.0 None;
    PEAK_POWER PeakPower "peakPowerKw" "Peak power" 0.3 200.0 Kilowatt;
    BORE Bore "boreMm" "Bore" 5.0 80.0 Millimetre;
    DISC Disc "discMm" "Disc diameter" 80.0 400.0 Millimetre;
    DRUM Drum "drumMm" "Drum diameter" 60.0 300.0 Millimetre;
    LEVER_RATIO LeverRatio "leverRatio" "Lever ratio" 1.0 12.0 None;
    HYDRAULIC_RATIO HydraulicRatio "hydraulicRatio" "Hydraulic ratio" 0.1 200.0 None;
    PISTONS Pistons "pistons" "Pistons" 1.0 12.0 None;
    LITRES Litres "litres" "Volume" 0.01 60.0 Litre;
    MONEY Money "priceMinor" "Price" 0.0 100000000.0 None;
    READING Reading "reading" "Reading" -1000000.0 1000000.0 None;
    COMPARED Compared "before" "Before" 0.000001 1000000.0 None;
    BENCH_START BenchStart "fromMinute" "Bench time from" 0.0 1440.0 Minute;
    BENCH_END BenchEnd "toMinute" "Bench time to" 0.0 1440.0 Minute;
    TIME_AT_HAND TimeAtHand "minutesAtHand" "Time at hand" 1.0 1440.0 Minute;
    WEEKDAY Weekday "weekday" "Day of the week" 1.0 7.0 None;
    DAYS_SHOWN DaysShown "days" "Days shown" 1.0 366.0 Day;
    PAD_FRICTION PadFriction "padFriction" "Friction of the linings" 0.05 0.8 None;
    EFFECTIVE_RADIUS EffectiveRadius "effectiveRadiusMm" "Effective radius of the disc" 20.0 200.0 Millimetre;
    PAD_CLEARANCE PadClearance "padClearanceMm" "Running clearance of a pad" 0.0 2.0 Millimetre;
    HOSE_LENGTH HoseLength "hoseMm" "Length of the brake hose" 50.0 4000.0 Millimetre;
    HOSE_BORE HoseBore "hoseBoreMm" "Bore of the brake hose" 1.0 8.0 Millimetre;
    HOSE_SWELL HoseSwell "hoseSwellMlM" "Swelling of a metre of hose at 69 bar" 0.0 10.0 Millilitre;
    MASTER_STROKE MasterStroke "masterStrokeMm" "Stroke of the master cylinder" 1.0 40.0 Millimetre;
    CAM_ARM CamArm "camArmMm" "Length of the cam lever" 20.0 200.0 Millimetre;
    CAM_ANGLE CamAngle "camDegrees" "Angle between rod and cam lever at rest" 10.0 150.0 Degree;
    ROD_TRAVEL RodTravel "rodTravelMm" "Travel of the rod or cable" 0.0 100.0 Millimetre;
    SHOE_SHARE ShoeShare "pivotShare" "Pivot from the middle of the drum, share of its radius" 0.4 1.0 None;
    LEVER_FORCE LeverForce "leverNewtons" "Force at the lever" 0.0 1000.0 Newton;
    WHEEL_RADIUS WheelRadius "wheelRadiusMm" "Radius of the wheel" 100.0 500.0 Millimetre;
    RIDING_MASS RidingMass "massKg" "Machine and rider" 30.0 900.0 Kilogram;
    LOAD_MASS LoadMass "loadKg" "Rider, luggage and fluids" 0.0 400.0 Kilogram;
    ROAD_FRICTION RoadFriction "roadFriction" "Grip of the road" 0.05 1.5 None;
    DECELERATION Deceleration "deceleration" "Deceleration" 0.1 15.0 MetreSecondSquared;
    BRAKE_EFFICIENCY BrakeEfficiency "percent" "Brake efficiency" 1.0 150.0 Percent;
    BRAKING_SPEED BrakingSpeed "roadSpeedKmh" "Speed before braking" 1.0 300.0 KilometreHour;
    REACTION Reaction "reactionSeconds" "Reaction" 0.0 5.0 Second;
    STOPPING_DISTANCE StoppingDistance "metres" "Stopping distance" 0.1 2000.0 Metre;
    FLUID_YEARS FluidYears "fluidYears" "Age of the brake fluid" 0.0 60.0 Year;
    WATER_PERCENT WaterPercent "waterPercent" "Water in the brake fluid" 0.0 20.0 Percent;
    THREAD_DIAMETER ThreadDiameter "diameterMm" "Outer diameter of the thread" 1.5 26.0 Millimetre;
    THREAD_PITCH ThreadPitch "pitchMm" "Pitch of the thread" 0.2 4.0 Millimetre;
    TURNS_INCH TurnsInch "turnsPerInch" "Turns per inch" 6.0 120.0 TurnsInch;
    THREAD_TURNS ThreadTurns "turns" "Turns counted" 1.0 60.0 None;
    OVER_LENGTH OverLength "overMm" "Length over which they were counted" 1.0 100.0 Millimetre;
    THREAD_FRICTION ThreadFriction "friction" "Friction of thread and head" 0.04 0.4 None;
    TORQUE Torque "torqueNm" "Torque" 0.1 500.0 NewtonMetre;
    NUT_FACTOR NutFactor "nutFactor" "Nut factor" 0.05 0.5 None;
    PRELOAD_SHARE PreloadShare "sharePercent" "Share of the proof load" 1.0 100.0 Percent;
    STRESS_AREA StressArea "stressAreaMm2" "Stress area" 0.1 1000.0 SquareMillimetre;
    STRESS Stress "stressMpa" "Stress" 1.0 2000.0 Megapascal;
    ENGAGED_DIAMETERS EngagedDiameters "diameters" "Diameters engaged" 0.1 5.0 None;
    SCREW_LOAD ScrewLoad "loadNewtons" "Load of the screw" 1.0 500000.0 Newton;
    SHEAR_STRENGTH ShearStrength "shearMpa" "Shear strength of the tapped material" 20.0 1000.0 Megapascal;
    ENGAGEMENT Engagement "engagementMm" "Thread engaged" 0.5 100.0 Millimetre;
    CUP Cup "cupMl" "Cup" 1.0 20000.0 Millilitre;
    POURS Pours "times" "Full cups" 0.0 60000.0 None;
    LAST_POUR LastPour "lastMl" "Last pour" 0.0 20000.0 Millilitre;
    CUPS Cups "cupsMl" "Number of cups" 1.0 12.0 None;
    FUEL Fuel "fuelLitres" "Fuel" 0.05 60.0 Litre;
    PREMIX_PARTS PremixParts "partsFuel" "Parts of fuel to one of oil" 10.0 200.0 None;
    READY_ML ReadyMl "readyMl" "Ready to use" 1.0 20000.0 Millilitre;
    READY_GRAM ReadyGram "readyGrams" "Ready to use" 1.0 30000.0 Gram;
    MIX_PARTS MixParts "partsBase" "Parts" 0.1 1000.0 None;
    THINNER Thinner "thinnerPercent" "Thinner" 0.0 300.0 Percent;
    PAINTED_AREA PaintedArea "squareMetres" "Area" 0.001 100.0 SquareMetre;
    SOLIDS Solids "solidsPercent" "Solids by volume" 1.0 100.0 Percent;
    FILM Film "dryMicrometres" "Dry film of one coat" 1.0 2000.0 Micrometre;
    SPRAY_LOSS SprayLoss "lossPercent" "Loss" 0.0 95.0 Percent;
    COATS Coats "coats" "Coats" 1.0 20.0 None;
    CAN Can "canMl" "Can" 10.0 20000.0 Millilitre;
    DENSITY Density "density" "Density" 0.5 4.0 GramMillilitre;
    SPREADING Spreading "spreadingRate" "Spreading rate" 0.1 200.0 SquareMetreLitre;
    WIRE_SECTION WireSection "sectionMm2" "Section of wire" 0.1 70.0 SquareMillimetre;
    WIRE_LENGTH WireLength "outMetres" "Length of wire" 0.01 30.0 Metre;
    WIRE_BACK WireBack "backMetres" "Length of wire back" 0.0 30.0 Metre;
    WIRE_TEMPERATURE WireTemperature "celsius" "Temperature of the wire" -30.0 120.0 Celsius;
    ALLOWED_DROP AllowedDrop "allowedVolts" "Accepted drop" 0.01 6.0 Volt;
    EMF Emf "emfVolts" "Voltage without load" 0.1 30.0 Volt;
    CIRCUIT_OHMS CircuitOhms "ohms" "Resistance" 0.0001 10000000.0 Ohm;
    CIRCUIT_WATTS CircuitWatts "watts" "Power" 0.01 5000.0 Watt;
    CIRCUIT_VOLTS CircuitVolts "volts" "Voltage" 0.1 30.0 Volt;
    FUSE_RATING FuseRating "ratedAmperes" "Fuse rating" 0.5 200.0 Ampere;
    METER_READING MeterReading "volts" "Reading" -40.0 40.0 Volt;
    FLASHER_WATTS FlasherWatts "flasherWatts" "Load that the flasher is made for" 1.0 200.0 Watt;
    FLASH_RATE FlashRate "flashesMinute" "Flashes a minute" 30.0 240.0 FlashesMinute;
    LOAD_RESISTOR LoadResistor "resistorOhms" "Load resistor" 0.5 10000.0 Ohm;
    RESISTORS Resistors "resistorsPerSide" "Load resistors on each side" 0.0 4.0 None;
    FLASHES Flashes "flashes" "Flashes counted" 1.0 1000.0 None;
    COUNTED_SECONDS CountedSeconds "seconds" "Seconds counted" 0.5 600.0 Second;
    LUMENS Lumens "lumens" "Light" 0.0 20000.0 Lumen;
    IDLE_VOLTS IdleVolts "idleVolts" "Voltage at idle" 0.0 40.0 Volt;
    FAST_VOLTS FastVolts "fastVolts" "Voltage at 5,000 rpm" 0.0 40.0 Volt;
    GRAVITY Gravity "gravity" "Specific gravity" 1.0 1.4 None;
    DRAIN Drain "drainMilliamperes" "Current with the key off" 0.0 30000.0 Milliampere;
    CHARGER Charger "chargerAmperes" "Current of the charger" 0.05 20.0 Ampere;
    HARNESS_AGE HarnessAge "ageYears" "Age of the harness" 0.0 120.0 Year;
    POT_LIFE PotLife "potLifeMinutes" "Pot life" 1.0 2880.0 Minute;
    SURFACE_LENGTH SurfaceLength "lengthMm" "Length along the part" 1.0 5000.0 Millimetre;
    SURFACE_GIRTH SurfaceGirth "girthMm" "Girth across the part" 1.0 5000.0 Millimetre;
    SURFACE_DIAMETER SurfaceDiameter "diameterMm" "Diameter" 1.0 1000.0 Millimetre;
    PIECES Pieces "count" "How many alike" 1.0 100.0 None;
    TURNING_SPEED TurningSpeed "engineRpm" "Engine speed" 100.0 20000.0 Rpm;
    MOVING_SPEED MovingSpeed "roadSpeedKmh" "Road speed" 1.0 300.0 KilometreHour;
    ROLLING_SPEED RollingSpeed "roadSpeedKmh" "Road speed" 0.0 165.0 KilometreHour;
    ELONGATION Elongation "elongationPercent" "Elongation" -1.0 6.0 Percent;
    ROD_PULL RodPull "rodNewtons" "Pull of the rod" 0.0 5000.0 Newton;
    CHARGE Charge "chargePercent" "Charge" 0.0 100.0 Percent;
    STEADY_DRAIN SteadyDrain "drainMilliamperes" "Drain" 0.001 30000.0 Milliampere;
    FLASHER_LOAD FlasherLoad "loadPercent" "Load" 1.0 300.0 Percent;
    FLASHER_CONTACTS FlasherContacts "contacts" "Closing over opening temperature" 0.1 0.99 None;
    WIRE_GAUGE WireGauge "gauge" "Gauge" -3.0 40.0 None;
    TAIL_DAYS TailDays "median" "Delivery with a long tail" 0.01 730.0 Day;
    QUANTILE Quantile "share" "Share" 0.001 0.999 None;
    SATURATION Saturation "saturationAmperes" "Saturation current" 1e-30 1e-3 Ampere;
    EMISSION Emission "emission" "Emission coefficient" 0.5 20.0 None;
    CHECK_MINUTES CheckMinutes "minutes" "Time of a check" 0.0 2880.0 Minute;
    PROBABILITY Probability "probability" "Probability" 0.0 1.0 None;
    SEAT_DIAMETER SeatDiameter "bearingMm" "Seat under the head" 1.5 60.0 Millimetre;
    HOLE_DIAMETER HoleDiameter "holeMm" "Clearance hole" 1.5 30.0 Millimetre;
    RESTED_READING RestedReading "restedVolts" "Rested voltage" 0.0 30.0 Volt;
    LENGTH_READING LengthReading "value" "Reading" 0.0 50.0 Millimetre;
    SHARE_READING ShareReading "value" "Reading" 0.0 150.0 Percent;
    FLASH_READING FlashReading "value" "Reading" 0.0 400.0 FlashesMinute;
    SPEED_READING SpeedReading "value" "Reading" 0.0 300.0 KilometreHour;
    TIME_READING TimeReading "value" "Reading" 0.0 1440.0 Minute;
    VOLTAGE_READING VoltageReading "value" "Reading" 0.0 30.0 Volt;
    ENGINE_READING EngineReading "value" "Reading" 0.0 20000.0 Rpm;
    CLOCK_MINUTES ClockMinutes "clockMinutes" "Clock of a step" 0.25 1440.0 Minute;
    PROCESS_STEPS ProcessSteps "steps" "Steps" 1.0 20.0 None;
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_range_has_an_id_of_its_own() {
        let ids: std::collections::BTreeSet<BoundId> = ALL.iter().map(|bound| bound.id).collect();
        assert_eq!(ids.len(), ALL.len());
    }
}
