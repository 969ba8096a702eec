#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""What somebody wrote is not lost: files that are rewritten, by the program as it is.

Usage: rewrite.py PROGRAM [--times N] [--table]. TAP: an answer never replaces what it was made of,
however the file is named; of two notes at once both stay, and an editor's save too; whatever writes
is killed N times at any moment and leaves the old file or the whole new one, and what it leaves
beside is named; owner, group, rights, access list, attributes and second names stay as they were.
--table prints the last of these as it was before and after. The seed is printed.
"""
import argparse
import os
import pathlib
import random
import shutil
import signal
import stat
import subprocess
import sys
import tempfile
import time

ROOT = pathlib.Path(__file__).resolve().parent.parent
NARROW = ["--only-catalogue", "--catalogue", str(ROOT / "tests/data/catalogue")]
TAP = "kind: tap\nreadings:\n  - {date: 2026-01-01, pH: 7.2, GH: 8 dH, KH: 5 dH}\n"
TANK = "length: 100 cm\nwidth: 40 cm\nheight: 50 cm\ntemperature: 25 C\nfilter: mature\n"
PLAN = "tank: tank.yaml\nwater: tap.yaml\nstock:\n  - {species: Exempla mollis, count: 8}\n"
REPORT = "Total hardness 14 dH\nCarbonate hardness 9 dH\npH 7.6\n"
TABLE = "name,GH,KH\nkitchen,8,5\n"
TODAY = ["--today", "2026-03-01"]
FILES = {"tap.yaml": TAP, "tank.yaml": TANK, "plan.yaml": PLAN, "report.txt": REPORT,
         "table.csv": TABLE}

# Calls that read a file, and that file. OUT stands for the other name of it.
INPUTS = [
    ("tap.yaml", ["water", "tap.yaml", "-o", "OUT"]),
    ("tap.yaml", ["rank", *NARROW, "-w", "tap.yaml", "--temperature", "25", "-o", "OUT"]),
    ("tap.yaml", ["note", "tap.yaml", "pH=7", "-o", "OUT"]),
    ("tap.yaml", ["titrate", "tap.yaml", "-o", "OUT"]),
    ("tap.yaml", ["lint", "tap.yaml", "-f", "json", "-o", "OUT"]),
    ("tap.yaml", ["check", *NARROW, "plan.yaml", "-o", "OUT"]),
    ("tank.yaml", ["check", *NARROW, "plan.yaml", "-o", "OUT"]),
    ("plan.yaml", ["drift", *NARROW, "plan.yaml", "-o", "OUT"]),
    ("report.txt", ["read", "report.txt", "-o", "OUT"]),
    ("table.csv", ["rank", *NARROW, "--batch", "table.csv", "--temperature", "25", "-o", "OUT"]),
    ("tank.yaml", ["propose", *NARROW, "-t", "tank.yaml", "-w", "tap.yaml", "--plan-out", "OUT"]),
    ("tap.yaml", ["propose", *NARROW, "-t", "tank.yaml", "-w", "tap.yaml", "--write-model", "OUT"]),
    ("own/exempla-mollis.yaml", ["find", "--only-catalogue", "--catalogue", "own", "mollis",
                                 "-o", "OUT"]),
    ("shared/tapshoal/species/exempla-mollis.yaml", ["why", "Exempla mollis", "--GH", "8", "-o", "OUT"]),
]
NAMES = ["the same name", "./", "absolute", "a link", "a link to a link", "a hard link"]

# What writes, and the file that is written.
WRITERS = [
    ("tap.yaml", ["note", "tap.yaml", "pH=7", *TODAY]),
    ("tank.yaml", ["note", "tank.yaml", "KH=5", "changed 40 L", "2 neons died", *TODAY]),
    ("config/tapshoal/tap.yaml", ["keep", "other.yaml", *TODAY]),
    ("config/tapshoal/tap.yaml", ["keep", "--GH", "9", "--KH", "6", *TODAY]),
    ("out", ["rank", *NARROW, "-w", "tap.yaml", "--temperature", "25", "-o", "out"]),
    ("out", ["rank", *NARROW, "--batch", "table.csv", "--temperature", "25", "-o", "out"]),
    ("out", ["propose", *NARROW, "-t", "tank.yaml", "-w", "tap.yaml", "--plan-out", "out"]),
    ("out", ["propose", *NARROW, "-t", "tank.yaml", "-w", "tap.yaml", "--write-model", "out"]),
]


class Folder:
    """A fresh folder with the files, its own home and nobody else's catalogue."""

    def __init__(self, program):
        self.program = program
        self.path = pathlib.Path(tempfile.mkdtemp())
        self.path.chmod(0o755)
        self.environment = {"PATH": os.environ["PATH"], "HOME": str(self.path), "LC_ALL": "C.UTF-8",
                            "XDG_CONFIG_HOME": str(self.path / "config"),
                            "XDG_DATA_HOME": str(self.path / "shared")}
        for name, text in FILES.items():
            (self.path / name).write_text(text, encoding="utf-8")
        for name in ("own", "shared/tapshoal/species"):
            (self.path / name).mkdir(parents=True)
            shutil.copy(ROOT / "tests/data/catalogue/exempla-mollis.yaml", self.path / name)

    def start(self, words, before=(), **how):
        return subprocess.Popen([*before, self.program, *words], cwd=self.path, env=self.environment,
                                stdin=subprocess.DEVNULL, stdout=subprocess.PIPE,
                                stderr=subprocess.PIPE, **how)

    def run(self, words, before=(), **how):
        with self.start(words, before, **how) as process:
            out, err = process.communicate(timeout=120)
            return process.returncode, out.decode(), err.decode()

    def read(self, name):
        path = self.path / name
        return path.read_text(encoding="utf-8") if path.exists() else None

    def write(self, name, text):
        path = self.path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")

    def left(self):
        return [p for p in self.path.rglob("*") if ".tapshoal-" in p.name]

    def drop(self):
        shutil.rmtree(self.path)


