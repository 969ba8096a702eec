#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# 1,000 tanks for a year beside one rank over the shipped catalogue, in time of the processor: the median of 7 paired
# runs of each and the ratio. Goal: under 60. Usage: drift.sh
set -eu
cd "$(dirname "$0")/../.."
. tests/bench/release.sh
cc -O2 -std=c17 -Iinclude -Isrc -o "$work/drift" tests/bench/bench_drift.c \
	"$work/build/src/libtapshoal-engine.a" -lm
python3 tests/bench/drift.py "$work"
