//! Accepted ranges. Every range of the program stands here once, with its unit; the UI reads the same table.
//!
//! A range is what the *program* accepts, wide enough for any small motorcycle: it catches slips of the thumb, it
//! judges nothing. The ranges are our own; no source.

use layshaft_wire::wire;

use crate::message::{Declared, FieldMessage, Message};
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
    /// As declared here: the id of its message.
    Range(&'static str),
    /// As the field that takes it.
    Field(FieldMessage),
}

impl From<BoundLabel> for Message {
    fn from(label: BoundLabel) -> Self {
        match label {
            BoundLabel::Range(id) => Message::new(id, Vec::new()),
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
        }
    }
}

/// Declares the ranges, their ids and the list of all of them.
macro_rules! bounds {
    ($($name:ident $id:ident $field:literal $label:literal $min:literal $max:literal $unit:ident;)*) => {
        /// What tells an accepted range from every other. The line of each is the id of its message in the catalogue.
        #[wire]
        pub enum BoundId {
            $(#[doc = $label] $id,)*
        }

        $(#[doc = concat!("Range `", stringify!($id), "`, ", $min, " to ", $max, ".")]
        pub const $name: Bound = Bound {
            id: BoundId::$id, field: $field, label: BoundLabel::Range($label), min: $min, max: $max, unit: Unit::$unit
        };)*

        /// Every range, in the order of the declaration.
        pub const ALL: &[Bound] = &[$($name,)*];

        /// The messages that name them.
        pub(crate) const DECLARED: &[Declared] = &[$(Declared { id: $label, arguments: &[] },)*];
    };
}

bounds! {
    FRONT_TEETH FrontTeeth "frontTeeth" "bound-frontTeeth" 9.0 30.0 Teeth;
    REAR_TEETH RearTeeth "rearTeeth" "bound-rearTeeth" 20.0 80.0 Teeth;
    PRIMARY_RATIO PrimaryRatio "primaryRatio" "bound-primaryRatio" 1.0 6.0 None;
    GEAR_RATIO GearRatio "gearRatios" "bound-gearRatio" 0.4 5.0 None;
    GEARS Gears "gearRatios" "bound-gears" 0.0 8.0 None;
    CHAIN_LINKS ChainLinks "chainLinks" "bound-chainLinks" 60.0 200.0 Links;
    CENTRE_DISTANCE CentreDistance "centreDistanceMm" "bound-centreDistance" 200.0 1200.0 Millimetre;
    OVERALL_RATIO OverallRatio "overallRatio" "bound-overallRatio" 1.0 60.0 None;
    PITCH Pitch "pitchMm" "bound-pitch" 6.0 26.0 Millimetre;
    REV_LIMIT RevLimit "revLimitRpm" "bound-revLimit" 2000.0 20000.0 Rpm;
    ENGINE_SPEED EngineSpeed "engineRpm" "bound-engineSpeed" 0.0 20000.0 Rpm;
    ROAD_SPEED RoadSpeed "roadSpeedKmh" "bound-roadSpeed" 0.0 300.0 KilometreHour;
    CIRCUMFERENCE Circumference "circumferenceMm" "bound-circumference" 500.0 3000.0 Millimetre;
    FINAL_RATIO FinalRatio "finalRatio" "bound-finalRatio" 0.5 10.0 None;
    SPROCKET_TEETH SprocketTeeth "teeth" "bound-sprocketTeeth" 8.0 152.0 Teeth;
    SPEEDOMETER_OVER SpeedometerOver "speedometerOverPercent" "bound-speedometerOver" -30.0 50.0 Percent;
    GEAR Gear "gear" "bound-gear" 1.0 8.0 None;
    TALLER Taller "tallerPercent" "bound-taller" -50.0 100.0 Percent;
    PAIRS_SHOWN PairsShown "most" "bound-pairsShown" 1.0 1500.0 None;
    CHAIN_WEAR_LIMIT ChainWearLimit "chainWearLimitPercent" "bound-chainWearLimit" 0.2 5.0 Percent;
    CHAIN_SLACK ChainSlack "slackMm" "bound-chainSlack" 0.0 200.0 Millimetre;
    PITCHES Pitches "pitches" "bound-pitches" 4.0 200.0 None;
    MEASURED_CHAIN MeasuredChain "measuredMm" "bound-measuredChain" 20.0 4000.0 Millimetre;
    CORRECTOR Corrector "speedometerCorrector" "bound-corrector" 0.3 3.0 None;
    READING_FACTOR ReadingFactor "readingFactor" "bound-readingFactor" 0.5 2.0 None;
    PEAK_TORQUE PeakTorque "peakTorqueNm" "bound-peakTorque" 0.5 400.0 NewtonMetre;
    PEAK_TORQUE_RPM PeakTorqueRpm "peakTorqueRpm" "bound-peakTorqueRpm" 500.0 20000.0 Rpm;
    REV_POINT RevPoint "powerCurve" "bound-revPoint" 300.0 20000.0 Rpm;
    CRANK_TORQUE CrankTorque "crankNm" "bound-crankTorque" 0.0 400.0 NewtonMetre;
    DRAG_AREA DragArea "dragAreaM2" "bound-dragArea" 0.1 2.0 SquareMetre;
    DRIVE_EFFICIENCY DriveEfficiency "driveEfficiency" "bound-driveEfficiency" 0.5 1.0 None;
    ROLLING Rolling "rollingCoefficient" "bound-rolling" 0.003 0.1 None;
    TYRE_PRESSURE TyrePressure "tyreBar" "bound-tyrePressure" 0.8 5.0 Bar;
    GRADE Grade "gradePercent" "bound-grade" -30.0 40.0 Percent;
    HEAD_WIND HeadWind "headWindKmh" "bound-headWind" -60.0 100.0 KilometreHour;
    ALTITUDE Altitude "altitudeMetres" "bound-altitude" -400.0 5000.0 Metre;
    AIR_DENSITY AirDensity "airDensity" "bound-airDensity" 0.6 1.6 KilogramCubicMetre;
    TYRE_WIDTH TyreWidth "tyreWidthMm" "bound-tyreWidth" 50.0 350.0 Millimetre;
    TYRE_WIDTH_INCH TyreWidthInch "tyreWidthIn" "bound-tyreWidthInch" 1.5 8.0 Inch;
    ASPECT_RATIO AspectRatio "aspectRatio" "bound-aspectRatio" 25.0 110.0 Percent;
    SECTION_HEIGHT SectionHeight "heightMm" "bound-sectionHeight" 10.0 350.0 Millimetre;
    OUTER_DIAMETER OuterDiameter "diameterMm" "bound-outerDiameter" 150.0 1500.0 Millimetre;
    AGE_DAYS AgeDays "days" "bound-ageDays" 0.0 60000.0 Day;
    RIM_CODE RimCode "rimCode" "bound-rimCode" 8.0 26.0 Inch;
    LOAD_INDEX LoadIndex "loadIndex" "bound-loadIndex" 10.0 130.0 None;
    PLY_RATING PlyRating "plyRating" "bound-plyRating" 2.0 12.0 None;
    TYRE_WEEK TyreWeek "tyreWeek" "bound-tyreWeek" 1.0 53.0 None;
    AXLE_LOAD AxleLoad "axleLoadKg" "bound-axleLoad" 20.0 500.0 Kilogram;
    RIM_WIDTH RimWidth "rimWidthInch" "bound-rimWidth" 0.8 8.0 Inch;
    WATTS Watts "watts" "bound-watts" 0.0 500.0 Watt;
    CONSUMER_WATTS ConsumerWatts "watts" "bound-consumerWatts" 0.0 10000.0 Watt;
    COUNT Count "count" "bound-count" 1.0 20.0 None;
    DUTY Duty "duty" "bound-duty" 0.0 1.0 None;
    TEST_VOLTS TestVolts "testVolts" "bound-testVolts" 4.0 30.0 Volt;
    SYSTEM_VOLTS SystemVolts "systemVolts" "bound-systemVolts" 6.0 24.0 Volt;
    CHARGING_VOLTS ChargingVolts "chargingVolts" "bound-chargingVolts" 6.0 30.0 Volt;
    BATTERY_AH BatteryAh "batteryAh" "bound-batteryAh" 1.0 60.0 AmpereHour;
    RATED_HOURS RatedHours "ratedHours" "bound-ratedHours" 1.0 100.0 Hour;
    PEUKERT Peukert "peukert" "bound-peukert" 1.0 1.6 None;
    AMPERES Amperes "amperes" "bound-amperes" 0.01 300.0 Ampere;
    RESTED_VOLTS RestedVolts "volts" "bound-restedVolts" 9.0 14.0 Volt;
    ALTERNATOR_WATTS AlternatorWatts "alternatorWatts" "bound-alternatorWatts" 5.0 1500.0 Watt;
    TEMPERATURE Temperature "celsius" "bound-temperature" -30.0 60.0 Celsius;
    BAKE_TEMPERATURE BakeTemperature "surfaceCelsius" "bound-bakeTemperature" -30.0 250.0 Celsius;
    LOWEST_AIR LowestAir "lowestCelsius" "bound-lowestAir" -30.0 60.0 Celsius;
    HIGHEST_AIR HighestAir "highestCelsius" "bound-highestAir" -30.0 60.0 Celsius;
    DAMPEST_AIR DampestAir "highestHumidity" "bound-dampestAir" 1.0 100.0 RelativeHumidity;
    HUMIDITY Humidity "humidity" "bound-humidity" 1.0 100.0 RelativeHumidity;
    CURE_HOURS CureHours "hours" "bound-cureHours" 0.02 2000.0 Hour;
    MEAN_RATE MeanRate "rate" "bound-meanRate" 0.0 10000.0 None;
    ACTIVATION Activation "activationKelvin" "bound-activation" 1000.0 15000.0 Kelvin;
    HANDS_ON HandsOn "handsOnMinutes" "bound-handsOn" 1.0 2880.0 Minute;
    LEAST_MINUTES LeastMinutes "leastMinutes" "bound-leastMinutes" 1.0 2880.0 Minute;
    MOST_MINUTES MostMinutes "mostMinutes" "bound-mostMinutes" 1.0 5760.0 Minute;
    AT_MOST_HOURS AtMostHours "atMostHours" "bound-atMostHours" 0.1 2000.0 Hour;
    LEAST_DAYS LeastDays "leastDays" "bound-leastDays" 0.0 365.0 Day;
    LIKELY_DAYS LikelyDays "likelyDays" "bound-likelyDays" 0.0 365.0 Day;
    COLDER Colder "colderKelvin" "bound-colder" -30.0 30.0 Kelvin;
    MOST_DAYS MostDays "mostDays" "bound-mostDays" 0.0 730.0 Day;
    WAIT_HOURS WaitHours "waitHours" "bound-waitHours" 0.0 2000.0 Hour;
    SPOT_HOURS SpotHours "hoursAfter" "bound-spotHours" 0.0 2000.0 Hour;
    MODEL_YEAR ModelYear "modelYear" "bound-modelYear" 1885.0 2100.0 Year;
    DRY_MASS DryMass "dryMassKg" "bound-dryMass" 20.0 500.0 Kilogram;
    DISPLACEMENT Displacement "displacementCc" "bound-displacement" 20.0 2500.0 None;
    PEAK_POWER PeakPower "peakPowerKw" "bound-peakPower" 0.3 200.0 Kilowatt;
    BORE Bore "boreMm" "bound-bore" 5.0 80.0 Millimetre;
    DISC Disc "discMm" "bound-disc" 80.0 400.0 Millimetre;
    DRUM Drum "drumMm" "bound-drum" 60.0 300.0 Millimetre;
    LEVER_RATIO LeverRatio "leverRatio" "bound-leverRatio" 1.0 12.0 None;
    HYDRAULIC_RATIO HydraulicRatio "hydraulicRatio" "bound-hydraulicRatio" 0.1 200.0 None;
    PISTONS Pistons "pistons" "bound-pistons" 1.0 12.0 None;
    LITRES Litres "litres" "bound-litres" 0.01 60.0 Litre;
    MONEY Money "priceMinor" "bound-money" 0.0 100000000.0 None;
    READING Reading "reading" "bound-reading" -1000000.0 1000000.0 None;
    COMPARED Compared "before" "bound-compared" 0.000001 1000000.0 None;
    BENCH_START BenchStart "fromMinute" "bound-benchStart" 0.0 1440.0 Minute;
    BENCH_END BenchEnd "toMinute" "bound-benchEnd" 0.0 1440.0 Minute;
    TIME_AT_HAND TimeAtHand "minutesAtHand" "bound-timeAtHand" 1.0 1440.0 Minute;
    WEEKDAY Weekday "weekday" "bound-weekday" 1.0 7.0 None;
    DAYS_SHOWN DaysShown "days" "bound-daysShown" 1.0 366.0 Day;
    PAD_FRICTION PadFriction "padFriction" "bound-padFriction" 0.05 0.8 None;
    EFFECTIVE_RADIUS EffectiveRadius "effectiveRadiusMm" "bound-effectiveRadius" 20.0 200.0 Millimetre;
    PAD_CLEARANCE PadClearance "padClearanceMm" "bound-padClearance" 0.0 2.0 Millimetre;
    HOSE_LENGTH HoseLength "hoseMm" "bound-hoseLength" 50.0 4000.0 Millimetre;
    HOSE_BORE HoseBore "hoseBoreMm" "bound-hoseBore" 1.0 8.0 Millimetre;
    HOSE_SWELL HoseSwell "hoseSwellMlM" "bound-hoseSwell" 0.0 10.0 Millilitre;
    MASTER_STROKE MasterStroke "masterStrokeMm" "bound-masterStroke" 1.0 40.0 Millimetre;
    CAM_ARM CamArm "camArmMm" "bound-camArm" 20.0 200.0 Millimetre;
    CAM_ANGLE CamAngle "camDegrees" "bound-camAngle" 10.0 150.0 Degree;
    ROD_TRAVEL RodTravel "rodTravelMm" "bound-rodTravel" 0.0 100.0 Millimetre;
    SHOE_SHARE ShoeShare "pivotShare" "bound-shoeShare" 0.4 1.0 None;
    LEVER_FORCE LeverForce "leverNewtons" "bound-leverForce" 0.0 1000.0 Newton;
    WHEEL_RADIUS WheelRadius "wheelRadiusMm" "bound-wheelRadius" 100.0 500.0 Millimetre;
    RIDING_MASS RidingMass "massKg" "bound-ridingMass" 30.0 900.0 Kilogram;
    LOAD_MASS LoadMass "loadKg" "bound-loadMass" 0.0 400.0 Kilogram;
    ROAD_FRICTION RoadFriction "roadFriction" "bound-roadFriction" 0.05 1.5 None;
    DECELERATION Deceleration "deceleration" "bound-deceleration" 0.1 15.0 MetreSecondSquared;
    BRAKE_EFFICIENCY BrakeEfficiency "percent" "bound-brakeEfficiency" 1.0 150.0 Percent;
    BRAKING_SPEED BrakingSpeed "roadSpeedKmh" "bound-brakingSpeed" 1.0 300.0 KilometreHour;
    REACTION Reaction "reactionSeconds" "bound-reaction" 0.0 5.0 Second;
    STOPPING_DISTANCE StoppingDistance "metres" "bound-stoppingDistance" 0.1 2000.0 Metre;
    FLUID_YEARS FluidYears "fluidYears" "bound-fluidYears" 0.0 60.0 Year;
    WATER_PERCENT WaterPercent "waterPercent" "bound-waterPercent" 0.0 20.0 Percent;
    THREAD_DIAMETER ThreadDiameter "diameterMm" "bound-threadDiameter" 1.5 26.0 Millimetre;
    THREAD_PITCH ThreadPitch "pitchMm" "bound-threadPitch" 0.2 4.0 Millimetre;
    TURNS_INCH TurnsInch "turnsPerInch" "bound-turnsInch" 6.0 120.0 TurnsInch;
    THREAD_TURNS ThreadTurns "turns" "bound-threadTurns" 1.0 60.0 None;
    OVER_LENGTH OverLength "overMm" "bound-overLength" 1.0 100.0 Millimetre;
    THREAD_FRICTION ThreadFriction "friction" "bound-threadFriction" 0.04 0.4 None;
    TORQUE Torque "torqueNm" "bound-torque" 0.1 500.0 NewtonMetre;
    NUT_FACTOR NutFactor "nutFactor" "bound-nutFactor" 0.05 0.5 None;
    PRELOAD_SHARE PreloadShare "sharePercent" "bound-preloadShare" 1.0 100.0 Percent;
    STRESS_AREA StressArea "stressAreaMm2" "bound-stressArea" 0.1 1000.0 SquareMillimetre;
    STRESS Stress "stressMpa" "bound-stress" 1.0 2000.0 Megapascal;
    ENGAGED_DIAMETERS EngagedDiameters "diameters" "bound-engagedDiameters" 0.1 5.0 None;
    SCREW_LOAD ScrewLoad "loadNewtons" "bound-screwLoad" 1.0 500000.0 Newton;
    SHEAR_STRENGTH ShearStrength "shearMpa" "bound-shearStrength" 20.0 1000.0 Megapascal;
    ENGAGEMENT Engagement "engagementMm" "bound-engagement" 0.5 100.0 Millimetre;
    CUP Cup "cupMl" "bound-cup" 1.0 20000.0 Millilitre;
    POURS Pours "times" "bound-pours" 0.0 60000.0 None;
    LAST_POUR LastPour "lastMl" "bound-lastPour" 0.0 20000.0 Millilitre;
    CUPS Cups "cupsMl" "bound-cups" 1.0 12.0 None;
    FUEL Fuel "fuelLitres" "bound-fuel" 0.05 60.0 Litre;
    PREMIX_PARTS PremixParts "partsFuel" "bound-premixParts" 10.0 200.0 None;
    READY_ML ReadyMl "readyMl" "bound-readyMl" 1.0 20000.0 Millilitre;
    READY_GRAM ReadyGram "readyGrams" "bound-readyGram" 1.0 30000.0 Gram;
    MIX_PARTS MixParts "partsBase" "bound-mixParts" 0.1 1000.0 None;
    THINNER Thinner "thinnerPercent" "bound-thinner" 0.0 300.0 Percent;
    PAINTED_AREA PaintedArea "squareMetres" "bound-paintedArea" 0.001 100.0 SquareMetre;
    SOLIDS Solids "solidsPercent" "bound-solids" 1.0 100.0 Percent;
    FILM Film "dryMicrometres" "bound-film" 1.0 2000.0 Micrometre;
    SPRAY_LOSS SprayLoss "lossPercent" "bound-sprayLoss" 0.0 95.0 Percent;
    COATS Coats "coats" "bound-coats" 1.0 20.0 None;
    CAN Can "canMl" "bound-can" 10.0 20000.0 Millilitre;
    DENSITY Density "density" "bound-density" 0.5 4.0 GramMillilitre;
    SPREADING Spreading "spreadingRate" "bound-spreading" 0.1 200.0 SquareMetreLitre;
    WIRE_SECTION WireSection "sectionMm2" "bound-wireSection" 0.1 70.0 SquareMillimetre;
    WIRE_LENGTH WireLength "outMetres" "bound-wireLength" 0.01 30.0 Metre;
    WIRE_BACK WireBack "backMetres" "bound-wireBack" 0.0 30.0 Metre;
    WIRE_TEMPERATURE WireTemperature "celsius" "bound-wireTemperature" -30.0 120.0 Celsius;
    ALLOWED_DROP AllowedDrop "allowedVolts" "bound-allowedDrop" 0.01 6.0 Volt;
    EMF Emf "emfVolts" "bound-emf" 0.1 30.0 Volt;
    CIRCUIT_OHMS CircuitOhms "ohms" "bound-circuitOhms" 0.0001 10000000.0 Ohm;
    CIRCUIT_WATTS CircuitWatts "watts" "bound-circuitWatts" 0.01 5000.0 Watt;
    CIRCUIT_VOLTS CircuitVolts "volts" "bound-circuitVolts" 0.1 30.0 Volt;
    FUSE_RATING FuseRating "ratedAmperes" "bound-fuseRating" 0.5 200.0 Ampere;
    METER_READING MeterReading "volts" "bound-meterReading" -40.0 40.0 Volt;
    FLASHER_WATTS FlasherWatts "flasherWatts" "bound-flasherWatts" 1.0 200.0 Watt;
    FLASH_RATE FlashRate "flashesMinute" "bound-flashRate" 30.0 240.0 FlashesMinute;
    LOAD_RESISTOR LoadResistor "resistorOhms" "bound-loadResistor" 0.5 10000.0 Ohm;
    RESISTORS Resistors "resistorsPerSide" "bound-resistors" 0.0 4.0 None;
    FLASHES Flashes "flashes" "bound-flashes" 1.0 1000.0 None;
    COUNTED_SECONDS CountedSeconds "seconds" "bound-countedSeconds" 0.5 600.0 Second;
    LUMENS Lumens "lumens" "bound-lumens" 0.0 20000.0 Lumen;
    IDLE_VOLTS IdleVolts "idleVolts" "bound-idleVolts" 0.0 40.0 Volt;
    FAST_VOLTS FastVolts "fastVolts" "bound-fastVolts" 0.0 40.0 Volt;
    GRAVITY Gravity "gravity" "bound-gravity" 1.0 1.4 None;
    DRAIN Drain "drainMilliamperes" "bound-drain" 0.0 30000.0 Milliampere;
    CHARGER Charger "chargerAmperes" "bound-charger" 0.05 20.0 Ampere;
    HARNESS_AGE HarnessAge "ageYears" "bound-harnessAge" 0.0 120.0 Year;
    POT_LIFE PotLife "potLifeMinutes" "bound-potLife" 1.0 2880.0 Minute;
    SURFACE_LENGTH SurfaceLength "lengthMm" "bound-surfaceLength" 1.0 5000.0 Millimetre;
    SURFACE_GIRTH SurfaceGirth "girthMm" "bound-surfaceGirth" 1.0 5000.0 Millimetre;
    SURFACE_DIAMETER SurfaceDiameter "diameterMm" "bound-surfaceDiameter" 1.0 1000.0 Millimetre;
    PIECES Pieces "count" "bound-pieces" 1.0 100.0 None;
    TURNING_SPEED TurningSpeed "engineRpm" "bound-turningSpeed" 100.0 20000.0 Rpm;
    MOVING_SPEED MovingSpeed "roadSpeedKmh" "bound-movingSpeed" 1.0 300.0 KilometreHour;
    ROLLING_SPEED RollingSpeed "roadSpeedKmh" "bound-rollingSpeed" 0.0 165.0 KilometreHour;
    ELONGATION Elongation "elongationPercent" "bound-elongation" -1.0 6.0 Percent;
    ROD_PULL RodPull "rodNewtons" "bound-rodPull" 0.0 5000.0 Newton;
    CHARGE Charge "chargePercent" "bound-charge" 0.0 100.0 Percent;
    STEADY_DRAIN SteadyDrain "drainMilliamperes" "bound-steadyDrain" 0.001 30000.0 Milliampere;
    FLASHER_LOAD FlasherLoad "loadPercent" "bound-flasherLoad" 1.0 300.0 Percent;
    FLASHER_CONTACTS FlasherContacts "contacts" "bound-flasherContacts" 0.1 0.99 None;
    WIRE_GAUGE WireGauge "gauge" "bound-wireGauge" -3.0 40.0 None;
    TAIL_DAYS TailDays "median" "bound-tailDays" 0.01 730.0 Day;
    QUANTILE Quantile "share" "bound-quantile" 0.001 0.999 None;
    SATURATION Saturation "saturationAmperes" "bound-saturation" 1e-30 1e-3 Ampere;
    EMISSION Emission "emission" "bound-emission" 0.5 20.0 None;
    CHECK_MINUTES CheckMinutes "minutes" "bound-checkMinutes" 0.0 2880.0 Minute;
    PROBABILITY Probability "probability" "bound-probability" 0.0 1.0 None;
    SEAT_DIAMETER SeatDiameter "bearingMm" "bound-seatDiameter" 1.5 60.0 Millimetre;
    HOLE_DIAMETER HoleDiameter "holeMm" "bound-holeDiameter" 1.5 30.0 Millimetre;
    RESTED_READING RestedReading "restedVolts" "bound-restedReading" 0.0 30.0 Volt;
    LENGTH_READING LengthReading "value" "bound-lengthReading" 0.0 50.0 Millimetre;
    SHARE_READING ShareReading "value" "bound-shareReading" 0.0 150.0 Percent;
    FLASH_READING FlashReading "value" "bound-flashReading" 0.0 400.0 FlashesMinute;
    SPEED_READING SpeedReading "value" "bound-speedReading" 0.0 300.0 KilometreHour;
    TIME_READING TimeReading "value" "bound-timeReading" 0.0 1440.0 Minute;
    VOLTAGE_READING VoltageReading "value" "bound-voltageReading" 0.0 30.0 Volt;
    ENGINE_READING EngineReading "value" "bound-engineReading" 0.0 20000.0 Rpm;
    CLOCK_MINUTES ClockMinutes "clockMinutes" "bound-clockMinutes" 0.25 1440.0 Minute;
    PROCESS_STEPS ProcessSteps "steps" "bound-processSteps" 1.0 20.0 None;
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_range_has_an_id_of_its_own() {
        let ids: std::collections::BTreeSet<BoundId> = ALL.iter().map(|bound| bound.id).collect();
        assert_eq!(ids.len(), ALL.len());
    }

    #[test]
    fn the_message_of_a_range_goes_by_the_id_of_the_range() {
        for bound in ALL {
            let id = format!("bound-{}", crate::message::camel_name(&bound.id));
            assert_eq!(bound.label, BoundLabel::Range(id.leak()));
        }
    }
}
