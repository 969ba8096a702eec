#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Installs what is missing, builds, runs the plain tests; the last line counts single cases.
set -eu
cd "$(dirname "$0")/.."
sh tests/packages.sh test
build=${TAPSHOAL_BUILD:-build}
mkdir -p "$build"
{
	if [ -f "$build/build.ninja" ]; then
		meson configure "$build" -Dtests=true
	else
		meson setup "$build"
	fi && ninja -C "$build"
} >"$build/build.log" 2>&1 || { cat "$build/build.log"; exit 1; }
exec python3 tests/tap.py "$build"
