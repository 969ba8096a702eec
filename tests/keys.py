#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Keys of the species records that `check` and `why` speak of: in how many of the records where they apply.

Usage: keys.py [--table]. TAP, one line a key; 95 in 100 of those it applies to must have it. Whether a key
applies is told by other keys, never by itself. What the schema demands of every record is not listed here:
the loader refuses a record without it.
"""
import sys

import speciesfile

ENOUGH = 0.95
# Kinds by family, common practice: barbels or bellies on the ground, leapers and climbers, livebearers.
GROUND = {"Bagridae", "Botiidae", "Callichthyidae", "Clariidae", "Cobitidae", "Mastacembelidae", "Mochokidae",
          "Nemacheilidae", "Pimelodidae", "Polypteridae", "Potamotrygonidae"}
LEAPERS = {"Aplocheilidae", "Channidae", "Gasteropelecidae", "Melanotaeniidae", "Nothobranchiidae", "Osphronemidae",
           "Osteoglossidae", "Pantodontidae", "Polypteridae", "Rivulidae", "Toxotidae", "Zenarchopteridae"}
BEARERS = {"Goodeidae", "Poeciliidae", "Zenarchopteridae"}
ASHORE = {"Gecarcinidae", "Ocypodidae", "Sesarmidae"}
CROSSERS = BEARERS | {"Bedotiidae", "Melanotaeniidae"}
CROSSERS_OF_ONE_WATER = {"malawi", "victoria", "bee-shrimp", "neocaridina"}
LAKES = {"malawi", "tanganyika", "victoria"}


def genus(record):
    return record["species"].split()[0]


def quarrels(record):
    return record["to_own_kind"] != "ignores"


def drives_off(record):
    return record["to_others"] != "ignores"


def holds_floor(record):
    """Alone or in pairs on the ground, and never at peace with its own kind."""
    return (record.get("own_kind_when") == "always" and int(record["group"]["comfortable"]) <= 2
            and record["swims"] == "bottom")


def has_kin_to_cross(record, kin):
    crosses = record["family"] in CROSSERS or record["home_water"] in CROSSERS_OF_ONE_WATER
    return crosses and kin[genus(record)] > 1


def key(path):
    def has(record):
        for part in path.split("."):
            record = record.get(part) if record else None
        return record not in (None, "", [])
    return has


# key, to whom it applies (by other keys), of which records it is true
ROWS = [
    ("water.pH.preferred", "all", lambda r, kin: True),
    ("water.GH.preferred", "all", lambda r, kin: True),
    ("water.temperature.preferred", "all", lambda r, kin: True),
    ("group.sexes", "all", lambda r, kin: True),
    ("common.en", "all", lambda r, kin: True),
    ("eats", "all", lambda r, kin: True),
    ("diet", "all", lambda r, kin: True),
    ("fins", "all", lambda r, kin: True),
    ("nips", "all", lambda r, kin: True),
    ("takes_change", "all", lambda r, kin: True),
    ("own_kind_when", "not at peace with its own kind", lambda r, kin: quarrels(r)),
    ("others_when", "not at peace with others", lambda r, kin: drives_off(r)),
    ("temper", "not at peace with others", lambda r, kin: drives_off(r)),
    ("territory", "lives alone or in pairs on the ground, never at peace", lambda r, kin: holds_floor(r)),
    ("preys_on", "swallows more than a tenth of its length, or hunts",
     lambda r, kin: r["gape"] != "nibbler" or r["hunts"] in ("fry", "invertebrates", "fish")),
    ("needs.bottom", "barbels or a belly on the ground", lambda r, kin: r["family"] in GROUND and r["swims"] == "bottom"),
    ("needs.cover: yes", "leaps or climbs",
     lambda r, kin: r["family"] in LEAPERS or r["kind"] in ("crayfish", "crab") or "escapes" in r["cautions"]),
    ("needs.land", "lives half on land", lambda r, kin: r["family"] in ASHORE or genus(r) == "Periophthalmus"),
    ("water.salinity", "of brackish water", lambda r, kin: r["home_water"] == "brackish" or "needs-salt" in r["cautions"]),
    ("lakes_apart", "of a rift lake", lambda r, kin: r["home_water"] in LAKES),
    ("young_month", "bears young", lambda r, kin: r["family"] in BEARERS),
    ("crosses_with", "crosses, and another of its genus is here", has_kin_to_cross),
    ("habits", "breathes air, by its family", lambda r, kin: r["family"] in ("Osphronemidae", "Anabantidae", "Callichthyidae")),
]


def measure():
    records = {name: speciesfile.read(path) for name, path in speciesfile.paths().items()}
    kin = {}
    for record in records.values():
        kin[genus(record)] = kin.get(genus(record), 0) + 1
    for path, whom, applies in ROWS:
        name, _, wanted = path.partition(": ")
        has = key(name)
        meant = {n: r for n, r in records.items() if applies(r, kin)}
        lacking = [n for n, r in meant.items()
                   if not (r["needs"]["cover"] == wanted if wanted else has(r))]
        yield path, whom, len(meant), lacking


def main():
    rows = list(measure())
    if "--table" in sys.argv:
        for path, whom, meant, lacking in rows:
            print("%-28s %3d of %3d  %s" % (path, meant - len(lacking), meant, whom))
        return 0
    print("TAP version 13\n1..%d" % len(rows))
    for number, (path, whom, meant, lacking) in enumerate(rows, 1):
        fine = meant > 0 and meant - len(lacking) >= ENOUGH * meant
        if lacking:
            print("# without: " + " ".join(lacking))
        print("%sok %d - %s: %d of %d (%s)" % (
            "" if fine else "not ", number, path, meant - len(lacking), meant, whom))
    return 0


if __name__ == "__main__":
    sys.exit(main())
