#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Writes least_squares.csv: random weighted systems and their solution by numpy (1.24.2, BSD;
numpy.linalg.lstsq and inv), which tests/checks/test_squares.c holds ours against.

Usage: least_squares.py > least_squares.csv
"""
import numpy

SYSTEMS, UNKNOWNS = 40, 6


def main():
    random = numpy.random.default_rng(2026)
    names = ["f%d" % i for i in range(UNKNOWNS)] + ["x%d" % i for i in range(UNKNOWNS)] + \
        ["s%d" % i for i in range(UNKNOWNS)]
    print("# Weighted least squares by numpy %s (linalg.lstsq, inv), written by least_squares.py of "
          "this folder: rows of a system (factors f, value, deviation), and in its first row the "
          "solution x, its deviations s and the squares that are left" % numpy.__version__)
    print(",".join(["system", "value", "deviation", "rest"] + names))
    for system in range(SYSTEMS):
        rows = UNKNOWNS + int(random.integers(0, 4))
        # Columns of unlike size, as days, shares and levels are.
        scale = 10.0 ** random.integers(-3, 3, UNKNOWNS)
        factors = random.normal(size=(rows, UNKNOWNS)) * scale
        values = random.normal(size=rows) * 10
        deviations = 10.0 ** random.uniform(-2, 1, rows)
        factors, values, deviations = [
            numpy.array([[float("%.9g" % v) for v in r] for r in factors]),
            numpy.array([float("%.9g" % v) for v in values]),
            numpy.array([float("%.9g" % v) for v in deviations])]
        a, b = factors / deviations[:, None], values / deviations
        x = numpy.linalg.lstsq(a, b, rcond=None)[0]
        s = numpy.sqrt(numpy.diag(numpy.linalg.inv(a.T @ a)))
        rest = float(numpy.sum((b - a @ x) ** 2))
        for i in range(rows):
            cells = ["%d" % system, "%.9g" % values[i], "%.9g" % deviations[i]]
            cells += ["%.9g" % rest if i == 0 else ""]
            cells += ["%.9g" % f for f in factors[i]]
            cells += ["%.12g" % v for v in (*x, *s)] if i == 0 else [""] * (2 * UNKNOWNS)
            print(",".join(cells))


if __name__ == "__main__":
    main()
