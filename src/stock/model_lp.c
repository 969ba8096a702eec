/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Writes the rows of the model, each kind by one function. Levels of one species and conflicts of
 * whole species are written as one row each: an outside solver should not be slowed by our way of
 * writing.
 */
#include "stock/model_lp.h"

#define COLUMNS 78

/* A text with the column at which the present line began. */
struct writer {
	struct ts_text *text;
	const struct ts_model *model;
	size_t line;
	bool first; /* of its row */
};

static void number(struct writer *w, int64_t value)
{
	ts_text_number(w->text, (double)value, 0);
}

/* Begins a row: " name:". */
static void row(struct writer *w, const char *kind, size_t i, size_t j)
{
	w->line = w->text->len;
	w->first = true;
	ts_text_puts(w->text, " ", kind, NULL);
	if (i)
		number(w, (int64_t)i);
	if (j) {
		ts_text_put(w->text, "_");
		number(w, (int64_t)j);
	}
	ts_text_put(w->text, ":");
}

/* Adds "+ 3 x5" or, with `j`, "- 200 p5_7"; a factor of 0 adds nothing. */
static void term(struct writer *w, int64_t factor, const char *variable, size_t i, size_t j)
{
	if (!factor)
		return;
	if (w->text->len - w->line > COLUMNS - 18) {
		w->line = w->text->len + 1;
		ts_text_put(w->text, "\n ");
	}
	if (factor < 0)
		ts_text_put(w->text, " -");
	else if (!w->first)
		ts_text_put(w->text, " +");
	ts_text_put(w->text, " ");
	if (factor != 1 && factor != -1) {
		number(w, factor < 0 ? -factor : factor);
		ts_text_put(w->text, " ");
	}
	ts_text_put(w->text, variable);
	if (i)
		number(w, (int64_t)i);
	if (j) {
		ts_text_put(w->text, "_");
		number(w, (int64_t)j);
	}
	w->first = false;
}

static void end_row(struct writer *w, const char *relation, int64_t bound)
{
	ts_text_puts(w->text, " ", relation, " ", NULL);
	number(w, bound);
	ts_text_put(w->text, "\n");
}

/* The friction that counts between two items: none where they cannot be together anyway. */
static unsigned friction(const struct ts_model *m, size_t i, size_t j)
{
	if (m->items[i].group == m->items[j].group || ts_model_conflicts(m, i, j))
		return 0;
	return ts_model_friction_of(m, i, j);
}

static void objective(struct writer *w)
{
	const struct ts_model *m = w->model;

	row(w, "points", 0, 0);
	term(w, m->fit_points, "m", 0, 0);
	for (size_t i = 0; i < m->count; i++)
		term(w, m->items[i].value, "x", i + 1, 0);
	for (size_t r = 0; r < TS_ROLE__COUNT; r++)
		term(w, m->role_points[r], "u", r + 1, 0);
	for (size_t i = 0; i < m->count; i++) {
		for (size_t j = i + 1; j < m->count; j++)
			term(w, -(int64_t)friction(m, i, j), "p", i + 1, j + 1);
	}
	ts_text_put(w->text, "\n");
}

/* Where the items of the group that begins at `i` end. */
static size_t group_end(const struct ts_model *m, size_t i)
{
	size_t end = i + 1;

	while (end < m->count && m->items[end].group == m->items[i].group)
		end++;
	return end;
}

/* One number of each species, and no better served than each chosen animal is. */
static void group_rows(struct writer *w)
{
	const struct ts_model *m = w->model;

	for (size_t i = 0, end; i < m->count; i = end) {
		bool must = m->must[m->items[i].group];

		end = group_end(m, i);
		row(w, "one", i + 1, 0);
		for (size_t j = i; j < end; j++)
			term(w, 1, "x", j + 1, 0);
		end_row(w, must ? "=" : "<=", 1);
		row(w, "fit", i + 1, 0);
		term(w, 1, "m", 0, 0);
		for (size_t j = i; j < end; j++)
			term(w, 1000 - m->items[j].fit, "x", j + 1, 0);
		end_row(w, "<=", 1000);
	}
}

static bool whole_groups_conflict(const struct ts_model *m, size_t a, size_t b)
{
	for (size_t i = a; i < group_end(m, a); i++) {
		for (size_t j = b; j < group_end(m, b); j++) {
			if (!ts_model_conflicts(m, i, j))
				return false;
		}
	}
	return true;
}

