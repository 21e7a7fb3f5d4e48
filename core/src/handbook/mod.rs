//! Every formula of the trade by name: worked out with numbers given by hand, and shown with its source. No bike needed.
//!
//! The pages compute through the same functions. Scripts ask here, and the vectors under `fixtures/vectors` run through it in
//! every language.

use layshaft_wire::wire;

use crate::error::Refused;
use crate::quantity::{Definition, Evaluate, Figures, FormulaCard};
use crate::{brakes, coating, electrical, fasteners, fluids, gearing, plan, quantity, record, tyres};

/// Makes the enum of all formulas, and what can be asked of each.
macro_rules! formulas {
    ($($area:ident: $($name:ident),*;)*) => {
        /// A formula with its inputs.
        #[wire]
        pub enum Formula {
            $($(
                /// See the type of the same name.
                $name($area::$name),
            )*)*
        }

        impl Formula {
            fn evaluated(&self) -> &dyn Evaluate {
                match self { $($(Self::$name(formula) => formula,)*)* }
            }
        }

        /// Every formula as the handbook shows it, in the order of the list.
        pub fn handbook() -> Vec<FormulaCard> {
            [$($(&$area::$name::DEFINITION),*),*].map(Definition::card).into()
        }
    };
}

formulas! {
    gearing: FinalRatio, OverallRatio, RoadSpeed, EngineSpeed, WantedRatio, TallerRatio, EngineSpeedDrop, EngineSpeedChange, ChainLength, CentreDistance,
        WornCentreDistance, AdjusterUsed, FreeChain, PitchDiameter, HuntingTooth, ChainSizeDimensions, ChainElongation, WornLength, ChainOnSprocket,
        SpeedometerFactor, ShownSpeed, AllowedReading, CorrectorRatio, StandardAir, RollingCoefficient, RoadResistance,
        PowerSpeed, TorqueOfPower, WheelPower, ThrustAtTyre, CubicPower, PeaksPower;
    brakes: HydraulicBrake, CaliperPistons, BrakePair, BrakeSwap, LeverTravel, StoppingDistance, StoppingDeceleration,
        BrakeEfficiency, DirectiveStop, CamLever, DrumShoes, BleedThrough, BrakeFluidBoiling;
    record: OuterDiameter, RollingCircumference;
    tyres: TyreDiameter, ScaledCircumference, TurnsPerKilometre, RideHeight, TyreAgainst, TyreRating, AgeOfTyre;
    record: YearsOfDays;
    electrical: BatteryHours, RestedCharge, GravityCharge, ChargeBetween, DaysToFlat, RechargeHours, LampWatts, LampLight, ConsumerPower, LoadSum, ChargeCurrent,
        ThermalFlasher, CountedFlashes, FlasherShare, LoadResistance, ResistorWatts, NominalOutput, RectifiedWave, DiodeCharge, CoilLampVolts, CoilEmf, CoilCurrent, WireDrop, LeastFuse, WireGauge;
    coating: DewPoint, SurfaceMargin, CureRate, CurePace, CureAge, HoursAtRate, Activation;
    fasteners: StressArea, ScrewLoad, ScrewLoads, AssemblyPreload, PreloadTorque, TighteningTorque, PreloadFromTorque, NutFactorTorque, EngagementRule, ThreadEngagement,
        IdentifyThread;
    fluids: PourSplit, Poured, Premix, TwoPartMix, Thinning, PaintNeeded, PaintForArea, ThinnedFilm;
    record: ShellArea, RimArea, TubeArea;
    plan: TriangularQuantile, LognormalQuantile, LaterOfTwo;
    quantity: PercentChange, Difference;
}

/// Works a formula out, after checking every input against its range.
///
/// ```
/// use layshaft_core::gearing::OverallRatio;
/// use layshaft_core::handbook::{Formula, evaluate};
/// let ratio = OverallRatio { primary_ratio: 3.0, gear_ratio: 1.0, front_teeth: 15, rear_teeth: 45 };
/// assert_eq!(evaluate(&Formula::OverallRatio(ratio)).unwrap().figures[0].value, 9.0);
/// ```
pub fn evaluate(formula: &Formula) -> Result<Figures, Refused> {
    formula.evaluated().evaluate()
}
