#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Runs every test of a build folder and counts single cases, not executables.

Meson counts an executable as one test. This reads each one's TAP lines instead, so that a crash
in the middle shows as the cases its plan still promised. As many run at once as there are
processors; what they say is shown in Meson's order. Usage: tap.py BUILD-FOLDER [--without SUITE],
for a suite that looks at no build.
Tested by tests/test_tap.py with failing, crashing, hanging and empty suites.
"""
import concurrent.futures
import json
import os
import re
import signal
import subprocess
import sys

POINT = re.compile(r"^(not )?ok\b(?:\s+\d+)?\s*(.*)$")
PATIENCE = 5  # times Meson's own limit: it is against hanging, and machines are busy
PLAN = re.compile(r"^1\.\.(\d+)")


def run(command, timeout, data=b"", **how):
    """(stdout, stderr, exit status); a status of None says that it hung and was ended."""
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE,
                          start_new_session=True, **how) as process:
        try:
            out, err = process.communicate(data, timeout)
            return out, err or b"", process.returncode
        except subprocess.TimeoutExpired:
            os.killpg(process.pid, signal.SIGKILL)  # its children too, or the pipe stays open
            out, err = process.communicate()
            return out, err or b"", None


def count(output, status):
    """(passed, failed, skipped, names of what failed) of one suite's output and exit status."""
    passed = failed = skipped = planned = 0
    bad = []
    for line in output.splitlines():
        plan = PLAN.match(line)
        planned += int(plan.group(1)) if plan else 0
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
    if planned == 0 or seen != planned:
        failed += max(1, planned - seen)
        bad.append("%d planned, %d seen" % (planned, seen))
    elif status != 0 and not failed:
        failed += 1
        bad.append("hung" if status is None else "exit status %d" % status)
    return passed, failed, skipped, bad


def run_suite(test):
    """All that one suite said, and its exit status."""
    output, _, status = run(test["cmd"], PATIENCE * test["timeout"], cwd=test["workdir"],
                            env={**os.environ, **test["env"]}, stderr=subprocess.STDOUT)
    return output.decode("utf-8", "replace"), status


def in_order(work, items):
    """What work says of each item, in their order; as many at once as there are processors."""
    with concurrent.futures.ThreadPoolExecutor(len(os.sched_getaffinity(0))) as workers:
        yield from workers.map(work, items)


def main(tests):
    """Runs the tests as `meson introspect --tests` lists them; 0 only if all passed and any ran."""
    total = [0, 0, 0]
    for test, (output, status) in zip(tests, in_order(run_suite, tests)):
        *sums, bad = count(output, status)
        total = [a + b for a, b in zip(total, sums)]
        if bad:
            print("---- %s" % test["name"])
            print(output[-6000:])
            for name in bad:
                print("failed: %s: %s" % (test["name"], name))
    print("%d passed, %d failed, %d skipped" % tuple(total))
    return 1 if total[1] or not total[0] else 0


if __name__ == "__main__":
    os.chdir(sys.argv[1])
    suites = json.loads(subprocess.check_output(["meson", "introspect", "--tests"]))
    without = sys.argv[3:] if sys.argv[2:3] == ["--without"] else []
    if not set(without) <= {suite["name"] for suite in suites}:
        sys.exit("tap.py: no suite %s; names are those of 'meson test --list'" % without)
    sys.exit(main([suite for suite in suites if suite["name"] not in without]))
