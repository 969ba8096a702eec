#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# A whole rank over 320 records beside libyaml's own parse of the same files: prints the median of
# 15 paired runs of each and the ratio. Goal 1.25, at most 1.5. Usage: rank.sh
set -eu
cd "$(dirname "$0")/../.."
. tests/bench/release.sh
cc -O2 -std=c17 -o "$work/parse" tests/bench/bench_parse.c -lyaml
python3 tests/bench/rank.py "$work"
