#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Blind audits of the species records: what is known from the name alone, against the record.

Usage: audit.py names NUMBER     the names of an audit, drawn by its seed; no record is judged
       audit.py sheet NUMBER     the same as an empty sheet (CSV) to be filled in from the names
       audit.py compare PROGRAM FILE   a filled sheet against the records: every difference, and
                                 how many of how many values (exit code 1 while one is unsettled)
       audit.py PROGRAM          all audits in tests/data against the records, as TAP

A draw orders the record names by the SHA-256 of "SEED NAME", so it is the same everywhere and a
new record moves no other one; who was drawn in an earlier audit is left out. The values of a sheet
were written down from these names before the records were opened. Where the two still differ by
more than LIMITS, or in a word, `settled` must name the field and say why the record stands; a row
fails that does not. A column that a sheet does not have, or a field left empty, is not compared.
"""
import csv
import hashlib
import json
import pathlib
import re
import subprocess
import sys

import speciesfile

DATA = pathlib.Path(__file__).resolve().parent / "data"
AUDITS = [  # file, seed, how many
    ("audit.csv", "2026-11-25", 40),
    ("audit2.csv", "2026-11-29-second", 60),
    ("audit3.csv", "2026-11-30-third", 60),
    ("audit4.csv", "2026-11-30-fourth", 60),
    ("audit5.csv", "2026-11-30-fifth", 60),
    ("audit6.csv", "2026-11-30-sixth", 60),
]
# What counts as a difference: at an end of a range; lengths as a share of the audit's.
LIMITS = {"pH": 0.5, "GH": 4, "KH": 4, "temperature": 3}
LENGTH = 0.30
RANGES = ("pH", "pH_preferred", "GH", "GH_preferred", "KH", "temperature",
          "temperature_preferred")
LENGTHS = ("length", "tank")
WORDS = ("least", "gape", "activity", "hunts", "bottom", "lid", "to_own_kind", "to_others")
# The words of `cautions` that a buyer is told; the others depend on the place or the season.
CAUTIONS = {"venomous", "electric", "bites", "spiny-hands", "grows-too-big", "no-home-suits",
            "hard-to-feed", "dies-of-small-errors", "needs-salt", "escapes", "short-lived", "stings"}


def table(path):
    with open(path, encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(line for line in stream if not line.startswith("#")))


def draw(number):
    _, seed, count = AUDITS[number - 1]
    seen = {row["name"] for name, _, _ in AUDITS[:number - 1] for row in table(DATA / name)}
    names = [n for n in speciesfile.paths() if n not in seen]
    return sorted(names, key=lambda n: hashlib.sha256(f"{seed} {n}".encode()).hexdigest())[:count]


def computed(program):
    """What no record holds by itself: the least tank, and KH by the kind of home water."""
    done = subprocess.run([program, "rank", "-f", "json", "--GH", "8", "--KH", "5", "--pH", "7.2",
                           "--temperature", "24..26"], stdout=subprocess.PIPE, check=False)
    answer = json.loads(done.stdout)
    found = {}
    for match in answer["ranked"] + answer["no_home"] + answer["excluded"]:
        kh = next(p for p in match["parameters"] if p["name"] == "kh")
        found[match["id"]] = {"tank": match["tank_length_cm"], "KH": kh["tolerated"]}
    return found


def ends(field, record, more):
    if field == "KH":
        return more["KH"]
    name, _, kind = field.partition("_")
    return speciesfile.span(record["water"][name][kind or "tolerated"])


def value(field, record, more):
    if field == "tank":
        return more["tank"]
    if field == "length":
        return speciesfile.span(record["adult_length"])[0]
    if field == "least":
        return record["group"]["least"]
    if field == "activity":
        return record["needs"]["activity"]
    if field == "bottom":
        return record["needs"].get("bottom", "any")
    if field == "lid":
        return record["needs"]["cover"]
    return record[field]


def cautions_of(words, row):
    """Since the third audit who jumps or climbs out has a column of its own, `lid`."""
    return CAUTIONS.intersection(words) - ({"escapes"} if "lid" in row else set())


def differences(row, record, more):
    """Each field that was compared: its name, whether it differs, the record's value."""
    for field in RANGES:
        if row.get(field):
            ours, blind = ends(field, record, more), speciesfile.span(row[field])
            limit = LIMITS[field.partition("_")[0]]
            yield (field, any(abs(a - b) > limit + 1e-9 for a, b in zip(ours, blind)),
                   "%g..%g" % tuple(ours))
    for field in LENGTHS:
        if row.get(field):
            ours = value(field, record, more)
            yield field, abs(ours / float(row[field]) - 1) > LENGTH + 1e-9, "%g" % ours
    for field in WORDS:
        if row.get(field):
            ours = value(field, record, more)
            yield field, ours != row[field], ours
    if row.get("cautions"):
        ours = cautions_of(record["cautions"], row)
        yield ("cautions", ours != cautions_of(row["cautions"].split(), row),
               " ".join(sorted(ours)) or "none")


