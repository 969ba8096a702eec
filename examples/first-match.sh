#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Installs what is missing, builds, and answers the main question for an invented tap water.
set -eu
cd "$(dirname "$0")/.."
sh tests/packages.sh run
build=${TAPSHOAL_BUILD:-build}
mkdir -p "$build"
{
	{ [ -f "$build/build.ninja" ] || meson setup "$build" -Dtests=false; } && ninja -C "$build"
} >"$build/build.log" 2>&1 || { cat "$build/build.log"; exit 1; }
exec "$build/src/cli/tapshoal" rank -w examples/waters/kitchen-tap.yaml --temperature 24..26
