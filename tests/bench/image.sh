#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Whole calls over the shipped records, read from the image that the build made, beside libyaml's own
# parse of the same files and beside a process of SQLite that answers a prepared range query: prints
# the ratios of processor time. Goal: rank at most 0.25 of libyaml, and not slower than SQLite.
# Skips without SQLite (Debian: libsqlite3-dev). Usage: image.sh
set -eu
cd "$(dirname "$0")/../.."
if ! pkg-config --exists sqlite3; then
	echo "whole calls beside a database # SKIP needs libsqlite3-dev"
	exit 0
fi
. tests/bench/release.sh
cc -O2 -std=c17 -o "$work/parse" tests/bench/bench_parse.c -lyaml
cc -O2 -std=c17 -o "$work/query" tests/bench/bench_query.c -lsqlite3
python3 tests/bench/image.py "$work"
