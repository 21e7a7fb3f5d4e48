"""Tyres against pint (inches and millimetres), a reader of their own written as one regular expression, and the calendar.

Loads are held against the preferred numbers of series R 80 (ISO 3, from memory), which the load index counts from 100 kg at
index 28. Weeks are those that strptime counts from the first Sunday.
"""

import datetime
import math
import re

import pint

from vectors import Refused, check_area, run

unit = pint.UnitRegistry()

CODE = re.compile(
    r"""(?:(?P<mm>\d+)\s*/\s*(?P<metric>\d+)
       | (?P<whole>\d+)(?:[.,](?P<decimals>\d{1,2})|\s+(?P<fraction>[13]/[24]))(?:\s*/\s*(?P<height>\d+))?
       | M(?P<letter>[HJMNPRTUV])(?P<alpha>\d+))
       (?:\s*-\s*|\s*[A-Z]{1,2}\s*|\s+)(?P<rim>\d+)
       (?:\s*M/C)?(?:\s*\(?\d+\s*[BFGJ-NP-WYZH]\)?)?(?:\s*\d+PR)?(?:\s*(?:TL|TT))?\s*$""",
    re.VERBOSE,
)

WIDTHS = {"H": [80], "J": [90], "M": [100], "N": [110], "P": [110, 120], "R": [120], "T": [130], "U": [140], "V": [150]}


def section_heights(part):
    """The heights that sources give, as pint quantities."""
    if part["mm"]:
        return [int(part["mm"]) * unit.millimeter * int(part["metric"]) / 100]
    if part["letter"]:
        return [width * unit.millimeter * int(part["alpha"]) / 100 for width in WIDTHS[part["letter"]]]
    inches = float(f"{part['whole']}.{part['decimals'] or 0}")
    if part["fraction"]:
        above, below = part["fraction"].split("/")
        inches += int(above) / int(below)
    if part["height"]:
        ratios = [int(part["height"])]
    else:
        low_section = round(inches * 100) % 100 in (10, 60)
        ratios = [82, 90] if low_section else [100]
    return [inches * unit.inch * ratio / 100 for ratio in ratios]


def tyre_size(tyre):
    if not tyre.strip():
        raise Refused("badText")
    read = CODE.match(tyre.strip())
    if read is None:
        raise Refused("unreadable")
    part = read.groupdict()
    rim = int(part["rim"]) * unit.inch
    diameters = [(rim + 2 * height).to("mm").magnitude for height in section_heights(part)]
    middle = sum(diameters) / len(diameters)
    return {
        "outerDiameter": middle,
        "circumference": math.pi * middle,
        "outerDiameterLeast": min(diameters),
        "outerDiameterMost": max(diameters),
    }


def tyre_change(tyre, newTyre):
    before, after = tyre_size(tyre), tyre_size(newTyre)
    # The same open code on both sides is open in the same way.
    same = CODE.match(tyre).group("rim") == CODE.match(newTyre).group("rim") and before == after
    least, most = ("outerDiameterLeast", "outerDiameterMost")
    kilometre = (1 * unit.kilometer).to("mm").magnitude
    turns, new_turns = kilometre / before["circumference"], kilometre / after["circumference"]
    return {
        "rideHeight": (after["outerDiameter"] - before["outerDiameter"]) / 2,
        "rideHeightLeast": 0.0 if same else (after[least] - before[most]) / 2,
        "rideHeightMost": 0.0 if same else (after[most] - before[least]) / 2,
        "diameterChange": 100 * (after["outerDiameter"] / before["outerDiameter"] - 1),
        "turnsPerKm": turns,
        "newTurnsPerKm": new_turns,
        # A sender that counts turns shows more the more turns there are.
        "speedometer": 100 * (new_turns / turns - 1),
    }


