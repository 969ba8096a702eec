/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Headings: a line of words like unit, limit, mean, or of quantities side by side, and what they
 * say about the figures below. Cells are told by separators, else by order, else by their place
 * under the heading.
 */
#include <stdlib.h>
#include <string.h>

#include "intake/table.h"

static const struct ts_term hardness_by_unit = {.kind = TS_TERM_LABEL, .pattern = "", .key = "GH"};

/* Words that head a column of places, or begin such a heading. */
static const char *const place_words[] = {"area", "barri", "bezirk", "bourg", "city", "commun",
	"comun", "deposito", "district", "distrito", "dorf", "dorp", "frazion", "gemeente",
	"gemeinde", "kern ", "localid", "localit", "municip", "nucleo", "ort ", "orte ", "ortsteil",
	"ortschaft", "paese", "parish", "place", "plaats", "poblacion", "pueblo", "quartier",
	"reservoir", "secteur", "sector", "site", "stad", "supply", "town", "versorgungs",
	"village", "ville", "wijk", "works", "zon", NULL};

/* Words of a line that names places side by side. */
#define PLACE_WORDS_MOST 12

static bool is_kind(const struct ts_token *t, enum ts_term_kind kind)
{
	return t->kind == TS_TOKEN_TERM && t->term->kind == kind;
}

static bool is_figure_token(const struct ts_token *t)
{
	return t->kind == TS_TOKEN_NUMBER || t->kind == TS_TOKEN_RANGE ||
	       t->kind == TS_TOKEN_BELOW || t->kind == TS_TOKEN_ABOVE;
}

bool ts_is_figure(const struct ts_intake *in, size_t i)
{
	const struct ts_token *t = &in->tokens.at[i];
	const struct ts_token *next = i + 1 < in->tokens.count ? t + 1 : NULL;
	bool warm = next && is_kind(next, TS_TERM_UNIT) && strcmp(next->term->unit, "c") == 0;
	bool temperature = in->entry.label && in->entry.label->key &&
			   strcmp(in->entry.label->key, "temperature") == 0;

	return is_figure_token(t) && !(warm && !temperature) &&
	       !(next && is_kind(next, TS_TERM_UNIT) && *next->term->unit == '%');
}

void ts_cell_text(const struct ts_intake *in, size_t cell, char out[TS_NAME_ROOM])
{
	const struct ts_report_line *l = &in->line;
	size_t start, end;

	out[0] = '\0';
	if (cell >= in->tokens.cells || cell >= TS_LINE_CELLS_MOST)
		return;
	start = in->tokens.cell_at[cell].start;
	end = in->tokens.cell_at[cell].end;
	if (end > start + 1 && l->plain[start] == '"' && l->plain[end - 1] == '"') {
		start++;
		end--;
	}
	ts_line_show(l, l->from[start], l->from[end], out, TS_NAME_ROOM);
}

/* What the cells of this line would be as headings. */
struct census {
	size_t columns, labels, figures, figures_results, degrees;
	bool parameter;
};

static bool is_year(const struct ts_token *t)
{
	return t->kind == TS_TOKEN_NUMBER && t->first >= 1990 && t->first <= 2100 &&
	       !strpbrk(t->figure, ".,");
}

/* A unit that says by itself that its figure is hardness. */
bool ts_table_says_hardness(const struct ts_token *t)
{
	return is_kind(t, TS_TERM_UNIT) &&
	       (t->term->marks & (TS_TERM_IMPLIES | TS_TERM_DEGREE)) != 0;
}

static struct census take_census(const struct ts_intake *in)
{
	struct census c = {0};
	int last_label = -1;

	for (size_t i = 0; i < in->tokens.count; i++) {
		const struct ts_token *t = &in->tokens.at[i];

		c.figures += ts_is_figure(in, i) && !is_year(t);
		if (is_kind(t, TS_TERM_COLUMN) || is_kind(t, TS_TERM_ZONE)) {
			c.columns++;
			c.parameter |= t->term->role == TS_ROLE_PARAMETER;
			c.figures_results += t->term->role && strchr("Rmixw", t->term->role);
		}
		if ((is_kind(t, TS_TERM_LABEL) || is_kind(t, TS_TERM_SCALE) ||
			    (is_kind(t, TS_TERM_FORMULA) && t->term->key)) &&
			t->cell != last_label) {
			c.labels++;
			last_label = t->cell;
		}
		if (ts_table_says_hardness(t) && t->cell && t->cell != last_label) {
			c.degrees++;
			last_label = t->cell;
		}
	}
	return c;
}

