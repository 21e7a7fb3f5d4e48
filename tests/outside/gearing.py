"""Gearing, chain, speedometer and thrust against scipy (root finding, quadrature), pint (units), fluids (standard atmosphere) and
exact fractions."""

import importlib
import math
import sys
from fractions import Fraction

import numpy
import pint
from scipy.integrate import quad
from scipy.interpolate import CubicHermiteSpline
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


def speedometer_factor(
    circumferenceMm, newCircumferenceMm, finalRatio, newFinalRatio, speedometerCorrector, newSpeedometerCorrector
):
    """Turns that reach the speedometer for the same way, new over old."""
    way = 1_000_000
    old = Fraction(way) / Fraction(circumferenceMm) * Fraction(finalRatio) * Fraction(speedometerCorrector)
    new = Fraction(way) / Fraction(newCircumferenceMm) * Fraction(newFinalRatio) * Fraction(newSpeedometerCorrector)
    return {"factor": new / old, "shift": 100 * (new / old - 1)}


def allowed_reading(roadSpeedKmh):
    true = Fraction(roadSpeedKmh)
    return {"least": true, "most": true + true / 10 + 4}


def wanted_ratio(engineRpm, roadSpeedKmh, primaryRatio, gearRatio, circumferenceMm):
    """The ratio behind, found by trying: the one that gives the speed wanted."""

    def excess(ratio):
        turns = engineRpm / unit.minute / (primaryRatio * gearRatio * ratio)
        return (turns * circumferenceMm * unit.millimeter).to("km/hour").magnitude - roadSpeedKmh

    return {"finalRatio": brentq(excess, 0.01, 1000, xtol=1e-13)}


def hunting(teeth, chainLinks):
    """Turns the sprocket one turn at a time until the first tooth meets the first link again."""
    turns, link = 1, teeth % chainLinks
    while link != 0:
        turns, link = turns + 1, (link + teeth) % chainLinks
    return {"turns": turns, "divisor": math.gcd(teeth, chainLinks), "chainLoops": Fraction(turns * teeth, chainLinks)}


# Pitch by the rule of the first digit (eighths of an inch); width and roller as the published pages print them.
PRINTED = {
    "415": (4.76, 7.77),
    "420": (6.35, 7.77),
    "428": (7.75, 8.51),
    "520": (6.35, 10.16),
    "525": (7.85, 10.16),
    "530": (9.53, 10.16),
    "532": (9.53, 11.10),
    "630": (9.53, 11.91),
}


def chain_dimensions(chainSize):
    if chainSize not in PRINTED:
        raise Refused("unreadable")
    pitch = (int(chainSize[0]) / 8 * unit.inch).to("mm").magnitude
    width, roller = PRINTED[chainSize]
    return {"pitch": pitch, "innerWidth": width, "roller": roller}


def chain_on_sprocket(chainSize, sprocketSize):
    chain, sprocket = chain_dimensions(chainSize), chain_dimensions(sprocketSize)
    if chain != sprocket:
        raise Refused("conflict")
    return chain


def chain_elongation(measuredMm, pitches, pitchMm):
    """By the mean pitch now against the pitch new."""
    now = Fraction(measuredMm) / pitches
    return {"elongation": 100 * (now - Fraction(pitchMm)) / Fraction(pitchMm)}


def worn_length(pitches, pitchMm, elongationPercent):
    grown = Fraction(pitchMm) + Fraction(pitchMm) * Fraction(elongationPercent) / 100
    return {"length": sum(grown for _ in range(pitches))}


def worn_centre_distance(frontTeeth, rearTeeth, chainLinks, pitchMm, elongationPercent):
    reach = chainLinks * (1 + elongationPercent / 100)

    def excess(distance):
        return belt(frontTeeth, rearTeeth, distance, pitchMm) - reach

    least = touching(frontTeeth, rearTeeth, pitchMm)
    if excess(least) >= 0:
        raise Refused("conflict")
    return {"centreDistance": brentq(excess, least, chainLinks * pitchMm, xtol=1e-12)}


