"""The same published instances with OR-Tools CP-SAT, one worker, at the same time limit: printed beside the planner.

Arguments as for the planner: the folder, then `--seconds S` (1) and `--only N` (1). For development only.
"""

import pathlib
import sys
import time

from ortools.sat.python import cp_model


def read(text):
    """Durations, wants of each resource, links and capacities of one instance."""
    lines = [line.split() for line in text.splitlines()]

    def numbers_after(head, skip):
        begin = next(at for at, line in enumerate(lines) if " ".join(line).startswith(head)) + skip
        for line in lines[begin:]:
            if not line or not all(word.isdigit() for word in line):
                return
            yield [int(word) for word in line]

    links = list(numbers_after("jobnr. #modes", 1))
    wants = list(numbers_after("jobnr. mode", 2))
    capacity = next(numbers_after("RESOURCEAVAILABILITIES", 2))
    return [row[2] for row in wants], [row[3:] for row in wants], [row[3:] for row in links], capacity


def solve(text, seconds):
    """The shortest length found, whether it is proven, and the time that it took."""
    durations, wants, links, capacity = read(text)
    model = cp_model.CpModel()
    horizon = sum(durations)
    begins = [model.new_int_var(0, horizon, f"begin{job}") for job in range(len(durations))]
    spans = [model.new_fixed_size_interval_var(begin, long, "") for begin, long in zip(begins, durations)]
    for job, followers in enumerate(links):
        for follower in followers:
            model.add(begins[follower - 1] >= begins[job] + durations[job])
    for resource, units in enumerate(capacity):
        model.add_cumulative(spans, [want[resource] for want in wants], units)
    model.minimize(begins[-1])
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = seconds
    solver.parameters.num_workers = 1
    began = time.perf_counter()
    status = solver.solve(model)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return None, False, time.perf_counter() - began
    return round(solver.objective_value), status == cp_model.OPTIMAL, time.perf_counter() - began


def main(folder, seconds, every):
    print("CP-SAT instances  to known %  above path %  proved  none found  s each")
    for name in ("j30", "j60", "j120"):
        known = folder / name / "known.csv"
        if not known.exists():
            continue
        gaps, above, proved, without, spent = [], [], 0, 0, 0.0
        for line in known.read_text().splitlines()[1::every]:
            instance, length = line.split(",")
            text = (folder / name / f"{instance}.sm").read_text()
            path = int(text[text.index("pronr.") :].splitlines()[1].split()[-1])
            best = int(length.split("..")[-1])
            found, optimal, took = solve(text, seconds)
            spent += took
            if found is None:
                without += 1
                continue
            proved += optimal
            gaps.append((found - best) / best * 100.0)
            above.append((found - path) / path * 100.0)
        count = max(len(gaps), 1)
        print(
            f"{name:<6} {len(gaps):>9}  {sum(gaps) / count:>10.3f}  {sum(above) / count:>12.2f}  {proved:>6}"
            f"  {without:>10}  {spent / max(len(gaps) + without, 1):>6.2f}"
        )


def option(name, usual):
    return float(sys.argv[sys.argv.index(name) + 1]) if name in sys.argv else usual


if __name__ == "__main__":
    if len(sys.argv) > 1:
        main(pathlib.Path(sys.argv[1]), option("--seconds", 1.0), max(int(option("--only", 1)), 1))
