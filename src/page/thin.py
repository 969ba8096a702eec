#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""utf8proc's table of characters as what the program asks of it, packed; the module is 226 kB smaller by that,
35 kB compressed. It is unpacked in memory when the module starts.

Usage: thin.py utf8proc_data.c; rewrites it. What is left answers as before (tests/page/characters.sh): width,
decomposing and folding by utf8proc_charwidth and utf8proc_decompose_char with UTF8PROC_COMPAT. What is left
out: upper and lower case, composing, direction, bounds of letters, and all categories but those that
decomposing looks at.
"""
import pathlib
import re
import sys

# The categories that decomposing strips or lumps; every other is none.
ASKED = {"MN": "MN", "MC": "MN", "ME": "MN", "ZS": "ZS", "PD": "PD", "PC": "PC"}
NO_SEQUENCE, INDEX_MOST, LONGEST = "UINT16_MAX", 0x3FFF, 18
HANGUL = range(0xAC00, 0xAC00 + 11172)  # taken apart by calculation

DATA = """/* Written by thin.py of the page: packed, and unpacked when the module starts. */
static const unsigned char packed_blocks[] = {@blocks@};
static const unsigned char packed_kinds[] = {@kinds@};
static const unsigned char packed_parts[] = {@parts@};
static const unsigned char packed_folds[] = {@folds@};
static const utf8proc_property_t packed_properties[] = {@properties@};
static utf8proc_property_t utf8proc_properties[@rows@];
static utf8proc_uint16_t utf8proc_sequences[@units@], utf8proc_stage1table[sizeof packed_blocks];
static utf8proc_uint16_t utf8proc_stage2table[@places@];
static const utf8proc_uint16_t utf8proc_combinations[2];

/* Sequences of some characters, in order: how many characters before it have none, how many parts, and
each as the difference to the same part of the sequence before. */
struct packed_list {
	const unsigned char *at, *end;
	unsigned gap;
	int before[@longest@];
};
static unsigned packed_units;

static unsigned packed_number(const unsigned char **at)
{
	unsigned number = 0, shift = 0;

	do
		number |= (**at & 127u) << shift;
	while (shift += 7, *(*at)++ > 127);
	return number;
}

static void packed_gap(struct packed_list *list)
{
	list->gap = list->at < list->end ? packed_number(&list->at) : ~0u;
}

static utf8proc_uint16_t packed_sequence(struct packed_list *list)
{
	unsigned count, index = packed_units;

	if (list->gap--)
		return UINT16_MAX;
	count = *list->at++;
	if (count > 3)
		utf8proc_sequences[packed_units++] = (utf8proc_uint16_t)(count - 1);
	for (unsigned i = 0; i < count; i++) {
		unsigned step = packed_number(&list->at);
		int point = list->before[i] += step & 1 ? -(int)(step >> 1) - 1 : (int)(step >> 1);

		if (point > 0xffff)
			utf8proc_sequences[packed_units++] = (utf8proc_uint16_t)(0xd800 | (point - 0x10000) >> 10);
		utf8proc_sequences[packed_units++] =
			(utf8proc_uint16_t)(point > 0xffff ? 0xdc00 | (point & 0x3ff) : point);
	}
	packed_gap(list);
	return (utf8proc_uint16_t)((count > 3 ? 3 : count - 1) << 14 | index);
}

