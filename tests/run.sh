#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Installs what is missing, builds, runs the plain tests; the last line counts single cases.
set -eu
cd "$(dirname "$0")/.."
sh tests/build.sh test
exec python3 tests/tap.py "${TAPSHOAL_BUILD:-build}"
