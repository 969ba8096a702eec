#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# The slow checks: sanitizers, both compilers with warnings as errors, valgrind over the golden
# cases, the engine's wasm link, schemas, coverage, static checks. Ends with the count of its steps.
set -u
cd "$(dirname "$0")/.." || exit 1
if ! sh tests/packages.sh full; then
	echo "not ok - the packages could not be installed"
	echo "0 passed, 1 failed"
	exit 1
fi
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
passed=0
failed=0
skipped=0

report() { # NAME STATUS LOG BEGAN; of the log lines with '# ' are shown, skips among them counted
	if [ "$2" = 0 ]; then
		passed=$((passed + 1))
		echo "ok - $1 # $(($(date +%s) - $4)) s"
		grep '^# ' "$3"
		skipped=$((skipped + $(grep -c '^# .*# SKIP' "$3")))
	else
		failed=$((failed + 1))
		echo "not ok - $1"
		tail -n 40 "$3" | sed 's/^/    /'
	fi
}
step() { # NAME COMMAND...
	name=$1
	began=$(date +%s)
	shift
	"$@" >"$work/log" 2>&1
	report "$name" $? "$work/log" "$began"
}
# A browser keeps one processor busy for minutes: it runs beside the steps that keep one busy too.
beside() { # NAME COMMAND...
	beside_name=$1
	beside_began=$(date +%s)
	shift
	"$@" >"$work/beside" 2>&1 &
	beside_job=$!
}
joined() {
	wait "$beside_job"
	report "$beside_name" $? "$work/beside" "$beside_began"
}

