#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Links the engine to WebAssembly and asserts that the module imports nothing: the proof that it
# touches no file, clock, terminal or stdio. Prints TAP. Needs clang-14, lld-14, wasi-libc,
# libclang-rt-14-dev-wasm32 and node; without them it is a skip, in CI a failure.
set -u
cd "$(dirname "$0")/.." || exit 1
echo 1..4
if ! command -v clang-14 >/dev/null || ! command -v node >/dev/null ||
	[ ! -d /usr/lib/wasm32-wasi ]; then
	[ "${TAPSHOAL_FULL:-}" = 1 ] && echo "not ok 1 - engine imports nothing (compiler missing)" ||
		echo "ok 1 - engine imports nothing # SKIP no WebAssembly compiler"
	for n in 2 3 4; do echo "ok $n - tables in WebAssembly # SKIP no WebAssembly compiler"; done
	exit 0
fi
out=$(mktemp)
trap 'rm -f "$out"' EXIT
sources=$(find src/base src/units src/model src/chem src/match src/stock src/care src/words -name '*.c')
# Visible and exported dynamically: otherwise the linker drops every function and proves nothing.
# shellcheck disable=SC2086  # the list is words on purpose
if ! clang-14 --target=wasm32-wasi -std=c17 -O2 -nostartfiles -fvisibility=default \
	-Wl,--no-entry,--export-dynamic,--strip-all -Iinclude -Isrc -o "$out" $sources -lm; then
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
' "$out" "$(wc -c <"$out")"
node tests/wasm_tables.js "$out" 2
