#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Times rank --batch over tables of random waters; fails where a line is long or memory grows."""
import os
import pathlib
import random
import subprocess
import sys
import time

LINE_MOST = 4096
work = pathlib.Path(sys.argv[1])
program = str(work / "build/src/cli/tapshoal")


def table(rows):
    random.seed(rows)
    path = work / ("waters-%d.csv" % rows)
    with path.open("w", encoding="utf-8") as out:
        out.write("name,GH dH,KH dH,pH,NO3 mg/L\n")
        for row in range(rows):
            gh = random.uniform(0.5, 25)
            out.write("water %d,%.1f,%.1f,%.1f,%d\n" % (
                row, gh, min(gh * random.uniform(0.3, 1.1), 20), random.uniform(5.5, 8.4),
                random.randrange(60)))
    return path


def run(rows, *flags):
    """Waters a second, kilobytes held at the most, the longest line."""
    path = table(rows)
    begin = time.perf_counter()
    with subprocess.Popen([program, "rank", "--temperature", "25", "--batch", str(path), *flags],
                          stdout=subprocess.PIPE) as child:
        longest = max(len(line) for line in child.stdout)
        _, status, usage = os.wait4(child.pid, 0)
        child.returncode = os.waitstatus_to_exitcode(status)
    if child.returncode not in (0, 1):
        sys.exit("rank --batch ended with %d" % child.returncode)
    return rows / (time.perf_counter() - begin), usage.ru_maxrss, longest


def single():
    begin = time.perf_counter()
    for _ in range(20):
        subprocess.run([program, "rank", "--GH", "9", "--KH", "6", "--pH", "7.4", "--temperature",
                        "25"], stdout=subprocess.DEVNULL, check=False)
    return 20 / (time.perf_counter() - begin)


one = single()
whole, _, _ = run(500, "-f", "json")
short, little, longest = run(10000)
csv, _, _ = run(10000, "-f", "csv")
_, much, _ = run(100000)
print("rank --batch: %.0f waters a second in lines, %.0f in CSV; %.1f times whole answers (%.0f), "
      "%.1f times one rank a water (%.0f)" % (short, csv, short / whole, whole, short / one, one))
print("longest line %d bytes; %d kB held over 10,000 waters, %d over 100,000" % (
    longest, little, much))
sys.exit(longest > LINE_MOST or much > little * 1.05 or short < 20 * whole)
