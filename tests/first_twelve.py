#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""What rank names first, from the shipped records: five waters, a tank of 60 and one of 240 litres.

Usage: first_twelve.py PROGRAM. TAP: of the first twelve all fit, at least ten are sold everywhere or
often, and none is for experts; the order is verdict, sold in shops, what it asks, fish, sold, distance, name; a fish stands first.
"""
import json
import subprocess
import sys

WATERS = {"very soft": (2, 1, 6.4), "soft": (4, 3, 6.8), "middle": (9, 6, 7.4), "hard": (16, 11, 7.8),
          "very hard": (24, 17, 8.2)}
VERDICTS = ["suits", "tolerates", "unsure"]
EXPERT = {"hard to feed", "dies of small errors", "for no home", "stings", "venomous"}
SOLD = ["everywhere", "often", "seldom", "rarely"]


def ranked(program, water, litres):
    done = subprocess.run([program, "rank", "-f", "json", "--GH", str(water[0]), "--KH", str(water[1]),
                           "--pH", str(water[2]), "--temperature", "24..25", "--volume", "%d L" % litres],
                          stdout=subprocess.PIPE, check=False)
    return json.loads(done.stdout)["ranked"]


def key(match):
    far = match["distance"] if match["distance"] is not None else -1e9
    asks = {"old tanks only", "special food", "needs land: half-filled tank"} & set(match["to_know"])
    sold = SOLD.index(match["sold"])
    return (VERDICTS.index(match["verdict"]), sold > 1, bool(asks), match["kind"] != "fish", sold, -far)


def faults(matches):
    first = matches[:12]
    wrong = ["%s has no room" % m["id"] for m in first if m["no_room"]]
    wrong += ["%s is for experts" % m["id"] for m in first if EXPERT & set(m["to_know"])]
    wrong += ["only %d stand there" % len(first)] if len(first) < 12 else []
    bought = sum(m["sold"] in ("everywhere", "often") for m in first)
    wrong += ["%d of 12 are sold everywhere or often" % bought] if bought < 10 else []
    wrong += ["%s stands before %s" % (a["id"], b["id"]) for a, b in zip(matches, matches[1:])
              if key(a)[:5] > key(b)[:5] or key(a)[:5] == key(b)[:5] and key(a)[5] > key(b)[5] + 0.011]
    wrong += ["no fish stands first"] if matches[0]["kind"] != "fish" else []
    return wrong


def main(program):
    print("1..%d" % (len(WATERS) * 2))
    number = bad = 0
    for name, water in WATERS.items():
        for litres in (60, 240):
            number += 1
            matches = ranked(program, water, litres)
            wrong = faults(matches)
            bad += bool(wrong)
            print("%s %d - %s water, %d litres: %s" % ("not ok" if wrong else "ok", number, name, litres,
                                                      ", ".join(m["id"] for m in matches[:12])))
            for line in wrong:
                print("#", line)
    return bad > 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
