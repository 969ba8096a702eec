/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The driver: bytes to lines, lines to tokens, and which tokens belong to which label: on its line,
 * on the lines below it, or in the cells of a table. It keeps one line and one entry, so that
 * memory does not grow with the report.
 */
#include <string.h>

#include "base/arena.h"
#include "intake/table.h"

/* Physical lines of one quoted cell. */
#define QUOTED_LINES_MOST 8

static const struct ts_term hardness_by_unit = {.kind = TS_TERM_LABEL, .pattern = "", .key = "GH"};

struct ts_intake *ts_intake_open(const struct ts_allocator *allocator)
{
	struct ts_allocator mine = ts_allocator_or_default(allocator);
	struct ts_intake *in = mine.resize(mine.state, NULL, sizeof *in);
	bool ok;

	if (!in)
		return NULL;
	memset(in, 0, sizeof *in);
	in->allocator = mine;
	in->line.number = 1;
	ts_arena_open(&in->arena, &mine);
	in->lexer = ts_lexer_open(&mine);
	in->layouts = ts_patterns_open(&mine, ts_layouts_count);
	ok = in->lexer && in->layouts;
	for (size_t i = 0; i < ts_layouts_count && ok; i++)
		ok = ts_patterns_add(in->layouts, i, "(?:", ts_layouts[i].pattern, ")\\z");
	if (ok)
		return in;
	ts_intake_close(in);
	return NULL;
}

void ts_intake_close(struct ts_intake *in)
{
	struct ts_allocator mine;

	if (!in)
		return;
	mine = in->allocator;
	ts_lexer_close(in->lexer);
	ts_patterns_close(in->layouts);
	ts_arena_drop(&in->arena);
	mine.resize(mine.state, in, 0);
}

/* Room for a second line in the text of a gap. */
#define TEXT_LEAST 24

static bool is_kind(const struct ts_token *t, enum ts_term_kind kind)
{
	return t->kind == TS_TOKEN_TERM && t->term->kind == kind;
}

/* The line for the list of gaps, made only when an entry opens. */
static void keep_text(struct ts_intake *in, struct ts_entry *e)
{
	ts_line_show(&in->line, 0, in->line.raw_len, e->text, sizeof e->text);
}

/* With the line below that belongs to it. */
static void add_text(struct ts_intake *in, struct ts_entry *e)
{
	size_t len = strlen(e->text);

	if (len + TEXT_LEAST > sizeof e->text)
		return;
	memcpy(e->text + len, " / ", 4);
	ts_line_show(&in->line, 0, in->line.raw_len, e->text + len + 3, sizeof e->text - len - 3);
}

/* The token of the line that opens an entry is shown, where not all of a long line is. */
static void keep_text_at(struct ts_intake *in, struct ts_entry *e, const struct ts_token *t)
{
	size_t i = (size_t)(t - in->tokens.at);

	if (i < in->tokens.count)
		ts_sweep_text(in, i, e->text);
}

static void open_entry(struct ts_intake *in, const struct ts_term *label)
{
	struct ts_entry *e = &in->entry;

	ts_entry_close(in, e);
	if (!label->key)
		return;
	e->label = label;
	e->line = in->line.number;
	e->zone = in->zone;
	keep_text(in, e);
}

/* Figures of this line. */
static size_t count_figures(const struct ts_intake *in)
{
	size_t figures = 0;

	for (size_t i = 0; i < in->tokens.count; i++)
		figures += ts_is_figure(in, i);
	return figures;
}

static bool any_of_kind(const struct ts_intake *in, enum ts_term_kind kind)
{
	for (size_t i = 0; i < in->tokens.count; i++) {
		if (is_kind(&in->tokens.at[i], kind))
			return true;
	}
	return false;
}

