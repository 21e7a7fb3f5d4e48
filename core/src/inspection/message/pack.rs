//! What is refused of an answer to an item, and of a pack that somebody wrote.

use layshaft_wire::message;

use crate::message::{Measure, Message};

/// Why an answer or a written pack is refused, and the fields that are named.
#[message("inspection-pack")]
pub(crate) enum PackMessage {
    /// Field: the answer.
    Answer,
    /// Field: the remark.
    Remark,
    /// Neither a word nor a reading.
    ChooseWord,
    /// The same, where a reading will do.
    ChooseWordOrReading { unit: Message },
    /// A unit where no number stands before it.
    UnitFlashes,
    /// A unit where no number stands before it.
    UnitPercent,
    /// A unit where no number stands before it.
    UnitMinutes,
    /// A reading of an item that takes none.
    InWords { item: String },
    /// A reading of an item that was not checked or does not apply.
    MeasuredAndNot { value: Measure },
    /// Field: the id of the pack.
    Id,
    /// Field: the place of the pack.
    Place,
    /// Field: the title of the pack.
    Title,
    /// Field: the caution of the pack.
    Caution,
    /// Field: the id of an item.
    ItemId,
    /// Field: one of an item, as the file calls it.
    ItemField { item: String, field: String },
    /// Field: the id of a derived quantity.
    QuantityId,
    /// There is no item.
    NoItem,
    /// An item stands twice.
    ItemTwice { item: String },
    /// The years of an item are the wrong way round.
    YearsSwapped { item: String, from: Measure, to: Measure },
    /// An item is judged in two ways.
    TwoMeasures { item: String },
    /// An item with a reading has no limit.
    NoLimit { item: String },
    /// The least is above the most.
    LimitSwapped { item: String, least: Measure, most: Measure },
    /// An id holds signs that it may not.
    BadId { id: String },
}