/* "Village | ...": the first cell of a heading says that the rows are places. */
bool ts_table_heads_places(const struct ts_intake *in)
{
	const char *at = in->line.lower + strspn(in->line.lower, " \t|\"'*");

	for (size_t i = 0; place_words[i]; i++) {
		size_t len = strcspn(place_words[i], " "); /* a blank: the word ends there */

		if (strncmp(at, place_words[i], len) == 0 &&
			!(place_words[i][len] && at[len] >= 'a' && at[len] <= 'z'))
			return true;
	}
	return false;
}

static struct ts_heading *add_heading(struct ts_intake *in, const struct ts_token *t)
{
	struct ts_heading *h;

	if (in->heading_count == TS_COLUMNS_MOST)
		return NULL;
	h = &in->headings[in->heading_count++];
	*h = (struct ts_heading){.cell = t->cell, .start = t->start, .end = t->end};
	return h;
}

static struct ts_heading *heading_of_cell(struct ts_intake *in, size_t cell)
{
	for (size_t i = 0; i < in->heading_count; i++) {
		if (in->headings[i].cell == cell)
			return &in->headings[i];
	}
	return NULL;
}

/* "Conductivity at 20 C": of a quantity that is no temperature. */
static bool is_condition_of(const struct ts_heading *h, const struct ts_term *unit)
{
	return strcmp(unit->unit, "c") == 0 && h->label && h->label->key &&
	       strcmp(h->label->key, "temperature") != 0;
}

/* One token of a heading. In a table with separators a cell has one role: the first said. */
void ts_table_read_heading(struct ts_intake *in, const struct ts_token *t)
{
	struct ts_heading *h = in->tokens.delimited ? heading_of_cell(in, t->cell) : NULL;
	struct ts_heading *last = in->heading_count ? &in->headings[in->heading_count - 1] : NULL;

	if (is_kind(t, TS_TERM_COLUMN) || is_kind(t, TS_TERM_ZONE)) {
		int role = is_kind(t, TS_TERM_ZONE) ? TS_ROLE_ZONE : t->term->role;

		if (h && h->role && !(h->role == TS_ROLE_RESULT && role != TS_ROLE_UNIT))
			return;
		h = h ? h : add_heading(in, t);
		if (h)
			h->role = role;
		return;
	}
	/* A word that is not known heads a column all the same, whose figures are not ours. */
	if (!in->tokens.delimited && t->kind == TS_TOKEN_OTHER && in->heading_count) {
		h = add_heading(in, t);
		if (h) {
			h->role = TS_ROLE_COUNT;
			h->unknown = true;
		}
		return;
	}
	if (in->tokens.delimited && !h)
		h = add_heading(in, t);
	if (!in->tokens.delimited)
		h = last;
	if (!h)
		return;
	if (is_kind(t, TS_TERM_UNIT) && !h->unit && *t->term->unit != '%' &&
		!is_condition_of(h, t->term))
		h->unit = t->term;
	else if (is_kind(t, TS_TERM_LABEL) || is_kind(t, TS_TERM_SCALE))
		h->label = h->label ? h->label : t->term;
	else if (is_kind(t, TS_TERM_FORMULA) && !h->label && t->term->key)
		h->label = t->term;
	else if (is_kind(t, TS_TERM_FORMULA) && t->term->key && h->label && h->label->key &&
		 h->label->kind == TS_TERM_FORMULA && strcmp(t->term->key, h->label->key) != 0)
		h->role = TS_ROLE_ELSE; /* "NO3+NO2" */
	else if (is_kind(t, TS_TERM_FORMULA))
		h->form = t->term;
}

