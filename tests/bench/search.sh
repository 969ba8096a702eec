#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# The community search over the full catalogue beside two general-purpose solvers on the same
# integers (Debian: coinor-cbc, glpk-utils). Goals: first list at least 50 times faster than the
# faster one; five lists of up to eight species in under 500 ms. Usage: search.sh
set -eu
cd "$(dirname "$0")/../.."
. tests/bench/release.sh
cc -O2 -std=c17 -Iinclude -Isrc -o "$work/bench" tests/bench/bench_search.c \
	"$work/build/src/libtapshoal-files.a" "$work/build/src/libtapshoal-engine.a" -lyaml -lutf8proc -lm
python3 tests/bench/search.py "$work"
