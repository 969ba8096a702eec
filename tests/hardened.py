#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Whether a built program or library carries its hardening, as readelf sees it: loaded anywhere,
tables read-only once linked, nothing writable runs, stacks guarded, calls of libc checked.
Usage: hardened.py FILE..."""
import pathlib
import platform
import re
import shutil
import subprocess
import sys


def seen(flags, path):
    return subprocess.run(["readelf", "-W", flags, path], stdout=subprocess.PIPE, check=True,
                          encoding="utf-8").stdout


def checks(path):
    headers, segments, dynamic = seen("-h", path), seen("-l", path), seen("-d", path)
    symbols = seen("-s", path)
    yield "is loaded anywhere", re.search(r"Type:\s+DYN", headers)
    yield "has its tables read-only", "GNU_RELRO" in segments and re.search(
        r"BIND_NOW|Flags:.*\bNOW\b", dynamic)
    yield "has a stack that does not run", re.search(r"GNU_STACK.* RW\s+0x", segments)
    yield "has nothing that is writable and runs", not re.search(r"LOAD.*\bRWE\b", segments)
    yield "guards its stack", "__stack_chk_fail" in symbols
    yield "checks calls of libc", re.search(r"__\w+_chk\b(?<!__stack_chk)", symbols)
    if platform.machine() == "x86_64":
        # endbr64; the note about it is lost where the C library's own start has none
        yield "marks where calls may land", pathlib.Path(path).read_bytes().count(
            b"\xf3\x0f\x1e\xfa") > 100


if sys.platform != "linux" or not shutil.which("readelf"):
    print("1..1\nok 1 - hardened # SKIP needs readelf")
    sys.exit(0)
number = failed = 0
for file in sys.argv[1:]:
    for says, holds in checks(file):
        number += 1
        failed += not holds
        print("%sok %d - %s %s" % ("" if holds else "not ", number, pathlib.Path(file).name, says))
print("1..%d" % number)
sys.exit(failed > 0)