/* Columns that are named and have no role are zones, where no other column holds results. */
static void name_zones(struct ts_intake *in)
{
	for (size_t i = 0; i < in->heading_count; i++) {
		struct ts_heading *h = &in->headings[i];
		char name[TS_NAME_ROOM];

		if (h->role || h->label || h->unit || h->cell == 0)
			continue;
		ts_cell_text(in, h->cell, name);
		if (!*name)
			continue;
		h->role = TS_ROLE_RESULT;
		h->zone = ts_collect_zone(in, name);
	}
}

/* So many words of headings in a line make no sentence. */
#define HEADINGS_SURE 3

/* "The lowest and highest values are shown below": words that no heading has. */
static bool is_sentence(const struct ts_intake *in)
{
	const struct ts_report_line *l = &in->line;
	bool column = false;
	size_t columns = 0;

	for (size_t i = 0; i < in->tokens.count; i++)
		columns += is_kind(&in->tokens.at[i], TS_TERM_COLUMN);
	if (columns >= HEADINGS_SURE && l->lower[l->len - 1] != '.')
		return false;

	for (size_t i = 0; i < in->tokens.count && !in->tokens.delimited; i++) {
		const struct ts_token *t = &in->tokens.at[i];

		if (column && t->kind == TS_TOKEN_OTHER)
			return true;
		column |= is_kind(t, TS_TERM_COLUMN) && t->term->role != TS_ROLE_PARAMETER;
	}
	return false;
}

/* A word that is not known between lowest and highest may well be the mean. */
static bool unknown_middle(const struct ts_intake *in)
{
	bool low = false, unknown = false;

	for (size_t i = 0; i < in->heading_count && !in->tokens.delimited; i++) {
		const struct ts_heading *h = &in->headings[i];

		if (h->role == TS_ROLE_HIGHEST && low && unknown)
			return true;
		low |= h->role == TS_ROLE_LOWEST;
		unknown |= low && h->unknown;
	}
	return false;
}

/* A column of a wide table whose name is not known, but looks like one of ours. */
static void ask_columns(struct ts_intake *in)
{
	char text[TS_SHOWN_ROOM];

	for (size_t i = 0; i < in->tokens.count; i++) {
		const struct ts_token *t = &in->tokens.at[i];
		const struct ts_heading *h = heading_of_cell(in, t->cell);
		/* degrees stand for hardness once more */
		bool unit = is_kind(t, TS_TERM_UNIT) && *t->term->unit != '%' &&
			    !(t->term->marks & TS_TERM_DEGREE);

		if ((h && (h->label || h->role)) || !(unit || ts_sweep_names(in, t)))
			continue;
		ts_line_show(&in->line, 0, in->line.raw_len, text, sizeof text);
		ts_collect_gap(in, NULL, in->line.number, text,
			"a column of which the name is not known",
			"look at it and use a flag or the file");
		return;
	}
}

/* "Village | dH | mmol/l CaCO3": columns of which the unit alone says that they are hardness. */
void ts_table_name_hardness(struct ts_intake *in)
{
	for (size_t i = 0; i < in->heading_count; i++) {
		struct ts_heading *h = &in->headings[i];

		if (h->cell && h->unit && !h->label && !h->role &&
			h->unit->marks & (TS_TERM_IMPLIES | TS_TERM_DEGREE))
			h->label = &hardness_by_unit;
	}
}

bool ts_table_heading(struct ts_intake *in)
{
	struct census c = take_census(in);
	bool places = ts_table_heads_places(in);
	bool wide =
		in->tokens.delimited && (c.labels >= 2 || (places && c.labels + c.degrees >= 1));

	if (c.figures || (c.columns < 2 && !wide) || is_sentence(in))
		return false;
	ts_entry_close(in, &in->entry);
	ts_table_end(in);
	in->heading_count = 0;
	in->aligned = in->units_due = false;
	in->heading_cells = in->tokens.cells;
	in->headed = true;
	if (in->tokens.sign && in->tokens.sign != '|')
		in->delimiter = in->tokens.sign;
	in->wide = wide && !c.figures_results;
	in->of_places = in->wide && places;
	for (size_t i = 0; i < in->tokens.count; i++)
		ts_table_read_heading(in, &in->tokens.at[i]);
	if (in->tokens.delimited && !c.figures_results && !in->wide)
		name_zones(in);
	if (in->wide) {
		ts_table_name_hardness(in);
		ask_columns(in);
	}
	in->headed = !unknown_middle(in);
	return true;
}

