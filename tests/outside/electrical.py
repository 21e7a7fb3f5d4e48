"""Lamps, battery and alternator against numpy and scipy, by other forms of the same laws."""

import numpy
import pint
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

from vectors import Refused, check_area, run

UNITS = pint.UnitRegistry()
# The table of rested voltages as printed, full battery first: volts and per cent.
RESTED_VOLTS = [12.65, 12.45, 12.24, 12.06, 11.89]
RESTED_CHARGE = [100.0, 75.0, 50.0, 25.0, 0.0]


def lamp_watts(watts, testVolts, volts):
    """By the current law I ~ V^0.55: the power whose current is what the filament lets through."""
    amperes = watts / testVolts * numpy.exp(0.55 * numpy.log(volts / testVolts))
    return {"watts": brentq(lambda power: power / volts - amperes, 0.0, 100.0 * watts + 1.0, xtol=1e-12)}


def consumer_power(count, watts, testVolts, volts):
    """Filament lamps by their current law; what holds its power by the current that it takes."""
    lamps = count * lamp_watts(watts, testVolts, volts)["watts"]
    return {
        "filamentWatts": lamps,
        "filamentAmperes": lamps / volts,
        "steadyWatts": count * watts,
        "steadyAmperes": count * watts / volts,
    }


def charge_current(outputWatts, loadWatts, volts):
    """The difference of the two currents."""
    return {"amperes": outputWatts / volts - loadWatts / volts}


def resistor_watts(volts, ohms):
    power = (volts * UNITS.volt) ** 2 / (ohms * UNITS.ohm)
    return {"watts": power.to("watt").magnitude}


def charge_between(reading, below, chargeBelow, above, chargeAbove):
    return {"charge": numpy.interp(reading, [below, above], [chargeBelow, chargeAbove])}


def battery_hours(batteryAh, ratedHours, peukert, amperes):
    """T = C (C/R)^(n-1) / I^n, the other published form."""
    hours = batteryAh * (batteryAh / ratedHours) ** (peukert - 1.0) / amperes**peukert
    return {"hours": hours, "minutes": (hours * UNITS.hour).to("minute").magnitude}


def rested_charge(cells, volts):
    """Linear between the points of the table, a cell at a time, clamped at its ends."""
    return {"charge": numpy.interp(volts / cells, numpy.array(RESTED_VOLTS[::-1]) / 6.0, RESTED_CHARGE[::-1])}


# Specific gravity as printed, full first.
GRAVITIES = [1.265, 1.225, 1.190, 1.155, 1.120]
# IEC 60228, greatest resistance at 20 degrees, mOhm/m: class 1 and 2 plain, class 5 and 6 plain, class 5 and 6 tinned.
IEC_60228 = {0.5: (36.0, 39.0, 40.1), 0.75: (24.5, 26.0, 26.7), 1.0: (18.1, 19.5, 20.0), 1.5: (12.1, 13.3, 13.7), 2.5: (7.41, 7.98, 8.21)}


def lamp_light(lumens, testVolts, volts):
    """Light and life as logarithms: 3.4 and -13 times the logarithm of the voltage."""
    step = numpy.log(volts) - numpy.log(testVolts)
    return {"lumens": float(numpy.exp(numpy.log(lumens) + 3.4 * step)), "life": float(numpy.exp(-13.0 * step))}


def thermal_flasher(loadPercent, contacts, flashesMinute):
    """The bimetal strip integrated by scipy through one warming and one cooling; constant fixed at the rated load."""
    constant = 60.0 / flashesMinute / (2.0 * -numpy.log(contacts))
    source = (1.0 + contacts) * (loadPercent / 100.0) ** 2
    if source <= 1.0:
        return {"flashesMinute": 0.0}

    def seconds(towards, begin, end):
        def reached(_, warm):
            return warm[0] - end

        reached.terminal = True
        path = solve_ivp(lambda _, warm: (towards - warm) / constant, (0.0, 1000.0), [begin], events=reached, rtol=1e-11, atol=1e-13)
        return path.t_events[0][0]

    return {"flashesMinute": 60.0 / (seconds(source, contacts, 1.0) + seconds(0.0, 1.0, contacts))}


