#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Do the tests notice a fault? Makes one small fault at a time in every room of the code.

Usage: mutate.py [--files WORD...] [--sample N | --each N] [--seed N] [--jobs N] [--list]
All rooms are built once as one shared library; a mutant is one file compiled from memory and linked
with the other objects, so no source of the tree is ever written and no test is linked again. Tests
that reach the function are run, short ones and those of the file's own room first, until one fails; the
slowest of other rooms are not, so that what they alone notice counts as survived. --sample takes N
lines at random and one fault in each (more only where the lines are used up), --each N lines of
each room; the seed is printed. Golden cases and situations count as a test each.
Mutants that change nothing are excused in tests/mutants-equivalent.txt, each with its reason.
Headers and text in quotes are left alone. Tested by tests/test_mutate.py.
"""
import argparse
import collections
import concurrent.futures
import itertools
import json
import os
import pathlib
import random
import re
import resource
import shlex
import signal
import subprocess
import sys
import tempfile
import threading
import time

import golden
import situations

ROOT = pathlib.Path(__file__).resolve().parent.parent
ENGINE = ("base", "units", "model", "chem", "water", "match", "stock", "care", "words", "answers")
ROOMS = ENGINE + ("system", "records", "intake", "catalogue", "typed", "report", "show", "cli")
ALONE = ("memory.c", "compile.c", "pages.c", "main.c")  # stand in no library of the program
DEAF = ("fuzz/", "catalogue/pattern")  # of the clock
EQUIVALENT = ROOT / "tests" / "mutants-equivalent.txt"
ARCHIVES = ("src/libtapshoal-engine.a", "src/libtapshoal-files.a", "src/cli/libtapshoal-cli.a")
LIBRARIES = ["-lyaml", "-lpcre2-8", "-lutf8proc", "-lm"]

TOKEN = re.compile(r"""(?P<skip>\s+|/\*.*?\*/|//[^\n]*|\#[ ]*define[ ]+\w+(?:\([^)]*\))?
    |\#(?:[^\n\\]|\\.)*|\\\n)|(?P<text>"(?:[^"\\]|\\.)*"|'(?:[^'\\]|\\.)*')
    |(?P<number>\d(?:[eE][+-]|[\w.])*)|(?P<word>[A-Za-z_]\w*)
    |(?P<sign><<=?|>>=?|->|\+\+|--|[-+*/%&|^<>=!]=|&&|\|\||.)""", re.S | re.X)
SWAPS = {"<": ("<=", ">="), "<=": ("<", ">"), ">": (">=", "<="), ">=": (">", "<"), "==": ("!=",),
         "!=": ("==",), "&&": ("||",), "||": ("&&",), "+=": ("-=",), "-=": ("+=",),
         "*=": ("/=",), "/=": ("*=",)}
BETWEEN = {"+": "-", "-": "+", "*": "/", "/": "*"}  # with a blank on both sides: of two operands
WORDS = {"fmin": "fmax", "fmax": "fmin", "ts_min": "ts_max", "ts_max": "ts_min",
         "true": "false", "false": "true", "break": "continue", "continue": "break"}
ASSIGN = {"=", "+=", "-=", "*=", "/=", "|=", "&=", "^=", "%=", "<<=", ">>="}

SLOW = 0.03  # of all tests' time: such a test is run for its own room alone
LONG = 0.5  # seconds: such a test is run when the short ones have noticed nothing

KEYWORDS = {"if", "for", "while", "switch", "return", "sizeof", "do"}

Token = collections.namedtuple("Token", "kind text start end")
Mutant = collections.namedtuple("Mutant", "file line function was change start end new")


def tokens_of(text):
    found = (Token(m.lastgroup, m.group(), *m.span()) for m in TOKEN.finditer(text))
    return [t for t in found if t.kind != "skip"]


def other_number(text):
    """1 for 0, 0 for 1, n + 1 for n, a tenth more where there is a point; hex is left alone."""
    digits = text.rstrip("uUlLfF")
    if text[:2] in ("0x", "0X"):
        return None
    if re.search(r"[.eE]", digits):
        return repr(float("%.12g" % (float(digits) * 1.1)) or 1.0)
    return str({0: 1, 1: 0}.get(int(digits), int(digits) + 1)) + text[len(digits):]


def begins(text, tokens, i):
    """Whether a call or an assignment begins at i: formatted text has a body on its own line."""
    t, before, follows = tokens[i], tokens[i - 1], tokens[i + 1].text
    if t.kind == "word":
        if t.text in KEYWORDS or follows not in ASSIGN | {"(", ".", "->", "[", "++", "--"}:
            return False
    elif t.text != "*" or text[t.end].isspace():
        return False
    if before.text == ":":
        return text[text.rindex("\n", 0, before.start):].lstrip().startswith(("case ", "default:"))
    return before.text in ("{", "}", ";", "else") or (
        before.text == ")" and "\n" in text[before.end:t.start])


def statement(text, tokens, i):
    """The index of the semicolon of a call or an assignment that begins at i, or None."""
    if not begins(text, tokens, i):
        return None
    depth = 0
    for end in range(i, len(tokens)):
        depth += (tokens[end].text in "([{") - (tokens[end].text in ")]}")
        if depth < 0 or tokens[end].text == ";":
            return end if depth == 0 and end > i + 1 else None
    return None


def functions(tokens):
    """The name of the function each token stands in, "" outside; and how deep in braces."""
    name, depth, here, nest = "", 0, [], 0
    for i, t in enumerate(tokens):
        if t.text == "{":
            depth += 1
        elif t.text == "}":
            depth -= 1
            name = name if depth else ""
        elif not depth and t.text == "(":
            if not nest and i and tokens[i - 1].kind == "word":
                name = tokens[i - 1].text
            nest += 1
        elif not depth and t.text == ")":
            nest -= 1
        elif not depth and t.text in (";", "="):
            name = ""
        here.append((name, depth))
    return here


def changes(text, tokens, places):
    """(first token, last token, new text, operator's name or "") of every fault."""
    returns = collections.defaultdict(list)
    for i, t in enumerate(tokens[:-2]):
        if t.text == "return" and tokens[i + 2].text == ";":
            returns[places[i][0]].append(tokens[i + 1].text)
    for i, t in enumerate(tokens):
        name, depth = places[i]
        end = statement(text, tokens, i) if name and depth else None
        if end:
            yield i, end - 1, "", "removed"
        spaced = i and text[t.start - 1].isspace() and text[t.end:t.end + 1].isspace()
        if t.kind == "number" and other_number(t.text):
            yield i, i, other_number(t.text), ""
        elif t.kind == "word" and t.text in WORDS:
            yield i, i, WORDS[t.text], ""
        elif t.kind == "sign" and t.text in SWAPS:
            for new in SWAPS[t.text]:
                yield i, i, new, ""
        elif t.kind == "sign" and t.text in BETWEEN and spaced:
            yield i, i, BETWEEN[t.text], ""
        elif t.text in ("!", "-") and not spaced:
            yield i, i, "", ""
        if t.text == "return" and tokens[i + 1].text == ";":
            yield i, i, "", "removed"
        elif t.text == "return" and tokens[i + 2].text == ";":
            mine, all_ = tokens[i + 1], sorted(set(returns[name]))
            if len(all_) > 1 and mine.text not in ("true", "false"):
                yield i + 1, i + 1, all_[(all_.index(mine.text) + 1) % len(all_)], ""


def mutants_of(file, text):
    tokens = tokens_of(text)
    places = functions(tokens)
    lines, seen = text.splitlines(), collections.Counter()
    for first, last, new, how in changes(text, tokens, places):
        start, end = tokens[first].start, tokens[last].end
        line = text.count("\n", 0, start)
        old = " ".join(text[start:end].split())
        change = "%s %s" % (how, old) if how else "%s -> %s" % (old, new or "nothing")
        seen[line, change] += 1
        if seen[line, change] > 1:
            change += " @%d" % seen[line, change]
        yield Mutant(file, line + 1, places[first][0], lines[line].strip(), change, start, end, new)


def sampled(mutants, count, seed):
    """Every line with a fault has the same chance; a second fault of a line comes after all."""
    chance, by_line = random.Random(seed), collections.defaultdict(list)
    for m in mutants:
        by_line[m.file, m.line].append(m)
    ranked = []
    for group in by_line.values():
        chance.shuffle(group)
        ranked += [(rank, chance.random(), m) for rank, m in enumerate(group)]
    return [m for *_, m in sorted(ranked)[:count]]


def of_each_room(mutants, count, seed):
    by_room = collections.defaultdict(list)
    for m in mutants:
        by_room[m.file.split("/")[1]].append(m)
    picked = [sampled(by_room[room], count, seed) for room in sorted(by_room)]
    return [m for turn in itertools.zip_longest(*picked) for m in turn if m]


def row(m):
    """A mutant as the rows of the file of the equivalent ones name it."""
    return " | ".join((m.file, m.function, m.was, m.change))


def excuses(lines, mutants):
    """{mutant: reason}; ValueError where a row does not fit exactly one mutant."""
    by_row, excused = collections.defaultdict(list), {}
    for m in mutants:
        by_row[row(m)].append(m)
    for line in lines:
        if not line.strip() or line.startswith("#"):
            continue
        key, _, reason = line.rpartition(" | ")
        fits = by_row[key]
        if len(fits) != 1 or not reason.strip():
            raise ValueError("%d mutants fit, wanted one and a reason: %s" % (len(fits), line))
        excused[fits[0]] = reason
    return excused


SEEN = r"""
#include <stdio.h>
#include <stdlib.h>
extern const char __ehdr_start[] __attribute__((visibility("hidden")));
static unsigned char seen[1 << 24];
void __cyg_profile_func_enter(void *f, void *from) { seen[(char *)f - __ehdr_start] = 1; }
void __cyg_profile_func_exit(void *f, void *from) {}
__attribute__((destructor)) static void tell(void)
{
	char path[4096];
	FILE *out;
	snprintf(path, sizeof path, "%s/seen", getenv("LD_LIBRARY_PATH"));
	out = fopen(path, "a");
	for (size_t i = 0; i < sizeof seen; i++)
		if (seen[i])
			fprintf(out, "%zx\n", i);
	fclose(out);
}
"""


class Bench:
    """A build whose tests and program take all rooms as one shared library."""

    def __init__(self, folder, most):
        self.most = most
        self.folder, self.program = folder, str(folder / "src" / "cli" / "tapshoal")
        self.timing, self.reached = {}, collections.defaultdict(set)
        if not (folder / "build.ninja").exists():
            self.make(["meson", "setup", folder, ROOT, "-Ddebug=false",
                       "-Dc_args=-fvisibility=default"])
        for archive in ARCHIVES:
            (folder / archive).unlink(missing_ok=True)  # of an earlier run
        self.make(["ninja", "-C", folder, *ARCHIVES])
        self.units = {}
        for unit in json.loads((folder / "compile_commands.json").read_text(encoding="utf-8")):
            if unit["output"].startswith(tuple(a + ".p/" for a in ARCHIVES)):
                path = os.path.relpath(folder / unit["file"], ROOT)
                flags = [f for f in shlex.split(unit["command"]) if not f.startswith("-M")]
                self.units[path] = flags[:flags.index("-o")][:-2] + [
                    "-w", "-iquote", str(ROOT / "src")], unit["output"]
        self.link(folder / "src")
        for archive in ARCHIVES:  # a script of the linker
            (folder / archive).write_text("INPUT(%s)\n" % (folder / "src" / "libengine.so"),
                                          encoding="utf-8")
        commands = subprocess.check_output(["ninja", "-C", folder, "-t", "commands"], text=True)
        linked = [line.split()[2] for line in commands.splitlines()
                  if any(a in line for a in ARCHIVES) and line.startswith(("cc  -o tests/", "cc  -o src/cli/taps"))]
        self.make(["ninja", "-C", folder] + linked)
        listed = json.loads(subprocess.check_output(["meson", "introspect", "--tests", folder]))
        self.tests = [t for t in listed if not t["name"].startswith(DEAF) and (
            self.program in t["cmd"] or os.path.relpath(t["cmd"][0], folder) in linked)]
        self.tests = {t["name"]: t for t in self.tests
                      if t["name"] not in ("cli/golden", "cli/situations")}
        if most:
            self.tests = {name: t for name, t in self.tests.items() if name.startswith(ENGINE)}
        for case in (ROOT / "tests" / "cli" / "cases").rglob("*.case"):
            self.tests["golden/%s/%s" % (case.parent.name, case.stem)] = case
        for case in situations.FOLDER.glob("*.case"):
            self.tests["situations/" + case.stem] = case

    def make(self, command):
        self.folder.mkdir(exist_ok=True)
        done = subprocess.run(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                              cwd=self.folder, check=False)
        if done.returncode:
            sys.exit(done.stdout.decode("utf-8", "replace"))

    def link(self, work, file="", text="", how=()):
        """Links the engine there, a file's object replaced by that text's; whether it compiled."""
        objects = [o for path, (_, o) in self.units.items() if path != file]
        command = self.units[file][0] + ["-O1", "-x", "c", "-", "-x", "none"] if file else ["cc"]
        return subprocess.run(command + ["-shared", "-Wl,-soname,libengine.so", *how, "-o",
                                         str(work / "libengine.so")] + objects + LIBRARIES,
                              input=text.encode(), cwd=self.folder, check=False,
                              stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL).returncode == 0

    def furnish(self, work):
        """The folder of one mutant, with a program that takes the engine from there."""
        (work / "tapshoal").write_text('#!/bin/sh\nLD_LIBRARY_PATH=%s exec %s "$@"\n' % (
            work, self.program), encoding="utf-8")
        (work / "tapshoal").chmod(0o755)
        return work

    def passes(self, name, work):
        """None says that it was ended for its time."""
        test, program = self.tests[name], str(work / "tapshoal")
        if name.startswith("situations/"):
            return not any(situations.hold(program, test, False))
        if not isinstance(test, dict):
            return not golden.check(program, test, False)
        env, over = {**os.environ, **test["env"]}, threading.Event()
        if self.program not in test["cmd"]:
            env["LD_LIBRARY_PATH"] = str(work)
        with subprocess.Popen([program if c == self.program else c for c in test["cmd"]], env=env,
                              cwd=work, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL,
                              start_new_session=True) as process:

            def end():
                over.set()
                os.killpg(process.pid, signal.SIGKILL)

            clock = threading.Timer(10 + 10 * self.timing.get(name, 20), end)
            clock.start()
            good = not any(line.startswith(b"not ok") for line in process.stdout)
            clock.cancel()
            if not good and not over.is_set():
                os.killpg(process.pid, signal.SIGKILL)
            good = process.wait() == 0 and good
        return None if over.is_set() else good

    def settle(self, jobs, files):
        """Notes which functions of the files each test reaches; leaves out what fails without a fault."""
        with tempfile.TemporaryDirectory(dir=self.folder) as work:
            work = pathlib.Path(work)
            traced = {path: work / (path.replace("/", "_") + ".o") for path in self.units
                      if path in files}
            with concurrent.futures.ThreadPoolExecutor(jobs) as pool:
                list(pool.map(lambda path: self.make(self.units[path][0] + [
                    "-finstrument-functions", "-c", "-o", traced[path], ROOT / path]), traced))
            (work / "seen.c").write_text(SEEN, encoding="utf-8")
            self.make(["cc", "-w", "-O2", "-shared", "-fPIC", "-Wl,-soname,libengine.so", "-o",
                       work / "libengine.so", work / "seen.c"] +
                      [traced.get(path, out) for path, (_, out) in self.units.items()] + LIBRARIES)
            names = subprocess.check_output(["nm", str(work / "libengine.so")], text=True)
            names = {int(a, 16): n.split(".")[0] for a, kind, n in
                     (row.split() for row in names.splitlines() if row[0] != " ") if kind in "tT"}

            def one(name):
                mine = pathlib.Path(tempfile.mkdtemp(dir=work))
                (mine / "libengine.so").symlink_to(work / "libengine.so")
                started = time.monotonic()
                good = self.passes(name, self.furnish(mine))
                seen = (mine / "seen").read_text().split() if (mine / "seen").exists() else ()
                return name, good, time.monotonic() - started, {names[int(a, 16)] for a in seen}

            with concurrent.futures.ThreadPoolExecutor(jobs) as pool:
                for name, good, self.timing[name], seen in list(pool.map(one, list(self.tests))):
                    if not good:
                        print("left out, since it fails without any fault: " + name, flush=True)
                    for function in seen if good else ():
                        self.reached[function].add(name)

    def try_out(self, m, text):
        """"no code", "survived", "timeout" or the name of the test that failed."""
        room = m.file.split("/")[1]
        near = [room, "checks", "care"] + [r for r in ROOMS if r != room]
        names = self.reached[m.function] if m.function else set().union(*self.reached.values())
        slow = SLOW * sum(self.timing.values())

        def order(name):
            suite = name.split("/")[0]
            return (self.timing[name] > slow, self.timing[name] > LONG,
                    near.index(suite) if suite in near else len(near), self.timing[name])

        names = [n for n in names if n.startswith(room) or self.timing[n] <= slow]
        with tempfile.TemporaryDirectory(dir=self.folder) as work:
            work = self.furnish(pathlib.Path(work))
            if not self.link(work, m.file, text[:m.start] + m.new + text[m.end:]):
                return "no code"
            names = sorted(names, key=order)
            if self.most and len(names) > self.most:  # of the cases such as are spread over all
                rest = sorted(n for n in names if not isinstance(self.tests[n], dict))
                kept = set(rest[::max(1, len(rest) // self.most)])
                names = [n for n in names if isinstance(self.tests[n], dict) or n in kept]
            for name in names:
                passed = self.passes(name, work)
                if not passed:
                    return name if passed is False else "timeout"
        return "survived"


def report(results, excused):
    """Prints the table and what survived; the number of mutants excused that a test killed."""
    rows = collections.defaultdict(collections.Counter)
    for m, fate in results:
        room = m.file.split("/")[1]
        kind = fate if fate in ("no code", "timeout", "survived") else \
            "own" if fate.split("/")[0] == room else "elsewhere"
        if m in excused and kind == "survived":
            kind = "equivalent"
        rows[room][kind] += 1
        rows["all"][kind] += 1
    for m, fate in sorted(results):
        if fate == "survived" and m not in excused:
            print("survived %s | line %d" % (row(m), m.line))
    for room, n in sorted(rows.items(), key=lambda item: (item[0] == "all", item[0])):
        killed = n["own"] + n["elsewhere"] + n["timeout"]
        print("%s: %d of %d killed, %.1f %% (%d by the room's tests, %d by others, %d by time); "
              "%d equivalent, %d did not compile" % (
                  room, killed, killed + n["survived"],
                  100 * killed / max(1, killed + n["survived"]), n["own"], n["elsewhere"],
                  n["timeout"], n["equivalent"], n["no code"]))
    wrong = [(m, fate) for m, fate in results
             if m in excused and fate not in ("survived", "no code")]
    for m, fate in wrong:
        print("excused, but killed by %s: %s:%d %s" % (fate, m.file, m.line, m.change))
    return len(wrong)


def main():
    args = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    args.add_argument("--files", nargs="*", default=[""], help="parts of paths")
    args.add_argument("--sample", type=int, default=0, help="all where it is not given")
    args.add_argument("--each", type=int, default=0, help="so many of each room")
    args.add_argument("--seed", type=int, default=random.SystemRandom().randrange(10 ** 6))
    args.add_argument("--jobs", type=int, default=os.cpu_count())
    args.add_argument("--most", type=int, default=0, help="of golden cases and situations for a "
                      "mutant, and beside them the tests of the engine's rooms alone; 0: all tests")
    args.add_argument("--build", type=pathlib.Path, help="a folder to keep for later runs")
    args.add_argument("--again", type=argparse.FileType(encoding="utf-8"),
                      help="only what survived in that report")
    args.add_argument("--list", action="store_true", help="only names the mutants")
    args = args.parse_args()
    paths = sorted(p for r in ROOMS for p in (ROOT / "src" / r).glob("*.c") if p.name not in ALONE)
    texts = {str(p.relative_to(ROOT)): p.read_text(encoding="utf-8") for p in paths}
    mutants = [m for file, text in texts.items() for m in mutants_of(file, text)]
    excused = excuses(EQUIVALENT.read_text(encoding="utf-8").splitlines(), mutants)
    chosen = [m for m in mutants if any(word in m.file for word in args.files)]
    if args.again:
        old = {" ".join(line.split()) for line in args.again if line.startswith("survived ")}
        old = {line.removeprefix("survived ").rpartition(" | ")[0] for line in old}
        chosen = [m for m in chosen if " ".join(row(m).split()) in old]
    chosen = of_each_room(chosen, args.each, args.seed) if args.each else \
        sampled(chosen, args.sample or len(chosen), args.seed)
    print("%d mutants in all, %d tried, seed %d" % (len(mutants), len(chosen), args.seed),
          flush=True)
    if args.list:
        for m in chosen:
            print(row(m))
        return 0
    resource.setrlimit(resource.RLIMIT_AS, (4 << 30, 4 << 30))  # a mutant may ask for any amount
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
    with tempfile.TemporaryDirectory() as folder:
        bench = Bench(args.build or pathlib.Path(folder), args.most)
        bench.settle(args.jobs, {m.file for m in chosen})

        def one(m):
            fate = bench.try_out(m, texts[m.file])
            print("%s %s:%d %s" % (fate, m.file, m.line, m.change), file=sys.stderr, flush=True)
            return m, fate

        started = time.monotonic()
        with concurrent.futures.ThreadPoolExecutor(args.jobs) as pool:
            results = list(pool.map(one, chosen))
        print("%.2f s a mutant" % ((time.monotonic() - started) / max(1, len(chosen))))
        return int(report(results, excused) > 0)


if __name__ == "__main__":
    sys.exit(main())