def corrector_ratio(readingFactor):
    """Every test speed asks for its own least and most; the pair is found by trying teeth from few to many."""
    speeds = (40, 80, 120)
    shown = {speed: speed * readingFactor for speed in speeds}
    least = max(speed / shown[speed] for speed in speeds)
    most = min((speed + speed / 10 + 4) / shown[speed] for speed in speeds)
    pairs = ((driving, driven) for driven in range(1, 100) for driving in range(1, 200))
    driving, driven = next(
        (top, bottom) for top, bottom in pairs if least - 1e-9 <= top / bottom <= most + 1e-9
    )
    return {"toTrue": 100 / (100 * readingFactor), "bandFrom": least, "bandTo": most, "driving": driving, "driven": driven}


def gear_drop(engineRpm, gearRatio, nextGearRatio):
    """The gearbox output turns on at the same speed."""
    output = Fraction(engineRpm) / Fraction(gearRatio)
    return {"engineSpeed": output * Fraction(nextGearRatio)}


def standard_air(altitudeMetres):
    """The library is called like the script for fillings beside this one, so it is looked for past this folder."""
    here, sys.path[:] = list(sys.path), [folder for folder in sys.path if not folder.endswith("outside")]
    try:
        library = importlib.import_module("fluids")
    finally:
        sys.path[:] = here
    return {"airDensity": library.ATMOSPHERE_1976(altitudeMetres).rho}


def rolling(tyreBar, roadSpeedKmh):
    return {"coefficient": numpy.polynomial.Polynomial([0.0085 + 0.018 / tyreBar, 0, 1.59e-6 / tyreBar])(roadSpeedKmh)}


def forces(roadSpeedKmh, massKg, rollingCoefficient, dragAreaM2, airDensity, gradePercent, headWindKmh):
    weight = massKg * unit.kilogram * unit.standard_gravity
    along, across = gradePercent / math.hypot(gradePercent, 100), 100 / math.hypot(gradePercent, 100)
    wind = ((roadSpeedKmh + headWindKmh) * unit.kilometer / unit.hour).to("meter/second")
    pressure = airDensity * unit.kilogram / unit.meter**3 * wind**2 / 2
    return {
        "rolling": (rollingCoefficient * weight * across).to("newton").magnitude,
        "slope": (weight * along).to("newton").magnitude,
        "air": math.copysign((pressure * dragAreaM2 * unit.meter**2).to("newton").magnitude, wind.magnitude),
    }


def road_load(roadSpeedKmh, **load):
    parts = forces(roadSpeedKmh, **load)
    power = sum(parts.values()) * unit.newton * roadSpeedKmh * unit.kilometer / unit.hour
    return {**parts, "total": sum(parts.values()), "wheelPower": power.to("kilowatt").magnitude}


def power_speed(wheelKw, **load):
    def spare(kmh):
        return wheelKw - road_load(kmh, **load)["wheelPower"]

    if spare(400) >= 0:
        raise Refused("conflict")
    kmh = brentq(spare, 1, 400, xtol=1e-11)
    return {"roadSpeed": kmh, **forces(kmh, **load)}


def thrust(crankNm, overallRatio, driveEfficiency, wheelRadiusMm):
    """By the balance of power at any engine speed: what reaches the wheel is thrust times road speed."""
    crank = 5000 * unit.revolution / unit.minute
    power = crankNm * unit.newton * unit.meter * crank.to("radian/second") * driveEfficiency
    speed = crank.to("radian/second") / overallRatio * wheelRadiusMm * unit.millimeter
    return {"thrust": (power / speed).to("newton").magnitude}


def cubic_power(engineRpm, peakPowerKw, peakPowerRpm):
    law = numpy.polynomial.Polynomial([0, 1, 1, -1])
    power = peakPowerKw * unit.kilowatt * law(engineRpm / peakPowerRpm)
    torque = power / (engineRpm * unit.revolution / unit.minute).to("radian/second")
    return {"power": power.to("kilowatt").magnitude, "torque": torque.to_base_units().magnitude}


