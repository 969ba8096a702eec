#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Every example value of a key, as help and the page show it, is one that a tank with animals could have.

Usage: examples.py PROGRAM. TAP: each reading's example is asked about in an ordinary water, alone, and
neither is refused nor means a danger. Then what --help of every command shows: two calls of it first,
and no flag explained by what it is to another command.
"""
import json
import re
import subprocess
import sys

WATER = {"GH": "8 dH", "KH": "5 dH", "pH": "7.2", "temperature": "24 C"}


def shown(program):
    """Key and example, out of the readings of help."""
    said = subprocess.run([program, "water", "--help", "readings"], capture_output=True, text=True, check=True).stdout
    for line in said.splitlines()[1:]:
        found = re.match(r"  --(\S+) (.*)", line)
        if not found or found.group(1) in ("date", "time", "season"):
            continue
        takes = re.split(r"  +", found.group(2))[0]
        for example in re.findall(r'"([^"]+)"', takes) or [takes.split(" ")[0]]:
            if not re.search(r"[|A-Z]{4}", example):
                yield found.group(1), example


def fault(program, key, example):
    water = {**WATER, key: example}
    if key == "TDS":
        water.pop("conductivity", None)
    words = [part for name, value in water.items() for part in ("--" + name, value)]
    done = subprocess.run([program, "water", *words, "-f", "json"], capture_output=True, text=True, check=False)
    if done.returncode > 1:
        return done.stderr.strip()
    dangers = [one for one in json.loads(done.stdout)["dangers"] if one["danger"] != "none"]
    return "; ".join("%s %s: %s" % (one["poison"], one["danger"], one["says"]) for one in dangers)


def help_of(program, *words):
    return subprocess.run([program, *words, "--help"], capture_output=True, text=True, check=True).stdout


def commands(program):
    return re.findall(r"^  tapshoal ([a-z-]+)", help_of(program), re.MULTILINE)


def unclear(program, command, names):
    """What is wrong with the help of a command, or nothing."""
    said = help_of(program, command)
    before, _, flags = said.partition("its flags:")
    calls = re.findall(r"^  tapshoal " + command + r"\b", before, re.MULTILINE)
    if len(calls) != 2:
        return "%d calls before its flags" % len(calls)
    others = re.findall(r"(?:  |; |\(|for )(%s)[:,] " % "|".join(name for name in names if name != command), flags)
    return "flags speak of " + ", ".join(others) if others else ""


def main(program):
    rows = list(shown(program))
    bad = len(rows) < 20
    if bad:
        print("# only %d examples were found" % len(rows))
    for number, (key, example) in enumerate(rows, 1):
        wrong = fault(program, key, example)
        bad = bad or bool(wrong)
        print("%s %d - %s %s" % ("not ok" if wrong else "ok", number, key, example))
        if wrong:
            print("# " + wrong)
    names = commands(program)
    for number, name in enumerate(names, len(rows) + 1):
        wrong = unclear(program, name, names)
        bad = bad or bool(wrong)
        print("%s %d - help of %s" % ("not ok" if wrong else "ok", number, name))
        if wrong:
            print("# " + wrong)
    print("1..%d" % (len(rows) + len(names)))
    return int(bad)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
