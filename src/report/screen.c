/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The text visitor. One blank line stands between nodes of different kinds and between paragraphs;
 * entries and lines stand close. Charts are drawn next door, in curve.c.
 */
#include "report/screen.h"

#include <string.h>
#include <utf8proc.h>

#include "report/curve.h"

const struct ts_screen ts_screen_plain = {80, false, false, false};

/*
 * One hue a parameter, from the palette for colour-blind readers in Wong 2011, Nature Methods
 * 8:441 (blue, orange, bluish green, reddish purple), as the nearest of a terminal's 256.
 */
static const char *const hues[TS_HUE__COUNT] = {
	[TS_HUE_NONE] = "",
	[TS_HUE_GH] = "\033[38;5;32m",
	[TS_HUE_KH] = "\033[38;5;172m",
	[TS_HUE_PH] = "\033[38;5;36m",
	[TS_HUE_TEMPERATURE] = "\033[38;5;175m",
};
#define BOLD "\033[1m"
#define PLAIN "\033[0m"

size_t ts_screen_width(const char *text, size_t len)
{
	size_t width = 0;

	while (len) {
		utf8proc_int32_t point = 0;
		utf8proc_ssize_t used = 1;
		int wide = 1;

		if (*text < ' ' || *text > '~') { /* few are: the others take a column each */
			used = utf8proc_iterate(
				(const utf8proc_uint8_t *)text, (utf8proc_ssize_t)len, &point);
			wide = used > 0 ? utf8proc_charwidth(point) : 1;
			used = used > 0 ? used : 1;
		}
		width += wide > 0 ? (size_t)wide : 0;
		text += used;
		len -= (size_t)used;
	}
	return width;
}

/* One wrapped text: the first line starts at `column`, all further ones at `indent`. */
static void wrap(struct ts_text *out, const char *text, size_t column, size_t indent, size_t most)
{
	bool fresh = true; /* nothing of this text stands on the line yet */

	while (*text) {
		size_t len = strcspn(text, " \n"), wide = ts_screen_width(text, len);

		if (!fresh && column + 1 + wide > most) {
			ts_text_put(out, "\n");
			ts_text_fill(out, ' ', indent);
			column = indent;
			fresh = true;
		}
		ts_text_put(out, fresh ? "" : " ");
		column += !fresh + wide;
		ts_text_add(out, text, len);
		fresh = false;
		text += len;
		text += strspn(text, " \n");
	}
	ts_text_put(out, "\n");
}

static void styled(struct ts_text *out, const struct ts_screen *screen, const char *style,
	const char *text, size_t column, size_t indent)
{
	bool on = screen->color && *style;

	ts_text_put(out, on ? style : "");
	wrap(out, text, column, indent, screen->columns);
	if (on) {
		out->len -= out->len > 0; /* the end of the style stands before the line's end */
		ts_text_put(out, PLAIN "\n");
	}
}

static void write_entry(
	struct ts_text *out, const struct ts_node *node, const struct ts_screen *screen)
{
	ts_text_fill(out, ' ', 2);
	wrap(out, node->text, 2, 4, screen->columns);
	for (const struct ts_line *line = node->lines; line && !screen->brief; line = line->next) {
		ts_text_fill(out, ' ', 6);
		styled(out, screen, hues[line->hue], line->cells[0], 6, 8);
	}
}

/* Width of the widest cell of a column, at most a third of the screen. */
static size_t column_width(const struct ts_node *node, size_t cell, const struct ts_screen *screen)
{
	size_t widest = 0;

	for (const struct ts_line *line = node->lines; line; line = line->next) {
		size_t wide = cell < line->count ? ts_screen_width(line->cells[cell],
							   strlen(line->cells[cell]))
						 : 0;

		widest = wide > widest ? wide : widest;
	}
	return widest < screen->columns / 3 ? widest : screen->columns / 3;
}

/* Label, then the value wrapped beside it; a note stands behind the value. */
static void write_facts(
	struct ts_text *out, const struct ts_node *node, const struct ts_screen *screen)
{
	size_t indent = 2 * node->level, widest = column_width(node, 0, screen);

