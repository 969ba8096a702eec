#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# A table of waters in short, beside one process of rank a water, beside whole answers, and its memory
# over 1,000 and over 100,000 waters. Goal: 20 times the whole answers, a line of 4 kB at most.
# Usage: batch.sh
set -eu
cd "$(dirname "$0")/../.."
. tests/bench/release.sh
python3 tests/bench/batch.py "$work"