def other_name(folder, name, how):
    target = folder.path / name
    if how == "the same name":
        return name
    if how == "./":
        return "./own/../" + name
    if how == "absolute":
        return str(target)
    if how == "a hard link":
        os.link(target, folder.path / "second")
        return "second"
    (folder.path / "link").symlink_to(name)
    if how == "a link to a link":
        (folder.path / "chain").symlink_to("link")
        return "chain"
    return "link"


def refused(program):
    for name, words in INPUTS:
        wrong = []
        for how in NAMES:
            folder = Folder(program)
            before = folder.read(name)
            out = other_name(folder, name, how)
            status, _, err = folder.run([out if w == "OUT" else w for w in words])
            if status != 2 or "replace" not in err or folder.read(name) != before or folder.left():
                wrong.append("%s: exit %d, %s" % (how, status, err.strip()))
            folder.drop()
        yield "%s is no place for the answer of %s" % (name, " ".join(
            w for w in words if w not in NARROW)), wrong
    folder = Folder(program)
    wrong = []
    with open(folder.path / "tap.yaml", "rb") as standard:
        done = subprocess.run([program, "water", "-", "-o", "tap.yaml"], cwd=folder.path, stdin=standard,
                              env=folder.environment, capture_output=True, check=False)
    wrong += [] if done.returncode == 2 and folder.read("tap.yaml") == TAP else [str(done)]
    with open(folder.path / "tap.yaml", "ab") as standard:
        done = subprocess.run([program, "water", "tap.yaml"], cwd=folder.path, stdout=standard,
                              env=folder.environment, stderr=subprocess.PIPE, check=False)
    wrong += [] if done.returncode == 2 and folder.read("tap.yaml") == TAP else [str(done)]
    folder.drop()
    yield "what stands on standard input or behind '>>' neither", wrong
    folder = Folder(program)
    folder.write("out", "an older answer\n")
    status, _, err = folder.run(["propose", *NARROW, "-t", "tank.yaml", "-w", "tap.yaml",
                                 "--plan-out", "out", "-o", "out"])
    good = status == 2 and "replace" in err and (folder.read("out") or "").startswith("name:")
    folder.drop()
    yield "two answers of one call do not replace one another", [] if good else [err]


