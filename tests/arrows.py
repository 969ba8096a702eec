#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""The arrows of the house: every #include runs downward, and the engine includes no I/O. TAP."""
import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parent.parent
ROOMS = [["base"], ["units"], ["model"], ["chem"], ["water"], ["match"], ["stock"], ["care"], ["words"], ["answers"],
         ["system"], ["records", "intake"], ["catalogue", "report"], ["typed"], ["home"],
         ["show"], ["cli"], ["ask", "page", "tools"]]
LEVEL = {room: number for number, rooms in enumerate(ROOMS) for room in rooms}
# The room in which each public header stands; one without a row here stands above every room.
PUBLIC = {"base.h": "base", "water.h": "units", "catalogue.h": "model", "plan.h": "model", "profile.h": "water", "match.h": "match",
          "stock.h": "stock", "care.h": "care", "ask.h": "ask", "tapshoal.h": "ask"}
# All that the engine and the public headers may use of the C library: memory and mathematics.
ENGINE = ["float.h", "limits.h", "math.h", "stdarg.h", "stdbool.h", "stddef.h", "stdint.h",
          "stdlib.h", "string.h"]
LIBRARIES = {"yaml.h": ["records"], "pcre2.h": ["intake", "catalogue"],
             "utf8proc.h": ["catalogue", "report", "cli"]}
INCLUDE = re.compile(r'^\s*#\s*include\s*[<"]([^>"]+)[>"]', re.M)
FAULTS = [("chem", "../cli/options.h"), ("chem", "match/suitability.h"), ("base", "units/units.h"),
          ("chem", "tapshoal/match.h"), ("match", "tapshoal/tapshoal.h"), ("words", "stdio.h"),
          ("model", "sys/stat.h"), ("base", "assert.h"), ("cli", "yaml.h"), ("match", "pcre2.h"),
          ("records", "intake/report.h"), ("records", "catalogue/lint.h")]


def room_of(name):
    """The room of a header as it is written in an #include; None for the C library and others."""
    first, _, rest = name.partition("/")
    if first == "tapshoal":
        return PUBLIC.get(rest, "cli")
    return first if rest and first in LEVEL else None


def fault(room, name):
    """What is wrong with this #include in a file of this room, or None."""
    target = room_of(name)
    if ".." in name:
        return "leaves its room by '..'"
    if target and (LEVEL[target] > LEVEL[room] or
                   LEVEL[target] == LEVEL[room] and target != room):
        return "runs upward or sideways"
    if name in LIBRARIES and room not in LIBRARIES[name]:
        return "belongs to " + ", ".join(LIBRARIES[name])
    if not target and LEVEL[room] <= LEVEL["words"] and name not in ENGINE:
        return "is not for the engine"
    return None


def rooms():
    """Room (the public headers count as one) -> pairs of file and the room that judges it."""
    found = {"public headers": [(p, PUBLIC.get(p.name, "cli"))
                                for p in sorted((ROOT / "include/tapshoal").glob("*.h"))]}
    for path in sorted((ROOT / "src").glob("*/*.[ch]")):
        found.setdefault(path.parent.name, []).append((path, path.parent.name))
    return found


def main():
    results = [("%s in %s is refused" % (name, room), [] if fault(room, name) else ["passes"])
               for room, name in FAULTS]
    stray = [str(p) for p in (ROOT / "src").rglob("*.[ch]") if p.parent.parent != ROOT / "src"
             or p.parent.name not in LEVEL]
    results.append(("every source stands in a known room", stray))
    for title, files in rooms().items():
        if title != "public headers" and title not in LEVEL:
            continue
        wrong = ["%s: %s %s" % (path.relative_to(ROOT), name, fault(room, name))
                 for path, room in files
                 for name in INCLUDE.findall(path.read_text(encoding="utf-8"))
                 if fault(room, name)]
        results.append(("arrows of %s, %d files" % (title, len(files)), wrong))
    print("1..%d" % len(results))
    for number, (title, wrong) in enumerate(results, 1):
        print("%s %d - %s" % ("not ok" if wrong else "ok", number, title))
        for line in wrong:
            print("# " + line)
    return any(wrong for _, wrong in results)


if __name__ == "__main__":
    sys.exit(main())
