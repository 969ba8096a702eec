#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# propose on a grid of waters, tanks up to 1,000 L and numbers of species and lists beside one rank; or forty of
# its lists, drawn at random, beside two general-purpose solvers (Debian: coinor-cbc, glpk-utils) on the same
# integers. Goals: every list proven or within 1 %, no call over 500 ms where rank takes 3 ms; equal by ==, the
# faster solver 50 times slower in the median. Usage: grid.sh [solvers [SEED]]
set -eu
cd "$(dirname "$0")/../.."
. tests/bench/release.sh
cc -O2 -std=c17 -Iinclude -Isrc -o "$work/grid" tests/bench/bench_grid.c \
	"$work/build/src/libtapshoal-files.a" "$work/build/src/libtapshoal-engine.a" -lyaml -lutf8proc -lm
python3 tests/bench/grid.py "$work" "$@"