R80 = """1.00 1.03 1.06 1.09 1.12 1.15 1.18 1.22 1.25 1.28 1.32 1.36 1.40 1.45 1.50 1.55 1.60 1.65 1.70 1.75 1.80 1.85 1.90 1.95
2.00 2.06 2.12 2.18 2.24 2.30 2.36 2.43 2.50 2.58 2.65 2.72 2.80 2.90 3.00 3.07 3.15 3.25 3.35 3.45 3.55 3.65 3.75 3.87 4.00
4.12 4.25 4.37 4.50 4.62 4.75 4.87 5.00 5.15 5.30 5.45 5.60 5.80 6.00 6.15 6.30 6.50 6.70 6.90""".split()

SPEEDS = {"B": 50, "F": 80, "G": 90, "J": 100, "K": 110, "L": 120, "M": 130, "N": 140, "P": 150, "Q": 160, "R": 170, "S": 180}
SPEEDS |= {"T": 190, "U": 200, "H": 210, "V": 240, "W": 270, "Y": 300}


def tyre_rating(tyre):
    service = re.search(r"\s\(?(\d+)\s*([A-Z])\)?(?:\s|$)", tyre)
    inside = re.match(r"[\d.,/\s]+([A-Z])\s*[DBR]?\s*\d", tyre)
    figures = {}
    if service:
        figures["load"] = round(100 * float(R80[int(service.group(1)) - 28]))
    if service or inside:
        figures["speed"] = SPEEDS[service.group(2) if service else inside.group(1)]
    if not figures:
        raise Refused("missing")
    return figures


def tyre_age(dateCode, day):
    code = dateCode.split()[-1]
    figures = code.rstrip("◁")
    if len(figures) not in (3, 4):
        raise Refused("unreadable")
    week, year = int(figures[:2]), int(figures[2:])
    if len(figures) == 4:
        years = [2000 + year]
    else:
        decades = [1990] if code != figures else [2000, 1990, 1980, 1970]
        years = [decade + year for decade in decades if 1971 <= decade + year and (decade + year, week) <= (2000, 26)]
    asked = datetime.date.fromisoformat(day)
    # %U counts weeks from the first Sunday; %w 0 is that Sunday.
    made = [datetime.datetime.strptime(f"{year} {week} 0", "%Y %U %w").date() for year in years]
    made = [first for first in made if first <= asked]
    if not made:
        raise Refused("conflict")
    julian_year = (1 * unit.julian_year).to("day").magnitude
    ages = [(asked - first).days / julian_year for first in made]
    return {"leastYears": min(ages), "mostYears": max(ages), "latestYear": max(first.year for first in made), "decades": len(made)}


def outer_diameter(rimCode, heightMm):
    return {"outerDiameter": (rimCode * unit.inch + 2 * heightMm * unit.millimeter).to("mm").magnitude}


def scaled(circumferenceMm, diameterMm, newDiameterMm):
    """A tyre that is squeezed by the same share."""
    squeezed = circumferenceMm / (math.pi * diameterMm)
    return {"circumference": squeezed * math.pi * newDiameterMm}


FORMULAS = {
    "tyreDiameter": tyre_size,
    "outerDiameter": outer_diameter,
    "rollingCircumference": lambda diameterMm: {"circumference": 2 * math.pi * (diameterMm / 2)},
    "scaledCircumference": scaled,
    "turnsPerKilometre": lambda circumferenceMm: {
        "turnsPerKm": (1 * unit.kilometer / (circumferenceMm * unit.millimeter)).to("").magnitude
    },
    "rideHeight": lambda diameterMm, newDiameterMm: {"rideHeight": newDiameterMm / 2 - diameterMm / 2},
    "yearsOfDays": lambda days: {"years": (days * unit.day).to("julian_year").magnitude},
    "tyreAgainst": tyre_change,
    "tyreRating": tyre_rating,
    "ageOfTyre": tyre_age,
}


def main():
    return check_area("tyres", FORMULAS)


if __name__ == "__main__":
    run("tyres", main)
