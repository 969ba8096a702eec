#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""What the shared library shows is what the public headers promise, no more, no less. TAP.

Usage: symbols.py LIBRARY
"""
import pathlib
import re
import subprocess
import sys

HEADERS = pathlib.Path(__file__).resolve().parent.parent / "include" / "tapshoal"


def promised():
    names = set()
    for header in HEADERS.glob("*.h"):
        text = re.sub(r"/\*.*?\*/", "", header.read_text(encoding="utf-8"), flags=re.S)
        for declaration in re.findall(r"^TS_API\b[^;]*;", text, flags=re.M):
            found = re.search(r"(ts_\w+)\s*(\(|\[|;|=)", declaration)
            names.add(found.group(1) if found else declaration)
    return names


def main(library):
    listing = subprocess.run(["nm", "-D", "--defined-only", library], stdout=subprocess.PIPE,
                             check=True, text=True).stdout
    # Names with two underscores in front are the compiler's own (sanitizers).
    shown = {line.split()[2] for line in listing.splitlines() if len(line.split()) == 3}
    shown = {name for name in shown if not name.startswith("__")}
    public = promised()
    print("1..3")
    print("%s 1 - the headers promise something" % ("ok" if len(public) > 10 else "not ok"))
    for number, names, what in ((2, public - shown, "promised, not shown"),
                                (3, shown - public, "shown, not promised")):
        print("%s %d - nothing is %s%s" % ("ok" if not names else "not ok", number, what,
                                           ": " + " ".join(sorted(names)) if names else ""))


if __name__ == "__main__":
    main(sys.argv[1])
