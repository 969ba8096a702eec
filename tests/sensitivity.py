#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""How much the fit of rank's JSON hangs on its weights, which are estimates. The order of rank does
not: it is by verdict, sold and distance. What sorts by fit (propose's worst-served animal) does.

Usage: sensitivity.py PROGRAM. Each of the four weights is moved by 0.1 up and down (--practice), in
three of the waters of the truth table. TAP: the top ten keep at least eight. Since many species fit
equally well there, it prints what ties do not hide as well: the largest change of any fit, and how
many of the fifty that fit worst among those suited or tolerating stay the same.
"""
import csv
import json
import pathlib
import subprocess
import sys
import tempfile

DATA = pathlib.Path(__file__).resolve().parent / "data"
WEIGHTS = {"fit.temperature": 0.35, "fit.minerals": 0.40, "fit.kh": 0.15, "fit.ph": 0.10}


def ranked(program, water, practice):
    with tempfile.NamedTemporaryFile("w", suffix=".yaml") as own:
        own.write("".join("%s: %.2f\n" % item for item in practice.items()))
        own.flush()
        done = subprocess.run(
            [program, "rank", "-f", "json", "--method", "drops", "--pH", water["pH"], "--GH",
             water["GH_dH"], "--KH", water["KH_dH"], "--temperature", water["temperature_C"],
             "--practice", own.name], stdout=subprocess.PIPE, check=True)
    answer = json.loads(done.stdout)
    order = ["suits", "tolerates", "unsure"]
    return sorted(answer["ranked"] + answer["no_home"],
                  key=lambda m: (order.index(m["verdict"]), -(m["fit"] or 0), m["id"]))


def alive(matches):
    return [m["id"] for m in matches if m["verdict"] in ("suits", "tolerates")]


def main(program):
    with open(DATA / "truth-waters.csv", encoding="utf-8", newline="") as stream:
        waters = list(csv.DictReader(line for line in stream if not line.startswith("#")))
    waters = [w for w in waters if w["name"] in ("soft", "middle", "hard")]
    print("1..%d" % (len(waters) * len(WEIGHTS) * 2))
    number = bad = 0
    for water in waters:
        plain = ranked(program, water, WEIGHTS)
        fits = {m["id"]: m["fit"] for m in plain}
        for key, value in WEIGHTS.items():
            for step in (-0.1, 0.1):
                moved = ranked(program, water, {**WEIGHTS, key: max(value + step, 0)})
                kept = len({m["id"] for m in plain[:10]} & {m["id"] for m in moved[:10]})
                tail = len(set(alive(plain)[-50:]) & set(alive(moved)[-50:]))
                most = max(abs(fits[m["id"]] - m["fit"]) for m in moved if m["fit"] is not None)
                number += 1
                fine = kept >= 8 and len(moved) == len(plain)
                bad += not fine
                print("%s %d - %s water, %s %+.1f: top ten keep %d, last fifty keep %d, fit moves"
                      " by %.3f at most" % ("ok" if fine else "not ok", number, water["name"], key,
                                            step, kept, tail, most))
    return bool(bad)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
