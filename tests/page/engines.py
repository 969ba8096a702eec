# SPDX-License-Identifier: Apache-2.0
"""Three browsers behind the same few calls: Chromium over chromedriver and its DevTools, Firefox over
WebDriver BiDi by a small bridge in node (bidi.js), WebKit over its own WebDriver. Each may be missing.

A Browser opens a page (`go`), runs a script (`run`), takes a picture (`picture`) and ends (`quit`).
"""
import base64
import json
import os
import pathlib
import shutil
import signal
import subprocess
import tempfile
import time
import urllib.request

HERE = pathlib.Path(__file__).resolve().parent


def missing(*programs):
    return [name for name in programs if not shutil.which(name)]


class Chromium:
    name = "chromium"
    needs = ("chromium", "chromedriver")

    def __init__(self):
        from selenium import webdriver
        from selenium.webdriver.chrome.service import Service
        self.profile = tempfile.TemporaryDirectory()
        options = webdriver.ChromeOptions()
        for flag in ("--headless=new", "--no-sandbox", "--disable-gpu", "--hide-scrollbars",
                     "--disable-dev-shm-usage", "--user-data-dir=" + self.profile.name):
            options.add_argument(flag)
        options.binary_location = shutil.which("chromium")
        options.set_capability("goog:loggingPrefs", {"browser": "ALL", "performance": "ALL"})
        self.driver = webdriver.Chrome(service=Service(shutil.which("chromedriver")), options=options)
        self.driver.set_script_timeout(180)

    def go(self, address):
        self.driver.get(address)

    def run(self, script, *arguments):
        return self.driver.execute_script(script, *arguments)

    def look(self, width, scheme, media="screen"):
        self.driver.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", {
            "width": width, "height": 844, "deviceScaleFactor": 1, "mobile": False})
        self.driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {
            "media": media, "features": [{"name": "prefers-color-scheme", "value": scheme}]})

    def slow(self, times):
        self.driver.execute_cdp_cmd("Emulation.setCPUThrottlingRate", {"rate": times})

    def picture(self, path, width):
        high = self.run("return Math.min(document.documentElement.scrollHeight, 4000)")
        shot = self.driver.execute_cdp_cmd("Page.captureScreenshot", {
            "captureBeyondViewport": True,
            "clip": {"x": 0, "y": 0, "width": width, "height": high, "scale": 1}})
        path.write_bytes(base64.b64decode(shot["data"]))

    def requests(self):
        """
        Whatever the browser's own log says was asked for since the last call, but for the page, and for
        what has no address elsewhere: the browser's own icons (data:) and its own first page.
        """
        sent = [json.loads(entry["message"])["message"] for entry in self.driver.get_log("performance")]
        asked = [m["params"]["request"]["url"] for m in sent if m["method"] == "Network.requestWillBeSent"]
        return [a for a in asked if not a.split("#")[0].endswith(".html")
                and not a.startswith(("about:", "data:", "chrome:"))]

    def console(self):
        return [m["message"] for m in self.driver.get_log("browser")]

    def quit(self):
        self.driver.quit()
        self.profile.cleanup()


class Firefox:
    """node speaks WebSocket, Python's library does not: one line of JSON a call, one back."""
    name = "firefox"
    needs = ("firefox-esr", "node")

    def __init__(self):
        self.profile = tempfile.TemporaryDirectory()
        env = {**os.environ, "HOME": self.profile.name, "MOZ_HEADLESS": "1"}
        self.bridge = subprocess.Popen(
            ["node", "--experimental-websocket", "--no-warnings", str(HERE / "bidi.js"),
             shutil.which("firefox-esr"), self.profile.name],
            stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, env=env, start_new_session=True)
        self.say(["ready"])

    def say(self, call):
        self.bridge.stdin.write(json.dumps(call) + "\n")
        self.bridge.stdin.flush()
        line = self.bridge.stdout.readline()
        if not line:
            raise OSError("firefox ended")
        answer = json.loads(line)
        if "error" in answer:
            raise OSError(answer["error"])
        return answer["value"]

    def go(self, address):
        self.say(["go", address])

    def run(self, script, *arguments):
        return self.say(["run", "(function () { %s }).apply(null, %s)" % (script, json.dumps(arguments))])

    def quit(self):
        try:
            self.say(["quit"])
        except OSError:
            pass
        try:
            os.killpg(self.bridge.pid, signal.SIGKILL)
        except ProcessLookupError:
            pass
        self.bridge.wait()
        self.profile.cleanup()


class WebKit:
    """WebKitGTK's MiniBrowser under Xvfb and a session bus, over plain WebDriver."""
    name = "webkit"
    needs = ("WebKitWebDriver", "xvfb-run", "dbus-run-session")
    port = 14144

    def __init__(self):
        self.home = tempfile.TemporaryDirectory()
        env = {**os.environ, "HOME": self.home.name, "WEBKIT_DISABLE_COMPOSITING_MODE": "1",
               "WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS": "1", "LIBGL_ALWAYS_SOFTWARE": "1"}
        self.server = subprocess.Popen(
            ["dbus-run-session", "--", "xvfb-run", "-a", "WebKitWebDriver", "--port=%d" % self.port],
            env=env, start_new_session=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        browser = next(iter(sorted(pathlib.Path("/usr/lib").glob("*/webkit2gtk-4.*/MiniBrowser"))))
        wanted = {"capabilities": {"alwaysMatch": {"webkitgtk:browserOptions": {
            "binary": str(browser), "args": ["--automation"]}}}}
        for left in range(100, -1, -1):
            try:
                self.session = self.call("POST", "/session", wanted)["sessionId"]
                break
            except urllib.error.URLError:
                if not left:
                    raise
                time.sleep(0.1)

    def call(self, method, path, body=None):
        asked = urllib.request.Request(
            "http://127.0.0.1:%d%s" % (self.port, path), method=method,
            data=None if body is None else json.dumps(body).encode(),
            headers={"Content-Type": "application/json"})
        with urllib.request.urlopen(asked, timeout=60) as answer:
            return json.load(answer)["value"]

    def go(self, address):
        self.call("POST", "/session/%s/url" % self.session, {"url": address})

    def run(self, script, *arguments):
        return self.call("POST", "/session/%s/execute/sync" % self.session,
                         {"script": script, "args": list(arguments)})

    def quit(self):
        try:
            self.call("DELETE", "/session/%s" % self.session)
        except OSError:
            pass
        try:
            os.killpg(self.server.pid, signal.SIGKILL)
        except ProcessLookupError:
            pass
        self.server.wait()
        self.home.cleanup()


ENGINES = {engine.name: engine for engine in (Chromium, Firefox, WebKit)}
