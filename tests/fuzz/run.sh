#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Fuzzes targets for some seconds each: run.sh TARGET|all SECONDS [RUNS]. RUNS ends earlier.
# New inputs and the log go to a folder whose name is printed; a crash is kept as TARGET-crash-*.
# FUZZ_KIND=sanitized (the default) runs under the address, leak and undefined-behaviour sanitizers.
# FUZZ_KIND=fast explores a build at -O2 that only traps undefined behaviour, two to four times as
# fast, and then replays every input it kept through the sanitized build. The last line says which.
# FUZZ_BUILD names a folder for the builds, FUZZ_INPUTS one of inputs: a long run goes on there.
# FUZZ_SEED fixes the seed: with it and RUNS, every run of a build looks at the same inputs.
set -eu
cd "$(dirname "$0")/../.."
[ $# -ge 2 ] || { sed -n '3,9s/^# //p' "$0" >&2; exit 2; }
work=$(mktemp -d)
build=${FUZZ_BUILD:-$work/build}
inputs=${FUZZ_INPUTS:-$work}
kind=${FUZZ_KIND:-sanitized}
targets=$1
[ "$1" = all ] && targets="quantity line report file table note pattern name plan rank answer outside image page"

# Counters alone: comparisons are found by the words below, and a run is twice as fast.
counters="-fsanitize-coverage=inline-8bit-counters,pc-table"
setup() { # KIND OPTION...: build of that kind, its targets made
	folder=$build/$1
	shift
	[ -d "$folder" ] || CC=clang-14 meson setup "$folder" -Dfuzzers=true -Db_lundef=false "$@" >/dev/null
	# shellcheck disable=SC2046,SC2086  # a program for each target
	ninja -C "$folder" $(printf 'tests/fuzz/fuzz_%s ' $targets) >/dev/null
}
setup sanitized -Doptimization=1 -Db_sanitize=address,undefined \
	"-Dc_args=$counters -fno-sanitize-recover=all"
# One allocation over 64 MiB is a fault; the whole process is larger, since freed memory is held
# back by the sanitizer. Without it allocations are not seen, but the process is small.
memory="-malloc_limit_mb=64 -rss_limit_mb=400"
if [ "$kind" = fast ]; then
	setup fast -Doptimization=2 \
		"-Dc_args=$counters -fsanitize=undefined -fsanitize-trap=undefined"
	memory="-rss_limit_mb=100"
fi
# Keys, units and words, as the tables have them.
grep -ho '"[A-Za-z0-9 /%_.|+*?()-]\{2,30\}"' src/model/shapes.c src/units/table.c \
	src/intake/terms.c | sort -u >"$work/words"
echo "inputs and logs in $inputs"
export ASAN_OPTIONS=quarantine_size_mb=8:malloc_context_size=3 TAPSHOAL_NO_CONFIG=1

# What a log says: executions, seconds, and when code was last reached that no input reached before.
# A line of the log has no time, but executions so far and how many they were a second.
figures() {
	awk '
	{ cov = rate = 0
	  for (i = 1; i < NF; i++) { if ($i == "cov:") cov = $(i + 1); if ($i == "exec/s:") rate = $(i + 1) } }
	cov > most && $2 != "INITED" && $2 != "READ" { at = rate ? substr($1, 2) / rate : 0 }
	cov > most { most = cov }
	/^Done / { runs = $2; seconds = $5 }
	/peak_rss_mb/ { mb = $2 }
	/slowest_unit/ { slow = $2 }
	END { printf "%d executions in %d s, coverage %d, last new at %d s; slowest %d s, process %d MB\n",
		runs, seconds, most, at, slow, mb }' "$1"
}

for target in $targets; do
	choice=-entropic=0
	case $target in
	page) # what a call says of itself is no line of the log
		longest=3000
		choice="-entropic=0 -close_fd_mask=2"
		;;
	image) longest=400 ;;
	line) longest=200 ;;
	name) longest=100 ;;
	pattern) # costly patterns are kept, but not followed as often as cheap ones: ten times as many
		longest=100
		choice="-entropic=1 -entropic_scale_per_exec_time=1"
		;;
	quantity) longest=60 ;;
	*) longest=3000 ;;
	esac
	mkdir -p "$inputs/$target"
	log=$inputs/$target.$kind.log
	# Timeouts are wall time: on a busy machine FUZZ_TIMEOUT gives an input more of it.
	# shellcheck disable=SC2086  # options
	"$build/$kind/tests/fuzz/fuzz_$target" -max_total_time="$2" -runs="${3:--1}" \
		-seed="${FUZZ_SEED:-0}" \
		-max_len="$longest" -dict="$work/words" -timeout=${FUZZ_TIMEOUT:-5} -report_slow_units=1 $memory \
		-detect_leaks=1 $choice -print_final_stats=1 \
		-artifact_prefix="$inputs/$target-" "$inputs/$target" "tests/fuzz/corpus/$target" \
		</dev/null >"$log" 2>&1 || { tail -40 "$log"; exit 1; }
	echo "$target, $kind: $(figures "$log")"
	[ "$kind" = fast ] || continue
	log=$inputs/$target.replay.log
	"$build/sanitized/tests/fuzz/fuzz_$target" -runs=0 -timeout="${FUZZ_TIMEOUT:-5}" -malloc_limit_mb=64 \
		-rss_limit_mb=400 -detect_leaks=1 -entropic=0 -print_final_stats=1 \
		-artifact_prefix="$inputs/$target-" "$inputs/$target" "tests/fuzz/corpus/$target" \
		</dev/null >"$log" 2>&1 || { tail -40 "$log"; exit 1; }
	echo "$target, what was kept, sanitized: $(figures "$log")"
done
