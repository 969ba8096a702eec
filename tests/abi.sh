#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# The library against that of the last release: abidiff (libabigail) reads both, and what programs of
# one's own rely on may be added to, not taken away. Usage: abi.sh [COMMIT], the last tag v* where none is
# given. Exit 0: programs that were built with it go on; 1: they may not, or nothing could be compared.
set -eu
cd "$(dirname "$0")/.."
if ! command -v abidiff >/dev/null; then
	echo "abi # SKIP abidiff is not installed (Debian: abigail-tools)"
	exit 0
fi
base=${1:-$(git describe --tags --abbrev=0 --match 'v*' 2>/dev/null || true)}
if [ -z "$base" ]; then
	echo "abi # SKIP nothing was released yet"
	exit 0
fi
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir "$work/old"
git archive "$base" | tar -x -C "$work/old"
for which in old new; do
	tree=$PWD
	[ $which = new ] || tree=$work/old
	if ! meson setup "$work/build-$which" "$tree" -Dtests=false -Dbuildtype=debug --prefix "$work/$which-installed" >"$work/log" 2>&1 ||
		! meson install -C "$work/build-$which" >>"$work/log" 2>&1; then
		tail -5 "$work/log"
		exit 1
	fi
done
library() { find "$work/$1-installed" -name 'libtapshoal.so.*' -type f; }
# 4: something changed, 8: what was there is gone or is another (abidiff's own bits).
status=0
abidiff --headers-dir1 "$work/old-installed/include" --headers-dir2 "$work/new-installed/include" \
	"$(library old)" "$(library new)" >"$work/report" || status=$?
sed 's/^/# /' "$work/report"
if [ $((status & 11)) = 0 ]; then
	echo "ok - programs built with $base go on"
else
	echo "not ok - programs built with $base may not go on"
	exit 1
fi
