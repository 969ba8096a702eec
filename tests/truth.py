#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""The truth table (tests/data/truth.csv) against the program and the shipped records.

Usage: truth.py PROGRAM [--rows]. Prints a line a water: how many rows hold, which differ, and which
species have no record yet. A wrong `suits` is one where the table says neither suits nor, in
`also`, suits. Not part of the plain run while rows still differ; docs/design.md says how it stands.
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
    found = {m["id"]: m for m in answer["ranked"] + answer["excluded"]}
    return {**found, **{m["species"]: m for m in found.values()}}


def main(program, show):
    table = rows("truth.csv")
    worst = 0
    for water in rows("truth-waters.csv"):
        got = verdicts(program, water)
        for first in ("yes", "no"):
            hold, differ, missing, wrong = 0, [], 0, 0
            for row in table:
                if row["water"] != water["name"] or row["first"] != first:
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
            worst += wrong
            print("%-9s %s: %d hold, %d differ, %d wrong suits, %d without a record" % (
                water["name"], "first 30" if first == "yes" else "other 30", hold, len(differ),
                wrong, missing))
            if show:
                print("".join("    %s\n" % line for line in differ), end="")
    return bool(worst)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], "--rows" in sys.argv))
