#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""A year of three invented tanks, played with the program: one good, one that slides, one that moves.

Usage: year.py PROGRAM [--screens FOLDER]. TAP. Each tank lives in a simulation of its own, a day at a
time, with figures that are not the program's (10 mg/L of nitrate out of feed take 0.45 dH of KH, a
change of a share f leaves 1 - f); its keeper reads it with kits, in whole drops and steps of colour,
and types `keep`, `note`, `check`, `due`, `drift` and `log` with --today. What is asserted: every
answer agrees with the log and with the others, the truth lies in the bands, the sliding tank is found
at least eight weeks before its buffer is gone, and the good one is left alone. --screens writes what
the keeper sees, once in four weeks.
"""
import argparse
import datetime
import json
import math
import os
import pathlib
import random
import re
import subprocess
import tempfile

FIRST = datetime.date(2025, 12, 1)
WEEKS = 52
AHEAD = 28
DAY_OFF_MOST = 42
KH_PER_NO3 = 0.045
FLOOR = 1.1
ASKED = ("check", "due", "drift", "log")

TANKS = {
    "living-room": {
        "size": (80, 35, 45), "stock": [("cherry barb", 10), ("bronze cory", 6)], "temperature": 25,
        "tap": (8, 6, 5), "level": (8, 5, 25), "a_week": 7.0, "change": (25, 7),
        "head": "An invented tank, kept well."},
    "bedroom": {
        "size": (60, 30, 35), "stock": [("guppy", 9)], "temperature": 24,
        "tap": (11, 5.5, 5), "level": (11, 4.6, 20), "a_week": 6.0, "change": (25, 7),
        "head": "An invented tank whose keeper changes less and less."},
    "study": {
        "size": (80, 35, 40), "stock": [("neon tetra", 14)], "temperature": 24,
        "tap": (4, 3, 5), "level": (4, 2.5, 15), "a_week": 3.0, "change": (30, 7),
        "head": "An invented tank that moves house in the middle of the year.",
        "new_tap": (17, 11, 15)},
}
MOVED = 26  # weeks


class Tank:
    """The truth, and what its keeper writes."""

    def __init__(self, house, name):
        self.house, self.name, self.row = house, name, TANKS[name]
        self.random = random.Random(name)
        self.level = list(self.row["level"])
        self.tap = self.row["tap"]
        length, width, height = self.row["size"]
        self.litres = 0.85 * length * width * height / 1000
        self.truth = []  # of each day: GH, KH, nitrate
        self.read_on = []
        self.events = 0
        self.kit = 1 + 0.1 * self.random.uniform(-1, 1)

    def file(self):
        length, width, height = self.row["size"]
        percent, days = self.row["change"]
        lines = ["# " + self.row["head"], "name: %s (invented)" % self.name.replace("-", " "),
                 self.water_line(FIRST), "tank:",
                 "  size: %dx%dx%d" % (length, width, height),
                 "  temperature: %d C" % self.row["temperature"], "  filter: mature", "  cover: yes",
                 "  plants: some", "  feeding: ordinary", "  top_up: pure",
                 "  water_change: %d %% every %d days" % (percent, days), "stock:"]
        lines += ["  - {species: %s, count: %d, since: \"2025-01-10\"}" % animal
                  for animal in self.row["stock"]]
        return "\n".join(lines) + "\n"

    def water_line(self, day):
        gh, kh, no3 = self.tap
        return ("water: {kind: tap, readings: [{date: \"%s\", method: drops, GH: %d, KH: %d, "
                "NO3: %d mg/L NO3}]}" % (day, math.ceil(gh), math.ceil(kh), round(no3)))

    def live(self):
        no3 = self.row["a_week"] / 7
        self.level[1] = max(0, self.level[1] - KH_PER_NO3 * no3)
        self.level[2] += no3

    def change(self, percent):
        for i in range(3):
            self.level[i] += percent / 100 * (self.tap[i] - self.level[i])

    def readings(self, week):
        """As kits tell it: drops that were counted, a colour between two on the card."""
        gh, kh, no3 = self.level
        colour = max(0, 5 * round(no3 * self.kit * (1 + 0.1 * self.random.uniform(-1, 1)) / 5))
        words = ["GH=%d" % math.ceil(gh), "KH=%d" % math.ceil(kh), "NO3=%d mg/L NO3" % colour,
                 "pH=%.1f" % (7.6 + 0.5 * math.log10(max(kh, 0.1) / 5)), "method=drops"]
        if week % 4 == 0:
            words += ["ammonia=<0.05 mg/L N", "NO2=<0.02 mg/L NO2"]
        return words


def percent_of(tank, week):
    """What this keeper changes in this week."""
    if tank.name != "bedroom" or week < 12:
        return tank.row["change"][0]
    return 15 if week % 3 == 0 else 0


def events_of(tank, week):
    """Things that happen, beside changes of water."""
    return {("living-room", 9): ["1 cory died"],
            ("living-room", 22): ["cleaned the filter"],
            ("living-room", 30): ["power cut 3 h"],
            ("bedroom", 16): ["remark: new lamp"],
            ("study", MOVED): ["moved house"]}.get((tank.name, week), [])


class House:
    def __init__(self, program, screens):
        self.program, self.screens = os.path.abspath(program), screens
        self.path = pathlib.Path(tempfile.mkdtemp())
        self.environment = {"PATH": os.environ["PATH"], "HOME": str(self.path), "LC_ALL": "C.UTF-8",
                            "XDG_CONFIG_HOME": str(self.path / "config"), "COLUMNS": "80"}
        self.wrong = []

    def run(self, words, today, most=1):
        done = subprocess.run([self.program, *words, "--today", str(today)], cwd=self.path,
                              env=self.environment, capture_output=True, text=True, check=False,
                              stdin=subprocess.DEVNULL)
        if done.returncode > most:
            self.wrong.append("%s %s: exit %d, %s" % (today, " ".join(words), done.returncode,
                                                      done.stderr.strip()))
        return done.stdout

    def ask(self, tank, today):
        return {what: json.loads(self.run([what, "@" + tank.name, "-f", "json"], today) or "{}")
                for what in ASKED}

    def screen(self, tank, today, week):
        if not self.screens:
            return
        folder = pathlib.Path(self.screens) / tank.name
        folder.mkdir(parents=True, exist_ok=True)
        for what in ASKED:
            text = self.run([what, "@" + tank.name], today)
            (folder / ("week-%02d-%s.txt" % (week, what))).write_text(
                "$ tapshoal %s @%s     # on %s\n%s" % (what, tank.name, today, text),
                encoding="utf-8")


def week_of(house, tank, week, seen):
    """Seven days, their notes on the last, and every second week all the questions."""
    for _ in range(7):
        tank.truth.append(tuple(tank.level))
        tank.live()
    today = FIRST + datetime.timedelta(days=len(tank.truth))
    words = events_of(tank, week)
    tank.events += len(words)
    if "moved house" in words:
        tank.tap = tank.row["new_tap"]
        kept = house.path / "config/tapshoal/kept" / (tank.name + ".yaml")
        text = kept.read_text(encoding="utf-8")
        kept.write_text(re.sub(r"(?m)^water:.*$", tank.water_line(today), text), encoding="utf-8")
    if week % 2 == 0:
        words = tank.readings(week) + words
        tank.read_on.append(today)
    if words:
        house.run(["note", "@" + tank.name, *words], today, 0)
    if week % 2 == 0:
        seen.append((week, today, tuple(tank.level), house.ask(tank, today)))
    if week % 4 == 0:
        house.screen(tank, today, week)
    percent = percent_of(tank, week)
    if percent:
        house.run(["note", "@" + tank.name,
                   "changed %d L" % round(percent / 100 * tank.litres)], today, 0)
        tank.events += 1
        tank.change(percent)


def agrees(tank, seen):
    """What of one day's answers is not the same in all, or not in the log."""
    for week, today, level, a in seen:
        where = "%s, week %d" % (tank.name, week)
        check, due, drift, log = (a[what] for what in ASKED)
        for what in ("check", "due", "log"):
            if a[what]["learned"] != drift["learned"]:
                yield "%s: %s has learned something else than drift" % (where, what)
        noted = [d for d in tank.read_on if d <= today]
        if sum(line["kh_dh"] is not None for line in log["lines"]) != len(noted):
            yield "%s: log has not the %d readings" % (where, len(noted))
        newest = [line for line in log["lines"] if line["kh_dh"] is not None][-1]
        for key, row in (("kh_dh", "kh"), ("gh_dh", "gh"), ("no3_mg_l", "no3")):
            now = next(n for n in drift["now"] if n["parameter"] == row)
            if abs(now["value"] - newest[key]) > 0.01 or now["age_days"] != 0:
                yield "%s: drift starts from %s %s, read was %s" % (where, row, now, newest[key])
        gone = drift["buffer_gone_day"]
        if gone != (check["load"]["buffer_days"] or None) and check["load"]["buffer_days"] != 0:
            yield "%s: buffer %s days in drift, %s in check" % (
                where, gone, check["load"]["buffer_days"])
        steady = drift["steady_closed_form"]["no3_mg_l"]["before_change"]
        if steady and abs(steady - check["load"]["no3_steady_mg_l"]) > 0.06:
            yield "%s: nitrate settles at %s in drift, %s in check" % (
                where, steady, check["load"]["no3_steady_mg_l"])
        limits = [(limit["parameter"], limit["day"]) for limit in drift["limits"]
                  if not limit["mild"] and limit["day"] > 0]
        for alarm in due["alarms"]:
            if (alarm["parameter"], alarm["in_days"]) not in limits:
                yield "%s: due warns of %s, drift has %s" % (where, alarm, limits)
        yield from says_one_thing(where, check, due, drift, log)
        routine = drift["learned"]["routine_says"]
        if routine and "By the log you change" not in routine:
            yield "%s: %s" % (where, routine)


