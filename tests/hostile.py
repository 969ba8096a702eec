#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Files and streams that are not what they should be: one named case each, with the exit code and
a part of the message. Every run has two minutes and, without --sanitized (whose builds reserve
terabytes), 256 MiB of address space. TAP."""
import os
import resource
import subprocess
import sys
import tempfile

PROGRAM = os.path.abspath(sys.argv[1])
READINGS = "--GH 8 --KH 5 --pH 7.2 --temperature 25"
WATER = "readings:\n  - {pH: 7.2, GH: 8 dH, KH: 5 dH}\n"
TIMES = "python3 -c 'import sys; print(int(sys.argv[1]) * sys.argv[2])'"
MEMORY = resource.RLIM_INFINITY if "--sanitized" in sys.argv else 256 << 20



def interrupted(how, signal):
    """A table of which more than a buffer came, then the signal, then the table's end."""
    return (f"mkfifo p; {how} $P rank --batch p -o out 2>/dev/null & c=$!; exec 3>p; {{ echo name,GH,KH; "
            "yes $(printf %0400d 1),9,5 | head -n 200; } >&3; until ls out.* >x 2>&1; do sleep 0.1; "
            f"done; rm x; kill -{signal} $c; sleep 0.2; exec 3>&-; wait $c; echo $? $(ls)")


