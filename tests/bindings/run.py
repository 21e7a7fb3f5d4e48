"""The Python binding gives the same answers as Rust: the vectors, every refusal, and a bike carried to another device.

Run by `cargo xtask test --only python`, which installs the wheel first.
"""

import re
import sys
import tempfile
import tomllib
from pathlib import Path

import layshaft
from equations import check_equations
from layshaft import (
    BareAsk,
    Bench,
    BenchError,
    Code,
    EvaluateAsk,
    FitSprockets,
    Formula,
    GearingAsk,
    Identity,
    LoadDemo,
    Moment,
    OpenBike,
    Product,
    ProductKind,
    ReceiveBundle,
    StartBike,
    StartCure,
    Zone,
    ZoneShift,
)

VECTORS = Path(__file__).resolve().parents[2] / "fixtures" / "vectors"
# A Saturday in winter, where local time is an hour ahead.
SATURDAY = Moment(now_ms=1_768_035_600_000, zone=Zone(name="Example", shifts=[ZoneShift(from_ms=0, offset_minutes=60)]))
# The offset of the layout number in the header of an SQLite file (user_version, big-endian).
LAYOUT_AT = 60

checks = 0
faults = []


def check(what, holds, found=None):
    """Counts a check, and keeps it when it fails."""
    global checks
    checks += 1
    if not holds:
        faults.append(f"{what}: {found}")


def in_words(camel, capital=False):
    """chainLinks -> chain_links, or CHAIN_LINKS."""
    words = re.sub(r"(?<!^)(?=[A-Z])", "_", camel)
    return words.upper() if capital else words.lower()


def refusal_of(action):
    """The refusal that an action ends with, or None."""
    try:
        action()
    except BenchError.Refused as error:
        return error.refusal
    return None


def formula(kind, **fields):
    """A formula by its kind: the class of its inputs inside the variant of that name."""
    inputs = getattr(layshaft, kind[0].upper() + kind[1:])(**fields)
    return getattr(Formula, in_words(kind, capital=True))(inputs)


def formula_of(table):
    """The formula of a vector, with the vector's fields."""
    return formula(table["kind"], **{in_words(name): value for name, value in table.items() if name != "kind"})


def check_case(bench, label, case):
    ask = EvaluateAsk(formula=formula_of(case["formula"]))
    if "refuses" in case:
        refusal = refusal_of(lambda: bench.evaluate(ask))
        wanted = case["refuses"]
        same = refusal is not None and refusal.code.name == in_words(wanted["code"], capital=True)
        same = same and refusal.field == wanted.get("field", refusal.field)
        check(label, same, f"{refusal}, wanted {wanted}")
        return
    figures = {figure.name: figure.value for figure in bench.evaluate(ask).figures}
    for name, wanted in case["gives"].items():
        near = name in figures and abs(figures[name] - wanted) <= case["within"]
        check(f"{label} {name}", near, f"{figures.get(name)}, wanted {wanted} within {case['within']}")


def vectors():
    """Every case of every file, with a label."""
    files = sorted(VECTORS.rglob("*.toml"))
    check("vectors are found", files, VECTORS)
    for path in files:
        for case in tomllib.loads(path.read_text(encoding="utf-8"))["case"]:
            yield f"{path.name}: {case['name']}", case


def check_vectors():
    bench = Bench.in_memory()
    for label, case in vectors():
        check_case(bench, label, case)
    check_equations(bench.handbook(BareAsk()).formulas, vectors(), check)


def demo_bench():
    bench = Bench.in_memory()
    bench.load_demo(LoadDemo(), SATURDAY)
    return bench


def start_bike(bench, name):
    return bench.start_bike(StartBike(identity=Identity(name=name, invented=True)), SATURDAY)


