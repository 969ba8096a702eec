#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# The program as one file with the records inside, which runs on any Linux of this kind of processor
# and needs nothing beside it: builds it, says where it is. Needs what tests/packages.sh installs.
# Usage: static.sh [FOLDER]
set -eu
cd "$(dirname "$0")/.."
out=${1:-build-static}
[ -d "$out" ] || meson setup "$out" -Dbuildtype=release -Dtests=false -Dinside=true -Dprefer_static=true \
	-Db_pie=false -Dc_link_args=-static >/dev/null
ninja -C "$out" src/cli/tapshoal >/dev/null
strip -o "$out/tapshoal" "$out/src/cli/tapshoal"
echo "$out/tapshoal"
