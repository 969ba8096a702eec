#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""A table of waters: what water, rank, why and check say in common of each. TAP, one line a water.

Usage: waters.py PROGRAM [--filter TEXT] [--show]
Each file of tests/waters/ is one kind of water, its rows parted by blank lines (tests/waters/README.md
tells the keys). Figures are invented and typed by hand. Of every row, whatever it expects, the four
answers must agree in JSON about GH, KH, what a tank runs at, and every mark of the water; an exit code
above 1 fails. tests/test_waters.py runs rows that must fail.
"""
import argparse
import json
import os
import pathlib
import re
import shlex
import subprocess
import sys
import tempfile

FOLDER = pathlib.Path(__file__).resolve().parent / "waters"
ASKS = {"water": ["water"], "rank": ["rank"], "why": ["why", "neon tetra"], "check": ["check", "8 neon tetra"]}
KEYS = re.compile(r"(water|flags|asked|run|first|all|says( water| rank| why| check)?|never|file [\w.-]+): ?(.*)")


def rows(path):
    """Rows of a file: name -> list of texts; a file's lines are indented."""
    found, row, key = [], None, None
    for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
        if line.startswith("#"):
            continue
        if not line.strip():
            row = key = None
            continue
        if line.startswith("  ") and key and key.startswith("file "):
            row[key][-1] += line[2:] + "\n"
            continue
        match = KEYS.fullmatch(line)
        if not match:
            raise ValueError("%s:%d: '%s' is no key" % (path.name, number, line))
        key, text = match.group(1), match.group(3)
        if row is None:
            if key != "water":
                raise ValueError("%s:%d: a row begins with its water" % (path.name, number))
            row = {}
            found.append(row)
        row.setdefault(key, []).append("" if key.startswith("file ") else text)
    for row in found:
        if not any(k in row for k in ("flags", "asked", "run")) or not any(
                k in row for k in ("first", "all", "says", "says water", "says rank", "says why", "says check")):
            raise ValueError("%s: '%s' asks or expects nothing" % (path.name, row["water"][0]))
    return found


def flat(text):
    return " ".join(text.split())


class Asker:
    def __init__(self, program, folder):
        self.program, self.folder = program, folder
        self.env = {**os.environ, "HOME": folder, "XDG_CONFIG_HOME": folder, "LC_ALL": "C.UTF-8"}

    def ask(self, arguments):
        done = subprocess.run([self.program] + arguments, cwd=self.folder, env=self.env, text=True,
                              capture_output=True, check=False)
        return done.returncode, done.stdout + done.stderr, done.stdout


def arguments_of(name, row):
    """The words of one of the four questions about the water of a row."""
    flags = shlex.split(row.get("flags", [""])[0])
    if "asked" not in row:
        return ASKS[name] + flags
    file = row["asked"][0]
    if name == "water":
        return ["water", file] + flags
    if name == "check":
        return ["check", "8 neon tetra", "-w", file] + flags
    return ASKS[name] + ["-w", file] + flags


def agree(water, other, name):
    """Where the JSON of water and that of rank or why contradict each other."""
    asked = other["water"]
    pairs = {"GH": (water["gh_dh"], asked["gh"]["value"]), "pH in a tank": (water["ph_tank"], asked["ph_tank"]),
             "pH": (water["ph"], asked["ph_read"])}
    if asked["kh"]["value"] is not None:
        pairs["KH"] = (water["kh_dh"], asked["kh"]["value"])
    for what, (one, two) in pairs.items():
        if (one is None) != (two is None) or (one is not None and abs(one - two) > 0.051):
            yield "%s: water says %s, %s %s" % (what, one, name, two)
    for says in asked["unusual"]:
        if says not in water["unusual"]:
            yield "%s says what water does not: %s" % (name, says)


def expected(row, texts):
    lead = "water" if "water" in texts else "run"
    for key, patterns in row.items():
        word, _, of = key.partition(" ")
        if word not in ("first", "all", "says", "never"):
            continue
        for pattern in patterns:
            for name, text in texts.items():
                if (of and name != of) or (word == "all" and name == "run") or (word in ("first", "says") and not of and name != lead):
                    continue
                lines = [line for line in text.splitlines() if line.strip()]
                where = flat(" ".join(lines[:3]) if word == "first" else text)
                hit = re.search(pattern, where, re.I)
                if word == "never" and hit:
                    yield "%s says '%s'" % (name, hit.group())
                elif word != "never" and not hit:
                    yield "%s%s: nothing says '%s'" % (name, " first" if word == "first" else "", pattern)


def judge(program, row, show=False):
    """Every fault of a row."""
    faults, texts, parsed = [], {}, {}
    with tempfile.TemporaryDirectory() as folder:
        asker = Asker(program, folder)
        for key, text in row.items():
            if key.startswith("file "):
                (pathlib.Path(folder) / key[5:]).write_text(text[0], encoding="utf-8")
        for line in row.get("run", []):
            code, both, out = asker.ask(shlex.split(line))
            texts["run"] = texts.get("run", "") + both
            if line.startswith("read "):
                (pathlib.Path(folder) / "read.yaml").write_text(out, encoding="utf-8")
            if code > 1 and "asks" not in row["water"][0]:
                faults.append("%s exits with %d" % (line, code))
        for name in ASKS if "flags" in row or "asked" in row else ():
            words = arguments_of(name, row)
            code, texts[name], _ = asker.ask(words)
            if code > 2 or (code > 1 and "asks" not in row["water"][0]):
                faults.append("%s exits with %d: %s" % (name, code, texts[name]))
            if code <= 1 and name != "check":
                parsed[name] = json.loads(asker.ask(words + ["-f", "json"])[2])
            elif code <= 1:  # the ranges by which check judges stand in its JSON alone
                texts[name] += asker.ask(words + ["-f", "json"])[2]
        for name in ("rank", "why"):
            if name in parsed and "water" in parsed:
                faults.extend(agree(parsed["water"], parsed[name], name))
    faults.extend(expected(row, texts))
    if show:
        for name, text in texts.items():
            print("# --- %s\n%s" % (name, "\n".join("#   " + t for t in text.splitlines()[:14])))
    return faults


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("program")
    parser.add_argument("--filter", default="")
    parser.add_argument("--folder", default=str(FOLDER))
    parser.add_argument("--show", action="store_true")
    call = parser.parse_args()
    count = bad = 0
    for path in sorted(pathlib.Path(call.folder).glob("*.case")):
        for row in rows(path):
            name = "%s: %s" % (path.stem, row["water"][0])
            if call.filter not in name:
                continue
            count += 1
            faults = judge(os.path.abspath(call.program), row, call.show)
            bad += bool(faults)
            print("%s %d - %s" % ("not ok" if faults else "ok", count, name.replace("#", "")))
            for fault in faults:
                print("#   " + flat(fault)[:400])
    print("1..%d" % count)
    return bad > 0


if __name__ == "__main__":
    sys.exit(main())
