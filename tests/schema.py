#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""The schemas of docs/schemas under an outside validator (python3-jsonschema, python3-yaml). TAP.

Usage: schema.py PROGRAM. Each schema is itself valid; our records and waters hold to the schema of
their kind, and a key too many does not; JSON answers of a command hold to answer-COMMAND.json,
once there is one: until then that is a counted skip; so does each line of rank --batch, of rows
that are right and of rows that are wrong, to answer-rank-batch.json.
"""
import copy
import json
import pathlib
import subprocess
import sys

import jsonschema
import yaml

ROOT = pathlib.Path(__file__).resolve().parent.parent
FILES = {"species": ["species/*/*.yaml", "tests/data/catalogue/*.yaml"],
         "plan": ["examples/plans/*.yaml"], "tank": ["examples/tanks/*.yaml"],
         "water": ["examples/waters/*.yaml"]}
WATER = ["--GH", "14", "--KH", "9", "--pH", "7.6", "--temperature", "25", "-f", "json"]
ANSWERS = {"check": ["examples/plans/wishful.yaml", "-f", "json"],
           "arrive": WATER, "remake": ["--to", "GH=6,KH=4"] + WATER,
           "drift": ["examples/plans/old-tank.yaml", "-f", "json"],
           "due": ["examples/plans/old-tank.yaml", "--to", "GH=10,KH=6", "-f", "json"],
           "log": ["examples/plans/old-tank.yaml", "-f", "json"],
           "find": ["tetra", "-f", "json"], "lint": ["README.md", "-f", "json"], "rank": WATER,
           "read": ["tests/data/reports/de-aligned-columns.case", "-f", "json"],
           "titrate": WATER + ["--nightly"], "water": WATER,
           "mix": ["examples/waters/soft-tap.yaml=0.5", "pure=0.5", "-f", "json"],
           "why": ["guppy"] + WATER}
TABLE = b"name,GH,pH,method,salinity\nright,14,7.6,drops,\nassumed,250 ppm,7.6,,\nsea,200,8.1,," \
        b"35 g/L\nwrong,x,77,dorps,\nshort,3\n\"not closed\n"
results = []


class Plain(yaml.BaseLoader):
    """YAML with every scalar as the text that was written, which is how the program reads it."""


def note(name, faults, skip=False):
    results.append((name, faults, skip))


def faults_of(schema, value):
    return ["%s: %s" % ("/".join(map(str, e.absolute_path)), e.message[:200])
            for e in jsonschema.Draft202012Validator(schema).iter_errors(value)]


def typed(schema, value):
    """The text of a scalar as a number where the schema allows a number and it is one."""
    if isinstance(value, dict):
        return {k: typed(schema.get("properties", {}).get(k, {}), v) for k, v in value.items()}
    if isinstance(value, list):
        return [typed(schema.get("items", {}), v) for v in value]
    if "number" in schema.get("type", []) or "integer" in schema.get("type", []):
        try:
            return json.loads(value)
        except ValueError:
            return value
    return value


schemas = {}
for path in sorted((ROOT / "docs/schemas").glob("*.json")):
    schemas[path.stem] = json.loads(path.read_text(encoding="utf-8"))
    try:
        jsonschema.Draft202012Validator.check_schema(schemas[path.stem])
        note("%s is a schema" % path.name, [])
    except jsonschema.SchemaError as error:
        note("%s is a schema" % path.name, [error.message])
for kind, patterns in FILES.items():
    paths = sorted(p for pattern in patterns for p in ROOT.glob(pattern)
                   if p.parent.name != "sources")  # of another shape, read by people
    wrong = [] if paths else ["no file found"]
    value = None
    for path in paths:
        value = typed(schemas[kind], yaml.load(path.read_text(encoding="utf-8"), Plain))
        wrong += ["%s: %s" % (path.relative_to(ROOT), f) for f in faults_of(schemas[kind], value)]
    note("%d files hold to %s.json" % (len(paths), kind), wrong)
    broken = copy.deepcopy(value)
    broken["no-such-key"] = "x"
    note("%s.json refuses an unknown key" % kind,
         [] if faults_of(schemas[kind], broken) else ["it passes"])
for command, flags in ANSWERS.items():
    schema = schemas.get("answer-" + command)
    if not schema:
        note("the JSON of %s" % command, [], skip=True)
        continue
    answer = subprocess.run([sys.argv[1], command] + flags, stdout=subprocess.PIPE).stdout
    note("the JSON of %s" % command, faults_of(schema, json.loads(answer)))

club = subprocess.run([sys.argv[1], "why", "guppy", "neon tetra", "-w", "examples/waters/kitchen-tap.yaml",
                       "-w", "examples/waters/soft-tap.yaml", "-f", "json"],
                      stdout=subprocess.PIPE).stdout
note("the JSON of why over two waters", faults_of(schemas["answer-why-waters"], json.loads(club)))
for schema, call in (("answer-rank-batch", ["rank", "-f", "json"]), ("answer-rank-lines", ["rank"]),
                     ("answer-rank-lines", ["rank", "--all", "--only", "suits,unsure,excluded"]),
                     ("answer-why-lines", ["why", "guppy", "neon tetra", "-f", "lines"])):
    lines = subprocess.run([sys.argv[1], *call, "--batch", "-"], input=TABLE, stdout=subprocess.PIPE,
                           stderr=subprocess.DEVNULL).stdout.splitlines()
    note("six rows of %s --batch are six lines" % " ".join(call),
         [] if len(lines) == 6 else ["%d" % len(lines)])
    for line in map(json.loads, lines):
        note("the line of %s --batch for %s" % (" ".join(call), line["name"] or "a row without a name"),
             faults_of(schemas[schema], line))

for call in (["rank", "-f", "json", "--GH", "x"], ["water", "no-such-file", "-f", "json"], ["ranc", "-fjson"]):
    said = subprocess.run([sys.argv[1], *call], stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    note("the messages of %s" % " ".join(call), faults_of(schemas["messages"], json.loads(said.stderr)) +
         (["something on standard output"] if said.stdout else []))

print("1..%d" % len(results))
for number, (name, faults, skip) in enumerate(results, 1):
    print("%s %d - %s%s" % ("not ok" if faults else "ok", number, name,
                            " # SKIP no schema of this answer yet" if skip else ""))
    for line in faults[:20]:
        print("# " + line)
sys.exit(any(faults for _, faults, _ in results))