/* "Supply zone: North", "Supply zone | North |". A sentence that mentions zones is none. */
static bool take_zone_line(struct ts_intake *in)
{
	const struct ts_token *t = in->tokens.count ? &in->tokens.at[0] : NULL;
	const struct ts_report_line *l = &in->line;
	size_t start, end;
	char name[TS_NAME_ROOM];

	if (!t || !is_kind(t, TS_TERM_ZONE) || t->cell >= TS_LINE_CELLS_MOST)
		return false;
	start = t->end;
	end = in->tokens.cell_at[t->cell].end;
	while (start < end && strchr(" :=-", l->lower[start]))
		start++;
	if (start < end)
		ts_line_show(l, l->from[start], l->from[end], name, sizeof name);
	else
		ts_cell_text(in, (size_t)t->cell + 1, name);
	if (!*name || strlen(name) > 60 || name[strlen(name) - 1] == '.')
		return false;
	ts_entry_close(in, &in->entry);
	in->zone = ts_collect_zone(in, name);
	return true;
}

/* Whether a label inside the line begins an entry of its own. */
static void meet_label(struct ts_intake *in, const struct ts_token *t, int depth)
{
	struct ts_entry *e = &in->entry;
	bool bare = e->label && !ts_entry_has_figures(e);

	if (bare && depth > 0 && t->term->key != e->label->key)
		return; /* "hardness (calcium and magnesium)" */
	if (bare && t->term->key && strcmp(t->term->key, e->label->key) == 0) {
		if (t->term->form && e->line == in->line.number)
			e->label = t->term;
		return;
	}
	open_entry(in, t->term);
	if (e->label)
		keep_text_at(in, e, t);
}

/* A formula opens an entry where no label has: "Ca 80 mg/L". */
static bool acts_as_label(const struct ts_intake *in, size_t i)
{
	const struct ts_token *t = &in->tokens.at[i];
	bool first = i == 0 || in->tokens.at[i - 1].cell != t->cell;
	/* "Ca 74.1  Mg 9.9  Na 12", "(mg/l): Ca 74.1" */
	/* "Nitrate 50 mg/l NO3 27", "Hardness 67 mg/l Ca 33": what the unit counts */
	const char *open = in->entry.label ? in->entry.label->key : "";
	bool other = t->term && t->term->key && strcmp(open, t->term->key) != 0 &&
		     strcmp(open, "GH") != 0;
	bool in_list = i && other && i + 1 < in->tokens.count && ts_is_figure(in, i + 1) &&
		       (ts_is_figure(in, i - 1) || is_kind(&in->tokens.at[i - 1], TS_TERM_UNIT) ||
			       in->tokens.at[i - 1].kind == TS_TOKEN_CLOSE);

	/* "KH we do not know, HCO3 = 140": other words stand between the name and its like */
	bool afresh = i && other && in->tokens.at[i - 1].kind == TS_TOKEN_OTHER &&
		      i + 1 < in->tokens.count && ts_is_figure(in, i + 1);

	return is_kind(t, TS_TERM_FORMULA) && t->term->key &&
	       (afresh || ((first || in_list) &&
				  (!in->entry.label || ts_entry_has_figures(&in->entry))));
}

static bool lists_formulas(const struct ts_intake *in)
{
	for (size_t i = 0; i < in->tokens.count; i++) {
		if (acts_as_label(in, i))
			return true;
	}
	return false;
}

/* "Cations (mg/l): Ca 74.1  Mg 9.9": the unit of all that is named behind it; NULL = none. */
static const struct ts_token *unit_of_list(const struct ts_intake *in)
{
	const struct ts_token *unit = NULL;

	for (size_t i = 0; i < in->tokens.count && !unit; i++) {
		const struct ts_token *t = &in->tokens.at[i];

		if (is_kind(t, TS_TERM_LABEL) || is_kind(t, TS_TERM_FORMULA) || ts_is_figure(in, i))
			return NULL;
		unit = is_kind(t, TS_TERM_UNIT) ? t : NULL;
	}
	return unit;
}

