#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Reads reports of 5 and of 50 MB: prints the seconds of both; fails where the time of the
# larger is more than 13 times that of the smaller, or the memory grows beyond 48 MB.
set -eu
cd "$(dirname "$0")/../.."
. tests/bench/release.sh
python3 tests/bench/report.py "$work"