	for (const struct ts_line *line = node->lines; line; line = line->next) {
		size_t wide = ts_screen_width(line->cells[0], strlen(line->cells[0]));
		size_t gap = widest + 2 > wide + 1 ? widest + 2 - wide : 2;
		struct ts_text value;

		ts_text_fill(out, ' ', indent);
		ts_text_put(out, line->cells[0]);
		ts_text_fill(out, ' ', gap);
		ts_text_open(&value, &out->allocator);
		for (size_t i = 1; i < line->count; i++)
			ts_text_puts(&value, i > 1 ? "  " : "", line->cells[i], NULL);
		styled(out, screen, hues[line->hue], ts_text_get(&value), indent + wide + gap,
			indent + widest + 2);
		out->failed |= value.failed;
		ts_text_drop(&value);
	}
}

/* Columns of a table as wide as their widest cell, numbers included, left-aligned. */
static void write_table(
	struct ts_text *out, const struct ts_node *node, const struct ts_screen *screen)
{
	size_t widths[TS_CELLS_MOST] = {0};

	for (size_t i = 0; i < TS_CELLS_MOST; i++)
		widths[i] = column_width(node, i, screen);
	for (const struct ts_line *line = node->lines; line; line = line->next) {
		size_t column = 2;

		ts_text_put(out, "  ");
		for (size_t i = 0; i + 1 < line->count; i++) {
			size_t wide = ts_screen_width(line->cells[i], strlen(line->cells[i]));

			ts_text_put(out, line->cells[i]);
			ts_text_fill(out, ' ', (wide < widths[i] ? widths[i] - wide : 0) + 2);
			column += (wide < widths[i] ? widths[i] : wide) + 2;
		}
		if (line->count)
			wrap(out, line->cells[line->count - 1], column, column, screen->columns);
	}
}

static void write_steps(
	struct ts_text *out, const struct ts_node *node, const struct ts_screen *screen)
{
	struct ts_node as_facts = *node;

	as_facts.level = 1;
	write_facts(out, &as_facts, screen);
}

static void write_node(
	struct ts_text *out, const struct ts_node *node, const struct ts_screen *screen)
{
	switch (node->kind) {
	case TS_NODE_VERDICT:
		styled(out, screen, BOLD, node->text, 0, 0);
		if (node->more && *node->more)
			wrap(out, node->more, 0, 0, screen->columns);
		break;
	case TS_NODE_HEADING:
		ts_text_fill(out, ' ', 2 * (size_t)node->level);
		styled(out, screen, BOLD, node->text, 2 * (size_t)node->level,
			2 * (size_t)node->level);
		break;
	case TS_NODE_ENTRY:
		write_entry(out, node, screen);
		break;
	case TS_NODE_FACTS:
		write_facts(out, node, screen);
		break;
	case TS_NODE_TABLE:
		write_table(out, node, screen);
		break;
	case TS_NODE_STEPS:
		write_steps(out, node, screen);
		break;
	case TS_NODE_CURVE:
		ts_curve_write(out, node->curve, screen);
		break;
	case TS_NODE_CAUTION:
		ts_text_put(out, "Caution: ");
		wrap(out, node->text, 9, 2, screen->columns);
		break;
	default:
		wrap(out, node->text, 0, 0, screen->columns);
		break;
	}
}

/* Whether a blank line parts two neighbours. */
static bool parted(const struct ts_node *a, const struct ts_node *b)
{
	if (a->kind == TS_NODE_HEADING)
		return false;
	if (a->kind != b->kind)
		return !(a->level == 1 && b->level == 1);
	return a->kind != TS_NODE_ENTRY && a->kind != TS_NODE_CAUTION && a->kind != TS_NODE_SEE &&
	       !(a->kind == TS_NODE_FACTS && a->level == b->level);
}

void ts_screen_write(
	struct ts_text *out, const struct ts_document *doc, const struct ts_screen *screen)
{
	for (const struct ts_node *node = doc->first; node; node = node->next) {
		write_node(out, node, screen);
		if (node->next && parted(node, node->next))
			ts_text_put(out, "\n");
	}
}