/*
 * "Legal limits: nitrate 50 mg/l; pH 6.5-9.5", "It keeps all standards (nitrate at most 50 mg/l)":
 * the word before the first label is that of all.
 */
static const struct ts_token *limits_of_line(const struct ts_intake *in)
{
	const struct ts_token *first = in->tokens.at;
	size_t i = first->kind == TS_TOKEN_OTHER && in->tokens.count > 1;

	first += i;
	if (!is_kind(first, TS_TERM_COLUMN) || first->term->role != TS_ROLE_LEGAL)
		return NULL;
	for (size_t labels = 0; i < in->tokens.count; i++) {
		const struct ts_token *t = &in->tokens.at[i];

		labels += is_kind(t, TS_TERM_LABEL);
		if (is_kind(t, TS_TERM_COLUMN) && t->term->role != TS_ROLE_LEGAL &&
			t->term->role != TS_ROLE_HIGHEST)
			return NULL;
		/* "limit of 50 mg/l. The calcium of 29 mg/l": it had its figure already. */
		if (!labels && ts_is_figure(in, i) && any_of_kind(in, TS_TERM_LABEL))
			return NULL;
	}
	return first;
}

/* "Raw water: hardness 24 dH": the word before the name is that of its figure. */
static const struct ts_token *elsewhere_before(const struct ts_intake *in, size_t figure)
{
	for (size_t i = figure; i-- > 0;) {
		const struct ts_token *t = &in->tokens.at[i];

		if (is_kind(t, TS_TERM_COLUMN) && t->term->role == TS_ROLE_ELSE)
			return t;
	}
	return NULL;
}

static void add_part(struct ts_intake *in, size_t i)
{
	struct ts_entry *e = &in->entry;
	const struct ts_token *limit = ts_is_figure(in, i) ? limits_of_line(in) : NULL;
	const struct ts_token *elsewhere = ts_is_figure(in, i) ? elsewhere_before(in, i) : NULL;

	if (e->label && elsewhere)
		ts_entry_add(e, elsewhere, in->line.number);
	if (e->label && limit)
		ts_entry_add(e, limit, in->line.number);
	if (e->label && (i || !limits_of_line(in))) /* which stands before each figure already */
		ts_entry_add(e, &in->tokens.at[i], in->line.number);
}

/* Whether anything but hardness is named on the line. */
static bool names_others(const struct ts_intake *in)
{
	for (size_t i = 0; i < in->tokens.count; i++) {
		const struct ts_token *t = &in->tokens.at[i];

		if (is_kind(t, TS_TERM_LABEL) && t->term->key && strcmp(t->term->key, "GH") != 0)
			return true;
	}
	return false;
}

/* A paragraph that says "hard" somewhere states no classes. */
#define CLASS_LINE_MOST 30

/* A range or a bound beside the name of a class is the class's limit. */
static bool states_class(const struct ts_intake *in, bool labelled)
{
	bool named = false, spread = false, behind = false;

	if (names_others(in) || in->tokens.count > CLASS_LINE_MOST)
		return false;
	for (size_t i = 0; i < in->tokens.count; i++) {
		const struct ts_token *t = &in->tokens.at[i];
		bool figure = ts_is_figure(in, i);

		named |= is_kind(t, TS_TERM_CLASS) || is_kind(t, TS_TERM_SCALE);
		behind |= figure && named;
		spread |= figure && t->kind != TS_TOKEN_NUMBER;
	}
	return named && (spread || (behind && !labelled));
}

