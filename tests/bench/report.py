#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Makes reports of 5 and 50 MB out of the test reports and sentences, and times read on them: the
processor's seconds, within 48 MB of address space, so that memory that grows fails."""
import os
import pathlib
import resource
import subprocess
import sys

SPACE = 48 << 20
work = pathlib.Path(sys.argv[1])
program = str(work / "build/src/cli/tapshoal")
cases = sorted(pathlib.Path("tests/data/reports").glob("de-*.case"))
text = "".join(p.read_text(encoding="utf-8").split("=== report\n")[1].split("=== ")[0]
               for p in cases)
text += 20 * ("The company tests its water every day; the hardness is said in several units, and "
              "the conductivity of 12 samples is printed beside it.\n")
text = text.encode("utf-8")


def seconds(path):
    child = subprocess.Popen(
        [program, "read", str(path)], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
        preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_AS, (SPACE, SPACE)))
    _, status, usage = os.wait4(child.pid, 0)
    child.returncode = status
    if status:
        sys.exit("read ended with status %d" % status)
    return usage.ru_utime + usage.ru_stime


took = {}
for megabytes in (5, 50):
    path = work / ("report-%d.txt" % megabytes)
    with path.open("wb") as stream:
        for _ in range(megabytes * 10**6 // len(text) + 1):
            stream.write(text)
    took[megabytes] = min(seconds(path) for _ in range(3 if megabytes == 5 else 1))
print("read: 5 MB in %.2f s, 50 MB in %.2f s of the processor, %.1f times; within 48 MB of memory"
      % (took[5], took[50], took[50] / took[5]))
sys.exit(took[50] > 13 * took[5])
