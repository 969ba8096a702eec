/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What nobody took. Every figure that stands beside a unit or a name of water is noted when its
 * line is met and struck off when it is taken, asked about or listed; what is left when nothing
 * open can still take it is asked about, so that no value can pass unsaid.
 */
#include <string.h>

#include "intake/reader.h"

/* Beginnings of words for what a water file holds, in words that no row of terms.c knows. */
static const char *const stems[] = {"abdampf", "acidit", "alcal", "alcalin", "alkal", "ammon",
	"amoni", "calcaire", "calci", "carbon", "chalk", "chlor", "cloro", "clorur", "cobre",
	"conduci", "conduct", "condutt", "copper", "cuivre", "droogrest", "durete", "durez", "fosf",
	"geleid", "haerte", "hardhe", "hardne", "harte", "hydrog", "idrog", "kalium", "kalk",
	"kalzi", "karbon", "koper", "kupfer", "leitf", "leitwert", "magnes", "natr", "nitr",
	"ossig", "oxig", "oxyg", "phosph", "potas", "residu", "salin", "sauerst", "saurebind",
	"saurekap", "sodi", "solfat", "sulfa", "sulph", "trockenr", "zuurgr", "zuurst", NULL};
/* Words before the limit of a class: "more than 14 degrees: hard". */
static const char *const above[] = {"more", "mehr", "uber", "ueber", "ab ", "above", "over", "plus",
	"meer", "mas", "oltre", "piu", "sup", "boven", "mayor", NULL};

static bool is_kind(const struct ts_token *t, enum ts_term_kind kind)
{
	return t->kind == TS_TOKEN_TERM && t->term->kind == kind;
}

static bool holds(const struct ts_intake *in, const struct ts_token *t, const char *const *words)
{
	for (; *words; words++) {
		size_t len = strlen(*words);

		for (size_t at = t->start; at + len <= t->end; at++) {
			if (memcmp(in->line.lower + at, *words, len) == 0)
				return true;
		}
	}
	return false;
}

/* "ca 112 / mg 9.7": formulas as they are typed. */
static bool is_formula(const struct ts_intake *in, const struct ts_token *t)
{
	static const char *const formulas[] = {
		"ca", "cl", "cu", "hco3", "k", "mg", "na", "nh4", "no2", "no3", "po4", "so4", NULL};
	size_t len = (size_t)(t->end - t->start);

	for (size_t i = 0; formulas[i]; i++) {
		if (strlen(formulas[i]) == len &&
			memcmp(in->line.lower + t->start, formulas[i], len) == 0)
			return true;
	}
	return false;
}

bool ts_sweep_names(const struct ts_intake *in, const struct ts_token *t)
{
	return t->kind == TS_TOKEN_OTHER && (holds(in, t, stems) || is_formula(in, t));
}

static bool is_contents(const struct ts_token *t)
{
	return is_kind(t, TS_TERM_UNIT) && *t->term->unit != '%' && strcmp(t->term->unit, "c") != 0;
}

/* A name of ours, of something else, or no name. */
enum name { NO_NAME, OURS, FOREIGN };

static enum name name_of(const struct ts_intake *in, const struct ts_token *t)
{
	if (is_kind(t, TS_TERM_LABEL))
		return t->term->key ? OURS : FOREIGN;
	if (is_kind(t, TS_TERM_FORMULA) && t->term->key)
		return OURS;
	return ts_sweep_names(in, t) ? OURS : NO_NAME;
}

/* Lines below a name alone in which a cell may still be its figure. */
#define NAMED_NEAR 4

/* Letters of words beside a figure that is an answer: "about 11 to 12". */
#define ANSWER_WORDS_MOST 16

/* A line that holds a figure, perhaps its unit and a word, and no more. */
static bool is_cell(const struct ts_intake *in)
{
	size_t figures = 0, words = 0;

	for (size_t i = 0; i < in->tokens.count; i++) {
		if (ts_is_figure(in, i))
			figures++;
		else if (in->tokens.at[i].kind == TS_TOKEN_OTHER)
			words += (size_t)(in->tokens.at[i].end - in->tokens.at[i].start);
		else if (!is_kind(&in->tokens.at[i], TS_TERM_UNIT) &&
			 !is_kind(&in->tokens.at[i], TS_TERM_FORMULA))
			return false;
	}
	return figures == 1 && words <= ANSWER_WORDS_MOST;
}

/* Whose a figure looks: the last name before it, else one close behind it, else that above. */
static enum name whose(const struct ts_intake *in, size_t figure)
{
	const struct ts_tokens *t = &in->tokens;
	const size_t close = 4;

