#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Makes 320 records from the shipped ones and times rank beside the bare parser, in turn."""
import pathlib
import statistics
import subprocess
import sys
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent))
import records  # noqa: E402

work = pathlib.Path(sys.argv[1])
folder = work / "records"
records.make(folder, 320)
rank = [str(work / "build/src/cli/tapshoal"), "rank", "--pH", "7.6", "--GH", "14", "--KH", "9",
        "--temperature", "25", "--only-catalogue", "--catalogue", str(folder)]
parse = [str(work / "parse"), str(folder)]
times = {"rank": [], "libyaml": []}
for run in range(16):
    for name, command in (("rank", rank), ("libyaml", parse)):
        start = time.perf_counter()
        subprocess.run(command, stdout=subprocess.DEVNULL, check=True)
        if run:
            times[name].append(time.perf_counter() - start)
ratios = [a / b for a, b in zip(times["rank"], times["libyaml"])]
print("rank %.1f ms, libyaml alone %.1f ms, ratio %.2f (median of %d pairs)" % (
    1e3 * statistics.median(times["rank"]), 1e3 * statistics.median(times["libyaml"]),
    statistics.median(ratios), len(ratios)))
