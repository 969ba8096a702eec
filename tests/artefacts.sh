#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Makes what people get (tarball, one static file, Debian packages) of the commit that is checked out,
# and takes each to a bare folder: from nothing to a first answer, and gone without a trace. Prints
# seconds and megabytes. What cannot be done here is said as skipped. Usage: artefacts.sh [FOLDER],
# which keeps them, with their checksums.
set -eu
cd "$(dirname "$0")/.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
out=${1:-$work/out}
mkdir -p "$out"
out=$(realpath "$out")
version=$(sed -n "s/^  version: '\(.*\)',/\1/p" meson.build)
name=tapshoal-$version
failed=0
water="--GH 14 --KH 9 --pH 7.6 --temperature 25"

good() { echo "ok - $1"; }
bad() {
	echo "not ok - $1"
	failed=1
}
check() { # WHAT COMMAND...: a line of the report
	what=$1
	shift
	if "$@"; then good "$what"; else bad "$what"; fi
}
begin() { start=$(date +%s.%N); }
took() { awk -v a="$start" -v b="$(date +%s.%N)" 'BEGIN { printf "%.1f s", b - a }'; }
size() { du -sk --apparent-size "$@" | awk '{ n += $1 } END { printf "%.1f MB", n / 1024 }'; }
answers() { # COMMAND...: does it answer?
	# shellcheck disable=SC2086  # flags
	"$@" rank $water 2>"$work/said" | grep -q 'suit this water'
}
# shellcheck disable=SC2317  # check calls it
nothing_left() { # FOLDER: no file is left there
	[ -z "$(find "$1" ! -type d -print -quit 2>/dev/null)" ]
}

git archive --prefix "$name/" HEAD | gzip -9n >"$out/$name.tar.gz"
good "a tarball of $(size "$out/$name.tar.gz")"

# From source: unpacked, built, installed below a folder, asked, uninstalled.
begin
tar -xzf "$out/$name.tar.gz" -C "$work"
if meson setup "$work/build" "$work/$name" -Dtests=false -Dbuildtype=release --prefix "$work/prefix" >"$work/log" 2>&1 &&
	meson install -C "$work/build" >>"$work/log" 2>&1 && (cd / && answers "$work/prefix/bin/tapshoal"); then
	good "from the tarball to a first answer in $(took), $(size "$work/prefix") installed"
	ninja -C "$work/build" uninstall >>"$work/log" 2>&1
	check "uninstalled, no file is left" nothing_left "$work/prefix"
else
	tail -5 "$work/log"
	bad "from the tarball to a first answer"
fi

# One file: in a folder with nothing else, as the root of all there is where we may.
begin
if sh "$work/$name/examples/static.sh" "$work/static" >"$work/log" 2>&1; then
	mkdir "$work/bare"
	cp "$work/static/tapshoal" "$work/bare/"
	cp "$work/static/tapshoal" "$out/$name-$(uname -m)"
	built=$(took)
	begin
	root_of=""
	[ "$(id -u)" != 0 ] || root_of="chroot $work/bare"
	# shellcheck disable=SC2086  # a command, or none
	if (cd "$work/bare" && if [ "$root_of" ]; then answers $root_of /tapshoal; else answers ./tapshoal; fi); then
		good "one file of $(size "$work/bare"), built in $built, answers in a folder with nothing else${root_of:+, its root,} in $(took)"
	else
		bad "one file answers in a folder with nothing else"
	fi
	check "it leaves nothing beside itself" [ "$(ls "$work/bare")" = tapshoal ]
else
	tail -5 "$work/log"
	bad "one file is built"
fi

# Debian: the recipe of docs/packaging beside the sources, with a changelog of this commit.
package() { # FOLDER: builds all packages there
	mkdir -p "$1"
	tar -xzf "$out/$name.tar.gz" -C "$1"
	cp "$out/$name.tar.gz" "$1/tapshoal_$version.orig.tar.gz"
	cp -r docs/packaging/debian "$1/$name/debian"
	printf 'tapshoal (%s-0local1) unstable; urgency=medium\n\n  * The state of %s.\n\n -- tapshoal developers <tapshoal@example.org>  %s\n' \
		"$version" "$(git rev-parse --short HEAD)" "$(git log -1 --format=%cD)" >"$1/$name/debian/changelog"
	(cd "$1/$name" && dpkg-buildpackage -us -uc) >"$1/log" 2>&1
}
if ! command -v dpkg-buildpackage >/dev/null || ! command -v dh >/dev/null; then
	echo "ok - Debian packages # SKIP needs dpkg-dev and debhelper"
	begin
elif begin && package "$work/deb"; then
	built=$(took)
	deb=$(ls "$work"/deb/tapshoal_*.deb)
	cp "$work"/deb/*.deb "$work"/deb/*.dsc "$work"/deb/*.orig.tar.gz "$work"/deb/*.debian.tar.* "$out/"
	root=$work/root
	mkdir -p "$root/var/lib/dpkg/info" "$root/var/lib/dpkg/updates"
	: >"$root/var/lib/dpkg/status"
	begin
	dpkg --root="$root" --force-depends --force-not-root --log=/dev/null -i "$deb" >"$work/log" 2>&1
	# shellcheck disable=SC2086
	if answers "$root/usr/bin/tapshoal" && [ "$("$root/usr/bin/tapshoal" find --fixed guppy -q | wc -l)" -gt 0 ]; then
		good "a package of $(size "$deb"), built in $built, from package to answer in $(took), $(size "$root/usr") installed"
	else
		bad "from the package to a first answer"
	fi
	dpkg --root="$root" --force-depends --force-not-root --log=/dev/null -P tapshoal >>"$work/log" 2>&1
	rm -rf "$root/var/lib/dpkg"
	check "removed, no file is left" nothing_left "$root"
	package "$work/again" || true
	check "built again elsewhere, the same to the byte" cmp -s "$deb" "$work/again/$(basename "$deb")"
	if command -v lintian >/dev/null; then
		if lintian --fail-on error,warning "$work"/deb/*.changes >"$work/lintian" 2>&1; then
			good "lintian has no error and no warning"
		else
			sed 's/^/# /' "$work/lintian"
			bad "lintian has no error and no warning"
		fi
	else
		echo "ok - lintian # SKIP not installed"
	fi
else
	tail -20 "$work/deb/log"
	bad "Debian packages are built"
fi

# shellcheck disable=SC2094  # find leaves that file out
(cd "$out" && find . -maxdepth 1 -type f ! -name SHA256SUMS -printf '%f\n' | sort | xargs sha256sum >SHA256SUMS &&
	sha256sum --quiet -c SHA256SUMS)
good "checksums of $(wc -l <"$out/SHA256SUMS") files, to be signed by who releases them"
exit $failed
