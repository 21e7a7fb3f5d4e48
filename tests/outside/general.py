"""Numbers beside each other, in exact fractions."""

from fractions import Fraction

from vectors import check_area, run

FORMULAS = {
    "percentChange": lambda before, after: {"change": 100 * (Fraction(after) - Fraction(before)) / Fraction(before)},
    "difference": lambda start, end: {"difference": Fraction(end) - Fraction(start)},
}


def main():
    return check_area("general", FORMULAS)


if __name__ == "__main__":
    run("general", main)
