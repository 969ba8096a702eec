#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# The two commands of the README on a bare Debian 12: in a fresh minimal system in a temporary
# folder, on the commit that is checked out; the tests with clang as well. Prints seconds and MB of
# packages that came down; ends with 1 if a command fails. Needs root, debootstrap and the network,
# so it is no part of the ordinary run. The mirror is the one that apt uses here, or
# TAPSHOAL_MIRROR; apt's settings are used inside too. With TAPSHOAL_KEEP=1 the system is kept, to be
# walked through by hand: the last line says how to enter it, and how to be rid of it.
# Usage: bare.sh [FOLDER]   With FOLDER, what artefacts.sh left there (packages, the static file, the tarball) is
# taken from nothing to a first answer and away again instead, in this order: file, package, source; what
# is another file in the system afterwards is named. The tests that come with the package
# (debian/tests) are run there as well, by autopkgtest where it is installed.
set -eu
artefacts=${1:+$(realpath "$1")}
cd "$(dirname "$0")/.."
# shellcheck disable=SC2016  # apt fills these in
mirror=${TAPSHOAL_MIRROR:-$(apt-get indextargets --format '$(REPO_URI) $(RELEASE)' |
	sed -n 's/ bookworm$//p' | head -n 1)}
[ -n "$mirror" ] || { echo "no mirror of Debian 12 is set up; name one in TAPSHOAL_MIRROR"; exit 2; }
log=$(mktemp)
root=$(mktemp -d)
chmod 755 "$root" # it becomes the root folder of an ordinary user
keep=""
# shellcheck disable=SC2317  # the trap calls it
cleanup() {
	rm -f "$log" "$log.was" "$log.now"
	if [ -n "$keep" ]; then
		echo "kept; enter with: chroot $root env -i HOME=/root TERM=\"\$TERM\" sh -l"
		echo "be rid of it with: umount $root/proc; rm -rf --one-file-system $root"
		return
	fi
	if mountpoint -q "$root/proc"; then
		umount "$root/proc" || exit 1
	fi
	rm -rf --one-file-system "$root"
}
trap cleanup EXIT
trap 'exit 1' INT TERM

