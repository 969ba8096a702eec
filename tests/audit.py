#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""A blind audit of the species records: what is known from the name alone, against the record.

Usage: audit.py draw [SEED [COUNT]]   names drawn by a seeded shuffle; no record is opened
       audit.py                       tests/data/audit.csv against the records, as TAP

The draw orders the record names by the SHA-256 of "SEED NAME", so it is the same everywhere and a
new record moves no other one. The values of audit.csv were written down from these names before
the records were opened. Where the two still differ by more than LIMITS, or in a word, `settled`
must name the field and say why the record stands; a row fails that does not.
"""
import csv
import hashlib
import pathlib
import re
import sys

import speciesfile

DATA = pathlib.Path(__file__).resolve().parent / "data"
SEED = "2026-11-25"
COUNT = 40
# What counts as a difference: at an end of a range; adult length as a share of the audit's.
LIMITS = {"pH": 0.5, "GH": 4, "temperature": 3}
LENGTH = 0.30


def draw(seed, count):
    names = speciesfile.paths()
    return sorted(names, key=lambda n: hashlib.sha256(f"{seed} {n}".encode()).hexdigest())[:count]


def range_differences(row, record):
    for name, limit in LIMITS.items():
        for kind, field in (("tolerated", name), ("preferred", name + "_preferred")):
            ours = speciesfile.span(record["water"][name][kind])
            blind = speciesfile.span(row[field])
            if any(abs(a - b) > limit + 1e-9 for a, b in zip(ours, blind)):
                yield field, record["water"][name][kind]


def differences(row, record):
    """Fields in which the record departs from the audit, with the record's value."""
    yield from range_differences(row, record)
    length = speciesfile.span(record["adult_length"])[0]
    if abs(length / float(row["length"]) - 1) > LENGTH + 1e-9:
        yield "length", record["adult_length"]
    words = {"least": record["group"]["least"], "gape": record["gape"],
             "activity": record["needs"]["activity"], "to_others": record["to_others"]}
    for field, word in words.items():
        if word != row[field]:
            yield field, word


def compare(rows):
    paths = speciesfile.paths()
    counts = {"mended": 0, "stands": 0}
    print("TAP version 13\n1..%d" % len(rows))
    for number, row in enumerate(rows, 1):
        settled = dict(re.findall(r"(\w+): record (mended|stands)", row["settled"]))
        for verdict in settled.values():
            counts[verdict] += 1
        record = speciesfile.read(paths[row["name"]])
        open_ones = [(field, value) for field, value in differences(row, record)
                     if settled.get(field) != "stands"]
        for field, value in open_ones:
            print("# %s: %s %s, audit %s" % (row["name"], field, value, row[field]))
        print("%sok %d - %s" % ("not " if open_ones else "", number, row["name"]))
    print("# seed %s, %d records: %d differences settled, %d by mending the record, %d in its favour"
          % (SEED, len(rows), sum(counts.values()), counts["mended"], counts["stands"]))


if __name__ == "__main__":
    if sys.argv[1:2] == ["draw"]:
        seed = sys.argv[2] if len(sys.argv) > 2 else SEED
        count = int(sys.argv[3]) if len(sys.argv) > 3 else COUNT
        print("\n".join([f"# seed {seed}"] + draw(seed, count)))
    else:
        with open(DATA / "audit.csv", encoding="utf-8", newline="") as stream:
            compare(list(csv.DictReader(line for line in stream if not line.startswith("#"))))
