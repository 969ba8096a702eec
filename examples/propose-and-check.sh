#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# For the invented tap water and tank: a list of animals that go together, written as a plan, and
# the plan checked as it is. Ends with the check's answer.
set -eu
cd "$(dirname "$0")/.."
sh tests/packages.sh run
build=${TAPSHOAL_BUILD:-build}
mkdir -p "$build"
{
	{ [ -f "$build/build.ninja" ] || meson setup "$build" -Dtests=false; } && ninja -C "$build"
} >"$build/build.log" 2>&1 || { cat "$build/build.log"; exit 1; }
plan=$(mktemp -d)
trap 'rm -rf "$plan"' EXIT
"$build/src/cli/tapshoal" propose -w examples/waters/kitchen-tap.yaml \
	-t examples/tanks/living-room.yaml --plan-out "$plan/plan.yaml"
echo
echo "The plan, checked:"
echo
"$build/src/cli/tapshoal" check "$plan/plan.yaml"
