#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# propose on a grid of waters and tanks up to 1,000 L, five lists each: prints every call and the
# slowest beside one rank of the same catalogue. Goal: 300 ms beside a rank of 20 ms. Usage: grid.sh
set -eu
cd "$(dirname "$0")/../.."
. tests/bench/release.sh
cc -O2 -std=c17 -Iinclude -Isrc -o "$work/grid" tests/bench/bench_grid.c \
	"$work/build/src/libtapshoal-files.a" "$work/build/src/libtapshoal-engine.a" -lyaml -lutf8proc -lm
"$work/grid" species
python3 tests/bench/rank_once.py "$work/build/src/cli/tapshoal"