def peaks_power(engineRpm, peakPowerKw, peakPowerRpm, peakTorqueNm, peakTorqueRpm):
    """The described shape, drawn with a spline of scipy; no engine has these peaks where one excludes the other."""
    turning = 2 * math.pi / 60
    end = peakPowerKw * 1000 / (peakPowerRpm * turning)
    there = peakTorqueNm * peakTorqueRpm * turning / 1000
    if peakTorqueRpm >= peakPowerRpm or peakTorqueNm < 0.99 * end or there > 1.01 * peakPowerKw:
        raise Refused("conflict")
    if engineRpm > peakPowerRpm:
        power = peakPowerKw * (1 - ((engineRpm - peakPowerRpm) / (0.45 * peakPowerRpm)) ** 2)
    elif engineRpm < peakTorqueRpm:
        share = 1 - 0.35 * ((peakTorqueRpm - engineRpm) / peakTorqueRpm) ** 2
        power = share * peakTorqueNm * engineRpm * turning / 1000
    else:
        steepest = 3 * (end - peakTorqueNm) / (peakPowerRpm - peakTorqueRpm)
        slopes = [0, max(-end / peakPowerRpm, steepest)]
        spline = CubicHermiteSpline([peakTorqueRpm, peakPowerRpm], [peakTorqueNm, end], slopes)
        power = min(peakPowerKw, float(spline(engineRpm)) * engineRpm * turning / 1000)
    return {"power": power, "torque": power * 1000 / (engineRpm * turning)}


def taller_ratio(finalRatio, tallerPercent):
    """The ratio at which the way of one engine turn is longer by the share."""
    way = 1 / Fraction(finalRatio) * (100 + Fraction(tallerPercent)) / 100
    return {"finalRatio": 1 / way}


def engine_speed_change(overallRatio, newOverallRatio, circumferenceMm, newCircumferenceMm):
    before = engine_speed(100, overallRatio, circumferenceMm)["engineSpeed"]
    after = engine_speed(100, newOverallRatio, newCircumferenceMm)["engineSpeed"]
    return {"change": 100 * (after - before) / before}


def adjuster_used(centreDistanceMm, adjusterFromMm, adjusterToMm):
    return {"used": numpy.interp(centreDistanceMm, [adjusterFromMm, adjusterToMm], [0, 100])}


def free_chain(chainLinks, linksExact, pitchMm):
    return {"free": chainLinks * pitchMm - linksExact * pitchMm}


def shown_speed(roadSpeedKmh, speedometerOverPercent, readingFactor):
    as_made = Fraction(roadSpeedKmh) + Fraction(roadSpeedKmh) * Fraction(speedometerOverPercent) / 100
    return {"shown": as_made * Fraction(readingFactor)}


def torque_of_power(powerKw, engineRpm):
    torque = powerKw * unit.kilowatt / (engineRpm * unit.revolution / unit.minute).to("radian/second")
    return {"torque": torque.to_base_units().magnitude}


FORMULAS = {
    "finalRatio": lambda frontTeeth, rearTeeth: {"finalRatio": Fraction(rearTeeth, frontTeeth)},
    "tallerRatio": taller_ratio,
    "engineSpeedChange": engine_speed_change,
    "adjusterUsed": adjuster_used,
    "freeChain": free_chain,
    "shownSpeed": shown_speed,
    "torqueOfPower": torque_of_power,
    "wheelPower": lambda powerKw, driveEfficiency: {"wheelPower": Fraction(powerKw) * Fraction(driveEfficiency)},
    "peaksPower": peaks_power,
    "wantedRatio": wanted_ratio,
    "huntingTooth": hunting,
    "chainSizeDimensions": chain_dimensions,
    "chainOnSprocket": chain_on_sprocket,
    "chainElongation": chain_elongation,
    "wornLength": worn_length,
    "wornCentreDistance": worn_centre_distance,
    "correctorRatio": corrector_ratio,
    "engineSpeedDrop": gear_drop,
    "standardAir": standard_air,
    "rollingCoefficient": rolling,
    "roadResistance": road_load,
    "powerSpeed": power_speed,
    "thrustAtTyre": thrust,
    "cubicPower": cubic_power,
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
    return check_area("gearing", FORMULAS)


if __name__ == "__main__":
    run("gearing", main)
