/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The brief visitor: no indent, no table, no drawing, since nobody knows where it is pasted.
 */
#include "report/brief.h"

#include <string.h>

#include "report/shown.h"

#define RECORDS_MOST 6

struct brief {
	struct ts_text *out, piece;
	size_t letters;
	bool ascii, full;
	const char *heading; /* stands above the next piece that finds room; NULL: none */
};

static size_t letters(const char *text)
{
	size_t count = 0;

	for (; *text; text++)
		count += ((unsigned char)*text & 0xc0) != 0x80;
	return count;
}

/* Without " (--temperature 24..26)": whoever reads a message calls no program. */
static void put_unflagged(struct ts_text *out, const char *text)
{
	const char *flag;

	while ((flag = strstr(text, " (--")) && strchr(flag, ')')) {
		ts_text_add(out, text, (size_t)(flag - text));
		text = strchr(flag, ')') + 1;
	}
	ts_text_put(out, text);
}

/* Adds a line where it fits; one that does not ends the text. */
static bool put_line(struct brief *b, const char *text)
{
	struct ts_text shown, plain;
	size_t more;

	ts_text_open(&shown, &b->out->allocator);
	ts_text_open(&plain, &b->out->allocator);
	put_unflagged(&plain, text);
	ts_shown_add(&shown, ts_text_get(&plain), plain.len, b->ascii);
	more = letters(ts_text_get(&shown)) + 1;
	b->full |= b->letters + more > TS_BRIEF_MOST;
	if (!b->full) {
		ts_text_puts(b->out, ts_text_get(&shown), "\n", NULL);
		b->letters += more;
	}
	b->out->failed |= shown.failed | plain.failed;
	ts_text_drop(&plain);
	ts_text_drop(&shown);
	return !b->full;
}

/* One piece with its heading, both or none. */
static void put(struct brief *b, const char *text)
{
	if (b->full || !text || !*text)
		return;
	if (b->heading) {
		b->full = b->letters + letters(b->heading) + letters(text) + 2 > TS_BRIEF_MOST;
		if (b->full || !put_line(b, b->heading))
			return;
		b->heading = NULL;
	}
	put_line(b, text);
}

/* The cells of a line as one sentence: "day 1: change 20 L". */
static void put_cells(struct brief *b, const struct ts_line *line)
{
	if (line->count > 1 && strncmp(line->cells[1], "--", 2) == 0)
		return; /* what only a terminal takes */
	ts_text_clear(&b->piece);
	for (size_t i = 0; i < line->count; i++) {
		if (!*line->cells[i])
			continue;
		ts_text_puts(&b->piece,
			!b->piece.len ? ""
			: i == 1      ? ": "
				      : " ",
			line->cells[i], NULL);
	}
	put(b, ts_text_get(&b->piece));
}

static void put_entry(struct brief *b, const struct ts_node *node)
{
	ts_text_clear(&b->piece);
	ts_text_put(&b->piece, node->text);
	for (const struct ts_line *line = node->lines; line && !node->tags; line = line->next)
		ts_text_puts(&b->piece, "; ", line->cells[0], NULL);
	put(b, ts_text_get(&b->piece));
}

/* A figure has its noun before it; words speak for themselves. */
static void put_cell(struct brief *b, const char *head, const char *cell, size_t index)
{
	bool figure = index && *cell >= '0' && *cell <= '9';

	ts_text_puts(&b->piece,
		!index       ? ""
		: index == 1 ? ": "
			     : ", ",
		figure ? head : "", figure ? " " : "", cell, NULL);
}

/* The first of a list: "guppy: grown 5 cm, together 3, tank 60 cm"; the last cell is what no
 * message needs. */
static void put_records(struct brief *b, const struct ts_node *node)
{
	const struct ts_line *head = node->lines;
	size_t count = 0;

	for (const struct ts_line *line = head ? head->next : NULL; line && count < RECORDS_MOST;
		line = line->next, count++) {
		ts_text_clear(&b->piece);
		for (size_t i = 0; i + 1 < line->count; i++) {
			if (*line->cells[i])
				put_cell(b, head->cells[i], line->cells[i], i);
		}
		put(b, ts_text_get(&b->piece));
	}
}

static void put_node(struct brief *b, const struct ts_node *node)
{
	switch (node->kind) {
	case TS_NODE_HEADING:
		b->heading = node->level ? b->heading : node->text;
		break;
	case TS_NODE_PARAGRAPH:
		put(b, node->text);
		break;
	case TS_NODE_ENTRY:
		put_entry(b, node);
		break;
	case TS_NODE_FACTS:
	case TS_NODE_STEPS:
		for (const struct ts_line *line = node->lines; line; line = line->next)
			put_cells(b, line);
		break;
	case TS_NODE_TABLE: /* the first stood before; its heading is none of what follows */
	case TS_NODE_FOLD:
	case TS_NODE_UNFOLD:
		b->heading = NULL;
		break;
	default: /* verdicts and cautions stood first; the rest is no text */
		break;
	}
}

static bool read_here(const struct ts_node *node)
{
	return node->medium == TS_EVERYWHERE || node->medium == TS_OFF_PAPER;
}

/* What follows the last verdict: before it stand the details of another one. */
static void put_rest(struct brief *b, const struct ts_document *doc)
{
	const struct ts_node *begin = doc->first;

	for (const struct ts_node *node = doc->first; node; node = node->next)
		begin = node->kind == TS_NODE_VERDICT && read_here(node) ? node : begin;
	for (const struct ts_node *node = begin; node && !b->full; node = node->next) {
		if (read_here(node))
			put_node(b, node);
	}
}

void ts_brief_write(struct ts_text *out, const struct ts_document *doc, bool ascii)
{
	struct brief b = {.out = out, .ascii = ascii};

	ts_text_open(&b.piece, &out->allocator);
	for (const struct ts_node *node = doc->first; node; node = node->next) {
		if (node->kind != TS_NODE_VERDICT || !read_here(node))
			continue;
		put(&b, node->text);
		put(&b, node->more);
	}
	for (const struct ts_node *node = doc->first; node; node = node->next) {
		if (node->kind == TS_NODE_CAUTION && read_here(node))
			put(&b, node->text);
	}
	for (const struct ts_node *node = doc->first; node; node = node->next) {
		if (node->kind == TS_NODE_TABLE && node->level && read_here(node)) {
			put_records(&b, node);
			break;
		}
	}
	put_rest(&b, doc);
	out->failed |= b.piece.failed;
	ts_text_drop(&b.piece);
}