def counted_flashes(flashes, seconds):
    """The mean period, inverted."""
    return {"flashesMinute": 60.0 / numpy.mean([seconds / flashes] * flashes)}


def load_resistance(volts, oldWatts, newWatts):
    """The resistance whose power at that voltage is what is missing, found by a root search."""
    if oldWatts <= newWatts:
        raise Refused("conflict")
    ohms = brentq(lambda r: volts**2 / r - (oldWatts - newWatts), 1e-3, 1e7, xtol=1e-12)
    return {"ohms": ohms, "peakWatts": oldWatts - newWatts, "meanWatts": numpy.mean([oldWatts - newWatts, 0.0])}


def gravity_charge(gravity, celsius):
    """Linear between the points of the table; 0.007 for every ten degrees."""
    return {"charge": numpy.interp(gravity + 0.007 * (celsius - 25.0) / 10.0, GRAVITIES[::-1], RESTED_CHARGE[::-1])}


def days_to_flat(batteryAh, chargePercent, drainMilliamperes):
    """By pint: ampere-hours over milliamperes, in days."""
    left = UNITS.Quantity(batteryAh * chargePercent / 100.0, "ampere * hour")
    return {"days": (left / UNITS.Quantity(drainMilliamperes, "milliampere")).to("day").magnitude}


def recharge_hours(batteryAh, chargePercent, chargerAmperes):
    """By pint: what is missing, times 1.2, over the current."""
    missing = UNITS.Quantity(batteryAh * (100.0 - chargePercent) / 100.0, "ampere * hour")
    return {"hours": (1.2 * missing / UNITS.Quantity(chargerAmperes, "ampere")).to("hour").magnitude}


def wire_drop(sectionMm2, conductor, celsius, amperes, outMetres, backMetres):
    """The printed table, or 1/58 for pure copper, and the coefficient of IEC 60028."""
    columns = {"ideal": None, "solid": 0, "flexible": 1, "tinned": 2}
    if conductor not in columns:
        raise Refused("unreadable")
    column = columns[conductor]
    at_20 = 1000.0 / 58.0 / sectionMm2 if column is None else IEC_60228[sectionMm2][column]
    warm = at_20 * (1.0 + 0.00393 * (celsius - 20.0))
    return {"milliohmsMetre": warm, "volts": amperes * warm * (outMetres + backMetres) / 1000.0}


def wire_gauge(gauge):
    """The 39 equal ratios between 0.46 inch (4/0) and 0.005 inch (36)."""
    if gauge != int(gauge):
        raise Refused("conflict")
    inches = numpy.geomspace(0.46, 0.005, 40)[int(gauge) + 3]
    return {"diameter": 25.4 * inches, "section": numpy.pi / 4.0 * (25.4 * inches) ** 2}


def nominal_output(alternatorWatts, ratedRpm, engineRpm):
    """An EMF k n behind a reactance x n into a constant voltage, solved from the voltage triangle.

    The rectifier keeps current and voltage in phase, so EMF^2 = V^2 + (x n I)^2. With V = 1 the cut-in speed gives k;
    the reactance follows from the rated point.
    """
    cut_in = ratedRpm / 4.0
    if engineRpm <= cut_in:
        return {"watts": 0.0}

    def mismatch(watts, reactance, rpm):
        return 1.0 + (reactance * rpm * watts) ** 2 - (rpm / cut_in) ** 2

    reactance = brentq(lambda x: mismatch(alternatorWatts, x, ratedRpm), 1e-12, 1.0, xtol=1e-16)
    rpm = min(engineRpm, ratedRpm)
    return {"watts": brentq(lambda watts: mismatch(watts, reactance, rpm), 0.0, 10.0 * alternatorWatts, xtol=1e-9)}


