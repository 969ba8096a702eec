#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""The counter of tests/tap.py against a good, a failing, a crashing and an empty suite (as TAP)."""
import os
import sys

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
import tap  # noqa: E402

CASES = [
    ("all pass", "1..2\nok 1 - a\nok 2 - b\n", 0, (2, 0, 0)),
    ("one fails", "1..2\nok 1 - a\nnot ok 2 - b\n", 1, (1, 1, 0)),
    ("crash in the middle counts what the plan still promised",
     "1..5\nok 1 - a\nok 2 - b\n", -11, (2, 3, 0)),
    ("crash after the last point", "1..1\nok 1 - a\n", -6, (1, 1, 0)),
    ("an empty suite is a failure", "", 0, (0, 1, 0)),
    ("a plan of nothing is a failure", "1..0\n", 0, (0, 1, 0)),
    ("a skip is neither", "1..2\nok 1 - a\nok 2 - b # SKIP no such program\n", 0, (1, 0, 1)),
]

print("1..%d" % len(CASES))
bad = 0
for number, (name, output, status, want) in enumerate(CASES, 1):
    got = tap.count(output, status)[:3]
    bad += got != want
    print("%s %d - %s%s" % ("ok" if got == want else "not ok", number, name,
                            "" if got == want else " (got %s)" % (got,)))
sys.exit(bool(bad))
