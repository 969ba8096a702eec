#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Installs what is missing and builds into the folder build, or TAPSHOAL_BUILD; says nothing but
# what takes long, and everything where it fails. Usage: build.sh run|test
set -eu
cd "$(dirname "$0")/.."
sh tests/packages.sh "$1"
build=${TAPSHOAL_BUILD:-build}
if [ -e "$build" ] && [ ! -w "$build" ] || [ -e "$build/build.log" ] && [ ! -w "$build/build.log" ]; then
	echo "The folder $build belongs to $(stat -c %U "$build"), who built it: run this as that user," \
		"or name another folder: TAPSHOAL_BUILD=/tmp/tapshoal-build"
	exit 3
fi
mkdir -p "$build"
tests=$([ "$1" = test ] && echo true || echo false)
[ -f "$build/build.ninja" ] || echo "building: half a minute, the first time"
{
	if [ ! -f "$build/build.ninja" ]; then
		meson setup "$build" -Dtests="$tests"
	elif "$tests"; then
		meson configure "$build" -Dtests=true
	fi && ninja -C "$build"
} >"$build/build.log" 2>&1 || { cat "$build/build.log"; exit 1; }
