//! The codes of findings, listed here once: what a finding is about, for whoever acts on it or shows the way to where it is
//! mended. The text may change, a code never does.

use layshaft_wire::wire;

/// Declares the codes once: name and how it is written outside.
macro_rules! codes {
    ($($name:ident $written:literal;)*) => {
        /// What a finding is about. Outside it is written with a dot: `chain.too-slack`.
        #[wire]
        pub enum FindingCode {
            $(
                #[doc = $written]
                #[serde(rename = $written)]
                $name,
            )*
        }

        impl FindingCode {
            /// Every code.
            pub const ALL: &[FindingCode] = &[$(FindingCode::$name,)*];

            /// As it is written outside.
            pub fn as_str(self) -> &'static str {
                match self { $(FindingCode::$name => $written,)* }
            }
        }
    };
}

codes! {
    BalanceAboveIdle "balance.above-idle";
    BalanceNever "balance.never";
    BatteryAnotherVoltage "battery.another-voltage";
    BatteryCell "battery.cell";
    BatteryDrain "battery.drain";
    BatteryGas "battery.gas";
    BatteryLeaveHalf "battery.leave-half";
    BatteryNone "battery.none";
    BatteryTablesDiffer "battery.tables-differ";
    BatteryUnknown "battery.unknown";
    BrakeFluidDue "brake-fluid.due";
    BrakeFluidMixed "brake-fluid.mixed";
    BrakeFluidNeverMix "brake-fluid.never-mix";
    BrakeBelowLine "brake.below-line";
    BrakeBeyondGrip "brake.beyond-grip";
    BrakeCamOver "brake.cam-over";
    BrakeCannotBe "brake.cannot-be";
    BrakeClearanceUsual "brake.clearance-usual";
    BrakeFrictionOpen "brake.friction-open";
    BrakeLongLever "brake.long-lever";
    BrakeMayMissLine "brake.may-miss-line";
    BrakeMissingCam "brake.missing-cam";
    BrakeMissingDisc "brake.missing-disc";
    BrakeMissingLeverRatio "brake.missing-lever-ratio";
    BrakeRatioUncommon "brake.ratio-uncommon";
    BrakeStandardUnknown "brake.standard-unknown";
    BrakeTakenUnchanged "brake.taken-unchanged";
    CircuitDirectCurrent "circuit.direct-current";
    CircuitAlternating "circuit.alternating";
    CircuitCoilUnknown "circuit.coil-unknown";
    CircuitIgnition "circuit.ignition";
    ChainAdjusterEndsSwapped "chain.adjuster-ends-swapped";
    ChainAnotherChain "chain.another-chain";
    ChainCannotClose "chain.cannot-close";
    ChainCannotRun "chain.cannot-run";
    ChainDistanceDisagrees "chain.distance-disagrees";
    ChainFrontSize "chain.front-size";
    ChainLittleRoomForWear "chain.little-room-for-wear";
    ChainOddCount "chain.odd-count";
    ChainOutsideAdjuster "chain.outside-adjuster";
    ChainRearSize "chain.rear-size";
    ChainShorterThanNew "chain.shorter-than-new";
    ChainSlackOpen "chain.slack-open";
    ChainTightSpot "chain.tight-spot";
    ChainTooSlack "chain.too-slack";
    ChainTooTight "chain.too-tight";
    ChainWearBetween "chain.wear-between";
    ChainWearUnknown "chain.wear-unknown";
    ChainWornBeyondAdjuster "chain.worn-beyond-adjuster";
    ChainWornOut "chain.worn-out";
    ChargerTooStrong "charger.too-strong";
    ChargingOutside "charging.outside";
    ChargingPattern "charging.pattern";
    ChargingTooHigh "charging.too-high";
    ChargingUnknown "charging.unknown";
    ChoiceGoalMissed "choice.goal-missed";
    ChoiceLimitsAssumed "choice.limits-assumed";
    ChoiceNoneFits "choice.none-fits";
    ChoiceNoneLeft "choice.none-left";
    ChoiceSpeedometerOnWheel "choice.speedometer-on-wheel";
    ChoiceSpeedometerOpen "choice.speedometer-open";
    ChoiceSpeedometerOutside "choice.speedometer-outside";
    ClimateAssumed "climate.assumed";
    CoilBesideBattery "coil.beside-battery";
    CoilBlownLamp "coil.blown-lamp";
    CoilTooBright "coil.too-bright";
    CoilTooDim "coil.too-dim";
    ColdLimitUnknown "cold.limit-unknown";
    ColdPartOfDay "cold.part-of-day";
    ColdStandsStill "cold.stands-still";
    CureFullUnknown "cure.full-unknown";
    CureHold "cure.hold";
    DewTooClose "dew.too-close";
    FaultsCaution "faults.caution";
    FaultsRecheck "faults.recheck";
    FillByOccasion "fill.by-occasion";
    FillMissingGrade "fill.missing-grade";
    FillRounded "fill.rounded";
    FlasherCounted "flasher.counted";
    FlasherTooLittleLoad "flasher.too-little-load";
    FuseBlows "fuse.blows";
    FuseCoil "fuse.coil";
    FuseCloseToBattery "fuse.close-to-battery";
    GearingBeyondLimit "gearing.beyond-limit";
    GearingFrontClearance "gearing.front-clearance";
    GearingFrontLimit "gearing.front-limit";
    GearingMissingAdjuster "gearing.missing-adjuster";
    GearingMissingCentreDistance "gearing.missing-centre-distance";
    GearingMissingChainSize "gearing.missing-chain-size";
    GearingMissingRevLimit "gearing.missing-rev-limit";
    GearingMissingSpeedometer "gearing.missing-speedometer";
    GearingRearLimit "gearing.rear-limit";
    GearingStandardUnknown "gearing.standard-unknown";
    HarnessDrop "harness.drop";
    HarnessFloating "harness.floating";
    HarnessNoEarth "harness.no-earth";
    HarnessNotSettled "harness.not-settled";
    HarnessSourcesInConflict "harness.sources-in-conflict";
    HeatNoFaster "heat.no-faster";
    HumidityTooHigh "humidity.too-high";
    HumidityUnknown "humidity.unknown";
    IndicatorBothSides "indicator.both-sides";
    IndicatorStops "indicator.stops";
    IndicatorTooFast "indicator.too-fast";
    LampCap "lamp.cap";
    LampLedApproval "lamp.led-approval";
    LampMoreWatts "lamp.more-watts";
    LampAlternating "lamp.alternating";
    LampPolarity "lamp.polarity";
    LoadUseUnknown "load.use-unknown";
    MixByVolume "mix.by-volume";
    MixLossUnknown "mix.loss-unknown";
    MixPotLife "mix.pot-life";
    MixPremixParts "mix.premix-parts";
    MixThinnerMeaning "mix.thinner-meaning";
    OutputHalfWave "output.half-wave";
    OutputNominalCurve "output.nominal-curve";
    OutputUnknown "output.unknown";
    PlanAirUnknown "plan.air-unknown";
    PlanAssumedBenchTime "plan.assumed-bench-time";
    PlanAssumedHelper "plan.assumed-helper";
    PlanCircle "plan.circle";
    PlanDoneWithoutDay "plan.done-without-day";
    PlanLimitMissed "plan.limit-missed";
    PlanLimitNeverKept "plan.limit-never-kept";
    PlanLimitPassed "plan.limit-passed";
    PlanLimitWaits "plan.limit-waits";
    PlanNeverReached "plan.never-reached";
    PlanNoOwnTime "plan.no-own-time";
    PlanNoStretch "plan.no-stretch";
    PlanPartLate "plan.part-late";
    PlanPartNotOrdered "plan.part-not-ordered";
    PlanPartWithoutDay "plan.part-without-day";
    PlanSandFirst "plan.sand-first";
    PlanWaitUnknown "plan.wait-unknown";
    PlanWaitWithoutEnd "plan.wait-without-end";
    ProcessDecalOnColour "process.decal-on-colour";
    ProcessSandFirst "process.sand-first";
    ProcessWindowUnknown "process.window-unknown";
    ProductCaution "product.caution";
    ProductTypical "product.typical";
    RelayChatters "relay.chatters";
    ScrewNoSubstitute "screw.no-substitute";
    SpeedometerMayReadHigh "speedometer.may-read-high";
    SpeedometerMayReadLow "speedometer.may-read-low";
    SpeedometerReadsHigh "speedometer.reads-high";
    SpeedometerReadsLow "speedometer.reads-low";
    SpeedometerStandardUnknown "speedometer.standard-unknown";
    StayHeatLamp "stay.heat-lamp";
    StayHouseAssumed "stay.house-assumed";
    ThreadMissingClass "thread.missing-class";
    ThreadMissingSeat "thread.missing-seat";
    ThreadNone "thread.none";
    ThreadSeveral "thread.several";
    ThreadTooShort "thread.too-short";
    ThrustBeyondTyre "thrust.beyond-tyre";
    ThrustLowerGearFaster "thrust.lower-gear-faster";
    ThrustNoneHeld "thrust.none-held";
    ThrustRollingHeld "thrust.rolling-held";
    ThrustTooShort "thrust.too-short";
    ThrustTooTall "thrust.too-tall";
    ThrustTopChanges "thrust.top-changes";
    TorqueMakerAboveBand "torque.maker-above-band";
    TorqueNotTheMakers "torque.not-the-makers";
    TyreAge "tyre.age";
    TyreDateUnlikely "tyre.date-unlikely";
    TyreFrontLoad "tyre.front.load";
    TyreFrontOtherSize "tyre.front.other-size";
    TyreFrontRatingLower "tyre.front.rating-lower";
    TyreFrontRim "tyre.front.rim";
    TyreFrontSpeed "tyre.front.speed";
    TyreFrontTube "tyre.front.tube";
    TyreHeightOpen "tyre.height-open";
    TyreLoadOpen "tyre.load-open";
    TyreMixed "tyre.mixed";
    TyreNearestEquivalent "tyre.nearest-equivalent";
    TyreRearLoad "tyre.rear.load";
    TyreRearOtherSize "tyre.rear.other-size";
    TyreRearRatingLower "tyre.rear.rating-lower";
    TyreRearRim "tyre.rear.rim";
    TyreRearSpeed "tyre.rear.speed";
    TyreRearTube "tyre.rear.tube";
    TyreRimOpen "tyre.rim-open";
    TyreSpeedOpen "tyre.speed-open";
    TyreTubeInTubeless "tyre.tube-in-tubeless";
    TyreTubeOpen "tyre.tube-open";
    TyreTubelessOnSpokes "tyre.tubeless-on-spokes";
    TyreUnknown "tyre.unknown";
    WindowClosed "window.closed";
    WindowOpen "window.open";
    WireNone "wire.none";
    WireOverloaded "wire.overloaded";
    WireTooThin "wire.too-thin";
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    #[test]
    fn each_code_is_written_alike_in_every_place_and_is_like_no_other() {
        let written: BTreeSet<&str> = FindingCode::ALL.iter().map(|code| code.as_str()).collect();
        assert_eq!(written.len(), FindingCode::ALL.len());
        for code in FindingCode::ALL {
            assert_eq!(serde_json::to_value(code).unwrap(), code.as_str());
        }
    }
}
