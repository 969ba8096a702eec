#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""One HTML file of program, records, style and script; what it forbids is bound to their checksums.

Usage: assemble.py MODULE IMAGE FOLDER; MODULE as split.py lays it out and pack.py packs it.
FOLDER/tapshoal.html is the page as a file; FOLDER/site is the same for a web server, with what lets a phone
keep it: a manifest, a service worker, an icon.
"""
import base64
import gzip
import hashlib
import json
import pathlib
import re
import sys

HERE = pathlib.Path(__file__).resolve().parent
SCRIPTS = [HERE / name for name in ("program.js", "unpack.js", "rejoin.js", "files.js", "form.js", "answer.js", "animals.js")] + [
    HERE.parent / "report" / "page.js"] + [HERE / name for name in ("first.js", "take.js", "page.js")]
STYLES = [HERE.parent / "report" / "page.css", HERE / "page.css"]
MOST = 1200000  # bytes of the whole file
# A reading as an upright tick across the outline of an animal, as the answers draw it.
ICON = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 64 64"><path fill="#fff" d="M0 0h64v64H0z"/>' \
    '<path fill="none" stroke="#0072b2" stroke-width="4" d="M8 48l12-28h22l14 28"/>' \
    '<path stroke="#161616" stroke-width="4" d="M32 10v44"/></svg>\n'
MANIFEST = {"name": "tapshoal", "short_name": "tapshoal", "start_url": "./", "scope": "./", "display": "standalone",
            "background_color": "#ffffff", "theme_color": "#ffffff",
            "icons": [{"src": "icon.svg", "sizes": "any", "type": "image/svg+xml"}]}
HEAD = '<link rel="manifest" href="manifest.webmanifest"/>\n<link rel="icon" href="icon.svg"/>\n'


def written(data):
    return base64.b64encode(data).decode("ascii")


def together(paths):
    """The files without their indents; a comment of a whole line is left out."""
    lines = [line.strip() for path in paths for line in path.read_text(encoding="utf-8").splitlines()]
    return "\n".join(line for line in lines if line and not line.startswith("//"))


def checksum(text):
    return "'sha256-%s'" % base64.b64encode(hashlib.sha256(text.encode("utf-8")).digest()).decode("ascii")


def assemble(module, image, site):
    script, style = together(SCRIPTS), together(STYLES)
    if "</script" in script or "</style" in style:
        raise ValueError("an end tag stands in the script or the style")
    policy = "default-src 'none'; script-src %s 'wasm-unsafe-eval'; style-src %s; base-uri 'none'; " \
        "form-action 'none'" % (checksum(script), checksum(style))
    if site:
        policy += "; manifest-src 'self'; worker-src 'self'; img-src 'self'"
    parts = {"POLICY": policy, "HEAD": HEAD if site else "", "STYLE": style, "SCRIPT": script,
             "PROGRAM": written(module.read_bytes()),
             "RECORDS": written(gzip.compress(image.read_bytes(), 9, mtime=0))}
    sheet = (HERE / "sheet.html").read_text(encoding="utf-8")
    return re.sub("@([A-Z]+)@", lambda found: parts[found.group(1)], sheet)


def main(argv):
    module, image, folder = (pathlib.Path(name) for name in argv)
    page = assemble(module, image, False).encode("utf-8")
    output = folder / "tapshoal.html"
    output.write_bytes(page)
    print("%s: %d bytes" % (output, len(page)))
    site = folder / "site"
    site.mkdir(exist_ok=True)
    index = assemble(module, image, True)
    (site / "index.html").write_text(index, encoding="utf-8")
    (site / "icon.svg").write_text(ICON, encoding="utf-8")
    (site / "manifest.webmanifest").write_text(json.dumps(MANIFEST, indent=1) + "\n", encoding="utf-8")
    version = hashlib.sha256(index.encode("utf-8")).hexdigest()[:16]
    worker = (HERE / "worker.js").read_text(encoding="utf-8").replace("@VERSION@", version)
    (site / "worker.js").write_text(worker, encoding="utf-8")
    if len(page) > MOST:
        sys.exit("larger than %d bytes" % MOST)


if __name__ == "__main__":
    main(sys.argv[1:])