/* A line without a label whose unit says that it is hardness. */
static bool take_implied(struct ts_intake *in)
{
	bool implies = false, only_degrees = true, degree = false;

	for (size_t i = 0; i < in->tokens.count; i++) {
		const struct ts_token *t = &in->tokens.at[i];

		if (is_kind(t, TS_TERM_UNIT)) {
			implies |= (t->term->marks & TS_TERM_IMPLIES) != 0;
			degree |= (t->term->marks & TS_TERM_DEGREE) != 0;
		}
		only_degrees &= is_kind(t, TS_TERM_UNIT) || ts_is_figure(in, i) ||
				t->kind == TS_TOKEN_OPEN || t->kind == TS_TOKEN_CLOSE;
	}
	if (!(implies || (degree && only_degrees)) || !count_figures(in))
		return false;
	if (states_class(in, false)) {
		in->class_only = true;
		return true;
	}
	open_entry(in, &hardness_by_unit);
	in->entry.implied = true;
	for (size_t i = 0; i < in->tokens.count; i++) {
		if (is_kind(&in->tokens.at[i], TS_TERM_SCALE))
			break;
		add_part(in, i);
	}
	ts_entry_close(in, &in->entry);
	return true;
}

/* A line of figures, units and dashes below its label, perhaps with what they are: "limit 50". */
static bool continues(const struct ts_intake *in)
{
	bool figures = count_figures(in) > 0;
	const struct ts_entry *e = &in->entry;

	if (!e->label)
		return false;
	/* "91 mg/l / Degrees French": a unit behind a unit is of what comes below */
	if (!figures && e->count && ts_entry_has_values(e) &&
		is_kind(&e->parts[e->count - 1].token, TS_TERM_UNIT) &&
		is_kind(&in->tokens.at[0], TS_TERM_UNIT))
		return false;
	for (size_t i = 0; i < in->tokens.count; i++) {
		const struct ts_token *t = &in->tokens.at[i];

		if (t->kind == TS_TOKEN_OTHER)
			return false;
		if (t->kind == TS_TOKEN_TERM && t->term->kind != TS_TERM_UNIT &&
			t->term->kind != TS_TERM_NONE && t->term->kind != TS_TERM_FORMULA &&
			!(is_kind(t, TS_TERM_COLUMN) && figures))
			return false;
	}
	return !(in->tokens.count == 1 && acts_as_label(in, 0));
}

static void continue_entry(struct ts_intake *in)
{
	add_text(in, &in->entry);
	for (size_t i = 0; i < in->tokens.count; i++)
		add_part(in, i);
	if (count_figures(in) > 1)
		ts_entry_close(in, &in->entry);
}

static void gap_class(struct ts_intake *in)
{
	keep_text(in, &in->entry);
	ts_collect_gap(in, NULL, in->line.number, in->entry.text,
		"a range beside a class of hardness: a result, or the limits of the class?",
		"look at the report and use a flag or the file");
	in->entry.label = NULL;
	in->entry.count = 0;
}

/* A name of ours that got no figure before one that is not ours began. */
static bool is_thirsty(const struct ts_intake *in, const struct ts_token *t)
{
	const struct ts_entry *e = &in->entry;

	return !t->term->key && e->label && e->line == in->line.number &&
	       !ts_entry_has_figures(e) && !in->headed && !in->tokens.delimited;
}

/* "14 mg/l of calcium": the name behind the figure; returns its place. */
static size_t take_before(struct ts_intake *in, size_t figure, size_t name)
{
	open_entry(in, in->tokens.at[name].term);
	add_part(in, figure);
	add_part(in, figure + 1);
	ts_entry_close(in, &in->entry);
	return name;
}

