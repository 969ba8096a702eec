#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Calendars of `due -f ics` under a strict reader of RFC 5545, section by section. TAP.

Usage: ics.py PROGRAM [--outside]. The reader here was written from the text of the standard (IETF,
RFC 5545, "Internet Calendaring and Scheduling Core Object Specification", 2009) and shares nothing
with the writer; it must also refuse a row of broken calendars, so that it can fail. --outside adds
Debian's general-purpose reader, python3-icalendar; without it that is one counted skip.
"""
import datetime
import os
import pathlib
import re
import subprocess
import sys
import tempfile

PROGRAM = os.path.abspath(sys.argv[1])
TODAY = "2026-03-10"
READING = "pH: 7.6, GH: 9, KH: 6, NO3: 20 mg/L NO3, NO2: 0 mg/L NO2, ammonia: 0 mg/L N"
TANK = "name: \"%s\"\nvolume: 100 L\nfilter: mature\nreadings:\n  - {date: \"%s\", %s}\n"
ROUTINE = "water_change: 30 % every 7 days\n"
PLAN = """name: a re-making (invented)
water:
  readings: [{date: "2026-03-01", GH: 14, KH: 9, pH: 7.8}]
tank:
  volume: 100 L
  temperature: 25 C
  filter: mature
  readings: [{date: "2026-03-10", pH: 7.8, GH: 14, KH: 9, NO2: 0 mg/L NO2, ammonia: 0 mg/L N}]
stock:
  - {species: guppy, count: 6, since: "2025-01-01"}
