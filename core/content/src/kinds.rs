//! The kinds of files, and what stands in each: which fields are texts and which are data.

use crate::part::Part::{Data, List, Names, Pairs, Table, Text, Word, Words};
use crate::part::{Field, Kind, may, need};

const STEPS: Field = need(
    "steps",
    List(&[need("id", Data), need("text", Text), may("caution", Text), may("clockMinutes", Data), may("asks", Data)]),
);

const JOB: &[Field] = &[
    need("title", Text),
    need("stage", Data),
    need("handsOnMinutes", Data),
    need("leastMinutes", Data),
    need("mostMinutes", Data),
    may("splittable", Data),
    may("place", Data),
    may("helper", Data),
    may("noisy", Data),
    may("spots", Data),
    may("air", Data),
    need("tools", Words),
    may("supplies", Words),
    may("needs", List(&[need("id", Data), need("title", Text), may("size", Data), need("ask", Text)])),
    may("follows", Data),
    may("work", Data),
    may("afterWork", Data),
    may("suits", Table(&[may("brake", Data), may("cooling", Data), may("strokes", Data), may("starter", Data)])),
    may("lays", Data),
    may("coats", Data),
    may("wait", Table(&[need("name", Text), may("hours", Data), may("product", Data), may("atMostHours", Data)])),
    STEPS,
];

const PACK: &[Field] =
    &[need("id", Data), need("place", Text), need("title", Text), need("caution", Text), need("item", List(ITEM))];

const PACKAGE: &[Field] = &[need("title", Text), need("purpose", Text), need("jobs", Data)];

const LIMITS: [Field; 3] = [need("unit", Data), may("min", Data), may("max", Data)];

const ITEM: &[Field] = &[
    need("id", Data),
    need("area", Word),
    need("title", Text),
    need("how", Text),
    may("reading", Table(&LIMITS)),
    may("derived", Table(&[need("quantity", Data), need("unit", Data), may("min", Data), may("max", Data)])),
    may("stopper", Data),
    may("caution", Text),
    may("fromYear", Data),
    may("toYear", Data),
    may("aboveCc", Data),
    may("onlyWith", Data),
    may("job", Data),
    need("source", Table(&[need("text", Text), need("standing", Data)])),
];

const KNOWLEDGE: &[Field] = &[
    need("name", Text),
    may("cover", List(&[need("id", Data), need("label", Text), need("minutes", Data)])),
    need("suspect", List(SUSPECT)),
    need("check", List(CHECK)),
];

const SUSPECT: &[Field] = &[
    need("id", Data),
    need("label", Text),
    need("weight", Data),
    // Suspects with the same cure are one repair, in every language.
    need("cure", Word),
    need("try_minutes", Data),
    may("job", Data),
    may("caution", Text),
];

const CHECK: &[Field] = &[
    need("id", Data),
    need("label", Text),
    need("outcomes", Pairs),
    need("minutes", Data),
    may("danger_minutes", Data),
    may("covers", Data),
    may("free_look", Data),
    may("after", Data),
    may("caution", Text),
    need("otherwise", Data),
    need("under", Data),
];

const PRODUCT: &[Field] = &[need("source", Text), need("standing", Data), need("sheet", Table(SHEET))];

const SHEET: &[Field] = &[
    need("name", Text),
    need("product", Data),
    may("touchDryHours", Data),
    may("handleHours", Data),
    may("recoatFromHours", Data),
    may("recoatToHours", Data),
    need("fullCureHours", Data),
    need("atCelsius", Data),
    may("secondHours", Data),
    may("secondCelsius", Data),
    may("lowestCelsius", Data),
    may("highestHumidity", Data),
    may("forbids", Text),
    may("potLifeMinutes", Data),
    may("partsBase", Data),
    may("partsHardener", Data),
    may("thinnerPercent", Data),
    may("solidsPercent", Data),
    may("dryMicrometres", Data),
    may("spreadingRate", Data),
    may("canMl", Data),
];

const PROCESS: &[Field] = &[
    need("title", Text),
    need("part", Data),
    may("putOn", Data),
    need("steps", List(&[need("id", Data), need("name", Text), need("layer", Data), may("product", Data)])),
];

const CIRCUITS: &[Field] = &[
    need("templates", Names),
    need("switches", Names),
    need("positions", Names),
    need("settings", Names),
    need("elements", Names),
];

const LAMPS: &[Field] = &[need(
    "lamp",
    List(&[
        need("id", Data),
        need("lamp", Word),
        need("cap", Data),
        need("systemVolts", Data),
        need("markedWatts", Data),
        need("watts", Data),
        may("lumens", Data),
        need("testVolts", Data),
        need("standing", Data),
    ]),
)];

/// Every kind.
pub(crate) const KINDS: [Kind; 9] = [
    Kind { id: "jobs", folder: "jobs", fields: JOB },
    Kind { id: "endings", folder: "jobs/endings", fields: &[STEPS] },
    Kind { id: "packages", folder: "packages", fields: PACKAGE },
    Kind { id: "packs", folder: "packs", fields: PACK },
    Kind { id: "knowledge", folder: "knowledge", fields: KNOWLEDGE },
    Kind { id: "products", folder: "products", fields: PRODUCT },
    Kind { id: "processes", folder: "processes", fields: PROCESS },
    Kind { id: "lamps", folder: "lamps", fields: LAMPS },
    Kind { id: "circuits", folder: "circuits", fields: CIRCUITS },
];

/// The folders below `fixtures` that are read, for whoever looks whether they changed.
pub fn folders() -> impl Iterator<Item = &'static str> {
    KINDS.iter().map(|kind| kind.folder)
}
