#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Runs calls, the bare parser and the database in turn and compares their processor time."""
import os
import pathlib
import shutil
import statistics
import subprocess
import sys

RUNS = 41
work = pathlib.Path(sys.argv[1])
flat = work / "flat"
flat.mkdir()
records = [p for p in pathlib.Path("species").rglob("*.yaml") if "sources" not in p.parts]
for record in records:
    shutil.copy(record, flat / record.name)
subprocess.run([work / "query", work / "species.db", str(len(records))], check=True)
program = str(work / "build/src/cli/tapshoal")
water = ["--GH", "9", "--KH", "6", "--pH", "7.4", "--temperature", "24"]
calls = {"rank": [program, "rank", *water], "why": [program, "why", "guppy", *water],
         "find": [program, "find", "tetra"],
         "check": [program, "check", "examples/plans/wishful.yaml"],
         "libyaml": [str(work / "parse"), str(flat)],
         "SQLite": [str(work / "query"), str(work / "species.db")],
         "nothing": ["/bin/true"]}


def seconds(command):
    before = os.times()
    subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False)
    after = os.times()
    return (after.children_user + after.children_system -
            before.children_user - before.children_system)


def perf(command):
    """The clock of the processor is coarse: many runs in one shell."""
    line = "i=0; while [ $i -lt 20 ]; do %s >/dev/null 2>&1; i=$((i+1)); done"
    return seconds(["sh", "-c", line % " ".join("'%s'" % w for w in command)]) / 20


times = {name: [] for name in calls}
for run in range(RUNS // 4):
    for name, command in calls.items():
        times[name].append(perf(command))
for name in ("rank", "why", "find", "check"):
    print("%s %.2f ms of processor: %.2f of libyaml's parse, %.2f of a query of SQLite, start of an "
          "empty program %.2f ms" % (
              name, 1e3 * statistics.median(times[name]),
              statistics.median(a / b for a, b in zip(times[name], times["libyaml"])),
              statistics.median(a / b for a, b in zip(times[name], times["SQLite"])),
              1e3 * statistics.median(times["nothing"])))
