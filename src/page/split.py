#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""The module laid out so that it can be compressed: what its instructions say in one row, their locals in
another, addresses, calls and figures in others. Like stands beside like then, and a tenth of the whole is
saved. rejoin.js puts it together again, byte for byte.

Usage: split.py MODULE SPLIT; writes SPLIT, and MODULE anew: a hint of alignment that says less than the
instruction itself is left out, and sizes are written in as few bytes as they need.

SPLIT: figures of four bytes (of the whole module, of its functions, of each row that follows), 256 bytes that
say of every instruction what stands behind it, the rows.
"""
import pathlib
import struct
import sys

# The rows; before and behind the code the module stands as it is.
BEFORE, LOCALS, OPS, MISC, BRANCHES, READ, WRITTEN, OFFSETS, CALLS, CONSTANTS, FIGURES, BEHIND = range(12)
# What stands behind an instruction: nothing, a number in the row of this name, an offset behind an alignment
# (ALIGNED + how), or one of these. A local that is read or written, and a function that is
# called, is told by how many others were used since.
ALIGNED, TABLE, INDIRECT, BYTES = 16, 32, 33, 64
UNKNOWN = 255
NOTHING = [(0x00, 0x01), (0x05, 0x05), (0x0b, 0x0b), (0x0f, 0x0f), (0x1a, 0x1b), (0x45, 0xc4)]
BEHIND_EACH = [(0x02, 0x04, MISC), (0x0c, 0x0d, BRANCHES), (0x0e, 0x0e, TABLE), (0x10, 0x10, CALLS), (0x11, 0x11, INDIRECT),
               (0x20, 0x20, READ), (0x21, 0x22, WRITTEN), (0x23, 0x24, MISC), (0x3f, 0x40, MISC), (0x41, 0x42, CONSTANTS), (0x43, 0x43, BYTES + 4),
               (0x44, 0x44, BYTES + 8), (0xfc, 0xfc, MISC)]
ALIGNMENTS = [2, 3, 2, 3, 0, 0, 1, 1, 0, 0, 1, 1, 2, 2, 2, 3, 2, 3, 0, 1, 0, 1, 2]  # of 0x28 to 0x3e
CODE, OPENS, ENDS, SATURATES = 10, (2, 3, 4), 0x0b, 0xfc


def kinds():
    kind = [UNKNOWN] * 256
    for first, last in NOTHING:
        kind[first:last + 1] = [0] * (last + 1 - first)
    for first, last, what in BEHIND_EACH:
        kind[first:last + 1] = [what] * (last + 1 - first)
    kind[0x28:0x3f] = [ALIGNED + how for how in ALIGNMENTS]
    return kind


class Reader:
    def __init__(self, data, at):
        self.data, self.at = data, at

    def taken(self, count):
        self.at += count
        return self.data[self.at - count:self.at]

    def leb(self):
        begin = self.at
        while self.data[self.at] > 127:
            self.at += 1
        self.at += 1
        return self.data[begin:self.at]

    def number(self):
        return sum((byte & 127) << 7 * i for i, byte in enumerate(self.leb()))


def written(number):
    out = bytearray()
    while number > 127:
        out.append(number & 127 | 128)
        number >>= 7
    return bytes(out + bytes([number]))


def since_used(used, number):
    """Its place among those used last, where it is first from now on."""
    used += range(len(used), number + 1)
    since = used.index(number)
    used.insert(0, used.pop(since))
    return since


def instruction(read, rows, kind, used, called):
    """One instruction into the rows, as it stands in the module as well; and what it is."""
    op = read.taken(1)[0]
    what, begin = kind[op], read.at
    rows[OPS].append(op)
    if what == UNKNOWN or op == SATURATES and read.data[read.at] > 7:
        sys.exit("instruction %#x: not known here" % op)
    if what == TABLE:
        count = read.number()
        for _ in range(count + 1):
            read.leb()
        rows[BRANCHES] += read.data[begin:read.at]
    elif what == INDIRECT:
        rows[MISC] += read.leb() + read.leb()
    elif what > BYTES:
        rows[FIGURES] += read.taken(what - BYTES)
    elif what >= ALIGNED:
        read.leb()
        offset = read.leb()
        rows[OFFSETS] += offset
        return op, bytes([op, what - ALIGNED]) + offset
    elif what in (READ, WRITTEN, CALLS):
        rows[what] += written(since_used(called if what == CALLS else used, read.number()))
    elif what:
        rows[what] += read.leb()
    return op, bytes([op]) + read.data[begin:read.at]


def function(read, rows, kind, called):
    size, begin, body, depth, used = read.number(), read.at, bytearray(), 1, []
    for _ in range(read.number()):
        read.leb()
        read.taken(1)
    body += read.data[begin:read.at]
    rows[LOCALS] += body
    while depth:
        op, text = instruction(read, rows, kind, used, called)
        depth += (op in OPENS) - (op == ENDS)
        body += text
    if read.at != begin + size:
        sys.exit("a function ends elsewhere than it says")
    return written(len(body)) + body


def main(module, split):
    data, rows, kind = module.read_bytes(), [bytearray() for _ in range(BEHIND + 1)], kinds()
    read = Reader(data, 8)
    while data[read.at] != CODE:
        read.at += 1
        size = read.number()
        read.at += size
    before = read.at
    read.at += 1
    end = read.number() + read.at
    count, called = read.number(), []
    functions = b"".join(function(read, rows, kind, called) for _ in range(count))
    if read.at != end:
        sys.exit("the code ends elsewhere than it says")
    rows[BEFORE] = data[:before] + bytes([CODE]) + written(len(written(count)) + len(functions)) + written(count)
    rows[BEHIND] = data[end:]
    whole = rows[BEFORE] + functions + rows[BEHIND]
    module.write_bytes(whole)
    split.write_bytes(struct.pack("<%dI" % (2 + len(rows)), len(whole), count, *map(len, rows)) + bytes(kind) + b"".join(rows))


main(*map(pathlib.Path, sys.argv[1:]))