def judge(row, program_says, totals):
    """The differences of a row that are not settled; counts into totals."""
    settled = dict(re.findall(r"(\w+): record (mended|stands)", row.get("settled") or ""))
    record = speciesfile.read(speciesfile.paths()[row["name"]])
    left = []
    for field, differs, ours in differences(row, record, program_says[row["name"]]):
        number = field in RANGES or field in LENGTHS
        kind = "figures" if number else "words"
        totals[kind] += 1
        totals["differing " + kind] += differs or field in settled
        if differs and settled.get(field) != "stands":
            left.append("%s: %s %s, audit %s" % (row["name"], field, ours, row[field]))
    for verdict in settled.values():
        totals[verdict] += 1
    return left


def summary(totals):
    return ("%(differing figures)d of %(figures)d figures and %(differing words)d of %(words)d "
            "words differed; %(mended)d settled by mending the record, %(stands)d in its favour"
            % totals)


def new_totals():
    return dict.fromkeys(("figures", "differing figures", "words", "differing words", "mended",
                          "stands"), 0)


def compare(program, path):
    totals, says, left = new_totals(), computed(program), []
    for row in table(path):
        left += judge(row, says, totals)
    print("\n".join(left + [summary(totals)]))
    return bool(left)


def read_by_family(tests):
    """The notes of the two readers of all records: each is of a record, and settled."""
    known, rows = speciesfile.paths(), table(DATA / "family.csv")
    loose = [r["name"] + " " + r["key"] for r in rows
             if r["name"] not in known or not re.match(r"changed|left: \S", r["settled"])]
    tests.append((not loose, loose, "family.csv: every note is settled"))
    changed = sum(r["settled"].startswith("changed") for r in rows)
    return "# read by family: %d notes, %d changed the record, %d left" % (
        len(rows), changed, len(rows) - changed)


def tap(program):
    says, tests, notes = computed(program), [], []
    for name, seed, count in AUDITS:
        if not (DATA / name).exists():
            continue
        rows, totals = table(DATA / name), new_totals()
        tests.append((len(rows) == count, [], "%s holds its %d rows" % (name, count)))
        for row in rows:
            left = judge(row, says, totals)
            tests.append((not left, left, "%s %s" % (name, row["name"])))
        notes.append("# seed %s, %d records: %s" % (seed, len(rows), summary(totals)))
    notes.append(read_by_family(tests))
    print("TAP version 13\n1..%d" % len(tests))
    for number, (fine, left, name) in enumerate(tests, 1):
        print("".join("# %s\n" % line for line in left), end="")
        print("%sok %d - %s" % ("" if fine else "not ", number, name))
    print("\n".join(notes))


def sheet(number):
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(("name", "also_sold_as") + RANGES + LENGTHS + WORDS + ("cautions", "settled"))
    for name in draw(number):
        record = speciesfile.read(speciesfile.paths()[name])
        also = (record.get("synonyms") or [])[:1] + record["common"]["en"][:1]
        out.writerow([name, " / ".join(also)] + [""] * (len(RANGES + LENGTHS + WORDS) + 2))


if __name__ == "__main__":
    if sys.argv[1] == "names":
        print("\n".join([f"# seed {AUDITS[int(sys.argv[2]) - 1][1]}"] + draw(int(sys.argv[2]))))
    elif sys.argv[1] == "sheet":
        sheet(int(sys.argv[2]))
    elif sys.argv[1] == "compare":
        sys.exit(compare(sys.argv[2], sys.argv[3]))
    else:
        tap(sys.argv[1])
