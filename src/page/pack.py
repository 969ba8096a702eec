#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""A file as LZMA, which unpack.js reads: the format of liblzma's "alone" files with the size known.

Usage: pack.py FILE PACKED
"""
import lzma
import pathlib
import struct
import sys

WINDOW = 1 << 21
# What a byte depends on: bits of the one before, of its place, of the place of a match. Tried: no others make
# the rows of split.py smaller.
BEFORE, PLACE, MATCH = 1, 0, 1


def main(name, output):
    data = pathlib.Path(name).read_bytes()
    packed = lzma.compress(data, format=lzma.FORMAT_RAW, filters=[{
        "id": lzma.FILTER_LZMA1, "preset": 9 | lzma.PRESET_EXTREME, "dict_size": WINDOW, "nice_len": 273,
        "depth": 4000, "lc": BEFORE, "lp": PLACE, "pb": MATCH}])
    head = struct.pack("<BIQ", (MATCH * 5 + PLACE) * 9 + BEFORE, WINDOW, len(data))
    pathlib.Path(output).write_bytes(head + packed)


main(*sys.argv[1:])
