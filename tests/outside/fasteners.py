"""Fasteners against the geometry of the thread profile, von Mises with torsion, and the wedge that a thread is.

VDI 2230 prints rounded forms of statics (0.16 for 1/(2π), 0.58 for 1/(2 cos 30°), 1.155 for 1/cos 30°, small angles). The
vectors are met with its constants, the preload by root finding; the unrounded wedge must lie within one per cent of them.
"""

import math

import pint
from scipy.optimize import brentq

from vectors import Refused, agree, check_area, run

unit = pint.UnitRegistry()

# Of each class up to 16 mm and above: proof stress, tensile strength, yield, MPa (ISO 898-1).
CLASSES = {
    "4.6": ((225, 400, 240),) * 2,
    "8.8": ((580, 800, 640), (600, 830, 660)),
    "10.9": ((830, 1040, 940),) * 2,
    "12.9": ((970, 1220, 1100),) * 2,
}
# Seat of the hexagon head and medium hole, mm.
SEATS = {
    6: (8.88, 6.6),
    8: (11.63, 9.0),
    10: (14.63, 11.0),
    12: (16.63, 13.5),
    14: (19.37, 15.5),
    16: (22.49, 17.5),
    20: (28.19, 22.0),
}
# Inch and metric threads for naming: diameter, mm, turns per inch or pitch, flank angle.
INCH = 25.4
NAMED = (
    [(float(d), float(p), 60) for d, p in ((3, 0.5), (4, 0.7), (5, 0.8), (6, 1), (7, 1), (8, 1.25), (10, 1.5), (12, 1.75))]
    + [(float(d), float(p), 60) for d, p in ((14, 2), (16, 2), (18, 2.5), (20, 2.5), (8, 1), (10, 1), (10, 1.25))]
    + [(float(d), float(p), 60) for d, p in ((12, 1.25), (12, 1.5), (14, 1.25), (14, 1.5), (16, 1.5), (18, 1.5), (20, 1.5))]
    + [(float(d), float(p), 60) for d, p in ((3, 0.6), (4, 0.75), (5, 0.9))]
    + [(x / 16 * INCH, INCH / n, 60) for x, n in ((4, 20), (5, 18), (6, 16), (7, 14), (8, 13), (9, 12), (10, 11))]
    + [(x / 16 * INCH, INCH / n, 60) for x, n in ((4, 28), (5, 24), (6, 24), (7, 20), (8, 20), (9, 18), (10, 18))]
    + [(x * INCH, INCH / n, 60) for x, n in ((0.138, 32), (0.164, 32), (0.164, 36), (0.19, 24), (0.19, 32))]
    + [(x / 16 * INCH, INCH / n, 55) for x, n in ((2, 40), (3, 24), (4, 20), (5, 18), (6, 16), (7, 14), (8, 12), (10, 11))]
    + [(x / 16 * INCH, INCH / n, 55) for x, n in ((3, 32), (4, 26), (5, 22), (6, 20), (7, 18), (8, 16), (9, 16), (10, 14))]
    + [(x / 16 * INCH, INCH / 26, 60) for x in (4, 5, 6, 7, 8)]
)


def profile(diameter, pitch):
    """Flank and core diameter from the 60° triangle: its height, three eighths and seventeen twenty-fourths of it."""
    height = pitch * math.sqrt(3) / 2
    return diameter - 2 * 3 / 8 * height, diameter - 2 * 17 / 24 * height


def size(diameter, pitch):
    flank, core = profile(diameter, pitch)
    if core < diameter / 2:
        raise Refused("conflict")
    return flank, core


def area(diameter, pitch):
    flank, core = size(diameter, pitch)
    return math.pi * ((flank + core) / 4) ** 2


def stresses(name, diameter):
    if name not in CLASSES:
        raise Refused("unreadable")
    return CLASSES[name][0 if diameter <= 16 else 1]


def stress_area(diameterMm, pitchMm):
    flank, core = size(diameterMm, pitchMm)
    return {"stressArea": area(diameterMm, pitchMm), "flankDiameter": flank, "coreDiameter": core}


def screw_loads(diameterMm, pitchMm, propertyClass):
    proof, tensile, _ = stresses(propertyClass, diameterMm)
    stress = unit.megapascal * area(diameterMm, pitchMm) * unit.millimeter**2
    return {
        "proofLoad": (proof * stress).to("newton").magnitude,
        "breakingLoad": (tensile * stress).to("newton").magnitude,
    }


def seat(diameter):
    if diameter not in SEATS:
        raise Refused("missing")
    return sum(SEATS[diameter]) / 2


def wedge(diameter, pitch, friction):
    """Torque in the thread for a newton of preload, N mm: a wedge of the pitch with flanks of 60°, nothing rounded."""
    flank, _ = profile(diameter, pitch)
    slope, angle = math.atan(pitch / (math.pi * flank)), math.atan(friction / math.cos(math.radians(30)))
    return flank / 2 * math.tan(slope + angle)


def printed(diameter, pitch, friction):
    """The same as VDI 2230 prints it for the torque."""
    return 0.16 * pitch + 0.58 * profile(diameter, pitch)[0] * friction


def printed_twist(diameter, pitch, friction):
    """The same as VDI 2230 prints it for the stress."""
    flank, _ = profile(diameter, pitch)
    return flank / 2 * (pitch / (math.pi * flank) + 1.155 * friction)


