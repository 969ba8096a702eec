#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""No calm first line beside a danger, whatever else is typed: random sentences, each with one dangerous
piece put in somewhere, in words that the tables know and in words that they do not. TAP.
Usage: dangers.py PROGRAM [--times N] [--seed S]"""
import argparse
import json
import os
import random
import re
import subprocess
import sys

ANIMALS = ["6 guppies", "10 neon tetras", "1 betta", "my 8 platies", "10 cherry shrimp", "4 corydoras",
           "I have 6 zebra danios", "2 angelfish and 6 corys", "20 cardinals", "want 6 guppies", "can I keep 10 neons"]
BESIDE = ["60 litres", "80x35x40", "in a 20 gallon tank", "GH 8", "KH 5", "pH 7.2", "25 C", "at 78 F", "cycled tank",
          "filter mature", "planted", "with a heater", "temp 24", "my tap is 8 dH", "two foot tank", "for 2 years"]
POISONS = ["nitrite", "NO2", "nitrites", "ammonia", "NH4", "ammonium", "NH3/NH4"]
FIGURES = ["5 mg/l", "2 ppm", "0,5", "1", "0.25 mg/L", "3.0", "is 4", "of 2 ppm", "at 0.5 mg/l", "is high", "off the charts",
           "was purple on the strip", "too high", "= 2"]
TOLD = ["one died", "3 dead", "found one dead this morning", "two are gasping", "all gasping", "at the surface",
        "they lie on the bottom", "white spots on them", "heater broke", "heater stuck", "heater stuck at 34",
        "the heater feels strange", "power cut", "power cut since 5 hours", "filter stopped", "no filter",
        "the filter makes no bubbles", "forgot the conditioner", "used bleach", "soap in the tank", "copper medicine",
        "some medicine went in", "cleaned the filter under the tap", "changed all the water", "not cycled", "new tank",
        "set up yesterday", "tank running 2 weeks", "chlorine smell", "they keep dying", "lost two", "copper 0.5 mg/l",
        "oxygen 2 mg/l", "no current since last night", "I overfed", "the water was boiling hot", "an overdose of meds",
        "fish are panicking", "a poison spray", "my kid poured soap in"]
OF_NEW_TANKS = ["no filter", "not cycled", "new tank", "set up yesterday", "tank running 2 weeks"]
CALM = re.compile(r"Nothing speaks against|They can live here|.* go(es)? together|Together|Leave the (water|pH)|They are well|All is "
                  r"well|The water suits|Test GH|Nothing needs doing|Yes")
ENV = {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "TAPSHOAL_NO_CONFIG": "1"}


def answer(program, sentence):
    """The answer to a sentence, as JSON; None: it was refused, and what it said."""
    done = subprocess.run([program, "check", sentence, "-f", "json", "--today", "2026-11-30"], env=ENV,
                          stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=False)
    if done.returncode > 1:
        return None, done.stderr.decode()
    return json.loads(done.stdout), ""


def sentence_of(chance):
    """Pieces in any order, one of them a danger; the sentence and its danger."""
    pieces = [chance.choice(ANIMALS)] + chance.sample(BESIDE, chance.randint(0, 3))
    if chance.random() < 0.5:
        poison, figure = chance.choice(POISONS), chance.choice(FIGURES)
        danger = "%s %s" % (poison, figure) if chance.random() < 0.8 else "%s in the tank %s" % (poison, figure)
    else:
        danger = chance.choice(TOLD)
    if "for 2 years" in pieces and danger in OF_NEW_TANKS:
        pieces.remove("for 2 years")  # who has lived there for years shows that its work is done
    pieces.insert(chance.randint(0, len(pieces)), danger)
    joint = chance.choice([", ", ", ", ". ", "; ", " and "])
    return joint.join(pieces), danger


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("program")
    parser.add_argument("--times", type=int, default=120)
    parser.add_argument("--seed", type=int, default=30)
    options = parser.parse_args()
    chance = random.Random(options.seed)
    wrong = []
    for _ in range(options.times):
        sentence, danger = sentence_of(chance)
        read, refused = answer(options.program, sentence)
        if not read:
            wrong.append("%s\n#    refused: %s" % (sentence, refused.strip()))
        elif CALM.match(read["headline"]) or read["kind"] in ("yes", "well"):
            wrong.append("%s\n#    [%s] %s %s" % (sentence, danger, read["kind"], read["headline"]))
    # The way to see a calm line is itself tried: without a danger there are some.
    calm = sum(bool(CALM.match(answer(options.program, one)[0]["headline"])) for one in
               ("6 guppies, 60 litres, GH 10, KH 8, 25 C, cycled tank", "10 neons, 112 litres, cycled tank"))
    print("1..2")
    print("%s 1 - %d sentences with a danger, none with a calm first line" % ("not ok" if wrong else "ok", options.times))
    for one in wrong:
        print("# " + one)
    print("%s 2 - without a danger there are calm ones" % ("ok" if calm == 2 else "not ok"))
    return bool(wrong) or calm != 2


if __name__ == "__main__":
    sys.exit(main())
