#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# A whole rank over 320 records beside libyaml's own parse of the same files: prints the median of
# 15 paired runs of each and the ratio. Goal 1.25, at most 1.5. Usage: rank.sh [BUILD]
set -eu
cd "$(dirname "$0")/../.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
meson setup "$work/build" -Dbuildtype=release -Dtests=false >/dev/null
ninja -C "$work/build" >/dev/null
cc -O2 -std=c17 -o "$work/parse" tests/bench/bench_parse.c -lyaml
exec python3 tests/bench/rank.py "$work"
