#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""PCRE2's table of characters without what no pattern of the program asks: scripts, direction, bounds of
letters, yes-or-no properties. Rows and blocks that are alike by then become one.

Usage: thin_pcre2.py pcre2_ucd.c; rewrites it. What is left answers as before: the category of a character
(\\w, \\d, \\b, \\p{L}) and its other case.
"""
import pathlib
import re
import sys

BLOCK = 128  # UCD_BLOCK_SIZE
# Of a record: script, category, bound, set of cases, other case, scripts and direction, properties.
UNUSED = (0, 2, 5, 6)


def table(text, name):
    """Where the rows of an array stand in the text, and its numbers without the comments."""
    begin = text.index("{", text.index("PRIV(%s)[] = { /*" % name)) + 1
    end = text.index("\n};", begin)
    return begin, end, [int(n) for n in re.findall(r"-?\d+", re.sub(r"/\*.*?\*/", "", text[begin:end]))]


def put(text, name, numbers):
    begin, end, _ = table(text, name)
    return text[:begin] + "\n" + ",\n".join(
        ", ".join(map(str, numbers[i:i + 16])) for i in range(0, len(numbers), 16)) + text[end:]


def merged(items):
    """The items once each, and where each has come."""
    kept = {}
    places = [kept.setdefault(item, len(kept)) for item in items]
    return list(kept), places


def main(path):
    text = path.read_text(encoding="utf-8")
    begin, end, cells = table(text, "ucd_records")
    rows = [tuple(0 if k in UNUSED else cells[i + k] for k in range(7)) for i in range(0, len(cells), 7)]
    blocks = table(text, "ucd_stage2")[2]
    if len(cells) % 7 or len(blocks) % BLOCK or max(blocks) >= len(rows):
        sys.exit("tables of another shape: another version of PCRE2")
    rows, places = merged(rows)
    blocks = [places[n] for n in blocks]
    blocks, places = merged(tuple(blocks[i:i + BLOCK]) for i in range(0, len(blocks), BLOCK))
    text = text[:begin] + "\n" + ",\n".join("{%s}" % ", ".join(map(str, row)) for row in rows) + text[end:]
    text = put(text, "ucd_stage1", [places[n] for n in table(text, "ucd_stage1")[2]])
    text = put(text, "ucd_stage2", [n for block in blocks for n in block])
    path.write_text(text, encoding="utf-8")


main(pathlib.Path(sys.argv[1]))
