#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""The page in browsers, as it is used: the moments of moments.js from opening to the printed sheet.

Usage: moments.py PAGE [--engines chromium,firefox,webkit] [--axe FILE] [--pictures FOLDER] [--whole].
TAP. Each moment runs from a file; in Chromium also from a local server that is gone after the load,
with axe-core (FILE is its axe.min.js) on every state, nothing wider than the screen, no target under
44 px, a silent console, and no request in the browser's own log. --whole: at four widths, light and
dark, and how quick it is with the processor slowed four times. A browser that is missing is a skip.
"""
import argparse
import functools
import http.server
import pathlib
import shutil
import statistics
import subprocess
import sys
import tempfile
import threading
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent))
from engines import ENGINES, missing  # noqa: E402

HERE = pathlib.Path(__file__).resolve().parent
ROOT = HERE.parent.parent
MOMENTS = ("shopper", "pair", "sentence", "checker", "newcomer", "first", "adviser", "hostile")
LOOKS = ((360, "light"), (390, "dark"), (800, "light"), (1280, "dark"), (320, "dark"), (1600, "light"))
# The answers that follow what is filled in, each with what is added to the sheet before it.
ANSWERS = (("rank", 'Object.assign(s.reading, {GH: "14 dH", KH: "9 dH", pH: "7.6"})'), ("fits", 's.tank.size = "112"'),
           ("together", 's.words = "8 harlequin rasboras, 2 angelfish"'), ("tank", 's.lived = "for 6 months"'))
LONGEST_S = 120  # without a step done: a machine that others use is slow, and no moment fails for that
STEPS = {}  # from opening to the answer of a moment
# The page's own labels, a pattern a line; every other text on the screen comes from the program.
LABELS = [line for line in (HERE / "labels.txt").read_text(encoding="utf-8").splitlines() if line]
SIDEWAYS = "return document.documentElement.scrollWidth - document.documentElement.clientWidth"
# Buttons and fields are 44 px high; a term inside a sentence is as high as its line.
SMALL = """return Array.from(document.querySelectorAll("button:not(.term), input, select, textarea, summary")).filter(e => {
const box = e.getBoundingClientRect(); return box.width && box.height < 43.5; }).map(
e => e.tagName + " " + (e.id || e.textContent.slice(0, 30)) + " is " + e.getBoundingClientRect().height + " px")"""
AXE = """const done = arguments[arguments.length - 1];
axe.run(document, {resultTypes: ["violations"], runOnly: {type: "tag", values: ["wcag2a", "wcag2aa",
"wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}}).then(
r => done(r.passes.length < 5 ? ["only " + r.passes.length + " rules ran"] :
r.violations.map(v => v.id + ": " + v.help + ", as in " + v.nodes[0].html.slice(0, 200))),
e => done(["axe-core failed: " + e]));"""
READY = "return document.documentElement.dataset.ready || document.getElementById('wait').textContent"


class Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_):
        pass


def until_ready(browser):
    end = time.monotonic() + 30
    while True:
        state = browser.run(READY)
        if state == "yes":
            return []
        if time.monotonic() > end:
            return ["the page is not ready: %s" % state]
        time.sleep(0.02)


def play(browser, name, shown):
    """One moment to its end; `shown` is called at each state. Lines that say what is wrong."""
    browser.run("window.takesPictures = arguments[0]; moments.start(arguments[1])", bool(shown), name)
    done, end = -1, 0
    wrong = []
    while True:
        state = browser.run("return {...window.moment, done: moments.done()}")
        if state["done"] != done or state["at"]:
            done, end = state["done"], time.monotonic() + LONGEST_S
        elif time.monotonic() > end:
            return wrong + ["nothing was done for %d s" % LONGEST_S]
        if state["at"]:
            wrong += shown(name, state["at"]) or []
            browser.run("window.moment.at = ''")
        elif state["wrong"] is not None:
            STEPS.update(state["reached"])
            return wrong + ([state["wrong"]] if state["wrong"] else [])
        else:
            time.sleep(0.02)


def begin(browser, address):
    browser.go("about:blank")
    browser.go(address)
    wrong = until_ready(browser)
    if not wrong:
        browser.run("localStorage.clear()")
        browser.go("about:blank")
        browser.go(address)
        wrong = until_ready(browser)
    browser.run("window.ownLabels = arguments[0]", LABELS)
    browser.run((HERE / "moments.js").read_text(encoding="utf-8"))
    return wrong


class Look:
    """What is held against every state at one width and scheme."""

    def __init__(self, browser, width, scheme, args):
        self.browser, self.width, self.scheme = browser, width, scheme
        self.axe = args.axe.read_text(encoding="utf-8") if args.axe else None
        self.pictures = args.pictures

    def __call__(self, moment, state):
        browser, at = self.browser, "%s: " % state
        over = browser.run(SIDEWAYS)
        wrong = [at + "scrolls sideways by %d px" % over] if over > 0 else []
        wrong += [at + line for line in browser.run(SMALL)]
        if self.pictures:
            browser.picture(self.pictures / ("%s-%s-%d-%s.png" % (
                moment, state, self.width, self.scheme)), self.width)
        if self.axe:
            browser.run(self.axe)
            wrong += [at + line for line in browser.driver.execute_async_script(AXE)]
        return wrong


def offline(browser, page):
    """From a server that is gone once the page is there: every moment still goes to its end."""
    folder = page.parent
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Quiet, directory=folder))
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    wrong = begin(browser, "http://127.0.0.1:%d/%s" % (server.server_port, page.name))
    server.shutdown()
    server.server_close()
    thread.join()
    for name in MOMENTS[:5]:
        wrong = wrong or play(browser, name, None)
    return wrong


def by_keys(browser, page):
    """From the first visit to an animal's reasons; the focus is always to be seen."""
    from selenium.webdriver.common.keys import Keys
    driver = browser.driver
    wrong = begin(browser, page.as_uri())

    def tab_to(what, holds, most=40):
        for _ in range(most):
            driver.switch_to.active_element.send_keys(Keys.TAB)
            active = driver.switch_to.active_element
            if browser.run("return getComputedStyle(document.activeElement).outlineStyle") == "none":
                wrong.append("no outline on %s" % (active.get_attribute("id") or active.text[:30]))
            if holds(active):
                return active
        wrong.append("%s is not reached" % what)
        return driver.switch_to.active_element

    def of(name):
        return lambda active: active.get_attribute("id") == name

    tab_to("GH", of("water-first-GH")).send_keys("6")
    tab_to("KH", of("water-first-KH")).send_keys("3")
    tab_to("pH", of("water-first-pH")).send_keys("7")
    tab_to("the questions", lambda a: a.tag_name == "summary" and "The question" in a.text).send_keys(Keys.ENTER)
    tab_to("the question", lambda a: a.get_attribute("data-question") == "rank").send_keys(Keys.ENTER)
    name = tab_to("a name", lambda a: "name" in (a.get_attribute("class") or "").split())
    name.send_keys(Keys.ENTER)
    if not browser.run("return Boolean(document.querySelector('#answer .inside'))"):
        wrong.append("Enter on a name opens nothing")
    return wrong


def doubled(browser, page):
    """Letters of twice the size at 360 px: nothing is wider than the screen."""
    browser.look(360, "light")
    wrong = []

    def look(_, state):
        over = browser.run(SIDEWAYS)
        return ["%s: scrolls sideways by %d px" % (state, over)] if over > 0 else []
    for name in ("shopper", "checker", "newcomer"):
        wrong += begin(browser, page.as_uri())
        browser.run("document.documentElement.style.fontSize = '200%'")
        wrong += play(browser, name, look)
    return wrong


def kept(browser, page):
    """The folder for a web server: once visited, it is there without the server."""
    folder = page.parent / "site"
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Quiet, directory=folder))
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    address = "http://127.0.0.1:%d/" % server.server_port
    wrong = begin(browser, address)
    end = time.monotonic() + 20
    while time.monotonic() < end and not browser.run("return Boolean(navigator.serviceWorker.controller)"):
        time.sleep(0.05)
    server.shutdown()
    server.server_close()
    thread.join()
    wrong = wrong or begin(browser, address) or play(browser, "shopper", None)
    return wrong + ["console: %s" % line for line in browser.console()]


def quick(browser, page):
    """Median of ten with the processor slowed four times, beside an empty page."""
    with tempfile.TemporaryDirectory() as folder:
        empty = pathlib.Path(folder) / "empty.html"
        empty.write_text("<!DOCTYPE html><html lang='en'><title>empty</title><p id='wait'></p><script>"
                         "document.documentElement.dataset.ready = 'yes'</script></html>", encoding="utf-8")
        figures = {name: [] for name in ["empty", "usable"] + [name for name, _ in ANSWERS]}
        alone = {name: [] for name in figures}  # of the processor, whatever else runs on it
        browser.driver.execute_cdp_cmd("Performance.enable", {"timeDomain": "threadTicks"})

        def ticks():
            metrics = browser.driver.execute_cdp_cmd("Performance.getMetrics", {})["metrics"]
            return next(1000 * one["value"] for one in metrics if one["name"] == "TaskDuration")
        since = "return performance.now()"
        for _ in range(10):
            for name, path in (("empty", empty), ("usable", page)):
                browser.slow(4)
                browser.go("about:blank")
                browser.go(path.as_uri())
                until_ready(browser)
                figures[name].append(browser.run("return window.readyAt || performance.timing.loadEventEnd - "
                                                 "performance.timing.navigationStart") or browser.run(since))
                alone[name].append(ticks())
            for name, filled in ANSWERS:
                before = ticks()
                figures[name].append(browser.run("""
const s = sheet();
%s;
const began = performance.now();
readAnimals();
changed("words");
clearTimeout(page.waiting);
page.question = QUESTIONS.find(({ id }) => id === arguments[0]);
answer();
document.body.offsetHeight;
return performance.now() - began + WAIT_MS;""" % filled, name))
                alone[name].append(ticks() - before)
            browser.run("localStorage.clear()")
        browser.slow(1)
    medians = {name: statistics.median(list_) for name, list_ in figures.items()}
    print("# slowed four times, median of ten: empty page %.0f ms, usable %.0f ms; after the last key: %s" % (
        medians["empty"], medians["usable"], ", ".join("%s %.0f ms" % (n, medians[n]) for n, _ in ANSWERS)))
    print("# the same in time of the processor, without waiting for it: %s" % ", ".join(
        "%s %.0f ms" % (name, statistics.median(list_)) for name, list_ in alone.items()))
    return medians


def of_chromium(browser, page, args):
    browser.requests()
    for width, scheme in LOOKS if args.whole else LOOKS[:1]:
        browser.look(width, scheme)
        look = Look(browser, width, scheme, args)
        for name in MOMENTS[:-1]:
            wrong = begin(browser, page.as_uri()) or play(browser, name, look)
            wrong += ["console: %s" % line for line in browser.console()]
            wrong += ["asked for: %s" % line for line in browser.requests()]
            yield "%s at %d px, %s" % (name, width, scheme), wrong
    browser.look(390, "light")
    wrong = begin(browser, page.as_uri()) or play(browser, "hostile", None)
    wrong += ["asked for: %s" % line for line in browser.requests()]
    yield "a hundred hostile texts stay texts", wrong
    yield "without the server after the load", offline(browser, page)
    yield "by keys alone", by_keys(browser, page)
    yield "letters doubled on a narrow phone", doubled(browser, page)
    yield "a web server's page is kept on the device", kept(browser, page)
    yield "printed: water and answer, no field", printed(browser, page)
    yield "a page with records, a tap and a plan of one's own", own(browser, page)
    yield "a request would be seen", [] if seen(browser) else ["the browser's log shows none"]
    if not args.whole:
        return
    medians = quick(browser, page)
    yield "usable within 1.5 s, answer within 300 ms, slowed four times", [
        "%s %.0f ms" % (name, medians[name]) for name in medians if medians[name] > (1500 if name == "usable" else 300)]


def own(browser, page):
    """What `tapshoal page` put into it is there: a record, a kept water, a plan, each as text."""
    program = page.parent.parent / "src/cli/tapshoal"
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        species = folder / "data/tapshoal/species"
        species.mkdir(parents=True)
        shutil.copy(ROOT / "docs/exempla-mollis.yaml", species)
        (folder / "tapshoal").mkdir()
        (folder / "tapshoal/tap.yaml").write_text(
            "name: </script><b id=broken>kitchen\nreadings: [{GH: 5 dH, KH: 3 dH, pH: 6.8}]\n", encoding="utf-8")
        env = {"PATH": "/usr/bin:/bin", "XDG_DATA_HOME": str(folder / "data"), "XDG_CONFIG_HOME": name}
        made = folder / "own.html"
        subprocess.run([program, "page", "--from", page, "--own", ROOT / "examples/plans/livebearers.yaml",
                        "-o", made], env=env, check=True)
        wrong = begin(browser, made.as_uri())
        state = browser.run("""const names = Object.keys(page.kept.sheets), found = page.program.json(["find", "Exempla mollis"]);
return {names, broken: Boolean(document.getElementById("broken")), found: found ? found.found.length : 0,
gh: page.kept.sheets[names[1]].reading.GH, animals: page.kept.sheets[names[2]].stock.length}""")
    want = {"names": ["my tank", "</script><b id=broken>kitchen", "livebearers and company (invented)"], "broken": False,
            "found": 1, "gh": "5 dH", "animals": 3}
    return wrong + ["%s: %s instead of %s" % (k, state[k], want[k]) for k in want if state[k] != want[k]]


def printed(browser, page):
    begin(browser, page.as_uri())
    play(browser, "shopper", None)
    browser.look(800, "light", "print")
    state = browser.run("""const seen = e => Boolean(e && e.getClientRects().length);
return [seen(document.querySelector("#sheet")), seen(document.querySelector("#tools")),
seen(document.querySelector("#answer .paper")), seen(document.querySelector("#answer .entries > li")),
document.querySelector("#answer .paper").innerText.includes("14")]""")
    browser.look(390, "light")
    return [] if state == [False, False, True, True, True] else ["fields, tools, water, list, GH: %s" % state]


def seen(browser):
    """The check that counts requests can fail."""
    with tempfile.TemporaryDirectory() as folder:
        path = pathlib.Path(folder) / "asks.html"
        path.write_text("<!DOCTYPE html><html><body><img src='there-is-none.png'/></body></html>", encoding="utf-8")
        browser.requests()
        browser.go(path.as_uri())
        return any("there-is-none" in line for line in browser.requests())


def checks(engine, page, args):
    absent = missing(*engine.needs)
    if absent:
        yield "%s # SKIP not installed: %s" % (engine.name, ", ".join(absent)), []
        return
    browser = engine()
    try:
        if engine.name == "chromium":
            yield from of_chromium(browser, page, args)
            return
        for name in MOMENTS:
            yield "%s in %s" % (name, engine.name), begin(browser, page.as_uri()) or play(browser, name, None)
        yield "without the server after the load, in %s" % engine.name, offline(browser, page)
    finally:
        browser.quit()


def main(argv):
    args = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    args.add_argument("page", type=lambda path: pathlib.Path(path).resolve())
    args.add_argument("--engines", default="chromium")
    args.add_argument("--axe", type=pathlib.Path)
    args.add_argument("--pictures", type=pathlib.Path)
    args.add_argument("--whole", action="store_true")
    args = args.parse_args(argv)
    number, bad = 0, False
    for name in args.engines.split(","):
        for what, wrong in checks(ENGINES[name], args.page, args):
            number, bad = number + 1, bad or bool(wrong)
            print("%s %d - %s" % ("not ok" if wrong else "ok", number, what), flush=True)
            for line in wrong[:20]:
                print("# %s" % line)
    print("# steps from opening to the answer: %s" % ", ".join("%s: %d" % one for one in STEPS.items()))
    print("1..%d" % number)
    return int(bad or not number)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
