#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""The lists of propose for five waters in four tanks, five each, against what makes a good one.

Usage: hundred_lists.py PROGRAM [--print]. TAP, one line a tank; --print writes the lists as a reader
gets them. Where fewer than five are given, the answer says so. Of each list: the water lies in what
every animal likes, nobody is seldom sold, as many kinds of fish as such a tank should have and
somebody at the bottom (or the answer says that no more are at home), at most one group at the bottom
and one kind to look at, no kind alone that another list has as well. Common practice, no source.
"""
import json
import subprocess
import sys

WATERS = [(2, 1, 6.4, "24.5..25.5"), (4, 3, 6.8, "24.5..25.5"), (9, 6, 7.4, "24..25"), (16, 11, 7.8, "24..25"),
          (24, 17, 8.2, "24.5..25.5")]
# Sides, and kinds of fish at the least and at the most.
TANKS = [("60x30x30", 1, 2), ("80x35x40", 2, 3), ("120x40x50", 3, 4), ("150x60x50", 4, 5)]
LISTS = 5


def call(program, command, water, *more):
    words = [program, command, "--GH", water[0], "--KH", water[1], "--pH", water[2], "--temperature", water[3], *more]
    return subprocess.run([str(word) for word in words], stdout=subprocess.PIPE, check=False, encoding="utf-8").stdout


def lists(program, water, size, *more):
    return call(program, "propose", water, "--size", size, "--mature", "--lists", LISTS, *more)


def centre_of(fish, matches, length):
    """What is wrong with what one looks at in a tank of 120 cm or more: a fifteenth of it, or larger."""
    grown = [matches[line["species"]]["adult_length_cm"] for line in fish if line["role"] == "centre"]
    if length >= 120 and not grown:
        return ["nothing to look at"]
    return ["a centre of %s cm" % cm for cm in grown if length >= 120 and cm * 15 < length]


def of_list(community, water, matches, length, low, high, told):
    """What is wrong with one list."""
    wrong = []
    # Fish of a rift lake are a list by themselves, of one kind or two.
    lake = all(matches[line["species"]]["family"] == "Cichlidae" and line["count"] > 5 for line in community["stock"])
    told = told or lake
    fish = [line for line in community["stock"] if matches[line["species"]]["kind"] == "fish"]
    roles = [line["role"] for line in fish]
    for line in community["stock"]:
        match = matches[line["species"]]
        shared = {p["name"]: p["uncomfortable_by"] for p in match["parameters"]}
        wrong += ["%s: %s off by %s" % (line["id"], name, shared[name]) for name in ("gh", "temp") if shared.get(name)]
        wrong += ["%s is sold %s" % (line["id"], match["sold"])] if match["sold"] not in ("everywhere", "often") else []
    if len(fish) > high or (len(fish) < low and not told):
        wrong.append("%d kinds of fish" % len(fish))
    if not told:
        wrong += ["no %s" % role for role in ("shoal", "bottom") if role not in roles]
        wrong += centre_of(fish, matches, length)
    wrong += ["%d groups: %s" % (roles.count(role), role) for role in ("bottom", "centre") if roles.count(role) > 1]
    ends = community["shared_water"]["gh"]
    if not ends["low"] <= water[0] <= ends["high"]:
        wrong.append("they share GH %s to %s" % (ends["low"], ends["high"]))
    return ["list %d: %s" % (community["place"], fault) for fault in wrong]


def faults(program, water, size, low, high):
    answer = json.loads(lists(program, water, size, "-f", "json"))
    ranked = json.loads(call(program, "rank", water, "-f", "json"))
    matches = {m["species"]: m for part in ("ranked", "too_large", "no_home", "excluded") for m in ranked[part]}
    told = bool(answer["made_up"])
    found = answer["communities"]
    wrong = [fault for one in found for fault in of_list(one, water, matches, int(size.split("x")[0]), low, high, told)]
    if not found or (len(found) < LISTS and not answer["fewer"]):
        wrong.append("%d lists, and nothing says why" % len(found))
    kinds = [frozenset(line["species"] for line in one["stock"] if line["role"]) for one in found]
    wrong += ["two lists of the same fish"] if len(set(kinds)) < len(kinds) else []
    return len(found), wrong


def main(program):
    print("1..%d" % (len(WATERS) * len(TANKS)))
    number = bad = given = 0
    for water in WATERS:
        for size, low, high in TANKS:
            number += 1
            count, wrong = faults(program, water, size, low, high)
            given += count
            bad += bool(wrong)
            print("%s %d - GH %s, %s cm: %d lists" % ("not ok" if wrong else "ok", number, *water[:1], size, count))
            for fault in wrong:
                print("#", fault)
    print("# %d lists of %d" % (given, LISTS * len(WATERS) * len(TANKS)))
    return bad > 0


def show(program):
    for number, (water, tank) in enumerate(((w, t) for w in WATERS for t in TANKS), 1):
        print("## %d. GH %s dH, KH %s dH, pH %s, %s C; tank %s cm\n" % (number, *water, tank[0]))
        print(lists(program, water, tank[0]))


if __name__ == "__main__":
    sys.exit(show(sys.argv[1]) if "--print" in sys.argv else main(sys.argv[1]))
