#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""The processor time of one whole rank, median of 15. Usage: rank_once.py PROGRAM"""
import os
import statistics
import subprocess
import sys

CALL = [sys.argv[1], "rank", "--GH", "9", "--KH", "6", "--pH", "7.4", "--temperature", "24"]
times = []
for _ in range(15):
    before = os.times().children_user + os.times().children_system
    subprocess.run(CALL, stdout=subprocess.DEVNULL, check=True)
    times.append(os.times().children_user + os.times().children_system - before)
print("one rank %.0f ms" % (1e3 * statistics.median(times)))
