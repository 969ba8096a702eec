#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# The two commands of the README on a bare Debian 12: in a fresh minimal system in a temporary
# folder, on the commit that is checked out. Prints seconds and MB of packages that came down; ends
# with 1 if a command fails. Needs root, debootstrap and the network, so it is no part of the ordinary run.
# The mirror is the one that apt uses here, or TAPSHOAL_MIRROR; apt's settings are used inside too.
set -eu
cd "$(dirname "$0")/.."
# shellcheck disable=SC2016  # apt fills these in
mirror=${TAPSHOAL_MIRROR:-$(apt-get indextargets --format '$(REPO_URI) $(RELEASE)' |
	sed -n 's/ bookworm$//p' | head -n 1)}
[ -n "$mirror" ] || { echo "no mirror of Debian 12 is set up; name one in TAPSHOAL_MIRROR"; exit 2; }
log=$(mktemp)
root=$(mktemp -d)
# shellcheck disable=SC2317  # the trap calls it
cleanup() {
	if mountpoint -q "$root/proc"; then
		umount "$root/proc" || exit 1
	fi
	rm -rf --one-file-system "$root" "$log"
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
mkdir "$root/tapshoal"
git archive HEAD | tar -x -C "$root/tapshoal"

inside() { # COMMAND: runs it in the fresh system, says how long it took and what came down so far
	start=$(date +%s)
	if chroot "$root" env -i PATH=/usr/sbin:/usr/bin:/sbin:/bin HOME=/root LC_ALL=C.UTF-8 \
		sh -c "cd /tapshoal && $1" >"$log" 2>&1; then
		ended=0
	else
		ended=$?
		failed=1
		tail -n 30 "$log"
	fi
	packages=$(du -cm "$root"/var/cache/apt/archives/*.deb 2>/dev/null | tail -n 1 | cut -f1)
	lists=$(du -sm "$root/var/lib/apt/lists" | cut -f1)
	echo "$1: exit $ended, $(($(date +%s) - start)) s," \
		"so far ${packages:-0} MB of packages and $lists MB of lists, unpacked; $(tail -n 1 "$log")"
}
failed=0
inside "sh examples/first-match.sh"
inside "sh tests/run.sh"
inside "sh tests/run.sh"
exit "$failed"
