#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# For the invented tap water and tank: a list of animals that go together, written as a plan, and
# the plan checked as it is. Ends with the check's answer.
set -eu
cd "$(dirname "$0")/.."
sh tests/build.sh run
program=${TAPSHOAL_BUILD:-build}/src/cli/tapshoal
plan=$(mktemp -d)
trap 'rm -rf "$plan"' EXIT
"$program" propose -w examples/waters/kitchen-tap.yaml \
	-t examples/tanks/living-room.yaml --plan-out "$plan/plan.yaml"
echo
echo "The plan, checked:"
echo
"$program" check "$plan/plan.yaml"
