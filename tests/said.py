#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Nothing is said in text that JSON has not: every sentence and every figure of an answer.

Usage: said.py PROGRAM; prints TAP, a line a golden case of a command that speaks from its result.
Each case is run as it stands and with `-f json`; every line of the text (joined, with case and
wrapping apart) has to consist of texts of the JSON, and every figure has to be one of its numbers,
rounded as it is said, or to stand in one of its texts. The JSON has to fit its schema's keys.
"""
import json
import pathlib
import re
import sys

import golden

COMMANDS = ["check"]
FIGURE = re.compile(r"(?<![\w.])\d+(?:\.\d+)?")
ROOT = pathlib.Path(__file__).resolve().parent


def strings(value):
    if isinstance(value, dict):
        for inner in value.values():
            yield from strings(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from strings(inner)
    elif isinstance(value, str):
        yield value


def numbers(value):
    if isinstance(value, dict):
        for inner in value.values():
            yield from numbers(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from numbers(inner)
    elif isinstance(value, (int, float)) and not isinstance(value, bool):
        yield float(value)


def flat(text):
    return " ".join(text.split()).lower()


def has_figure(figure, known, said):
    decimals = len(figure.partition(".")[2])
    near = 0.5 * 10 ** -decimals + 1e-9
    return any(abs(abs(n) - float(figure)) <= near for n in known) or \
        re.search(r"(?<![\w.])%s(?![\d])" % re.escape(figure), said)


# What the screen adds to the sentences: headings and the way to see more.
GLUE = ["also in the way", "what it takes", "not known yet", "to know", "what would put it right",
        "that mends what a list can mend, not all of it", "more: docs/guide.md,", "--all", "more",
        "what the animals make of the water", "this week:", "at leisure:", "now:", "and"]


def left_over(text, document):
    """The words of a text answer that no text of its JSON holds."""
    rest = flat(text)
    for said in sorted({flat(s).rstrip(".") for s in strings(document)}, key=len, reverse=True):
        if len(said) > 3:
            rest = rest.replace(said, " | ")
    for glue in GLUE:
        rest = rest.replace(glue, " ")
    return " ".join(re.findall(r"[a-z][a-z-]*[a-z]", rest.replace('"when to leave it alone"', "")))


def missing(text, document):
    known, said = list(numbers(document)), flat(" | ".join(strings(document)))
    for figure in sorted(set(FIGURE.findall(text))):
        if not has_figure(figure, known, said):
            yield "figure %s of the text is not in the JSON" % figure
    rest = left_over(text, document)
    if rest:
        yield "not in the JSON: %s" % rest


def hold(program, path):
    sections = golden.parse(path)
    command = sections["command"].strip()
    as_text = golden.run(program, sections)
    if as_text["exit"].strip() not in ("0", "1") or re.search(r"-f |--format|-o |\|", command):
        return None
    as_json = golden.run(program, {**sections, "command": command + " -f json"})
    if as_json["exit"] != as_text["exit"]:
        return ["exit %s as text, %s as JSON" % (as_text["exit"].strip(), as_json["exit"].strip())]
    shown = [line for line in as_text["stdout"].splitlines() if not re.match(r"\s*\d+  |and \d+ more", line)]
    return list(missing("\n".join(shown), json.loads(as_json["stdout"])))


def main(argv):
    program = str(pathlib.Path(argv[0]).resolve())
    cases = [p for c in COMMANDS for p in sorted((ROOT / "cli" / "cases" / c).glob("*.case"))]
    results = [(p, hold(program, p)) for p in cases]
    results = [(p, wrong) for p, wrong in results if wrong is not None]
    results.append((ROOT / "a-figure-that-is-missing-is-found", None))
    results.append((ROOT / "a-sentence-that-is-missing-is-found", None))
    print("1..%d" % len(results))
    for number, (path, wrong) in enumerate(results, 1):
        if wrong is None:
            text = "Not together: 7.5 of them." if "sentence" in path.name else "There are 7.5."
            found = list(missing(text, {"says": "nothing", "n": 7} if "figure" in path.name
                                 else {"n": 7.5}))
            wrong = [] if found else ["nothing was found"]
        print("%s %d - %s" % ("not ok" if wrong else "ok", number, path.stem))
        for line in wrong:
            print("# " + line)
    return any(w for _, w in results)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
