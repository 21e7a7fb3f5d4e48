"""Harness networks against ngspice: the same laws written as a deck, the operating point compared.

Usage: python harness.py networks.json [path of ngspice]. The JSON comes from
`cargo run -p layshaft-core --example harness_networks`. Needs ngspice (Debian package `ngspice`).
"""

import json
import math
import pathlib
import subprocess
import sys
import tempfile

THERMAL = 8.617333e-5 * 300.15
WITHIN_VOLTS = 1e-4
WITHIN_SHARE = 1e-3
# Currents below this are compared absolutely: ngspice itself leaves some 1e-12 S across every junction.
SMALL_AMPERES = 1e-5


def node(number):
    return "0" if number is None else f"n{number}"


def lines_of(index, device):
    """The deck lines of one law; a 0 V source in front carries its current."""
    law, start, end = device["law"], f"s{index}", node(device["to"])
    lines = [f"V{index} {node(device['from'])} {start} 0"]
    volts = f"v({start})" if end == "0" else f"(v({start})-v({end}))"
    kind = law["kind"]
    if kind == "resistance":
        lines.append(f"R{index} {start} {end} {law['ohms']!r}")
    elif kind == "emf":
        lines += [f"E{index} {start} m{index} dc {law['volts']!r}".replace("E", "Vemf", 1), f"R{index} m{index} {end} {law['ohms']!r}"]
    elif kind == "filament":
        ratio = f"({volts}/{law['volts']!r})"
        lines.append(f"B{index} {start} {end} I={law['amperes']!r}*{ratio}*pow({ratio}*{ratio}+1.6e-5,-0.225)")
    elif kind == "junction":
        emission = law["slopeVolts"] / THERMAL
        lines.append(f".model D{index} D(IS={law['saturationAmperes']!r} N={emission!r} RS={law['ohms']!r})")
        lines.append(f"D{index} {start} {end} D{index}")
    elif kind == "driver":
        span = law["fullVolts"] - law["startVolts"]

        def soft(at):
            return f"0.1*ln(1+exp(({volts}-{at!r})/0.1))"

        lines.append(f"B{index} {start} {end} I={law['amperes']!r}*({soft(law['startVolts'])}-{soft(law['fullVolts'])})/{span!r}")
    elif kind == "regulated":
        lines.append(f"B{index} {start} {end} I=-{law['amperes']!r}*(1-tanh(({volts}-{law['volts']!r})/0.1))/2")
    elif kind == "coil":
        square = law["ohms"] ** 2 + law["reactanceOhms"] ** 2
        root = f"sqrt(max({square * law['volts'] ** 2!r}-({law['reactanceOhms']!r}*{volts})^2,0))"
        between = f"({law['ohms']!r}*{volts}-{root})/{square!r}"
        low = f"{volts}*{law['ohms'] / square!r}-{law['volts'] / math.sqrt(square)!r}"
        high = f"({volts}-{law['volts']!r})/{law['ohms']!r}"
        lines.append(f"B{index} {start} {end} I={volts} < 0 ? {low} : ({volts} > {law['volts']!r} ? {high} : {between})")
    elif kind == "shunt":
        soft = f"0.1*ln(1+exp(({volts}-{law['volts']!r})/0.1))"
        lines.append(f"B{index} {start} {end} I=({soft}-{0.1 * math.log1p(math.exp(-law['volts'] / 0.1))!r})/{law['ohms']!r}")
    else:
        raise ValueError(f"no deck for a law of kind {kind}")
    return lines


def deck(netlist, start=()):
    """The deck; `start` gives ngspice voltages to start from where it does not settle from a cold start."""
    lines = ["harness", ".options temp=27 tnom=27 reltol=1e-9 abstol=1e-13 vntol=1e-9 gmin=1e-15 itl1=1000"]
    for index, device in enumerate(netlist["devices"]):
        lines += lines_of(index, device)
    points, devices = range(len(netlist["points"])), range(len(netlist["devices"]))
    lines += [f"Rleak{point} n{point} 0 {1.0 / netlist['leak_siemens']!r}" for point in points]
    lines += [f".nodeset v(n{point})={volts:.1f}" for point, volts in enumerate(start) if volts is not None]
    lines += [".control", "set numdgt=12", "op"]
    lines += [f"print v(n{point})" for point in points] + [f"print i(V{index})" for index in devices]
    return "\n".join(lines + ["quit", ".endc", ".end", ""])


def run(program, text):
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder) / "harness.cir"
        file.write_text(text, encoding="utf-8")
        done = subprocess.run([program, "-b", str(file)], capture_output=True, text=True, timeout=120, check=False)
    found = {}
    for line in done.stdout.splitlines():
        name, equals, value = line.partition("=")
        if equals and name.strip().lower().startswith(("v(n", "i(v", "eff")):
            found[name.strip().lower()] = float(value.split()[0])
    return found


