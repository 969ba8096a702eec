#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Installs the Debian packages that are missing; quick and offline when none is. Where that is not
# allowed it says what is missing and who can install it, and ends with 3.
# Usage: packages.sh run|page|test|full|prove   (build and run; build the page; the plain tests; the slow
# ones; all browsers as well)
set -eu
kind=${1:-run}
browsers=""
if [ "$kind" = prove ]; then
	kind=full
	browsers="firefox-esr webkit2gtk-driver xvfb xauth dbus abigail-tools"
fi
want="gcc libc6-dev meson ninja-build pkg-config libyaml-dev libutf8proc-dev libpcre2-dev"
page="python3 clang-14 lld-14 llvm-14 wasi-libc libclang-rt-14-dev-wasm32 dpkg-dev xz-utils binaryen"
case "$kind" in
run) ;;
page) want="$want $page" ;;
*) want="$want libcmocka-dev python3" ;;
esac
[ "$kind" != full ] || want="$want $page git g++ libclang-rt-14-dev
	clang-format-14 clang-tidy-14 cppcheck valgrind gcovr mandoc
	locales python3-jsonschema python3-yaml shellcheck coinor-cbc glpk-utils libsqlite3-dev chromium
	chromium-driver python3-selenium python3-icalendar zsh fish acl attr $browsers"
[ "$kind" != full ] || command -v node >/dev/null || want="$want nodejs"
[ "$kind" != full ] || command -v npm >/dev/null || want="$want npm"
if ! command -v apt-get >/dev/null || ! command -v dpkg-query >/dev/null; then
	# shellcheck disable=SC2086  # one blank between words
	echo "No apt-get here: nothing is installed. Debian calls what is needed:" $want
	exit 0
fi
missing=""
for package in $want; do
	dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'ok installed' ||
		missing="$missing $package"
done
[ -n "$missing" ] || exit 0
as_root=""
if [ "$(id -u)" != 0 ]; then
	as_root=sudo
fi
log=$(mktemp)
trap 'rm -f "$log"' EXIT

refuse() { # WHY
	[ ! -s "$log" ] || sed 's/^/    /' "$log"
	echo "$1"
	echo "Somebody who is root on this machine can type:"
	echo
	echo "    apt-get update"
	echo "    apt-get install --no-install-recommends$missing" | fold -s -w 76 |
		sed '2,$s/^/      /; $!s/ *$/ \\/'
	echo
	echo "Then run this again, as yourself."
	exit 3
}
[ -z "$as_root" ] || command -v sudo >/dev/null ||
	refuse "Packages are missing. Only root may install them, and there is no sudo here."
echo "installing:$missing"
$as_root apt-get update -q >/dev/null 2>"$log" || refuse "The lists of packages did not come down."
# shellcheck disable=SC2086  # the list is words on purpose
$as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends \
	$missing >/dev/null 2>"$log" || refuse "Packages are missing and could not be installed."
