"""Quantiles of deliveries against scipy, the later of two by the product of both distributions."""

import math

from scipy.optimize import brentq
from scipy.stats import lognorm, norm, triang

from vectors import Refused, check_area, run


def triangle(least, likely, most):
    if not least <= likely <= most:
        raise Refused("conflict")
    return triang((likely - least) / (most - least), loc=least, scale=most - least)


def long_tail(median, p90):
    if p90 < median:
        raise Refused("conflict")
    return lognorm(math.log(p90 / median) / norm.ppf(0.9), scale=median)


def later_of_two(least, likely, most, median, p90, share):
    one, other = triangle(least, likely, most), long_tail(median, p90)
    return {"quantile": brentq(lambda days: one.cdf(days) * other.cdf(days) - share, 1e-6, 1_000.0)}


def main():
    return check_area(
        "plan",
        {
            "triangularQuantile": lambda share, **days: {"quantile": triangle(**days).ppf(share)},
            "lognormalQuantile": lambda share, **days: {"quantile": long_tail(**days).ppf(share)},
            "laterOfTwo": later_of_two,
        },
    )


if __name__ == "__main__":
    run("plan", main)
