#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""A newcomer adds a species as DEVELOPERS.md tells it: one file, no C, no build. TAP.

Usage: newcomer.py PROGRAM
"""
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent
PROGRAM = os.path.abspath(sys.argv[1])
results = []

# What the newcomer knows of the (invented) animal, in the words of the example's comments.
KNOWN = {
    "species": "Exempla nova", "synonyms": "[Olda nova]", "en": "[new exemplar]",
    "family": "Exemplidae", "home_water": "hard", "adult_length": "6 cm",
    "greatest_length": "7 cm", "swims": "top", "gape": "ordinary", "preys_on": "[fry]",
}


def check(title, holds, *notes):
    results.append((title, bool(holds), notes))


def run(*arguments):
    return subprocess.run(arguments, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True,
                          env={"PATH": os.environ["PATH"], "HOME": "/nonexistent",
                               "XDG_DATA_DIRS": "/nonexistent"})


def filled(text):
    """The example with every value that is known changed."""
    for key, value in KNOWN.items():
        text, count = re.subn(r"(?m)^( *)(?:# )?%s: .*$" % key, r"\1%s: %s" % (key, value), text)
        assert count, key
    return text


told = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
told = told[told.index("**a species**"):]
told = told[:told.index("\n- **")]
example = re.search(r"`(docs/[\w-]+\.yaml)`", told)
check("DEVELOPERS.md names the record to start from and the command that judges it",
      example and "tapshoal lint" in told, told)

with tempfile.TemporaryDirectory() as name:
    prefix = pathlib.Path(name)
    species = prefix / "share/tapshoal/shipped/species"
    shutil.copytree(ROOT / "species", species)
    (prefix / "bin").mkdir()
    program = shutil.copy(PROGRAM, prefix / "bin/tapshoal")
    water = ["--GH", "14", "--KH", "9", "--pH", "7.6", "--temperature", "24"]
    before = run(program, "rank", "-q", *water).stdout
    record = species / "livebearers" / "exempla-nova.yaml"
    text = (ROOT / example.group(1)).read_text(encoding="utf-8")

    record.write_text(text, encoding="utf-8")
    done = run(program, "lint", str(record))
    check("the unchanged copy is refused for its name",
          done.returncode == 1 and "lint.file-name" in done.stdout, done.stdout)
    record.write_text(filled(text).replace("swims: top", "swims: upwards"), encoding="utf-8")
    done = run(program, "lint", str(record))
    check("a wrong word is answered with the right ones",
          done.returncode == 2 and "bottom, middle, top or everywhere" in done.stdout, done.stdout)
    record.write_text(filled(text), encoding="utf-8")
    done = run(program, "lint", str(record))
    check("the finished record has no finding", done.returncode == 0 and
          done.stdout == "1 record, 0 with findings\n", done.stdout)
    done = run(program, "lint", str(species))
    check("nor has the whole catalogue with it", done.returncode == 0, done.stdout)
    done = run(program, "why", "new exemplar", *water)
    check("it is asked for by its common name",
          "new exemplar (Exempla nova): " in done.stdout, done.stdout)
    after = run(program, "rank", "-q", *water).stdout
    counts = [int(re.search(r"of (\d+)\s+kinds", t).group(1)) for t in (before, after)]
    check("rank has one species more", counts[1] == counts[0] + 1, str(counts))

print("1..%d" % len(results))
for number, (title, holds, notes) in enumerate(results, 1):
    print("%s %d - %s" % ("ok" if holds else "not ok", number, title))
    for note in () if holds else notes:
        print("# " + note.replace("\n", "\n# "))
sys.exit(not all(holds for _, holds, _ in results))
