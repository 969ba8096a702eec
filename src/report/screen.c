/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The text visitor. One blank line stands between nodes of different kinds and between paragraphs;
 * entries and lines stand close. Charts are drawn next door, in curve.c.
 */
#include "report/screen.h"

#include <string.h>

#include "report/curve.h"
#include "report/screen_table.h"
#include "report/shown.h"

const struct ts_screen ts_screen_plain = {80, false, false, false, false};

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

static size_t width(const char *text, const struct ts_screen *screen)
{
	return ts_shown_width(text, strlen(text), screen->ascii);
}

static void put(struct ts_text *out, const char *text, const struct ts_screen *screen)
{
	ts_shown_add(out, text, strlen(text), screen->ascii);
}

/* A word that is wider than a whole line is broken where the line ends. */
static void put_long(struct ts_text *out, const char *word, size_t len, size_t *column,
	size_t indent, const struct ts_screen *screen)
{
	size_t room = screen->columns > *column ? screen->columns - *column : 1;
	size_t fits = ts_shown_fit(word, len, room, screen->ascii);

	while (fits < len) {
		ts_shown_add(out, word, fits, screen->ascii);
		ts_text_put(out, "\n");
		ts_text_fill(out, ' ', indent);
		word += fits;
		len -= fits;
		room = screen->columns > indent ? screen->columns - indent : 1;
		fits = ts_shown_fit(word, len, room, screen->ascii);
		*column = indent;
	}
	ts_shown_add(out, word, len, screen->ascii);
	*column += ts_shown_width(word, len, screen->ascii);
}

void ts_screen_wrap(struct ts_text *out, const char *text, size_t column, size_t indent,
	const struct ts_screen *screen)
{
	bool fresh = true; /* nothing of this text stands on the line yet */

	while (*text) {
		size_t len = strcspn(text, " \n"), wide = ts_shown_width(text, len, screen->ascii);
		bool long_word = indent + wide > screen->columns;

		if (!fresh && column + 1 + wide > screen->columns && !long_word) {
			ts_text_put(out, "\n");
			ts_text_fill(out, ' ', indent);
			column = indent;
			fresh = true;
		}
		ts_text_put(out, fresh ? "" : " ");
		column += !fresh;
		put_long(out, text, len, &column, indent, screen);
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
	ts_screen_wrap(out, text, column, indent, screen);
	if (on) {
		out->len -= out->len > 0; /* the end of the style stands before the line's end */
		ts_text_put(out, PLAIN "\n");
	}
}

static void write_entry(
	struct ts_text *out, const struct ts_node *node, const struct ts_screen *screen)
{
	ts_text_fill(out, ' ', 2);
	ts_screen_wrap(out, node->text, 2, 4, screen);
	for (const struct ts_line *line = node->lines; line && !screen->brief; line = line->next) {
		ts_text_fill(out, ' ', 6);
		styled(out, screen, hues[line->hue], line->cells[0], 6, 8);
	}
}

static size_t value_width(const struct ts_line *line, const struct ts_screen *screen)
{
	size_t wide = 0;

	for (size_t i = 1; i < line->count; i++)
		wide += width(line->cells[i], screen) + (i > 1 ? 2 : 0);
	return wide;
}

/* Width of the widest label; where no value stands beside it unbroken, a third of the screen. */
static size_t labels_width(
	const struct ts_node *node, size_t indent, const struct ts_screen *screen)
{
	size_t widest = 0, value = 0;

	for (const struct ts_line *line = node->lines; line; line = line->next) {
		size_t label = line->count ? width(line->cells[0], screen) : 0;
		size_t wide = value_width(line, screen);

		widest = label > widest ? label : widest;
		value = wide > value ? wide : value;
	}
	if (indent + widest + 2 + value <= screen->columns)
		return widest;
	return widest < screen->columns / 3 ? widest : screen->columns / 3;
}

/* Leaves room behind a label; one that is wider than their column stands above its value. */
static size_t write_label(struct ts_text *out, const char *label, size_t indent, size_t widest,
	const struct ts_screen *screen)
{
	size_t wide = width(label, screen);

	ts_text_fill(out, ' ', indent);
	if (wide <= widest) {
		put(out, label, screen);
		ts_text_fill(out, ' ', widest + 2 - wide);
	} else {
		ts_screen_wrap(out, label, indent, indent + 2, screen);
		ts_text_fill(out, ' ', indent + widest + 2);
	}
	return indent + widest + 2;
}

/* Label, then the value wrapped beside it; a note stands behind the value. */
static void write_facts(
	struct ts_text *out, const struct ts_node *node, const struct ts_screen *screen)
{
	size_t indent = 2 * node->level, widest = labels_width(node, indent, screen);

	for (const struct ts_line *line = node->lines; line; line = line->next) {
		size_t column = write_label(out, line->cells[0], indent, widest, screen);
		struct ts_text value;

		ts_text_open(&value, &out->allocator);
		for (size_t i = 1; i < line->count; i++)
			ts_text_puts(&value, i > 1 ? "  " : "", line->cells[i], NULL);
		styled(out, screen, hues[line->hue], ts_text_get(&value), column, column);
		out->failed |= value.failed;
		ts_text_drop(&value);
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
			ts_screen_wrap(out, node->more, 0, 0, screen);
		break;
	case TS_NODE_HEADING:
	case TS_NODE_FOLD:
		ts_text_fill(out, ' ', 2 * (size_t)node->level);
		styled(out, screen, BOLD, node->text, 2 * (size_t)node->level,
			2 * (size_t)node->level);
		break;
	case TS_NODE_UNFOLD:
		break;
	case TS_NODE_ENTRY:
		write_entry(out, node, screen);
		break;
	case TS_NODE_FACTS:
		write_facts(out, node, screen);
		break;
	case TS_NODE_TABLE:
		ts_screen_table(out, node, screen);
		break;
	case TS_NODE_STEPS:
		write_steps(out, node, screen);
		break;
	case TS_NODE_CURVE:
		ts_curve_write(out, node->curve, screen);
		break;
	default:
		ts_screen_wrap(out, node->text, 0, 0, screen);
		break;
	}
}

/* Whether a blank line parts two neighbours. */
static bool parted(const struct ts_node *a, const struct ts_node *b)
{
	if (a->kind == TS_NODE_HEADING || a->kind == TS_NODE_FOLD || a->kind == TS_NODE_UNFOLD)
		return false;
	if (b->kind == TS_NODE_UNFOLD || b->kind == TS_NODE_HEADING)
		return true;
	if (a->kind != b->kind)
		return !(a->level == 1 && b->level == 1);
	return a->kind != TS_NODE_ENTRY && a->kind != TS_NODE_SEE &&
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