def pairs(program, times):
    folder = Folder(program)
    lost = []
    for number in range(times):
        folder.write("tap.yaml", TAP)
        both = [folder.start(["note", "tap.yaml", word, *TODAY]) for word in ("pH=7.1", "GH=9")]
        said = [p.communicate() for p in both]
        text = folder.read("tap.yaml")
        if [p.returncode for p in both] != [0, 0] or "pH: 7.1" not in text or "GH: 9" not in text or \
                any(err for _, err in said):
            lost.append("pair %d: %s %s" % (number, [p.returncode for p in both], said))
    lost += ["left: %s" % p.name for p in folder.left()]
    folder.drop()
    yield "of two notes at once both stay, %d of %d pairs" % (times - len(lost), times), lost


def editor(program, times, chance):
    """An editor saves by rename, at any moment of a note; what it saved is never undone."""
    folder = Folder(program)
    wrong = []
    came_first = 0
    for number in range(times):
        saved = TAP + "# saved %d\n" % number
        folder.write("tap.yaml", TAP)
        folder.write("new", saved)
        note = folder.start(["note", "tap.yaml", "pH=7.1", *TODAY])
        time.sleep(chance.uniform(0, 0.004))
        os.rename(folder.path / "new", folder.path / "tap.yaml")
        note.communicate()
        text = folder.read("tap.yaml")
        came_first += "pH: 7.1" in text
        if "# saved %d" % number not in text:
            wrong.append("save %d is undone (exit %d): %r" % (number, note.returncode, text))
    folder.drop()
    yield "what an editor saves meanwhile is not undone, %d saves, %d before the note" % (
        times, came_first), wrong


def kills(program, times, chance):
    for name, words in WRITERS:
        folder = Folder(program)
        folder.write("other.yaml", TAP.replace("8 dH", "11 dH"))
        before = FILES.get(name, TAP if name.endswith("yaml") else "an older answer\n" * 3000)
        wrong, killed, left = [], 0, 0
        began = time.monotonic()
        folder.write(name, before)
        folder.run(words)
        took = time.monotonic() - began
        after = folder.read(name)
        for number in range(times):
            for path in (folder.path / "config/tapshoal").glob("tap-until-*"):
                path.unlink()
            folder.write(name, before)
            process = folder.start(words)
            time.sleep(chance.uniform(0, 1.2 * took))
            process.kill()
            process.communicate()
            killed += process.returncode == -signal.SIGKILL
            if folder.read(name) not in (before, after):
                wrong.append("kill %d: %r" % (number, folder.read(name)[:200]))
            for path in folder.left():
                left += 1
                os.utime(path, (1, 1))
                if left <= 3 and path.name.startswith(pathlib.Path(name).name):
                    folder.write(name, before)
                    _, _, err = folder.run(words)
                    wrong += [] if path.name in err else ["%s is not named: %s" % (path.name, err)]
                path.unlink()
        if after == before or not after:
            wrong.append("nothing is written at all")
        folder.drop()
        yield "%s is the old or the new one, %d of %d killed, %d left beside: %s" % (
            name, killed, times, left, " ".join(w for w in words if w not in NARROW)), wrong


def rights(path):
    """All that says whose a file is, and how many names it has."""
    info = path.stat()
    attributes = {}
    for name in sorted(os.listxattr(path)):
        attributes[name] = os.getxattr(path, name).hex()
    return (info.st_uid, info.st_gid, stat.filemode(info.st_mode), info.st_nlink, attributes)


def can_have(folder, name, value):
    path = folder.path / "try"
    path.write_text("", encoding="utf-8")
    try:
        os.setxattr(path, name, value)
        return True
    except OSError:
        return False
    finally:
        path.unlink()


# user 4321 may write too: an access list as the kernel stores it (version 2; tag, rights, id)
LIST = bytes.fromhex("02000000" "01000600ffffffff" "02000600e1100000" "04000400ffffffff"
                     "10000600ffffffff" "20000000ffffffff")
