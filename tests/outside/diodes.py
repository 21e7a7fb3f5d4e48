"""Rectified sines against ngspice: the vectors as decks with diodes, run through time, their means compared.

Usage: python diodes.py [path of ngspice]. Needs ngspice (Debian package `ngspice`).
"""

import math
import pathlib
import subprocess
import sys
import tempfile
import tomllib

from vectors import VECTORS, agree, run

HERTZ = 50.0
# A junction that keeps some ten millivolts for itself, where the formulas have none.
DIODE = ".model ideal D(IS=1e-12 N=0.01)"
WITHIN = 0.005


def measured(program, lines, wanted):
    """Averages over two turns, after two for the start; `wanted` maps a name to its ngspice measure."""
    turn = 1.0 / HERTZ
    window = f"from={2 * turn} to={4 * turn}"
    deck = ["diodes", *lines, DIODE, ".options reltol=1e-6", f".tran 5u {4 * turn} 0 5u"]
    deck += [f".meas tran {name} {what} {window}" for name, what in wanted.items()]
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder) / "diodes.cir"
        file.write_text("\n".join([*deck, ".end", ""]), encoding="utf-8")
        done = subprocess.run([program, "-b", str(file)], capture_output=True, text=True, timeout=120, check=False)
    found = {}
    for line in done.stdout.splitlines():
        name, equals, value = line.partition("=")
        if equals and name.strip() in wanted:
            found[name.strip()] = float(value.split()[0])
    agree(found.keys() == wanted.keys(), f"ngspice measured {sorted(found)} of {sorted(wanted)}: {done.stdout[-400:]}")
    return found


def sine(peak):
    return f"Vcoil a b sin(0 {peak!r} {HERTZ})"


def rectified_wave(program, peakVolts):
    """One diode, then a bridge, into a resistor."""
    one = [sine(peakVolts), "Rb b 0 1u", "D1 a out ideal", "Rload out 0 1k"]
    bridge = [sine(peakVolts), "D1 a out ideal", "D2 b out ideal", "D3 0 a ideal", "D4 0 b ideal", "Rload out 0 1k", "Rfloat b 0 100meg"]
    half = measured(program, one, {"mean": "avg v(out)", "effective": "rms v(out)"})
    full = measured(program, bridge, {"mean": "avg v(out)", "effective": "rms v(out)"})
    return {"halfMean": half["mean"], "halfEffective": half["effective"], "fullMean": full["mean"], "fullEffective": full["effective"]}


def diode_charge(program, peakVolts, volts, ohms):
    """A battery behind one diode, then behind a bridge, and the resistance of the coil."""
    coil = [sine(peakVolts), f"Rcoil a c {ohms!r}", f"Vbattery plus 0 {volts!r}"]
    one = [*coil, "Rb b 0 1u", "D1 c plus ideal"]
    bridge = [*coil, "D1 c plus ideal", "D2 b plus ideal", "D3 0 c ideal", "D4 0 b ideal", "Rfloat b 0 100meg"]
    half = measured(program, one, {"mean": "avg i(Vbattery)"})
    full = measured(program, bridge, {"mean": "avg i(Vbattery)"})
    return {"halfWave": half["mean"], "fullWave": full["mean"]}


def coil_current(program, emfVolts, reactanceOhms, ohms, volts):
    """A coil as voltage, inductance and resistance into the resistance that our current would make of the voltage."""
    square = ohms**2 + reactanceOhms**2
    load = volts / ((math.sqrt(square * emfVolts**2 - (reactanceOhms * volts) ** 2) - ohms * volts) / square)
    henries = reactanceOhms / (2.0 * math.pi * HERTZ)
    lines = [sine(emfVolts * math.sqrt(2.0)), "Rb b 0 1u", f"Lcoil a c {henries!r}", f"Rcoil c out {ohms!r}", f"Rload out 0 {load!r}"]
    return {"amperes": measured(program, lines, {"effective": "rms v(out)"})["effective"] / load}


DECKS = {"rectifiedWave": rectified_wave, "diodeCharge": diode_charge, "coilCurrent": coil_current}


def main():
    program = sys.argv[1] if len(sys.argv) > 1 else "ngspice"
    text = (VECTORS / "electrical" / "alternating.toml").read_text(encoding="utf-8")
    checks = 0
    for case in tomllib.loads(text)["case"]:
        inputs = dict(case["formula"])
        deck = DECKS.get(inputs.pop("kind"))
        if deck is None or "gives" not in case:
            continue
        found = deck(program, **inputs)
        for figure, wanted in case["gives"].items():
            near = abs(found[figure] - wanted) <= WITHIN * abs(wanted)
            agree(near, f"{case['name']}: ngspice has {figure} = {found[figure]}, the vector says {wanted}")
            checks += 1
    agree(checks > 0, "no vector has a sine behind diodes")
    return checks


if __name__ == "__main__":
    run("diodes", main)
