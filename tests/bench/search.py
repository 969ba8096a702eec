#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Times two general-purpose solvers on the model that bench_search wrote, beside our own time."""
import pathlib
import re
import signal
import subprocess
import sys
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "stock"))
import solvers  # noqa: E402  (the same calls as in the test)

work = pathlib.Path(sys.argv[1])
model = work / "model.lp"
failed = False
for kind in ([], ["conditions"]):
    print("concerns %s:" % ("cost points" if kind else "exclude, as they do by default"))
    ours = subprocess.run([str(work / "bench"), "species", str(model)] + kind, check=True,
                          stdout=subprocess.PIPE, encoding="utf-8").stdout
    print(ours, end="")
    first = re.search(r"^first ([0-9.]+) ms, (-?\d+) points", ours, re.M)
    times = {}
    for name in ("glpsol", "cbc"):  # the faster one counts, so the second has the time of the first
        start = time.perf_counter()
        try:
            points = solvers.SOLVERS[name](
                model, work, 1e-3 * times.get("glpsol", 1e3 * solvers.LIMIT_S))
        except subprocess.TimeoutExpired:
            print("%s: no answer in the time that glpsol took" % name)
            continue
        except (subprocess.SubprocessError, OSError) as error:
            ended = getattr(error, "returncode", 0) == -signal.SIGKILL and times
            print("%s: %s" % (name, "no answer in the time that glpsol took" if ended else error))
            failed |= not ended
            continue
        times[name] = 1e3 * (time.perf_counter() - start)
        equal = points == int(first.group(2))
        failed |= not equal
        print("%s %.0f ms, %s points, %s" % (
            name, times[name], points, "equal" if equal else "NOT EQUAL"))
    if times:
        print("the faster solver takes %.0f times as long as the first list (goal 50)" %
              (min(times.values()) / float(first.group(1))))
sys.exit(failed)
