#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Holds docs/conventions.md: every test it names is there, and what this file is named for is tried,
on a pseudo terminal where the row speaks of one. TAP. Usage: conventions.py PROGRAM"""
import fcntl
import os
import pathlib
import pty
import re
import struct
import subprocess
import sys
import tempfile
import termios
import time

ROOT = pathlib.Path(__file__).resolve().parent.parent
PROGRAM = str(pathlib.Path(sys.argv[1]).resolve())
WATER = ["--GH", "14", "--KH", "9", "--pH", "7.6", "--temperature", "25"]
PLAIN = {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "TERM": "xterm", "TAPSHOAL_NO_CONFIG": "1"}
results = []


def note(name, fine):
    results.append((name, fine))


def on_terminal(*words, **variables):
    """What a terminal is written."""
    child, terminal = pty.fork()
    if not child:
        env = dict(PLAIN, PAGER="cat")
        env.update(variables)
        fcntl.ioctl(1, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
        os.execve(PROGRAM, [PROGRAM, *words], env)
    said = b""
    while True:
        try:
            piece = os.read(terminal, 65536)
        except OSError:
            break
        if not piece:
            break
        said += piece
    os.close(terminal)
    os.waitpid(child, 0)
    return said


def call(*words):
    done = subprocess.run([PROGRAM, *words], stdout=subprocess.PIPE, stderr=subprocess.PIPE, env=PLAIN)
    return done.returncode, done.stdout, done.stderr


table = [line for line in (ROOT / "docs/conventions.md").read_text(encoding="utf-8").splitlines()
         if line.startswith("| ")][2:]
note("the table has rows", len(table) > 15)
for line in table:
    cells = [cell.strip() for cell in line.strip("|").split("|")]
    tests = re.findall(r"`(tests/[^`]+)`", cells[-1])
    note("%s: %s" % (cells[0], cells[-1]),
         len(cells) == 4 and bool(tests) and all((ROOT / test).is_file() for test in tests))

note("a terminal gets colour", b"\x1b[" in on_terminal("rank", *WATER))
note("NO_COLOR: no colour", b"\x1b" not in on_terminal("rank", *WATER, NO_COLOR="1"))
note("an empty NO_COLOR is none", b"\x1b[" in on_terminal("rank", *WATER, NO_COLOR=""))
note("TERM=dumb: no colour", b"\x1b" not in on_terminal("rank", *WATER, TERM="dumb"))
note("a setting: no colour", b"\x1b" not in on_terminal("rank", *WATER, TAPSHOAL_COLOR="never"))
note("--no-color: no colour", b"\x1b" not in on_terminal("rank", *WATER, "--no-color"))
with tempfile.TemporaryDirectory() as folder:
    pager = pathlib.Path(folder) / "pager"
    pager.write_text("#!/bin/sh\necho PAGED; cat >/dev/null\n", encoding="utf-8")
    pager.chmod(0o755)
    note("PAGER gets what is too long", b"PAGED" in on_terminal(
        "rank", *WATER, "--all", PAGER=str(pager)))
    note("PAGER= is none", b"PAGED" not in on_terminal("rank", *WATER, "--all", PAGER=""))
    env = dict(PLAIN, PAGER=str(pager))
    note("a pipe has no pager", b"PAGED" not in subprocess.run(
        [PROGRAM, "rank", *WATER, "--all"], stdout=subprocess.PIPE, env=env).stdout)
for words, code in ((("rank", *WATER), 0), (("why", "neon tetra", "--GH", "30"), 1), (("rank", "--GH", "x"), 2),
                    (("rank", *WATER, "-o", "/nowhere/at/all"), 3)):
    status, out, err = call(*words)
    note("exit %d: %s" % (code, " ".join(words)),
         status == code and bool(out) == (code < 2) and bool(err) == (code > 1))
entries = {lines: len(on_terminal("find", "tetra", TAPSHOAL_LINES=lines).splitlines())
           for lines in ("3", "9", "")}
note("a terminal is shown as many entries as are set", entries["9"] - entries["3"] == 6 and
     entries[""] - entries["9"] == 3)
said = b" ".join(on_terminal("rank", *WATER).split())
for word in ("tolerates", "excluded"):
    note("the rest of a ranking is told in a line each: --only %s" % word,
         b"Which: --only %s." % word.encode() in said)
reader, errors = pty.openpty()
with subprocess.Popen([PROGRAM, "rank", "--temperature", "25", "--batch", "-"], stdin=subprocess.PIPE,
                      stdout=subprocess.DEVNULL, stderr=errors, env=PLAIN) as child:
    child.stdin.write(b"GH dH,KH dH\n")
    end = time.monotonic() + 3
    while time.monotonic() < end:
        child.stdin.write(b"8,5\n" * 20)
        child.stdin.flush()
        time.sleep(0.05)
    child.stdin.close()
os.close(errors)
said = b""
try:
    while True:  # a terminal hands over 4,095 bytes at most at once
        said += os.read(reader, 65536)
except OSError:  # nobody writes any more
    pass
note("what takes over a second says how far it is", re.search(rb"\r\d+ waters", said) is not None)
note("and takes that line away", said.endswith(b" \r"))
for word in ("--help", "-h", "--version", "-V"):
    status, out, err = call(word)
    note("%s is on standard output" % word, status == 0 and bool(out) and not err)

print("1..%d" % len(results))
for number, (name, fine) in enumerate(results, 1):
    print("%s %d - %s" % ("ok" if fine else "not ok", number, name))
sys.exit(not all(fine for _, fine in results))
