#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# The slow checks that guard: sanitizers, both compilers with warnings as errors, the engine's wasm
# link, schemas, pages in a browser, the tarball, static checks. The same tree gives the same result:
# nothing here draws a seed. What proves rather than guards is prove.sh. Ends with the count of its
# steps.
set -u
cd "$(dirname "$0")/.." || exit 1
if ! sh tests/packages.sh full; then
	echo "not ok - the packages could not be installed"
	echo "0 passed, 1 failed"
	exit 1
fi
. tests/steps.sh

sanitized() {
	sanitized_build && python3 tests/tap.py "$work/fuzz/sanitized" --without engine/wasm
}
wasm() {
	TAPSHOAL_FULL=1 sh tests/wasm.sh | tee "$work/wasm" && grep -q '^ok 1 ' "$work/wasm" &&
		! grep -q '^not ok\|SKIP' "$work/wasm"
}
# The same cases as everywhere, by the program that the page has inside.
page_golden() {
	TAPSHOAL_BUILD=$work/gcc sh examples/page.sh &&
		sh tests/page/golden.sh "$work/gcc/src/cli/tapshoal" "$work/gcc/page" >"$work/page-golden" &&
		node --no-warnings tests/page/module.js "$work/gcc" >>"$work/page-golden" &&
		sh tests/page/characters.sh "$work/gcc/page" >>"$work/page-golden"
	status=$?
	grep '^not ok\|^# ' "$work/page-golden"
	[ "$status" = 0 ]
}
# Debian's own interpreter and browser; where they are missing, one skip.
moments() {
	/usr/bin/python3 tests/page/moments.py "$work/gcc/page/tapshoal.html" >"$work/moments"
	status=$?
	skips "$work/moments"
	grep '^not ok\|^# ' "$work/moments"
	[ "$status" = 0 ]
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
	cppcheck -j 2 --quiet --std=c11 --error-exitcode=1 --enable=warning,portability \
		--suppress=varFuncNullUB --inline-suppr -Iinclude -Isrc src
}
# Debian's own interpreter: the validator is a package of Debian.
schemas() {
	/usr/bin/python3 tests/schema.py "$work/gcc/src/cli/tapshoal" >"$work/schemas"
	status=$?
	skips "$work/schemas"
	[ "$status" = 0 ]
}
# Debian's own interpreter: the outside reader of calendars is a package of Debian.
calendars() {
	/usr/bin/python3 tests/ics.py "$work/gcc/src/cli/tapshoal" --outside >"$work/calendars"
	status=$?
	skips "$work/calendars"
	[ "$status" = 0 ]
}
# Debian's own interpreter and browser; where they are missing, one skip.
browser() {
	/usr/bin/python3 tests/browser.py "$work/gcc/src/cli/tapshoal" --quick >"$work/browser"
	status=$?
	skips "$work/browser"
	[ "$status" = 0 ]
}
# What a packager does: the tarball alone, built and installed elsewhere, works from there.
packed() {
	meson dist -C "$work/gcc" --no-tests --formats gztar --allow-dirty && mkdir "$work/tarball" &&
		tar -xzf "$work"/gcc/meson-dist/*.tar.gz -C "$work/tarball" --strip-components 1 &&
		meson setup "$work/tarball/build" "$work/tarball" -Dtests=false -Dbuildtype=release \
			-Ddefault_library=both --prefix "$work/prefix" --libdir lib &&
		ninja -C "$work/tarball/build" install && rm -r "$work/tarball" &&
		(cd / && "$work/prefix/bin/tapshoal" find --fixed guppy) | grep 'Poecilia reticulata' &&
		strangers rank_water && strangers four_questions
}
# An example built against what was installed, with the shared library and with the static one.
strangers() {
	PKG_CONFIG_PATH=$work/prefix/lib/pkgconfig
	export PKG_CONFIG_PATH
	pkg-config --cflags --libs tapshoal | xargs gcc "examples/$1.c" -o "$work/shared" &&
		pkg-config --cflags --libs --static tapshoal |
		sed 's/-ltapshoal/-l:libtapshoal.a/' | xargs gcc "examples/$1.c" -o "$work/static" &&
		LD_LIBRARY_PATH=$work/prefix/lib "$work/shared" "$work/prefix/share/tapshoal/shipped/species" \
			>"$work/shared.out" &&
		"$work/static" "$work/prefix/share/tapshoal/shipped/species" >"$work/static.out" &&
		[ -s "$work/shared.out" ] && cmp "$work/shared.out" "$work/static.out"
}
# The corpora and a few inputs more, the same in every run: the first step replays the corpora too,
# through the plain driver; here they go through the programs that explore. So many runs, not
# seconds, and a fixed seed.
fuzzed() {
	FUZZ_SEED=1 FUZZ_BUILD=$work/fuzz sh tests/fuzz/run.sh all 300 2000
}

step "clang, address and undefined-behaviour sanitizers, every test" sanitized
step "gcc, release, warnings are errors" release_build
beside "every page in a browser, as on a phone" browser
step "the engine imports nothing (WebAssembly)" wasm
step "every golden case by the program of the page (WebAssembly), byte for byte" page_golden
step "the page as it is used, from opening to the printed sheet, without a request" moments
step "each public header compiles alone, as C17 and as C++17" headers
step "schemas, and files that hold to them (outside validator)" schemas
step "calendars as an outside reader reads them" calendars
step "every fuzz target: its corpus, and two thousand inputs of a fixed seed" fuzzed
step "the tarball of meson dist builds, and works where it is installed" packed
step "formatting" formatted
step "cppcheck" cpp_check
step "shellcheck" sh -c 'shellcheck -x tests/*.sh tests/*/*.sh src/page/*.sh examples/*.sh .ci/run'
joined
closing