def preload_at_yield(diameter, pitch, yields, twist):
    """Preload that together with the torsion of the thread reaches 90 % of yield, after von Mises."""
    section = area(diameter, pitch)
    core = 2 * math.sqrt(section / math.pi)

    def excess(preload):
        # Fully plastic torsion: shear the same all over the section.
        shear = preload * twist / (math.pi * core**3 / 12)
        return math.sqrt((preload / section) ** 2 + 3 * shear**2) - 0.9 * yields

    return brentq(excess, 1, 1e7, xtol=1e-9)


def tightening_torque(diameterMm, pitchMm, propertyClass, friction):
    _, _, yields = stresses(propertyClass, diameterMm)
    size(diameterMm, pitchMm)
    head = friction * seat(diameterMm) / 2
    results = []
    for twist, torque in ((printed_twist, printed), (wedge, wedge)):
        preload = preload_at_yield(diameterMm, pitchMm, yields, twist(diameterMm, pitchMm, friction))
        results.append((preload, preload * (torque(diameterMm, pitchMm, friction) + head) / 1000))
    near(results[0], results[1], f"M{diameterMm:g} x {pitchMm:g}")
    return {"preload": results[0][0], "torque": results[0][1]}


def preload_from_torque(diameterMm, pitchMm, torqueNm, friction):
    size(diameterMm, pitchMm)
    head = friction * seat(diameterMm) / 2

    def preload(torque):
        per_newton = (torque(diameterMm, pitchMm, friction) + head) / 1000
        return brentq(lambda newtons: newtons * per_newton - torqueNm, 1, 1e7, xtol=1e-9)

    near([preload(printed)], [preload(wedge)], f"M{diameterMm:g} x {pitchMm:g}")
    return {"preload": preload(printed)}


def assembly_preload(diameterMm, pitchMm, stressMpa, friction):
    """With torsion over tension from the twist, for a section that yields all over."""
    section = area(diameterMm, pitchMm)
    core = 2 * math.sqrt(section / math.pi)
    twist = printed_twist(diameterMm, pitchMm, friction)
    return {
        "preload": preload_at_yield(diameterMm, pitchMm, stressMpa, twist),
        "stressArea": section,
        "torsion": twist / (math.pi * core**3 / 12) * section,
    }


def preload_torque(loadNewtons, diameterMm, pitchMm, bearingMm, holeMm, friction):
    head = friction * (bearingMm + holeMm) / 2 / 2
    results = [loadNewtons * (torque(diameterMm, pitchMm, friction) + head) / 1000 for torque in (printed, wedge)]
    near(results[:1], results[1:], f"M{diameterMm:g} x {pitchMm:g}")
    return {"torque": results[0], "flankDiameter": profile(diameterMm, pitchMm)[0]}


def engagement_rule(diameters, diameterMm, fine):
    return {"engagement": diameters * diameterMm * (5 / 4 if fine else 1)}


def screw_load(stressAreaMm2, stressMpa):
    load = stressAreaMm2 * unit.millimeter**2 * stressMpa * unit.megapascal
    return {"load": load.to("newton").magnitude}


def near(with_constants, from_statics, name):
    for one, other in zip(with_constants, from_statics, strict=True):
        agree(abs(one / other - 1) < 0.01, f"{name}: the printed form gives {one}, the wedge {other}")


def nut_factor_torque(diameterMm, pitchMm, propertyClass, nutFactor, sharePercent):
    proof = screw_loads(diameterMm, pitchMm, propertyClass)["proofLoad"]
    return {"torque": nutFactor * diameterMm * sharePercent / 100 * proof / 1000}


def thread_engagement(loadNewtons, pitchMm, diameterMm, nutFlankMm, shearMpa):
    """Shear area of the nut thread at the screw's outer diameter, turn by turn."""
    if nutFlankMm >= diameterMm:
        raise Refused("conflict")
    # At the flank diameter a ridge is half a pitch wide; towards its root it widens with the 60° flanks.
    ridge = pitchMm / 2 + (diameterMm - nutFlankMm) * math.tan(math.radians(30))
    one_turn = math.pi * diameterMm * ridge
    return {"engagement": loadNewtons / shearMpa / one_turn * pitchMm}


def identify_thread(diameterMm, pitchMm):
    def fits(diameter, pitch):
        return -0.08 <= diameter - diameterMm <= 0.1 + 0.16 * pitch and abs(pitchMm / pitch - 1) <= 0.025

    likely = [thread for thread in NAMED if fits(thread[0], thread[1])]
    if not likely:
        return {"likely": 0}
    diameter, pitch, flank = min(likely, key=lambda thread: abs(pitchMm / thread[1] - 1))
    return {
        "likely": len(likely),
        "nominalDiameter": diameter,
        "nominalPitch": pitch,
        "turnsPerInch": INCH / pitch,
        "flankDegrees": flank,
    }


FORMULAS = {
    "stressArea": stress_area,
    "screwLoads": screw_loads,
    "screwLoad": screw_load,
    "assemblyPreload": assembly_preload,
    "preloadTorque": preload_torque,
    "engagementRule": engagement_rule,
    "tighteningTorque": tightening_torque,
    "preloadFromTorque": preload_from_torque,
    "nutFactorTorque": nut_factor_torque,
    "threadEngagement": thread_engagement,
    "identifyThread": identify_thread,
}


def main():
    return check_area("fasteners", FORMULAS)


if __name__ == "__main__":
    run("fasteners", main)
