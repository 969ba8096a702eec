#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Times rank --batch over tables of random waters; fails where a line is long or memory grows. `--million`:
a million of them as a stream instead, in and out, each line looked at; behind it the program, in the place of a
build of its own."""
import json
import os
import pathlib
import random
import re
import subprocess
import sys
import threading
import time

LINE_MOST = 4096
work = pathlib.Path(sys.argv[1])
program = str(work / "build/src/cli/tapshoal")


def waters(rows, out):
    random.seed(rows)
    out.write("name,GH dH,KH dH,pH,NO3 mg/L\n")
    for row in range(rows):
        gh = random.uniform(0.5, 25)
        out.write("water %d,%.1f,%.1f,%.1f,%d\n" % (
            row, gh, min(gh * random.uniform(0.3, 1.1), 20), random.uniform(5.5, 8.4),
            random.randrange(60)))


def table(rows):
    path = work / ("waters-%d.csv" % rows)
    with path.open("w", encoding="utf-8") as out:
        waters(rows, out)
    return path


def held(pid):
    """Kilobytes that a process held at the most until now."""
    status = pathlib.Path("/proc/%d/status" % pid).read_text(encoding="utf-8")
    return int(re.search(r"VmHWM:\s+(\d+)", status)[1])


def stream(rows):
    """No line is missing, each is the answer to its row, and no more is held than over a fiftieth of them."""
    _, little, _ = run(rows // 50)
    begin, seen, bytes_out, longest = time.perf_counter(), {}, 0, 0
    with subprocess.Popen([program, "rank", "--temperature", "25", "--batch", "-"], stdin=subprocess.PIPE,
                          stdout=subprocess.PIPE, encoding="utf-8") as child:
        def feed():
            waters(rows, child.stdin)
            child.stdin.close()

        threading.Thread(target=feed).start()
        for row, line in enumerate(child.stdout):
            bytes_out, longest = bytes_out + len(line), max(longest, len(line))
            if '"water %d"' % row not in line or (row % 1000 == 0 and not json.loads(line)):
                sys.exit("line %d answers another row: %.200s" % (row + 1, line))
            if row + 1 in (rows // 100, rows // 10):
                seen[row + 1] = held(child.pid)
        _, status, usage = os.wait4(child.pid, 0)
        child.returncode = os.waitstatus_to_exitcode(status)
    seen[row + 1] = usage.ru_maxrss
    print("%d waters in, %d lines out, in order, in %.0f s (processors %.0f s); %.1f GB; longest line %d bytes; held: %d kB over "
          "%d, %s" % (
        rows, row + 1, time.perf_counter() - begin, usage.ru_utime + usage.ru_stime, bytes_out / 1e9, longest,
        little, rows // 50, ", ".join("%d kB after %d" % (kb, at) for at, kb in seen.items())))
    return (row + 1 != rows or child.returncode not in (0, 1) or longest > LINE_MOST or
            seen[rows] > little * 1.05)


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


if len(sys.argv) > 2 and sys.argv[2] == "--million":
    program = sys.argv[3] if len(sys.argv) > 3 else program
    sys.exit(stream(int(sys.argv[4]) if len(sys.argv) > 4 else 1000000))
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