const struct ts_heading *ts_table_over(const struct ts_intake *in, const struct ts_token *t)
{
	for (size_t i = 0; i < in->heading_count; i++) {
		if (in->headings[i].cell == t->cell)
			return &in->headings[i];
	}
	return NULL;
}

/* The zone that a row names itself, in a column headed so or in its first, unheaded cell. */
static size_t row_zone(struct ts_intake *in)
{
	for (size_t i = 0; i < in->heading_count; i++) {
		const struct ts_heading *h = &in->headings[i];
		bool names = h->role == TS_ROLE_ZONE ||
			     (in->wide && h->cell == 0 && !h->role && !h->label);
		char name[TS_NAME_ROOM] = "";

		if (names)
			ts_cell_text(in, h->cell, name);
		if (*name)
			return ts_collect_zone(in, name);
	}
	return in->zone;
}

static void read_wide_cell(struct ts_intake *in, const struct ts_heading *h, size_t i, size_t zone)
{
	struct ts_entry *e = &in->cell;
	struct ts_token unit = {.kind = TS_TOKEN_TERM, .term = h->unit};
	struct ts_token form = {.kind = TS_TOKEN_TERM, .term = h->form};

	e->label = h->label;
	e->line = in->line.number;
	e->zone = zone;
	ts_line_show(&in->line, 0, in->line.raw_len, e->text, sizeof e->text);
	if (h->unit)
		ts_entry_add(e, &unit, e->line);
	if (h->form)
		ts_entry_add(e, &form, e->line);
	for (; i < in->tokens.count && in->tokens.at[i].cell == h->cell; i++)
		ts_entry_add(e, &in->tokens.at[i], e->line);
	ts_entry_close(in, e);
}

/* Ranges beside the name of a class, or beside a column of classes, are their limits. */
static bool holds_classes(const struct ts_intake *in)
{
	bool scale = false, spread = false;

	for (size_t i = 0; i < in->heading_count; i++)
		scale |= in->headings[i].label && in->headings[i].label->kind == TS_TERM_SCALE;
	for (size_t i = 0; i < in->tokens.count; i++) {
		const struct ts_token *t = &in->tokens.at[i];

		scale |= is_kind(t, TS_TERM_CLASS);
		spread |= is_figure_token(t) && t->kind != TS_TOKEN_NUMBER;
	}
	return scale && spread;
}

/* What a row below quantities says of its figures by its first word: limits, lowest, highest. */
static int role_of_row(const struct ts_intake *in)
{
	const struct ts_token *first = &in->tokens.at[0];

	return in->tokens.count && is_kind(first, TS_TERM_COLUMN) && first->cell == 0
		       ? first->term->role
		       : TS_ROLE_NONE;
}

void ts_table_end(struct ts_intake *in)
{
	if (in->ends_line && !in->value_row)
		ts_collect_gap(in, NULL, in->ends_line, in->ends,
			"only the lowest and highest of a table are printed",
			"write each quantity as a range, like 7.1..7.8, with a flag or the file");
	in->ends_line = 0;
	in->value_row = false;
}

/* A row below quantities side by side; a row that names a class holds its limits. */
bool ts_table_wide_row(struct ts_intake *in)
{
	size_t zone, figures = 0;

	if (in->tokens.cells + 1 < in->heading_cells || in->tokens.cells > in->heading_cells + 1)
		return false;
	for (size_t i = 0; i < in->tokens.count; i++) {
		const struct ts_token *t = &in->tokens.at[i];

		if (is_kind(t, TS_TERM_LABEL) || is_kind(t, TS_TERM_SCALE))
			return false;
		figures += is_figure_token(t);
	}
	if (!in->of_places && holds_classes(in)) {
		in->class_only = true;
		return true;
	}
	if (!figures)
		return false;
	if (role_of_row(in) && strchr("ix", role_of_row(in)) && !in->ends_line) {
		in->ends_line = in->line.number;
		ts_line_show(&in->line, 0, in->line.raw_len, in->ends, sizeof in->ends);
	}
	in->value_row |= !role_of_row(in) || strchr("Rm", role_of_row(in));
	if (role_of_row(in) && !strchr("Rm", role_of_row(in))) {
		ts_sweep_settle_shown(in, in->line.number, NULL);
		return true;
	}
	zone = role_of_row(in) ? in->zone : row_zone(in);
	for (size_t i = 0; i < in->tokens.count; i++) {
		const struct ts_heading *h = ts_table_over(in, &in->tokens.at[i]);

		if (h && h->label && !h->label->key && is_figure_token(&in->tokens.at[i]))
			ts_collect_other(in);
		if (h && h->label && h->label->key && h->role != TS_ROLE_ELSE &&
			(i == 0 || in->tokens.at[i - 1].cell != in->tokens.at[i].cell))
			read_wide_cell(in, h, i, zone);
	}
	return true;
}

