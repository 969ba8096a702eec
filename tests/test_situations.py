#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""The runner of situations notices what is missing, what is forbidden, and cases that expect nothing. TAP."""
import pathlib
import sys
import tempfile

import situations

ANSWER = "Leave the water alone.\n\nGH 9 decides; nothing\nharms.\n"
FAULTS = [
    ("what must stand in the first line does not", "first 1\nharms\n", 1),
    ("what must stand in the first lines does", "first 1\nleave the water\n", 0),
    ("wrapped lines are joined", "says\nnothing harms\n", 0),
    ("what may never be said is", "never\nGH 9\n", 1),
    ("what may never be said is not", "never\nleave out\n", 0),
    ("one fault a pattern", "says\nnot here\nnor here\n", 2),
]
BROKEN = ["=== state\nx\n=== command\ny\n", "=== command\ny\n=== says\nz\n", "=== stat\nx\n", "x\n"]


def case(folder, text):
    path = pathlib.Path(folder) / "a.case"
    path.write_text(text, encoding="utf-8")
    return path


def main():
    results = []
    with tempfile.TemporaryDirectory() as folder:
        for name, body, faults in FAULTS:
            path = case(folder, "=== state\nx\n=== command\ny\n=== " + body)
            results.append((name, len(list(situations.against(situations.parse(path), ANSWER))) == faults))
        path = case(folder, "=== state\nx\n=== command\ny\n=== says\nharms\n=== never\nGH 9\n")
        said = list(situations.against_json(situations.parse(path), '{"a": ["GH 9"], "b": {"c": "x"}}'))
        results.append(("JSON that lacks one and says the other", len(said) == 2))
        for text in BROKEN:
            try:
                situations.parse(case(folder, text))
                refused = False
            except ValueError:
                refused = True
            results.append(("a broken case is refused", refused))
        spoken = case(folder, "=== state\nx\n=== command\n$PROGRAM leave\n=== says\nleave\n=== exit\n1\n")
        text, _ = situations.hold("/bin/echo", spoken, False)
        results.append(("another exit code is a fault", any("exit 0" in line for line in text)))
    print("1..%d" % len(results))
    for name, held in results:
        print("%s - %s" % ("ok" if held else "not ok", name))
    return 0 if all(held for _, held in results) else 1


if __name__ == "__main__":
    sys.exit(main())