/* The labels of this line and what follows each; whether a figure of it must be asked about. */
static bool walk(struct ts_intake *in, size_t *asked)
{
	int depth = 0;
	bool scale = false, opened = false, thirsty = false, foreign = false, asks = false,
	     held = false, ask;
	size_t name;

	for (size_t i = 0; i < in->tokens.count; i++) {
		const struct ts_token *t = &in->tokens.at[i];
		enum ts_prose before = ts_prose_before(in, i, &name);

		depth += (t->kind == TS_TOKEN_OPEN) - (t->kind == TS_TOKEN_CLOSE);
		if (is_kind(t, TS_TERM_SCALE)) {
			ts_entry_close(in, &in->entry);
			scale = in->class_only = true;
		} else if (is_kind(t, TS_TERM_LABEL) || acts_as_label(in, i)) {
			if (in->headed && opened && ts_entry_has_figures(&in->entry) &&
				ts_table_row(in, &in->entry))
				in->entry.headed = true;
			ask = is_thirsty(in, t);
			meet_label(in, t, depth);
			if (in->entry.label && !in->entry.count &&
				in->entry.line == in->line.number && unit_of_list(in))
				ts_entry_add(&in->entry, unit_of_list(in), in->line.number);
			thirsty |= ask && !in->entry.label;
			scale = false;
			opened = true;
			foreign = !t->term->key;
		} else if (before == TS_PROSE_ITS) {
			i = take_before(in, i, name);
		} else if (before == TS_PROSE_PERHAPS) {
			ts_entry_close(in, &in->entry);
			*asked = asks ? *asked : i;
			asks = true;
			i = name;
		} else if (!scale) {
			ask = thirsty && foreign && ts_is_figure(in, i);
			*asked = ask && !asks ? i : *asked;
			asks |= ask;
			held |= !in->entry.label && foreign && ts_is_figure(in, i);
			add_part(in, i);
		}
	}
	if (held)
		ts_collect_other(in);
	return asks;
}

/* "the pH lies / between 8.0 and 8.4": the name at the end of a line, its figure in a sentence. */
static void ask_next_line(struct ts_intake *in)
{
	struct ts_entry *e = &in->entry;
	bool goes_on =
		e->label && e->goes_on && e->line + 1 == in->line.number && ts_is_figure(in, 0);

	if (!goes_on && ((e->label && ts_entry_has_values(e)) || !ts_prose_below(in, e)))
		return;
	add_text(in, e);
	ts_collect_gap(in, NULL, e->line, e->text,
		"its figure may stand in the sentence on the next line",
		"look at both lines and use a flag or the file");
	if (!goes_on)
		return;
	e->label = NULL;
	e->count = 0;
	e->goes_on = false;
}

static void ask_line(struct ts_intake *in, size_t figure, const char *why)
{
	char text[TS_SHOWN_ROOM];

	ts_sweep_text(in, figure, text);
	ts_collect_gap(in, NULL, in->line.number, text, why,
		"look at the line and use a flag or the file");
}

static void close_line(struct ts_intake *in)
{
	struct ts_entry *e = &in->entry;

	if (!e->label || e->line != in->line.number || !ts_entry_has_figures(e))
		return;
	if (!count_figures(in))
		return; /* only a temperature of measurement: the figures come below */
	if (!in->headed && !in->tokens.delimited && ts_entry_only(e, TS_ROLE_LEGAL))
		return; /* "must not exceed 50 mg/l. / Mean: 34 mg/l" */
	if (!in->headed && ts_entry_only(e, TS_ROLE_DETECTION)) {
		ts_collect_gap(in, NULL, e->line, e->text, "only what can be detected is printed",
			"where it was not found, write it with '<' before that figure");
		e->label = NULL;
		e->count = 0;
		return;
	}
	if (ts_prose_goes_on(in)) {
		e->goes_on = true;
		return;
	}
	e->headed = ts_table_row(in, e);
	ts_entry_close(in, e);
}

/*
 * A short line with a figure and a unit of contents, and no word of ours. One that begins with a
 * name is asked about, a few; the others are listed, not guessed.
 */
#define OTHER_TOKENS_MOST 24
#define ASKED_MOST 15