/* "Works North  Works Lake": the first word once more, with its capital, and no figure. */
static bool names_places(const struct ts_intake *in)
{
	const char *line = in->line.plain + strspn(in->line.plain, " \t");
	size_t len = strcspn(line, " \t"), words = 0;
	bool again = false;

	if (in->tokens.delimited || len < 2 || *line < 'A' || *line > 'Z' ||
		strpbrk(line, "0123456789.:"))
		return false;
	for (const char *at = line; *at; words++) {
		again |= at > line && strncmp(at, line, len) == 0 && strchr(" \t", at[len]);
		at += strcspn(at, " \t");
		at += strspn(at, " \t");
	}
	return again && words <= PLACE_WORDS_MOST;
}

/* The next piece of the line that two blanks or more part from the others; false: there is none. */
bool ts_table_next_piece(const struct ts_report_line *l, size_t *io_at, size_t *ret_start)
{
	size_t at = *io_at;

	while (at < l->len && (l->lower[at] == ' ' || l->lower[at] == '\t'))
		at++;
	*ret_start = at;
	while (at < l->len &&
		!(l->lower[at] == ' ' && (at + 1 == l->len || l->lower[at + 1] == ' ')))
		at++;
	*io_at = at;
	return at > *ret_start;
}

/* What a piece of such a line is by how it begins: a column's role; a capital is a place's name. */
static int role_of_piece(const struct ts_intake *in, size_t start)
{
	for (size_t i = 0; i < in->tokens.count; i++) {
		const struct ts_token *t = &in->tokens.at[i];

		if (t->start == start && t->kind == TS_TOKEN_TERM)
			return is_kind(t, TS_TERM_COLUMN) ? t->term->role
			       : is_kind(t, TS_TERM_ZONE) ? TS_ROLE_ZONE
							  : TS_ROLE_NONE;
	}
	return in->line.plain[start] >= 'A' && in->line.plain[start] <= 'Z' ? TS_ROLE_ZONE
									    : TS_ROLE_NONE;
}

#define PLACES_MOST 12

/* "             Lake works     Hill works     Limit": what stands below is of one place each. */
static bool take_places(struct ts_intake *in)
{
	const struct ts_report_line *l = &in->line;
	size_t at = 0, start, places = 0, elsewhere = 0, count = 0;
	struct ts_heading found[PLACES_MOST] = {{0}};
	char name[TS_NAME_ROOM];

	if (in->tokens.delimited || strpbrk(l->lower, ":;!?") || l->lower[l->len - 1] == '.')
		return false;
	while (ts_table_next_piece(l, &at, &start)) {
		int role = role_of_piece(in, start);

		if (!count && start < TS_INDENT_LEAST) {
			if (role != TS_ROLE_PARAMETER)
				return false;
			continue;
		}
		if (!role || count == PLACES_MOST)
			return false;
		found[count++] =
			(struct ts_heading){.role = role == TS_ROLE_ZONE ? TS_ROLE_RESULT : role,
				.start = (unsigned short)start,
				.end = (unsigned short)at,
				.zone = role == TS_ROLE_ZONE};
		places += role == TS_ROLE_ZONE;
		elsewhere += role == TS_ROLE_ELSE;
	}
	if (!places || places + elsewhere < 2)
		return false;
	ts_entry_close(in, &in->entry);
	for (size_t i = 0; i < count; i++) {
		if (found[i].zone) {
			ts_line_show(l, l->from[found[i].start], l->from[found[i].end], name,
				TS_NAME_ROOM);
			found[i].zone = ts_collect_zone(in, name);
		}
		in->headings[i] = found[i];
	}
	in->heading_count = count;
	in->aligned = in->units_due = false;
	in->heading_cells = 1;
	in->headed = true;
	in->wide = false;
	return true;
}

