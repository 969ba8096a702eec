#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Every shipped species matched in memory beside a prepared range query of SQLite over the same
# bands: prints the ratio. Goal: at most 1. Skips without SQLite (Debian: libsqlite3-dev).
# Usage: score.sh
set -eu
cd "$(dirname "$0")/../.."
if ! pkg-config --exists sqlite3; then
	echo "match beside a database # SKIP needs libsqlite3-dev"
	exit 0
fi
. tests/bench/release.sh
cc -O2 -std=c17 -Iinclude -Isrc -o "$work/score" tests/bench/bench_score.c \
	"$work/build/src/libtapshoal-files.a" "$work/build/src/libtapshoal-engine.a" \
	-lsqlite3 -lyaml -lutf8proc -lm
"$work/score" species