/* "Name: 7.95", "Name 2.4 mmol/l": a name that is not known, and one figure that ends the line. */
static bool names_a_figure(const struct ts_intake *in, bool unit)
{
	const struct ts_tokens *t = &in->tokens;
	const struct ts_token *last = &t->at[t->count - 1];
	size_t figures = count_figures(in), i = 0;

	while (i < t->count && t->at[i].kind != TS_TOKEN_OTHER &&
		!is_kind(&t->at[i], TS_TERM_CLASS) && !ts_is_figure(in, i))
		i++;
	if (!figures || i == t->count || ts_is_figure(in, i))
		return false;
	if (unit)
		return true;
	return figures == 1 && t->count == 2 && last->kind == TS_TOKEN_NUMBER &&
	       strpbrk(last->figure, ".,");
}

static void note_other(struct ts_intake *in)
{
	bool unit = false, hardness = false;

	for (size_t i = 0; i < in->tokens.count; i++) {
		const struct ts_token *t = &in->tokens.at[i];

		unit |= is_kind(t, TS_TERM_UNIT) && *t->term->unit != '%' &&
			strcmp(t->term->unit, "c") != 0;
		hardness |= is_kind(t, TS_TERM_UNIT) && t->term->marks & TS_TERM_DEGREE;
	}
	if (!count_figures(in) || in->tokens.count > OTHER_TOKENS_MOST)
		return;
	if (in->asked < ASKED_MOST && (hardness || names_a_figure(in, unit))) {
		in->asked++;
		keep_text(in, &in->entry);
		ts_collect_gap(in, NULL, in->line.number, in->entry.text,
			"its name is not known: is it of anything that a water file holds?",
			"if so, use the flag or the key of it");
		return;
	}
	/* of a scan no name may be known */
	if (unit || (in->line.scanned && in->tokens.count && names_a_figure(in, true))) {
		ts_sweep_settle_shown(in, in->line.number, NULL);
		ts_collect_other(in);
	}
}

/* A line that says a class and no more. */
#define CLASS_TOKENS_MOST 4

static void read_tokens(struct ts_intake *in)
{
	bool labelled = any_of_kind(in, TS_TERM_LABEL);

	if (!in->tokens.count)
		return;
	ts_prose_ask_tail(in);
	ts_prose_keep_tail(in);
	if (labelled || !continues(in))
		ask_next_line(in);
	if (in->tokens.overfull || in->line.cut) {
		if (labelled) {
			keep_text(in, &in->entry);
			ts_collect_gap(in, NULL, in->line.number, in->entry.text,
				"the line is too long to be one of a report",
				"give each value a line of its own");
		}
		in->entry.label = NULL;
		return;
	}
	if (!labelled && continues(in)) {
		continue_entry(in);
		return;
	}
	if (!labelled && in->entry.label && !ts_entry_has_figures(&in->entry) &&
		!count_figures(in) && any_of_kind(in, TS_TERM_CLASS) &&
		in->tokens.count <= CLASS_TOKENS_MOST)
		return; /* "Hardness / slightly hard / 138 mg/l" */
	if (!ts_table_line(in) && !take_zone_line(in)) {
		bool formula = lists_formulas(in);
		bool above = in->entry.label && in->entry.line != in->line.number;
		size_t asked = 0;

		if (!labelled && !formula) {
			ts_entry_close(in, &in->entry);
			in->class_only |= any_of_kind(in, TS_TERM_SCALE);
			if ((!any_of_kind(in, TS_TERM_SCALE) ||
				    !is_kind(&in->tokens.at[0], TS_TERM_SCALE)) &&
				!take_implied(in))
				note_other(in);
			return;
		}
		if (above)
			ts_entry_close(in, &in->entry);
		if (states_class(in, true) && !any_of_kind(in, TS_TERM_SCALE))
			gap_class(in);
		else if (walk(in, &asked))
			ask_line(in, asked, "a figure stands beside two names: of which is it?");
		if (!above && ts_prose_asks_before(in)) /* above: asked already */
			ask_line(in, 0, "a figure stands before its name: is it its?");
		close_line(in);
	}
}

