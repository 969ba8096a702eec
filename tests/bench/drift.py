#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Times the year of 1,000 tanks and a whole rank in turn; exit 1 when the ratio reaches 60."""
import pathlib
import statistics
import subprocess
import sys
import time

LIMIT = 60
work = pathlib.Path(sys.argv[1])
rank = [str(work / "build/src/cli/tapshoal"), "rank", "--pH", "7.6", "--GH", "14", "--KH", "9",
        "--temperature", "25"]
times = {"rank": [], "drift": []}
for run in range(8):
    start = time.perf_counter()
    subprocess.run(rank, stdout=subprocess.DEVNULL, check=True)
    spent = time.perf_counter() - start
    done = subprocess.run([str(work / "drift")], stdout=subprocess.PIPE, check=True)
    if run:
        times["rank"].append(spent)
        times["drift"].append(float(done.stdout.split()[0]))
ratio = statistics.median(d / r for d, r in zip(times["drift"], times["rank"]))
print("1,000 tanks x 365 days %.0f ms, one rank %.1f ms, ratio %.1f of %d allowed (7 pairs)" % (
    1e3 * statistics.median(times["drift"]), 1e3 * statistics.median(times["rank"]), ratio, LIMIT))
sys.exit(ratio >= LIMIT)