def operating_point(program, case):
    """From a cold start, else with the ends of regulated sources started near our answer, rounded to tenths of a volt.

    ngspice takes undamped steps and does not always get off the flat part of a regulated source by itself. Only these
    points are given: a start at every point leaves rounding in its answer (points that break Kirchhoff's law).
    """
    devices = [device for device in case["netlist"]["devices"] if device["law"]["kind"] == "regulated"]
    ends = {end for device in devices for end in (device["from"], device["to"])}
    near = [volts if point in ends else None for point, volts in enumerate(case["volts"])]
    for start in ((), near):
        found = run(program, deck(case["netlist"], start))
        if found:
            return found, bool(start)
    raise AssertionError(f"{case['name']}: ngspice gave no operating point")


HERTZ = 50.0
WITHIN_EFFECTIVE = 0.003


def through_time(case):
    """A deck through time of a network that a coil feeds: the coil as sine, inductance and resistance.

    A filament is the resistance that it has at its effective voltage, for it is too slow to follow the wave; a regulator
    that cuts the wave is left to the check of its law. The sine begins at its peak, where a coil without current is already in step.
    """
    lines = ["coil", ".options reltol=1e-5 temp=27 tnom=27"]
    for index, device in enumerate(case["netlist"]["devices"]):
        law, start, end = device["law"], node(device["from"]), node(device["to"])
        volts = [case["volts"][at] if at is not None else 0.0 for at in (device["from"], device["to"])]
        if law["kind"] == "coil":
            henries = law["reactanceOhms"] / (2.0 * math.pi * HERTZ)
            peak = law["volts"] * math.sqrt(2.0)
            lines += [f"V{index} e{index} {end} sin(0 {peak!r} {HERTZ} 0 0 90)", f"L{index} e{index} r{index} {henries!r}"]
            lines.append(f"R{index} r{index} {start} {law['ohms']!r}")
        elif law["kind"] == "resistance":
            lines.append(f"R{index} {start} {end} {law['ohms']!r}")
        elif law["kind"] == "filament" and None not in volts and not any(math.isnan(volt) for volt in volts):
            ratio = abs(volts[0] - volts[1]) / law["volts"]
            lines.append(f"R{index} {start} {end} {law['volts'] / law['amperes'] * (ratio**2 + 1.6e-5) ** 0.225!r}")
        else:
            return None
    points = range(len(case["netlist"]["points"]))
    lines += [f"Rleak{point} n{point} 0 {1.0 / case['netlist']['leak_siemens']!r}" for point in points]
    turn = 1.0 / HERTZ
    lines.append(f".tran 20u {30 * turn} {24 * turn} 20u uic")
    lines += [f".meas tran eff{point} rms v(n{point}) from={24 * turn} to={30 * turn}" for point in points]
    return "\n".join([*lines, ".end", ""])


def effective(program, case):
    """Compares our effective values with those of a run through time; returns how many were compared."""
    coils = [device for device in case["netlist"]["devices"] if device["law"]["kind"] == "coil"]
    text = through_time(case) if coils else None
    if text is None:
        return 0
    found = run(program, text)
    checks = 0
    for point, ours in enumerate(case["volts"]):
        if ours is None or math.isnan(ours) or abs(ours) < 0.05:
            continue
        theirs = found[f"eff{point}"]
        if abs(abs(ours) - theirs) > WITHIN_EFFECTIVE * theirs:
            raise AssertionError(f"{case['name']}: {case['netlist']['points'][point]} {ours} V, through time {theirs} V")
        checks += 1
    return checks


def compare(case, found):
    """Counts the comparisons; raises at the first disagreement."""
    checks = 0
    for point, ours in enumerate(case["volts"]):
        if ours is None or math.isnan(ours):
            continue  # an inner point that has no name in the program
        theirs = found[f"v(n{point})"]
        if abs(ours - theirs) > WITHIN_VOLTS:
            raise AssertionError(f"{case['name']}: {case['netlist']['points'][point]} {ours} V, ngspice {theirs} V")
        checks += 1
    for index, ours in enumerate(case["amperes"]):
        if ours is None or math.isnan(ours):
            continue
        theirs = found[f"i(v{index})"]
        if abs(ours - theirs) > max(SMALL_AMPERES, WITHIN_SHARE * abs(theirs)):
            raise AssertionError(f"{case['name']}: {case['netlist']['devices'][index]['element']} {ours} A, ngspice {theirs} A")
        checks += 1
    return checks


def main():
    networks = json.loads(pathlib.Path(sys.argv[1]).read_text(encoding="utf-8"))
    program = sys.argv[2] if len(sys.argv) > 2 else "ngspice"
    checks, helped, alternating = 0, 0, 0
    for case in networks:
        found, was_helped = operating_point(program, case)
        checks += compare(case, found)
        alternating += effective(program, case)
        helped += was_helped
    if alternating < 100:
        raise AssertionError(f"only {alternating} effective values were compared through time, 100 are wanted")
    if len(networks) < 60:
        raise AssertionError(f"only {len(networks)} networks, 60 are wanted")
    print(f"harness: {checks} voltages and currents of {len(networks)} networks agree with ngspice, {helped} of them started near; {alternating} effective values agree through time")


if __name__ == "__main__":
    main()