	for (size_t i = figure; i-- > 0;) {
		enum name name = name_of(in, &t->at[i]);

		if (name)
			return name;
	}
	if (in->columns_above && !(in->aligned && !ts_table_has_pieces(in)))
		return OURS;
	for (size_t i = figure + 1; i < t->count && i <= figure + close; i++) {
		enum name name = name_of(in, &t->at[i]);

		if (name)
			return name;
		if (ts_is_figure(in, i))
			break;
	}
	if (in->named_line && in->line.number - in->named_line <= NAMED_NEAR && is_cell(in))
		return OURS;
	return in->entry.label && in->entry.line + 1 == in->line.number &&
			       !ts_entry_has_values(&in->entry)
		       ? OURS
		       : NO_NAME;
}

static bool is_year(const struct ts_token *t)
{
	return t->kind == TS_TOKEN_NUMBER && t->first >= 1900 && t->first <= 2100 &&
	       !strpbrk(t->figure, ".,");
}

/* "12 samples", "method 31": a word beside it says that it is no value. */
static bool is_counted(const struct ts_intake *in, size_t i)
{
	for (int side = -1; side <= 1; side += 2) {
		const struct ts_token *t;

		if ((side < 0 && i == 0) || (side > 0 && i + 1 == in->tokens.count))
			continue;
		t = &in->tokens.at[i + (size_t)side];
		if (is_kind(t, TS_TERM_COLUMN) &&
			(t->term->role == TS_ROLE_COUNT || t->term->role == TS_ROLE_TEXT))
			return true;
	}
	return false;
}

/* The limit of a class of hardness: bounds, ranges, what stands behind "more than". */
static bool is_of_class(const struct ts_intake *in, size_t figure)
{
	const struct ts_tokens *t = &in->tokens;
	bool classes = false, spread = false;

	for (size_t i = 0; i < t->count; i++) {
		if (is_kind(&t->at[i], TS_TERM_LABEL) && t->at[i].term->key &&
			strcmp(t->at[i].term->key, "GH") != 0)
			return false; /* of other things, too */
		spread |= ts_is_figure(in, i) && t->at[i].kind != TS_TOKEN_NUMBER;
		classes |= is_kind(&t->at[i], TS_TERM_SCALE) || is_kind(&t->at[i], TS_TERM_CLASS);
	}
	if (!classes)
		return false;
	return spread || (figure && t->at[figure - 1].kind == TS_TOKEN_OTHER &&
				 holds(in, &t->at[figure - 1], above));
}

/* "The limit of 50 mg/l", "well below 200 mg/l": a rule's figure, in words for one. */
static bool is_rule(const struct ts_intake *in, size_t i)
{
	const struct ts_token *t = &in->tokens.at[i],
			      *next = i + 1 < in->tokens.count ? t + 1 : NULL;
	const struct ts_term *unit = next && is_contents(next) ? next->term : NULL;

	if (t->kind != TS_TOKEN_BELOW &&
		!(i && is_kind(t - 1, TS_TERM_COLUMN) && t[-1].term->role == TS_ROLE_LEGAL))
		return false;
	for (size_t k = 0; k < ts_legals_count; k++) {
		const struct ts_legal *l = &ts_legals[k];

		if ((!unit || strcmp(unit->unit, l->unit) == 0) &&
			l->value == t->first * (unit ? unit->scale : 1))
			return true;
	}
	return false;
}

/* "1303 Conductivity 287": the number of a row, or its code. */
static bool is_row_number(const struct ts_intake *in, size_t i)
{
	bool whole = in->tokens.at[i].kind == TS_TOKEN_NUMBER &&
		     !strpbrk(in->tokens.at[i].figure, ".,"),
	     other = false;

	if (i || !whole || in->tokens.count < 3 || !name_of(in, &in->tokens.at[1]))
		return false;
	for (size_t k = 1; k < in->tokens.count; k++)
		other |= ts_is_figure(in, k);
	return other;
}

/* "temperature between 9 and 16 C": no condition of a measurement. */
static bool is_warmth(const struct ts_intake *in, size_t figure)
{
	const struct ts_token *next = &in->tokens.at[figure + 1];

	if (figure + 1 >= in->tokens.count || !is_kind(next, TS_TERM_UNIT) ||
		strcmp(next->term->unit, "c") != 0)
		return false;
	for (size_t i = figure; i-- > 0;) {
		if (is_kind(&in->tokens.at[i], TS_TERM_LABEL))
			return in->tokens.at[i].term->key &&
			       strcmp(in->tokens.at[i].term->key, "temperature") == 0;
	}
	return false;
}

