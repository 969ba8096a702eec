#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""The grid of propose beside one rank, then forty of its lists beside two general-purpose solvers on the
same integers: equal by ==, and how many times as long the faster one takes, in seconds of the processor.
Usage: grid.py WORK [solvers [SEED]]; with the word the solvers alone."""
import pathlib
import re
import resource
import statistics
import subprocess
import sys

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "stock"))
import solvers  # noqa: E402  (the same calls as in the test)

RANK_MS, CALL_MS, TIMES = 3, 500, 50
work = pathlib.Path(sys.argv[1])
seed = sys.argv[3] if len(sys.argv) > 3 else "1130"


def used():
    """Seconds of the processor of all that was called and has ended."""
    children = resource.getrusage(resource.RUSAGE_CHILDREN)
    return children.ru_utime + children.ru_stime


def one_rank():
    call = [str(work / "build/src/cli/tapshoal"), "rank", "--GH", "9", "--KH", "6", "--pH", "7.4", "--temperature", "24"]
    times = []
    for _ in range(15):
        before = used()
        for _ in range(4):
            subprocess.run(call, stdout=subprocess.DEVNULL, check=True)
        times.append(250 * (used() - before))
    return statistics.median(times)


def grid():
    text = subprocess.run([work / "grid", "species"], check=True, stdout=subprocess.PIPE, encoding="utf-8").stdout
    rank = one_rank()
    slowest, unproven, gap = re.search(
        r"^slowest ([0-9.]+) ms; \d+ lists, (\d+) not proven, widest gap ([0-9.]+)", text, re.M).groups()
    print(text, end="")
    print("one rank %.1f ms: the slowest call is %.0f times that (goal %.0f), %.0f ms where rank takes %d (goal %d)" % (
        rank, float(slowest) / rank, CALL_MS / RANK_MS, RANK_MS * float(slowest) / rank, RANK_MS, CALL_MS))
    return float(slowest) / rank > CALL_MS / RANK_MS or (int(unproven) and float(gap) > 1)


def solved(model):
    """Optimum and seconds of the processor of the faster solver; the second one has the time of the first."""
    best, limit = (None, None), solvers.LIMIT_S
    for name in ("glpsol", "cbc"):
        before = used()
        try:
            optimum = solvers.SOLVERS[name](model, work, limit)
        except (subprocess.SubprocessError, OSError):
            continue
        seconds = used() - before
        if optimum is not None and (best[1] is None or seconds < best[1]):
            best, limit = (optimum, seconds), max(1, seconds)
    return best


def beside_solvers():
    folder = work / "models"
    folder.mkdir(exist_ok=True)
    drawn = subprocess.run([work / "grid", "species", folder, seed], check=True, stdout=subprocess.PIPE, encoding="utf-8").stdout
    ratios, equal, unsolved = [], 0, 0
    for line in drawn.splitlines():
        name, points, ms, items = line.split()
        optimum, seconds = solved(folder / (name + ".lp"))
        if optimum is None:
            unsolved += 1
            print("%s: %s points, no solver ended" % (name, points), flush=True)
            continue
        equal += optimum == int(points)
        ratios.append(1e3 * seconds / float(ms))
        print("%s: %s items, %s points in %s ms; a solver %.0f in %.1f s, %s, %.0f times" % (
            name, items, points, ms, optimum, seconds, "equal" if optimum == int(points) else "NOT EQUAL", ratios[-1]), flush=True)
    print("%d of %d lists equal by ==, %d beyond the solvers' time; the faster solver takes %.0f times as long in the median "
          "(%.0f at the least; goal %d)" % (equal, len(ratios), unsolved, statistics.median(ratios), min(ratios), TIMES))
    return equal < len(ratios) or statistics.median(ratios) < TIMES


sys.exit(beside_solvers() if "solvers" in sys.argv else grid())
