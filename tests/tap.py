#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Runs every test of a build folder and counts single cases, not executables.

Meson counts an executable as one test. This reads each one's TAP lines instead, so that a crash
in the middle shows as the cases its plan still promised. Usage: tap.py BUILD-FOLDER
Tested by tests/test_tap.py with a failing, a crashing and an empty suite.
"""
import json
import os
import re
import subprocess
import sys

POINT = re.compile(r"^(not )?ok\b(?:\s+\d+)?\s*(.*)$")
PLAN = re.compile(r"^1\.\.(\d+)")


def count(output, status):
    """(passed, failed, skipped, names of what failed) of one suite's output and exit status."""
    passed = failed = skipped = 0
    planned = None
    bad = []
    for line in output.splitlines():
        plan = PLAN.match(line)
        if plan:
            planned = (planned or 0) + int(plan.group(1))
        point = POINT.match(line)
        if not point:
            continue
        if point.group(1):
            failed += 1
            bad.append(point.group(2).strip("- "))
        elif re.search(r"#\s*skip", point.group(2), re.I):
            skipped += 1
        else:
            passed += 1
    seen = passed + failed + skipped
    if planned is None or planned == 0 or seen < planned:
        lost = max(1, (planned or 0) - seen)
        failed += lost
        bad.append("%d planned, %d seen" % (planned or 0, seen))
    elif status != 0 and not failed:
        failed += 1
        bad.append("exit status %d" % status)
    return passed, failed, skipped, bad


def main(build):
    tests = json.loads(subprocess.check_output(["meson", "introspect", "--tests", build]))
    total = [0, 0, 0]
    for test in tests:
        done = subprocess.run(test["cmd"], env={**os.environ, **test["env"]},
                              cwd=test["workdir"] or build, stdout=subprocess.PIPE,
                              stderr=subprocess.STDOUT, timeout=600)
        output = done.stdout.decode("utf-8", "replace")
        *sums, bad = count(output, done.returncode)
        total = [a + b for a, b in zip(total, sums)]
        if bad:
            print("---- %s" % test["name"])
            print(output[-6000:])
            for name in bad:
                print("failed: %s: %s" % (test["name"], name))
    print("%d passed, %d failed, %d skipped" % tuple(total))
    return 1 if total[1] or not total[0] else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
