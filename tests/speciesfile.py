# SPDX-License-Identifier: Apache-2.0
"""Reads species records for the checks in Python: the narrow form that our own records are written
in (keys by indentation of two, a value in flow style on its own line), not YAML at large. The program's loader is the
judge of what a record may hold; this only looks at records it has accepted.
"""
import pathlib
import re

FOLDER = pathlib.Path(__file__).resolve().parent.parent / "species"


def flow(text, at=0, ends=""):
    """One value from text[at:]: a dict, a list or a string; and where it ends."""
    while text[at:at + 1] == " ":
        at += 1
    if text[at:at + 1] == '"':
        end = at + 1
        while text[end] != '"':
            end += 2 if text[end] == "\\" else 1
        return text[at + 1:end].replace('\\"', '"'), end + 1
    if text[at:at + 1] == "[":
        return flow_list(text, at + 1)
    if text[at:at + 1] == "{":
        return flow_map(text, at + 1)
    end = at
    while end < len(text) and text[end] not in ends and text[end:end + 2] != " #":
        end += 1
    return text[at:end].strip(), end


def flow_list(text, at):
    items = []
    while text[at] != "]":
        item, at = flow(text, at, ",]")
        if item != "":
            items.append(item)
        at += text[at] in ", "
    return items, at + 1


def flow_map(text, at):
    items = {}
    while text[at] != "}":
        key = re.compile(r"\s*([^:{}]+): ?").match(text, at)
        items[key[1]], at = flow(text, key.end(), ",}")
        while text[at] in ", ":
            at += 1
    return items, at + 1


def read(path):
    levels = [{}]
    for line in path.read_text(encoding="utf-8").splitlines():
        key = re.match(r"( *)([^:#]+): ?(.*)", line)
        if not key:
            continue
        del levels[len(key[1]) // 2 + 1:]
        value = flow(key[3])[0] if key[3] else {}
        levels[-1][key[2]] = value
        if not key[3]:
            levels.append(value)
    return levels[0]


def paths():
    """File stem -> path of every record."""
    found = (p for p in FOLDER.glob("*/*.yaml") if p.parent.name != "sources")
    return {p.stem: p for p in sorted(found)}


def span(text):
    """The ends of "6.0..7.5" or "2..12 dH"; an open end is None, a lone figure both ends."""
    number = r"-?\d+(?:\.\d+)?"
    both = re.match(rf"({number})?\.\.({number})?", text)
    if both:
        return tuple(float(end) if end else None for end in both.groups())
    return (float(re.match(number, text)[0]),) * 2