static void conflict_rows(struct writer *w, size_t a, size_t b)
{
	const struct ts_model *m = w->model;
	size_t a_end = group_end(m, a), b_end = group_end(m, b);

	if (whole_groups_conflict(m, a, b)) {
		row(w, "apart", a + 1, b + 1);
		for (size_t i = a; i < a_end; i++)
			term(w, 1, "x", i + 1, 0);
		for (size_t j = b; j < b_end; j++)
			term(w, 1, "x", j + 1, 0);
		end_row(w, "<=", 1);
		return;
	}
	for (size_t i = a; i < a_end; i++) {
		for (size_t j = b; j < b_end; j++) {
			if (!ts_model_conflicts(m, i, j) && !friction(m, i, j))
				continue;
			row(w, ts_model_conflicts(m, i, j) ? "apart" : "pair", i + 1, j + 1);
			term(w, 1, "x", i + 1, 0);
			term(w, 1, "x", j + 1, 0);
			if (!ts_model_conflicts(m, i, j))
				term(w, -1, "p", i + 1, j + 1);
			end_row(w, "<=", 1);
		}
	}
}

/* Sums over all items that stay within a limit. */
static void limit_rows(struct writer *w)
{
	const struct ts_model *m = w->model;

	row(w, "weight", 0, 0);
	term(w, 1, "zero", 0, 0); /* a row must not be empty */
	for (size_t i = 0; i < m->count; i++)
		term(w, m->items[i].weight, "x", i + 1, 0);
	end_row(w, "<=", m->weight_most);
	row(w, "floor", 0, 0);
	term(w, 1, "zero", 0, 0);
	for (size_t i = 0; i < m->count; i++)
		term(w, m->items[i].floor, "x", i + 1, 0);
	end_row(w, "<=", m->floor_most);
	for (int k = 0; k < 2; k++) {
		row(w, k ? "least" : "most", 0, 0);
		term(w, 1, "zero", 0, 0);
		for (size_t i = 0; i < m->count; i++)
			term(w, !m->items[i].extra, "x", i + 1, 0);
		end_row(w, k ? ">=" : "<=", k ? m->species_least : m->species_most);
	}
	row(w, "extras", 0, 0);
	term(w, 1, "zero", 0, 0);
	for (size_t i = 0; i < m->count; i++)
		term(w, m->items[i].extra, "x", i + 1, 0);
	end_row(w, "<=", m->extras_most);
}

/* A role counts when somebody fills it; familiar genera are not more than the others. */
static void role_and_genus_rows(struct writer *w)
{
	const struct ts_model *m = w->model;

	for (size_t r = 0; r < TS_ROLE__COUNT; r++) {
		row(w, "role", r + 1, 0);
		term(w, 1, "u", r + 1, 0);
		for (size_t i = 0; i < m->count; i++)
			term(w, -(int64_t)(m->items[i].role >> r & 1), "x", i + 1, 0);
		end_row(w, "<=", 0);
		if (!(m->roles_must >> r & 1))
			continue;
		row(w, "filled", r + 1, 0);
		term(w, 1, "u", r + 1, 0);
		end_row(w, "=", 1);
	}
	row(w, "familiar", 0, 0);
	term(w, 1, "zero", 0, 0);
	for (size_t i = 0; i < m->count; i++) {
		if (!m->must[m->items[i].group] && !m->items[i].extra)
			term(w, m->familiar[m->items[i].genus] ? 1 : -1, "x", i + 1, 0);
	}
	end_row(w, "<=", 0);
}

static void bounds_and_kinds(struct writer *w)
{
	ts_text_put(w->text, "Bounds\n 0 <= m <= 1000\n zero = 0\nBinaries\n");
	w->line = w->text->len;
	w->first = true;
	for (size_t i = 0; i < w->model->count; i++, w->first = true)
		term(w, 1, "x", i + 1, 0);
	for (size_t r = 0; r < TS_ROLE__COUNT; r++, w->first = true)
		term(w, 1, "u", r + 1, 0);
	ts_text_put(w->text, "\nEnd\n");
}

void ts_model_write_lp(struct ts_text *text, const struct ts_model *m, const char *const *names)
{
	struct writer w = {.text = text, .model = m};

	ts_text_put(text, "\\ which animals together, as integers; m is the least fit of a list\n");
	for (size_t i = 0; names && i < m->count; i++) {
		ts_text_put(text, "\\ x");
		number(&w, (int64_t)i + 1);
		ts_text_puts(text, " = ", names[i], "\n", NULL);
	}
	ts_text_put(text, "Maximize\n");
	objective(&w);
	ts_text_put(text, "Subject To\n");
	group_rows(&w);
	for (size_t a = 0; a < m->count; a = group_end(m, a)) {
		for (size_t b = group_end(m, a); b < m->count; b = group_end(m, b))
			conflict_rows(&w, a, b);
	}
	limit_rows(&w);
	role_and_genus_rows(&w);
	bounds_and_kinds(&w);
}
