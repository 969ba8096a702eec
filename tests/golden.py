#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Golden cases of the command line, as data: tests/cli/cases/*.case, described in tests/cli/README.md.

Usage: golden.py PROGRAM [--accept] [--filter TEXT]; prints TAP, one line a case. --accept rewrites
what is expected; the change is then reviewed as a diff.
"""
import difflib
import os
import pathlib
import subprocess
import sys
import tempfile

HERE = pathlib.Path(__file__).resolve().parent
DATA = HERE / "data"


def parse(path):
    """The sections of a case: command, exit, file NAME, stdin, stdout, stderr."""
    sections, name, lines = [], None, []
    for line in path.read_text(encoding="utf-8").splitlines(keepends=True):
        if line.startswith("=== "):
            if name:
                sections.append((name, "".join(lines)))
            name, lines = line[4:].strip(), []
        elif name:
            lines.append(line)
    if name:
        sections.append((name, "".join(lines)))
    return sections


def run(program, sections):
    command = stdin = ""
    with tempfile.TemporaryDirectory() as folder:
        for name, text in sections:
            if name.startswith("file "):
                (pathlib.Path(folder) / name[5:]).write_text(text, encoding="utf-8")
            elif name == "stdin":
                stdin = text
            elif name == "command":
                command = text.strip().replace("@TESTDATA@", str(DATA))
        env = {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "TZ": "UTC", "HOME": folder,
               "PROGRAM": program, "NARROW": "--only-catalogue --catalogue %s/catalogue" % DATA,
               "ASAN_OPTIONS": os.environ.get("ASAN_OPTIONS", "")}
        done = subprocess.run(["sh", "-c", command], cwd=folder, env=env,
                              input=stdin.encode(), stdout=subprocess.PIPE,
                              stderr=subprocess.PIPE, timeout=60)
    clean = [b.decode("utf-8", "replace").replace(str(DATA), "@TESTDATA@")
             for b in (done.stdout, done.stderr)]
    return {"exit": "%d\n" % done.returncode, "stdout": clean[0], "stderr": clean[1]}


def main(program, accept, wanted):
    cases = sorted(p for p in (HERE / "cli/cases").rglob("*.case") if wanted in str(p))
    print("1..%d" % len(cases))
    bad = 0
    for number, path in enumerate(cases, 1):
        sections = parse(path)
        want = {"exit": "0\n", "stdout": "", "stderr": "", **dict(sections)}
        got = run(program, sections)
        same = all(want[k] == got[k] for k in got)
        if not same and accept:
            kept = [s for s in sections if s[0] not in got]
            kept += [(k, got[k]) for k in ("exit", "stdout", "stderr") if got[k]]
            path.write_text("".join("=== %s\n%s" % s for s in kept), encoding="utf-8")
            same = True
        bad += not same
        print("%s %d - %s" % ("ok" if same else "not ok", number, path.stem))
        if not same:
            for k in got:
                for line in difflib.unified_diff(want[k].splitlines(), got[k].splitlines(),
                                                 "expected " + k, "got " + k, lineterm="", n=1):
                    print("# " + line)
    return bool(bad)


if __name__ == "__main__":
    rest = sys.argv[2:]
    want = rest[rest.index("--filter") + 1] if "--filter" in rest else ""
    sys.exit(main(os.path.abspath(sys.argv[1]), "--accept" in rest, want))