"""
# 3.1: name, parameters, value; a value has no control but TAB (VALUE-CHAR).
LINE = re.compile(r'([A-Za-z0-9-]+)((?:;[A-Za-z0-9-]+=(?:[^\x00-\x08\x0a-\x1f\x7f";:,]*|"[^"]*"))*)'
                  r":([^\x00-\x08\x0a-\x1f\x7f]*)")
# 3.6.1: what a VEVENT may hold once; these are all that this writer has a use for.
ONCE = {"UID", "DTSTAMP", "DTSTART", "TRANSP", "SUMMARY", "DESCRIPTION", "RRULE"}
# 3.6.6: an alarm that is shown has these, each once.
ALARM = {"ACTION", "DESCRIPTION", "TRIGGER"}
results = []


def unfold(data):
    """3.1: logical lines. Every line ends in CRLF, has 75 octets at most and whole characters."""
    if not data.endswith(b"\r\n"):
        raise ValueError("3.1: the last line does not end in CRLF")
    lines = []
    for raw in data[:-2].split(b"\r\n"):
        if b"\r" in raw or b"\n" in raw:
            raise ValueError("3.1: a bare CR or LF")
        if len(raw) > 75:
            raise ValueError("3.1: a line of %d octets" % len(raw))
        text = raw.decode("utf-8")  # 3.1.4; a split sequence raises
        if text.startswith((" ", "\t")) and lines:
            lines[-1] += text[1:]
        elif not text.strip():
            raise ValueError("3.1: an empty line")
        else:
            lines.append(text)
    return lines


def text_of(value):
    """3.3.11: TEXT, unescaped; a bare comma or semicolon, or another escape, is an error."""
    if not re.fullmatch(r"(?:[^\\;,]|\\[\\;,nN])*", value):
        raise ValueError("3.3.11: a text that is not escaped: %s" % value)
    return re.sub(r"\\(.)", lambda m: "\n" if m.group(1) in "nN" else m.group(1), value)


def event_of(rows):
    """3.6.1: one VEVENT as a dict; dates as dates."""
    event = {}
    for name, parameters, value in rows:
        if name not in ONCE or name in event:
            raise ValueError("3.6.1: %s is unknown or stands twice" % name)
        if parameters != (";VALUE=DATE" if name == "DTSTART" else ""):
            raise ValueError("%s with parameters '%s'" % (name, parameters))
        event[name] = value
    missing = {"UID", "DTSTAMP", "DTSTART"} - set(event)
    if missing:  # DTSTART too, since there is no METHOD
        raise ValueError("3.6.1: without %s" % sorted(missing))
    if not re.fullmatch(r"\d{8}", event["DTSTART"]):
        raise ValueError("3.3.4: no DATE: %s" % event["DTSTART"])
    event["DTSTART"] = datetime.datetime.strptime(event["DTSTART"], "%Y%m%d").date()
    if not re.fullmatch(r"\d{8}T\d{6}Z", event["DTSTAMP"]):
        raise ValueError("3.8.7.2: the stamp is not in UTC: %s" % event["DTSTAMP"])
    datetime.datetime.strptime(event["DTSTAMP"], "%Y%m%dT%H%M%SZ")
    if event.get("TRANSP", "OPAQUE") not in ("OPAQUE", "TRANSPARENT"):
        raise ValueError("3.8.2.7: TRANSP")
    # 3.3.10: of the rules those that this writer has a use for: every so many days, so often.
    if "RRULE" in event and not re.fullmatch(r"FREQ=DAILY;INTERVAL=[1-9]\d*;COUNT=[1-9]\d*",
                                             event["RRULE"]):
        raise ValueError("3.3.10: a rule: %s" % event["RRULE"])
    for name in ("UID", "SUMMARY", "DESCRIPTION"):
        event[name] = text_of(event.get(name, ""))
    return event


def alarm_of(rows):
    """3.6.6: one VALARM that is shown, its trigger a duration (3.3.6)."""
    alarm = dict((name, value) for name, parameters, value in rows if not parameters)
    if set(alarm) != ALARM or len(rows) != len(ALARM):
        raise ValueError("3.6.6: an alarm of %s" % sorted(alarm))
    if alarm["ACTION"] != "DISPLAY":
        raise ValueError("3.8.6.1: %s" % alarm["ACTION"])
    if not re.fullmatch(r"[+-]?P(?:\d+D)?(?:T(?=\d)(?:\d+H)?(?:\d+M)?(?:\d+S)?)?", alarm["TRIGGER"]):
        raise ValueError("3.3.6: no duration: %s" % alarm["TRIGGER"])
    return text_of(alarm["DESCRIPTION"])


def calendar(data):
    """3.4, 3.6: one iCalendar object; its events."""
    rows = []
    for line in unfold(data):
        match = LINE.fullmatch(line)
        if not match:
            raise ValueError("3.1: no content line: %r" % line)
        rows.append((match.group(1).upper(), match.group(2), match.group(3)))
    if rows[0] != ("BEGIN", "", "VCALENDAR") or rows[-1] != ("END", "", "VCALENDAR"):
        raise ValueError("3.4: no VCALENDAR around it")
    events, inside, alarm, head = [], None, None, {}
    for name, parameters, value in rows[1:-1]:
        if (name, value) == ("BEGIN", "VALARM"):
            if inside is None or alarm is not None:
                raise ValueError("3.6.6: an alarm in its place")
            alarm = []
        elif (name, value) == ("END", "VALARM"):
            if alarm is None:
                raise ValueError("3.6.6: an alarm ends that did not begin")
            alarm_of(alarm)
            alarm = None
        elif alarm is not None:
            alarm.append((name, parameters, value))
        elif name == "BEGIN":
            if inside is not None or value != "VEVENT":
                raise ValueError("3.6: %s in its place" % value)
            inside = []
        elif name == "END":
            if inside is None or value != "VEVENT":
                raise ValueError("3.6: END:%s" % value)
            events.append(event_of(inside))
            inside = None
        elif inside is not None:
            inside.append((name, parameters, value))
        elif name in head or events or name not in ("VERSION", "PRODID", "CALSCALE"):
            raise ValueError("3.6: %s twice, unknown, or behind a component" % name)
        else:
            head[name] = value
    if inside is not None or alarm is not None:
        raise ValueError("3.6: a component is not ended")
    if head.get("VERSION") != "2.0" or not head.get("PRODID"):
        raise ValueError("3.6: VERSION or PRODID")
    if head.get("CALSCALE", "GREGORIAN") != "GREGORIAN":
        raise ValueError("3.7.1: CALSCALE")
    if not events:
        raise ValueError("3.6: no component")
    if len({e["UID"] for e in events}) != len(events):
        raise ValueError("3.8.4.7: a UID stands twice")
    return events


def due(folder, name, text, *flags):
    path = pathlib.Path(folder) / name
    path.write_text(text, encoding="utf-8")
    done = subprocess.run([PROGRAM, "due", str(path), "-f", "ics", "--today", TODAY, *flags],
                          stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=False, timeout=60)
    if done.returncode > 1:
        raise ValueError(done.stderr.decode())
    return done.stdout


def test(name, check):
    try:
        wrong = check() or ""
    except (ValueError, UnicodeDecodeError) as fault:
        wrong = str(fault)
    results.append((name, wrong, ""))


def broken():
    """Calendars that the standard forbids, made from a good one; each must be refused."""
    with tempfile.TemporaryDirectory() as folder:
        good = due(folder, "tank.yaml", TANK % ("a, b", "2026-03-05", READING))
        ring = due(folder, "tank.yaml", TANK % ("a, b", "2026-03-05", READING) + ROUTINE)
    calendar(good)
    calendar(ring)
    rings = {
        "an alarm not ended": ring.replace(b"END:VALARM\r\n", b""),
        "an alarm without a trigger": ring.replace(b"TRIGGER:PT9H\r\n", b""),
        "a trigger that is no duration": ring.replace(b"PT9H", b"9H"),
        "a rule of no number": re.sub(rb"INTERVAL=\d+", b"INTERVAL=0", ring),
        "two rules": ring.replace(b"RRULE:", b"RRULE:FREQ=DAILY;INTERVAL=7;COUNT=8\r\nRRULE:"),
    }
    faults = {
        "LF alone": good.replace(b"\r\n", b"\n"),
        "no end of the last line": good[:-2],
        "a long line": good.replace(b"\r\n ", b""),
        "a split character": good.replace(b"SUMMARY:", b"SUMMARY:\xc3\r\n \xbc"),
        "a bare comma": good.replace(b"\\,", b","),
        "another escape": good.replace(b"\\,", b"\\q"),
        "a control character": good.replace(b"SUMMARY:", b"SUMMARY:\x07"),
        "no UID": re.sub(rb"UID:[^\r]*\r\n", b"", good),
        "one UID for all": re.sub(rb"UID:[^\r]*\r\n", b"UID:x\r\n", good),
        "a stamp of no zone": good.replace(b"T000000Z", b"T000000"),
        "a date that is none": re.sub(rb"DATE:\d{8}", b"DATE:20260230", good),
        "a date without its type": good.replace(b";VALUE=DATE", b""),
        "no version": good.replace(b"VERSION:2.0\r\n", b""),
        "no product": re.sub(rb"PRODID:[^\r]*\r\n", b"", good),
        "no component": re.sub(rb"(?s)BEGIN:VEVENT.*END:VEVENT\r\n", b"", good),
        "an event not ended": good.replace(b"END:VEVENT\r\n", b"", 1),
        "two summaries": good.replace(b"SUMMARY:", b"SUMMARY:x\r\nSUMMARY:", 1),
        "an empty line": good.replace(b"SUMMARY:", b"\r\nSUMMARY:", 1),
    }
    passed = []
    for name, data in {**faults, **rings}.items():
        if data in (good, ring):
            passed.append(name + " (nothing was changed)")
        try:
            calendar(data)
            passed.append(name)
        except (ValueError, UnicodeDecodeError):
            pass
    return "passes: " + ", ".join(passed) if passed else ""


def folded(letter):
    """A name that grows letter by letter, so that every way of folding is met."""
    with tempfile.TemporaryDirectory() as folder:
        for count in range(0, 80, 2 if len(letter.encode()) > 1 else 5):
            name = "x" * (count // 2 % 4) + letter * count
            events = calendar(due(folder, "tank.yaml", TANK % (name, "2026-03-05", READING)))
            if not all(e["SUMMARY"].startswith(name + ": test ") for e in events):
                return "%d of %s: %s" % (count, letter, events[0]["SUMMARY"])
    return ""


def escaped():
    name = "a; b, c\\\\d:e \\\"f\\\"\\ng\\th\\u0001i"  # as YAML writes it
    with tempfile.TemporaryDirectory() as folder:
        events = calendar(due(folder, "tank.yaml", TANK % (name, "2026-03-05", READING)))
    want = "a; b, c\\d:e \"f\"\ng\thi: test "
    return "" if events[0]["SUMMARY"].startswith(want) else repr(events[0]["SUMMARY"])


def stable():
    """Twice the same to the byte; a later reading moves an entry and leaves its UID."""
    with tempfile.TemporaryDirectory() as folder:
        text = TANK % ("tank", "2026-03-05", READING)
        first, again = due(folder, "tank.yaml", text), due(folder, "tank.yaml", text)
        later = due(folder, "tank.yaml", TANK % ("tank", "2026-03-09", READING))
        other = due(folder, "other.yaml", text)
    if first != again:
        return "two runs differ"
    one, two = calendar(first), calendar(later)
    if [e["UID"] for e in one] != [e["UID"] for e in two]:
        return "the UIDs moved"
    if any(b["DTSTART"] - a["DTSTART"] != datetime.timedelta(4) for a, b in zip(one, two)):
        return "the days did not move with the reading"
    if {e["UID"] for e in one} & {e["UID"] for e in calendar(other)}:
        return "two files share a UID"
    return "" if first.count(b"DTSTAMP:20260310T000000Z") == len(one) else "stamps"


def changes():
    """The routine comes again; noted, it is counted from there; many tanks are one calendar."""
    with tempfile.TemporaryDirectory() as folder:
        text = TANK % ("tank", "2026-03-05", READING) + ROUTINE
        noted = text + "events:\n  - {date: \"2026-03-09\", what: water-changed, litres: 30 L}\n"
        first = calendar(due(folder, "tank.yaml", text))
        second = due(folder, "noted.yaml", noted)
        both = calendar(due(folder, "tank.yaml", text, str(pathlib.Path(folder) / "noted.yaml")))
    change = [e for e in first if ": change 30 L" in e["SUMMARY"]]
    later = [e for e in calendar(second) if ": change 30 L" in e["SUMMARY"]]
    if len(change) != 1 or change[0]["DTSTART"] != datetime.date(2026, 3, 12):
        return "of the reading: %s" % change
    if len(later) != 1 or later[0]["DTSTART"] != datetime.date(2026, 3, 16):
        return "of the change: %s" % later
    if change[0].get("RRULE") != "FREQ=DAILY;INTERVAL=7;COUNT=8":
        return "rule: %s" % change[0].get("RRULE")
    uids = sorted(e["UID"] for e in first + calendar(second))
    return "" if sorted(e["UID"] for e in both) == uids else "two tanks are not both of them"


def overdue():
    with tempfile.TemporaryDirectory() as folder:
        events = calendar(due(folder, "tank.yaml", TANK % ("tank", "2025-03-05", READING)))
    past = [e for e in events if e["DTSTART"] < datetime.date(2026, 3, 10)]
    return "in the past: %s" % past if past else ""


def staged():
    with tempfile.TemporaryDirectory() as folder:
        events = calendar(due(folder, "plan.yaml", PLAN, "--to", "GH=8,KH=5"))
    days = [e["DTSTART"] for e in events if ": stage " in e["SUMMARY"]]
    if len(days) < 2 or days != sorted(days) or days[0] != datetime.date(2026, 3, 10):
        return "stages on %s" % days
    return ""


def outside():
    """The same files by a reader that others wrote."""
    import icalendar  # pylint: disable=import-error,import-outside-toplevel
    with tempfile.TemporaryDirectory() as folder:
        for data in (due(folder, "tank.yaml", TANK % ("grün; a, b\\\\c", "2026-03-05", READING)),
                     due(folder, "routine.yaml", TANK % ("a", "2026-03-05", READING) + ROUTINE),
                     due(folder, "plan.yaml", PLAN, "--to", "GH=8,KH=5")):
            mine = calendar(data)
            theirs = list(icalendar.Calendar.from_ical(data).walk("VEVENT"))
            if len(mine) != len(theirs):
                return "%d events, %d there" % (len(mine), len(theirs))
            for a, b in zip(mine, theirs):
                if (a["UID"], a["SUMMARY"], a["DESCRIPTION"], a["DTSTART"]) != (
                        str(b["UID"]), str(b["SUMMARY"]), str(b["DESCRIPTION"]), b["DTSTART"].dt):
                    return "they differ: %s" % a
    return ""


test("the reader refuses broken calendars", broken)
for sign in "x,üß魚🐟":
    test("names of '%s', folded at every place" % sign, lambda s=sign: folded(s))
test("escapes come back as they were", escaped)
test("the same to the byte, UIDs that stay", stable)
test("changes come again, and of several tanks", changes)
test("nothing stands in the past", overdue)
test("stages of a re-making", staged)
if "--outside" in sys.argv:
    try:
        test("an outside reader reads the same", outside)
    except ImportError:
        results.append(("an outside reader reads the same", "", " # SKIP no python3-icalendar"))
print("1..%d" % len(results))
for number, (title, fault, skip) in enumerate(results, 1):
    print("%s %d - %s%s" % ("not ok" if fault else "ok", number, title, skip))
    for line in fault.splitlines():
        print("# " + line)
sys.exit(any(fault for _, fault, _ in results))
