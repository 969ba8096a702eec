#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Installs the Debian packages that are missing; quick and offline when none is.
# Usage: packages.sh run|test   (run: build and run the program; test: the tests as well)
set -eu
want="gcc libc6-dev meson ninja-build pkg-config libyaml-dev"
[ "${1:-run}" = run ] || want="$want libcmocka-dev python3"
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
