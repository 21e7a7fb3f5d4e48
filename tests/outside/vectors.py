"""Reads the vectors under fixtures/vectors and compares them with an independent computation.

A script hands over, for each kind of sum, a function from its inputs to the figures. A function raises `Refused` where
the sum has no answer for a reason outside the program (geometry, an unreadable code). Cases that the program refuses only
because of a range of its own have nothing outside to be checked against and are left out of the count.
"""

import pathlib
import tomllib

VECTORS = pathlib.Path(__file__).resolve().parents[2] / "fixtures" / "vectors"


class Refused(Exception):
    """The formula has no answer; carries the code that the program should give."""


def check_area(area, formulas):
    """Checks every vector of an area; returns the number of checks, raises AssertionError at the first disagreement."""
    checks = 0
    for file in sorted((VECTORS / area).glob("*.toml")):
        for case in tomllib.loads(file.read_text(encoding="utf-8"))["case"]:
            checks += check_case(f"{file.name}: {case['name']}", case, formulas)
    agree(checks > 0, f"no vectors found for {area}")
    return checks


def check_case(name, case, formulas):
    inputs = dict(case["formula"])
    compute = formulas[inputs.pop("kind")]
    refuses = case.get("refuses")
    if refuses is not None and refuses["code"] in ("outOfRange", "notANumber"):
        return 0
    try:
        figures = compute(**inputs)
    except Refused as refused:
        agree(refuses is not None, f"{name}: the outside computation has no answer ({refused})")
        agree(str(refused) == refuses["code"], f"{name}: refused as {refused}, the vector says {refuses['code']}")
        return 1
    agree(refuses is None, f"{name}: the outside computation gives {figures}, the vector refuses")
    for figure, expected in case["gives"].items():
        got = float(figures[figure])
        agree(abs(got - expected) <= case["within"], f"{name}: {figure} is {got!r}, the vector says {expected!r}")
    return len(case["gives"])


def agree(fine, otherwise):
    """Ends in failure when something does not agree (an `assert` would vanish under `python -O`)."""
    if not fine:
        raise AssertionError(otherwise)


def run(title, main):
    """Runs a script's main and prints the count; a disagreement ends the process with a failure."""
    print(f"{title}: {main()} checks against outside computations agree")
