#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Pages of every command that writes them, taken apart.

Usage: page.py PROGRAM. TAP: each page is well-formed (as XML, which is stricter than a browser),
has language, title and viewport, fetches nothing, holds no address; the ranking of the whole
catalogue stays below 300 kB in four waters; hostile names stay text; contrasts of the style hold
(WCAG 2.2: 4.5 for text, 3 for marks).
"""
import pathlib
import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as tree

ROOT = pathlib.Path(__file__).resolve().parent.parent
WATER = ["--pH", "7.6", "--GH", "14", "--KH", "9", "--temperature", "25"]
TANK = "length: 100 cm\nwidth: 40 cm\nheight: 50 cm\nfilter: mature\n" \
    "temperature: 25 C\nwater_change: 30 % every 7 days\nfeeding: ordinary\nplants: some\n"
PLAN = "water:\n  name: tap\n  readings:\n    - {pH: 7.6, GH: 14 dH, KH: 9 dH}\n" \
    "tank:\n" + "".join("  %s\n" % line for line in TANK.splitlines()) + \
    "stock:\n  - {species: Poecilia reticulata, count: 6}\n"
HOSTILE = 'kind: tap\nname: "</title><script>alert(1)</script><img src=http://x.invalid/>"\n' \
    "readings:\n  - {pH: 7.6, GH: 14 dH, KH: 9 dH, temperature: 25 C}\n"
TAP = "kind: tap\nname: tap\nreadings:\n  - {pH: 7.6, GH: 14 dH, KH: 9 dH, temperature: 25 C}\n"
LONG = "name: the rainwater behind the old greenhouse, second tap on the left (invented)"
WORD = "name: Gartenwasserhahnverlaengerungsschlauchtrommel"
YEAR = "name: reservoir\nreadings:\n  - {season: summer, pH: 7.8, GH: 14 dH, KH: 9 dH}\n" \
    "  - {season: winter, pH: 7, GH: 4 dH, KH: 2 dH}\n"
PLANS = ROOT / "examples" / "plans"
PAGES = {
    "rank": ["rank", *WATER], "why": ["why", "guppy", "neon tetra", *WATER],
    "find": ["find", "tetra"], "water": ["water", *WATER], "titrate": ["titrate", *WATER],
    "evenings": ["titrate", *WATER, "--nightly", "--towards", "6.8"],
    "propose": ["propose", "-t", "tank.yaml", *WATER, "--lists", "2"],
    "check": ["check", "plan.yaml"], "drift": ["drift", "plan.yaml"],
    "club": ["why", "guppy", "neon tetra", "-w", "tap.yaml", "-w", "year.yaml", "--temperature", "25"],
    "club of many": ["why", "guppy", "neon tetra", "platy", "-w", "tap.yaml", "-w", "year.yaml",
                     "-w", "soft.yaml"],
    "due": ["due", "plan.yaml", "--to", "GH=6,KH=4"],
    "log": ["log", str(PLANS / "old-tank.yaml")],
    "mix": ["mix", "tap.yaml=0.5", "pure=0.5"],
    "arrive": ["arrive", "--shop", "tap.yaml", "--hours", "1 h", *WATER],
    "remake": ["remake", "--for", "neon tetra", *WATER, "--volume", "100 L"],
    "stages": ["remake", "--for", "neon tetra", *WATER, "--volume", "100 L", "--with", "platy",
               "--ammonia", "0 mg/L N", "--NO2", "0 mg/L"],
    "old tank": ["drift", str(PLANS / "old-tank.yaml")],
    "wishful": ["check", str(PLANS / "wishful.yaml")],
    "long names": ["mix", "long.yaml=0.5", "word.yaml=0.5"],
    "club of long names": ["why", "guppy", "neon tetra", "-w", "long.yaml", "-w", "word.yaml"],
    "long names beside": ["water", "long.yaml", "--against", "word.yaml"],
}
# What is said about the water on paper before anything else, and the animals drawn against it.
SHEETS = {"rank": 500, "why": 8, "propose": 4, "check": 1, "wishful": 4}
EDGES = {
    "soft": ["--pH", "6.5", "--GH", "3", "--KH", "1", "--temperature", "25"],
    "nothing fits": ["--pH", "9", "--GH", "0.5", "--KH", "0.5", "--temperature", "36"],
    "wide": ["--pH", "8", "--GH", "30", "--KH", "20", "--temperature", "18..30"],
}


def write_files(folder):
    for name, text in {"tank.yaml": TANK, "plan.yaml": PLAN, "bad.yaml": HOSTILE,
                       "tap.yaml": TAP, "year.yaml": YEAR,
                       "long.yaml": TAP.replace("name: tap", LONG),
                       "word.yaml": TAP.replace("name: tap", WORD),
                       "soft.yaml": TAP.replace("14", "3").replace("name: tap", "name: soft")}.items():
        (pathlib.Path(folder) / name).write_text(text, encoding="utf-8")


def page(program, folder, arguments):
    """The page, and what is wrong with the call; exit 1 is an answer too."""
    done = subprocess.run([program, *arguments, "-f", "html"], cwd=folder, check=False,
                          stdout=subprocess.PIPE, stderr=subprocess.PIPE, timeout=60)
    if done.returncode > 1 or not done.stdout:
        return "", ["exit %d: %s" % (done.returncode, done.stderr.decode()[:400])]
    return done.stdout.decode("utf-8"), []


def faults(text):
    wrong = []
    try:
        root = tree.fromstring(text.split("\n", 1)[1])
    except tree.ParseError as fault:
        return ["not well-formed: %s" % fault]
    if not text.startswith("<!DOCTYPE html>\n") or root.get("lang") != "en":
        wrong.append("doctype or language")
    if not (root.findtext("head/title") or "").strip() or len(root.findall(".//h1")) != 1:
        wrong.append("title or h1")
    if [m for m in root.iter("meta") if m.get("name") == "viewport"] == []:
        wrong.append("no viewport")
    if len(root.findall("body/main")) != 1 or len(root.findall(".//script")) != 1:
        wrong.append("main or script")
    fetching = [e.tag for e in root.iter() for a in e.attrib
                if a in ("src", "srcset", "action", "style") or a.startswith("on")
                or (a == "href" and not e.get(a).startswith("#"))]
    if fetching or {e.tag for e in root.iter()} & {"img", "link", "iframe", "object", "embed", "a"}:
        wrong.append("something fetches: %s" % fetching)
    if re.search(r"[a-z]+://|url\(|@import", text):
        wrong.append("an address")
    for svg in root.iter("svg"):
        if svg.get("aria-hidden") != "true":
            wrong.append("a drawing is not hidden")
    for table in root.iter("table"):
        if [h for h in table.iter("th") if h.get("scope") not in ("col", "row")]:
            wrong.append("a heading of a table without scope")
    return wrong


def sheet_faults(name, text):
    """What is wrong with the part that leads a printed page, and with the outlines behind it."""
    main = tree.fromstring(text.split("\n", 1)[1]).find("body/main")
    first = main[1]
    said = " ".join("".join(first.itertext()).split())
    wrong = []
    if first.get("class") != "paper" or not said.startswith("To take to the shop"):
        wrong.append("a printed page begins with %s" % first.tag)
    if said.count("____________") != 4 or "Ask before you buy" not in said or "calcium carbonate" not in said:
        wrong.append("no water to show, or nothing to ask: %s" % said)
    if len(main.findall(".//li/svg")) < SHEETS[name]:
        wrong.append("%d outlines" % len(main.findall(".//li/svg")))
    return wrong


def luminance(color):
    digits = color.lstrip("#")
    digits = "".join(c * 2 for c in digits) if len(digits) == 3 else digits
    parts = [int(digits[i:i + 2], 16) / 255 for i in (0, 2, 4)]
    parts = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2]


def contrasts():
    """Contrast of each colour with its ground, by the formula of WCAG 2.2, "contrast ratio"."""
    style = (ROOT / "src" / "report" / "page.css").read_text(encoding="utf-8")
    themes = re.findall(r":root \{([^}]*)\}", style)
    wrong = [] if len(themes) == 3 else ["%d themes" % len(themes)]
    for number, theme in enumerate(themes):
        colors = dict(re.findall(r"--(\w+): (#[0-9a-f]+)", theme))
        for name in ("ink", "soft", "rule", "gh", "kh", "ph", "te"):
            pair = sorted((luminance(colors[name]), luminance(colors["ground"])))
            ratio = (pair[1] + 0.05) / (pair[0] + 0.05)
            if ratio < (4.5 if name in ("ink", "soft") else 3):
                wrong.append("theme %d, %s: %.2f" % (number, name, ratio))
    return wrong


def main(program):
    tests = []
    with tempfile.TemporaryDirectory() as folder:
        write_files(folder)
        for name, arguments in PAGES.items():
            text, wrong = page(program, folder, arguments)
            wrong = wrong or faults(text)
            tests.append(("page of " + name, wrong))
            if name in SHEETS:
                tests.append(("printed, %s leads with the water" % name,
                              wrong or sheet_faults(name, text)))
        for name, water in {"hard": WATER, **EDGES}.items():
            text, wrong = page(program, folder, ["rank", *water])
            size, species = len(text.encode()), text.count("<li data-")
            if size >= 300000 or species < 500:
                wrong.append("%d bytes, %d species" % (size, species))
            tests.append(("size of the ranking, %s: %d bytes, %d species" % (
                name, size, species), wrong + faults(text) if text else wrong))
        text, wrong = page(program, folder, ["rank", "-w", "bad.yaml"])
        if "alert(1)" not in text or text.count("<script>") != 1 or "<img" in text:
            wrong.append("a hostile name left its place, or is not shown")
        wrong += faults(text.replace("http://x.invalid", "")) if text else []
        tests.append(("a hostile name stays text", wrong))
    tests.append(("contrast of every colour with its ground", contrasts()))
    print("1..%d" % len(tests))
    for number, (name, wrong) in enumerate(tests, 1):
        print("%s %d - %s" % ("not ok" if wrong else "ok", number, name))
        for line in wrong:
            print("# %s" % line)
    return int(any(wrong for _, wrong in tests))


if __name__ == "__main__":
    sys.exit(main(str(pathlib.Path(sys.argv[1]).resolve())))
