#!/bin/bash
# SPDX-License-Identifier: Apache-2.0
# Man pages and completions as the build wrote them, and what is installed. TAP.
# Usage: pages.sh BUILD-FOLDER
build=$(realpath "$1/src/cli")
at=$(mktemp -d)
trap 'rm -rf "$at"' EXIT
number=0
say() { # STATUS NAME
	number=$((number + 1))
	[ "$1" = 0 ] && echo "ok $number - $2" || echo "not ok $number - $2"
}
skip() { number=$((number + 1)); echo "ok $number - $1 # SKIP $2 is not installed"; }

echo 1..13
if command -v mandoc >/dev/null; then
	! mandoc -Tlint "$build"/*.[15] | grep .
	say $? "mandoc says nothing of any page"
else
	skip "mandoc says nothing of any page" mandoc
fi
if command -v groff >/dev/null; then
	! groff -man -Tutf8 -ww -rCHECKSTYLE=3 "$build"/*.[15] 2>&1 >/dev/null | grep .
	say $? "groff says nothing of any page"
else
	skip "groff says nothing of any page" groff
fi
# Every command has a page, and every page calls that run from an empty folder.
! "$build/tapshoal" --help | sed -n 's/^  tapshoal \([a-z-]*\).*/\1/p' | while read -r name; do
	grep -q '^\.SH EXAMPLES$' "$build/tapshoal-$name.1" || echo "no examples of $name"
done | grep .
say $? "a page a command, each with examples"
mkdir "$at/empty"
printf 'pH 7.8\nTotal hardness 12 dH\n' >"$at/empty/report.txt"
! for page in "$build"/tapshoal-*.1; do
	sed -n '/^\.nf$/,/^\.fi$/s/^\.B //p' "$page" | sed 's/\\(dq/"/g; s/\\-/-/g' | grep '^tapshoal' | while read -r call; do
		(cd "$at/empty" && PATH=$build:$PATH XDG_CONFIG_HOME=$at/empty bash -c "$call" >out 2>err </dev/null)
		code=$?
		[ "$code" -le 1 ] && [ ! -s "$at/empty/err" ] || echo "$code: $call: $(cat "$at/empty/err")"
	done
done | grep -v 'the page was not built with this program'
say $? "every example runs as it stands"
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
if command -v fish >/dev/null; then
	found=$(cd "$at" && find . -name tapshoal.fish | head -1)
	found=${found#.}
	# shellcheck disable=SC2016 # fish expands it
	env -u XDG_DATA_DIRS HOME="$at" fish -c 'string join \n $fish_complete_path' 2>/dev/null | grep -qx "${found%/*}"
	say $? "fish looks where its completion was installed"
else
	skip "fish looks where its completion was installed" fish
fi
