#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""The counter of tests/tap.py against good and bad suites, as texts and as real processes (TAP)."""
import contextlib
import io
import os
import sys

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
import tap  # noqa: E402

TEXTS = [  # name, output, exit status, (passed, failed, skipped)
    ("all pass", "1..2\nok 1 - a\nok 2 - b\n", 0, (2, 0, 0)),
    ("one fails", "1..2\nok 1 - a\nnot ok 2 - b\n", 1, (1, 1, 0)),
    ("crash in the middle counts what the plan still promised",
     "1..5\nok 1 - a\nok 2 - b\n", -11, (2, 3, 0)),
    ("crash after the last point", "1..1\nok 1 - a\n", -6, (1, 1, 0)),
    ("hung after the last point", "1..1\nok 1 - a\n", None, (1, 1, 0)),
    ("an empty suite is a failure", "", 0, (0, 1, 0)),
    ("a plan of nothing is a failure", "1..0\n", 0, (0, 1, 0)),
    ("points without a plan are a failure", "ok 1 - a\n", 0, (1, 1, 0)),
    ("more points than planned are a failure", "1..1\nok 1 - a\nok 2 - b\n", 0, (2, 1, 0)),
    ("two groups add their plans", "1..1\nok 1 - a\n1..2\nok 1 - b\nok 2 - c\n", 0, (3, 0, 0)),
    ("a skip is neither", "1..2\nok 1 - a\nok 2 - b # SKIP no such program\n", 0, (1, 0, 1)),
]
SUITES = [  # shell lines; the closing line and the exit status of a whole run
    (["printf '1..2\\nok 1\\nok 2 # SKIP no\\n'"], "1 passed, 0 failed, 1 skipped", 0),
    (["printf '1..1\\nok 1\\n'", "printf '1..2\\nok 1\\nnot ok 2\\n'; exit 1"],
     "2 passed, 1 failed, 0 skipped", 1),
    (["printf '1..3\\nok 1\\n'; kill -SEGV $$"], "1 passed, 2 failed, 0 skipped", 1),
    (["printf '1..2\\nok 1\\n'; sleep 60 | cat", "printf '1..1\\nok 1\\n'"],
     "2 passed, 1 failed, 0 skipped", 1),
    (["true"], "0 passed, 1 failed, 0 skipped", 1),
    ([], "0 passed, 0 failed, 0 skipped", 1),
]


def whole_run(lines):
    """The closing line and exit status of tap.main over shell lines in the place of tests."""
    heard = io.StringIO()
    with contextlib.redirect_stdout(heard):
        status = tap.main([{"name": line, "cmd": ["sh", "-c", line], "env": {}, "workdir": None,
                            "timeout": 1} for line in lines])
    return heard.getvalue().splitlines()[-1], status


results = [(name, tap.count(output, status)[:3], want) for name, output, status, want in TEXTS]
results += [("run of %s" % (lines or "nothing"), whole_run(lines), (closing, status))
            for lines, closing, status in SUITES]
print("1..%d" % len(results))
for number, (name, got, want) in enumerate(results, 1):
    name = name.replace("#", "")
    print("ok %d - %s" % (number, name) if got == want else
          "not ok %d - %s (got %s)" % (number, name, got))
sys.exit(any(got != want for _, got, want in results))