sanitized() {
	CC=clang-14 meson setup "$work/asan" -Dwerror=true -Db_sanitize=address,undefined \
		-Db_lundef=false -Dc_args=-fno-sanitize-recover=all &&
		ninja -C "$work/asan" && python3 tests/tap.py "$work/asan" --without engine/wasm
}
gcc_clean() {
	CC=gcc meson setup "$work/gcc" -Dwerror=true -Dbuildtype=release && ninja -C "$work/gcc"
}
# Inside a pipe the exit status is lost, so every log must be empty as well.
memory() {
	mkdir "$work/valgrind"
	cat >"$work/under" <<-END
		#!/bin/sh
		exec valgrind --quiet --error-exitcode=99 --leak-check=full \\
			--log-file="$work/valgrind/%p" "$work/gcc/src/cli/tapshoal" "\$@"
	END
	chmod +x "$work/under"
	python3 tests/golden.py "$work/under" && [ -n "$(ls "$work/valgrind")" ] &&
		! cat "$work"/valgrind/* | grep .
}
covered() { # the floor only ever rises; the run of failed allocations is no part of it
	CC=gcc meson setup "$work/coverage" -Db_coverage=true -Dbuildtype=debug &&
		ninja -C "$work/coverage" && python3 tests/tap.py "$work/coverage" --without engine/wasm &&
		gcovr -r . -f src/ -s --fail-under-line 95 --fail-under-branch 85 "$work/coverage" >"$work/lines" &&
		sed -n 's/^\(lines\|branches\):/# coverage, \1:/p' "$work/lines" &&
		find "$work/coverage" -name '*.gcda' -delete &&
		"$work/coverage/tests/cli/test_faults" >"$work/faults" &&
		gcovr -r . -f src/ -s "$work/coverage" >"$work/lines" &&
		sed -n 's/^\(lines\|branches\):/# coverage of failed allocations alone, \1:/p' "$work/lines"
}
# Every allocation of every command fails in turn, under the sanitizers of the first step.
failing() {
	"$work/asan/tests/cli/test_faults" full >"$work/faults"
	status=$?
	grep '^not ok\|^# ' "$work/faults"
	[ "$status" = 0 ]
}
wasm() {
	TAPSHOAL_FULL=1 sh tests/wasm.sh | tee "$work/wasm" && grep -q '^ok 1 ' "$work/wasm" &&
		! grep -q '^not ok\|SKIP' "$work/wasm"
}
headers() {
	for header in include/tapshoal/*.h; do
		line="#include <tapshoal/$(basename "$header")>"
		echo "$line" | gcc -std=c17 -Wall -Wextra -Wpedantic -Werror -Iinclude \
			-fsyntax-only -x c - || return 1
		echo "$line" | g++ -std=c++17 -Wall -Wextra -Wpedantic -Werror -Iinclude \
			-fsyntax-only -x c++ - || return 1
	done
}
formatted() {
	git ls-files '*.c' '*.h' | xargs clang-format-14 --dry-run --Werror
}
cpp_check() {
	cppcheck --quiet --std=c11 --error-exitcode=1 --enable=warning,portability \
		--suppress=varFuncNullUB --inline-suppr -Iinclude -Isrc src
}
tidy() {
	git ls-files 'src/*.c' | xargs -n 8 -P 2 clang-tidy-14 --quiet -p "$work/asan"
}
# Debian's own interpreter: the validator is a package of Debian.
schemas() {
	/usr/bin/python3 tests/schema.py "$work/gcc/src/cli/tapshoal" >"$work/schemas"
	status=$?
	sed 's/^ok \(.* # SKIP\)/# \1/' "$work/schemas"
	[ "$status" = 0 ]
}
# Debian's own interpreter: the outside reader of calendars is a package of Debian.
calendars() {
	/usr/bin/python3 tests/ics.py "$work/gcc/src/cli/tapshoal" --outside >"$work/calendars"
	status=$?
	sed 's/^ok \(.* # SKIP\)/# \1/' "$work/calendars"
	[ "$status" = 0 ]
}
# Debian's own interpreter and browser; where they are missing, one skip. axe-core comes from npm,
# into a folder outside the tree: no file of its own, no lock file; without it one skip as well.
browser() {
	mkdir -p "$work/npm"
	(cd "$work/npm" && npm install --no-save --ignore-scripts --no-audit --no-fund axe-core@4) ||
		echo "axe-core could not be installed"
	/usr/bin/python3 tests/browser.py "$work/gcc/src/cli/tapshoal" \
		--axe "$work/npm/node_modules/axe-core/axe.min.js" >"$work/browser"
	status=$?
	sed 's/^ok \(.* # SKIP\)/# \1/' "$work/browser"
	[ "$status" = 0 ]
}
# Each model by each solver is one line; those of a solver that is missing are counted as skipped.
solvers() {
	python3 tests/stock/solvers.py "$work/gcc" >"$work/solvers"
	status=$?
	sed 's/^ok \(.* # SKIP\)/# \1/' "$work/solvers"
	[ "$status" = 0 ]
}
# What a packager does: the tarball alone, built and installed elsewhere, works from there.
packed() {
	meson dist -C "$work/gcc" --no-tests --formats gztar --allow-dirty && mkdir "$work/tarball" &&
		tar -xzf "$work"/gcc/meson-dist/*.tar.gz -C "$work/tarball" --strip-components 1 &&
		meson setup "$work/tarball/build" "$work/tarball" -Dtests=false -Dbuildtype=release \
			--prefix "$work/prefix" --libdir lib &&
		ninja -C "$work/tarball/build" install && rm -r "$work/tarball" &&
		(cd / && "$work/prefix/bin/tapshoal" find --fixed guppy) | grep 'Poecilia reticulata' &&
		PKG_CONFIG_PATH=$work/prefix/lib/pkgconfig pkg-config --cflags --libs tapshoal |
		xargs gcc examples/rank_water.c -o "$work/example" &&
		LD_LIBRARY_PATH=$work/prefix/lib "$work/example" "$work/prefix/share/tapshoal/shipped/species"
}
# For a look at the figures: goals, no gates, since machines are shared.
bench() {
	export TAPSHOAL_RELEASE="$work/gcc"
	{ sh tests/bench/rank.sh && sh tests/bench/profile.sh && sh tests/bench/score.sh &&
		sh tests/bench/drift.sh && sh tests/bench/report.sh &&
		sh tests/bench/search.sh; } >"$work/bench" &&
		sed 's/^/# /' "$work/bench"
}
fuzzed() { # a few seconds: that the targets build and run; long runs are by hand
	FUZZ_BUILD=$work/fuzz sh tests/fuzz/run.sh all 4 &&
		FUZZ_KIND=fast FUZZ_BUILD=$work/fuzz sh tests/fuzz/run.sh quantity 2
}
properties() { # twenty times as many random cases as in the plain suite
	TAPSHOAL_PROPERTIES=20 meson test -C "$work/gcc" --quiet --no-rebuild \
		--timeout-multiplier 10 --suite properties
}

step "clang, address and undefined-behaviour sanitizers, every test" sanitized
step "every allocation of every command fails in turn" failing
step "gcc, release, warnings are errors" gcc_clean
step "no leak and no bad read in any golden case (valgrind)" memory
step "19 lines of 20 are run by the tests" covered
beside "every page in a browser: three widths, light, dark, printed, and axe-core on each" browser
step "the engine imports nothing (WebAssembly)" wasm
step "each public header compiles alone, as C17 and as C++17" headers
step "schemas, and files that hold to them (outside validator)" schemas
step "calendars as an outside reader reads them" calendars
step "the tarball of meson dist builds, and works where it is installed" packed
step "communities: equal to two outside solvers on 20 written models" solvers
step "every fuzz target, some seconds" fuzzed
step "properties over random animals, waters and plans, twenty times as many" properties
step "formatting" formatted
step "cppcheck" cpp_check
step "clang-tidy" tidy
step "shellcheck" sh -c 'shellcheck tests/*.sh tests/*/*.sh examples/*.sh .ci/run'
joined
step "figures of tests/bench" bench
echo "$passed passed, $failed failed, $skipped skipped"
[ "$failed" = 0 ]
