#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""The truth table (tests/data/truth.csv) against the program and the shipped records.

Usage: truth.py PROGRAM [--rows]. TAP: of the first 30 rows of soft, middle and hard water at least 27
hold, of all rows at least 95 in 100, none has a wrong `suits` (one where the table says neither
suits nor, in `also`, suits), and every species has its record. --rows shows each difference.
"""
import csv
import json
import pathlib
import subprocess
import sys

DATA = pathlib.Path(__file__).resolve().parent / "data"


def rows(name):
    with open(DATA / name, encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(line for line in stream if not line.startswith("#")))


def verdicts(program, water):
    done = subprocess.run(
        [program, "rank", "-f", "json", "--method", "drops", "--pH", water["pH"], "--GH",
         water["GH_dH"], "--KH", water["KH_dH"], "--temperature", water["temperature_C"]],
        stdout=subprocess.PIPE, check=False)
    answer = json.loads(done.stdout)
    found = {m["id"]: m for m in answer["ranked"] + answer["no_home"] + answer["excluded"]}
    return {**found, **{m["species"]: m for m in found.values()}}


def judge(table, got, water, first):
    """How many rows of one water hold, what differs, how many are wrong or without a record."""
    hold, differ, missing, wrong = 0, [], 0, 0
    for row in table:
        if row["water"] != water or row["first"] != first:
            continue
        match = got.get(row["species"]) or got.get(row["older_name"])
        if not match:
            missing += 1
            continue
        fine = match["verdict"] in (row["expected"], row["also"])
        hold += fine
        wrong += not fine and match["verdict"] == "suits"
        if not fine:
            differ.append("%s: %s, table %s (%s)" % (
                row["species"], match["verdict"], row["expected"], row["reason"]))
    return hold, differ, missing, wrong


def main(program, show):
    table = rows("truth.csv")
    waters = rows("truth-waters.csv")
    tests, held, unfit = [], 0, 0
    for water in waters:
        got = verdicts(program, water)
        for first in ("yes", "no"):
            hold, differ, missing, wrong = judge(table, got, water["name"], first)
            held += hold
            unfit += wrong + missing
            which = "first 30" if first == "yes" else "other 30"
            print("# %-9s %s: %d hold, %d differ, %d wrong suits, %d without a record" % (
                water["name"], which, hold, len(differ), wrong, missing))
            if show:
                print("".join("#   %s\n" % line for line in differ), end="")
            if first == "yes" and water["name"] in ("soft", "middle", "hard"):
                tests.append((hold >= 27, "27 of the %s in %s water" % (which, water["name"])))
    tests.append((len(table) > 0 and held >= 0.95 * len(table),
                  "95 in 100 of all rows (%d of %d)" % (held, len(table))))
    tests.append((unfit == 0, "no wrong suits, no species without a record"))
    print("1..%d" % len(tests))
    for number, (fine, name) in enumerate(tests, 1):
        print("%s %d - %s" % ("ok" if fine else "not ok", number, name))
    return not all(fine for fine, _ in tests)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], "--rows" in sys.argv))