def rectified_wave(peakVolts):
    """Mean and root mean square by scipy's quadrature over a turn."""

    def over_a_turn(wave):
        return (quad(wave, 0.0, numpy.pi)[0] + quad(wave, numpy.pi, 2.0 * numpy.pi)[0]) / (2.0 * numpy.pi)

    def half(x):
        return max(peakVolts * numpy.sin(x), 0.0)

    def full(x):
        return abs(peakVolts * numpy.sin(x))

    return {
        "halfMean": over_a_turn(half),
        "halfEffective": numpy.sqrt(over_a_turn(lambda x: half(x) ** 2)),
        "fullMean": over_a_turn(full),
        "fullEffective": numpy.sqrt(over_a_turn(lambda x: full(x) ** 2)),
    }


def diode_charge(peakVolts, volts, ohms):
    """The current above the battery by scipy's quadrature, between the roots where it begins and ends."""
    begins = brentq(lambda x: peakVolts * numpy.sin(x) - volts, 0.0, numpy.pi / 2.0, xtol=1e-14)
    half = quad(lambda x: (peakVolts * numpy.sin(x) - volts) / ohms, begins, numpy.pi - begins)[0] / (2.0 * numpy.pi)
    return {"halfWave": half, "fullWave": 2.0 * half}


def coil_current(emfVolts, reactanceOhms, ohms, volts):
    """The current at which the phasors add up, by a root search on complex numbers."""
    return {"amperes": brentq(lambda amperes: abs(complex(volts + ohms * amperes, reactanceOhms * amperes)) - emfVolts, 0.0, 1e4, xtol=1e-12)}


def coil_emf(rpm, testVolts, ohms, slowRpm, slowAmperes, fastRpm, fastAmperes):
    """The squares of voltage and reactance for each revolution by numpy's linear solver."""
    speeds = [(slowRpm, slowAmperes), (fastRpm, fastAmperes)]
    squares = numpy.linalg.solve([[n**2, -((n * i) ** 2)] for n, i in speeds], [(testVolts + ohms * i) ** 2 for _, i in speeds])
    return {"emfVolts": rpm * squares[0] ** 0.5, "reactanceOhms": rpm * squares[1] ** 0.5}


def coil_lamp_volts(testVolts, coilWatts, watts):
    """The voltage at which the lamps pass the current of the coil, by a root search on the current law."""
    amperes = coilWatts / testVolts

    def spare(volts):
        return lamp_watts(watts, testVolts, volts)["watts"] / volts - amperes

    return {"volts": brentq(spare, 0.1 * testVolts, 10.0 * testVolts, xtol=1e-10)}


def main():
    return check_area(
        "electrical",
        {
            "lampWatts": lamp_watts,
            "consumerPower": consumer_power,
            "loadSum": lambda shares, watts: {"watts": numpy.dot(shares, watts)},
            "chargeCurrent": charge_current,
            "flasherShare": lambda sideWatts, flasherWatts: {"share": sideWatts / (flasherWatts / 100)},
            "resistorWatts": resistor_watts,
            "chargeBetween": charge_between,
            "leastFuse": lambda amperes: {"rating": brentq(lambda rating: 0.8 * rating - amperes, 0.0, 1000.0, xtol=1e-12)},
            "batteryHours": battery_hours,
            "restedCharge": rested_charge,
            "nominalOutput": nominal_output,
            "lampLight": lamp_light,
            "thermalFlasher": thermal_flasher,
            "countedFlashes": counted_flashes,
            "loadResistance": load_resistance,
            "gravityCharge": gravity_charge,
            "daysToFlat": days_to_flat,
            "rechargeHours": recharge_hours,
            "wireDrop": wire_drop,
            "wireGauge": wire_gauge,
            "rectifiedWave": rectified_wave,
            "diodeCharge": diode_charge,
            "coilLampVolts": coil_lamp_volts,
            "coilCurrent": coil_current,
            "coilEmf": coil_emf,
        },
    )


if __name__ == "__main__":
    run("electrical", main)
