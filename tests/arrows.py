#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""The arrows of the house: every #include runs downward, and the engine includes no I/O. TAP."""
import pathlib
import re
import sys

SRC = pathlib.Path(__file__).resolve().parent.parent / "src"
LEVELS = [["base"], ["units"], ["model"], ["chem"], ["match"], ["stock"], ["care"], ["words"],
          ["records", "intake"], ["catalogue", "report"], ["cli"]]
LEVEL = {room: number for number, rooms in enumerate(LEVELS) for room in rooms}
ENGINE = LEVEL["words"]
FORBIDDEN = {"stdio.h", "assert.h", "locale.h", "setjmp.h", "time.h", "yaml.h", "pcre2.h",
             "unistd.h", "dirent.h", "errno.h"}
INCLUDE = re.compile(r'^\s*#\s*include\s*[<"]([^>"]+)[>"]', re.M)

wrong = []
files = sorted(p for p in SRC.rglob("*.[ch]"))
for path in files:
    room = path.relative_to(SRC).parts[0]
    for name in INCLUDE.findall(path.read_text(encoding="utf-8")):
        other = name.split("/")[0]
        if other in LEVEL and "/" in name and LEVEL[other] > LEVEL[room]:
            wrong.append("%s includes %s, upward" % (path.relative_to(SRC), name))
        if LEVEL[room] <= ENGINE and name in FORBIDDEN:
            wrong.append("%s, in the engine, includes %s" % (path.relative_to(SRC), name))
        if room == "base" and name.startswith("tapshoal/") and name != "tapshoal/base.h":
            wrong.append("%s includes a domain header" % path.relative_to(SRC))
print("1..1")
for line in wrong:
    print("# " + line)
print("%s 1 - arrows run downward in %d files" % ("not ok" if wrong or len(files) < 20 else "ok",
                                                    len(files)))
sys.exit(bool(wrong))
