/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Values in running sentences: a figure may stand before its name, on the line above, or behind a
 * name that is not ours. What is plain is taken, the rest is asked about; nothing passes unsaid.
 */
#include "intake/reader.h"

#include <string.h>

/* What a water's pH may be. */
#define PH_LEAST 4
#define PH_MOST 11

static bool is_kind(const struct ts_token *t, enum ts_term_kind kind)
{
	return t->kind == TS_TOKEN_TERM && t->term->kind == kind;
}

/* Between a unit and the name of which it states so much: "14 mg/l of calcium". */
static const char *const of_words[] = {
	"of", "de", "de la", "du", "des", "d'", "di", "del", "von", "an", "van", "aan", NULL};
static const char *const nothing[] = {"", NULL};
/* Between a figure and a name, an amount without "per litre": which litre is said elsewhere. */
static const char *const amounts[] = {"mg", "mg of", "mg de", "mg di", "mg an", "mg aan",
	"milligram", "milligrams of", "milligramm", "milligrammes de", "milligrammi di",
	"miligramos de", NULL};

static bool between_is(
	const struct ts_intake *in, size_t start, size_t end, const char *const *words)
{
	const char *text = in->line.lower;

	while (start < end && text[start] == ' ')
		start++;
	while (end > start && text[end - 1] == ' ')
		end--;
	for (; *words; words++) {
		if (strlen(*words) == end - start && !memcmp(*words, text + start, end - start))
			return true;
	}
	return false;
}

/* A row of a table; a semicolon in a file without cells is a sentence's. */
static bool is_row(const struct ts_intake *in)
{
	return in->headed || (in->tokens.delimited && !(in->tokens.sign == ';' && !in->delimiter));
}

static bool is_contents(const struct ts_token *t)
{
	return is_kind(t, TS_TERM_UNIT) && *t->term->unit != '%' && strcmp(t->term->unit, "c") != 0;
}

/* Words of columns since the last name: "up to", "limit", "on average". */
static bool qualified(const struct ts_intake *in, size_t figure, bool *legal)
{
	bool found = false;

	*legal = false;
	for (size_t i = figure; i-- > 0 && !is_kind(&in->tokens.at[i], TS_TERM_LABEL);) {
		if (!is_kind(&in->tokens.at[i], TS_TERM_COLUMN))
			continue;
		*legal |= in->tokens.at[i].term->role == TS_ROLE_LEGAL;
		found |= in->tokens.at[i].term->role != TS_ROLE_MEAN;
	}
	return found;
}

/* "3.1 degrees hardness; of these 2.2 dH carbonate hardness": figures first throughout the line. */
static bool figures_lead(const struct ts_intake *in)
{
	bool first = false, last = false, any = false;

	if (in->entry.label && in->entry.line != in->line.number)
		return false;
	for (size_t i = 0; i < in->tokens.count; i++) {
		bool figure = ts_is_figure(in, i),
		     label = is_kind(&in->tokens.at[i], TS_TERM_LABEL);

		if (!any && (figure || label)) {
			first = figure;
			any = true;
		}
		if (figure || label)
			last = label;
	}
	return first && last;
}

enum ts_prose ts_prose_before(const struct ts_intake *in, size_t figure, size_t *name)
{
	const struct ts_tokens *t = &in->tokens;
	size_t i = figure + 1;
	bool unit, legal, held;

	if (is_row(in) || !ts_is_figure(in, figure))
		return TS_PROSE_NOT;
	unit = i < t->count && is_contents(&t->at[i]);
	i += unit;
	if (i < t->count && t->at[i].kind == TS_TOKEN_OTHER)
		i++;
	if (i >= t->count || !is_kind(&t->at[i], TS_TERM_LABEL) || !t->at[i].term->key ||
		t->at[i].cell != t->at[figure].cell)
		return TS_PROSE_NOT;
	*name = i;
	held = qualified(in, figure, &legal);
	if (legal)
		return TS_PROSE_NOT;
	if (!between_is(in, t->at[figure + unit].end, t->at[i].start, unit ? of_words : amounts) &&
		!(unit && i == figure + 2 && figures_lead(in) &&
			between_is(in, t->at[figure + 1].end, t->at[i].start, nothing)))
		return TS_PROSE_NOT;
	return unit && !held ? TS_PROSE_ITS : TS_PROSE_PERHAPS;
}

