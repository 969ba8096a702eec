#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# rank with its files out of the page cache, from the image and from the records themselves: prints the ratio.
# Goal: at most 0.25. Usage: cold.sh
set -eu
cd "$(dirname "$0")/../.."
. tests/bench/release.sh
python3 tests/bench/cold.py "$work"
