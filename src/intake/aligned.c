/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A table of places by quantities without separators: its heading is cut into cells by its blanks,
 * each line below by what stands under which heading, and table.c reads them like any other.
 */
#include <string.h>

#include "intake/table.h"

static bool is_kind(const struct ts_token *t, enum ts_term_kind kind)
{
	return t->kind == TS_TOKEN_TERM && t->term->kind == kind;
}

static bool is_figure_token(const struct ts_token *t)
{
	return t->kind == TS_TOKEN_NUMBER || t->kind == TS_TOKEN_RANGE ||
	       t->kind == TS_TOKEN_BELOW || t->kind == TS_TOKEN_ABOVE;
}

struct piece {
	unsigned short start, end;
	size_t column; /* under which heading; ALIGNED_NONE = under none */
};

#define ALIGNED_NONE ((size_t)-1)
/* Letters between a figure and the heading beside which it stands, and to any other at least. */
#define ALIGNED_NEAR 6
#define ALIGNED_APART 3

static size_t split_pieces(const struct ts_intake *in, struct piece out[TS_ALIGNED_MOST])
{
	size_t at = 0, start, count = 0;

	while (ts_table_next_piece(&in->line, &at, &start)) {
		if (count == TS_ALIGNED_MOST)
			return 0;
		out[count++] =
			(struct piece){(unsigned short)start, (unsigned short)at, ALIGNED_NONE};
	}
	return count;
}

bool ts_table_has_pieces(const struct ts_intake *in)
{
	struct piece pieces[TS_ALIGNED_MOST];

	return split_pieces(in, pieces) > 1;
}

static bool is_in(const struct ts_token *t, const struct piece *p)
{
	return t->start >= p->start && t->start < p->end;
}

static size_t figures_in(const struct ts_intake *in, const struct piece *p)
{
	size_t figures = 0;

	for (size_t i = 0; i < in->tokens.count; i++)
		figures += is_figure_token(&in->tokens.at[i]) && is_in(&in->tokens.at[i], p);
	return figures;
}

/* From here on each piece is the cell of its column, as if a sign had parted them. */
static void cut_cells(struct ts_intake *in, const struct piece *pieces, size_t count, size_t cells)
{
	for (size_t c = 0; c < cells; c++)
		in->tokens.cell_at[c].start = in->tokens.cell_at[c].end = 0;
	for (size_t p = 0; p < count; p++) {
		size_t cell = pieces[p].column == ALIGNED_NONE ? cells : pieces[p].column;

		for (size_t i = 0; i < in->tokens.count; i++) {
			if (is_in(&in->tokens.at[i], &pieces[p]))
				in->tokens.at[i].cell = (unsigned short)cell;
		}
		in->tokens.cell_at[cell].start = pieces[p].start;
		in->tokens.cell_at[cell].end = pieces[p].end;
	}
	in->tokens.cells = cells;
	in->tokens.delimited = true;
}

static void leave_aligned(struct ts_intake *in)
{
	in->aligned = in->units_due = in->headed = in->wide = false;
}

/* Whether the line is of quantities and their units only, beside the first piece. */
static bool lists_quantities(const struct ts_intake *in, const struct piece *first)
{
	bool places = ts_table_heads_places(in);
	size_t labels = 0, degrees = 0;

	for (size_t i = 0; i < in->tokens.count; i++) {
		const struct ts_token *t = &in->tokens.at[i];
		bool label =
			is_kind(t, TS_TERM_LABEL) || (is_kind(t, TS_TERM_FORMULA) && t->term->key);

		if (ts_is_figure(in, i) || (label && first && is_in(t, first)) ||
			(is_kind(t, TS_TERM_COLUMN) &&
				!strchr("Pcsz", t->term->role ? t->term->role : 'P')))
			return false;
		labels += label;
		degrees += ts_table_says_hardness(t);
	}
	return labels >= 2 || (places && labels + degrees >= 1);
}

/* "Village        Hardness    Calcium    pH": the lines below are one place each. */
bool ts_aligned_heading(struct ts_intake *in)
{
	struct piece pieces[TS_ALIGNED_MOST];
	size_t count = split_pieces(in, pieces), shift;

	if (in->tokens.delimited || count < 2 || strpbrk(in->line.lower, ":;!?"))
		return false;
	shift = pieces[0].start >= TS_INDENT_LEAST; /* the places have no heading */
	if (count + shift < 3 || count + shift > TS_ALIGNED_MOST ||
		!lists_quantities(in, shift ? NULL : pieces))
		return false;
	for (size_t p = 0; p < count; p++)
		pieces[p].column = p + shift;
	cut_cells(in, pieces, count, count + shift);
	if (!ts_table_heading(in) || !in->wide) {
		in->tokens.delimited = false;
		leave_aligned(in);
		return false;
	}
	if (shift && in->heading_count < TS_COLUMNS_MOST)
		in->headings[in->heading_count++] = (struct ts_heading){0};
	in->of_places = in->aligned = in->units_due = in->columns_above = true;
	in->columns[0].start = in->columns[0].end = 0;
	for (size_t p = 0; p < count; p++) {
		in->columns[p + shift].start = pieces[p].start;
		in->columns[p + shift].end = pieces[p].end;
	}
	in->column_count = count + shift;
	return true;
}

