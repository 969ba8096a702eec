#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""A file as gzip by zopfli, in as many blocks as pay: the command of that name makes fifteen at most, and the
rows of the module alone are a dozen.

Usage: compress.py ROUNDS FILE; writes FILE.gz.
"""
import ctypes
import pathlib
import sys

GZIP = 0


class Options(ctypes.Structure):  # as zopfli.h has it
    _fields_ = [(name, ctypes.c_int) for name in (
        "verbose", "verbose_more", "numiterations", "blocksplitting", "blocksplittinglast", "blocksplittingmax")]


def main(rounds, name):
    library, options = ctypes.CDLL("libzopfli.so.1"), Options()
    library.ZopfliInitOptions(ctypes.byref(options))
    options.numiterations, options.blocksplittingmax = int(rounds), 0
    data, size = pathlib.Path(name).read_bytes(), ctypes.c_size_t(0)
    out = ctypes.POINTER(ctypes.c_ubyte)()
    library.ZopfliCompress(ctypes.byref(options), GZIP, data, ctypes.c_size_t(len(data)), ctypes.byref(out), ctypes.byref(size))
    pathlib.Path(name + ".gz").write_bytes(ctypes.string_at(out, size.value))


main(*sys.argv[1:])
