#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Which folder wins: records are moved between the folders that are searched, and the listings of
an installed copy of the program compared. TAP.

Usage: search_order.py PROGRAM
"""
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent
PROGRAM = os.path.abspath(sys.argv[1])
FROZEN = ROOT / "tests" / "data" / "catalogue"
MOVED = "exempla-dura.yaml"
WATER = ["--GH", "8", "--KH", "5", "--pH", "7", "--temperature", "25"]
results = []


def check(title, holds, *notes):
    results.append((title, bool(holds), notes))


class House:
    """An install prefix with the frozen records but one, and every other folder empty."""

    def __init__(self, top):
        self.shipped = top / "prefix/share/tapshoal/shipped/species"
        self.later, self.earlier = [top / d / "tapshoal/species" for d in ("later", "earlier")]
        self.home = top / "home/.local/share/tapshoal/species"
        self.a, self.b = top / "a", top / "b"
        self.weakest_first = [self.shipped, self.later, self.earlier, self.home, self.a, self.b]
        for folder in self.weakest_first:
            folder.mkdir(parents=True)
        (top / "prefix/bin").mkdir()
        self.program = shutil.copy(PROGRAM, top / "prefix/bin/tapshoal")
        for record in FROZEN.glob("*.yaml"):
            shutil.copy(record, self.shipped)
        (self.shipped / MOVED).unlink()
        self.env = {"HOME": str(top / "home"),
                    "XDG_DATA_DIRS": "%s:relative:%s" % (top / "earlier", top / "later")}

    def put(self, folder, length=5):
        """A copy of the moved record that can be told by its length."""
        text = re.sub(r"(?m)^(adult|greatest)_length: .*$", r"\1_length: %d cm TL" % length,
                      (FROZEN / MOVED).read_text(encoding="utf-8"))
        (folder / MOVED).write_text(text, encoding="utf-8")

    def run(self, *arguments, program=None, **env):
        return subprocess.run([program or self.program, *arguments, *WATER], env={**self.env, **env},
                              stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)

    def listing(self, *more, **other):
        """Species -> adult length, over the whole answer."""
        folders = ["--catalogue", str(self.a), "--catalogue", str(self.b)]
        done = self.run("rank", "-f", "json", *folders, *more, **other)
        answer = json.loads(done.stdout)
        return {m["species"]: m["adult_length_cm"] for m in answer["ranked"] + answer["no_home"] + answer["excluded"]}


def told(text):
    """The paragraphs about folders, unwrapped."""
    return [" ".join(p.split()) for p in text.split("\n\n") if p.startswith("Records from ")]


with tempfile.TemporaryDirectory() as name:
    house = House(pathlib.Path(name))
    house.put(house.shipped)
    whole = house.listing()
    check("an installed prefix lists its records", len(whole) == 14, str(whole))
    check("nothing is said where all records are shipped", not told(house.run("rank").stdout))
    for folder in house.weakest_first[1:]:
        (house.shipped / MOVED).unlink(missing_ok=True)
        house.put(folder)
        check("moved to %s the listing is the same" % folder.relative_to(name),
              house.listing() == whole)
        (folder / MOVED).unlink()
        check("gone from %s it is gone" % folder.relative_to(name),
              set(whole) - set(house.listing()) == {"Exempla dura"})
    for number, folder in enumerate(house.weakest_first):
        house.put(folder, 10 + number)
    while house.weakest_first:
        strongest = house.weakest_first[-1]
        length = house.listing().get("Exempla dura")
        check("%s counts more than those before it" % strongest.relative_to(name),
              length == 9 + len(house.weakest_first), "length %s" % length)
        (strongest / MOVED).unlink()
        house.weakest_first.pop()

with tempfile.TemporaryDirectory() as name:
    house = House(pathlib.Path(name))
    house.put(house.home)
    lines = told(house.run("rank").stdout)
    check("what the user's own folder adds is said",
          lines == ["Records from %s: 1 added (Exempla dura)." % house.home], str(lines))
    house.put(house.shipped)
    lines = told(house.run("why", "Exempla dura").stdout)
    check("what it replaces is said", lines == [
        "Records from %s: 1 in place of another (Exempla dura)." % house.home], str(lines))
    own = house.run("rank", "--only-catalogue", "--catalogue", str(house.home), "--only",
                    "suits,tolerates,unsure,excluded").stdout
    check("--only-catalogue leaves every other folder out",
          "Exempla dura" in own and own.count("Exempla") == 1 and not told(own), own)
    elsewhere = pathlib.Path(name) / "elsewhere"
    (elsewhere / "tapshoal").mkdir(parents=True)
    house.home.rename(elsewhere / "tapshoal/species")
    check("XDG_DATA_HOME names another folder of the user's",
          told(house.run("rank", XDG_DATA_HOME=str(elsewhere)).stdout))
    check("without it there is none", not told(house.run("rank").stdout))
    (house.shipped.parent.parent / "species").symlink_to(house.shipped)
    same = house.run("rank", XDG_DATA_HOME=str(house.shipped.parent.parent.parent))
    check("a folder that is met twice is read once", not told(same.stdout), same.stdout)
    shutil.rmtree(house.shipped)
    done = house.run("rank")
    check("without the shipped records it says so", done.returncode == 3 and
          "--only-catalogue" in done.stdout, done.stdout)
    built = house.run("rank", "-q", program=PROGRAM).stdout
    shipped = sum("sources" not in p.parts for p in (ROOT / "species").rglob("*.yaml"))
    check("from the build tree the records of the source tree are read",
          "of %d kinds" % shipped in " ".join(built.split()), built[:200])

# As README.md says it, but for the build that is there already, into a folder of its own.
with tempfile.TemporaryDirectory() as name:
    build = pathlib.Path(PROGRAM).parent.parent.parent
    done = subprocess.run(["meson", "install", "-C", str(build), "--no-rebuild", "--destdir", name],
                          stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
    found = list(pathlib.Path(name).rglob("bin/tapshoal"))
    check("meson install ends well", done.returncode == 0 and len(found) == 1, done.stdout)
    installed = house.run("rank", "-q", program=str(found[0])).stdout if found else ""
    check("the installed program reads the installed records",
          "of %d kinds" % shipped in " ".join(installed.split()), installed[:200])
    share = str(found[0].parent.parent / "share") if found else ""
    beside = house.run("rank", program=PROGRAM, XDG_DATA_DIRS=share).stdout
    check("an installed catalogue adds nothing to another program's",
          "of %d kinds" % shipped in " ".join(beside.split()) and not told(beside), beside[:600])

print("1..%d" % len(results))
for number, (title, holds, notes) in enumerate(results, 1):
    print("%s %d - %s" % ("ok" if holds else "not ok", number, title))
    for note in () if holds else notes:
        print("# " + note.replace("\n", "\n# "))
sys.exit(not all(holds for _, holds, _ in results))