static size_t gap_between(const struct ts_intake *in, const struct piece *p, size_t column)
{
	size_t start = in->columns[column].start, end = in->columns[column].end;

	return p->start >= end ? p->start - end : start >= p->end ? start - p->end : 0;
}

/* The column that a piece stands under, or far nearer to than to any other. */
static size_t column_of(const struct ts_intake *in, const struct piece *p)
{
	size_t best = ALIGNED_NONE, least = ALIGNED_NEAR + 1, second = TS_LINE_MOST;

	for (size_t c = 1; c < in->column_count; c++) {
		size_t gap = gap_between(in, p, c);
		bool under = p->start < in->columns[c].end && in->columns[c].start < p->end;

		gap = under ? 0 : gap + 1;
		if (gap < least) {
			second = least > ALIGNED_NEAR ? second : least;
			least = gap;
			best = c;
		} else if (gap < second) {
			second = gap;
		}
	}
	return best != ALIGNED_NONE && second < least + ALIGNED_APART ? ALIGNED_NONE : best;
}

/* Gives the pieces from `first` on their columns; false where one with a figure has none. */
static bool place_pieces(
	const struct ts_intake *in, struct piece *pieces, size_t first, size_t count)
{
	bool placed = true, ordered = count == in->column_count && first == 1;
	size_t last = 0;

	for (size_t p = first; p < count; p++) {
		pieces[p].column = column_of(in, &pieces[p]);
		if (pieces[p].column == ALIGNED_NONE && !figures_in(in, &pieces[p]))
			continue;
		placed &= pieces[p].column != ALIGNED_NONE && pieces[p].column > last;
		last = pieces[p].column == ALIGNED_NONE ? last : pieces[p].column;
	}
	for (size_t p = first; p < count && !placed && ordered; p++) {
		ordered = gap_between(in, &pieces[p], p) < TS_NEAR_MOST;
		pieces[p].column = p;
	}
	return placed || ordered;
}

/* "           mg/l CaCO3   mg/l": the line of units below the quantities. */
static bool take_aligned_units(struct ts_intake *in)
{
	struct piece pieces[TS_ALIGNED_MOST];
	size_t count = split_pieces(in, pieces), units = 0;

	for (size_t i = 0; i < in->tokens.count; i++) {
		const struct ts_token *t = &in->tokens.at[i];

		/* "25 C" says at which temperature it was measured */
		if (!is_kind(t, TS_TERM_UNIT) && !is_kind(t, TS_TERM_FORMULA) &&
			t->kind != TS_TOKEN_OPEN && t->kind != TS_TOKEN_CLOSE &&
			t->kind != TS_TOKEN_DASH && (!is_figure_token(t) || ts_is_figure(in, i)))
			return false;
		units += is_kind(t, TS_TERM_UNIT) || is_kind(t, TS_TERM_FORMULA);
	}
	if (!units)
		return false;
	place_pieces(in, pieces, 0, count);
	for (size_t p = 0, last = 0; p < count; p++) {
		if (pieces[p].column == ALIGNED_NONE || pieces[p].column <= last) {
			leave_aligned(in); /* of which column is it? */
			return true;
		}
		last = pieces[p].column;
	}
	cut_cells(in, pieces, count, in->column_count);
	for (size_t i = 0; i < in->tokens.count; i++)
		ts_table_read_heading(in, &in->tokens.at[i]);
	ts_table_name_hardness(in);
	in->units_due = true; /* and perhaps one more: "as CaCO3" */
	return true;
}

/* What stands in columns of dates, counts and remarks is no value. */
static void settle_columns(struct ts_intake *in)
{
	for (size_t i = 0; i < in->tokens.count; i++) {
		const struct ts_heading *h = ts_table_over(in, &in->tokens.at[i]);

		if (h && h->role && h->role != TS_ROLE_ELSE)
			ts_sweep_settle(in, in->line.number, in->tokens.at[i].start);
	}
}

/* A line below such a heading: its place and a figure under each quantity. */
static bool take_aligned_row(struct ts_intake *in)
{
	struct piece pieces[TS_ALIGNED_MOST];
	size_t count = split_pieces(in, pieces), figures = 0;
	char first;

	for (size_t i = 0; i < in->tokens.count; i++) {
		if (is_kind(&in->tokens.at[i], TS_TERM_LABEL) ||
			is_kind(&in->tokens.at[i], TS_TERM_SCALE)) {
			leave_aligned(in);
			return false;
		}
	}
	if (count < 2) {
		if (in->blank_lines)
			leave_aligned(in);
		return false;
	}
	for (size_t p = 1; p < count; p++) {
		figures += figures_in(in, &pieces[p]);
		if (figures_in(in, &pieces[p]) > 1)
			return false;
	}
	first = in->line.lower[pieces[0].start];
	if (!figures || figures_in(in, pieces) || first < 'a' || first > '~' ||
		pieces[0].start >= in->columns[1].start || !place_pieces(in, pieces, 1, count))
		return false;
	pieces[0].column = 0;
	cut_cells(in, pieces, count, in->column_count);
	if (ts_table_wide_row(in)) {
		settle_columns(in);
		return true;
	}
	in->tokens.delimited = false;
	return false;
}

bool ts_aligned_line(struct ts_intake *in)
{
	bool due = in->units_due;

	in->units_due = false;
	return (due && take_aligned_units(in)) || (in->aligned && take_aligned_row(in));
}
