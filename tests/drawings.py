#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Every drawing of a page says what the figures say.

Usage: drawings.py PROGRAM. TAP: outlines, readings and curves of pages are taken apart into points,
turned back into figures by their scale, and held against the same answer as JSON, within a pixel of
the drawing. What lies beyond a scale has no end that could be taken for a limit.
"""
import json
import math
import pathlib
import re
import subprocess
import sys
import xml.etree.ElementTree as tree

ROOT = pathlib.Path(__file__).resolve().parent.parent
# As the key of a page names them; the places of an outline's parts are those of its own head.
SCALES = {"gh": (0, 30), "kh": (0, 24), "ph": (4, 10), "temp": (10, 34), "salinity": (0, 10)}
ORDER = ("gh", "kh", "ph", "temp")
WIDE, PITCH, TOP, SHELF, GROUND, BAR = 72, 80, 2, 8, 13, (14, 16)
PIXEL = 1.0
WATERS = {  # how many of the list are drawn at least; whose reasons are held
    "hard": (300, ["guppy", "neon tetra"], ["--GH", "14", "--KH", "9", "--pH", "7.6", "--temperature", "24"]),
    "soft": (200, ["neon tetra"], ["--GH", "2", "--KH", "0.5", "--pH", "6.2", "--temperature", "26.5"]),
    "beyond": (3, [], ["--GH", "34 dH", "--KH", "25 dH", "--pH", "8.4", "--temperature", "26"]),
    "wide": (5, [], ["--GH", "6..12", "--KH", "4", "--pH", "7.2", "--temperature", "18..30"]),
    "brackish": (10, ["guppy", "Monodactylus argenteus"],
                 ["--GH", "20", "--KH", "12", "--pH", "8.2", "--temperature", "26", "--salinity", "7 g/L"]),
}


def asked(program, words, form):
    done = subprocess.run([program, *words, "-f", form], capture_output=True, text=True, check=False)
    if done.returncode > 1:
        raise RuntimeError("%s: %s" % (" ".join(words), done.stderr))
    return json.loads(done.stdout) if form == "json" else tree.fromstring(done.stdout.split("\n", 1)[1])


def subpaths(d):
    """The points of a path of M, L, H, V and Z, a list of points for each M."""
    found, at = [], (0.0, 0.0)
    for letter, rest in re.findall(r"([A-Za-z])([^A-Za-z]*)", d):
        figures = [float(one) for one in re.findall(r"-?[0-9.]+", rest)]
        if letter == "M":
            found.append([])
        if letter == "Z":
            at = found[-1][0]
        else:
            at = {"M": lambda: tuple(figures), "L": lambda: tuple(figures), "H": lambda: (figures[0], at[1]),
                  "V": lambda: (at[0], figures[0])}[letter]()
        found[-1].append(at)
    return found


def is_arrow(points):
    return len(points) == 3 and points[1][0] in (0, WIDE) and points[0][0] == points[2][0] and abs(
        points[0][0] - points[1][0]) == 3


def place(name, value):
    low, high = SCALES[name]
    return (value - low) / (high - low) * WIDE


def on_scale(name, value):
    return value is not None and math.isfinite(value) and 0 <= place(name, value) <= WIDE


def near(points, x, y):
    return any(abs(px - x) <= PIXEL and py == y for px, py in points)


def of_outline(name, paths, tolerated, preferred):
    """What is wrong with an outline; `paths` are its own."""
    wrong, points = [], [p for path in paths if not is_arrow(path) for p in path]
    arrows = [path[1] for path in paths if is_arrow(path)]
    wanted = {}
    for limits, level in ((tolerated, GROUND), (preferred, TOP)):
        for value in limits or []:
            if on_scale(name, value):
                wanted.setdefault(level, []).append(place(name, value))
                if not near(points, place(name, value), level):
                    wrong.append("%s: no corner at %g" % (name, value))
    for level in (GROUND, TOP):
        for x, y in points:
            edge = x in (0, WIDE)
            if y == level and not edge and not any(abs(x - one) <= PIXEL for one in wanted.get(level, [])):
                wrong.append("%s: a corner at %g, which is no limit" % (name, x))
            if y == GROUND and edge and not any(abs(x - one) <= PIXEL for one in wanted.get(level, [])) and level == GROUND:
                wrong.append("%s: the end of the scale looks like a limit" % name)
    for side, edge in ((0, 0), (1, WIDE)):
        ends = [limits[side] for limits in (tolerated, preferred or tolerated)]
        beyond = [one is None or (place(name, one) > WIDE if side else place(name, one) < 0) for one in ends]
        elsewhere = preferred and not any(on_scale(name, one) for one in preferred) and None not in preferred
        if beyond[0] and not elsewhere and not any(x == edge for x, _ in arrows):
            wrong.append("%s: nothing says that it goes on at %d" % (name, edge))
        if not any(beyond) and any(x == edge for x, _ in arrows):
            wrong.append("%s: an arrow where it ends" % name)
    return wrong


def of_reading(name, paths, value, low, high):
    if value is None or not math.isfinite(value):
        return []
    arrows = [path[1] for path in paths if is_arrow(path)]
    ticks = [path for path in paths if len(path) == 2 and path[0][0] == path[1][0]]
    wrong = []
    if on_scale(name, value):
        if [t for t in ticks if abs(t[0][0] - place(name, value)) <= PIXEL] != ticks or len(ticks) != 1:
            wrong.append("%s: the upright is not at %g: %s" % (name, value, ticks))
    elif not any(x == (WIDE if place(name, value) > WIDE else 0) for x, _ in arrows) or ticks:
        wrong.append("%s: %g lies beyond the scale, and no arrow says so" % (name, value))
    box = [p for path in paths if not is_arrow(path) and path not in ticks for p in path]
    ends = [min(max(place(name, one), 0), WIDE) for one in (low, high)]
    if box and max(abs(min(x for x, _ in box) - ends[0]), abs(max(x for x, _ in box) - ends[1])) > PIXEL:
        wrong.append("%s: the bar is not over %g to %g" % (name, low, high))
    if not box and ends[1] - ends[0] > PIXEL:
        wrong.append("%s: no bar over %g to %g" % (name, low, high))
    return wrong


def of_miss(name, paths, value, tolerated):
    """The line along the ground, and where there is one there is a miss."""
    lines = [p for p in paths if len(p) == 2 and p[0][1] == p[1][1] == GROUND]
    low, high = [(-math.inf, math.inf)[i] if one is None else one for i, one in enumerate(tolerated)]
    foot = low if value is not None and value < low else high if value is not None and value > high else None
    if foot is None or not on_scale(name, foot):
        return ["%s: a miss is drawn where there is none" % name] if lines else []
    ends = sorted((place(name, foot), min(max(place(name, value), 0), WIDE)))
    if ends[1] - ends[0] < PIXEL:
        return []
    drawn = sorted(x for x, _ in lines[0]) if lines else []
    return [] if drawn and max(abs(a - b) for a, b in zip(drawn, ends)) <= PIXEL else ["%s: the miss is not %s" % (name, ends)]


def drawn_of(svg, known):
    """The paths of a drawing, one a `use` too, with the class each has."""
    found = []
    for part in svg:
        if part.tag == "use":
            found.append(known[part.get("href")[1:]])
        elif part.tag == "path":
            found.append((part.get("class"), subpaths(part.get("d"))))
    return found


def moved(paths, left):
    return [[(x - left, y) for x, y in path] for path in paths]


def of_entry(svg, known, parameters):
    """`parameters`: name, tolerated, preferred, value, low, high, in the order of the drawing."""
    drawn, wrong = drawn_of(svg, known), []
    outlines = [paths for kind, paths in drawn if kind != "w"]
    readings = [path for kind, paths in drawn if kind == "w" for path in paths]
    if len(outlines) != len(parameters):
        return ["%d outlines of %d parameters" % (len(outlines), len(parameters))]
    for i, (name, tolerated, preferred, value, low, high) in enumerate(parameters):
        mine = moved(outlines[i], i * PITCH)
        if tolerated:
            misses = [p for p in mine if len(p) == 2 and p[0][1] == p[1][1] == GROUND]
            wrong += of_outline(name, [p for p in mine if p not in misses], tolerated, preferred)
            wrong += of_miss(name, mine, value, tolerated)
        own = [p for p in moved(readings, i * PITCH) if all(-1 <= x <= WIDE + 1 for x, _ in p)]
        wrong += of_reading(name, own, value, low, high)
    return wrong


def known_paths(page):
    return {part.get("id"): (part.get("class"), subpaths(part.get("d"))) for part in page.iter("path") if part.get("id")}


def name_of(text):
    found = re.search(r"\(([A-Z][a-z]+ [^)]+)\)", text)
    return found.group(1) if found else None


def matched(one, water):
    nothing = one["name"] == "ph" and water["ph_computed"]  # it follows from KH and decides nothing
    reading = [None] * 3 if nothing else [one["reading"], one["reading_low"], one["reading_high"]]
    return (one["name"], one["tolerated"], one["preferred"], *reading)


def of_list(program, words):
    """A ranking: four outlines an entry; also how many were held."""
    page, figures = asked(program, words, "html"), asked(program, words, "json")
    known, by_name = known_paths(page), {one["common"] or one["species"]: [
        matched(p, figures["water"]) for p in one["parameters"] if p["name"] in ORDER] for one in figures["ranked"]}
    wrong, count = [], 0
    for entry in page.iter("li"):
        svg, head = entry.find("svg"), entry.find("b")
        name = head.text.split(" (")[0] if head is not None else None
        if svg is None or svg.get("class") == "one" or name not in by_name:
            continue
        wrong += ["%s: %s" % (name, line) for line in of_entry(svg, known, by_name[name])]
        count += 1
    return wrong, count


def of_why(program, name, water):
    """One parameter a drawing: which, its hue says, and salt has none."""
    words = ["why", name, *water]
    page, figures = asked(program, words, "html"), asked(program, words, "json")
    if not figures["ranked"]:
        return ["%s is not among the ranked" % name], 0
    parameters = {one["name"]: matched(one, figures["water"]) for one in figures["ranked"][0]["parameters"]}
    known, wrong, count = known_paths(page), [], 0
    for svg in page.iter("svg"):
        if svg.get("class") != "one":
            continue
        hue = {"te": "temp", None: "salinity"}
        kind = next(part.get("class") for part in svg if part.tag == "path" and part.get("class") != "w")
        wrong += of_entry(svg, known, [parameters[hue.get(kind, kind)]])
        count += 1
    return wrong, count


def of_check(program, words):
    page, figures = asked(program, words, "html"), asked(program, words, "json")
    known, wrong, count = known_paths(page), [], 0
    animals = {one["species"]: one for one in figures["animals"]}
    for entry in page.iter("li"):
        svg, name = entry.find("svg"), name_of("".join(entry.itertext()))
        if svg is None or name not in animals:
            continue
        parameters = [(r["parameter"], r["tolerated"], r["preferred"], r["reading"], *r["reading_range"])
                      for r in animals[name]["ranges"]]
        wrong += ["%s: %s" % (name, line) for line in of_entry(svg, known, parameters)]
        count += 1
    return wrong, count


def of_curve(figure, series, names):
    """A chart against `series`: name -> (points, half of the last figure of y as written)."""
    svg = figure.find("svg")
    frame = re.match(r"M(\d+) (\d+)V(\d+)H(\d+)", svg.find("path").get("d"))
    left, top, ground, right = map(float, frame.groups())
    texts = [(float(t.get("x")), float(t.get("y")), t.text) for t in svg.iter("text")]
    y_high, y_low = [float(text) for x, y, text in texts if x < left][:2]
    below = sorted((x, float(text)) for x, y, text in texts if y > ground)
    x_low, x_high = below[0][1], below[-1][1]
    wrong = []
    for x, figure_ in below[1:-1]:
        if abs((x - left) / (right - left) * (x_high - x_low) + x_low - figure_) > 1e-6 * max(1, x_high):
            wrong.append("the label %g does not stand at its place" % figure_)
    lines = [part for part in svg.iter("path") if "line" in (part.get("class") or "")]
    said = [item.text or item[0].tail for item in figure.iter("li")]
    if len(lines) != len(names):
        return ["%d lines instead of %d" % (len(lines), len(names))]
    units = {re.sub(r".*, ", "", name) for name in names if ", " in name}
    if len(units) > 1:
        wrong.append("two units on one axis: %s" % units)
    for line, name in zip(lines, names):
        points, half = series[name]
        drawn = [p for path in subpaths(line.get("d")) for p in path]
        points = [(x, y) for x, y in points if x is not None and y is not None]
        if len(drawn) != len(points):
            wrong.append("%s: %d points instead of %d" % (name, len(drawn), len(points)))
            continue
        for (px, py), (x, y) in zip(drawn, points):
            far = abs(left + (x - x_low) / (x_high - x_low) * (right - left) - px)
            off = abs(ground - (y - y_low) / (y_high - y_low) * (ground - top) - py)
            if far > PIXEL or off > PIXEL + half / (y_high - y_low) * (ground - top):
                wrong.append("%s: (%g, %g) is drawn %.1f and %.1f px off" % (name, x, y, far, off))
        if not any(name in text for text in said):
            wrong.append("%s is not named below" % name)
    return wrong


DKH = 2.8036  # degrees of KH a meq/L of strong acid takes (docs/methods.md)


def of_charts(program, words, wanted):
    """`wanted`: a row of (names, series) a chart, out of the JSON."""
    page, figures = asked(program, words, "html"), asked(program, words, "json")
    charts = [one for one in page.iter("figure")]
    rows = wanted(figures)
    if len(charts) != len(rows):
        return ["%d charts instead of %d" % (len(charts), len(rows))], 0
    wrong = []
    for chart, series in zip(charts, rows):
        wrong += of_curve(chart, series, list(series))
    return wrong, len(charts)


def rank_rows(figures):
    points = [(row["gh_dh"], row["comfortable"]) for row in figures["by_gh"]]
    return [{"kinds that are comfortable at it": (points, 0.5)}]


def drift_rows(figures):
    days = figures["days"]

    def points(key):
        return [(day["day"], day[key]) for day in days]
    rows = [{"KH, dH": (points("kh_dh"), 0.05)}, {"pH at the usual CO2": (points("ph"), 0.05)}, {"nitrate, mg/L": (points("no3_mg_l"), 0.5)}]
    return [row for row in rows if any(y is not None for points_, _ in row.values() for _, y in points_)]


def titrate_rows(figures):
    def points(key):
        return [(abs(s["acid_meq_l"]) * DKH, s[key]) for s in figures["line"]]
    rows = [{"once the tank has aired": (points("ph_tank"), 0.005), "at once": (points("ph_closed"), 0.005)}]
    if figures["line"][1]["acid_meq_l"] > 0:
        rows.append({"CO2 at once": (points("co2_mg_l"), 0.05), "from here on a danger to fish": (
            [(x, figures["co2_danger_mg_l"]) for x, _ in points("co2_mg_l")], 0)})
    return rows


def night_rows(figures):
    nights, ph, kh = figures["nightly"]["same_dose"]["nights"], [], []
    ph.append((0.5, figures["nightly"]["ph_start"]))
    kh.append((0.5, figures["kh_dh"]))
    for night in nights:
        ph += [(night["day"], night["evening"]["ph_closed"]), (night["day"] + 0.5, night["evening"]["ph_tank"])]
        kh += [(night["day"], night["evening"]["kh_dh"]), (night["day"] + 0.5, night["evening"]["kh_dh"])]
    return [{"pH, evening and morning": (ph, 0.005)}, {"KH left, dH": (kh, 0.005)}]


def cases(program):
    for name, (least, animals, water) in WATERS.items():
        yield "the list of all, %s water" % name, of_list(program, ["rank", *water, "--all"]), least
        yield "kinds at each hardness, %s water" % name, of_charts(program, ["rank", *water], rank_rows), 1
        for animal in animals:
            yield "why, %s, %s water" % (animal, name), of_why(program, animal, water), 4
    for plan in sorted((ROOT / "examples/plans").glob("*.yaml")):
        yield "check %s" % plan.stem, of_check(program, ["check", str(plan)]), 1
        yield "drift %s" % plan.stem, of_charts(program, ["drift", str(plan)], drift_rows), 1
    for name in ("hard", "soft"):
        yield "titrate, %s water" % name, of_charts(program, ["titrate", *WATERS[name][2]], titrate_rows), 2
        yield "titrate with base, %s water" % name, of_charts(program, ["titrate", "--base", *WATERS[name][2]], titrate_rows), 1
    yield "evening after evening", of_charts(program, ["titrate", *WATERS["hard"][2], "--nightly", "--towards", "6.8"], night_rows), 2


def main(program):
    number, bad = 0, False
    for name, (wrong, count), least in cases(program):
        if count < least:
            wrong = wrong + ["only %d drawings, at least %d are there" % (count, least)]
        number, bad = number + 1, bad or bool(wrong)
        print("%s %d - %s: %d drawings" % ("not ok" if wrong else "ok", number, name, count))
        for line in wrong[:8]:
            print("# %s" % line)
    print("1..%d" % number)
    return int(bad)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
