#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Every page in a real browser (Debian's chromium, driven by python3-selenium).

Usage: browser.py PROGRAM [--pictures FOLDER]. TAP: each page of tests/page.py at 360, 800 and 1280
px, light, dark and as printed: nothing scrolls sideways, the console is silent, nothing is fetched;
the filter of the ranking filters and is reached by keys. Without the browser everything is one
skip.
"""
import pathlib
import shutil
import sys
import tempfile

import page as pages

WIDTHS = (360, 800, 1280)
LOOKS = {"light": ("screen", "light"), "dark": ("screen", "dark"), "print": ("print", "light")}
SIDEWAYS = "return document.documentElement.scrollWidth - document.documentElement.clientWidth"
FETCHED = "return performance.getEntriesByType('resource').map(e => e.name)"


def start(folder):
    from selenium import webdriver
    from selenium.webdriver.chrome.service import Service
    options = webdriver.ChromeOptions()
    for flag in ("--headless=new", "--no-sandbox", "--disable-gpu", "--hide-scrollbars",
                 "--disable-dev-shm-usage", "--user-data-dir=" + folder):
        options.add_argument(flag)
    options.binary_location = shutil.which("chromium")
    options.set_capability("goog:loggingPrefs", {"browser": "ALL"})
    return webdriver.Chrome(service=Service(shutil.which("chromedriver")), options=options)


def look(driver, width, media, scheme):
    driver.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", {
        "width": width, "height": 900, "deviceScaleFactor": 1, "mobile": False})
    driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {
        "media": media, "features": [{"name": "prefers-color-scheme", "value": scheme}]})


def shown(driver):
    return driver.execute_script(
        "return Array.from(document.querySelectorAll('li[data-verdict]'))"
        ".filter(e => e.offsetParent !== null).map(e => e.dataset.family)")


def filtered(driver, path):
    """The filter, by keys alone: the first family after "all"."""
    from selenium.webdriver.common.by import By
    from selenium.webdriver.common.keys import Keys
    driver.get("file://%s" % path)
    look(driver, 800, *LOOKS["light"])
    every = shown(driver)
    select = driver.find_element(By.NAME, "family")
    for _ in range(4):
        driver.switch_to.active_element.send_keys(Keys.TAB)
        if driver.switch_to.active_element == select:
            break
    else:
        return ["the filter is not reached by the tab key"]
    select.send_keys(Keys.ARROW_DOWN)
    value, left = select.get_property("value"), shown(driver)
    told = driver.find_element(By.TAG_NAME, "output").text
    wrong = [] if value and left and set(left) == {value} else ["chosen %r, left %r" % (
        value, sorted(set(left)))]
    if told != "%d of %d shown" % (len(left), len(every)) or len(left) != every.count(value):
        wrong.append("%s; %d of %d are" % (told, len(left), len(every)))
    return wrong


def visit(driver, path, name, pictures):
    """One line a width and look."""
    for width in WIDTHS:
        for kind, how in LOOKS.items():
            driver.get("file://%s" % path)
            look(driver, width, *how)
            wrong = []
            if driver.execute_script(SIDEWAYS) > 0:
                wrong.append("scrolls sideways by %d px" % driver.execute_script(SIDEWAYS))
            wrong += ["console: %s" % m["message"] for m in driver.get_log("browser")]
            wrong += ["fetched: %s" % m for m in driver.execute_script(FETCHED)]
            if pictures:
                driver.save_screenshot(str(pictures / ("%s-%d-%s.png" % (name, width, kind))))
            yield "%s at %d px, %s" % (name, width, kind), wrong


def checks(driver, program, folder, pictures):
    pages.write_files(folder)
    for name, arguments in pages.PAGES.items():
        text, wrong = pages.page(program, folder, arguments)
        path = pathlib.Path(folder) / (name + ".html")
        path.write_text(text, encoding="utf-8")
        if wrong:
            yield name, wrong
            continue
        yield from visit(driver, path, name, pictures)
    yield "filter by family, by keys", filtered(driver, pathlib.Path(folder) / "rank.html")


def main(program, pictures):
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
        driver = start(profile)
        try:
            for name, wrong in checks(driver, program, folder, pictures):
                number += 1
                bad = bad or bool(wrong)
                print("%s %d - %s" % ("not ok" if wrong else "ok", number, name))
                for line in wrong:
                    print("# %s" % line)
        finally:
            driver.quit()
    print("1..%d" % number)
    return int(bad or number < 2)


if __name__ == "__main__":
    PICTURES = pathlib.Path(sys.argv[3]) if sys.argv[2:3] == ["--pictures"] else None
    sys.exit(main(str(pathlib.Path(sys.argv[1]).resolve()), PICTURES))
