#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Counts the instructions of a whole rank and of libyaml's functions inside it (with the memory
that these ask for); exit 1 where the rest is a quarter or more."""
import pathlib
import re
import subprocess
import sys

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent))
import records  # noqa: E402

CALLED = ("yaml_parser_initialize", "yaml_parser_parse", "yaml_event_delete", "yaml_parser_delete")
work = pathlib.Path(sys.argv[1])
folder = work / "records"
records.make(folder, 320)
profile = work / "callgrind"
subprocess.run(["valgrind", "--quiet", "--tool=callgrind", "--callgrind-out-file=%s" % profile,
                str(work / "build/src/cli/tapshoal"), "rank", "--pH", "7.6", "--GH", "14", "--KH",
                "9", "--temperature", "25", "--only-catalogue", "--catalogue", str(folder)],
               stdout=subprocess.DEVNULL, check=True)
listing = subprocess.run(["callgrind_annotate", "--inclusive=yes", "--auto=no", "--threshold=100",
                          str(profile)], stdout=subprocess.PIPE, check=True, encoding="utf-8").stdout
cost = {}
for figure, name in re.findall(r"^ *([0-9,]+) \([0-9. ]+%\)  (.*)$", listing, re.M):
    name = name.split(" [")[0].split(":")[-1]
    cost.setdefault(name, int(figure.replace(",", "")))
whole = cost["PROGRAM TOTALS"]
parsing = sum(cost[name] for name in CALLED)
share = 1 - parsing / whole
print("rank: %.1f million instructions, %.1f of them libyaml's parsing; the rest is %.1f %% "
      "(goal: under 25)" % (whole / 1e6, parsing / 1e6, 100 * share))
sys.exit(share >= 0.25)
