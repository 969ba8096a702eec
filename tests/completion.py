#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""What three shells complete, typed on terminals: names of anybody's records are data, and never run.

Usage: completion.py FOLDER [--names N]. FOLDER has the completions as the build wrote them. TAP: in
bash, zsh and fish, each on a terminal of its own, N hostile names are completed and the lines are
entered; what the shells ask is a stand-in that offers those names as no catalogue would, since the
loader refuses them (tests/cli/cases/reader). No file appears, no command runs, and of the harmless
names between them every one is completed. With --program the program itself is asked: what is typed
and what becomes of it are the rows of TYPED.
"""
import argparse
import os
import pathlib
import pty
import random
import select
import shutil
import sys
import tempfile
import time

PAYLOADS = ["$(touch RAN)", "`touch RAN`", ";touch RAN;", "|touch RAN", "&touch RAN&", ">RAN", "$RAN>RAN",
            "\"$(touch RAN)\"", "'$(touch RAN)'", "';touch RAN;'", "\";touch RAN;\"", "\\$(touch RAN)",
            "\\`touch RAN`", "${x:=$(touch RAN)}", "$((x[$(touch RAN)]))", "<(touch RAN)", "(touch RAN)",
            "*(e:touch RAN:)", "{a,$(touch RAN)}", "!touch RAN", "^a^$(touch RAN)", "~/$(touch RAN)",
            "x=$(touch RAN)", "[$(touch RAN)]", "#$(touch RAN)", "-o RAN", "\x1b]0;$(touch RAN)\x07",
            "\x15touch RAN\r", "\r touch RAN", "a\ttouch RAN", "%s$(touch RAN)", "\\\n$(touch RAN)"]
SHELLS = {
    "bash": (["bash", "--norc", "--noprofile", "-i"],
             "bind 'set completion-query-items 0'; bind 'set page-completions off'; "
             "source {0}/tapshoal.bash\n"),
    "zsh": (["zsh", "-f", "-i"],
            "fpath=({0} $fpath); autoload -Uz compinit; compinit -u -D; LISTMAX=9999\n"),
    "fish": (["fish", "--no-config", "-i"], "source {0}/tapshoal.fish\n"),
}
# Offers the names, and counts its calls; with any other word it notes what it was asked about.
STAND_IN = """#!/bin/sh
if [ "$1" = complete ]; then cat "{names}"; echo >>"{calls}"; else printf '%s\\n' "$*" >>"{asked}"; fi
"""
# Asks the program, and notes every other call, a word in brackets.
BESIDE = """#!/bin/sh
if [ "$1" = complete ]; then exec "{program}" "$@"; fi
{{ for word; do printf '[%s]' "$word"; done; echo; }} >>"{asked}"
"""
# A line as far as it is typed, and the words of the call that it becomes; {TAB} is the key.
TYPED = [
    ("ran{TAB}--GH 5", ["rank", "--GH", "5"]),
    ("rank --temperat{TAB}25", ["rank", "--temperature", "25"]),
    ("rank --water-c{TAB}", ["rank", "--water-c"]),  # of other commands
    ("check --water-c{TAB}none", ["check", "--water-change", "none"]),
    ("rank -f cs{TAB}", ["rank", "-f", "csv"]),
    ("check -f cs{TAB}", ["check", "-f", "cs"]),  # check writes none
    ("rank --format=li{TAB}", ["rank", "--format=lines"]),
    ("propose --theme black{TAB}", ["propose", "--theme", "blackwater"]),
    ("find --swims bot{TAB}", ["find", "--swims", "bottom"]),
    ("why \"neon t{TAB}", ["why", "neon tetra"]),
    ("why neon\\ t{TAB}", ["why", "neon tetra"]),
    ("why \"Paracheirodon inn{TAB}", ["why", "Paracheirodon innesi"]),
    ("check \"10 neon t{TAB}", ["check", "10 neon tetra"]),
    ("remake --for \"honey gour{TAB}", ["remake", "--for", "honey gourami"]),
    ("propose -t @cella{TAB}", ["propose", "-t", "@cellar"]),
    ("water @sample/kitch{TAB}", ["water", "@sample/kitchen-tap"]),
    ("drift my-pl{TAB}", ["drift", "my-plan.yaml"]),
    ("why my-pl{TAB}", ["why", "my-pl"]),  # no files where animals go
    ("rank --catalogue my-f{TAB}", ["rank", "--catalogue", "my-folder"]),
    ("help ra{TAB}", ["help", "rank"]),
    ("config dec{TAB}comma", ["config", "decimal", "comma"]),
    ("config decimal com{TAB}", ["config", "decimal", "comma"]),
]


def hostile(count, chance):
    names = []
    for number in range(count):
        payload = chance.choice(PAYLOADS).replace("RAN", "ran%d" % number)
        if chance.random() < 0.5:
            payload = payload.replace(" ", chance.choice(["${IFS}", "\t", " "]))
        names.append("Hostis%04d %s%s" % (number, "".join(
            chance.choice("ab $`'\"\\;&|<>(){}[]*?!~#") for _ in range(chance.randrange(4))), payload))
    return names


class Shell:
    """An interactive shell on a terminal of its own."""

    def __init__(self, words, home, bin_folder, here):
        environment = {"PATH": "%s:%s" % (bin_folder, os.environ["PATH"]), "HOME": str(home),
                       "TERM": "dumb", "LC_ALL": "C.UTF-8", "PS1": "> ", "HISTFILE": "",
                       "XDG_CONFIG_HOME": str(home), "XDG_DATA_HOME": str(home),
                       "fish_history": "", "XDG_CACHE_HOME": str(home)}
        self.pid, self.terminal = pty.fork()
        if self.pid == 0:
            os.chdir(here)
            os.execvpe(words[0], words, environment)

    def read(self, quiet, most=5.0):
        """What came until nothing does for a while."""
        text = b""
        end = time.monotonic() + most
        while time.monotonic() < end and select.select([self.terminal], [], [], quiet)[0]:
            try:
                piece = os.read(self.terminal, 65536)
            except OSError:
                break
            if not piece:
                break
            text += piece
        return text.decode("utf-8", "replace")

    def until(self, mark, most=60.0):
        text, end = "", time.monotonic() + most
        while mark not in text and time.monotonic() < end:
            text += self.read(0.05, 1)
        return mark in text

    def type(self, text):
        os.write(self.terminal, text.encode())

    def close(self):
        try:
            os.kill(self.pid, 9)
        except ProcessLookupError:
            pass
        os.close(self.terminal)
        os.waitpid(self.pid, 0)


def run(shell, folder, names, harmless):
    """What is wrong."""
    work = pathlib.Path(tempfile.mkdtemp())
    here, home, bin_folder = work / "here", work / "home", work / "bin"
    for path in (here, home, bin_folder):
        path.mkdir()
    (work / "names").write_text("".join(n + "\tan animal\n" for n in names + harmless), encoding="utf-8")
    (bin_folder / "tapshoal").write_text(STAND_IN.format(names=work / "names", asked=work / "asked",
                                                          calls=work / "calls"), encoding="utf-8")
    (bin_folder / "tapshoal").chmod(0o755)
    words, setup = SHELLS[shell]
    terminal = Shell(words, home, bin_folder, here)
    wrong = []
    try:
        terminal.type(setup.format(folder) + "echo rea''dy\r")
        terminal.until("\nready")
        terminal.type("tapshoal why Host\t\t")
        terminal.read(0.3)
        terminal.type("\x03")
        terminal.read(0.1)
        for name in names:
            start = name.split(" ")[0]
            terminal.type("tapshoal why %s\t" % start)
            terminal.read(0.03, 1)
            terminal.type("\r")
            terminal.read(0.02, 1)
        for name in harmless:
            terminal.type("tapshoal why %s\t" % name.split(" ")[0])
            terminal.until("exemplar")
            terminal.type("\r")
        terminal.type("tapshoal done; echo e''nd\r")
        terminal.until("\nend")
    finally:
        terminal.close()
    wrong += ["%s appeared" % p.name for p in here.iterdir()]
    wrong += ["%s appeared" % p.name for p in work.iterdir()
              if p.name not in ("here", "home", "bin", "names", "asked", "calls")]
    asked = (work / "asked").read_text(encoding="utf-8", errors="replace") if (
        work / "asked").exists() else ""
    if "done" not in asked:
        wrong.append("the shell did not come to its end")
    calls = (work / "calls").read_text(encoding="utf-8").count("\n") if (
        work / "calls").exists() else 0
    if calls < len(names):
        wrong.append("only %d times was it asked for names" % calls)
    missing = [n for n in harmless if "why %s" % n not in asked]
    wrong += ["'%s' is not completed" % n for n in missing]
    shutil.rmtree(work)
    return wrong


def completed(shell, setup_of, program, most=3.0):
    """What is not completed as the rows say, each line on one terminal."""
    work = pathlib.Path(tempfile.mkdtemp())
    here, home, bin_folder = work / "here", work / "home", work / "bin"
    for path in (here, home / "tapshoal" / "kept", bin_folder, here / "my-folder"):
        path.mkdir(parents=True)
    for path in (here / "my-plan.yaml", home / "tapshoal" / "kept" / "cellar.yaml"):
        path.write_text("tank: {length: 60 cm, width: 30 cm, height: 30 cm}\n", encoding="utf-8")
    (home / "tapshoal" / "kept" / "cellar.yaml").write_text(
        "length: 60 cm\nwidth: 30 cm\nheight: 30 cm\n", encoding="utf-8")
    asked = work / "asked"
    asked.write_text("", encoding="utf-8")
    (bin_folder / "tapshoal").write_text(BESIDE.format(program=program, asked=asked), encoding="utf-8")
    (bin_folder / "tapshoal").chmod(0o755)
    terminal, wrong = Shell(SHELLS[shell][0], home, bin_folder, here), []
    try:
        terminal.type(setup_of + "echo rea''dy\r")
        terminal.until("\nready")
        for line, want in TYPED:
            before = asked.read_text(encoding="utf-8")
            start, _, rest = line.partition("{TAB}")
            terminal.type("tapshoal " + start + "\t" + rest + "\r")
            # A quote that the shell has not closed by itself is closed by nobody else.
            for more in ("", "\"\r"):
                if asked.read_text(encoding="utf-8") != before:
                    break
                terminal.type(more)
                end = time.monotonic() + most
                while asked.read_text(encoding="utf-8") == before and time.monotonic() < end:
                    terminal.read(0.02, 0.02)
            terminal.read(0.15)  # until the next line is waited for
            got = asked.read_text(encoding="utf-8")[len(before):].strip().replace("/]", "]")
            if got != "".join("[%s]" % word for word in want):
                wrong.append("%s: %s becomes %s" % (shell, line, got or "nothing"))
                terminal.type("\x03")
                terminal.read(0.2, 5)
    finally:
        terminal.close()
    shutil.rmtree(work)
    return wrong


def main(argv):
    args = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    args.add_argument("folder", type=lambda path: pathlib.Path(path).resolve())
    args.add_argument("--names", type=int, default=40)
    args.add_argument("--seed", type=int, default=1)
    args.add_argument("--program", type=lambda path: pathlib.Path(path).resolve())
    args = args.parse_args(argv)
    names = hostile(args.names, random.Random(args.seed))
    harmless = ["Mitis%s exemplar" % c for c in "abc"]
    print("1..%d" % (len(SHELLS) * (2 if args.program else 1)))
    bad = False
    for number, shell in enumerate(SHELLS, 1):
        title = "%s: %d hostile names are completed, nothing runs" % (shell, len(names))
        if not shutil.which(shell):
            print("ok %d - %s # SKIP %s is not installed" % (number, title, shell))
            continue
        wrong = run(shell, args.folder, names, harmless)
        bad = bad or bool(wrong)
        print("%s %d - %s" % ("not ok" if wrong else "ok", number, title), flush=True)
        for line in wrong[:20]:
            print("# %s" % line)
    for number, shell in enumerate(SHELLS if args.program else [], len(SHELLS) + 1):
        title = "%s: %d lines become what is meant" % (shell, len(TYPED))
        if not shutil.which(shell):
            print("ok %d - %s # SKIP %s is not installed" % (number, title, shell))
            continue
        wrong = completed(shell, SHELLS[shell][1].format(args.folder), args.program)
        bad = bad or bool(wrong)
        print("%s %d - %s" % ("not ok" if wrong else "ok", number, title), flush=True)
        for line in wrong:
            print("# %s" % line)
    return int(bad)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
