"""The equations of the handbook, as they are printed, give the numbers that the formulas give.

Each equation is read as arithmetic: `x = expression, y = expression, ...`, the later ones said for the first. `x : one = other`
is solved for x: with the answer in it, both sides agree. What is no such equation (a table, a case) is named in `IN_WORDS`, so
that none is skipped unseen.
"""

import math
import re
from statistics import NormalDist

# A table, or a choice between cases.
IN_WORDS = {
    "ageOfTyre",
    "brakeFluidBoiling",
    "caliperPistons",
    "chainOnSprocket",
    "chainSizeDimensions",
    "cureAge",
    "directiveStop",
    "gravityCharge",
    "huntingTooth",
    "identifyThread",
    "laterOfTwo",
    "loadSum",
    "nominalOutput",
    "peaksPower",
    "pourSplit",
    "preloadFromTorque",
    "restedCharge",
    "screwLoads",
    "shellArea",
    "standardAir",
    "thermalFlasher",
    "tighteningTorque",
    "nutFactorTorque",
    "triangularQuantile",
    "tyreAgainst",
    "tyreDiameter",
    "tyreRating",
    "wireDrop",
}
SUPERSCRIPTS = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻", "0123456789-")
FUNCTIONS = {
    "exp": math.exp,
    "ln": math.log,
    "sin": math.sin,
    "cos": math.cos,
    "arctan": math.atan,
    "arcsin": math.asin,
    "arccos": math.acos,
    "sqrt": math.sqrt,
    "abs": abs,
    "ceil": math.ceil,
    "z": NormalDist().inv_cdf,
}
SYMBOL = re.compile(r"[^\W\d][\w′₀-₉]*")


def arithmetic(text):
    """An expression of the handbook as one of Python, its symbols in the form S["x"]."""
    text = re.sub(r"\|([^|]*)\|", r"abs(\1)", text)
    text = re.sub(r"⌈([^⌉]*)⌉", r"ceil(\1)", text)
    text = re.sub(r"[⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+", lambda found: "**" + found[0].translate(SUPERSCRIPTS), text)
    text = text.replace("√", "sqrt").replace("^", "**").replace("·", "*").replace("−", "-").replace("≥", ">=")
    text = re.sub(r"(?<=\d),(?=\d{3})", "", text)

    def named(found):
        word = found[0]
        called = text[found.end() : found.end() + 1] == "(" and word in FUNCTIONS
        return word if called else f'S["{word}"]'

    return SYMBOL.sub(named, text)


def worked_out(equation, numbers):
    """What the first side of an equation comes to; angles that are given are in degrees."""
    parts = [part.split(" = ", 1) for part in equation.split(", ")]
    values = {"π": math.pi} | numbers
    left = dict(parts)
    while left:
        # One of them needs no other that is still left.
        for name, right in left.items():
            try:
                values[name] = eval(arithmetic(right), {"__builtins__": {}} | FUNCTIONS, {"S": values})
            except KeyError:
                continue
            break
        else:
            raise ValueError(f"{equation} does not say what all of its symbols are")
        del left[name]
    return values[parts[0][0]]


def both_sides(equation, numbers, answer):
    """What both sides of an equation come to that is solved for a symbol, with the answer in its place."""
    symbol, rest = equation.split(" : ", 1)
    solved, *parts = rest.split(", ")
    return [
        worked_out(", ".join([f"side = {side}", *parts]), numbers | {symbol: answer}) for side in solved.split(" = ")
    ]


def check_equations(cards, cases, check):
    """Holds every equation against every vector of its formula that has an answer."""
    known = {card.kind: card for card in cards}
    seen = set()
    for label, case in cases:
        card = known.get(case["formula"]["kind"])
        if card is None or card.kind in IN_WORDS or "gives" not in case:
            continue
        numbers = {}
        for given in card.inputs:
            value = case["formula"][given.name]
            if isinstance(value, (int, float)):
                degrees = given.range is not None and given.range.unit.name == "DEGREE"
                numbers[given.symbol] = math.radians(value) if degrees else value
        left = re.split(" [=:] ", card.equation)[0]
        main = next((output for output in card.outputs if output.symbol == left), card.outputs[0])
        if main.name not in case["gives"]:
            continue
        wanted = case["gives"][main.name]
        if " : " in card.equation:
            found, wanted = both_sides(card.equation, numbers, wanted)
        else:
            found = worked_out(card.equation, numbers)
        if main.unit.name == "DEGREE":
            found = math.degrees(found)
        near = abs(found - wanted) <= max(case["within"], 0.002 * abs(wanted))
        check(f"{label}: {card.equation}", near, f"{found}, the vector says {wanted}")
        seen.add(card.kind)
    unread = {kind for kind in known if kind not in IN_WORDS} - seen
    check("every equation that is one is held against a vector", not unread, sorted(unread))
    check("no equation in words is unknown", IN_WORDS <= known.keys(), sorted(IN_WORDS - known.keys()))