/* "2019  2020  2021": the figures below are of one year each. */
static bool names_years(const struct ts_intake *in)
{
	size_t years = 0;

	for (size_t i = 0; i < in->tokens.count; i++) {
		if (is_year(&in->tokens.at[i]))
			years++;
		else if (is_figure_token(&in->tokens.at[i]))
			return false;
	}
	return years >= 2;
}

bool ts_table_line(struct ts_intake *in)
{
	if (in->aligned && !in->tokens.delimited && ts_aligned_line(in))
		return true;
	if (take_places(in) || ts_aligned_heading(in))
		return true;
	in->unordered |= names_places(in) || names_years(in);
	if (ts_table_heading(in))
		return true;
	return in->wide && in->tokens.delimited && ts_table_wide_row(in);
}

/* A temperature of measurement stands in no column. */
static bool is_condition(const struct ts_entry *e, size_t i)
{
	const struct ts_token *next = i + 1 < e->count ? &e->parts[i + 1].token : NULL;

	return next && is_kind(next, TS_TERM_UNIT) && strcmp(next->term->unit, "c") == 0 &&
	       strcmp(e->label->key, "temperature") != 0;
}

static bool holds_place(const struct ts_entry *e, size_t i)
{
	const struct ts_token *t = &e->parts[i].token;

	return (is_figure_token(t) && !is_condition(e, i)) || t->kind == TS_TOKEN_DASH ||
	       is_kind(t, TS_TERM_NONE);
}

static bool has_place(const struct ts_heading *h)
{
	return h->role && strchr("ltRmixwce", h->role);
}

/* A unit printed over one column holds for all, unless another column has another. */
static const struct ts_term *unit_over(const struct ts_intake *in, const struct ts_heading *h)
{
	const struct ts_term *only = NULL;

	if (h->unit)
		return h->unit;
	for (size_t i = 0; i < in->heading_count; i++) {
		const struct ts_term *unit = in->headings[i].unit;

		if (unit && only && unit != only)
			return NULL;
		only = unit ? unit : only;
	}
	return only;
}

static void give(const struct ts_intake *in, struct ts_part *part, const struct ts_heading *h)
{
	part->role = h->role;
	part->unit = unit_over(in, h);
	part->zone = h->zone;
}

static bool by_cell(struct ts_intake *in, struct ts_entry *e)
{
	if (in->tokens.cells + 2 < in->heading_cells || in->tokens.cells > in->heading_cells + 1)
		return false;
	for (size_t i = 0; i < e->count; i++) {
		const struct ts_heading *h = ts_table_over(in, &e->parts[i].token);

		if (h && holds_place(e, i) && (has_place(h) || h->role == TS_ROLE_TEXT))
			give(in, &e->parts[i], h);
	}
	return true;
}

static bool by_order(struct ts_intake *in, struct ts_entry *e)
{
	size_t places = 0, headings = 0, h = 0;

	for (size_t i = 0; i < e->count; i++)
		places += holds_place(e, i);
	for (size_t i = 0; i < in->heading_count; i++)
		headings += has_place(&in->headings[i]);
	if (places != headings || !places)
		return false;
	for (size_t i = 0; i < e->count; i++) {
		if (!holds_place(e, i))
			continue;
		while (!has_place(&in->headings[h]))
			h++;
		give(in, &e->parts[i], &in->headings[h++]);
	}
	return true;
}

static int middle(unsigned short start, unsigned short end)
{
	return (start + end) / 2;
}

/* "pH (6.5-9.5)   7.4   7.5": beside the name and under no heading. */
static bool limit_in_brackets(const struct ts_entry *e, size_t i)
{
	for (size_t k = i; k > 0; k--) {
		const struct ts_token *t = &e->parts[k - 1].token;

		if (t->kind == TS_TOKEN_OPEN)
			return true;
		if (is_figure_token(t) || t->kind == TS_TOKEN_CLOSE)
			return false;
	}
	return false;
}

