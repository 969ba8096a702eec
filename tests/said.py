#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Nothing is said in text that JSON has not: every sentence and every figure of an answer.

Usage: said.py PROGRAM; prints TAP, a line a golden case of a command that answers.
Each case is run as it stands and with `-f json`. Every figure has to be one of the JSON's numbers,
rounded as it is said, or to stand in one of its texts; the scale of a chart and the numbers of a
list are none. Every sentence has to consist of texts of the JSON, with case and wrapping apart; of
`check`, which is nothing but sentences, every word. Heads of tables and pointers to a page of the
documents are labels.
"""
import json
import pathlib
import re
import sys

import golden

COMMANDS = ["check", "water", "mix", "titrate", "arrive", "remake", "drift", "due", "log", "why", "rank",
            "propose", "find", "ask-back"]
WORDS_ALONE = ["check"]  # of which not only sentences are held
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
GLUE = ["co2, ph aired, ph in a tank, calcite index, conductivity:", "co2, ph aired, ph in a tank:", "also in the way", "what it takes", "not known yet", "to know", "what would put it right",
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


def prose(text):
    """The text without charts, their scales, numbers of lists, tables and their heads."""
    lines, chart = [], False
    for line in text.splitlines():
        drawn = re.search("[│┆└┴─●○]|^ *[0-9.]* *[|+][ *o|+:.-]*$|^ *[*o:] |^pH after so much", line)
        if not drawn and not chart:
            lines.append(re.sub(r"^\s*\d+  +", "", line))
        chart = bool(drawn) and bool(re.search("[└─]|[+]--", line))  # its scale follows
    return "\n".join(lines)


def headed(block):
    """Its lines without the heading, which stands at the edge above lines that do not, and ends in no stop."""
    lines = block.splitlines()
    heading = (len(lines) > 1 and re.match(r"\S.*[\w)]$", lines[0]) and "  " not in lines[0]
               and lines[1].startswith(" "))
    return lines[1:] if heading else lines


def unsaid(text, document):
    """The sentences of a text answer of which some words stand in no text of its JSON."""
    known = sorted({flat(s).rstrip(".") for s in strings(document)}, key=len, reverse=True)
    for block in re.split(r"\n\s*\n", text):
        lines = [re.sub(r" {2,}", " | ", line.strip()) for line in headed(block)]
        rest = flat(" ".join(lines))
        for said in known + GLUE:
            if len(said) > 3:
                rest = rest.replace(said, "|")
        for sentence in re.findall(r"[^|]+[.:]", rest):
            words = re.findall(r"[a-z][a-z'-]+", sentence)
            if len(words) > 4 and "docs/" not in sentence:
                yield sentence.strip()


def missing(text, document, words_alone=True):
    known, said = list(numbers(document)), flat(" | ".join(strings(document)))
    for figure in sorted(set(FIGURE.findall(text))):
        if not has_figure(figure, known, said):
            yield "figure %s of the text is not in the JSON" % figure
    rest = [left_over(text, document)] if words_alone else unsaid(text, document)
    for words in rest:
        if words:
            yield "not in the JSON: %s" % words


def hold(program, path):
    sections = golden.parse(path)
    command = sections["command"].strip()
    as_text = golden.run(program, sections)
    if as_text["exit"].strip() not in ("0", "1") or re.search(r"-f |--format|-o |[|;&]|--batch", command) or \
            not as_text["stdout"].strip():
        return None
    command = re.sub(r" -q\b", "", command)  # which narrows the two in different ways
    as_json = golden.run(program, {**sections, "command": command + " -f json"})
    if as_json["exit"] != as_text["exit"]:
        return ["exit %s as text, %s as JSON" % (as_text["exit"].strip(), as_json["exit"].strip())]
    shown = [line for line in prose(as_text["stdout"]).splitlines() if not re.match(r"and \d+ more", line)]
    return list(missing("\n".join(shown), json.loads(as_json["stdout"]), path.parent.name in WORDS_ALONE))


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
        print("%s %d - %s: %s" % ("not ok" if wrong else "ok", number, path.parent.name, path.stem))
        for line in wrong:
            print("# " + line)
    return any(w for _, w in results)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
