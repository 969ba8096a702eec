#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Situations of keepers: what the first lines of an answer must hold, and what it may never say.

Usage: situations.py PROGRAM [--filter TEXT] [--cases FOLDER] [--show]; prints TAP, two lines a case:
its text, and the same question's JSON, which must hold and must not hold the same words.
A case is a file of tests/situations/ (its README tells the sections). Unlike a golden case it says
nothing of layout, so that an answer may be worded anew as long as it says what it must.
Tested by tests/test_situations.py with cases that must fail.
"""
import argparse
import json
import pathlib
import re
import sys

import golden

SECTION = re.compile(r"state|command|exit|first \d+|says|never|file [\w.-]+")
FOLDER = pathlib.Path(__file__).resolve().parent / "situations"


def parse(path):
    """Sections of a case: texts; of first, says and never the list of their patterns."""
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
    for name in ("state", "command"):
        if not sections.get(name, "").strip():
            raise ValueError("section '%s' is missing" % name)
    if not any(name.split()[0] in ("first", "says", "never") for name in sections):
        raise ValueError("it expects nothing")
    return sections


def patterns(text):
    return [re.compile(line.strip(), re.I) for line in text.splitlines() if line.strip()]


def flat(text):
    """Lines joined, so that wrapping hides nothing."""
    return " ".join(text.split())


def texts(value):
    """Every string of a JSON document, and every key that names one."""
    if isinstance(value, dict):
        for inner in value.values():
            yield from texts(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from texts(inner)
    elif isinstance(value, str):
        yield value


def against(sections, out):
    """What the text of an answer lacks or should not say."""
    lines = [line for line in out.splitlines() if line.strip()]
    for name, text in sections.items():
        kind, _, number = name.partition(" ")
        if kind not in ("first", "says", "never"):
            continue
        where = flat(" ".join(lines[:int(number)] if number else lines))
        for pattern in patterns(text):
            found = pattern.search(where)
            if kind == "never" and found:
                yield "says '%s', which it never may (%s)" % (found.group(), pattern.pattern)
            elif kind != "never" and not found:
                yield "%s: nothing says '%s'" % (name, pattern.pattern)


def against_json(sections, out):
    """The same of its JSON, where nothing has a place."""
    said = flat(" ".join(texts(json.loads(out))))
    for name, text in sections.items():
        kind = name.split()[0]
        for pattern in patterns(text) if kind in ("first", "says", "never") else []:
            found = pattern.search(said)
            if (kind == "never") == bool(found):
                yield "JSON %s '%s'" % ("says" if found else "does not say", pattern.pattern)


def ask(program, sections, extra=""):
    asked = {k: v for k, v in sections.items() if k.startswith("file ")}
    return golden.run(program, {**asked, "command": sections["command"].rstrip() + extra})


def hold(program, path, show):
    """(faults of the text, faults of the JSON)"""
    try:
        sections = parse(path)
        got = ask(program, sections)
        wrong = list(against(sections, got["stdout"] + got["stderr"]))
        if "exit" in sections and got["exit"].strip() != sections["exit"].strip():
            wrong.append("exit %s, expected %s" % (got["exit"].strip(), sections["exit"].strip()))
        if show or wrong:
            wrong += ["  | " + line for line in (got["stdout"] + got["stderr"]).splitlines()[:40]]
    except ValueError as fault:
        return [str(fault)], []
    if got["exit"].strip() == "2":  # a call refused is said on stderr alone, and only where it is meant
        meant = sections.get("exit", "").strip() == "2"
        return wrong, [] if meant else ["the call was refused"]
    try:
        return wrong, list(against_json(sections, ask(program, sections, " -f json")["stdout"]))
    except ValueError as fault:
        return wrong, [str(fault)]


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("program")
    parser.add_argument("--filter", default="")
    parser.add_argument("--cases", type=pathlib.Path, default=FOLDER)
    parser.add_argument("--show", action="store_true")
    options = parser.parse_args()
    program = str(pathlib.Path(options.program).resolve())
    cases = [p for p in sorted(options.cases.glob("*.case")) if options.filter in p.name]
    print("1..%d" % (2 * len(cases)))
    bad = 0
    for path in cases:
        for what, wrong in zip(("", ", as JSON"), hold(program, path, options.show)):
            bad += bool(wrong) and not options.show
            print("%s - %s%s" % ("not ok" if wrong and not options.show else "ok", path.stem, what))
            for line in wrong:
                print("# " + line)
    return 1 if bad or not cases else 0


if __name__ == "__main__":
    sys.exit(main())
