#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Fuzzes one target for some seconds under sanitizers: run.sh quantity|file|report SECONDS. New inputs go
# to a folder of their own, whose name is printed; a crash is kept there as crash-*.
set -eu
cd "$(dirname "$0")/../.."
work=$(mktemp -d)
sources=$(find src/base src/units src/model src/chem src/match src/records src/intake -name '*.c')
# shellcheck disable=SC2086  # the list is words on purpose
clang-14 -std=c17 -g -O1 -fsanitize=fuzzer,address,undefined -fno-sanitize-recover=all \
	-D_POSIX_C_SOURCE=200809L -Iinclude -Isrc -o "$work/target" "tests/fuzz/fuzz_$1.c" \
	$sources -lyaml -lpcre2-8 -lm
mkdir "$work/inputs"
echo "inputs in $work"
exec "$work/target" -max_total_time="$2" -print_final_stats=1 -artifact_prefix="$work/" \
	"$work/inputs" "tests/fuzz/corpus/$1"
