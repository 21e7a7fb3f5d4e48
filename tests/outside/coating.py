"""Dew point and cure against psychrolib (other vapour-pressure equations, to 0.05 K) and scipy (roots, quadrature)."""

import math

import psychrolib
from scipy.constants import R as GAS_CONSTANT
from scipy.integrate import quad
from scipy.optimize import brentq

from vectors import Refused, agree, check_area, run

psychrolib.SetUnitSystem(psychrolib.SI)

DEW_WITHIN_KELVIN = 0.05


def vapour_pressure(celsius):
    """Saturation pressure over water by the WMO figures, hPa."""
    return 6.112 * math.exp(17.62 * celsius / (243.12 + celsius))


def dew_point(celsius, humidity):
    """The temperature at which the air is full, by root finding; psychrolib must agree to 0.05 K."""
    held = humidity / 100.0 * vapour_pressure(celsius)
    dew = brentq(lambda degrees: vapour_pressure(degrees) - held, -100.0, celsius + 1.0, xtol=1e-12)
    other = psychrolib.GetTDewPointFromRelHum(celsius, humidity / 100.0)
    agree(abs(dew - other) <= DEW_WITHIN_KELVIN, f"dew point at {celsius} °C, {humidity} %: {dew}, psychrolib {other}")
    return {"dewPoint": dew}


def surface_margin(celsius, humidity, surfaceCelsius):
    return {"margin": surfaceCelsius - dew_point(celsius, humidity)["dewPoint"]}


def rate(celsius, at_celsius, activation_kelvin):
    """k(T)/k(Ts) of the Arrhenius law k = A exp(-Ea/(R T)), with Ea in J/mol."""
    energy = activation_kelvin * GAS_CONSTANT

    def speed(degrees):
        return math.exp(-energy / (GAS_CONSTANT * (degrees + 273.15)))

    return speed(celsius) / speed(at_celsius)


def cure_rate(celsius, atCelsius, activationKelvin):
    return {"rate": rate(celsius, atCelsius, activationKelvin)}


def cure_pace(celsius, lowestCelsius, atCelsius, activationKelvin):
    return {"rate": rate(celsius, atCelsius, activationKelvin) if celsius >= lowestCelsius else 0.0}


def hours_at_rate(hours, **given):
    """A rate that does not change, by quadrature."""
    return {"hours": quad(lambda _: given["rate"], 0.0, hours)[0]}


def cure_age(hours, celsius, thenHours, thenCelsius, atCelsius, activationKelvin):
    """The rate over both spells by quadrature."""

    def rate_at(hour):
        return rate(celsius if hour < hours else thenCelsius, atCelsius, activationKelvin)

    age, _ = quad(rate_at, 0.0, hours + thenHours, points=[hours])
    return {"equivalentAge": age}


def activation(hours, celsius, otherHours, otherCelsius):
    """The activation temperature at which both times of the sheet mean the same age, by root finding."""

    def mismatch(kelvin):
        return rate(celsius, otherCelsius, kelvin) - otherHours / hours

    if mismatch(1e-6) * mismatch(50_000.0) >= 0.0:
        raise Refused("conflict")
    return {"activation": brentq(mismatch, 1e-6, 50_000.0)}


def check_ages():
    """Ages that the core's own tests quote, and the hourly steps of its daily wave against the smooth wave."""
    spell, _ = quad(lambda hour: rate(13.0, 20.0, 5000.0), 0.0, 96.0)
    agree(abs(spell - 63.2509) <= 0.0001, f"96 h at 13 °C are {spell} h at 20 °C")

    def wave(hour):
        return 10.0 + 6.0 * math.cos(2.0 * math.pi * (hour - 15.0) / 24.0)

    smooth, _ = quad(lambda hour: rate(wave(hour), 20.0, 5000.0), 0.0, 24.0)
    stepped = sum(rate(wave(hour + 0.5), 20.0, 5000.0) for hour in range(24))
    agree(abs(stepped - smooth) <= 0.001 * smooth, f"a day in hourly steps is {stepped} h, smooth {smooth} h")
    return 2


def main():
    checks = check_area(
        "coating",
        {
            "dewPoint": dew_point,
            "surfaceMargin": surface_margin,
            "cureRate": cure_rate,
            "curePace": cure_pace,
            "hoursAtRate": hours_at_rate,
            "cureAge": cure_age,
            "activation": activation,
        },
    )
    return checks + check_ages()


if __name__ == "__main__":
    run("coating", main)
