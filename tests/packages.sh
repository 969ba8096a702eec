#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Installs the Debian packages that are missing; quick and offline when none is.
# Usage: packages.sh run|test|full   (build and run; the plain tests as well; the slow ones too)
set -eu
want="gcc libc6-dev meson ninja-build pkg-config libyaml-dev libutf8proc-dev libpcre2-dev"
[ "${1:-run}" = run ] || want="$want libcmocka-dev python3"
[ "${1:-run}" != full ] || want="$want git g++ clang-14 libclang-rt-14-dev lld-14 wasi-libc
	libclang-rt-14-dev-wasm32 clang-format-14 clang-tidy-14 cppcheck valgrind gcovr
	mandoc locales python3-jsonschema python3-yaml shellcheck coinor-cbc glpk-utils libsqlite3-dev
	chromium chromium-driver python3-selenium python3-icalendar"
[ "${1:-run}" != full ] || command -v node >/dev/null || want="$want nodejs"
[ "${1:-run}" != full ] || command -v npm >/dev/null || want="$want npm"
missing=""
for package in $want; do
	dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'ok installed' ||
		missing="$missing $package"
done
[ -n "$missing" ] || exit 0
echo "installing:$missing"
as_root=""
[ "$(id -u)" = 0 ] || as_root=sudo
$as_root apt-get update -q >/dev/null
# shellcheck disable=SC2086  # the list is words on purpose
$as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends \
	$missing >/dev/null
