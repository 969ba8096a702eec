#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# The packed table of characters (src/page/thin.py) answers as the library of this machine does, for every
# character of Unicode. Usage: characters.sh FOLDER, the folder of src/page/build.sh. Prints TAP.
set -eu
source=$(cd "$1" && pwd)/wasm-sources/utf8proc
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
echo 1..1
gcc -O1 -I"$source" -DUTF8PROC_STATIC -o "$work/packed" "$here/characters.c" "$source/utf8proc.c"
gcc -O1 -o "$work/whole" "$here/characters.c" -lutf8proc
"$work/packed" >"$work/of-the-page"
"$work/whole" >"$work/of-the-machine"
if cmp "$work/of-the-page" "$work/of-the-machine" && [ "$(wc -l <"$work/of-the-machine")" = 1114112 ]; then
	echo "ok 1 - page: 1114112 characters are taken apart as on a terminal"
else
	echo "not ok 1 - page: 1114112 characters are taken apart as on a terminal"
	diff "$work/of-the-page" "$work/of-the-machine" | head -n 4 | sed 's/^/# /'
	exit 1
fi