# Name, shell line ($P is the program), exit code, what stderr (or, after "out:", stdout) holds.
CASES = [
    ("a full device is a failed system", f"$P rank {READINGS} >/dev/full", 3,
     "the answer could not be written"),
    ("a closed standard output as well", f"$P rank {READINGS} >&-", 3,
     "the answer could not be written"),
    ("a closed standard input as well", "$P rank -w - <&-", 3, "check its name and rights"),
    ("-o into a folder that is not there", f"$P rank {READINGS} -o none/x", 3,
     "cannot write none/x"),
    ("-o onto a folder", f"$P rank {READINGS} -o folder", 3, "Is a directory"),
    ("-o through a pipe", f"mkfifo p; head -n 2 p >first & $P rank {READINGS} -o p; "
     "wait; cat first; test -p p", 0, "out:kinds suit"),
    ("-o follows a link and leaves it one", f"ln -s real link; $P rank {READINGS} -o link && "
     "test -L link && cat real", 0, "out:suits"),
    ("an answer larger than files may be is a message", f"(ulimit -f 1; $P rank {READINGS} -f json -o x); "
     "c=$?; ls; exit $c", 3, "ulimit -f"),
    ("the same on standard output", f"(ulimit -f 1; $P rank {READINGS} -f json >x)", 3, "File too large"),
    ("a reading is noted though nobody reads the answer", "$P note water.yaml pH=7.4 --today 2026-03-01 >&-; "
     "c=$?; grep -c 7.4 water.yaml; exit $c", 3, "it is noted in water.yaml"),
    ("interrupted, nothing is left behind", interrupted("env --default-signal=INT", "INT"), 0,
     "out:130 folder p water.yaml\n"),
    ("ended, nothing is left behind", interrupted("exec", "TERM"), 0, "out:143 folder p water.yaml\n"),
    ("an interruption that is ignored stays so", interrupted("exec", "INT"), 0,
     "out:0 folder out p water.yaml\n"),
    ("a reader that goes away is no failure",
     f"{{ $P rank {READINGS} -f json 2>said; echo $? >code; }} | head -c 1; cat code said", 0,
     "out:{0\n"),
    ("a pipe as a water file", "mkfifo p; (cat water.yaml >p &) ; $P rank -w p --temperature 25", 0,
     "out:suits"),
    ("a pipe that a plan names is not waited for", "mkfifo p; echo 'water: p' >plan.yaml; $P check plan.yaml", 2,
     "p: no ordinary file"),
    ("a device that a plan names is not read", "echo 'tank: /dev/zero' >plan.yaml; $P check plan.yaml", 2,
     "/dev/zero: no ordinary file"),
    ("somebody else's link in a folder for all is not followed", "mkdir -m 1777 all; ln -s ../mine all/out; "
     f"chown -h 4321 all/out && $P rank {READINGS} -o all/out; c=$?; ls mine; exit $c", 3,
     "somebody else put it into a folder"),
    ("somebody else's file in a folder for all is not written", "mkdir -m 1777 all; echo x >all/out; "
     f"chmod 666 all/out; chown 4321 all/out && $P rank {READINGS} -o all/out; c=$?; cat all/out; exit $c", 3,
     "somebody else put it into a folder"),
    ("nor somebody else's pipe", "mkdir -m 1777 all; mkfifo -m 666 all/out; chown 4321 all/out && "
     f"$P rank {READINGS} -o all/out", 3, "somebody else put it into a folder"),
    ("one's own link in a folder for all is", "mkdir -m 1777 all; ln -s ../mine all/out; "
     f"$P rank {READINGS} -o all/out; cat mine", 0, "out:suits"),
    ("a link to nothing among the records is said", f"mkdir c; ln -s none c/x.yaml; $P rank {READINGS} "
     "--catalogue c", 0, "a link that leads nowhere"),
    ("records called .yml are read", "mkdir c; echo 'species: x' >c/x.yml; $P find --catalogue c guppy", 2,
     "c/x.yml:1:1"),
    ("records in deep folders are said not to be read", "mkdir -p c/1/2/3/4/5; $P find --catalogue c guppy", 0,
     "c/1/2/3/4/5: a folder below four others"),
    ("UTF-16 of the other order", r"printf '\376\377\0p\0H' >z; $P rank -w z", 2, "save it as UTF-8"),
    ("links in a circle", "ln -s a b; ln -s b a; $P rank -w a", 3, "symbolic links"),
    ("a link to nothing", "ln -s nothing a; $P check ./a", 3, "No such file"),
    ("a folder as a water", "$P rank -w folder", 3, "Is a directory"),
    ("a folder as a plan", "$P check ./folder", 3, "Is a directory"),
    ("a folder as a report", "$P read folder", 3, "Is a directory"),
    ("a folder as a table", "$P rank --batch folder", 3, "Is a directory"),
    ("a file as a catalogue", f"$P rank {READINGS} --catalogue water.yaml", 3, "water.yaml"),
    ("a catalogue that is not there", f"$P rank {READINGS} --catalogue none", 3, "none"),
    ("an unreadable water", "chmod 0 water.yaml; $P rank -w water.yaml", 3, "Permission denied"),
    ("zero bytes in a water", r"printf 'pH: 7\0' >z; $P rank -w z", 2, "z:1:"),
    ("zero bytes in a key", r"printf 'length\0\0\0\0: 120\n' >z; $P due z", 2, "neither a tank"),
    ("zero bytes in a report", r"printf 'pH 7\0' >z; $P read z", 2, "zero bytes"),
    ("zero bytes in a table", r"printf 'name,pH\na,7\0\n' >z; $P rank --batch z", 2, "out:not UTF-8"),
    ("UTF-16 as a report", r"printf '\377\376p\0H\0' >z; $P read z", 2, "UTF-16"),
    ("UTF-16 as a water", r"printf '\377\376p\0H\0' >z; $P rank -w z", 2, "save it as UTF-8"),
    ("CR LF in a water", r"sed 's/$/\r/' water.yaml >z; $P rank -w z --temperature 25", 0,
     "out:suits"),
    ("a byte order mark before a water",
     r"(printf '\357\273\277'; cat water.yaml) >z; $P rank -w z --temperature 25", 0, "out:suits"),
    ("a file name of other bytes", r"n=$(printf 'a\377b'); cp water.yaml $n; "
     "$P rank -w $n --temperature 25", 0, "out:suits"),
    ("a file name with an escape never reaches the screen as one",
     r"n=$(printf 'a\033[31m'); echo x >$n; $P rank -w $n 2>&1 | grep -c '" + "\x1b" + "'", 1,
     "out:0"),
    ("a gigabyte as a water", "truncate -s 1G z; $P rank -w z", 2, "larger than 4 MiB"),
    ("a gigabyte as a plan", "truncate -s 1G z; $P check z", 2, "larger than 4 MiB"),
    ("a gigabyte as a record", "truncate -s 1G z; $P lint z", 2, "larger than 4 MiB"),
    ("a gigabyte as a table", "truncate -s 1G z; $P rank --batch z", 2, "z:1:1"),
    ("a gigabyte as a report", "truncate -s 1G z; $P read z", 2, "zero bytes"),
    ("a gigabyte without a line's end", "head -c 1G /dev/zero | tr '\\0' x | $P rank -w -", 2,
     "larger than 4 MiB"),
    ("a list a hundred thousand deep", f"{TIMES} 100000 '[' >z; $P rank -w z", 2,
     "nested too deep"),
    ("braces a hundred thousand deep", f"{TIMES} 100000 '{{a: ' >z; $P rank -w z", 2,
     "nested too deep"),
    ("blocks a thousand deep", "python3 -c 'for i in range(1000): print(\" \" * i + \"pH:\")' >z; "
     "$P check z", 2, "nested too deep"),
    ("aliases that would become billions", "(echo 'a: &a [1, 1]'; for i in 1 2 3 4 5 6 7 8 9; do "
     "echo \"b$i: &a [*a, *a, *a, *a, *a, *a, *a, *a]\"; done; echo 'readings: *a') >z; "
     "$P rank -w z", 2, "an anchor, alias or tag"),
    ("three hundred thousand keys", "seq -f 'k%.0f: 1' 300000 >z; $P rank -w z", 2,
     "and 299001 more"),
    ("one key a hundred thousand times", "yes 'name: x' | head -n 300000 >z; $P rank -w z", 2,
     "stands twice"),
    ("a number of four million digits", f"(echo 'readings:'; echo '  - pH: |'; printf '      '; "
     f"{TIMES} 4000000 7) >z; $P rank -w z", 2, "readings[1].pH"),
    ("numbers larger than any", "echo 'readings: [{pH: 1e400, GH: 1e400 dH, KH: -1e400 dH}]' >z; "
     "$P rank -w z", 2, "readings[1].KH"),
    ("a pipe among the records", f"mkdir c; mkfifo c/x.yaml; $P rank {READINGS} --catalogue c", 3,
     "c/x.yaml"),
    ("an endless device among the records",
     f"mkdir c; ln -s /dev/zero c/x.yaml; $P rank {READINGS} --catalogue c", 3, "c/x.yaml"),
    ("a folder named as a record", f"mkdir -p c/x.yaml; $P rank {READINGS} --catalogue c", 0,
     "out:suits"),
    ("a folder of records that holds itself",
     f"mkdir c; ln -s . c/c; $P rank {READINGS} --catalogue c", 0, "out:suits"),
    ("an endless device", "$P rank -w /dev/zero", 2, "larger than 4 MiB"),
]


