#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""How rank and the preparation of propose grow with the catalogue: 300, 3,000 and 30,000 invented
records, the processor's time of each (least of some runs), the slope between them on logarithms."""
import math
import os
import pathlib
import subprocess
import sys

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent))
import records  # noqa: E402

RUNS = {300: 9, 3000: 5, 30000: 2}
work = pathlib.Path(sys.argv[1])


def used_by(command, fine=(0,)):
    """Processor's milliseconds and peak memory, MB."""
    child = subprocess.Popen(command, stdout=subprocess.DEVNULL)
    _, status, usage = os.wait4(child.pid, 0)
    child.returncode = os.waitstatus_to_exitcode(status)
    if child.returncode not in fine:
        sys.exit("%s ended with status %d" % (command[0], child.returncode))
    return 1e3 * (usage.ru_utime + usage.ru_stime), usage.ru_maxrss / 1e3


def slope(times):
    """Of the straight line through the points, both axes logarithmic."""
    points = [(math.log(n), math.log(t)) for n, t in times.items()]
    x, y = (sum(axis) / len(points) for axis in zip(*points))
    return sum((a - x) * (b - y) for a, b in points) / sum((a - x) ** 2 for a, _ in points)


def show(name, times, goal):
    print("%s: %s; grows with the power %.2f (goal %.1f)" % (name, ", ".join(
        "%s species %.1f ms" % (format(n, ","), t) for n, t in times.items()), slope(times), goal))


ranked, prepared = {}, {}
for count, runs in RUNS.items():
    folder = work / str(count)
    records.make(folder, count, 211)  # so that 300 are a fair sample
    rank = [str(work / "build/src/cli/tapshoal"), "rank", "--pH", "7.6", "--GH", "14", "--KH", "9",
            "--temperature", "25", "--only-catalogue", "--catalogue", str(folder)]
    ranked[count] = min(used_by(rank)[0] for _ in range(runs))
    done = [subprocess.run([str(work / "prepare"), str(folder)], stdout=subprocess.PIPE, check=True,
                           encoding="utf-8").stdout for _ in range(runs)]
    prepared[count] = min(float(line.split()[0]) for line in done)
    print("# propose: %s" % done[0].strip())
# The whole of propose, five lists of the largest catalogue: soft, middle, hard water.
whole = [used_by([str(work / "build/src/cli/tapshoal"), "propose", "--GH", gh, "--KH", kh, "--pH", ph, "--temperature", "24.5",
                  "--size", "120x50x50", "--mature", "--lists", "5", "--only-catalogue", "--catalogue",
                  str(work / str(max(RUNS)))], (0, 1)) for gh, kh, ph in (("4", "3", "6.8"), ("9", "6", "7.4"), ("25", "14", "8"))]
print("propose of %s species: %.1f s and %.0f MB at the most (goals 10, 300)" % (
    format(max(RUNS), ","), max(ms for ms, _ in whole) / 1e3, max(mb for _, mb in whole)))
show("rank", ranked, 1.1)
show("propose, what comes before its search", prepared, 2.1)
sys.exit(slope(ranked) > 1.1 or slope(prepared) > 2.1)
