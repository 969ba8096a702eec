# shellcheck shell=sh
# SPDX-License-Identifier: Apache-2.0
# Sourced by the others: $work, a folder that ends with the run, and in it $work/build, a release;
# TAPSHOAL_RELEASE names a build folder of one that is made already.
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
if [ -n "${TAPSHOAL_RELEASE:-}" ]; then
	ln -s "$(realpath "$TAPSHOAL_RELEASE")" "$work/build"
else
	meson setup "$work/build" -Dbuildtype=release -Dtests=false >/dev/null
fi
ninja -C "$work/build" >/dev/null
