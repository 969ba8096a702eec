#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Every golden case through the program as it runs in the page, by its own answers to system calls:
# the same bytes, but for the cases of unfit.txt. Then its size. Usage: golden.sh PROGRAM FOLDER,
# the program of the terminal and the folder of src/page/build.sh. Prints TAP.
set -eu
program=$(cd "$(dirname "$1")" && pwd)/$(basename "$1") # the cases run elsewhere
folder=$(cd "$2" && pwd)
here=$(cd "$(dirname "$0")" && pwd)
cat >"$folder/as-terminal" <<-END
	#!/bin/sh
	exec node --no-warnings "$here/run.js" "$folder/page.wasm" "$program" "\$@"
END
chmod +x "$folder/as-terminal"
status=0
python3 "$here/../golden.py" "$folder/as-terminal" --without "$here/unfit.txt" || status=1
whole=$(wc -c <"$folder/page.wasm") packed=$(wc -c <"$folder/page.packed")
echo "# the program for the page: $whole bytes, $packed compressed"
if [ "$whole" -gt 1500000 ] || [ "$packed" -gt 450000 ]; then
	echo "# larger than 1500000, or 450000 compressed"
	status=1
fi
exit $status
