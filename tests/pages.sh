#!/bin/bash
# SPDX-License-Identifier: Apache-2.0
# Man pages and completions as the build wrote them, and what is installed. TAP.
# Usage: pages.sh BUILD-FOLDER
build=$1/src/cli
at=$(mktemp -d)
trap 'rm -rf "$at"' EXIT
number=0
say() { # STATUS NAME
	number=$((number + 1))
	[ "$1" = 0 ] && echo "ok $number - $2" || echo "not ok $number - $2"
}
skip() { number=$((number + 1)); echo "ok $number - $1 # SKIP $2 is not installed"; }

echo 1..10
for page in tapshoal.1 tapshoal-formats.5; do
	if command -v mandoc >/dev/null; then
		# No date: a page written from the tables is as old as the program.
		! mandoc -Tlint "$build/$page" | grep -v -E 'missing date|unknown manual section'
		say $? "$page is clean"
	else
		skip "$page is clean" mandoc
	fi
done
grep -q '^\.B rank$' "$build/tapshoal.1" && grep -q '^\.B home_water' "$build/tapshoal-formats.5"
say $? "the pages hold the rows"

complete_with() { # WORDS... completes the last one
	PATH=$build:$PATH bash -c 'source "$0"; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _tapshoal
		printf "%s\n" "${COMPREPLY[@]}"' "$build/tapshoal.bash" "$@"
}
[ "$(complete_with tapshoal ra)" = rank ]
say $? "bash completes a command"
[ "$(complete_with tapshoal titrate --nigh)" = --nightly ]
say $? "bash completes a flag of a command"
[ "$(complete_with tapshoal why 'Poecilia ret')" = 'Poecilia\ reticulata' ]
say $? "bash completes a species"
if command -v fish >/dev/null; then
	fish --no-execute "$build/tapshoal.fish"
	say $? "fish reads its completion"
else
	skip "fish reads its completion" fish
fi

meson install -C "$1" --destdir "$at" --no-rebuild >/dev/null 2>&1 || true
program=$(find "$at" -type f -name tapshoal -path '*/bin/*')
prefix=${program%/bin/tapshoal}
[ -x "$program" ] && (cd / && "$program" find --fixed guppy | grep -q 'Poecilia reticulata')
say $? "the installed program finds its records below any prefix"
[ -f "$prefix/share/man/man1/tapshoal.1" ] && [ -f "$prefix/share/man/man5/tapshoal-formats.5" ] &&
	[ -f "$prefix/share/bash-completion/completions/tapshoal.bash" ] &&
	diff -r "$(dirname "$0")/../include/tapshoal" "$prefix/include/tapshoal" &&
	find "$prefix" -name tapshoal.pc | grep -q .
say $? "man pages, completions, every header and the pkg-config file are in place"
docs=$prefix/share/doc/tapshoal
[ -f "$docs/docs/guide.md" ] && (cd / && "$program" 2>&1 | grep -q "check $docs/examples/plans/livebearers.yaml") &&
	(cd "$docs" && "$program" check examples/plans/livebearers.yaml >/dev/null; [ $? -le 1 ])
say $? "the guide and its examples are in place, and the bare name tells where"