def limits():
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))


def run(line):
    with tempfile.TemporaryDirectory() as folder:
        os.mkdir(os.path.join(folder, "folder"))
        with open(os.path.join(folder, "water.yaml"), "w", encoding="utf-8") as file:
            file.write(WATER)
        env = {"PATH": os.environ["PATH"], "HOME": folder, "LC_ALL": "C.UTF-8", "P": PROGRAM}
        try:
            done = subprocess.run(["sh", "-c", line], cwd=folder, env=env, timeout=120, check=False,
                                  stdin=subprocess.DEVNULL, capture_output=True, preexec_fn=limits)
        except subprocess.TimeoutExpired:
            return None, "", "no end within 120 s"
        left = [name for name in os.listdir(folder) if name.startswith(".")]
        err = done.stderr.decode(errors="replace") + "".join(f"left behind: {n}\n" for n in left)
        return (99 if left else done.returncode), done.stdout.decode(errors="replace"), err


def main():
    print(f"1..{len(CASES)}")
    failed = 0
    for at, (name, line, code, part) in enumerate(CASES, 1):
        if "chmod 0" in line and os.geteuid() == 0 or "chown" in line and os.geteuid() != 0:
            print(f"ok {at} - {name} # SKIP {'root reads everything' if 'chmod 0' in line else 'only root can'}")
            continue
        got, out, err = run(line)
        held = part[4:] in out if part.startswith("out:") else part in err
        good = got == code and held
        print(f"{'ok' if good else 'not ok'} {at} - {name}")
        if not good:
            failed += 1
            print(f"# exit {got}, wanted {code} and {part!r}; stderr: {err[:300]!r}")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
