# SPDX-License-Identifier: Apache-2.0
# Steps of full.sh and prove.sh, which source this: each is counted, and its line ends with its
# seconds by the clock and those of the processors, which a busy machine does not stretch. Ends in
# a folder $work that is removed.
# shellcheck shell=sh
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
passed=0
failed=0
skipped=0

# Seconds that children which have ended took of the processors. Not in $(...), a child of its own.
spent() {
	times >"$work/times"
	processors=$(awk 'NR == 2 { for (i = 1; i <= 2; i++) { split($i, t, "[ms]"); s += 60 * t[1] + t[2] }
		printf "%d", s }' "$work/times")
}
report() { # NAME STATUS LOG BEGAN PROCESSORS; lines of the log with '# ' are shown, skips counted
	spent
	took="$(($(date +%s) - $4)) s, processors $((processors - $5)) s"
	if [ "$2" = 0 ]; then
		passed=$((passed + 1))
		echo "ok - $1 # $took"
		grep '^# ' "$3"
		skipped=$((skipped + $(grep -c '^# .*# SKIP' "$3")))
	else
		failed=$((failed + 1))
		echo "not ok - $1 # $took"
		tail -n 40 "$3" | sed 's/^/    /'
	fi
}
step() { # NAME COMMAND...
	name=$1
	began=$(date +%s)
	spent
	before=$processors
	shift
	"$@" >"$work/log" 2>&1
	report "$name" $? "$work/log" "$began" "$before"
}
# What keeps one processor busy for long runs beside the steps that keep one busy too.
beside() { # NAME COMMAND...
	beside_name=$1
	beside_began=$(date +%s)
	shift
	"$@" >"$work/beside" 2>&1 &
	beside_job=$!
}
joined() {
	spent
	before=$processors
	wait "$beside_job"
	report "$beside_name" $? "$work/beside" "$beside_began" "$before"
}
# Lines of TAP as lines of a log: only what was skipped is shown.
skips() { # FILE
	sed 's/^ok \(.* # SKIP\)/# \1/' "$1"
}
closing() {
	echo "$passed passed, $failed failed, $skipped skipped"
	[ "$failed" = 0 ]
}
# Builds that both use.
sanitized_build() {
	CC=clang-14 meson setup "$work/fuzz/sanitized" -Dwerror=true -Dfuzzers=true -Doptimization=1 \
		-Db_sanitize=address,undefined -Db_lundef=false \
		"-Dc_args=-fsanitize-coverage=inline-8bit-counters,pc-table -fno-sanitize-recover=all" &&
		ninja -C "$work/fuzz/sanitized"
}
release_build() {
	CC=gcc meson setup "$work/gcc" -Dwerror=true -Dbuildtype=release && ninja -C "$work/gcc"
}
