#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Makes reports of 5 and 50 MB out of the test reports and sentences, and times read on them."""
import pathlib
import resource
import subprocess
import sys
import time

work = pathlib.Path(sys.argv[1])
program = str(work / "build/src/cli/tapshoal")
cases = sorted(pathlib.Path("tests/data/reports").glob("de-*.case"))
text = "".join(p.read_text(encoding="utf-8").split("=== report\n")[1].split("=== ")[0]
               for p in cases)
text += 20 * ("The company tests its water every day; the hardness is said in several units, and "
              "the conductivity of 12 samples is printed beside it.\n")
seconds, peak = {}, {}
for megabytes in (5, 50):
    path = work / ("report-%d.txt" % megabytes)
    path.write_text(text * (megabytes * 10**6 // len(text.encode("utf-8")) + 1), encoding="utf-8")
    best = None
    for _ in range(3 if megabytes == 5 else 1):
        start = time.perf_counter()
        subprocess.run([program, "read", str(path)], stdout=subprocess.DEVNULL,
                       stderr=subprocess.DEVNULL, check=True)
        took = time.perf_counter() - start
        best = took if best is None else min(best, took)
    seconds[megabytes] = best
    peak[megabytes] = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
print("read: 5 MB in %.2f s, 50 MB in %.2f s (%.1f times); at most %.1f and %.1f MB of memory" % (
    seconds[5], seconds[50], seconds[50] / seconds[5], peak[5], peak[50]))
sys.exit(seconds[50] > 13 * seconds[5] or peak[50] > peak[5] + 8)
