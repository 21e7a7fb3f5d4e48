//! Accepted ranges. Every range of the program stands here once, with its unit; the UI reads the same table.
//!
//! A range is what the *program* accepts, wide enough for any small motorcycle: it catches slips of the thumb, it
//! judges nothing. The ranges are our own; no source.

use layshaft_wire::wire;

use crate::message::{FieldMessage, Message};
use crate::units::Unit;

/// An accepted range.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bound {
    /// What tells it from every other.
    pub id: BoundId,
    /// Field name as it crosses the door.
    pub field: &'static str,
    /// Field in words.
    pub label: BoundLabel,
    /// Least accepted.
    pub min: f64,
    /// Most accepted.
    pub max: f64,
    /// Unit of the value and the limits.
    pub unit: Unit,
}

/// What a range is called.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BoundLabel {
    /// As the range itself.
    Range(BoundId),
    /// As the field that takes it.
    Field(FieldMessage),
}

impl From<BoundLabel> for Message {
    fn from(label: BoundLabel) -> Self {
        match label {
            BoundLabel::Range(id) => Message::new(format!("bound-{}", id.wire_name()), Vec::new()),
            BoundLabel::Field(field) => field.into(),
        }
    }
}

/// An accepted range as the UI reads it.
#[wire]
pub struct BoundCard {
    /// What tells it from every other.
    pub id: BoundId,
    /// Field name as it crosses the door.
    pub field: String,
    /// Field in words.
    pub label: Message,
    /// Least accepted.
    pub min: f64,
    /// Most accepted.
    pub max: f64,
    /// Unit of the value and the limits.
    pub unit: Unit,
    /// What most small motorcycles have, to be tapped in place of typed; empty where nothing is usual.
    pub usual: Vec<f64>,
}

impl Bound {
    /// The same range for a field of another name.
    pub const fn of(self, field: &'static str) -> Self {
        Self { field, ..self }
    }

    /// The same range for a field of another name and label.
    pub const fn named(self, field: &'static str, label: FieldMessage) -> Self {
        Self { field, label: BoundLabel::Field(label), ..self }
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
            label: self.label.into(),
            min: self.min,
            max: self.max,
            unit: self.unit,
            usual: usual(self.id).to_vec(),
        }
    }
}

/// What is usual, at most five. Common practice, no source.
fn usual(id: BoundId) -> &'static [f64] {
    match id {
        BoundId::FrontTeeth => &[13.0, 14.0, 15.0, 16.0, 17.0],
        BoundId::RearTeeth => &[36.0, 39.0, 41.0, 43.0, 45.0],
        BoundId::SystemVolts => &[6.0, 12.0],
        BoundId::BatteryAh => &[4.0, 6.0, 9.0],
        BoundId::Watts => &[3.0, 5.0, 10.0, 21.0, 35.0],
        _ => &[],
    }
}

