#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Every command that README.md or any other page shows is run, here or where HOW says. TAP.

- Behind a `$` the output must stand below it, to the letter.
- Any other command, indented or in backticks, that starts with `tapshoal` is run with PLACES filled
  in, and must end with an answer (exit 0 or 1); a bare `tapshoal NAME` with its --help. It stands in
  a folder of its own that has the tree's entries as links, so that what it writes is no part of them.
- The rest must have a row in HOW: a test of this suite, a script that .ci/run calls, or a way to run
  it here. A command without a row fails, and so does a row that no page shows any longer.

Usage: readme.py PROGRAM
"""
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent
PROGRAM = os.path.abspath(sys.argv[1])
BUILD = pathlib.Path(PROGRAM).parent.parent.parent
STARTS = "tapshoal|sh|python3|ninja|meson|gcc|cc"
# What pages write for something of the reader's own.
PLACES = {
    "COMMAND": "rank",
    "FILE": "docs/exempla-mollis.yaml",
    "FILE...": "docs/exempla-mollis.yaml",
    "FOLDER": "species",
    "PLAN": "examples/plans/livebearers.yaml",
    "TANK": "examples/tanks/living-room.yaml",
    "WATER": "examples/waters/kitchen-tap.yaml",
    "SPECIES...": "guppy",
    "PATTERN": "tetra",
    "TERM": "KH",
}
SUITE = "suite"  # a test of `meson test`, by name
SCRIPT = "script"  # .ci/run, a script that it calls, or prove.sh contains the text
HERE = "here"  # run with these replacements; must exit 0
HOW = {
    "sh examples/first-match.sh": (HERE, {}),
    "sh examples/propose-and-check.sh": (HERE, {}),
    "sh examples/page.sh": (SCRIPT, "tests/full.sh", "sh examples/page.sh"),
    "sh tests/run.sh": (SCRIPT, ".ci/run", "tests/run.sh"),
    "sh tests/full.sh": (SCRIPT, ".ci/run", "tests/full.sh"),
    "sh tests/prove.sh": (SCRIPT, "tests/prove.sh", "sanitized_build"),
    "sh tests/bench/rank.sh": (SCRIPT, "tests/prove.sh", "sh tests/bench/rank.sh"),
    "sh tests/bench/image.sh": (SCRIPT, "tests/prove.sh", "sh tests/bench/image.sh"),
    "sh tests/bench/batch.sh": (SCRIPT, "tests/prove.sh", "sh tests/bench/batch.sh"),
    "sh tests/bench/profile.sh": (SCRIPT, "tests/prove.sh", "sh tests/bench/profile.sh"),
    "sh tests/bench/score.sh": (SCRIPT, "tests/prove.sh", "sh tests/bench/score.sh"),
    "sh tests/bench/growth.sh": (SCRIPT, "tests/meson.build", "'growth'"),
    "sh tests/bench/cold.sh": (SCRIPT, "tests/prove.sh", "sh tests/bench/cold.sh"),
    "sh tests/bench/grid.sh solvers": (SCRIPT, "tests/prove.sh", "sh tests/bench/grid.sh solvers"),
    "sh tests/bench/grid.sh": (SCRIPT, "tests/meson.build", "'grid'"),
    "meson test -C build --benchmark -v": (SCRIPT, "tests/meson.build", "benchmark(script"),
    "sh tests/bench/drift.sh": (SCRIPT, "tests/prove.sh", "sh tests/bench/drift.sh"),
    "sh tests/bench/search.sh": (SCRIPT, "tests/prove.sh", "sh tests/bench/search.sh"),
    "sh tests/fuzz/run.sh quantity 600": (SCRIPT, "tests/full.sh", "sh tests/fuzz/run.sh all"),
    "sh tests/fuzz/run.sh all 60": (SCRIPT, "tests/full.sh", "sh tests/fuzz/run.sh all"),
    "python3 tests/golden.py build/src/cli/tapshoal --accept --filter NAME":
        (SUITE, "tests/golden"),
    "python3 tests/audit.py build/src/cli/tapshoal": (SUITE, "catalogue/audit"),
    "python3 tests/keys.py": (SUITE, "catalogue/keys"),
    "python3 tests/drawings.py build/src/cli/tapshoal": (SUITE, "report/drawings"),
    "python3 tests/examples.py build/src/cli/tapshoal": (SUITE, "cli/examples"),
    "python3 tests/truth.py build/src/cli/tapshoal --rows":
        (HERE, {"build/src/cli/tapshoal": PROGRAM}),
    "python3 tests/rewrite.py PROGRAM --times 100 --seed 2026 --table": (SUITE, "cli/rewrite"),
    "python3 tests/completion.py FOLDER --names 1000 --seed 2026": (SUITE, "cli/completion"),
    "sh tests/wasm.sh": (SUITE, "engine/wasm"),
    "python3 tests/mutate.py --each 20": (SUITE, "tests/mutate"),
    "python3 tests/mutate.py --each 12 --most 60 --seed 1131": (SUITE, "tests/mutate"),
    "ninja -C build regenerate": (SUITE, "report/formats"),
    "meson install -C build": (SUITE, "docs/pages"),
    "ninja -C build uninstall": (SCRIPT, "tests/artefacts.sh", "uninstall"),
    "sh examples/static.sh": (SCRIPT, "tests/artefacts.sh", "examples/static.sh"),
    "sh tests/abi.sh": (SCRIPT, "tests/prove.sh", "sh tests/abi.sh"),
    "sh tests/artefacts.sh FOLDER": (SCRIPT, "tests/prove.sh", "sh tests/artefacts.sh"),
    'meson configure build --prefix="$HOME/.local" && meson install -C build':
        (SCRIPT, "tests/full.sh", "ninja -C \"$work/tarball/build\" install"),
    "meson setup build -Dtests=false && ninja -C build":
        (SCRIPT, "tests/full.sh", "-Dtests=false -Dbuildtype=release"),
}


def pages():
    found = [p for p in ROOT.rglob("*.md") if not {"build", ".git"} & set(p.relative_to(ROOT).parts)
             and BUILD not in p.parents]
    return sorted(found)


def shown(page):
    """(command, what must come out or None) of one page."""
    lines = page.read_text(encoding="utf-8").splitlines()
    for i, line in enumerate(lines):
        if line.startswith("    $ "):
            want = []
            for below in lines[i + 1:]:
                if below and not below.startswith("    ") or below.startswith("    $ "):
                    break
                want.append(below[4:].rstrip())
            yield line[6:], "\n".join(want).strip()
        elif re.match(r"    (%s) " % STARTS, line):
            yield re.split(r"\s+# |\s{2,}", line.strip())[0], None
    text = "\n".join(line for line in lines if not line.startswith("    "))
    for code in re.findall(r"`([^`]+)`", text):
        code = " ".join(code.split())
        if re.match(r"(%s) ." % STARTS, code):
            yield code, None


def run(command, folder=ROOT):
    with tempfile.TemporaryDirectory() as home:
        return subprocess.run(["sh", "-c", command], cwd=folder, stdout=subprocess.PIPE,
                              stderr=subprocess.PIPE, text=True, timeout=300,
                              env={**os.environ, "HOME": home, "XDG_CONFIG_HOME": home,
                                   "XDG_DATA_HOME": home, "XDG_DATA_DIRS": home,
                                   "TAPSHOAL_BUILD": str(BUILD), "LC_ALL": "C.UTF-8"})


def called(command):
    """A call of the program as a reader types it in the tree, away from it."""
    with tempfile.TemporaryDirectory() as folder:
        for entry in ROOT.iterdir():
            os.symlink(entry, os.path.join(folder, entry.name))
        return run(command, folder)


def filled(command):
    """The program at its place, and something to work on for every word of PLACES."""
    words = re.sub(r"[A-Z]+(\.\.\.)?(?=$| )", lambda m: PLACES.get(m.group(), m.group()), command)
    return words.replace("tapshoal", PROGRAM, 1)


def fault(command, want):
    """What is wrong with a command that is shown, or nothing."""
    if want is not None:
        got = called(command.replace("tapshoal", PROGRAM, 1)).stdout.strip()
        return "" if got and got == want else "other output:\n" + got
    if command.startswith("tapshoal "):
        if command.count(" ") == 1:  # the name of a command, not a call
            command += " --help"
        done = called(filled(command))
        return "" if done.returncode in (0, 1) else done.stderr or "exit %d" % done.returncode
    if command not in HOW:
        return "no row of HOW in tests/readme.py says where it is run"
    kind, where, *rest = HOW[command]
    if kind == SUITE:
        tests = json.loads((BUILD / "meson-info/intro-tests.json").read_text(encoding="utf-8"))
        return "" if where in [t["name"] for t in tests] else "no test " + where
    if kind == SCRIPT:
        return "" if rest[0] in (ROOT / where).read_text(encoding="utf-8") else "not in " + where
    for old, new in where.items():
        command = command.replace(old, new)
    done = run(command)
    return "" if done.returncode == 0 and done.stdout else done.stdout + done.stderr


results, seen, before = [], set(), set(os.listdir(ROOT))
for page in pages():
    for command, want in shown(page):
        if (command, want) in seen:
            continue
        seen.add((command, want))
        results.append(("%s: %s" % (page.relative_to(ROOT), command), fault(command, want)))
guide = (ROOT / "docs/guide.md").read_text(encoding="utf-8")
for chapter in re.findall(r'guide\.md, \\"(.+?)\\"', (ROOT / "src/words/care.c").read_text(encoding="utf-8")):
    results.append(("answers point to a chapter of the guide: " + chapter,
                    "" if "\n## %s\n" % chapter in guide else "no such chapter"))
stale = sorted(set(HOW) - {command for command, _ in seen})
results.append(("every row of HOW is shown on some page", "\n".join(stale)))
results.append(("nothing that was run wrote into the tree",
                "\n".join(sorted(set(os.listdir(ROOT)) - before))))
print("1..%d" % len(results))
for number, (title, wrong) in enumerate(results, 1):
    print("%s %d - %s" % ("not ok" if wrong else "ok", number, title))
    for line in wrong.splitlines():
        print("# " + line)
sys.exit(any(wrong for _, wrong in results))