def says_one_thing(where, check, due, drift, log):
    """What four answers of one day say of changes, tests, pH and what was to be expected."""
    change = due["change"]
    routine = change and change["reason"] == "routine"
    if routine and drift["days"][0]["change_due"] != (change["in_days"] <= 0):
        yield "%s: due changes in %s days, drift otherwise" % (where, change["in_days"])
    if routine and change["in_days"] <= 0 and check["headline"].startswith("Leave the water") and (
            change["amount"] not in check["headline"]):
        yield "%s: %s, and due: %s" % (where, check["headline"], change["says"])
    ph = [line["ph"] for line in log["lines"] if line["ph"] is not None][-1]
    if abs(drift["days"][0]["ph"] - ph) > 0.051:
        yield "%s: pH %s was read, drift begins at %s" % (where, ph, drift["days"][0]["ph"])
    names = {"gh": "GH", "kh": "KH", "no3": "NO3"}
    for one in drift["learned"]["expected"]:
        value = next(v for v in log["values"] if v["name"] == names[one["parameter"]])
        if value["expected"] != [one["low"], one["high"]]:
            yield "%s: two bands of one reading: %s, %s" % (where, value["expected"], one)
    for value in log["values"]:
        if value["outside"] != (value["likes"] is not None and not (
                value["likes"][0] <= value["last"] <= value["likes"][1])):
            yield "%s: %s is not marked as it should be" % (where, value)


