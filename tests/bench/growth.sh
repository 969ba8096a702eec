#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# How rank and the preparation of propose grow over 300, 3,000 and 30,000 invented records: prints
# the power of each (goals 1.1 and 2.1), and the whole of propose over 30,000. Takes a minute or two. Usage: growth.sh
set -eu
cd "$(dirname "$0")/../.."
. tests/bench/release.sh
cc -O2 -std=c17 -Iinclude -Isrc -o "$work/prepare" tests/bench/bench_prepare.c \
	"$work/build/src/libtapshoal-files.a" "$work/build/src/libtapshoal-engine.a" -lyaml -lutf8proc -lm
python3 tests/bench/growth.py "$work"
