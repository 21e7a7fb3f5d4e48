"""Brakes against pint (units all the way), scipy (equilibria solved by root finding, motion by quadrature) and statics."""

import math

import pint
from scipy.integrate import quad
from scipy.optimize import brentq

from vectors import Refused, check_area, run

unit = pint.UnitRegistry()
mm = unit.millimeter


def disc(diameter):
    return math.pi * (diameter * mm / 2) ** 2


def hydraulic_brake(
    leverNewtons, leverRatio, masterMm, pistons, pistonMm, padFriction, effectiveRadiusMm, wheelRadiusMm, massKg
):
    pressure = leverNewtons * unit.newton * leverRatio / disc(masterMm)
    clamp = pressure * pistons * disc(pistonMm)
    # Each pad is pressed with the clamp; both rub.
    torque = sum(padFriction * clamp * effectiveRadiusMm * mm for _pad in ("inner", "outer"))
    force = torque / (wheelRadiusMm * mm)
    return {
        "pressure": pressure.to("bar").magnitude,
        "hydraulicRatio": (pistons * disc(pistonMm) / disc(masterMm)).to("").magnitude,
        "clamp": clamp.to("newton").magnitude,
        "torque": torque.to("newton * meter").magnitude,
        "tyreForce": force.to("newton").magnitude,
        "deceleration": (force / (massKg * unit.kilogram)).to("meter / second ** 2").magnitude,
    }


def caliper_pistons(pistons, opposed):
    if not opposed:
        return {"oneSide": pistons}
    sides = [one_side for one_side in range(pistons + 1) if one_side == pistons - one_side]
    if not sides:
        raise Refused("conflict")
    return {"oneSide": sides[0]}


def lever_travel(leverNewtons, leverRatio, masterMm, pistons, pistonMm, padClearanceMm, hoseMm, hoseSwellMlM):
    pressure = leverNewtons * unit.newton * leverRatio / disc(masterMm)
    swelling = hoseSwellMlM * unit.milliliter / unit.meter / (1000 * unit.pound_force_per_square_inch)
    pads = pistons * disc(pistonMm) * 2 * padClearanceMm * mm
    hose = swelling * hoseMm * mm * pressure

    def at_lever(volume):
        return (volume / disc(masterMm) * leverRatio).to("millimeter").magnitude

    return {
        "leverTravel": at_lever(pads + hose),
        "padTravel": at_lever(pads),
        "hoseTravel": at_lever(hose),
        "volume": (pads + hose).to("milliliter").magnitude,
        "masterTravel": (pads / disc(masterMm)).to("millimeter").magnitude,
    }


def brake_pair(masterMm, pistons, pistonMm, newMasterMm, newPistons, newPistonMm):
    """The force that gives the same clamp, found by root finding; the travel from the volume of one clearance."""

    def clamp(newtons, master, count, piston):
        return newtons / (math.pi * master**2) * count * math.pi * piston**2

    wanted = clamp(100, masterMm, pistons, pistonMm)
    newtons = brentq(lambda force: clamp(force, newMasterMm, newPistons, newPistonMm) - wanted, 1e-6, 1e6, xtol=1e-11)
    old = clamp(1, masterMm, pistons, pistonMm)
    new = clamp(1, newMasterMm, newPistons, newPistonMm)
    return {
        "effort": newtons - 100,
        "travel": 100 * (new / old - 1),
        "hydraulicRatio": old,
        "newHydraulicRatio": new,
    }


def brake_swap(**given):
    """The force that gives the same torque, by root finding; the way of the lever that closes the clearances, by it too."""

    def side(prefix):
        names = ("leverRatio", "hydraulicRatio", "effectiveRadiusMm", "padClearanceMm")
        return [given[prefix + name[0].upper() + name[1:] if prefix else name] for name in names]

    (lever, ratio, radius, gap), (new_lever, new_ratio, new_radius, new_gap) = side(""), side("new")
    wanted = 100 * lever * ratio * radius
    newtons = brentq(lambda force: force * new_lever * new_ratio * new_radius - wanted, 1e-6, 1e6, xtol=1e-11)
    way = [2 * one * two * three for one, two, three in ((lever, ratio, gap), (new_lever, new_ratio, new_gap))]
    return {"effort": newtons - 100, "travel": 100 * (way[1] - way[0]) / way[0]}


def stopping_distance(roadSpeedKmh, deceleration, reactionSeconds):
    """Speed over time, summed up by quadrature."""
    speed = (roadSpeedKmh * unit.kilometer / unit.hour).to("meter / second").magnitude
    reaction, _ = quad(lambda _time: speed, 0, reactionSeconds)
    braking, _ = quad(lambda time: speed - deceleration * time, 0, speed / deceleration)
    return {"distance": reaction + braking, "reaction": reaction, "braking": braking}


def stopping_deceleration(roadSpeedKmh, metres, reactionSeconds):
    if stopping_distance(roadSpeedKmh, 1e9, reactionSeconds)["distance"] >= metres:
        raise Refused("conflict")

    def excess(deceleration):
        return stopping_distance(roadSpeedKmh, deceleration, reactionSeconds)["distance"] - metres

    deceleration = brentq(excess, 1e-3, 1e6, xtol=1e-12)
    gravity = (1 * unit.standard_gravity).to("meter / second ** 2").magnitude
    return {"deceleration": deceleration, "efficiency": 100 * deceleration / gravity}