static bool is_sought(const struct ts_intake *in, size_t i)
{
	const struct ts_token *next = i + 1 < in->tokens.count ? &in->tokens.at[i + 1] : NULL;
	bool unit = next && is_contents(next);
	enum name name;

	if (is_warmth(in, i))
		return true;
	if (!ts_is_figure(in, i) || is_counted(in, i) || is_of_class(in, i) ||
		is_row_number(in, i) || is_rule(in, i))
		return false;
	name = whose(in, i);
	if (name == FOREIGN)
		return false;
	unit |= i && is_kind(&in->tokens.at[i - 1], TS_TERM_UNIT) &&
		in->tokens.at[i - 1].term->marks & TS_TERM_DEGREE;
	return unit || (name == OURS && !is_year(&in->tokens.at[i]));
}

/* What is shown of a long line before the figure, or the name, that is asked about. */
#define BEFORE_FIGURE 60

void ts_sweep_text(const struct ts_intake *in, size_t figure, char out[TS_SHOWN_ROOM])
{
	size_t at = in->line.from[in->tokens.at[figure].start];
	size_t start =
		at > BEFORE_FIGURE && in->line.raw_len >= TS_SHOWN_ROOM ? at - BEFORE_FIGURE : 0;

	while (start && start < at && in->line.raw[start - 1] != ' ')
		start++;
	ts_line_show(&in->line, start, in->line.raw_len, out, TS_SHOWN_ROOM);
}

/* The digits of a figure as printed; of a range its first. */
static void keep_digits(
	const struct ts_intake *in, const struct ts_token *t, char out[TS_DIGITS_ROOM])
{
	const struct ts_report_line *l = &in->line;
	const char *at = l->lower + t->start;
	size_t len = 0, start;

	at += strcspn(at, "0123456789");
	while (at[len] && strchr("0123456789.,", at[len]))
		len++;
	while (len && strchr(".,", at[len - 1]))
		len--;
	start = (size_t)(at - l->lower);
	ts_line_show(l, l->from[start], l->from[start + len], out, TS_DIGITS_ROOM);
}

static void ask(struct ts_intake *in, const struct ts_sight *s)
{
	ts_collect_gap(in, NULL, s->line, s->text,
		"a figure beside a name or a unit that was not taken",
		"look at the line and use a flag or the file");
}

void ts_sweep_ask(struct ts_intake *in, bool all)
{
	size_t left = 0;

	for (size_t i = 0; i < in->sight_count; i++) {
		const struct ts_sight *s = &in->sights[i];
		bool open = in->entry.label && s->line >= in->entry.line;

		if (s->settled)
			continue;
		if (!all && (open || s->line == in->tail_line))
			in->sights[left++] = *s;
		else
			ask(in, s);
	}
	in->sight_count = left;
}

/* "Village   Hardness   pH": names side by side of which the lines below may hold the figures. */
static void see_columns(struct ts_intake *in)
{
	size_t names = 0, figures = 0, words = 0;
	bool degrees = false;

	for (size_t i = 0; i < in->tokens.count; i++) {
		names += name_of(in, &in->tokens.at[i]) == OURS;
		degrees |= is_kind(&in->tokens.at[i], TS_TERM_UNIT) &&
			   in->tokens.at[i].term->marks & TS_TERM_DEGREE;
		figures += ts_is_figure(in, i);
		words += in->tokens.at[i].kind == TS_TOKEN_OTHER;
	}
	degrees |= in->tokens.count == 1 && is_contents(&in->tokens.at[0]);
	if ((names == 1 || degrees) && !figures && in->tokens.count <= 3)
		in->named_line = in->line.number;
	if (names >= 2 && !figures && words <= names && !in->tokens.delimited) {
		in->columns_above = true;
		in->columns_line = in->line.number;
	} else if (names ||
		   (!figures && !in->aligned && in->line.number > in->columns_line + 1)) /* units */
		in->columns_above = false;
}

void ts_sweep_line(struct ts_intake *in)
{
	see_columns(in);
	for (size_t i = 0; i < in->tokens.count; i++) {
		struct ts_sight *s;

		if (!is_sought(in, i))
			continue;
		if (in->sight_count == TS_SIGHTS_MOST)
			ts_sweep_ask(in, true);
		s = &in->sights[in->sight_count++];
		*s = (struct ts_sight){.line = in->line.number, .start = in->tokens.at[i].start};
		keep_digits(in, &in->tokens.at[i], s->digits);
		ts_sweep_text(in, i, s->text);
	}
}

void ts_sweep_settle(struct ts_intake *in, unsigned line, unsigned start)
{
	for (size_t i = 0; i < in->sight_count; i++)
		in->sights[i].settled |= in->sights[i].line == line && in->sights[i].start == start;
}

void ts_sweep_settle_shown(struct ts_intake *in, unsigned line, const char *text)
{
	bool several = text && strstr(text, " / ");

	for (size_t i = 0; i < in->sight_count; i++) {
		struct ts_sight *s = &in->sights[i];

		s->settled |= (s->line == line || (several && s->line > line)) &&
			      (!text || strstr(text, s->digits));
	}
}
