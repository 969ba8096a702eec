#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""The runner of the table of waters notices what is missing, forbidden, contradicted, and rows that say nothing. TAP."""
import pathlib
import sys
import tempfile

import waters

TEXTS = {"water": "Soft: GH 6\nA tank of it runs at 7.8\nmore\nGH 6 again, last\n", "rank": "GH 6\n", "check": "none\n"}
FAULTS = [
    ("what must stand first does", {"first": ["7\\.8"]}, 0),
    ("what stands in the fourth line is not first", {"first": ["last"]}, 1),
    ("what all must say, one does not", {"all": ["GH 6"]}, 1),
    ("what one answer must say", {"says rank": ["GH 6"]}, 0),
    ("what one answer must say and does not", {"says check": ["GH 6"]}, 1),
    ("what none may say, two do", {"never": ["GH 6"]}, 2),
]
BROKEN = ["flags: --GH 6\n", "water: x\nflags: --GH 6\n", "water: x\nfirst: y\n", "water: x\nflag: --GH 6\n"]


def asked(gh, unusual=()):
    return {"water": {"gh": {"value": gh}, "kh": {"value": None}, "ph_tank": None, "ph_read": None, "unusual": list(unusual)}}


def main():
    results = [(name, len(list(waters.expected(row, TEXTS))) == faults) for name, row, faults in FAULTS]
    own = {"gh_dh": 6, "kh_dh": 3, "ph": None, "ph_tank": None, "unusual": ["soft"]}
    for name, other, faults in (("answers that agree", asked(6, ["soft"]), 0), ("another GH", asked(7), 1),
                                ("no GH", asked(None), 1), ("a mark of its own", asked(6, ["hard"]), 1)):
        results.append((name, len(list(waters.agree(own, other, "rank"))) == faults))
    with tempfile.TemporaryDirectory() as folder:
        for text in BROKEN:
            path = pathlib.Path(folder) / "a.case"
            path.write_text(text, encoding="utf-8")
            try:
                waters.rows(path)
                refused = False
            except ValueError:
                refused = True
            results.append(("refused: " + text.replace("\n", "; "), refused))
    of_a_kind = [len(waters.rows(p)) for p in sorted(waters.FOLDER.glob("*.case"))]
    results.append(("150 waters, fifteen of a kind or more", len(of_a_kind) == 10 and min(of_a_kind) >= 15))
    for number, (name, right) in enumerate(results, 1):
        print("%s %d - %s" % ("ok" if right else "not ok", number, name))
    print("1..%d" % len(results))
    return not all(right for _, right in results)


if __name__ == "__main__":
    sys.exit(main())