debootstrap --variant=minbase bookworm "$root" "$mirror" >"$log" 2>&1 || { tail "$log"; exit 1; }
mountpoint -q "$root/proc" || mount -t proc proc "$root/proc"
for setting in /etc/apt/apt.conf.d/*; do # those of containers delete what we want to weigh
	case $setting in
	*docker*) ;;
	*) cp "$setting" "$root/etc/apt/apt.conf.d/" ;;
	esac
done
cp /etc/resolv.conf /etc/hosts "$root/etc/"
rm -rf "$root"/var/cache/apt/archives/*.deb "$root"/var/lib/apt/lists/*
for folder in /tapshoal /home/keeper/tapshoal; do
	mkdir -p "$root$folder"
	git archive HEAD | tar -x -C "$root$folder"
done
chroot "$root" useradd --shell /bin/sh keeper
chroot "$root" chown -R keeper: /home/keeper
keep=${TAPSHOAL_KEEP:-}

within() { # USER FOLDER COMMAND: runs it in the fresh system; there is no sudo there
	home=/root
	[ "$1" = root ] || home=/home/$1
	chroot "$root" setpriv --reuid "$1" --regid "$1" --clear-groups env -i HOME="$home" \
		PATH=/usr/local/bin:/usr/sbin:/usr/bin:/sbin:/bin LC_ALL=C.UTF-8 sh -c "cd $2 && $3" >"$log" 2>&1
}
inside() { # EXIT USER FOLDER COMMAND: says how it ended, how long it took, what came down so far
	wanted=$1
	shift
	start=$(date +%s)
	within "$@" && ended=0 || ended=$?
	if [ "$ended" != "$wanted" ]; then
		failed=1
		grep '^not ok\|^failed:' "$log" || tail -n 30 "$log"
	fi
	packages=$(du -cm "$root"/var/cache/apt/archives/*.deb 2>/dev/null | tail -n 1 | cut -f1)
	lists=$(du -sm "$root/var/lib/apt/lists" | cut -f1)
	echo "$1: $3: exit $ended, $(($(date +%s) - start)) s," \
		"so far ${packages:-0} MB of packages and $lists MB of lists, unpacked; $(tail -n 1 "$log")"
}
failed=0

# What there is in the system but what packages, their lists and logs leave of themselves.
everything() {
	find "$root" -xdev \( -path "$root/proc" -o -path "$root/var/cache" -o -path "$root/var/lib/apt" -o \
		-path "$root/var/lib/dpkg" -o -path "$root/var/log" -o -path "$root/tmp" -o -path "$root/taken" \
		-o -path "$root/etc/ld.so.cache" \) -prune -o -printf '%P %y %m %U\n' | sort
}
gone() { # WHAT: is everything as it was?
	everything >"$log.now"
	if diff "$log.was" "$log.now" >"$log"; then
		echo "$1: removed, no file is left or another"
	else
		failed=1
		echo "$1: removed, but:"
		sed -n 's/^[<>]/    &/p' "$log"
	fi
}
water="--GH 14 --KH 9 --pH 7.6 --temperature 25"
taken() {
	mkdir "$root/taken"
	cp "$artefacts"/*.deb "$artefacts"/*.dsc "$artefacts"/*.tar.* "$artefacts"/tapshoal-*-"$(uname -m)" "$root/taken/"
	chmod -R a+rX "$root/taken"
	name=$(basename "$(ls "$artefacts"/tapshoal-*.tar.gz)" .tar.gz)
	everything >"$log.was"
	inside 0 keeper /home/keeper "cp /taken/tapshoal-*-$(uname -m) fish && ./fish rank $water | grep 'suit this water'"
	echo "the static file: $(du -k "$root/home/keeper/fish" | cut -f1) kB"
	rm -f "$root/home/keeper/fish"
	gone "the static file"
	inside 0 root / "apt-get update -q && apt-get install -y -q --no-install-recommends /taken/tapshoal_*.deb &&
		tapshoal rank $water | grep 'suit this water'"
	inside 0 keeper / "tapshoal check @sample/livebearers | head -n 1"
	inside 0 root / "apt-get purge -y -q tapshoal && apt-get autoremove --purge -y -q"
	gone "the package"
	if command -v autopkgtest >/dev/null; then
		start=$(date +%s)
		autopkgtest "$artefacts"/*.deb "$artefacts"/*.dsc -- chroot "$root" >"$log" 2>&1 && ended=0 || ended=$?
		# 8: all that there were were skipped
		[ "$ended" = 0 ] || { failed=1; tail -n 20 "$log"; }
		echo "autopkgtest: exit $ended, $(($(date +%s) - start)) s; $(grep -c ' PASS$' "$log") passed"
		inside 0 root / "apt-get purge -y -q tapshoal"
	else
		echo "autopkgtest: skipped, not installed"
	fi
	inside 0 root /root "tar -xzf /taken/$name.tar.gz && cd $name && sh examples/first-match.sh && meson install -C build &&
		cd / && tapshoal rank $water | grep 'suit this water'"
	inside 0 root "/root/$name" "ninja -C build uninstall && cd /root && rm -r $name && ! find /usr/local -type f | grep tapshoal"
	inside 0 root / "! find / -xdev -path /proc -prune -o -path /taken -prune -o -path /tapshoal -prune \
		-o -path /home/keeper/tapshoal -prune -o -path /var/lib/dpkg -prune -o -name '*tapshoal*' -print | grep /"
	exit "$failed"
}
[ -z "$artefacts" ] || taken
inside 3 keeper /home/keeper/tapshoal "sh examples/first-match.sh" # who may not install is told what
inside 0 root /tapshoal "sh examples/first-match.sh"
inside 0 root /tapshoal "sh tests/run.sh"
inside 0 root /tapshoal "sh tests/run.sh"
inside 0 root /tapshoal "meson install -C build"
inside 0 root / "tapshoal why guppy --GH 14 --KH 9 --pH 7.6 --temperature 24..26"
inside 0 root /tapshoal "apt-get install -y -q --no-install-recommends clang"
inside 0 root /tapshoal "CC=clang TAPSHOAL_BUILD=build-clang sh tests/run.sh"
inside 0 keeper /home/keeper/tapshoal "sh examples/first-match.sh"
inside 0 keeper /home/keeper/tapshoal "LC_ALL=C TERM=dumb sh tests/run.sh"
inside 0 keeper /home/keeper/tapshoal \
	"meson configure build --prefix=\"\$HOME/.local\" && meson install -C build"
inside 0 keeper /home/keeper/.local/share/doc/tapshoal \
	"\$HOME/.local/bin/tapshoal why guppy -w examples/waters/kitchen-tap.yaml"
exit "$failed"
