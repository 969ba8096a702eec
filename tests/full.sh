#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# The slow checks: sanitizers with clang, warnings as errors with both compilers, the engine's wasm
# link, formatting, static checks. Ends with the count of its own steps.
set -u
cd "$(dirname "$0")/.." || exit 1
sh tests/packages.sh full || exit 1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
passed=0
failed=0

step() { # NAME COMMAND...
	name=$1
	shift
	if "$@" >"$work/log" 2>&1; then
		passed=$((passed + 1))
		echo "ok - $name"
	else
		failed=$((failed + 1))
		echo "not ok - $name"
		tail -n 40 "$work/log"
	fi
}

sanitized() {
	CC=clang-14 meson setup "$work/asan" -Dwerror=true -Db_sanitize=address,undefined \
		-Db_lundef=false -Dc_args=-fno-sanitize-recover=all &&
		ninja -C "$work/asan" && python3 tests/tap.py "$work/asan"
}
gcc_clean() {
	CC=gcc meson setup "$work/gcc" -Dwerror=true -Dbuildtype=release && ninja -C "$work/gcc"
}
formatted() {
	git ls-files '*.c' '*.h' | xargs clang-format-14 --dry-run --Werror
}
wasm() {
	TAPSHOAL_FULL=1 sh tests/wasm.sh | tee "$work/wasm" && ! grep -q '^not ok\|SKIP' "$work/wasm"
}
headers_as_cpp() {
	for header in include/tapshoal/*.h; do
		echo "#include <tapshoal/$(basename "$header")>" |
			g++ -std=c++17 -Wall -Wextra -Wpedantic -Werror -Iinclude -fsyntax-only -x c++ - ||
			return 1
	done
}
cpp_check() {
	cppcheck --quiet --std=c11 --error-exitcode=1 --enable=warning,portability \
		--suppress=varFuncNullUB --inline-suppr -Iinclude -Isrc src
}
memory() {
	valgrind --quiet --error-exitcode=9 --leak-check=full "$work/gcc/src/cli/tapshoal" rank \
		--GH 14 --KH 9 --pH 7.6 --temperature 25 -f json
}

step "clang, address and undefined-behaviour sanitizers, every test" sanitized
step "gcc, release, warnings are errors" gcc_clean
step "no leak and no bad read in one rank (valgrind)" memory
step "the engine imports nothing (WebAssembly)" wasm
step "headers compile alone as C++17" headers_as_cpp
step "formatting" formatted
step "cppcheck" cpp_check
step "shellcheck" sh -c 'shellcheck tests/*.sh tests/*/*.sh examples/*.sh .ci/run'
echo "$passed passed, $failed failed"
[ "$failed" = 0 ]