# Name, owner, group, mode, what else, who calls (user, group, further groups).
OWNED = [
    ("one's own", 1000, 1000, 0o644, None, (1000, 1000, ())),
    ("a private one", 1000, 1000, 0o600, None, (1000, 1000, ())),
    ("of another group of one's own", 1000, 2000, 0o664, None, (1000, 1000, (2000,))),
    ("of a group one is not in", 1000, 2000, 0o664, None, (1000, 1000, ())),
    ("somebody else's, by a group member", 1001, 2000, 0o664, None, (1000, 1000, (2000,))),
    ("anybody's, by anybody", 1001, 2000, 0o666, None, (1000, 1000, ())),
    ("with a set bit", 1000, 2000, 0o2764, None, (1000, 1000, (2000,))),
    ("with an access list", 1000, 1000, 0o660, "list", (1000, 1000, ())),
    ("with an access list, by the user it names", 1000, 1000, 0o660, "list", (4321, 4321, ())),
    ("with an attribute", 1000, 1000, 0o644, "attribute", (1000, 1000, ())),
    ("with a second name", 1000, 1000, 0o644, "link", (1000, 1000, ())),
    ("behind a link", 1000, 1000, 0o644, "symlink", (1000, 1000, ())),
    ("somebody else's, by root", 1001, 2000, 0o640, "list", (0, 0, ())),
]


def owned(program, table):
    for name, owner, group, mode, extra, caller in OWNED:
        title = "whose it is stays: %s" % name
        if os.geteuid() != 0 or not shutil.which("setpriv"):
            yield title + " # SKIP needs root and setpriv", []
            continue
        folder = Folder(program)
        folder.path.chmod(0o777)
        path = folder.path / "tap.yaml"
        path.unlink()
        path.write_text(TAP, encoding="utf-8")
        os.chown(path, owner, group)
        path.chmod(mode)
        if extra == "list" and not can_have(folder, "system.posix_acl_access", LIST) or \
                extra == "attribute" and not can_have(folder, "user.note", b"mine"):
            folder.drop()
            yield title + " # SKIP no such attributes in this folder", []
            continue
        if extra == "list":
            os.setxattr(path, "system.posix_acl_access", LIST)
        elif extra == "attribute":
            os.setxattr(path, "user.note", b"mine")
        elif extra == "link":
            os.link(path, folder.path / "second")
        elif extra == "symlink":
            path.rename(folder.path / "real")
            path.symlink_to("real")
        before = rights(path)
        user, own, further = caller
        status, _, err = folder.run(["note", "tap.yaml", "pH=7.1", *TODAY], [
            "setpriv", "--reuid", str(user), "--regid", str(own),
            *(["--groups", ",".join(map(str, further))] if further else ["--clear-groups"])])
        after, text = rights(path), path.read_text(encoding="utf-8")
        wrong = []
        if status or "pH: 7.1" not in text:
            wrong.append("exit %d: %s" % (status, err))
        if before != after:
            wrong.append("%s became %s" % (before, after))
        if extra == "link" and (folder.path / "second").read_text(encoding="utf-8") != text:
            wrong.append("the second name has another file")
        if extra == "symlink" and not path.is_symlink():
            wrong.append("the link is gone")
        wrong += ["left: %s" % p.name for p in folder.left()]
        if table:
            print("# %-44s user %-4d | %s | %s" % (name, user, before, after))
        folder.drop()
        yield title, wrong


def checks(args):
    chance = random.Random(args.seed)
    yield from refused(args.program)
    yield from pairs(args.program, args.times)
    yield from editor(args.program, 2 * args.times, chance)
    yield from kills(args.program, 10 * args.times, chance)
    yield from owned(args.program, args.table)


def main(argv):
    args = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    args.add_argument("program", type=lambda path: str(pathlib.Path(path).resolve()))
    args.add_argument("--times", type=int, default=5)
    args.add_argument("--seed", type=int, default=1)
    args.add_argument("--table", action="store_true")
    args = args.parse_args(argv)
    print("# seed %d" % args.seed)
    bad, number = False, 0
    for name, wrong in checks(args):
        number += 1
        bad = bad or bool(wrong)
        print("%s %d - %s" % ("not ok" if wrong else "ok", number, name), flush=True)
        for line in wrong[:20]:
            print("# %s" % line.replace("\n", "\n# "))
    print("1..%d" % number)
    return int(bad)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