def in_bands(tank, seen):
    """Of how many forecasts the truth four weeks on lies in the band, where the routine held."""
    held, count, missed = 0, 0, []
    for week, today, _, a in seen:
        if week < 8 or week + AHEAD // 7 >= WEEKS or a["drift"]["learned"]["routine_says"]:
            continue
        if tank.name == "study" and MOVED - 4 <= week <= MOVED:
            continue
        if tank.name == "bedroom" and 8 <= week < 24:
            continue
        last = a["drift"]["days"][AHEAD]
        truth = tank.truth[(today - FIRST).days + AHEAD - 1]
        for i, key, less in ((0, "gh_band_dh", 1), (1, "kh_band_dh", 1), (2, "no3_band_mg_l", 0)):
            count += 1
            low, high = last[key]
            good = low - less - 0.3 <= truth[i] <= high + 0.3
            held += good
            if not good:
                missed.append("week %d %s %.1f not in %s" % (week, key, truth[i], last[key]))
    return held, count, missed


def gone_on(tank):
    """The day on which the buffer is truly gone; None: it is not."""
    return next((FIRST + datetime.timedelta(days=i) for i, level in enumerate(tank.truth)
                 if level[1] < FLOOR), None)


def found_on(seen, gone):
    """From when on every drift before that day says by when the buffer goes."""
    found = None
    for _, today, _, a in reversed([day for day in seen if gone and day[1] < gone]):
        if a["drift"]["buffer_gone_day"] is None and a["drift"]["now"][1]["value"] >= FLOOR:
            break
        found = today
    return found


