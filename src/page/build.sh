#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Builds the program as WebAssembly and, around it, the page: FOLDER/page.wasm, FOLDER/tapshoal.html.
# Installs what is missing. Usage: build.sh FOLDER [BUILD]   (build/page; BUILD is where the program of
# this machine is built: build, or TAPSHOAL_BUILD, which made the image of the records)
set -eu
mkdir -p "$1"
folder=$(cd "$1" && pwd)
build=${2:-${TAPSHOAL_BUILD:-build}}
cd "$(dirname "$0")/../.."
sh tests/packages.sh page
TAPSHOAL_BUILD=$build sh tests/build.sh run
log=$folder/build.log
exec 3>&1 >"$log" 2>&1
trap '[ $? = 0 ] || cat "$log" >&3' EXIT
sh src/page/libraries.sh "$folder"
cat >"$folder/wasm32.new" <<-END
	[binaries]
	c = ['clang-14', '--target=wasm32-wasi']
	ar = 'llvm-ar-14'
	pkgconfig = 'pkg-config'
	[properties]
	pkg_config_libdir = '$folder/wasm-libs/lib/pkgconfig'
	needs_exe_wrapper = true
	[built-in options]
	c_args = ['-Oz', '-mllvm', '-inline-threshold=-60', '-mllvm', '-disable-lsr', '-mllvm', '-enable-pre=0', '-mllvm', '-enable-load-pre=0', '-mnontrapping-fptoint', '-msign-ext', '-ffunction-sections']
	[host_machine]
	system = 'wasi'
	cpu_family = 'wasm32'
	cpu = 'wasm32'
	endian = 'little'
END
# Meson reads it once: where it says something else by now, everything is built anew.
cmp -s "$folder/wasm32.new" "$folder/wasm32.ini" || rm -rf "$folder/objects"
mv "$folder/wasm32.new" "$folder/wasm32.ini"
[ -f "$folder/objects/build.ninja" ] || meson setup "$folder/objects" \
	--cross-file "$folder/wasm32.ini" -Dtests=false -Dbuildtype=plain -Db_pie=false \
	-Db_staticpic=false -Ddefault_library=static
ninja -C "$folder/objects"
(cd "$folder/objects" && clang-14 --target=wasm32-wasi -mexec-model=reactor -o "$folder/page.wasm" \
	-Wl,-z,stack-size=1048576 -Wl,--stack-first -Wl,--strip-all -Wl,--compress-relocations \
	-Wl,--whole-archive src/page/libtapshoal-page.a -Wl,--no-whole-archive \
	src/cli/libtapshoal-cli.a src/libtapshoal-files.a src/libtapshoal-engine.a \
	"$folder"/wasm-libs/lib/*.a -lm)
# What makes it smaller when compressed; all that -Oz does makes it larger.
wasm-opt --enable-sign-ext --enable-nontrapping-float-to-int --duplicate-function-elimination \
	--optimize-instructions --precompute --vacuum -o "$folder/page.wasm" "$folder/page.wasm"
python3 src/page/split.py "$folder/page.wasm" "$folder/page.split"
python3 src/page/pack.py "$folder/page.split" "$folder/page.packed"
cp "$build/src/cli/species.image" "$folder"
exec >&3 2>&3
trap - EXIT
python3 src/page/assemble.py "$folder/page.packed" "$folder/species.image" "$folder"
