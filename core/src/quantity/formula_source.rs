//! Where formulas come from that belong to no area alone, or to a rule that is named in a word.

use layshaft_wire::message;

/// A citation beside a formula.
#[message("formula-source")]
pub(crate) enum FormulaSource {
    /// Arithmetic.
    Arithmetic,
    /// Charge over current.
    ChargeOverCurrent,
    /// Definition.
    Definition,
    /// A fuse carries 0.75 to 0.8 of its rating for long.
    FuseRating,
    /// Geometry.
    Geometry,
    /// Handbook rules, which disagree.
    HandbookRules,
    /// Mean year of the Julian calendar.
    JulianYear,
    /// Mean over the whole time.
    MeanOverTime,
    /// Handbook rule; K about 0.20 dry and 0.15 to 0.16 oiled.
    NutFactor,
    /// Ohm's law.
    Ohm,
    /// Convention of paint sheets.
    PaintSheets,
    /// Pappus' theorem.
    Pappus,
    /// Convention of two-stroke premix, parts by volume: reference.com “50:1 oil gas ratio”.
    PremixConvention,
    /// Charge over current; 1.2 for what a flooded battery loses is common practice.
    RechargePractice,
    /// Table restated on many pages.
    RestatedTable,
    /// Table restated on many pages; usual correction for temperature.
    RestatedTableCorrected,
    /// A speedometer counts turns of its sender.
    SenderTurns,
    /// Arithmetic; both conventions are met on sheets.
    SheetConventions,
    /// A straight line between two points.
    StraightLine,
    /// Definition of stress.
    Stress,
    /// Sum of powers.
    SumOfPowers,
    /// FED-STD-H28 form; published example M10 × 1.5 in aluminium.
    ThreadShear,
    /// ISO 261/262, JIS, ASME B1.1, BS 84, BS 811; the limits are common practice.
    ThreadStandards,
    /// UN Regulation No. 75, paragraph 6.1.2.
    TyreRegulation,
    /// ASTM B258.
    WireGauge,
}
