/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Several animals against several waters: a table of both where it fits the screen, else a list;
 * then where each animal fares worst.
 */
#include <string.h>

#include "report/shown.h"
#include "show/why.h"
#include "words/care.h"
#include "words/sentence.h"

/* A table as wide as a terminal everywhere, and its columns as wide as the screen leaves them. */
#define TABLE_WIDTH 80
#define COLUMN_WIDTH (TABLE_WIDTH / 3)

static const char *head(const struct ts_why_waters_result *r, bool of_water, size_t i)
{
	return of_water ? r->waters[i].name : r->species[i].called;
}

static size_t width(const char *text)
{
	return ts_shown_width(text, strlen(text), false);
}

/* One line of the table. */
static void grid_line(
	const struct ts_why_waters_result *r, bool waters_down, size_t row, const char **ret)
{
	size_t columns = waters_down ? r->species_count : r->water_count;

	ret[0] = row ? head(r, waters_down, row - 1) : waters_down ? "water" : "species";
	for (size_t i = 0; i < columns; i++) {
		size_t species = waters_down ? i : row - 1, water = waters_down ? row - 1 : i;

		ret[i + 1] = row ? r->cells[species * r->water_count + water].in_short
				 : head(r, !waters_down, i);
	}
}

/* Whether a table of this orientation stays within the screen. */
static bool grid_fits(const struct ts_why_waters_result *r, bool waters_down)
{
	size_t rows = waters_down ? r->water_count : r->species_count;
	size_t columns = 1 + (waters_down ? r->species_count : r->water_count);
	size_t widths[TS_CELLS_MOST] = {0}, all = 2;
	const char *line[TS_CELLS_MOST];

	if (columns > TS_CELLS_MOST)
		return false;
	for (size_t row = 0; row <= rows; row++) {
		grid_line(r, waters_down, row, line);
		for (size_t i = 0; i < columns; i++)
			widths[i] = width(line[i]) > widths[i] ? width(line[i]) : widths[i];
	}
	for (size_t i = 0; i < columns; i++) {
		if (widths[i] > COLUMN_WIDTH)
			return false;
		all += widths[i] + (i + 1 < columns ? 2 : 0);
	}
	return all <= TABLE_WIDTH;
}

static void show_grid(
	struct ts_document *doc, const struct ts_why_waters_result *r, bool waters_down)
{
	size_t rows = waters_down ? r->water_count : r->species_count;
	struct ts_node *table = ts_doc_table(doc);

	for (size_t row = 0; row <= rows; row++) {
		const char *c[TS_CELLS_MOST] = {NULL};

		grid_line(r, waters_down, row, c);
		ts_doc_line(doc, table, c[0], c[1], c[2], c[3], c[4], c[5], c[6], c[7], c[8], c[9],
			NULL);
	}
}

static void show_list(struct ts_document *doc, const struct ts_why_waters_result *r)
{
	struct ts_text text;

	ts_text_open(&text, &doc->arena->allocator);
	for (size_t i = 0; i < r->species_count; i++) {
		struct ts_node *entry;

		ts_text_puts(&text, r->species[i].named, ": ", NULL);
		ts_text_number(&text, (double)r->species[i].waters, 0);
		ts_text_put(&text, " of ");
		ts_text_number(&text, (double)r->water_count, 0);
		ts_text_put(&text, " waters");
		entry = ts_doc_entry(doc, ts_doc_take(doc, &text));
		for (size_t n = 0; n < r->water_count; n++) {
			const struct ts_why_cell_result *c = &r->cells[i * r->water_count + n];
			bool suits = c->verdict == ts_verdict_words[TS_SUITS];

			ts_text_puts(&text, c->water, ": ", c->verdict, suits ? NULL : "; ",
				c->says, NULL);
			ts_doc_line(doc, entry, ts_doc_take(doc, &text), NULL);
		}
	}
	ts_text_drop(&text);
}

void ts_show_why_waters(struct ts_document *doc, const struct ts_why_waters_result *r)
{
	bool down = r->water_count > r->species_count;
	struct ts_node *facts;

	ts_doc_verdict(doc, r->headline, r->decides);
	if (grid_fits(r, down))
		show_grid(doc, r, down);
	else if (grid_fits(r, !down))
		show_grid(doc, r, !down);
	else
		show_list(doc, r);
	ts_doc_heading(doc, 0, "Where each fares worst");
	facts = ts_doc_facts(doc, 1);
	for (size_t i = 0; i < r->species_count; i++)
		ts_doc_line(doc, facts, r->species[i].called, r->species[i].worst.in_a_line, NULL);
	ts_doc_heading(doc, 0, "The waters");
	facts = ts_doc_facts(doc, 1);
	for (size_t i = 0; i < r->water_count; i++)
		ts_doc_line(doc, facts, r->waters[i].name, r->waters[i].says, NULL);
	ts_doc_line(doc, facts, "Animals", r->animals_say, NULL);
	for (size_t i = 0; i < r->notes.count; i++)
		ts_doc_paragraph(doc, r->notes.items[i]);
	ts_doc_paragraph(doc, r->closing);
	ts_doc_see(doc, ts_guide_suits);
}
