#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Every command that README.md shows behind a `$` is run; what it prints must stand below it. TAP.

Usage: readme.py PROGRAM
"""
import os
import pathlib
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parent.parent
PROGRAM = os.path.abspath(sys.argv[1])
lines = (ROOT / "README.md").read_text(encoding="utf-8").splitlines()
shown = [i for i, line in enumerate(lines) if line.startswith("    $ tapshoal ")]
print("1..%d" % len(shown))
bad = 0
for number, start in enumerate(shown, 1):
    command = lines[start][6:].replace("tapshoal", PROGRAM, 1)
    done = subprocess.run(["sh", "-c", command], stdout=subprocess.PIPE, cwd=ROOT)
    want = []
    for line in lines[start + 1:]:
        if line and not line.startswith("    "):
            break
        want.append(line[4:].rstrip())
    same = "\n".join(want).strip() == done.stdout.decode("utf-8").strip()
    bad += not same
    print("%s %d - %s" % ("ok" if same else "not ok", number, lines[start][6:]))
sys.exit(bool(bad))
