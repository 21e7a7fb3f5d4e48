"""Searches for faults against pgmpy: the same table as a Bayesian network, its posterior by variable elimination.

Usage: python faults.py searches.json. The JSON comes from `cargo run -p layshaft-core --example fault_posteriors`.
"""

import itertools
import json
import logging
import math
import pathlib
import sys
import warnings

warnings.filterwarnings("ignore")
logging.disable(logging.WARNING)

from pgmpy.factors.discrete import TabularCPD  # noqa: E402
from pgmpy.inference import VariableElimination  # noqa: E402
from pgmpy.models import DiscreteBayesianNetwork  # noqa: E402

from vectors import agree, run  # noqa: E402

WITHIN = 1e-9


def network(case):
    """One fault with the weights as prior; each check depends on it alone."""
    weights = [suspect["weight"] for suspect in case["suspects"]]
    count = len(weights)
    model = DiscreteBayesianNetwork([("fault", check["id"]) for check in case["checks"]])
    model.add_cpds(TabularCPD("fault", count, [[weight / sum(weights)] for weight in weights]))
    for check in case["checks"]:
        columns = list(zip(*check["likelihoods"]))
        model.add_cpds(TabularCPD(check["id"], len(check["outcomes"]), columns, ["fault"], [count]))
    agree(model.check_model(), "the network is not sound")
    return VariableElimination(model)


def outcome(case, answer):
    """The check of an answer and the number of its outcome."""
    check = next(check for check in case["checks"] if check["id"] == answer["check"])
    return check["id"], [at["id"] for at in check["outcomes"]].index(answer["outcome"])


def entropy(shares):
    return -sum(share * math.log2(share) for share in shares if share > 0.0)


def gain(engine, evidence, check):
    """What a check is expected to tell: mutual information from the joint distribution."""
    joint = engine.query(["fault", check], evidence=evidence, show_progress=False)
    joint = joint.values if joint.variables == ["fault", check] else joint.values.T
    return entropy(joint.sum(axis=1)) + entropy(joint.sum(axis=0)) - entropy(joint.ravel())


def compare(search):
    """Counts the comparisons; raises at the first disagreement."""
    case, engine = search["case"], network(search["case"])
    evidence = dict(outcome(case, answer) for answer in search["evidence"])
    theirs = engine.query(["fault"], evidence=evidence, show_progress=False).values
    for suspect, ours, other in zip(case["suspects"], search["probabilities"], theirs):
        agree(abs(ours - other) < WITHIN, f"{case['name']}, {evidence}: {suspect['id']} {ours!r}, pgmpy {other!r}")
    checks = len(theirs)
    if search["next"] is not None:
        check, ours = search["next"]
        other = gain(engine, evidence, check)
        agree(abs(ours - other) < 1e-6, f"{case['name']}: {check} tells {ours!r} bits, pgmpy {other!r}")
        checks += 1
    return checks


def order_of_tries():
    """Five causes without a shared cover: the least expected time over all orders is that of probability over time."""
    tries = [(0.30, 13.0), (0.25, 13.0), (0.20, 5.0), (0.15, 6.0), (0.10, 10.0)]

    def expected(order):
        left, sum_ = 1.0, 0.0
        for probability, minutes in order:
            sum_, left = sum_ + left * minutes, left - probability
        return sum_

    best = min(itertools.permutations(tries), key=expected)
    by_ratio = sorted(tries, key=lambda one: -one[0] / one[1])
    agree(abs(expected(best) - expected(by_ratio)) < 1e-12, "probability over time is not the best order")
    agree(abs(expected(best) - 23.80) < 1e-9, f"the best order takes {expected(best)}")
    return 2


def main():
    searches = json.loads(pathlib.Path(sys.argv[1]).read_text(encoding="utf-8"))
    agree(len(searches) >= 60, f"only {len(searches)} searches, 60 are wanted")
    return sum(compare(search) for search in searches) + order_of_tries()


if __name__ == "__main__":
    run("faults", main)
