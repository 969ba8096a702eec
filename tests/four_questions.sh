#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# The example that asks whole questions, run on the shipped records: PROGRAM FOLDER. Prints TAP. Held
# are the verdicts that anybody would give of hard water, not their wording.
echo 1..5
answer=$("$1" "$2")
code=$?
number=0
holds() {
	number=$((number + 1))
	if echo "$answer" | grep -qiE "$2"; then
		echo "ok $number - $1"
	else
		echo "not ok $number - $1 (no line like: $2)"
	fi
}
holds "hard water suits livebearers" '(guppies|platies).*suit this water'
holds "a neon tetra lives in it, not at its best" '^neon tetra .*can live in this water'
holds "six male guppies in 80 cm are sound" '^They can live here'
holds "a community is proposed" '^These go together'
number=$((number + 1))
if [ "$code" = 0 ]; then
	echo "ok $number - every question was answered"
else
	echo "not ok $number - every question was answered (exit code $code)"
fi