__attribute__((constructor)) static void packed_open(void)
{
	const unsigned char *at = packed_kinds;
	struct packed_list parts = {packed_parts, packed_parts + sizeof packed_parts, 0, {0}};
	struct packed_list folds = {packed_folds, packed_folds + sizeof packed_folds, 0, {0}};
	unsigned rows = sizeof packed_properties / sizeof *packed_properties, place = 0, kind = 0, left = 0;

	for (unsigned i = 0; i < rows; i++)
		utf8proc_properties[i] = packed_properties[i];
	packed_gap(&parts);
	packed_gap(&folds);
	for (unsigned block = 0; block < sizeof packed_blocks; block++) {
		utf8proc_stage1table[block] = (utf8proc_uint16_t)(packed_blocks[block] * 256);
		while (place < (packed_blocks[block] + 1u) * 256) {
			utf8proc_uint16_t part = packed_sequence(&parts), fold = packed_sequence(&folds);

			if (!left) {
				kind = *at++;
				left = packed_number(&at);
			}
			left--;
			utf8proc_stage2table[place] = (utf8proc_uint16_t)kind;
			if (part != UINT16_MAX || fold != UINT16_MAX) {
				utf8proc_properties[rows] = packed_properties[kind];
				utf8proc_properties[rows].decomp_seqindex = part;
				utf8proc_properties[rows].casefold_seqindex = fold;
				utf8proc_stage2table[place] = (utf8proc_uint16_t)rows++;
			}
			place++;
		}
	}
}
"""


def inside(text, name):
    begin = text.index("{\n", text.index(name + "[] = ")) + 2
    return text[begin:text.index("};", begin)]


def numbers(text, name):
    return [int(number) for number in re.findall(r"\d+", inside(text, name))]


def sequence(units, index):
    """The characters that a row's index stands for."""
    if index == NO_SEQUENCE:
        return ()
    count, at = int(index) >> 14, int(index) & INDEX_MOST
    if count == 3:
        count, at = units[at], at + 1
    points = []
    for _ in range(count + 1):
        point, at = units[at], at + 1
        if point & 0xF800 == 0xD800:
            point, at = ((point & 0x3FF) << 10 | units[at] & 0x3FF) + 0x10000, at + 1
        points.append(point)
    return tuple(points)


def number(value):
    out = []
    while value > 127:
        out.append(value & 127 | 128)
        value >>= 7
    return out + [value]


def listed(sequences):
    """As struct packed_list reads it."""
    out, gap, before = [], 0, [0] * LONGEST
    for points in sequences:
        if not points:
            gap += 1
            continue
        out += number(gap) + [len(points)]
        for i, point in enumerate(points):
            step = point - before[i]
            out += number(step * 2 if step >= 0 else -2 * step - 1)
            before[i] = point
        gap = 0
    return out


def runs(kinds):
    out, count = [], 0
    for i, kind in enumerate(kinds):
        count += 1
        if i + 1 == len(kinds) or kinds[i + 1] != kind:
            out += [kind] + number(count)
            count = 0
    return out


def facts(text):
    """Of every row of the table: category and width, parts, folded."""
    units = numbers(text, "utf8proc_sequences")
    for row in re.findall(r"\{([^}]*)\}", inside(text, "utf8proc_properties")):
        cells = [cell.strip() for cell in row.split(",")]
        if len(cells) != 17:
            sys.exit("a row of %d cells: another version of utf8proc" % len(cells))
        category = ASKED.get(cells[0].replace("UTF8PROC_CATEGORY_", ""), "CN")
        yield (category, cells[14]), sequence(units, cells[4]), sequence(units, cells[5])


def main(path):
    text = path.read_text(encoding="utf-8")
    rows = list(facts(text))
    places = numbers(text, "utf8proc_stage2table")
    blocks, order, points = {}, [], []
    for block, at in enumerate(numbers(text, "utf8proc_stage1table")):
        found = [rows[place] for place in places[at:at + 256]]
        found = [(kind, () if block * 256 + i in HANGUL else parts, folded)
                 for i, (kind, parts, folded) in enumerate(found)]
        order.append(blocks.setdefault(tuple(found), len(blocks)))
        if order[-1] * 256 == len(points):
            points += found
    kinds = list(dict.fromkeys(kind for kind, _, _ in points))
    sequences = [points_ for column in (1, 2) for points_ in (point[column] for point in points) if points_]
    units = sum(len(s) + sum(c > 0xFFFF for c in s) + (len(s) > 3) for s in sequences)
    if len(blocks) > 256 or units > INDEX_MOST or max(map(len, sequences)) > LONGEST:
        sys.exit("tables of another size: another version of utf8proc")
    parts = {
        "blocks": order, "kinds": runs([kinds.index(kind) for kind, _, _ in points]),
        "parts": listed(point[1] for point in points), "folds": listed(point[2] for point in points),
        "properties": ["{.category = UTF8PROC_CATEGORY_%s, .charwidth = %s, .decomp_seqindex = UINT16_MAX, "
                       ".casefold_seqindex = UINT16_MAX}" % kind for kind in kinds],
        "rows": [len(kinds) + sum(bool(a or b) for _, a, b in points)], "units": [units], "places": [len(points)],
        "longest": [LONGEST]}
    path.write_text(re.sub("@([a-z]+)@", lambda found: ", ".join(map(str, parts[found.group(1)])), DATA), encoding="utf-8")


main(pathlib.Path(sys.argv[1]))
