#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# What proves rather than guards, before a release: valgrind over the golden cases, every allocation
# of every command failing in turn, coverage, mutation, long fuzzing and properties with fresh seeds,
# every page at every width, outside solvers, clang-tidy, benches. About an hour and a half on two
# processors; docs/checks.md has its figures. Ends with the count of its steps.
# Usage: prove.sh [SECONDS of fuzzing a target, 60]
set -u
cd "$(dirname "$0")/.." || exit 1
if ! sh tests/packages.sh prove; then
	echo "not ok - the packages could not be installed"
	echo "0 passed, 1 failed"
	exit 1
fi
. tests/steps.sh
seconds=${1:-60}

# Every allocation of every command fails in turn, under the sanitizers.
failing() {
	sanitized_build && "$work/fuzz/sanitized/tests/cli/test_faults" full >"$work/faults"
	status=$?
	grep '^not ok\|^# ' "$work/faults"
	[ "$status" = 0 ]
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
tidy() {
	git ls-files 'src/*.c' ':!src/page' | xargs -n 8 -P 2 clang-tidy-14 --quiet -p "$work/fuzz/sanitized"
}
# axe-core comes from npm, into a folder outside the tree: no file of its own, no lock file; without
# it one skip.
browser() {
	mkdir -p "$work/npm"
	(cd "$work/npm" && npm install --no-save --ignore-scripts --no-audit --no-fund axe-core@4) ||
		echo "axe-core could not be installed"
	/usr/bin/python3 tests/browser.py "$work/gcc/src/cli/tapshoal" \
		--axe "$work/npm/node_modules/axe-core/axe.min.js" >"$work/browser"
	status=$?
	skips "$work/browser"
	[ "$status" = 0 ]
}
# The page as it is used, in every browser that there is; figures with the processor slowed.
moments() {
	TAPSHOAL_BUILD=$work/gcc sh examples/page.sh &&
		/usr/bin/python3 tests/page/moments.py "$work/gcc/page/tapshoal.html" --whole \
			--engines chromium,firefox,webkit \
			--axe "$work/npm/node_modules/axe-core/axe.min.js" >"$work/moments"
	status=$?
	skips "$work/moments"
	grep '^not ok\|^# ' "$work/moments"
	[ "$status" = 0 ]
}
# Each model by each solver is one line; those of a solver that is missing are counted as skipped.
solvers() {
	python3 tests/stock/solvers.py "$work/gcc" >"$work/solvers"
	status=$?
	skips "$work/solvers"
	[ "$status" = 0 ]
}
# With nothing released yet there is nothing to compare with.
released() {
	sh tests/abi.sh >"$work/abi"
	status=$?
	sed 's/^abi # SKIP/# abi # SKIP/' "$work/abi"
	return "$status"
}
artefacts() {
	sh tests/artefacts.sh >"$work/artefacts"
	status=$?
	sed 's/^/# /' "$work/artefacts"
	return "$status"
}
# For a look at the figures: goals, no gates, since machines are shared.
bench() {
	export TAPSHOAL_RELEASE="$work/gcc"
	{ sh tests/bench/rank.sh && sh tests/bench/image.sh && sh tests/bench/cold.sh && sh tests/bench/batch.sh && sh tests/bench/profile.sh && sh tests/bench/score.sh &&
		sh tests/bench/drift.sh && sh tests/bench/report.sh &&
		sh tests/bench/grid.sh solvers && sh tests/bench/search.sh; } >"$work/bench" &&
		sed 's/^/# /' "$work/bench"
}
# The fast kind explores, and what it kept is replayed under the sanitizers. A crash stays there.
fuzzed() {
	FUZZ_KIND=fast FUZZ_BUILD=$work/fuzz sh tests/fuzz/run.sh all "$seconds" >"$work/fuzzed"
	status=$?
	sed 's/^/# /' "$work/fuzzed"
	[ "$status" = 0 ]
}
# Twenty times as many random cases as in the plain suite, and 100,000 steps over all questions.
properties() {
	TAPSHOAL_PROPERTIES=20 meson test -C "$work/gcc" --quiet --no-rebuild --print-errorlogs \
		--timeout-multiplier 10 --suite properties &&
		TAPSHOAL_PROPERTIES=100 TAPSHOAL_SEED="$(date +%s)" \
			"$work/gcc/tests/answers/test_answers_never_better" >"$work/steps"
	status=$?
	sed -n 's/^# \(seed\|[0-9]* steps, each by six\)/# \1/p' "$work/steps"
	return "$status"
}
# A thousand kills of whatever writes, a hundred pairs of notes, a fresh seed.
rewritten() {
	python3 tests/rewrite.py "$work/gcc/src/cli/tapshoal" --times 100 --seed "$(date +%s)" --table \
		>"$work/rewritten"
	status=$?
	grep '^not ok\|^# ' "$work/rewritten"
	skips "$work/rewritten" | grep '^# .*# SKIP'
	[ "$status" = 0 ]
}
# A thousand hostile names in each of three shells.
completed() {
	python3 tests/completion.py "$work/gcc/src/cli" --names 1000 --seed "$(date +%s)" \
		--program "$work/gcc/src/cli/tapshoal" >"$work/completed"
	status=$?
	sed 's/^ok /# ok /' "$work/completed"
	[ "$status" = 0 ]
}
mutants() { # which share of small faults is noticed; 85 of 100 are wanted
	python3 tests/mutate.py --each 20 >"$work/mutants" || return 1
	sed -n '1s/^/# /p; s/^[a-z]*: [0-9]* of /# &/p' "$work/mutants"
	awk '/^all: / { fine = 100 * $2 >= 85 * $4 } END { exit !fine }' "$work/mutants"
}

step "gcc, release" release_build
step "every allocation of every command fails in turn" failing
step "no leak and no bad read in any golden case (valgrind)" memory
step "19 lines of 20 are run by the tests" covered
beside "every page in a browser: three widths, light, dark, printed, and axe-core on each" browser
step "communities: equal to two outside solvers on 20 written models" solvers
step "properties over random animals, waters and plans, twenty times as many" properties
step "clang-tidy" tidy
joined
step "the page as it is used, in three browsers: a file, no request, axe-core, slowed four times" moments
step "every fuzz target, $seconds s each, with a fresh seed" fuzzed
step "what somebody wrote is not lost: a thousand kills of each writer" rewritten
step "completions are data: a thousand hostile names in bash, zsh, fish" completed
step "small faults are noticed" mutants
step "tarball, static file and packages, from nothing to an answer and away again" artefacts
step "the library goes on for programs built with the last release" released
step "figures of tests/bench" bench
closing
