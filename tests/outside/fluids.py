"""Filling and mixing against exact fractions, linear equations (numpy), pint (US measures, films) and scipy (areas)."""

import math
from fractions import Fraction

import numpy
import pint
from scipy.integrate import quad

from vectors import check_area, run

unit = pint.UnitRegistry()


def pour_split(litres, cupMl):
    """Cup after cup until nothing is left."""
    left, full = round(Fraction(str(litres)) * 1000), 0
    while left >= cupMl:
        left, full = left - cupMl, full + 1
    return {"fullCups": full, "last": left, "pours": full + (left > 0)}


def poured(times, cupMl, lastMl):
    """Cup after cup into a can."""
    can = Fraction(0)
    for _ in range(times):
        can += Fraction(cupMl)
    return {"full": can, "together": can + Fraction(lastMl)}


def paint_for_area(squareMetres, coats, spreadingRate, lossPercent):
    """What lands on the part is what is left of the paint."""
    landed = squareMetres * unit.meter**2 * coats / (spreadingRate * unit.meter**2 / unit.liter)
    return {"millilitres": (landed * 100 / (100 - lossPercent)).to("milliliter").magnitude}


def premix(fuelLitres, partsFuel):
    fuel = fuelLitres * unit.liter
    oil = fuel / partsFuel
    return {
        "oil": oil.to("milliliter").magnitude,
        "ofFuel": (100 * oil / fuel).to("").magnitude,
        "ofMixture": (100 * oil / (fuel + oil)).to("").magnitude,
    }


def two_part(readyMl, partsBase, partsHardener, thinnerPercent, thinnerOfBase):
    """Three equations: the ratio, the thinner, the sum."""
    share = thinnerPercent / 100
    rows = [
        [partsHardener, -partsBase, 0],
        [share, 0 if thinnerOfBase else share, -1],
        [1, 1, 1],
    ]
    base, hardener, thinner = numpy.linalg.solve(numpy.array(rows, dtype=float), numpy.array([0, 0, readyMl], dtype=float))
    return {"base": base, "hardener": hardener, "thinner": thinner}


def thinning(paintMl, thinnerPercent):
    thinner = Fraction(paintMl) * Fraction(thinnerPercent) / 100
    return {"thinner": thinner, "together": Fraction(paintMl) + thinner}


def paint_needed(squareMetres, coats, solidsPercent, dryMicrometres, lossPercent, canMl):
    area, dry = squareMetres * unit.meter**2, dryMicrometres * unit.micrometer
    wet = dry / (solidsPercent / 100)
    on_the_part = area * wet * coats
    bought = on_the_part / (1 - lossPercent / 100)
    return {
        "wetFilm": wet.to("micrometer").magnitude,
        "spreadingRate": (1 / wet).to("meter ** 2 / liter").magnitude,
        "millilitres": bought.to("milliliter").magnitude,
        "cans": math.ceil((bought / (canMl * unit.milliliter)).to("").magnitude - 1e-6),
    }


def shell_area(lengthMm, girthMm, bothSides, count):
    """An unrolled sheet, each face once."""
    face = (lengthMm * unit.millimeter) * (girthMm * unit.millimeter)
    return square_metres(face * (1 + bothSides) * count)


def rim_area(diameterMm, girthMm, count):
    """A section swept round the axle: quadrature of girth times radius over the turn (surface of revolution)."""
    area, _ = quad(lambda _turn: girthMm * diameterMm / 2, 0.0, 2 * math.pi)
    return square_metres(area * unit.millimeter**2 * count)


def tube_area(diameterMm, lengthMm, count):
    """A tube as a prism of very many faces; at 200,000 of them it is short by less than a billionth."""
    faces = 200_000
    around = faces * diameterMm * math.sin(math.pi / faces)
    return square_metres(around * lengthMm * unit.millimeter**2 * count)


def square_metres(area):
    return {"area": area.to("meter ** 2").magnitude}


def thinned_film(solidsPercent, thinnerPercent, dryMicrometres):
    """A litre of paint with its thinner poured out over an area: what of it is solid stays."""
    paint = 1 * unit.liter
    solid, poured = paint * solidsPercent / 100, paint * (1 + thinnerPercent / 100)
    area = solid / (dryMicrometres * unit.micrometer)
    return {
        "wetFilm": (poured / area).to("micrometer").magnitude,
        "solids": (100 * solid / poured).to("").magnitude,
    }


FORMULAS = {
    "pourSplit": pour_split,
    "poured": poured,
    "paintForArea": paint_for_area,
    "premix": premix,
    "twoPartMix": two_part,
    "thinning": thinning,
    "paintNeeded": paint_needed,
    "shellArea": shell_area,
    "rimArea": rim_area,
    "tubeArea": tube_area,
    "thinnedFilm": thinned_film,
}


def main():
    return check_area("fluids", FORMULAS)


if __name__ == "__main__":
    run("fluids", main)
