#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# The same program on a phone: installs what is missing, builds it as one HTML file that works from
# a file, a mail or any web server, without a network, and says where it is.
set -eu
cd "$(dirname "$0")/.."
build=${TAPSHOAL_BUILD:-build}
sh src/page/build.sh "$build/page" "$build"
echo
echo "The page is one file. Open it in a browser, or send it to your phone:"
echo
echo "    $(cd "$build/page" && pwd)/tapshoal.html"
echo
echo "For a web server there is the folder site beside it, from which a phone can keep the page."
