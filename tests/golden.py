#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Golden cases of the command line, as data: tests/cli/cases/, described in tests/cli/README.md.

Usage: golden.py PROGRAM [--accept] [--filter TEXT] [--cases FOLDER] [--without FILE]; prints TAP, one
line a case. FILE names cases that are left out, each with its reason behind a blank.
--accept rewrites what is expected; the change is then reviewed as a diff.
Tested by tests/test_golden.py.
"""
import argparse
import difflib
import os
import pathlib
import re
import sys
import tempfile

import tap

DATA = pathlib.Path(__file__).resolve().parent / "data"
SECTION = re.compile(r"command|stdin|exit|stdout|stderr|file [\w.-]+")


def parse(path):
    """The sections of a case; a ValueError says what is wrong with the case itself."""
    sections, name = {}, None
    for line in path.read_text(encoding="utf-8").splitlines(keepends=True):
        if line.startswith("=== "):
            name = line[4:].strip()
            if not SECTION.fullmatch(name) or name in sections:
                raise ValueError("section '%s' is unknown or stands twice" % name)
            sections[name] = ""
        elif name is None:
            raise ValueError("the first line opens no section")
        else:
            sections[name] += line
    if not sections.get("command", "").strip():
        raise ValueError("there is no command")
    return sections


def run(program, sections):
    """What came out, as sections; ValueError after a hang or a crash, which nobody may expect."""
    with tempfile.TemporaryDirectory() as folder:
        for name, text in sections.items():
            if name.startswith("file "):
                (pathlib.Path(folder) / name[5:]).write_text(text, encoding="utf-8")
        env = {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "TZ": "UTC", "HOME": folder,
               "XDG_DATA_DIRS": folder, "PROGRAM": program,
               "NARROW": "--only-catalogue --catalogue %s/catalogue" % DATA}
        env.update((k, v) for k, v in os.environ.items() if k.endswith("SAN_OPTIONS"))
        command = sections["command"].strip().replace("@TESTDATA@", str(DATA))
        out, err, status = tap.run(["sh", "-c", command], 60, sections.get("stdin", "").encode(),
                                   cwd=folder, env=env, stderr=-1)
    out, err = [b.decode("utf-8", "replace").replace(str(DATA), "@TESTDATA@")
                .replace(folder, "@FOLDER@") for b in (out, err)]
    if status is None or status < 0 or status > 125:
        raise ValueError("it hung" if status is None else "it crashed, exit status %d\n%s" % (
            status, err[-4000:]))
    if any(text and not text.endswith("\n") for text in (out, err)):
        raise ValueError("the last line of its output does not end")
    return {"exit": "%d\n" % status, "stdout": out, "stderr": err}


def differences(want, got):
    for k in got:
        yield from difflib.unified_diff(want[k].splitlines(), got[k].splitlines(),
                                        "expected " + k, "got " + k, lineterm="", n=1)
        if want[k].splitlines() == got[k].splitlines() and want[k] != got[k]:
            yield "%s: the line ends differ" % k


def check(program, path, accept):
    """Lines that say what is wrong with one case; none if it holds or was accepted."""
    try:
        sections = parse(path)
        got = run(program, sections)
    except ValueError as fault:
        return str(fault).splitlines()
    wrong = list(differences({"exit": "0\n", "stdout": "", "stderr": "", **sections}, got))
    if wrong and accept:
        kept = {k: v for k, v in sections.items() if k not in got}
        kept.update((k, v) for k, v in got.items() if v)
        path.write_text("".join("=== %s\n%s" % s for s in kept.items()), encoding="utf-8")
        return []
    return wrong


def without(path, names):
    """The cases that a file leaves out; a ValueError where a line names none, or gives no reason."""
    left = dict(line.partition(" ")[::2] for line in path.read_text(encoding="utf-8").splitlines())
    stale = [name for name, why in left.items() if name not in names or not why.strip()]
    if stale:
        raise ValueError("%s: no case, or no reason: %s" % (path, ", ".join(stale)))
    return left


def main(argv):
    args = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    args.add_argument("program", type=os.path.abspath)
    args.add_argument("--accept", action="store_true")
    args.add_argument("--filter", default="")
    args.add_argument("--cases", type=pathlib.Path, default=DATA.parent / "cli" / "cases")
    args.add_argument("--without", type=pathlib.Path)
    args = args.parse_args(argv)
    cases = sorted((str(p.relative_to(args.cases).with_suffix("")), p)
                   for p in args.cases.rglob("*.case"))
    left = without(args.without, dict(cases)) if args.without else {}
    cases = [(name, p) for name, p in cases if args.filter in name and name not in left]
    print("1..%d" % len(cases))
    bad = not cases
    answers = tap.in_order(lambda case: check(args.program, case[1], args.accept), cases)
    for number, ((name, _), wrong) in enumerate(zip(cases, answers), 1):
        bad = bad or bool(wrong)
        print("%s %d - %s" % ("not ok" if wrong else "ok", number, name))
        for line in wrong:
            print("# " + line)
    return int(bad)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
