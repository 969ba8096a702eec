#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""What is noted is not lost: two hundred at once, killed among each other, no room left, nothing to
write on, behind links.

Usage: noted.py PROGRAM [--notes N] [--kills N] [--seed N]. TAP. Each note is a reading and something
that happened; of those that said that they had noted (exit 0) every one must stand in the file, once,
and the file must be read again. A disk that is full or cannot be written leaves the old file, nothing
beside it, and says so. What wants root or a mount is skipped without.
"""
import argparse
import json
import os
import pathlib
import random
import re
import shutil
import subprocess
import sys
import tempfile

import rewrite

TANK = rewrite.TANK
TODAY = rewrite.TODAY
AS_SOMEBODY = ["setpriv", "--reuid", "1000", "--regid", "1000", "--clear-groups"]


def names_of(folder):
    """Four names of one file."""
    (folder.path / "link").symlink_to("tank.yaml")
    return ["tank.yaml", "./own/../tank.yaml", str(folder.path / "tank.yaml"), "link"]


def words_of(name, number):
    """A minute of the day for each, so that no two are the same."""
    return ["note", name, "KH=%.2f" % (1 + number / 100), "changed %d L" % (number + 1),
            "time=%02d:%02d" % (number // 60, number % 60), *TODAY]


def stands(text, number):
    return (len(re.findall(r"KH: %s dH$" % re.escape("%.2f" % (1 + number / 100)), text, re.M)),
            len(re.findall(r"says: changed %d L$" % (number + 1), text, re.M)))


def is_read(folder, name="tank.yaml"):
    """The file is whole: the program reads it, and counts what stands there."""
    status, out, err = folder.run(["log", name, "-f", "json", *TODAY])
    if status > 1:
        return "it cannot be read any more: " + err.strip()
    lines = json.loads(out)["lines"]
    return len([line for line in lines if line["kh_dh"] is not None])


def crowd(program, notes):
    folder = rewrite.Folder(program)
    names = names_of(folder)
    all_of = [folder.start(words_of(names[i % 4], i)) for i in range(notes)]
    said = [p.communicate(timeout=300) for p in all_of]
    text = folder.read("tank.yaml")
    wrong = ["note %d: exit %d, %s" % (i, p.returncode, said[i][1].decode().strip())
             for i, p in enumerate(all_of) if p.returncode]
    wrong += ["note %d stands %s times" % (i, stands(text, i)) for i in range(notes)
              if stands(text, i) != (1, 1)]
    wrong += [] if is_read(folder) == notes else ["read again it has %s" % is_read(folder)]
    wrong += [] if text.startswith(TANK) else ["what stood there before is another"]
    wrong += [] if (folder.path / "link").is_symlink() else ["the link is gone"]
    wrong += ["left: %s" % p.name for p in folder.left()]
    folder.drop()
    yield "of %d notes at once, by four names, none is lost" % notes, wrong


def killed_crowd(program, notes, kills, chance):
    """Of many at once some are killed: the others' stay, theirs stand wholly or not at all."""
    wrong, killed = [], 0
    for _ in range(kills):
        folder = rewrite.Folder(program)
        names = names_of(folder)
        all_of = [folder.start(words_of(names[i % 4], i)) for i in range(notes)]
        for process in chance.sample(all_of, notes // 3):
            process.kill()
        for process in all_of:
            process.communicate(timeout=300)
        text = folder.read("tank.yaml")
        for i, process in enumerate(all_of):
            killed += process.returncode < 0
            good = [(1, 1)] if process.returncode == 0 else [(0, 0), (1, 1)]
            if stands(text, i) not in good:
                wrong.append("note %d, exit %d, stands %s times" % (
                    i, process.returncode, stands(text, i)))
        if not isinstance(is_read(folder), int):
            wrong.append(is_read(folder))
        folder.drop()
    yield "of %d rounds of %d at once with %d killed all others stand, and the file is whole" % (
        kills, notes, killed), wrong


class Mount:
    """A small disk of one's own; `good` False: this machine does not allow it."""

    def __init__(self, size):
        self.path = pathlib.Path(tempfile.mkdtemp())
        self.good = os.geteuid() == 0 and bool(shutil.which("mount")) and self.mount(
            "-t", "tmpfs", "-o", "size=" + size, "tmpfs")

    def mount(self, *words):
        return subprocess.run(["mount", *words, str(self.path)], check=False,
                              capture_output=True).returncode == 0

    def drop(self):
        if self.good:
            subprocess.run(["umount", str(self.path)], check=False)
        self.path.rmdir()


def stays(folder, path, words, before, what):
    """A note that cannot be made: exit 3, said, the old file, and nothing beside it."""
    held = set(path.parent.iterdir())
    status, _, err = folder.run(words, [])
    wrong = []
    if status != 3 or not err.strip():
        wrong.append("%s: exit %d, '%s'" % (what, status, err.strip()))
    if path.read_text(encoding="utf-8") != before:
        wrong.append("%s: the file is another: %r" % (what, path.read_text(encoding="utf-8")[:80]))
    beside = set(path.parent.iterdir()) - held
    return wrong + ["%s: left %s" % (what, p.name) for p in beside]


def no_room(program):
    title = "on a full disk the old file stays"
    disk = Mount("128k")
    if not disk.good:
        disk.drop()
        yield title + " # SKIP needs root and a mount", []
        return
    folder = rewrite.Folder(program)
    path = disk.path / "tank.yaml"
    # A log that takes several blocks of the disk, so that its second copy does not fit.
    before = TANK + "".join("# a remark of the keeper, line %d\n" % i for i in range(600))
    path.write_text(before, encoding="utf-8")
    (folder.path / "away").symlink_to(path)
    (disk.path / "filler").write_bytes(b"")
    filled = 0
    try:
        with open(disk.path / "filler", "wb", buffering=0) as filler:
            while filled < 1 << 20:
                filled += filler.write(b"x" * 1024)
    except OSError:
        pass
    wrong = [] if filled < 1 << 20 else ["the disk is not full"]
    for spare in (0, 4096, 8192, 12288):
        with open(disk.path / "filler", "r+b") as filler:
            filler.truncate(filled - spare)
        for name in (str(path), "away"):
            wrong += stays(folder, path, words_of(name, 1), before, "%d bytes spare, %s" % (
                spare, pathlib.Path(name).name))
    (disk.path / "filler").unlink()
    status, _, err = folder.run(words_of("away", 1))
    text = path.read_text(encoding="utf-8")
    kept = [line for line in text.splitlines() if line in before.splitlines()]
    if status or kept != before.splitlines() or stands(text, 1) != (1, 1):
        wrong.append("with room again: exit %d, %s" % (status, err.strip()))
    wrong += [] if (folder.path / "away").is_symlink() else ["the link is gone"]
    folder.drop()
    (disk.path / "tank.yaml").unlink()
    disk.drop()
    yield title + ", and with room again the note is made, through a link to another disk", wrong


def no_writing(program):
    title = "on a disk that is read-only the old file stays"
    disk = Mount("128k")
    if disk.good:
        folder = rewrite.Folder(program)
        path = disk.path / "tank.yaml"
        path.write_text(TANK, encoding="utf-8")
        (folder.path / "away").symlink_to(path)
        good = disk.mount("-o", "remount,ro")
        wrong = [] if good else ["it cannot be made read-only"]
        for name in (str(path), "away"):
            wrong += stays(folder, path, words_of(name, 1), TANK, name)
        folder.drop()
        yield title, wrong
    else:
        yield title + " # SKIP needs root and a mount", []
    disk.drop()


def not_ours(program):
    title = "in a folder or of a file that may not be written the old file stays"
    if os.geteuid() != 0 or not shutil.which("setpriv"):
        yield title + " # SKIP needs root and setpriv", []
        return
    wrong = []
    for what, folder_mode, file_mode in (("a folder", 0o555, 0o644), ("a file", 0o755, 0o444),
                                         ("both", 0o555, 0o444)):
        folder = rewrite.Folder(program)
        path = folder.path / "tank.yaml"
        os.chown(path, 1000, 1000)
        path.chmod(file_mode)
        os.chown(folder.path, 1000, 1000)
        folder.path.chmod(folder_mode)
        status, _, err = folder.run(words_of("tank.yaml", 1), AS_SOMEBODY)
        text = path.read_text(encoding="utf-8")
        # Whoever owns a file may write it though its folder is closed: then the note is made.
        noted = status == 0 and text.startswith(TANK) and stands(text, 1) == (1, 1)
        refused = status == 3 and err.strip() and text == TANK
        if not (noted or refused) or (file_mode == 0o444 and noted and folder_mode == 0o555):
            wrong.append("%s: exit %d, %s, %r" % (what, status, err.strip(), text[-60:]))
        wrong += ["left: %s" % p.name for p in folder.left()]
        folder.path.chmod(0o755)
        folder.drop()
    yield title, wrong


def main(argv):
    args = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    args.add_argument("program", type=lambda path: str(pathlib.Path(path).resolve()))
    args.add_argument("--notes", type=int, default=200)
    args.add_argument("--kills", type=int, default=5)
    args.add_argument("--seed", type=int, default=1)
    args = args.parse_args(argv)
    chance = random.Random(args.seed)
    number = 0
    print("# seed %d" % args.seed)
    for check in (crowd(args.program, args.notes),
                  killed_crowd(args.program, max(args.notes // 5, 3), args.kills, chance),
                  no_room(args.program), no_writing(args.program), not_ours(args.program)):
        for name, wrong in check:
            number += 1
            print("%s %d - %s" % ("not ok" if wrong else "ok", number, name))
            for line in wrong[:5]:
                print("# " + line)
    print("1..%d" % number)


if __name__ == "__main__":
    main(sys.argv[1:])
