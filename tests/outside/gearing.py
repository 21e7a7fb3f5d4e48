"""Gearing, chain and speedometer against scipy (root finding, quadrature), pint (units) and exact fractions."""

import math
from fractions import Fraction

import pint
from scipy.integrate import quad
from scipy.optimize import brentq

from vectors import Refused, check_area, run

unit = pint.UnitRegistry()


def overall_ratio(primaryRatio, gearRatio, frontTeeth, rearTeeth):
    return {"overallRatio": Fraction(primaryRatio) * Fraction(gearRatio) * Fraction(rearTeeth, frontTeeth)}


def road_speed(engineRpm, overallRatio, circumferenceMm):
    turns = engineRpm / overallRatio / unit.minute
    return {"roadSpeed": (turns * circumferenceMm * unit.millimeter).to("km/hour").magnitude}


def engine_speed(roadSpeedKmh, overallRatio, circumferenceMm):
    turns = roadSpeedKmh * unit.kilometer / unit.hour / (circumferenceMm * unit.millimeter)
    return {"engineSpeed": (turns * overallRatio).to("1/minute").magnitude}


def pitch_diameter(teeth, pitchMm):
    """The circle on which a polygon of `teeth` sides, each one pitch long, has its corners."""

    def excess(diameter):
        return teeth * 2 * math.asin(pitchMm / diameter) - 2 * math.pi

    return {"pitchDiameter": brentq(excess, pitchMm * 1.0000001, pitchMm * teeth, xtol=1e-12)}


def belt(front, rear, distance, pitch):
    """Length of the taut loop round two circles, in pitches; arcs by quadrature of their line element, runs by Pythagoras."""
    small, large = sorted((front * pitch / (2 * math.pi), rear * pitch / (2 * math.pi)))
    run_length = math.sqrt(distance**2 - (large - small) ** 2)
    lean = math.atan2(large - small, run_length)
    arc_large, _ = quad(lambda _: large, 0, math.pi + 2 * lean)
    arc_small, _ = quad(lambda _: small, 0, math.pi - 2 * lean)
    return (2 * run_length + arc_large + arc_small) / pitch


def touching(front, rear, pitch):
    return (pitch_diameter(front, pitch)["pitchDiameter"] + pitch_diameter(rear, pitch)["pitchDiameter"]) / 2


def chain_length(frontTeeth, rearTeeth, centreDistanceMm, pitchMm):
    if centreDistanceMm <= touching(frontTeeth, rearTeeth, pitchMm):
        raise Refused("conflict")
    links = belt(frontTeeth, rearTeeth, centreDistanceMm, pitchMm)
    return {"links": links, "nextEven": 2 * math.ceil((links - 1e-6) / 2)}


def centre_distance(frontTeeth, rearTeeth, chainLinks, pitchMm):
    def excess(distance):
        return belt(frontTeeth, rearTeeth, distance, pitchMm) - chainLinks

    least = touching(frontTeeth, rearTeeth, pitchMm)
    if excess(least) >= 0:
        raise Refused("conflict")
    return {"centreDistance": brentq(excess, least, chainLinks * pitchMm, xtol=1e-12)}


def speedometer_factor(circumferenceMm, newCircumferenceMm, finalRatio, newFinalRatio):
    """Turns of the sender for the same way, new over old."""
    way = 1_000_000
    old = Fraction(way) / Fraction(circumferenceMm) * Fraction(finalRatio)
    new = Fraction(way) / Fraction(newCircumferenceMm) * Fraction(newFinalRatio)
    return {"factor": new / old, "shift": 100 * (new / old - 1)}


def allowed_reading(roadSpeedKmh):
    true = Fraction(roadSpeedKmh)
    return {"least": true, "most": true + true / 10 + 4}


SUMS = {
    "overallRatio": overall_ratio,
    "roadSpeed": road_speed,
    "engineSpeed": engine_speed,
    "pitchDiameter": pitch_diameter,
    "chainLength": chain_length,
    "centreDistance": centre_distance,
    "speedometerFactor": speedometer_factor,
    "allowedReading": allowed_reading,
}


def main():
    return check_area("gearing", SUMS)


if __name__ == "__main__":
    run("gearing", main)
