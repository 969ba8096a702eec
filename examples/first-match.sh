#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Installs what is missing, builds, and answers the main question for an invented tap water: the
# beginning of the answer, since it names every species, and how to see the rest.
set -eu
cd "$(dirname "$0")/.."
sh tests/build.sh run
program=${TAPSHOAL_BUILD:-build}/src/cli/tapshoal
answer=$(mktemp)
trap 'rm -f "$answer"' EXIT
"$program" rank -w examples/waters/kitchen-tap.yaml --temperature 24..26 >"$answer"
head -n 24 "$answer"
echo "..."
tail -n 3 "$answer"
echo
echo "That was beginning and end of $(wc -l <"$answer") lines. All of them, page by page:"
echo
echo "    $program rank -w examples/waters/kitchen-tap.yaml --temperature 24..26 | more"