def says(seen, what, words):
    return [week for week, _, _, a in seen if re.search(words, json.dumps(a[what]))]


def cases(house):
    tanks = {name: Tank(house, name) for name in TANKS}
    seen = {name: [] for name in TANKS}
    for name, tank in tanks.items():
        (house.path / "plan.yaml").write_text(tank.file(), encoding="utf-8")
        house.run(["keep", "@" + name, "plan.yaml"], FIRST, 0)
    for week in range(WEEKS):
        for name, tank in tanks.items():
            week_of(house, tank, week, seen[name])
    yield "every call is answered", house.wrong
    for name, tank in tanks.items():
        yield "%s: every answer agrees with the log and the others" % name, list(
            agrees(tank, seen[name]))
        held, count, missed = in_bands(tank, seen[name])
        print("# %s: %d of %d truths of four weeks ahead in their band" % (name, held, count))
        yield "%s: at least 9 in 10 of them" % name, [] if count and held >= 0.9 * count else missed
    yield from good_one(tanks["living-room"], seen["living-room"])
    yield from sliding_one(tanks["bedroom"], seen["bedroom"])
    yield from moved_one(seen["study"])


def good_one(tank, seen):
    told = [week for week, _, _, a in seen if a["drift"]["learned"]["alarms"]]
    yield "the good tank raises no alarm about a reading", ["week %d" % w for w in told]
    wrong = [("week %d: " % week) + a["check"]["headline"] for week, _, _, a in seen
             if week >= 10 and a["check"]["kind"] not in ("well", "yes") and week not in (10, 30)]
    yield "and passes its check, but for the weeks after a death and a power cut", wrong
    wrong = ["week %d: %s" % (week, a["drift"]["says"]) for week, _, _, a in seen
             if week >= 8 and "keeps the water" not in a["drift"]["says"]]
    yield "its routine keeps the water", wrong
    wrong = ["week %d: %s" % (week, test["says"]) for week, _, _, a in seen for test in a["due"]["tests"]
             if week >= 8 and week != 10 and test["where"] == "tank" and test["every_days"] < 28]
    yield "it asks for monthly tests at most", wrong
    wrong = [("week %d: " % week) + a["log"]["headline"] for week, _, _, a in seen
             if week >= 8 and not a["log"]["headline"].startswith("Steady")]
    yield "and its log is steady", wrong
    load = [a["drift"]["learned"]["lines"][0] for week, _, _, a in seen if week >= 12]
    good = [line for line in load if line["low"] <= tank.row["a_week"] <= line["high"]]
    print("# the good tank's nitrate, truly %.1f mg/L a week: in %d of %d intervals, the last %s to %s" % (
        tank.row["a_week"], len(good), len(load), load[-1]["low"], load[-1]["high"]))
    yield "what its animals make is learned", [] if len(good) >= 0.9 * len(load) else [str(load)]


