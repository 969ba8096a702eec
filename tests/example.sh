#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# The example of the library, run on the frozen catalogue: PROGRAM FOLDER. Prints TAP.
echo 1..1
found=$("$1" "$2" | tr '\n' ' ')
if [ "$found" = "Exempla dura Exempla lacustris Exempla lata Exempla media Exempla testa " ]; then
	echo "ok 1 - the example ranks an invented water"
else
	echo "not ok 1 - the example ranks an invented water (got: $found)"
fi
