#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""The year of 1,000 tanks and a whole rank in turn, in seconds of the processor, which other work does
not stretch; exit 1 when the ratio reaches 60."""
import os
import pathlib
import statistics
import subprocess
import sys

LIMIT = 60
work = pathlib.Path(sys.argv[1])
rank = [str(work / "build/src/cli/tapshoal"), "rank", "--pH", "7.6", "--GH", "14", "--KH", "9",
        "--temperature", "25"]
times = {"rank": [], "drift": []}


def spent(command):
    before = os.times()
    subprocess.run(command, stdout=subprocess.DEVNULL, check=True)
    after = os.times()
    return (after.children_user + after.children_system
            - before.children_user - before.children_system)


# A rank is over in a few ticks of that clock, so that twenty of them make one.
for run in range(8):
    one = sum(spent(rank) for _ in range(20)) / 20
    year = spent([str(work / "drift")])
    if run:
        times["rank"].append(one)
        times["drift"].append(year)
ratio = statistics.median(d / r for d, r in zip(times["drift"], times["rank"]))
print("1,000 tanks x 365 days %.0f ms of the processor, one rank %.1f ms, ratio %.1f of %d allowed (7 pairs)" % (
    1e3 * statistics.median(times["drift"]), 1e3 * statistics.median(times["rank"]), ratio, LIMIT))
sys.exit(ratio >= LIMIT)