def sliding_one(tank, seen):
    gone = gone_on(tank)
    found = found_on(seen, gone)
    print("# the sliding tank: buffer gone on %s, found on %s, %s weeks before" % (
        gone, found, (gone - found).days / 7 if gone and found else "-"))
    yield "the sliding tank is found eight weeks before its buffer is gone", [] if (
        gone and found and (gone - found).days >= 56) else ["gone %s, found %s" % (gone, found)]
    weeks = says(seen, "drift", "By the log you change")
    print("# its keeper's routine is seen to be another from week %s on" % (weeks or ["-"])[0])
    yield "it is seen that less is changed than the file says", [] if weeks else ["never"]
    last = [a for _, today, _, a in seen if gone and 0 < (gone - today).days <= 56]
    wrong = [a["drift"]["says"] for a in last if not re.search(
        "[Bb]uffer|KH|nitrate", a["drift"]["says"])]
    yield "in its last eight weeks the first line of drift is of it", wrong or (
        [] if last else ["no such weeks"])
    errors = []
    for week, today, _, a in seen:
        early, late = a["drift"]["buffer_gone_day_early"], a["drift"]["buffer_gone_day_late"]
        if gone and found and found <= today < gone and (early is None or not (
                early - 14 <= (gone - today).days <= (late or 9999) + 14)):
            errors.append("week %d: %d days, told %s to %s" % (week, (gone - today).days, early, late))
    yield "the true day lies between the earliest and the latest that is told", errors
    wrong = ["week %d: in %s days, truly %d" % (week, a["drift"]["buffer_gone_day"],
                                                (gone - today).days)
             for week, today, _, a in seen if week >= 24 and gone and today < gone and abs(
                 (a["drift"]["buffer_gone_day"] or 0) - (gone - today).days) > DAY_OFF_MOST]
    yield "the likeliest day is six weeks off at the most", wrong
    wrong = ["week %d: %s" % (week, a["drift"]["says"]) for week, _, _, a in seen
             if week >= 16 and "keeps the water" in a["drift"]["says"]]
    yield "four weeks after its keeper changed less the routine is said to keep it no more", wrong
    wrong = ["week %d: no way back" % week for week, _, _, a in seen if week >= 16 and not re.search(
        "Go back to 13 L", str(a["check"]["learned"]["back_says"]))]
    yield "and the way back is told in litres", wrong


def moved_one(seen):
    after = [(week, a) for week, _, _, a in seen if week >= MOVED]
    wrong = [] if "GH" in after[0][1]["drift"]["says"] else [after[0][1]["drift"]["says"]]
    yield "the day after the move drift says where GH goes", wrong
    told = [week for week, a in after if re.search("neon", json.dumps(a["check"]))
            and a["check"]["kind"] not in ("well", "yes")]
    yield "and check that the neons do not live in it", [] if told else ["never"]
    wrong = ["week %d: %s" % (week, a["check"]["headline"]) for week, a in after
             if week >= MOVED + 2 and "neon" not in a["check"]["headline"]]
    yield "no answer after that says that they live well in it", wrong
    wrong = ["week %d: %s" % (week, a["log"]["headline"]) for week, a in after
             if week >= MOVED + 10 and not re.search("^Steady", str(a["log"]["next"]))]
    yield "ten weeks later its log says that the rise is over", wrong
    late = [("week %d: " % week) + str(a["drift"]["learned"]["thin"]) for week, a in after
            if week >= MOVED + 6 and not a["drift"]["learned"]["lines"]]
    yield "six weeks later its log teaches again, by the new water alone", late


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("program")
    parser.add_argument("--screens")
    arguments = parser.parse_args()
    house = House(arguments.program, arguments.screens)
    number = 0
    for number, (name, wrong) in enumerate(cases(house), 1):
        print("%s %d - %s" % ("not ok" if wrong else "ok", number, name))
        for line in wrong[:6]:
            print("# " + line)
    print("1..%d" % number)


if __name__ == "__main__":
    main()