def brake_efficiency(percent, massKg):
    force = percent / 100 * massKg * unit.kilogram * unit.standard_gravity
    return {
        "force": force.to("newton").magnitude,
        "forceKilograms": force.to("kilogram_force").magnitude,
        "deceleration": (force / (massKg * unit.kilogram)).to("meter / second ** 2").magnitude,
    }


# Directive 93/14/EEC, Annex, appendix 1.
DIVISORS = {"front": 115, "rear": 75, "sidecar": 95, "mopedFront": 90, "mopedRear": 70, "unladen": 65}


def directive_stop(line, roadSpeedKmh):
    if line not in DIVISORS:
        raise Refused("unreadable")
    braking = roadSpeedKmh**2 / DIVISORS[line]

    def excess(deceleration):
        return stopping_distance(roadSpeedKmh, deceleration, 0)["braking"] - braking

    return {
        "braking": braking,
        "longest": 0.1 * roadSpeedKmh + braking,
        "deceleration": brentq(excess, 0.1, 100, xtol=1e-12),
    }


def cam_lever(camDegrees, rodTravelMm, camArmMm, rodNewtons):
    """The end of the lever as a point on a circle; a very long rod keeps its length."""
    rod = 1e12

    def pulled(degrees):
        along, across = camArmMm * math.cos(math.radians(degrees)), camArmMm * math.sin(math.radians(degrees))
        # hypot(rod + along, across) - rod, without taking two large numbers from each other.
        return (2 * rod * along + camArmMm**2) / (math.hypot(rod + along, across) + rod)

    start = pulled(camDegrees)
    if start - pulled(180) < rodTravelMm:
        raise Refused("conflict")
    angle = camDegrees if rodTravelMm == 0 else brentq(lambda now: start - pulled(now) - rodTravelMm, camDegrees, 180)
    # Virtual work: torque times turn is pull times travel.
    step = 1e-4
    travel = camArmMm * (math.cos(math.radians(angle - step)) - math.cos(math.radians(angle + step)))
    return {"angle": angle, "torque": rodNewtons * travel / 1000 / math.radians(2 * step)}


def drum_shoes(padFriction, pivotShare):
    """Moments about the pivot, solved for the normal force on each shoe with a force of one at its tip."""
    friction, pivot, tip = padFriction, pivotShare, 2 * pivotShare

    def shoe(sense):
        # tip * 1 + sense * friction * normal * radius - pivot * normal = 0, radius 1
        if sense * friction >= pivot:
            raise Refused("conflict")
        return friction * brentq(lambda normal: tip + sense * friction * normal - pivot * normal, 0, 1e9, xtol=1e-13)

    leading, trailing = shoe(1), shoe(-1)
    # Bedded in, both linings press alike: the forces at the tips differ, their mean is one.
    drag = brentq(lambda each: each / leading + each / trailing - 2, 0, 1e6, xtol=1e-13)
    return {
        "leading": leading,
        "trailing": trailing,
        "equalForce": leading + trailing,
        "equalWear": 2 * drag,
        "twinLeading": 2 * leading,
    }


# FMVSS 116, least boiling points in °F: new and with 3.7 % water.
FAHRENHEIT = {"dot3": (401, 284), "dot4": (446, 311), "dot5": (500, 356), "dot5.1": (500, 356), "mineral": None}


def brake_fluid(fluid):
    grade = fluid.lower().replace(" ", "")
    if grade not in FAHRENHEIT:
        raise Refused("unreadable")
    if FAHRENHEIT[grade] is None:
        raise Refused("missing")
    dry, wet = (unit.Quantity(value, unit.degF).to("degC").magnitude for value in FAHRENHEIT[grade])
    return {"dry": dry, "wet": wet, "dryFahrenheit": FAHRENHEIT[grade][0], "wetFahrenheit": FAHRENHEIT[grade][1]}


def bleed_through(hoseBoreMm, hoseMm, pistons, pistonMm, masterMm):
    depth = stroke = 10 * mm
    hose, caliper, one = disc(hoseBoreMm) * hoseMm * mm, pistons * disc(pistonMm) * depth, disc(masterMm) * stroke
    through = 2 * (hose + caliper + one)
    return {
        "hose": hose.to("milliliter").magnitude,
        "caliper": caliper.to("milliliter").magnitude,
        "through": through.to("milliliter").magnitude,
        "strokes": math.ceil((through / one).to("").magnitude),
    }


FORMULAS = {
    "hydraulicBrake": hydraulic_brake,
    "caliperPistons": caliper_pistons,
    "leverTravel": lever_travel,
    "brakePair": brake_pair,
    "brakeSwap": brake_swap,
    "stoppingDistance": stopping_distance,
    "stoppingDeceleration": stopping_deceleration,
    "brakeEfficiency": brake_efficiency,
    "directiveStop": directive_stop,
    "camLever": cam_lever,
    "drumShoes": drum_shoes,
    "brakeFluidBoiling": brake_fluid,
    "bleedThrough": bleed_through,
}


def main():
    return check_area("brakes", FORMULAS)


if __name__ == "__main__":
    run("brakes", main)
