#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Makes 320 records from the shipped ones and times rank beside the bare parser, in turn."""
import pathlib
import re
import statistics
import subprocess
import sys
import time

work = pathlib.Path(sys.argv[1])
records = work / "records"
records.mkdir()
shipped = [p.read_text(encoding="utf-8") for p in sorted(pathlib.Path("species").rglob("*.yaml"))
           if "sources" not in p.parts]
for i in range(320):
    text = re.sub(r"^species: .*$", "species: Genusname species%03d" % i,
                  shipped[i % len(shipped)], flags=re.M)
    (records / ("s%03d.yaml" % i)).write_text(text, encoding="utf-8")
rank = [str(work / "build/src/cli/tapshoal"), "rank", "--pH", "7.6", "--GH", "14", "--KH", "9",
        "--temperature", "25", "--only-catalogue", "--catalogue", str(records)]
parse = [str(work / "parse"), str(records)]
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
