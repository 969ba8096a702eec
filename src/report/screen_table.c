/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A table is as wide as its cells, and where that is wider than the screen its widest columns give
 * way, first down to their longest word, so that figures stay whole and beneath each other.
 */
#include "report/screen_table.h"

#include <string.h>

#include "report/shown.h"

#define INDENT 2

struct columns {
	size_t count, gap;
	size_t wide[TS_CELLS_MOST]; /* as it will stand */
	size_t word[TS_CELLS_MOST]; /* its longest word */
};

static void measure(struct columns *c, size_t at, const char *cell, bool ascii)
{
	size_t all = strlen(cell);
	bool plain = ts_shown_plain(cell, all);
	size_t wide = plain ? all : ts_shown_width(cell, all, ascii);

	c->wide[at] = wide > c->wide[at] ? wide : c->wide[at];
	if (plain && all <= c->word[at])
		return; /* no word of it is longer */
	while (*cell) {
		size_t len = strcspn(cell, " ");

		wide = plain ? len : ts_shown_width(cell, len, ascii);
		c->word[at] = wide > c->word[at] ? wide : c->word[at];
		cell += len + (cell[len] == ' ');
	}
}

/* The widest column, of those that need break no word if `whole`; count: there is none. */
static size_t widest(const struct columns *c, bool whole)
{
	size_t found = c->count;

	for (size_t i = 0; i < c->count; i++) {
		if ((!whole || c->wide[i] > c->word[i]) && c->wide[i] > 1 &&
			(found == c->count || c->wide[i] > c->wide[found]))
			found = i;
	}
	return found;
}

static size_t whole_width(const struct columns *c)
{
	size_t width = INDENT;

	for (size_t i = 0; i < c->count; i++)
		width += c->wide[i] + (i ? c->gap : 0);
	return width;
}

static void narrow(struct columns *c, bool whole, size_t columns)
{
	size_t at;

	for (size_t width = whole_width(c); width > columns; width--) {
		at = widest(c, whole);
		if (at == c->count)
			return;
		c->wide[at]--;
	}
}

static struct columns lay_out(const struct ts_node *node, const struct ts_screen *screen)
{
	struct columns c = {.gap = 2};

	for (const struct ts_line *line = node->lines; line; line = line->next) {
		c.count = line->count > c.count ? line->count : c.count;
		for (size_t i = 0; i < line->count; i++)
			measure(&c, i, line->cells[i], screen->ascii);
	}
	if (screen->unbroken && node->level)
		return c;
	narrow(&c, true, screen->columns);
	if (whole_width(&c) > screen->columns)
		c.gap = 1;
	narrow(&c, false, screen->columns);
	return c;
}

/*
 * Bytes of a cell that stand on one line of its column: whole words, unless one is too wide; and
 * how wide they are.
 */
static size_t piece(const char *cell, size_t columns, bool ascii, size_t *ret_wide)
{
	size_t len = strlen(cell), next;

	*ret_wide = len;
	if (!len || (len <= columns && cell[0] != ' ' && cell[len - 1] != ' ' &&
			    ts_shown_plain(cell, len)))
		return len;
	len = 0;
	next = strcspn(cell, " ");
	while (next > len && ts_shown_width(cell, next, ascii) <= columns) {
		len = next;
		next += strspn(cell + next, " ");
		next += strcspn(cell + next, " ");
	}
	if (!len)
		len = ts_shown_fit(cell, strcspn(cell, " "), columns, ascii);
	*ret_wide = ts_shown_width(cell, len, ascii);
	return len;
}

/* One line of a row; moves the cells on to what is left of them. */
static bool write_line(struct ts_text *out, const struct columns *c, size_t count,
	const char *rest[TS_CELLS_MOST], bool ascii)
{
	size_t missing = INDENT; /* blanks that stand only before something else */
	bool left = false;

	for (size_t i = 0; i < count; i++) {
		size_t wide, len = piece(rest[i], c->wide[i], ascii, &wide);

		if (len) {
			ts_text_fill(out, ' ', missing);
			ts_shown_add(out, rest[i], len, ascii);
			missing = 0;
		}
		missing += (wide < c->wide[i] ? c->wide[i] - wide : 0) + c->gap;
		rest[i] += len;
		rest[i] += strspn(rest[i], " ");
		left |= *rest[i] != '\0';
	}
	ts_text_put(out, "\n");
	return left;
}

void ts_screen_table(
	struct ts_text *out, const struct ts_node *node, const struct ts_screen *screen)
{
	const struct columns c = lay_out(node, screen);

	for (const struct ts_line *line = node->lines; line; line = line->next) {
		const char *rest[TS_CELLS_MOST];

		for (size_t i = 0; i < line->count; i++)
			rest[i] = line->cells[i];
		while (write_line(out, &c, line->count, rest, screen->ascii))
			;
	}
}
