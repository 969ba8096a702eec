#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Which share of a whole rank over 320 invented records is not libyaml's parsing, in instructions
# as callgrind counts them. Goal: under a quarter. Usage: profile.sh (Debian: valgrind)
set -eu
cd "$(dirname "$0")/../.."
. tests/bench/release.sh
python3 tests/bench/profile.py "$work"