/* Figures with a unit (a pH has none) before the first name of ours in this line. */
static bool figures_before(const struct ts_intake *in, const struct ts_term *label)
{
	bool found = false, bare = label->key && strcmp(label->key, "pH") == 0;

	for (size_t i = 0; i < in->tokens.count; i++) {
		const struct ts_token *t = &in->tokens.at[i];

		if ((is_kind(t, TS_TERM_LABEL) && t->term->key) ||
			(is_kind(t, TS_TERM_COLUMN) && t->term->role == TS_ROLE_LEGAL))
			break;
		found |= ts_is_figure(in, i) &&
			 ((bare && t->first >= PH_LEAST && t->first <= PH_MOST) ||
				 (i + 1 < in->tokens.count &&
					 is_kind(&in->tokens.at[i + 1], TS_TERM_UNIT) &&
					 *in->tokens.at[i + 1].term->unit != '%'));
	}
	return found;
}

bool ts_prose_below(const struct ts_intake *in, const struct ts_entry *e)
{
	return e->label && e->line + 1 == in->line.number && figures_before(in, e->label);
}

/* Whether the first name of the line has a figure of its own, and not only a limit. */
static bool first_is_served(const struct ts_intake *in, size_t label)
{
	bool limit = false;

	for (size_t i = label + 1; i < in->tokens.count; i++) {
		const struct ts_token *t = &in->tokens.at[i];

		if (is_kind(t, TS_TERM_LABEL))
			return false;
		if (is_kind(t, TS_TERM_COLUMN))
			limit = t->term->role == TS_ROLE_LEGAL;
		if (ts_is_figure(in, i) && !limit)
			return true;
	}
	return false;
}

/* "19.3 degrees, before that it was 34. The pH is 7.9": its unit says what the figure is of. */
static bool implied_before(const struct ts_intake *in, size_t label)
{
	for (size_t i = 1; i < label; i++) {
		const struct ts_token *t = &in->tokens.at[i];

		if (is_kind(t, TS_TERM_UNIT) && ts_is_figure(in, i - 1) &&
			t->term->marks & (TS_TERM_IMPLIES | TS_TERM_DEGREE))
			return true;
	}
	return false;
}

/* "9 grains per gallon of total hardness", "42 mg/l of sodium, against a limit of 200". */
bool ts_prose_asks_before(const struct ts_intake *in)
{
	size_t i = 0, name;

	while (i < in->tokens.count && !is_kind(&in->tokens.at[i], TS_TERM_LABEL))
		i++;
	if (i == in->tokens.count || !in->tokens.at[i].term->key)
		return false;
	for (size_t figure = 0; figure < i; figure++) {
		if (ts_prose_before(in, figure, &name) == TS_PROSE_ITS)
			return false; /* taken */
	}
	if (!is_row(in) && implied_before(in, i))
		return true;
	return figures_before(in, in->tokens.at[i].term) && !first_is_served(in, i);
}

bool ts_prose_goes_on(const struct ts_intake *in)
{
	static const char *const joins[] = {"to", "auf", "auf jetzt", "a", "naar", "bis", "tot",
		"or", "oder", "ou", "of", "o", "and", "und", "et", "en", "y", "e", NULL};
	const struct ts_tokens *t = &in->tokens;
	size_t i = t->count;

	while (i > 0 && !ts_is_figure(in, i - 1))
		i--;
	if (i == 0 || is_row(in))
		return false;
	i -= i == t->count || !is_contents(&t->at[i]);
	return between_is(in, t->at[i].end, in->line.len, joins);
}

/* A line that ends with a figure that nothing took, whose name may begin the next line. */
void ts_prose_keep_tail(struct ts_intake *in)
{
	const struct ts_tokens *t = &in->tokens;
	size_t i = t->count;

	in->tail_line = 0;
	while (i > 0 && !ts_is_figure(in, i - 1) && !is_kind(&t->at[i - 1], TS_TERM_LABEL))
		i--;
	if (i == 0 || !ts_is_figure(in, i - 1) || is_row(in) || t->at[i - 1].kind == TS_TOKEN_DASH)
		return;
	if (!between_is(in, t->at[i - 1].end, in->line.len, amounts) &&
		!(i < t->count && is_contents(&t->at[i]) &&
			between_is(in, t->at[i].end, in->line.len, of_words)))
		return;
	in->tail_line = in->line.number;
	ts_line_show(&in->line, 0, in->line.raw_len, in->tail, sizeof in->tail);
}

void ts_prose_ask_tail(struct ts_intake *in)
{
	if (!in->tail_line || in->tail_line + 1 != in->line.number || !in->tokens.count ||
		!is_kind(&in->tokens.at[0], TS_TERM_LABEL) || !in->tokens.at[0].term->key)
		return;
	ts_collect_gap(in, NULL, in->tail_line, in->tail,
		"the name of its last figure may stand on the next line",
		"look at both lines and use a flag or the file");
}
