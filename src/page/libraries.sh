#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# The three libraries that the program stands on, as WebAssembly: their C sources from Debian's
# source packages, by name, version and checksum, built into a prefix that pkg-config finds.
# Nothing of them enters the repository. Their assertions, which bring printf along, are left out: tests
# run the same calls where they are on. Usage: libraries.sh FOLDER   (FOLDER/wasm-libs is made)
set -eu
folder=$1
prefix=$folder/wasm-libs
here=$(cd "$(dirname "$0")" && pwd)
how() { cat "$here/libraries.sh" "$here/thin.py" "$here/thin_pcre2.py" "$here/thin_yaml.py"; }
how | cmp -s - "$prefix/made-by" && exit 0
# Source package, upstream version, checksum of the upstream tarball; Debian's patches on top of
# it come with the revision that the main suite has today, signed by its lists.
sources="
libyaml 0.2.5 fa240dbf262be053f3898006d502d514936c818e422afdcf33921c63bed9bf2e
pcre2 10.42 c33b418e3b936ee3153de2c61cc638e7e4fe3156022a5c77d0711bcbb9d64f1f
utf8proc 2.8.0 a0a60a79fe6f6d54e7d411facbfcc867a6e198608f2cd992490e46f04b1bcecc"
work=$folder/wasm-sources
rm -rf "$work" "$prefix"
mkdir -p "$work/lists/partial" "$work/cache/archives/partial" "$prefix/lib/pkgconfig" "$prefix/include"
cd "$work"

# The lists of sources are kept apart: those of this machine stay as they are.
suite=$(sed -n 's/^VERSION_CODENAME=//p' /etc/os-release)
# shellcheck disable=SC2016  # apt-get fills these in
mirror=$(apt-get indextargets --format '$(REPO_URI) $(CODENAME)' 2>/dev/null |
	sed -n "s|^\(.*/debian/*\) $suite\$|\1|p" | head -n 1)
echo "deb-src [signed-by=/usr/share/keyrings/debian-archive-keyring.gpg] $mirror $suite main" >sources.list
fetch() {
	apt-get -q -o APT::Sandbox::User=root -o Dir::Etc::SourceList="$PWD/sources.list" \
		-o Dir::Etc::SourceParts=/dev/null -o Dir::State::Lists="$PWD/lists" \
		-o Dir::Cache="$PWD/cache" "$@"
}
fetch update
echo "$sources" | while read -r name version sum; do
	[ -n "$name" ] || continue
	fetch source --only-source "$name"
	echo "$sum  ${name}_$version.orig.tar.gz" | sha256sum -c -
	mv "$name-$version" "$name"
done

small="-Oz -mllvm -disable-lsr -mllvm -enable-pre=0 -mllvm -enable-load-pre=0 -mllvm -inline-threshold=-60 -ffunction-sections"
library() { # NAME VERSION, objects in the current folder
	llvm-ar-14 rcs "$prefix/lib/lib$1.a" ./*.o
	printf 'Name: %s\nDescription: as WebAssembly\nVersion: %s\nCflags: -I%s\nLibs: -L%s -l%s\n' \
		"$1" "$2" "$prefix/include" "$prefix/lib" "$1" >"$prefix/lib/pkgconfig/$3.pc"
}
compile() {
	# shellcheck disable=SC2086  # several words
	clang-14 --target=wasm32-wasi $small -DNDEBUG -c "$@"
}
python3 "$here/thin_yaml.py" libyaml/src
(cd libyaml/src && cp ../include/yaml.h "$prefix/include" &&
	compile -I../include -DYAML_VERSION_MAJOR=0 -DYAML_VERSION_MINOR=2 -DYAML_VERSION_PATCH=5 \
		'-DYAML_VERSION_STRING="0.2.5"' api.c reader.c scanner.c parser.c emitter.c writer.c &&
	library yaml 0.2.5 yaml-0.1)
python3 "$here/thin.py" utf8proc/utf8proc_data.c
(cd utf8proc && cp utf8proc.h "$prefix/include" && compile -DUTF8PROC_STATIC utf8proc.c &&
	library utf8proc 2.8.0 libutf8proc)
python3 "$here/thin_pcre2.py" pcre2/src
# 8-bit, with Unicode, without the compiler to machine code; the rest is its own generic set.
# shellcheck disable=SC2086 # several flags
(cd pcre2/src && cp config.h.generic config.h && cp pcre2.h.generic pcre2.h &&
	cp pcre2_chartables.c.dist pcre2_chartables.c && cp pcre2.h "$prefix/include" &&
	for part in auto_possess chkdint chartables compile config context convert dfa_match error \
		extuni find_bracket maketables match match_data newline ord2utf pattern_info script_run \
		serialize string_utils study substitute substring tables ucd valid_utf xclass; do
		[ ! -f "pcre2_$part.c" ] || echo "pcre2_$part.c"
	done | xargs clang-14 --target=wasm32-wasi $small -c -DHAVE_CONFIG_H \
		-DPCRE2_CODE_UNIT_WIDTH=8 -DSUPPORT_PCRE2_8 -DSUPPORT_UNICODE -DPCRE2_STATIC -I. &&
	library pcre2-8 10.42 libpcre2-8)
how >"$prefix/made-by"
