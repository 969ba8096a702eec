#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""tests/golden.py on cases of its own, with `cat` as the program: what must fail does. TAP."""
import contextlib
import io
import os
import pathlib
import sys
import tempfile

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
import golden  # noqa: E402

CASES = [  # name, its text, does it hold?
    ("right", "=== command\n$PROGRAM in\n=== file in\nx\n=== stdout\nx\n", True),
    ("reads stdin", "=== command\n$PROGRAM\n=== stdin\nx\n=== stdout\nx\n", True),
    ("own folder", "=== command\npwd >&2; exit 1\n=== exit\n1\n=== stderr\n@FOLDER@\n", True),
    ("wrong stdout", "=== command\n$PROGRAM\n=== stdin\nx\n=== stdout\ny\n", False),
    ("stderr unasked", "=== command\necho x >&2\n", False),
    ("wrong exit", "=== command\nexit 1\n", False),
    ("carriage return", "=== command\nprintf 'x\\r\\n'\n=== stdout\nx\n", False),
    ("no last line end", "=== command\nprintf x\n=== stdout\nx", False),
    ("no command", "=== exit\n0\n", False),
    ("misspelt section", "=== command\ntrue\n=== stdotu\nx\n", False),
    ("section twice", "=== command\ntrue\n=== stdout\nx\n=== stdout\n", False),
    ("crash expected", "=== command\nsh -c 'kill -SEGV $$'; exit $?\n=== exit\n139\n", False),
]
LATER = "=== command\n$PROGRAM\n=== stdin\nx\n=== exit\n0\n=== stdout\nold\n"


def holds(folder, *flags):
    with contextlib.redirect_stdout(io.StringIO()):
        return golden.main(["/bin/cat", "--cases", folder, *flags]) == 0


results = []
with tempfile.TemporaryDirectory() as top:
    results.append(("no case at all fails", not holds(top)))
    case = pathlib.Path(top) / "only.case"
    for title, text, fine in CASES:
        case.write_text(text, encoding="utf-8")
        results.append((title, holds(top) == fine))
    for title, text in (("accept leaves a crash alone", CASES[-1][1]),
                        ("accept leaves a misspelt section alone", CASES[-3][1])):
        case.write_text(text, encoding="utf-8")
        results.append((title, not holds(top, "--accept") and case.read_text() == text))
    case.write_text(LATER, encoding="utf-8")
    results.append(("accept writes what came out", not holds(top) and holds(top, "--accept")
                    and holds(top) and case.read_text().endswith("=== exit\n0\n=== stdout\nx\n")))
    case.write_text(CASES[3][1], encoding="utf-8")
    left = pathlib.Path(top) / "left.txt"
    other = pathlib.Path(top) / "other.case"
    other.write_text(CASES[0][1], encoding="utf-8")
    left.write_text("only a reason\n", encoding="utf-8")
    results.append(("a case that is left out is not run", holds(top, "--without", str(left))))
    for text in ("gone a reason\n", "only\n"):
        left.write_text(text, encoding="utf-8")
        try:
            holds(top, "--without", str(left))
            results.append(("a case left out that is none, or without reason", False))
        except ValueError:
            results.append(("a case left out that is none, or without reason", True))
print("1..%d" % len(results))
for number, (title, fine) in enumerate(results, 1):
    print("%s %d - %s" % ("ok" if fine else "not ok", number, title))
sys.exit(not all(fine for _, fine in results))
