#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Fuzzes targets for some seconds each under sanitizers: run.sh TARGET|all SECONDS [RUNS]. RUNS ends
# earlier. New inputs go to a folder whose name is printed; a crash is kept there as TARGET-crash-*.
# FUZZ_BUILD names a build folder that is kept, FUZZ_INPUTS one of inputs: a long run goes on there.
set -eu
cd "$(dirname "$0")/../.."
[ $# -ge 2 ] || { sed -n '3,5s/^# //p' "$0" >&2; exit 2; }
work=$(mktemp -d)
build=${FUZZ_BUILD:-$work/build}
inputs=${FUZZ_INPUTS:-$work}
targets=$1
[ "$1" = all ] && targets="quantity line report file pattern plan rank"

# Counters alone: comparisons are found by the words below, and a run is twice as fast.
[ -d "$build" ] || CC=clang-14 meson setup "$build" -Dfuzzers=true -Doptimization=1 \
	-Db_sanitize=address,undefined -Db_lundef=false \
	"-Dc_args=-fsanitize-coverage=inline-8bit-counters,pc-table -fno-sanitize-recover=all" >/dev/null
# shellcheck disable=SC2046,SC2086  # a program for each target
ninja -C "$build" $(printf 'tests/fuzz/fuzz_%s ' $targets) >/dev/null
# Keys, units and words, as the tables have them.
grep -ho '"[A-Za-z0-9 /%_.|+*?()-]\{2,30\}"' src/model/shapes.c src/units/table.c \
	src/intake/terms.c | sort -u >"$work/words"
echo "inputs in $inputs"
export ASAN_OPTIONS=quarantine_size_mb=8:malloc_context_size=3 TAPSHOAL_NO_CONFIG=1
for target in $targets; do
	case $target in
	line) longest=200 ;;
	pattern) longest=100 ;;
	quantity) longest=60 ;;
	*) longest=3000 ;;
	esac
	mkdir -p "$inputs/$target"
	# One allocation over 64 MiB is a fault; the whole process is larger, since freed memory is
	# held back by the sanitizer. Timeouts are wall time: on a busy machine, look at the input.
	"$build/tests/fuzz/fuzz_$target" -max_total_time="$2" -runs="${3:--1}" -max_len="$longest" \
		-dict="$work/words" -timeout=5 -report_slow_units=1 -malloc_limit_mb=64 -rss_limit_mb=400 \
		-detect_leaks=1 -entropic=0 -print_final_stats=1 -artifact_prefix="$inputs/$target-" \
		"$inputs/$target" "tests/fuzz/corpus/$target" </dev/null
done
