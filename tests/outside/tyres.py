"""Tyre sizes against pint (inches and millimetres) and a reader of their own written as one regular expression."""

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


def main():
    return check_area("tyres", {"tyreSize": tyre_size})


if __name__ == "__main__":
    run("tyres", main)