/// Declares the ranges, their ids and the list of all of them.
macro_rules! bounds {
    ($($name:ident $id:ident $field:literal $min:literal $max:literal $unit:ident;)*) => {
        /// What tells an accepted range from every other; beside each the field that takes it. Its label is the message
        /// `bound-<id>`.
        #[wire]
        pub enum BoundId {
            $(#[doc = $field] $id,)*
        }

        $(#[doc = concat!("`", $field, "`: ", $min, " to ", $max, ", unit: ", stringify!($unit), ".")]
        pub const $name: Bound = Bound {
            id: BoundId::$id, field: $field, label: BoundLabel::Range(BoundId::$id), min: $min, max: $max, unit: Unit::$unit
        };)*

        /// Every range, in the order of the declaration.
        pub const ALL: &[Bound] = &[$($name,)*];
    };
}

bounds! {
    FRONT_TEETH FrontTeeth "frontTeeth" 9.0 30.0 Teeth;
    REAR_TEETH RearTeeth "rearTeeth" 20.0 80.0 Teeth;
    PRIMARY_RATIO PrimaryRatio "primaryRatio" 1.0 6.0 None;
    GEAR_RATIO GearRatio "gearRatios" 0.4 5.0 None;
    GEARS Gears "gearRatios" 0.0 8.0 None;
    CHAIN_LINKS ChainLinks "chainLinks" 60.0 200.0 Links;
    CENTRE_DISTANCE CentreDistance "centreDistanceMm" 200.0 1200.0 Millimetre;
    OVERALL_RATIO OverallRatio "overallRatio" 1.0 60.0 None;
    PITCH Pitch "pitchMm" 6.0 26.0 Millimetre;
    REV_LIMIT RevLimit "revLimitRpm" 2000.0 20000.0 Rpm;
    ENGINE_SPEED EngineSpeed "engineRpm" 0.0 20000.0 Rpm;
    ROAD_SPEED RoadSpeed "roadSpeedKmh" 0.0 300.0 KilometreHour;
    CIRCUMFERENCE Circumference "circumferenceMm" 500.0 3000.0 Millimetre;
    FINAL_RATIO FinalRatio "finalRatio" 0.5 10.0 None;
    SPROCKET_TEETH SprocketTeeth "teeth" 8.0 152.0 Teeth;
    SPEEDOMETER_OVER SpeedometerOver "speedometerOverPercent" -30.0 50.0 Percent;
    GEAR Gear "gear" 1.0 8.0 None;
    TALLER Taller "tallerPercent" -50.0 100.0 Percent;
    PAIRS_SHOWN PairsShown "most" 1.0 1500.0 None;
    CHAIN_WEAR_LIMIT ChainWearLimit "chainWearLimitPercent" 0.2 5.0 Percent;
    CHAIN_SLACK ChainSlack "slackMm" 0.0 200.0 Millimetre;
    PITCHES Pitches "pitches" 4.0 200.0 None;
    MEASURED_CHAIN MeasuredChain "measuredMm" 20.0 4000.0 Millimetre;
    CORRECTOR Corrector "speedometerCorrector" 0.3 3.0 None;
    READING_FACTOR ReadingFactor "readingFactor" 0.5 2.0 None;
    PEAK_TORQUE PeakTorque "peakTorqueNm" 0.5 400.0 NewtonMetre;
    PEAK_TORQUE_RPM PeakTorqueRpm "peakTorqueRpm" 500.0 20000.0 Rpm;
    REV_POINT RevPoint "powerCurve" 300.0 20000.0 Rpm;
    CRANK_TORQUE CrankTorque "crankNm" 0.0 400.0 NewtonMetre;
    DRAG_AREA DragArea "dragAreaM2" 0.1 2.0 SquareMetre;
    DRIVE_EFFICIENCY DriveEfficiency "driveEfficiency" 0.5 1.0 None;
    ROLLING Rolling "rollingCoefficient" 0.003 0.1 None;
    TYRE_PRESSURE TyrePressure "tyreBar" 0.8 5.0 Bar;
    GRADE Grade "gradePercent" -30.0 40.0 Percent;
    HEAD_WIND HeadWind "headWindKmh" -60.0 100.0 KilometreHour;
    ALTITUDE Altitude "altitudeMetres" -400.0 5000.0 Metre;
    AIR_DENSITY AirDensity "airDensity" 0.6 1.6 KilogramCubicMetre;
    TYRE_WIDTH TyreWidth "tyreWidthMm" 50.0 350.0 Millimetre;
    TYRE_WIDTH_INCH TyreWidthInch "tyreWidthIn" 1.5 8.0 Inch;
    ASPECT_RATIO AspectRatio "aspectRatio" 25.0 110.0 Percent;
    SECTION_HEIGHT SectionHeight "heightMm" 10.0 350.0 Millimetre;
    OUTER_DIAMETER OuterDiameter "diameterMm" 150.0 1500.0 Millimetre;
    AGE_DAYS AgeDays "days" 0.0 60000.0 Day;
    RIM_CODE RimCode "rimCode" 8.0 26.0 Inch;
    LOAD_INDEX LoadIndex "loadIndex" 10.0 130.0 None;
    PLY_RATING PlyRating "plyRating" 2.0 12.0 None;
    TYRE_WEEK TyreWeek "tyreWeek" 1.0 53.0 None;
    AXLE_LOAD AxleLoad "axleLoadKg" 20.0 500.0 Kilogram;
    RIM_WIDTH RimWidth "rimWidthInch" 0.8 8.0 Inch;
    WATTS Watts "watts" 0.0 500.0 Watt;
    CONSUMER_WATTS ConsumerWatts "watts" 0.0 10000.0 Watt;
    COUNT Count "count" 1.0 20.0 None;
    INDICATORS_A_SIDE IndicatorsASide "count" 1.0 3.0 None;
    DUTY Duty "duty" 0.0 1.0 None;
    TEST_VOLTS TestVolts "testVolts" 4.0 30.0 Volt;
    SYSTEM_VOLTS SystemVolts "systemVolts" 6.0 24.0 Volt;
    CHARGING_VOLTS ChargingVolts "chargingVolts" 6.0 30.0 Volt;
    BATTERY_AH BatteryAh "batteryAh" 1.0 60.0 AmpereHour;
    RATED_HOURS RatedHours "ratedHours" 1.0 100.0 Hour;
    PEUKERT Peukert "peukert" 1.0 1.6 None;
    AMPERES Amperes "amperes" 0.01 300.0 Ampere;
    RESTED_VOLTS RestedVolts "volts" 4.5 30.0 Volt;
    CELLS Cells "cells" 3.0 12.0 None;
    CELL_VOLTS CellVolts "volts" 1.5 2.4 Volt;
    ALTERNATOR_WATTS AlternatorWatts "alternatorWatts" 5.0 1500.0 Watt;
    TEMPERATURE Temperature "celsius" -30.0 60.0 Celsius;
    BAKE_TEMPERATURE BakeTemperature "surfaceCelsius" -30.0 250.0 Celsius;
    LOWEST_AIR LowestAir "lowestCelsius" -30.0 60.0 Celsius;
    HIGHEST_AIR HighestAir "highestCelsius" -30.0 60.0 Celsius;
    DAMPEST_AIR DampestAir "highestHumidity" 1.0 100.0 RelativeHumidity;
    HUMIDITY Humidity "humidity" 1.0 100.0 RelativeHumidity;
    CURE_HOURS CureHours "hours" 0.02 2000.0 Hour;
    MEAN_RATE MeanRate "rate" 0.0 10000.0 None;
    ACTIVATION Activation "activationKelvin" 1000.0 15000.0 Kelvin;
    HANDS_ON HandsOn "handsOnMinutes" 1.0 2880.0 Minute;
    LEAST_MINUTES LeastMinutes "leastMinutes" 1.0 2880.0 Minute;
    MOST_MINUTES MostMinutes "mostMinutes" 1.0 5760.0 Minute;
    MINUTES_TAKEN MinutesTaken "minutesTaken" 1.0 1440.0 Minute;
    AT_MOST_HOURS AtMostHours "atMostHours" 0.1 2000.0 Hour;
    LEAST_DAYS LeastDays "leastDays" 0.0 365.0 Day;
    LIKELY_DAYS LikelyDays "likelyDays" 0.0 365.0 Day;
    COLDER Colder "colderKelvin" -30.0 30.0 Kelvin;
    MOST_DAYS MostDays "mostDays" 0.0 730.0 Day;
    WAIT_HOURS WaitHours "waitHours" 0.0 2000.0 Hour;
    SPOT_HOURS SpotHours "hoursAfter" 0.0 2000.0 Hour;
    MODEL_YEAR ModelYear "modelYear" 1885.0 2100.0 Year;
    DRY_MASS DryMass "dryMassKg" 20.0 500.0 Kilogram;
    DISPLACEMENT Displacement "displacementCc" 20.0 2500.0 None;
    PEAK_POWER PeakPower "peakPowerKw" 0.3 200.0 Kilowatt;
    BORE Bore "boreMm" 5.0 80.0 Millimetre;
    DISC Disc "discMm" 80.0 400.0 Millimetre;
    DRUM Drum "drumMm" 60.0 300.0 Millimetre;
    LEVER_RATIO LeverRatio "leverRatio" 1.0 12.0 None;
    HYDRAULIC_RATIO HydraulicRatio "hydraulicRatio" 0.1 200.0 None;
    PISTONS Pistons "pistons" 1.0 12.0 None;
    LITRES Litres "litres" 0.01 60.0 Litre;
    MONEY Money "priceMinor" 0.0 100000000.0 None;
    READING Reading "reading" -1000000.0 1000000.0 None;
    COMPARED Compared "before" 0.000001 1000000.0 None;
    BENCH_START BenchStart "fromMinute" 0.0 1440.0 Minute;
    BENCH_END BenchEnd "toMinute" 0.0 1440.0 Minute;
    TIME_AT_HAND TimeAtHand "minutesAtHand" 1.0 1440.0 Minute;
    WEEKDAY Weekday "weekday" 1.0 7.0 None;
    DAYS_SHOWN DaysShown "days" 1.0 366.0 Day;
    PAD_FRICTION PadFriction "padFriction" 0.05 0.8 None;
    EFFECTIVE_RADIUS EffectiveRadius "effectiveRadiusMm" 20.0 200.0 Millimetre;
    PAD_CLEARANCE PadClearance "padClearanceMm" 0.0 2.0 Millimetre;
    HOSE_LENGTH HoseLength "hoseMm" 50.0 4000.0 Millimetre;
    HOSE_BORE HoseBore "hoseBoreMm" 1.0 8.0 Millimetre;
    HOSE_SWELL HoseSwell "hoseSwellMlM" 0.0 10.0 Millilitre;
    MASTER_STROKE MasterStroke "masterStrokeMm" 1.0 40.0 Millimetre;
    CAM_ARM CamArm "camArmMm" 20.0 200.0 Millimetre;
    CAM_ANGLE CamAngle "camDegrees" 10.0 150.0 Degree;
    ROD_TRAVEL RodTravel "rodTravelMm" 0.0 100.0 Millimetre;
    SHOE_SHARE ShoeShare "pivotShare" 0.4 1.0 None;
    LEVER_FORCE LeverForce "leverNewtons" 0.0 1000.0 Newton;
    WHEEL_RADIUS WheelRadius "wheelRadiusMm" 100.0 500.0 Millimetre;
    RIDING_MASS RidingMass "massKg" 30.0 900.0 Kilogram;
    LOAD_MASS LoadMass "loadKg" 0.0 400.0 Kilogram;
    ROAD_FRICTION RoadFriction "roadFriction" 0.05 1.5 None;
    DECELERATION Deceleration "deceleration" 0.1 15.0 MetreSecondSquared;
    BRAKE_EFFICIENCY BrakeEfficiency "percent" 1.0 150.0 Percent;
    BRAKING_SPEED BrakingSpeed "roadSpeedKmh" 1.0 300.0 KilometreHour;
    REACTION Reaction "reactionSeconds" 0.0 5.0 Second;
    STOPPING_DISTANCE StoppingDistance "metres" 0.1 2000.0 Metre;
    FLUID_YEARS FluidYears "fluidYears" 0.0 60.0 Year;
    WATER_PERCENT WaterPercent "waterPercent" 0.0 20.0 Percent;
    THREAD_DIAMETER ThreadDiameter "diameterMm" 1.5 26.0 Millimetre;
    THREAD_PITCH ThreadPitch "pitchMm" 0.2 4.0 Millimetre;
    TURNS_INCH TurnsInch "turnsPerInch" 6.0 120.0 TurnsInch;
    THREAD_TURNS ThreadTurns "turns" 1.0 60.0 None;
    OVER_LENGTH OverLength "overMm" 1.0 100.0 Millimetre;
    THREAD_FRICTION ThreadFriction "friction" 0.04 0.4 None;
    TORQUE Torque "torqueNm" 0.1 500.0 NewtonMetre;
    NUT_FACTOR NutFactor "nutFactor" 0.05 0.5 None;
    PRELOAD_SHARE PreloadShare "sharePercent" 1.0 100.0 Percent;
    STRESS_AREA StressArea "stressAreaMm2" 0.1 1000.0 SquareMillimetre;
    STRESS Stress "stressMpa" 1.0 2000.0 Megapascal;
    ENGAGED_DIAMETERS EngagedDiameters "diameters" 0.1 5.0 None;
    SCREW_LOAD ScrewLoad "loadNewtons" 1.0 500000.0 Newton;
    SHEAR_STRENGTH ShearStrength "shearMpa" 20.0 1000.0 Megapascal;
    ENGAGEMENT Engagement "engagementMm" 0.5 100.0 Millimetre;
    CUP Cup "cupMl" 1.0 20000.0 Millilitre;
    POURS Pours "times" 0.0 60000.0 None;
    LAST_POUR LastPour "lastMl" 0.0 20000.0 Millilitre;
    CUPS Cups "cupsMl" 1.0 12.0 None;
    FUEL Fuel "fuelLitres" 0.05 60.0 Litre;
    PREMIX_PARTS PremixParts "partsFuel" 10.0 200.0 None;
    READY_ML ReadyMl "readyMl" 1.0 20000.0 Millilitre;
    READY_GRAM ReadyGram "readyGrams" 1.0 30000.0 Gram;
    MIX_PARTS MixParts "partsBase" 0.1 1000.0 None;
    THINNER Thinner "thinnerPercent" 0.0 300.0 Percent;
    PAINTED_AREA PaintedArea "squareMetres" 0.001 100.0 SquareMetre;
    SOLIDS Solids "solidsPercent" 1.0 100.0 Percent;
    FILM Film "dryMicrometres" 1.0 2000.0 Micrometre;
    SPRAY_LOSS SprayLoss "lossPercent" 0.0 95.0 Percent;
    COATS Coats "coats" 1.0 20.0 None;
    CAN Can "canMl" 10.0 20000.0 Millilitre;
    DENSITY Density "density" 0.5 4.0 GramMillilitre;
    SPREADING Spreading "spreadingRate" 0.1 200.0 SquareMetreLitre;
    WIRE_SECTION WireSection "sectionMm2" 0.1 70.0 SquareMillimetre;
    WIRE_LENGTH WireLength "outMetres" 0.01 30.0 Metre;
    WIRE_BACK WireBack "backMetres" 0.0 30.0 Metre;
    WIRE_TEMPERATURE WireTemperature "celsius" -30.0 120.0 Celsius;
    ALLOWED_DROP AllowedDrop "allowedVolts" 0.01 6.0 Volt;
    EMF Emf "emfVolts" 0.1 30.0 Volt;
    CIRCUIT_OHMS CircuitOhms "ohms" 0.0001 10000000.0 Ohm;
    CIRCUIT_WATTS CircuitWatts "watts" 0.01 5000.0 Watt;
    PEAK_VOLTS PeakVolts "peakVolts" 0.1 200.0 Volt;
    COIL_EMF CoilEmf "emfVolts" 0.1 150.0 Volt;
    CIRCUIT_VOLTS CircuitVolts "volts" 0.1 30.0 Volt;
    FUSE_RATING FuseRating "ratedAmperes" 0.5 200.0 Ampere;
    METER_READING MeterReading "volts" -150.0 150.0 Volt;
    FLASHER_WATTS FlasherWatts "flasherWatts" 1.0 200.0 Watt;
    FLASH_RATE FlashRate "flashesMinute" 30.0 240.0 FlashesMinute;
    LOAD_RESISTOR LoadResistor "resistorOhms" 0.5 10000.0 Ohm;
    RESISTORS Resistors "resistorsPerSide" 0.0 4.0 None;
    FLASHES Flashes "flashes" 1.0 1000.0 None;
    COUNTED_SECONDS CountedSeconds "seconds" 0.5 600.0 Second;
    LUMENS Lumens "lumens" 0.0 20000.0 Lumen;
    IDLE_VOLTS IdleVolts "idleVolts" 0.0 40.0 Volt;
    FAST_VOLTS FastVolts "fastVolts" 0.0 40.0 Volt;
    GRAVITY Gravity "gravity" 1.0 1.4 None;
    DRAIN Drain "drainMilliamperes" 0.0 30000.0 Milliampere;
    CHARGER Charger "chargerAmperes" 0.05 20.0 Ampere;
    HARNESS_AGE HarnessAge "ageYears" 0.0 120.0 Year;
    POT_LIFE PotLife "potLifeMinutes" 1.0 2880.0 Minute;
    SURFACE_LENGTH SurfaceLength "lengthMm" 1.0 5000.0 Millimetre;
    SURFACE_GIRTH SurfaceGirth "girthMm" 1.0 5000.0 Millimetre;
    SURFACE_DIAMETER SurfaceDiameter "diameterMm" 1.0 1000.0 Millimetre;
    PIECES Pieces "count" 1.0 100.0 None;
    TURNING_SPEED TurningSpeed "engineRpm" 100.0 20000.0 Rpm;
    MOVING_SPEED MovingSpeed "roadSpeedKmh" 1.0 300.0 KilometreHour;
    ROLLING_SPEED RollingSpeed "roadSpeedKmh" 0.0 165.0 KilometreHour;
    ELONGATION Elongation "elongationPercent" -1.0 6.0 Percent;
    ROD_PULL RodPull "rodNewtons" 0.0 5000.0 Newton;
    CHARGE Charge "chargePercent" 0.0 100.0 Percent;
    STEADY_DRAIN SteadyDrain "drainMilliamperes" 0.001 30000.0 Milliampere;
    FLASHER_LOAD FlasherLoad "loadPercent" 1.0 300.0 Percent;
    FLASHER_CONTACTS FlasherContacts "contacts" 0.1 0.99 None;
    WIRE_GAUGE WireGauge "gauge" -3.0 40.0 None;
    TAIL_DAYS TailDays "median" 0.01 730.0 Day;
    QUANTILE Quantile "share" 0.001 0.999 None;
    SATURATION Saturation "saturationAmperes" 1e-30 1e-3 Ampere;
    EMISSION Emission "emission" 0.5 20.0 None;
    CHECK_MINUTES CheckMinutes "minutes" 0.0 2880.0 Minute;
    PROBABILITY Probability "probability" 0.0 1.0 None;
    SEAT_DIAMETER SeatDiameter "bearingMm" 1.5 60.0 Millimetre;
    HOLE_DIAMETER HoleDiameter "holeMm" 1.5 30.0 Millimetre;
    RESTED_READING RestedReading "restedVolts" 0.0 30.0 Volt;
    LENGTH_READING LengthReading "value" 0.0 50.0 Millimetre;
    SHARE_READING ShareReading "value" 0.0 150.0 Percent;
    FLASH_READING FlashReading "value" 0.0 400.0 FlashesMinute;
    SPEED_READING SpeedReading "value" 0.0 300.0 KilometreHour;
    TIME_READING TimeReading "value" 0.0 1440.0 Minute;
    VOLTAGE_READING VoltageReading "value" 0.0 30.0 Volt;
    ENGINE_READING EngineReading "value" 0.0 20000.0 Rpm;
    CLOCK_MINUTES ClockMinutes "clockMinutes" 0.25 1440.0 Minute;
    PROCESS_STEPS ProcessSteps "steps" 1.0 20.0 None;
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_usual_is_accepted_and_stands_in_order() {
        for bound in ALL {
            let usual = bound.card().usual;
            assert!(usual.len() <= 5 && usual.is_sorted(), "{:?}", bound.id);
            assert!(usual.iter().all(|value| bound.check(*value).is_ok()), "{:?}", bound.id);
        }
    }

    #[test]
    fn every_range_has_an_id_of_its_own() {
        let ids: std::collections::BTreeSet<BoundId> = ALL.iter().map(|bound| bound.id).collect();
        assert_eq!(ids.len(), ALL.len());
    }
}
