#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""One HTML file of program, records, style and script; what it forbids is bound to their checksums.

Usage: assemble.py MODULE IMAGE OUTPUT
"""
import base64
import gzip
import hashlib
import pathlib
import re
import sys

HERE = pathlib.Path(__file__).resolve().parent
SCRIPTS = [HERE / name for name in ("program.js", "files.js", "form.js", "answer.js")] + [
    HERE.parent / "report" / "page.js"] + [HERE / name for name in ("first.js", "page.js")]
STYLES = [HERE.parent / "report" / "page.css", HERE / "page.css"]
MOST = 1200000  # bytes of the whole file


def packed(path):
    return base64.b64encode(gzip.compress(path.read_bytes(), 9, mtime=0)).decode("ascii")


def together(paths):
    """The files without their indents; a comment of a whole line is left out."""
    lines = [line.strip() for path in paths for line in path.read_text(encoding="utf-8").splitlines()]
    return "\n".join(line for line in lines if line and not line.startswith("//"))


def checksum(text):
    return "'sha256-%s'" % base64.b64encode(hashlib.sha256(text.encode("utf-8")).digest()).decode("ascii")


def assemble(module, image):
    script, style = together(SCRIPTS), together(STYLES)
    if "</script" in script or "</style" in style:
        raise ValueError("an end tag stands in the script or the style")
    policy = "default-src 'none'; script-src %s 'wasm-unsafe-eval'; style-src %s; base-uri 'none'; " \
        "form-action 'none'" % (checksum(script), checksum(style))
    parts = {"POLICY": policy, "HEAD": "", "STYLE": style, "SCRIPT": script,
             "PROGRAM": packed(module), "RECORDS": packed(image)}
    sheet = (HERE / "sheet.html").read_text(encoding="utf-8")
    return re.sub("@([A-Z]+)@", lambda found: parts[found.group(1)], sheet)


def main(argv):
    module, image, output = (pathlib.Path(name) for name in argv)
    page = assemble(module, image).encode("utf-8")
    output.write_bytes(page)
    print("%s: %d bytes" % (output, len(page)))
    if len(page) > MOST:
        sys.exit("larger than %d bytes" % MOST)


if __name__ == "__main__":
    main(sys.argv[1:])