/* Each figure under the nearest heading; two under one, or one far from all, tell nothing. */
static bool by_place(struct ts_intake *in, struct ts_entry *e)
{
	bool used[TS_COLUMNS_MOST] = {false};

	for (size_t i = 0; i < e->count; i++) {
		const struct ts_token *t = &e->parts[i].token;
		size_t best = TS_COLUMNS_MOST;
		int least = TS_NEAR_MOST;

		for (size_t h = 0; h < in->heading_count && holds_place(e, i); h++) {
			int away = abs(middle(t->start, t->end) -
				       middle(in->headings[h].start, in->headings[h].end));

			if ((has_place(&in->headings[h]) || in->headings[h].role == TS_ROLE_TEXT) &&
				away < least) {
				least = away;
				best = h;
			}
		}
		if (!holds_place(e, i))
			continue;
		if (best != TS_COLUMNS_MOST && in->headings[best].role == TS_ROLE_TEXT &&
			!used[best]) {
			used[best] = true;
			e->parts[i].role = TS_ROLE_TEXT; /* "WAS 036" under "Method" */
			continue;
		}
		if (best == TS_COLUMNS_MOST && limit_in_brackets(e, i)) {
			e->parts[i].role = TS_ROLE_LEGAL;
			continue;
		}
		if (best == TS_COLUMNS_MOST || used[best])
			return false;
		used[best] = true;
		give(in, &e->parts[i], &in->headings[best]);
	}
	return true;
}

static void forget_roles(struct ts_entry *e)
{
	for (size_t i = 0; i < e->count; i++) {
		e->parts[i].role = 0;
		e->parts[i].unit = NULL;
		e->parts[i].zone = 0;
	}
}

/* "max. 25" under the heading of limits, behind all results: the limit's own word. */
static bool is_word_of_limit(const struct ts_intake *in, const struct ts_token *t)
{
	for (size_t i = 0; i < in->heading_count; i++) {
		const struct ts_heading *h = &in->headings[i];

		if (h->role == TS_ROLE_LEGAL &&
			(in->tokens.delimited ? h->cell == t->cell
					      : i + 1 == in->heading_count && t->end > h->start))
			return true;
	}
	return false;
}

/* A row that names its figures itself, or states them in two units, is not of the table. */
static bool speaks_for_itself(const struct ts_intake *in, const struct ts_entry *e)
{
	const struct ts_term *unit = NULL;

	for (size_t i = 0; i < e->count; i++) {
		const struct ts_token *t = &e->parts[i].token;

		if (is_kind(t, TS_TERM_COLUMN) && strchr("mixw", t->term->role) &&
			!is_word_of_limit(in, t))
			return true;
		if (!is_kind(t, TS_TERM_UNIT) ||
			(*t->term->unit == '%' || strcmp(t->term->unit, "c") == 0))
			continue;
		if (unit && strcmp(unit->unit, t->term->unit) != 0)
			return true;
		unit = t->term;
	}
	return false;
}

/* "min mean max  min mean max": columns of one role and no place are of several waters. */
static bool has_twins(const struct ts_entry *e)
{
	for (size_t i = 0; i < e->count; i++) {
		for (size_t k = 0; k < i; k++) {
			const struct ts_part *a = &e->parts[i], *b = &e->parts[k];

			if (a->role && a->role == b->role && strchr("mix", a->role) &&
				a->zone == b->zone && is_figure_token(&a->token) &&
				is_figure_token(&b->token))
				return true;
		}
	}
	return false;
}

bool ts_table_row(struct ts_intake *in, struct ts_entry *e)
{
	size_t results = 0;
	bool placed;

	if (!in->headed || in->wide || in->tokens.delimited != (in->heading_cells > 1))
		return false;
	if (speaks_for_itself(in, e))
		return false;
	if (in->tokens.delimited)
		placed = by_cell(in, e);
	else
		placed = by_order(in, e) || by_place(in, e);
	for (size_t i = 0; i < e->count && placed; i++)
		results += e->parts[i].role && strchr("Rmixw", e->parts[i].role) &&
			   is_figure_token(&e->parts[i].token);
	if (!placed || !results || has_twins(e)) {
		forget_roles(e);
		return false;
	}
	e->zone = row_zone(in);
	return true;
}
