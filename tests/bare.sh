#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# The two commands of the README on a bare Debian 12: in a fresh minimal system in a temporary
# folder, on the commit that is checked out; the tests with clang as well. Prints seconds and MB of
# packages that came down; ends with 1 if a command fails. Needs root, debootstrap and the network,
# so it is no part of the ordinary run. The mirror is the one that apt uses here, or
# TAPSHOAL_MIRROR; apt's settings are used inside too. With TAPSHOAL_KEEP=1 the system is kept, to be
# walked through by hand: the last line says how to enter it, and how to be rid of it.
set -eu
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
	rm -f "$log"
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
