#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Every page in a real browser (Debian's chromium, driven by python3-selenium).

Usage: browser.py PROGRAM [--quick] [--axe FILE] [--pictures FOLDER]. TAP: each page of tests/page.py at 360,
800 and 1280 px, light, dark and as printed: nothing scrolls sideways, the console is silent,
nothing is fetched, and axe-core (FILE is its axe.min.js) finds no violation of WCAG 2.2 A, AA and
of its best practices; the filter of the ranking filters and is reached by keys. Without the
browser everything is one skip, without axe-core its part is one. --quick looks at the narrowest
width alone, without axe-core. --pictures writes each page as PNG and, as it leaves a printer, as
PDF, to be looked at.
"""
import argparse
import base64
import pathlib
import shutil
import sys
import tempfile

import page as pages

WIDTHS = (360, 800, 1280)
LOOKS = {"light": ("screen", "light"), "dark": ("screen", "dark"), "print": ("print", "light")}
SIDEWAYS = "return document.documentElement.scrollWidth - document.documentElement.clientWidth"
SQUEEZED = """return Array.from(document.querySelectorAll(".wide")).filter(
e => e.scrollWidth > e.clientWidth).map(e => "a table is wider than the page: " + e.innerText)"""
FETCHED = "return performance.getEntriesByType('resource').map(e => e.name)"
HEIGHT = "return Math.min(document.documentElement.scrollHeight, 2400)"
AXE = """const done = arguments[arguments.length - 1];
axe.run(document, {resultTypes: ["violations"], runOnly: {type: "tag", values: ["wcag2a", "wcag2aa",
"wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}}).then(
r => done(r.passes.length < 5 ? ["only " + r.passes.length + " rules ran"] :
r.violations.map(v => v.id + ": " + v.help + ", as in " + v.nodes[0].html.slice(0, 200))),
e => done(["axe-core failed: " + e]));"""
# The water leads a printed page and stands on no screen; the verdict comes after it.
SHEET = """const sheet = document.querySelector(".paper"), top = e => e.getBoundingClientRect().top;
if (!sheet) { return ""; }
if (arguments[0] !== "print") { return sheet.offsetParent ? "the printed part is on a screen" : ""; }
return sheet.offsetParent && top(sheet) < top(document.querySelector("h2.verdict")) ? "" :
"the printed part is not above the verdict";"""
# Each of these faults stands for one that axe-core must see, lest its silence mean nothing.
FAULTY = """<!DOCTYPE html><html lang="en"><head><title>t</title></head><body><main><h1>t</h1>
<p style="color: #aaa; background: #fff">pale</p><img src="data:,"><select></select></main>"""
FAULTS = {"color-contrast", "image-alt", "select-name"}


class Browser:
    """The driver, and what is to be done with each page."""

    def __init__(self, profile, args):
        from selenium import webdriver
        from selenium.webdriver.chrome.service import Service
        options = webdriver.ChromeOptions()
        for flag in ("--headless=new", "--no-sandbox", "--disable-gpu", "--hide-scrollbars",
                     "--disable-dev-shm-usage", "--user-data-dir=" + profile):
            options.add_argument(flag)
        options.binary_location = shutil.which("chromium")
        options.set_capability("goog:loggingPrefs", {"browser": "ALL"})
        self.driver = webdriver.Chrome(service=Service(shutil.which("chromedriver")),
                                       options=options)
        self.driver.set_script_timeout(180)
        self.widths = WIDTHS[:1] if args.quick else WIDTHS
        given = args.axe and args.axe.is_file() and not args.quick
        self.axe = args.axe.read_text(encoding="utf-8") if given else None
        self.pictures = args.pictures

    def open(self, path, width, media, scheme):
        self.driver.get("file://%s" % path)
        self.driver.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", {
            "width": width, "height": 900, "deviceScaleFactor": 1, "mobile": False})
        self.driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {
            "media": media, "features": [{"name": "prefers-color-scheme", "value": scheme}]})

    def barriers(self):
        self.driver.execute_script(self.axe)
        return self.driver.execute_async_script(AXE)

    def take_picture(self, name, width):
        view = {"x": 0, "y": 0, "width": width, "height": self.driver.execute_script(HEIGHT),
                "scale": 1}
        shot = self.driver.execute_cdp_cmd("Page.captureScreenshot", {
            "captureBeyondViewport": True, "clip": view})
        (self.pictures / (name + ".png")).write_bytes(base64.b64decode(shot["data"]))

    def print_paper(self, path, name):
        self.open(path, 800, "", "light")
        sheet = self.driver.execute_cdp_cmd("Page.printToPDF", {
            "paperWidth": 8.27, "paperHeight": 11.69, "preferCSSPageSize": True})
        (self.pictures / (name + ".pdf")).write_bytes(base64.b64decode(sheet["data"]))

    def visit(self, path, name):
        """One line a width and look."""
        for width in self.widths:
            for kind, how in LOOKS.items():
                self.open(path, width, *how)
                over = self.driver.execute_script(SIDEWAYS)
                wrong = ["scrolls sideways by %d px" % over] if over > 0 else []
                wrong += self.driver.execute_script(SQUEEZED)
                wrong += ["console: %s" % m["message"] for m in self.driver.get_log("browser")]
                wrong += ["fetched: %s" % m for m in self.driver.execute_script(FETCHED)]
                sheet = self.driver.execute_script(SHEET, kind)
                wrong += [sheet] if sheet else []
                if self.pictures:
                    self.take_picture("%s-%d-%s" % (name, width, kind), width)
                wrong += self.barriers() if self.axe else []
                yield "%s at %d px, %s" % (name, width, kind), wrong
        if self.pictures:
            self.print_paper(path, name)


def shown(driver):
    return driver.execute_script(
        "return Array.from(document.querySelectorAll('.tagged > li'))"
        ".filter(e => e.offsetParent !== null).map(e => e.dataset.family || e.parentElement.dataset.family)")


def filtered(browser, path, most):
    """The filter, by keys alone: the first family after "all"; what is left empty is not shown."""
    from selenium.webdriver.common.by import By
    from selenium.webdriver.common.keys import Keys
    browser.open(path, 800, *LOOKS["light"])
    driver = browser.driver
    every = shown(driver)
    select = driver.find_element(By.NAME, "family")
    for _ in range(most):
        driver.switch_to.active_element.send_keys(Keys.TAB)
        if driver.switch_to.active_element.text == "Narrow it down":
            driver.switch_to.active_element.send_keys(Keys.ENTER)
        if driver.switch_to.active_element == select:
            break
    if driver.switch_to.active_element != select:
        return ["the filter is not reached by the tab key"]
    select.send_keys(Keys.ARROW_DOWN)
    value, left = select.get_property("value"), shown(driver)
    told = driver.find_element(By.TAG_NAME, "output").text
    wrong = [] if value and left and set(left) == {value} else ["chosen %r, left %r" % (
        value, sorted(set(left)))]
    if told != "%d of %d shown: family %s" % (len(left), len(every), value) or \
            len(left) != every.count(value):
        wrong.append("%s; %d of %d are" % (told, len(left), len(every)))
    empty = driver.execute_script("return Array.from(document.querySelectorAll('.tagged')).filter("
                                  "e => e.offsetParent && !e.innerText.trim()).length")
    wrong += ["%d empty lists are shown" % empty] if empty else []
    browser.open(path, 800, *LOOKS["print"])
    if driver.find_element(By.TAG_NAME, "form").is_displayed():
        wrong.append("an idle filter is printed")
    return wrong


def planted(browser, folder):
    path = pathlib.Path(folder) / "faulty.html"
    path.write_text(FAULTY, encoding="utf-8")
    browser.open(path, 800, *LOOKS["light"])
    unseen = FAULTS - {v.split(":")[0] for v in browser.barriers()}
    return ["not seen: %s" % ", ".join(sorted(unseen))] if unseen else []


def checks(browser, program, folder, quick):
    pages.write_files(folder)
    for name, arguments in pages.PAGES.items():
        text, wrong = pages.page(program, folder, arguments)
        path = pathlib.Path(folder) / (name + ".html")
        path.write_text(text, encoding="utf-8")
        if wrong:
            yield name, wrong
            continue
        yield from browser.visit(path, name)
    for name, most in {"rank": 6, "find": 4}.items():
        yield "filter of %s by family, by keys" % name, filtered(
            browser, pathlib.Path(folder) / (name + ".html"), most)
    if browser.axe:
        yield "axe-core sees the faults of a page that has some", planted(browser, folder)
    elif not quick:
        yield "axe-core on every page # SKIP its file is not there", []


def main(argv):
    args = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    args.add_argument("program", type=lambda path: str(pathlib.Path(path).resolve()))
    args.add_argument("--quick", action="store_true")
    args.add_argument("--axe", type=pathlib.Path)
    args.add_argument("--pictures", type=pathlib.Path)
    args = args.parse_args(argv)
    missing = [n for n in ("chromium", "chromedriver") if not shutil.which(n)]
    try:
        import selenium  # noqa: F401
    except ImportError:
        missing.append("python3-selenium")
    if missing:
        print("1..1\nok 1 - pages in a browser # SKIP not installed: %s" % ", ".join(missing))
        return 0
    bad, number = False, 0
    with tempfile.TemporaryDirectory() as folder, tempfile.TemporaryDirectory() as profile:
        browser = Browser(profile, args)
        try:
            for name, wrong in checks(browser, args.program, folder, args.quick):
                number += 1
                bad = bad or bool(wrong)
                print("%s %d - %s" % ("not ok" if wrong else "ok", number, name), flush=True)
                for line in wrong:
                    print("# %s" % line)
        finally:
            browser.driver.quit()
    print("1..%d" % number)
    return int(bad or number < 2)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
