#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Links the engine to WebAssembly and asserts that the module imports nothing: the proof that it
# touches no file, clock, terminal or stdio. Then runs the outside checks (tests/checks) against
# the same objects (tests/wasm/run.js). Prints TAP. Needs clang-14, lld-14, wasi-libc,
# libclang-rt-14-dev-wasm32 and node; without them it is a skip, in CI a failure.
set -u
cd "$(dirname "$0")/.." || exit 1
if ! command -v clang-14 >/dev/null || ! command -v node >/dev/null ||
	[ ! -d /usr/lib/wasm32-wasi ]; then
	echo 1..1
	[ "${TAPSHOAL_FULL:-}" = 1 ] && echo "not ok 1 - engine imports nothing (compiler missing)" ||
		echo "ok 1 - engine imports nothing # SKIP no WebAssembly compiler"
	exit 0
fi
# The checks that need nothing but the engine: one that reads the species files does not.
checks=$(grep -L -e TS_SPECIES_DIR -e '"../shipped.h"' tests/checks/test_*.c | sort)
# shellcheck disable=SC2086  # the list is words on purpose
tests=$(cat $checks | grep -c 'cmocka_unit_test(test_')
echo "1..$((tests + 2))"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
root=$PWD
flags="--target=wasm32-wasi -std=c17 -O2 -fvisibility=default -I$root/include -I$root/src"
# A folder a room: rooms have files of the same name.
for room in base units model chem water match stock care words answers; do
	mkdir "$work/$room"
	# shellcheck disable=SC2086  # the flags are words on purpose
	(cd "$work/$room" && clang-14 $flags -c "$root/src/$room"/*.c) || exit 1
done
# Visible and exported dynamically: otherwise the linker drops every function and proves nothing.
# shellcheck disable=SC2086  # the flags are words on purpose
if ! clang-14 $flags -nostartfiles -Wl,--no-entry,--export-dynamic,--strip-all \
		-o "$work/engine" "$work"/*/*.o -lm; then
	echo "not ok 1 - engine links to wasm32"
	exit 0
fi
node -e '
const m = new WebAssembly.Module(require("fs").readFileSync(process.argv[1]));
const imports = WebAssembly.Module.imports(m), exports = WebAssembly.Module.exports(m).length;
for (const i of imports) console.log("# imports " + i.module + "." + i.name);
const fine = imports.length === 0 && exports > 40;
console.log((fine ? "ok" : "not ok") + " 1 - engine imports nothing");
console.log("# " + process.argv[2] + " bytes, " + exports + " exports");
' "$work/engine" "$(wc -c <"$work/engine")"
modules=
for check in $checks; do
	module=$work/$(basename "$check" .c).wasm
	# shellcheck disable=SC2086  # the flags are words on purpose
	clang-14 $flags -fvisibility=hidden -Itests/wasm -DTS_REFERENCE_DIR='"/reference"' \
		-o "$module" "$check" tests/checks/table.c tests/checks/waters_table.c "$work"/*/*.o -lm ||
		echo "# $check does not link to wasm32"
	modules="$modules $module"
done
# shellcheck disable=SC2086  # the list is words on purpose
node --no-warnings tests/wasm/run.js 2 tests/data/reference $modules
