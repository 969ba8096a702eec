#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Tests of mutate.py: which faults it makes, of which lines, and which it excuses. Prints TAP."""
import collections
import sys

import mutate

TEXT = '''#include <math.h>
#define MOST 3 /* 4 < 5 */
static const double table[] = {0.5, -2};
static const char *word = "a < 1";

bool f(const double *list, int n)
{
	double sum = 0;

	for (int i = 0; i < n; i++) {
		if (!list[i])
			continue;
		sum += fmin(list[i], 0x10);
	}
	clear(sum);
	if (sum > MOST && n)
		return true;
	return false;
}

enum e g(void)
{
	if (1)
		return ONE;
	return TWO;
}
'''
FAULTS = [
    ("", 2, "3 -> 4"), ("", 3, "0.5 -> 0.55"), ("", 3, "- -> nothing"), ("", 3, "2 -> 3"),
    ("f", 8, "0 -> 1"), ("f", 10, "0 -> 1"), ("f", 10, "< -> <="), ("f", 10, "< -> >="),
    ("f", 11, "! -> nothing"), ("f", 12, "continue -> break"),
    ("f", 13, "removed sum += fmin(list[i], 0x10)"), ("f", 13, "+= -> -="),
    ("f", 13, "fmin -> fmax"),
    ("f", 15, "removed clear(sum)"), ("f", 16, "> -> >="), ("f", 16, "> -> <="),
    ("f", 16, "&& -> ||"), ("f", 17, "true -> false"), ("f", 18, "false -> true"),
    ("g", 23, "1 -> 0"), ("g", 24, "ONE -> TWO"), ("g", 25, "TWO -> ONE")]


def main():
    mutants = list(mutate.mutants_of("f.c", TEXT))
    keys = [mutate.row(m) for m in mutants]
    twice = list(mutate.mutants_of("g.c", "int g(void)\n{\n\treturn 2 + 2;\n}\n"))
    first = mutate.sampled(mutants, 14, 1)

    def refused(line):
        try:
            mutate.excuses([line], mutants)
        except ValueError:
            return True
        return False

    points = [
        ("the faults of a text, and none in comments, quotes and hexadecimal",
         sorted((m.function, m.line, m.change) for m in mutants) == sorted(FAULTS)),
        ("a fault is put in its place",
         [TEXT[:m.start] + m.new + TEXT[m.end:] for m in mutants if m.line == 15] ==
         [TEXT.replace("clear(sum)", "")]),
        ("the same change twice in a line is told apart",
         [m.change for m in twice] == ["2 -> 3", "+ -> -", "2 -> 3 @2"]),
        ("a seed gives the same sample", first == mutate.sampled(mutants, 14, 1)),
        ("another seed gives another", first != mutate.sampled(mutants, 14, 2)),
        ("no line has two faults while another has none",
         max(collections.Counter(m.line for m in first).values()) == 1),
        ("a row with a reason excuses its fault",
         mutate.excuses(["# x", keys[0] + " | no use"], mutants) == {mutants[0]: "no use"}),
        ("a row that fits no fault is refused", refused("f.c | f | x | < -> > | none")),
        ("a row without a reason is refused", refused(keys[0])),
    ]
    print("1..%d" % len(points))
    for number, (name, good) in enumerate(points, 1):
        print("%s %d - %s" % ("ok" if good else "not ok", number, name))
    return int(not all(good for _, good in points))


if __name__ == "__main__":
    sys.exit(main())
