#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Classic communities and classic mistakes against check: tests/data/communities.csv.

Usage: communities.py PROGRAM; prints TAP, one line a community.
"""
import json
import pathlib
import re
import sys
import tempfile

import tap

DATA = pathlib.Path(__file__).resolve().parent / "data" / "communities.csv"
TANK = ("tank: {length: %s cm, width: %s cm, height: %s cm, temperature: %s C, filter: mature, plants: some,"
        " cover: yes, substrate: sand, flow: gentle, feeding: ordinary, water_change: 30 %% every 7 days}")
WATER = "water: {readings: [{method: drops, pH: %s, GH: %s dH, KH: %s dH}]}"
# What a sound community may be told: waste is a matter of routine, and the law comes first anyway.
BESIDES = {"stock.nitrate-load", "stock.nitrate-open", "stock.buffer", "stock.buffer-open", "stock.caution"}


def plan(stock, size, gh, kh, ph, warm):
    lines = [WATER % (ph, gh, kh), TANK % (*size.split("x"), warm), "stock:"]
    for one in stock.split(","):
        count, name, sex = re.fullmatch(r"(\d+) ([^(]+?)(?: \((\w+)\))?", one.strip()).groups()
        lines.append('  - {species: "%s", count: %s%s}' % (name, count, ", sex: " + sex if sex else ""))
    return "\n".join(lines) + "\n"


def grave(program, text):
    """The codes of what is graver than a note."""
    with tempfile.TemporaryDirectory() as folder:
        path = pathlib.Path(folder) / "plan.yaml"
        path.write_text(text, encoding="utf-8")
        out, err, status = tap.run([program, "check", str(path), "-f", "json", "--today", "2026-03-10"], 60,
                                   stderr=-1)
        if status not in (0, 1):
            raise ValueError(err.decode("utf-8", "replace"))
        return {j["code"] for j in json.loads(out)["judgements"] if j["severity"] in ("concern", "conflict", "now")}


def main():
    program = sys.argv[1]
    rows = [line.split(";") for line in DATA.read_text(encoding="utf-8").splitlines()
            if line.startswith(("sound;", "wrong;"))]
    print("1..%d" % len(rows))
    failed = 0
    for number, (kind, *row) in enumerate(rows, 1):
        try:
            told = grave(program, plan(*row)) - BESIDES
            fine = not told if kind == "sound" else bool(told)
        except (ValueError, KeyError) as fault:
            told, fine = {str(fault)}, False
        print("%sok %d - %s: %s in %s cm" % ("" if fine else "not ", number, kind, row[0], row[1]))
        if not fine:
            failed += 1
            print("# told: %s" % (", ".join(sorted(told)) or "nothing"))
    return failed > 0


if __name__ == "__main__":
    sys.exit(main())
