#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Forty larger models, solved by us and by two general-purpose solvers of Debian (coinor-cbc,
glpk-utils) from the same written integers: the optima are equal, by ==. TAP; a solver that is not
installed is skipped, and counted as such. Usage: solvers.py BUILD"""
import math
import pathlib
import re
import resource
import shutil
import subprocess
import sys
import tempfile

LIMIT_S = 120


def within(seconds):
    """So many seconds of the processor: on a busy machine the clock says little."""
    return {"preexec_fn": lambda: resource.setrlimit(resource.RLIMIT_CPU, 2 * (math.ceil(seconds),)),
            "timeout": 20 * seconds}


def cbc(model, folder, seconds=LIMIT_S):
    """The optimum by cbc; None when it did not prove one."""
    solution = folder / "cbc.txt"
    subprocess.run(["cbc", str(model), "ratioGap", "0", "allowableGap", "0", "solve", "solution",
                    str(solution)], stdout=subprocess.DEVNULL, check=True, **within(seconds))
    found = re.match(r"Optimal - objective value (-?[0-9.]+)", solution.read_text(encoding="utf-8"))
    return float(found.group(1)) if found else None


def glpsol(model, folder, seconds=LIMIT_S):
    """The optimum by glpsol; None when it did not prove one."""
    solution = folder / "glpk.txt"
    subprocess.run(["glpsol", "--lp", str(model), "-w", str(solution)],
                   stdout=subprocess.DEVNULL, check=True, **within(seconds))
    found = re.search(r"^s mip \d+ \d+ o (-?[0-9.e+]+)", solution.read_text(encoding="utf-8"), re.M)
    return float(found.group(1)) if found else None


SOLVERS = {"cbc": cbc, "glpsol": glpsol}


def main():
    folder = pathlib.Path(tempfile.mkdtemp())
    ours = subprocess.run([sys.argv[1] + "/tests/stock/models", str(folder)], check=True,
                          stdout=subprocess.PIPE, encoding="utf-8").stdout.split("\n")[:-1]
    print("1..%d" % (len(ours) * len(SOLVERS)))
    number = failed = 0
    for line in ours:
        name, points = line.split()
        for solver, optimum in SOLVERS.items():
            number += 1
            if not shutil.which(solver):
                print("ok %d - %s by %s # SKIP not installed" % (number, name, solver))
                continue
            try:
                theirs = optimum(folder / (name + ".lp"), folder)
            except (subprocess.SubprocessError, OSError) as error:
                theirs = error
            fine = theirs == int(points)
            failed += not fine
            print("%s %d - %s: %s, %s says %s" % ("ok" if fine else "not ok", number, name, points,
                                                  solver, theirs))
    shutil.rmtree(folder)
    return len(ours) != 40 or failed > 0


if __name__ == "__main__":
    sys.exit(main())