/* A line that the heading's commas do not fit is not of its table: commas may be decimal again. */
static void lex(struct ts_intake *in)
{
	ts_lex(in->lexer, &in->line, in->delimiter, &in->tokens);
	if (in->delimiter == ',' && in->tokens.cells != in->heading_cells)
		ts_lex(in->lexer, &in->line, 0, &in->tokens);
}

/* "7.2" and "0.125" have decimals; "1.204" could have thousands. */
static void count_decimals(struct ts_intake *in)
{
	for (size_t i = 0; i < in->tokens.count; i++) {
		const struct ts_token *t = &in->tokens.at[i];
		const char *sign = strpbrk(t->figure, ".,");

		if (t->kind != TS_TOKEN_NUMBER || !sign || strchr("., ", sign[1]))
			continue;
		if (strlen(sign) == 4 && *t->figure != '0')
			continue;
		in->points += *sign == '.';
		in->commas += *sign == ',';
	}
}

static void end_line(struct ts_intake *in)
{
	ts_line_fold(&in->line);
	if (in->line.latin && !in->latin)
		in->latin = in->line.number;
	if (in->line.lower[strspn(in->line.lower, " \t")]) {
		lex(in);
		count_decimals(in);
		ts_sweep_line(in);
		read_tokens(in);
		in->blank_lines = 0;
	} else if (in->entry.label && (ts_entry_has_figures(&in->entry) || ++in->blank_lines > 1)) {
		ts_entry_close(in, &in->entry);
	}
	ts_sweep_ask(in, false);
	in->line.number += 1 + in->pending_lines;
	in->line.raw_len = 0;
	in->line.cut = false;
	in->pending_lines = 0;
}

static void put_byte(struct ts_intake *in, char byte)
{
	if (in->line.raw_len < TS_LINE_MOST)
		in->line.raw[in->line.raw_len++] = byte;
	else
		in->line.cut = true;
}

/* True inside a quoted cell, which may hold line ends. */
static bool quote_is_open(const struct ts_intake *in)
{
	size_t quotes = 0;

	if (!in->delimiter || in->pending_lines == QUOTED_LINES_MOST)
		return false;
	for (size_t i = 0; i < in->line.raw_len; i++)
		quotes += in->line.raw[i] == '"';
	return quotes % 2 == 1;
}

static void take_byte(struct ts_intake *in, char byte)
{
	bool end = byte == '\n' || byte == '\r';
	bool second = byte == '\n' && in->carriage;

	in->carriage = byte == '\r';
	if (second)
		return;
	if (!end) {
		put_byte(in, byte);
	} else if (quote_is_open(in)) {
		put_byte(in, ' ');
		in->pending_lines++;
	} else {
		end_line(in);
	}
}

static bool refuse(struct ts_intake *in, const struct ts_report_refusal *refusal)
{
	if (!refusal)
		return false;
	in->refused = *refusal;
	return in->is_refused = true;
}

enum ts_status ts_intake_feed(
	struct ts_intake *in, const char *bytes, size_t len, struct ts_report_refusal *ret_refusal)
{
	for (size_t i = 0; i < len && !in->is_refused; i++) {
		if (in->bytes < sizeof in->magic) {
			in->magic[in->bytes++] = bytes[i];
			if (refuse(in, ts_bytes_refused(in->magic, in->bytes)))
				break;
		}
		if (refuse(in, ts_byte_refused(bytes[i])))
			break;
		take_byte(in, bytes[i]);
		if (in->arena.failed)
			return TS_NO_MEMORY;
	}
	if (!in->is_refused)
		return TS_OK;
	*ret_refusal = in->refused;
	return TS_BAD_INPUT;
}

void ts_intake_last_line(struct ts_intake *in)
{
	if (in->line.raw_len)
		end_line(in);
	ts_entry_close(in, &in->entry);
	ts_table_end(in);
	ts_sweep_ask(in, true);
}
