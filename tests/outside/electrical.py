"""Lamps, battery and alternator against numpy and scipy, by other forms of the same laws."""

import numpy
from scipy.optimize import brentq

from vectors import check_area, run

# The table of rested voltages as printed, full battery first: volts and per cent.
RESTED_VOLTS = [12.65, 12.45, 12.24, 12.06, 11.89]
RESTED_CHARGE = [100.0, 75.0, 50.0, 25.0, 0.0]


def lamp_watts(watts, testVolts, volts):
    """By the current law I ~ V^0.55: the power whose current is what the filament lets through."""
    amperes = watts / testVolts * numpy.exp(0.55 * numpy.log(volts / testVolts))
    return {"watts": brentq(lambda power: power / volts - amperes, 0.0, 100.0 * watts + 1.0, xtol=1e-12)}


def battery_hours(batteryAh, ratedHours, peukert, amperes):
    """T = C (C/R)^(n-1) / I^n, the other published form."""
    return {"hours": batteryAh * (batteryAh / ratedHours) ** (peukert - 1.0) / amperes**peukert}


def rested_charge(volts):
    """Linear between the points of the table, clamped at its ends."""
    return {"charge": numpy.interp(volts, RESTED_VOLTS[::-1], RESTED_CHARGE[::-1])}


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


def main():
    return check_area(
        "electrical",
        {
            "lampWatts": lamp_watts,
            "batteryHours": battery_hours,
            "restedCharge": rested_charge,
            "nominalOutput": nominal_output,
        },
    )


if __name__ == "__main__":
    run("electrical", main)
