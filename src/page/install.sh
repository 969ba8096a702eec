#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Installs the page and its folder for a web server, if they were built. Usage, by Meson: install.sh
# PAGE FOLDER, below the prefix.
set -eu
[ -f "$1" ] || exit 0
case $2 in
/*) folder=${DESTDIR:-}$2 ;;
*) folder=$MESON_INSTALL_DESTDIR_PREFIX/$2 ;;
esac
mkdir -p "$folder"
install -m 644 "$1" "$folder/tapshoal.html"
mkdir -p "$folder/site"
install -m 644 "$(dirname "$1")"/site/* "$folder/site"
