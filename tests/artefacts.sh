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

say() { # OK WHAT: a line of the report
	[ "$1" = 0 ] && echo "ok - $2" || { echo "not ok - $2"; failed=1; }
}
begin() { start=$(date +%s.%N); }
took() { awk -v a="$start" -v b="$(date +%s.%N)" 'BEGIN { printf "%.1f s", b - a }'; }
size() { du -sk --apparent-size "$@" | awk '{ n += $1 } END { printf "%.1f MB", n / 1024 }'; }
answers() { # COMMAND...: does it answer?
	# shellcheck disable=SC2086  # flags
	"$@" rank $water 2>"$work/said" | grep -q 'suit this water'
}
nothing_left() { # FOLDER: no file is left there
	[ -z "$(find "$1" ! -type d -print -quit 2>/dev/null)" ]
}

git archive --prefix "$name/" HEAD | gzip -9n >"$out/$name.tar.gz"
say 0 "a tarball of $(size "$out/$name.tar.gz")"

# From source: unpacked, built, installed below a folder, asked, uninstalled.
begin
tar -xzf "$out/$name.tar.gz" -C "$work"
if meson setup "$work/build" "$work/$name" -Dtests=false -Dbuildtype=release --prefix "$work/prefix" >"$work/log" 2>&1 &&
	meson install -C "$work/build" >>"$work/log" 2>&1 && (cd / && answers "$work/prefix/bin/tapshoal"); then
	say 0 "from the tarball to a first answer in $(took), $(size "$work/prefix") installed"
	ninja -C "$work/build" uninstall >>"$work/log" 2>&1
	nothing_left "$work/prefix" && say 0 "uninstalled, no file is left" || say 1 "uninstalled, no file is left"
else
	tail -5 "$work/log"
	say 1 "from the tarball to a first answer"
fi

# One file: in a folder with nothing else, as the root of all there is where we may.
begin
if sh "$work/$name/examples/static.sh" "$work/static" >"$work/log" 2>&1; then
	mkdir "$work/bare"
	cp "$work/static/tapshoal" "$work/bare/"
	cp "$work/static/tapshoal" "$out/$name-$(uname -m)"
	built=$(took)
	begin
	if [ "$(id -u)" = 0 ]; then
		answers chroot "$work/bare" /tapshoal && say 0 "one file of $(size "$work/bare"), built in $built, answers in an empty root in $(took)" ||
			say 1 "one file answers in an empty root"
	else
		(cd "$work/bare" && answers ./tapshoal) && say 0 "one file of $(size "$work/bare"), built in $built, answers in $(took)" ||
			say 1 "one file answers"
	fi
	[ "$(ls "$work/bare")" = tapshoal ] && say 0 "it leaves nothing beside itself" || say 1 "it leaves nothing beside itself"
else
	tail -5 "$work/log"
	say 1 "one file is built"
fi

# Debian: the recipe of docs/packaging beside the sources, with a changelog of this commit.
package() { # FOLDER: builds all packages there
	mkdir -p "$1"
	tar -xzf "$out/$name.tar.gz" -C "$1"
	cp "$out/$name.tar.gz" "$1/tapshoal_$version.orig.tar.gz"
	cp -r docs/packaging/debian "$1/$name/debian"
	printf 'tapshoal (%s-1) unstable; urgency=medium\n\n  * The state of %s.\n\n -- tapshoal developers <tapshoal@example.org>  %s\n' \
		"$version" "$(git rev-parse --short HEAD)" "$(git log -1 --format=%cD)" >"$1/$name/debian/changelog"
	(cd "$1/$name" && dpkg-buildpackage -us -uc) >"$1/log" 2>&1
}
if ! command -v dpkg-buildpackage >/dev/null || ! command -v dh >/dev/null; then
	echo "ok - Debian packages # SKIP needs dpkg-dev and debhelper"
	begin
elif begin && package "$work/deb"; then
	built=$(took)
	deb=$(ls "$work"/deb/tapshoal_*.deb)
	cp "$work"/deb/*.deb "$work"/deb/*.dsc "$work"/deb/*.debian.tar.* "$out/"
	root=$work/root
	mkdir -p "$root/var/lib/dpkg/info" "$root/var/lib/dpkg/updates"
	: >"$root/var/lib/dpkg/status"
	begin
	dpkg --root="$root" --force-depends --force-not-root --log=/dev/null -i "$deb" >"$work/log" 2>&1
	# shellcheck disable=SC2086
	if answers "$root/usr/bin/tapshoal" && [ "$("$root/usr/bin/tapshoal" find --fixed guppy -q | wc -l)" -gt 0 ]; then
		say 0 "a package of $(size "$deb"), built in $built, from package to answer in $(took), $(size "$root/usr") installed"
	else
		say 1 "from the package to a first answer"
	fi
	dpkg --root="$root" --force-depends --force-not-root --log=/dev/null -P tapshoal >>"$work/log" 2>&1
	rm -rf "$root/var/lib/dpkg"
	nothing_left "$root" && say 0 "removed, no file is left" || say 1 "removed, no file is left"
	package "$work/again" && cmp -s "$deb" "$work/again/$(basename "$deb")" && say 0 "built again elsewhere, the same to the byte" ||
		say 1 "built again elsewhere, the same to the byte"
	if command -v lintian >/dev/null; then
		lintian --fail-on error,warning "$work"/deb/*.changes >"$work/lintian" 2>&1 && say 0 "lintian has nothing to say" || {
			sed 's/^/# /' "$work/lintian"
			say 1 "lintian has nothing to say"
		}
	else
		echo "ok - lintian # SKIP not installed"
	fi
else
	tail -20 "$work/deb/log"
	say 1 "Debian packages are built"
fi

(cd "$out" && find . -maxdepth 1 -type f ! -name SHA256SUMS -printf '%f\n' | sort | xargs sha256sum >SHA256SUMS &&
	sha256sum --quiet -c SHA256SUMS) && say 0 "checksums of $(wc -l <"$out/SHA256SUMS") files, to be signed by who releases them"
exit $failed
