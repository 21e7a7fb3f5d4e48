//! What is said about a mix: its parts, what can hurt, and what to look up on the sheet.

use layshaft_wire::message;

use crate::message::Measure;

/// A sentence about a mix, or a part of it.
#[message("fluids-mix")]
pub(crate) enum MixMessage {
    /// Part: oil.
    Oil,
    /// Part: fuel.
    Fuel,
    /// Part: base.
    Base,
    /// Part: hardener.
    Hardener,
    /// Part: thinner.
    Thinner,
    /// Part: paint.
    Paint,
    /// Oil into fuel.
    Premix { oil: Measure, fuel: Measure },
    /// The ratio, and what it is in per cent.
    PremixParts { parts: Measure, of_fuel: Measure, of_mixture: Measure },
    /// Caution: fuel.
    CautionFuel,
    /// Base and hardener.
    TwoPart { base: Measure, hardener: Measure },
    /// Base, hardener and thinner.
    TwoPartThinned { base: Measure, hardener: Measure, thinner: Measure },
    /// The per cent is meant of base and hardener.
    OfBaseAndHardener,
    /// The per cent is meant of the base.
    OfBase,
    /// Which of both is meant must be read.
    ThinnerMeaning,
    /// By volume is not by weight.
    ByVolume,
    /// Caution: isocyanates.
    CautionIsocyanate,
    /// Thinner into paint.
    Thinning { thinner: Measure, paint: Measure, together: Measure },
    /// Caution: thinner.
    CautionThinner,
    /// Cans for an area.
    Cans { cans: u32, can: Measure, area: Measure, coats: u32 },
    /// From so many cans to so many.
    CansRange { least: u32, most: u32, can: Measure, area: Measure, coats: u32 },
    /// No loss is counted.
    LossUnknown,
    /// Caution: spraying.
    CautionSpray,
    /// Where the volume of a film comes from.
    SourceVolumes,
    /// Where premix comes from.
    SourcePremix,
    /// Where premix holds.
    RangePremix,
    /// Where the shares of a two-part product come from.
    SourceTwoPart,
    /// Where they hold.
    RangeTwoPart,
    /// Where thinning comes from.
    SourceThinning,
    /// Where thinning holds.
    RangeThinning,
    /// Where the paint for an area comes from.
    SourceCover,
    /// Where it holds.
    RangeCover,
}
