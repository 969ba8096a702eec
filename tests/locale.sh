#!/bin/bash
# SPDX-License-Identifier: Apache-2.0
# The locale never changes a number, and letters only where it has none for them. TAP.
# Usage: locale.sh PROGRAM. Locales are made for the run, in a folder of their own (localedef).
program=$(realpath "$1")
at=$(mktemp -d)
trap 'rm -rf "$at"' EXIT
number=0
say() { # STATUS NAME
	number=$((number + 1))
	[ "$1" = 0 ] && echo "ok $number - $2" || echo "not ok $number - $2"
}
cd "$at" || exit 1
cat >plan.yaml <<-END
	water:
	  readings:
	    - {pH: 7.6, GH: 14 dH, KH: 9.5 dH}
	tank: {length: 100 cm, width: 40 cm, height: 50 cm, filter: mature, temperature: 25 C,
	  water_change: 30 % every 7 days, feeding: ordinary, plants: some}
	stock:
	  - {species: Poecilia reticulata, count: 6}
END
water=(--pH 7.6 --GH 14.5 --KH 9.5 --temperature 25)
answers() { # FOLDER; some commands, each with formats of its own
	mkdir -p "$1"
	for format in text json csv html; do
		"$program" find tetra --pH 7.6 -f $format >"$1/find.$format"
	done
	"$program" rank "${water[@]}" -f csv >"$1/rank.csv"
	for format in text json html; do
		"$program" titrate "${water[@]}" -f $format >"$1/titrate.$format"
		"$program" drift plan.yaml -f $format >"$1/drift.$format"
	done
	"$program" remake --for "neon tetra" --volume 100L "${water[@]}" >"$1/remake.text"
	"$program" water nowhere.yaml 2>"$1/error"
}

echo 1..4
LC_ALL=C.UTF-8 answers plain
export LOCPATH=$at/locales # empty but for the one made here
mkdir locales
if localedef -i de_DE -f UTF-8 locales/de_DE.UTF-8 >/dev/null 2>&1 &&
	[ "$(LC_ALL=de_DE.UTF-8 bash -c 'printf %.1f 1,5' 2>/dev/null)" = 1,5 ]; then
	LC_ALL=de_DE.UTF-8 answers comma
	diff -r plain comma
	say $? "a decimal comma of the locale changes no answer and no file"
	grep -q '7\.6' comma/titrate.text && grep -q '14\.5' comma/rank.csv && [ -s comma/drift.json ] &&
		[ -s comma/remake.text ] && [ -s comma/error ]
	say $? "the answers that were compared hold numbers"
else
	for name in "a decimal comma changes nothing" "the answers hold numbers"; do
		number=$((number + 1))
		echo "ok $number - $name # SKIP no locale could be made (Debian: locales)"
	done
fi
LC_ALL=C answers letters
! LC_ALL=C grep -l '[^ -~]' letters/*.text letters/error
say $? "without UTF-8 a screen is of plain letters"
for file in plain/*.json plain/*.csv plain/*.html; do
	cmp -s "$file" "letters/${file#plain/}" || echo "# $file"
done | grep -q . ; [ $? = 1 ]
say $? "without UTF-8 files for programs and pages keep theirs"