def check_refusals(folder):
    """Every code is produced once, and says which field where there is one."""
    bench = demo_bench()
    bundle = bench.bundle(BareAsk(), SATURDAY).bundle
    newer = bytearray(bundle)
    newer[LAYOUT_AT : LAYOUT_AT + 4] = (9999).to_bytes(4, "big")

    def receive(content):
        return bench.receive_bundle(ReceiveBundle(bundle=bytes(content)), SATURDAY)

    def start_cure(**product):
        name = Product(name="Tin", product=ProductKind.PAINT, typical=False, **product)
        return bench.start_cure(StartCure(title="Tank", product=name), SATURDAY)

    def evaluate(kind, **fields):
        return bench.evaluate(EvaluateAsk(formula=formula(kind, **fields)))

    def other_bike():
        fresh = Bench.in_memory()
        start_bike(fresh, "Another")
        return fresh.receive_bundle(ReceiveBundle(bundle=bundle), SATURDAY)

    window = {"recoat_from_hours": 10.0, "recoat_to_hours": 2.0, "full_cure_hours": 48.0, "at_celsius": 20.0}
    cases = [
        (Code.OUT_OF_RANGE, "frontTeeth", lambda: bench.fit_sprockets(FitSprockets(front_teeth=0, rear_teeth=38), SATURDAY)),
        (Code.NOT_A_NUMBER, "celsius", lambda: evaluate("dewPoint", celsius=float("nan"), humidity=50.0)),
        (Code.BAD_TEXT, "name", lambda: start_bike(bench, "  ")),
        (Code.MISSING, "fullCureHours", start_cure),
        (Code.CONFLICT, "recoatToHours", lambda: start_cure(**window)),
        (Code.UNKNOWN, None, lambda: bench.open_bike(OpenBike(bike="no such mark"), SATURDAY)),
        (Code.UNREADABLE, "tyre", lambda: evaluate("tyreDiameter", tyre="round")),
        (Code.NOT_A_BUNDLE, None, lambda: receive(b"this is a shopping list")),
        (Code.DAMAGED_BUNDLE, None, lambda: receive(bundle[: len(bundle) // 2])),
        (Code.NEWER_SCHEMA, None, lambda: receive(newer)),
        (Code.OTHER_BIKE, None, other_bike),
        (Code.STORAGE, None, lambda: Bench.open(str(folder))),
        (Code.UNREADABLE, "content", lambda: Bench.open(str(folder / "language.sqlite"), content="{}")),
    ]
    before = bench.bundle(BareAsk(), SATURDAY).bundle
    for code, field, action in cases:
        refusal = refusal_of(action)
        same = refusal is not None and refusal.code == code and refusal.field == field and str(refusal.message)
        check(f"the refusal {code.name}", same, refusal)
    check("nothing was stored by what was refused", bench.bundle(BareAsk(), SATURDAY).bundle == before, "it was")
    # A request that cannot be understood is ruled out by the types.
    left = set(Code) - {code for code, _, _ in cases} - {Code.BAD_REQUEST}
    check("every code is produced", not left, left)


def check_carrying(folder):
    """What was done is in the file, and a bundle brings it to another device."""
    path = str(folder / "bench.sqlite")
    first = Bench.open(path)
    first.load_demo(LoadDemo(), SATURDAY)
    first.fit_sprockets(FitSprockets(front_teeth=16, rear_teeth=38), SATURDAY)
    wanted = first.gearing(GearingAsk(), SATURDAY)
    bundle = first.bundle(BareAsk(), SATURDAY).bundle
    del first
    check("the file keeps what was done", Bench.open(path).gearing(GearingAsk(), SATURDAY) == wanted)
    other = Bench.in_memory()
    other.receive_bundle(ReceiveBundle(bundle=bundle, as_second_bike=True), SATURDAY)
    if other.shelf(BareAsk(), SATURDAY).open is None:
        other.open_bike(OpenBike(bike=other.shelf(BareAsk(), SATURDAY).bikes[0].id), SATURDAY)
    check("a bundle carries it to another device", other.gearing(GearingAsk(), SATURDAY) == wanted)


def main():
    check_vectors()
    with tempfile.TemporaryDirectory() as folder:
        check_refusals(Path(folder))
        check_carrying(Path(folder))
    for fault in faults:
        print(fault)
    print(f"Python binding: {checks} checks, {len(faults)} failed")
    return 1 if faults or checks < 100 else 0


if __name__ == "__main__":
    sys.exit(main())
