#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""utf8proc's table of characters without what the program never asks: upper and lower case, composing,
direction, bounds of letters. Rows that are alike by then become one; 70 kB less, 16 kB compressed.

Usage: thin.py utf8proc_data.c; rewrites it. What is left answers as before: width, category, decomposing,
folding (utf8proc_charwidth, utf8proc_category, utf8proc_decompose_char).
"""
import pathlib
import re
import sys

# Of a row: combining and bidi class; the three cases and composing; bounds.
UNUSED = {1: "0", 2: "0", 6: "UINT16_MAX", 7: "UINT16_MAX", 8: "UINT16_MAX", 9: "UINT16_MAX", 16: "0"}


def table(text, name):
    """Where the rows of an array stand in the text."""
    begin = text.index("{\n", text.index(name + "[] = ")) + 2
    return begin, text.index("};", begin)


def main(path):
    text = path.read_text(encoding="utf-8")
    begin, end = table(text, "utf8proc_properties")
    places, kept, rows = [], [], {}
    for row in re.findall(r"\{([^}]*)\}", text[begin:end]):
        cells = [UNUSED.get(i, cell.strip()) for i, cell in enumerate(row.split(","))]
        if len(cells) != 17:
            sys.exit("a row of %d cells: another version of utf8proc" % len(cells))
        row = "  {%s},\n" % ", ".join(cells)
        if row not in rows:
            rows[row] = len(kept)
            kept.append(row)
        places.append(rows[row])
    text = text[:begin] + "".join(kept) + text[end:]
    begin, end = table(text, "utf8proc_stage2table")
    text = text[:begin] + re.sub(r"\d+", lambda found: str(places[int(found.group())]), text[begin:end]) + text[end:]
    path.write_text(text, encoding="utf-8")


main(pathlib.Path(sys.argv[1]))
