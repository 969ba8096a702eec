/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One label and the figures behind it: gathers figures, units, forms and the words beside them.
 * What each figure is: by headings where there are some, else by roles.c.
 */
#include <math.h>
#include <string.h>

#include "intake/convert.h"
#include "intake/study.h"

const struct ts_field *ts_field_of(const struct ts_term *label, const char *form)
{
	const char *key = label->key;

	if (!key)
		return NULL;
	if (form && strcmp(form, "n") == 0 && strcmp(key, "NO3") == 0)
		key = "NO3-N";
	if (form && strcmp(form, "n") == 0 && strcmp(key, "NO2") == 0)
		key = "NO2-N";
	return ts_shape_field(&ts_shape_reading, key);
}

void ts_entry_add(struct ts_entry *entry, const struct ts_token *token, unsigned line)
{
	if (entry->count == TS_PARTS_MOST)
		entry->overfull = true;
	else
		entry->parts[entry->count++] = (struct ts_part){*token, line, 0, NULL, 0};
}

static bool is_figure(const struct ts_token *t)
{
	return t->kind == TS_TOKEN_NUMBER || t->kind == TS_TOKEN_RANGE ||
	       t->kind == TS_TOKEN_BELOW || t->kind == TS_TOKEN_ABOVE;
}

bool ts_entry_has_figures(const struct ts_entry *e)
{
	for (size_t i = 0; i < e->count; i++) {
		if (is_figure(&e->parts[i].token))
			return true;
	}
	return false;
}

bool ts_entry_has_values(const struct ts_entry *e)
{
	for (size_t i = 0; i < e->count; i++) {
		const struct ts_token *next = i + 1 < e->count ? &e->parts[i + 1].token : NULL;
		bool warm = next && next->kind == TS_TOKEN_TERM &&
			    next->term->kind == TS_TERM_UNIT && strcmp(next->term->unit, "c") == 0;

		if (is_figure(&e->parts[i].token) && !warm)
			return true;
	}
	return false;
}

bool ts_entry_only(const struct ts_entry *e, int role)
{
	bool so = false;

	for (size_t i = 0; i < e->count; i++) {
		const struct ts_token *t = &e->parts[i].token;

		if (t->kind == TS_TOKEN_TERM && t->term->kind == TS_TERM_COLUMN)
			so = t->term->role == role;
		else if ((t->kind == TS_TOKEN_TERM && t->term->kind == TS_TERM_NONE) ||
			 (!so && is_figure(t)))
			return false;
	}
	return true;
}

void ts_study_gap(const struct ts_study *s, const char *why, const char *remedy)
{
	ts_collect_gap(s->in, s->field->key, s->entry->line, s->entry->text, why, remedy);
}

static void add_event(struct ts_study *s, int letter, size_t figure)
{
	s->events[s->event_count++] = (struct ts_event){letter, figure};
}

static void add_figure(struct ts_study *s, const struct ts_part *part)
{
	bool named = s->limit_named;

	s->limit_named = false;
	if (s->closed && !named) {
		s->torn = true;
		return;
	}
	if (s->closed) { /* "6 mg/l last year, against a legal limit of 50 mg/l" */
		s->figures[s->count++] =
			(struct ts_figure){part, part->unit, NULL, 0, TS_ROLE_LEGAL, false};
		return;
	}
	s->figures[s->count] = (struct ts_figure){part, part->unit, NULL, 0, part->role, false};
	if (s->event_count && s->events[s->event_count - 1].letter == 'c') {
		s->figures[s->count++].dropped = true; /* "samples: 12" */
		return;
	}
	add_event(s, '?', s->count++);
}

bool ts_same_unit(const struct ts_term *a, const struct ts_term *b)
{
	return a == b || (strcmp(a->unit, b->unit) == 0 && a->scale == b->scale);
}

static void drop_last(struct ts_study *s)
{
	s->figures[s->count - 1].dropped = true;
	if (s->event_count && s->events[s->event_count - 1].figure == s->count - 1)
		s->event_count--;
}

static void add_unit(struct ts_study *s, const struct ts_part *part, const struct ts_part *before)
{
	const struct ts_term *unit = part->token.term;
	struct ts_figure *last = s->count ? &s->figures[s->count - 1] : NULL;
	bool adjacent = last && before == last->part && !last->dropped;
	bool warm = strcmp(unit->unit, "c") == 0 && s->field->quantity != TS_Q_TEMPERATURE;

	if (warm || *unit->unit == '%') { /* "at 25 C" is a condition, no value */
		if (adjacent && warm && s->reference_c <= 0)
			s->reference_c = last->part->token.first;
		if (adjacent)
			drop_last(s);
		return;
	}
	if (s->closed && !(adjacent && last->role == TS_ROLE_LEGAL)) {
		bool figure = before && (before->token.kind == TS_TOKEN_NUMBER ||
						before->token.kind == TS_TOKEN_RANGE);

		s->alike |= figure && s->torn && s->figures[0].unit &&
			    ts_same_unit(s->figures[0].unit, unit) &&
			    !ts_study_legal(s, unit, before->token.first);
		return;
	}
	if (adjacent && !last->part->role) {
		last->unit = unit;
		return;
	}
	if (s->lead_count && ts_same_unit(s->leads[s->lead_count - 1], unit))
		return;
	if (s->lead_count < TS_LEADS_MOST)
		s->leads[s->lead_count++] = unit;
}

/* Whether a formula says what is counted: "N" only where nitrogen can be meant. */
static bool is_own(const struct ts_study *s, const struct ts_term *term)
{
	const char *key = s->entry->label->key;
	bool hardness = strcmp(key, "GH") == 0;

	return !term->key || strcmp(term->key, key) == 0 ||
	       (hardness && (strcmp(term->form, "ca") == 0 || strcmp(term->form, "mg") == 0));
}

/*
 * A form behind a figure's unit is that figure's; any other is the entry's. Of several the one
 * counts that is not the thing itself: "Calcium, Ca, as CaCO3". "Hardness (Ca + Mg)" counts
 * neither.
 */
static void set_form(struct ts_study *s, const char *form, const struct ts_part *unit)
{
	struct ts_figure *last = s->count ? &s->figures[s->count - 1] : NULL;

	if (last && last->unit && unit && unit->token.term == last->unit &&
		unit == last->part + 1) {
		last->form = form;
		return;
	}
	if (strcmp(form, "mg") == 0 && strcmp(s->entry->label->key, "GH") == 0)
		s->form = NULL;
	else if (!s->form || (strcmp(s->form, "caco3") != 0 && strcmp(s->form, "n") != 0))
		s->form = form;
}

/* "2.8 mg/l (as N: 0.63)": of the figure behind it. Which of the two is meant, is asked. */
static bool is_ahead(struct ts_study *s, const struct ts_part *part, const struct ts_part *before)
{
	const struct ts_part *next = part + 1, *end = s->entry->parts + s->entry->count;
	bool so;

	while (next < end && next->token.kind == TS_TOKEN_OTHER)
		next++;
	so = s->count && before->token.kind == TS_TOKEN_OPEN && next < end &&
	     is_figure(&next->token);
	s->alike |= so;
	return so;
}

#define COUNT_WORD_LEAST 4

static void add_term(struct ts_study *s, const struct ts_part *part, const struct ts_part *before)
{
	const struct ts_term *term = part->token.term;

	switch (term->kind) {
	case TS_TERM_UNIT:
		add_unit(s, part, before);
		if (term->form && !s->closed)
			set_form(s, term->form, part);
		break;
	case TS_TERM_FORMULA:
		if (!s->closed && is_own(s, term) && !is_ahead(s, part, before))
			set_form(s, term->form, before);
		break;
	case TS_TERM_NONE:
		s->unfound |= (term->marks & TS_TERM_UNFOUND) != 0;
		add_event(s, 'd', TS_NO_FIGURE);
		break;
	case TS_TERM_COLUMN:
		if (term->role == 'c' && s->count && before == s->figures[s->count - 1].part &&
			part->token.end - part->token.start >= COUNT_WORD_LEAST) {
			drop_last(s); /* "12 samples", but not "88 n." */
			break;
		}
		s->limit_named = term->role == TS_ROLE_LEGAL;
		s->other |= term->role == TS_ROLE_ELSE;
		if (strchr("mixwltc", term->role) && !s->closed)
			add_event(s, term->role, TS_NO_FIGURE);
		break;
	default:
		break;
	}
}

static bool is_contents(const struct ts_part *part)
{
	const struct ts_token *t = &part->token;

	return t->kind == TS_TOKEN_TERM && t->term->kind == TS_TERM_UNIT && *t->term->unit != '%' &&
	       strcmp(t->term->unit, "c") != 0;
}

/* "Clark degrees 20.9  French degrees 29.9": each unit stands before its figure. */
static bool units_lead(const struct ts_entry *e)
{
	size_t pairs = 0;
	bool unit = false;

	for (size_t i = 0; i < e->count; i++) {
		if (is_contents(&e->parts[i])) {
			if (unit)
				return false;
			unit = true;
		} else if (is_figure(&e->parts[i].token)) {
			if (!unit)
				return false;
			unit = false;
			pairs++;
		}
	}
	return pairs >= 2 && !unit;
}

/* Gives each figure the unit before it. */
static void lead_units(struct ts_study *s)
{
	for (size_t i = 0, k = 0; i < s->entry->count && k < s->count; i++) {
		const struct ts_part *part = &s->entry->parts[i];

		if (is_contents(part))
			s->figures[k].unit = part->token.term;
		else if (part == s->figures[k].part)
			k++;
	}
	s->lead_count = 0;
}

static void gather(struct ts_study *s)
{
	const struct ts_part *before = NULL;

	for (size_t i = 0; i < s->entry->count; i++) {
		const struct ts_part *part = &s->entry->parts[i];

		switch (part->token.kind) {
		case TS_TOKEN_NUMBER:
		case TS_TOKEN_RANGE:
		case TS_TOKEN_BELOW:
		case TS_TOKEN_ABOVE:
			add_figure(s, part);
			break;
		case TS_TOKEN_DASH:
			add_event(s, 'd', TS_NO_FIGURE);
			break;
		case TS_TOKEN_TERM:
			add_term(s, part, before);
			break;
		case TS_TOKEN_OTHER:
			s->closed |= s->count > 0 && !s->figures[s->count - 1].dropped;
			break;
		default:
			break;
		}
		before = part;
	}
}

/* One form said behind one figure is that of all, unless another says otherwise. */
static void spread_form(struct ts_study *s)
{
	const char *only = NULL;

	for (size_t i = 0; i < s->count; i++) {
		if (!s->figures[i].form)
			continue;
		if (only && strcmp(only, s->figures[i].form) != 0)
			return;
		only = s->figures[i].form;
	}
	if (only)
		s->form = only;
}

/* What a table's other columns hold, and counts. */
static void settle_figures(const struct ts_study *s)
{
	for (size_t i = 0; i < s->count; i++) {
		const struct ts_part *part = s->figures[i].part;

		if (s->figures[i].dropped || (s->entry->headed && part->role))
			ts_sweep_settle(s->in, part->line, part->token.start);
	}
}

/* "12 dH, which are 214 mg/l": other words stand between, but it is the same water. */
static void settle_restated(const struct ts_study *s)
{
	const double near = 0.03;

	for (size_t i = 0; i + 1 < s->entry->count; i++) {
		const struct ts_part *part = &s->entry->parts[i];
		const struct ts_token *next = &part[1].token;
		struct ts_figure_context x = {.label = s->entry->label};
		struct ts_converted c;

		if (part->token.kind != TS_TOKEN_NUMBER || next->kind != TS_TOKEN_TERM ||
			next->term->kind != TS_TERM_UNIT)
			continue;
		x.unit = next->term;
		x.form = x.unit->form ? x.unit->form : s->entry->label->form;
		if (ts_convert(&x, part->token.figure, &c) && c.field == s->field &&
			fabs(c.measure.value - s->value) <= near * fabs(s->value))
			ts_sweep_settle(s->in, part->line, part->token.start);
	}
}

/* A limit that no rule says is perhaps the value: "acceptable at 7.4". */
static void ask_lone_limit(const struct ts_study *s)
{
	for (size_t i = 0; i < s->count; i++) {
		const struct ts_figure *f = &s->figures[i];

		if (f->dropped || f->role != TS_ROLE_LEGAL || ts_study_is_rule(s, f))
			continue;
		ts_study_gap(s, "only what looks like a limit is printed: is it the value?",
			"look at the line and use a flag or the file");
		return;
	}
}

static void read_headed(struct ts_study *s)
{
	s->rule = "under-heading";
	ts_study_learn(s);
	for (size_t i = 0; i < s->count; i++) {
		size_t zone = ts_study_zone(s, &s->figures[i]);
		bool first = true;

		for (size_t j = 0; j < i; j++)
			first &= ts_study_zone(s, &s->figures[j]) != zone;
		if (first)
			ts_study_emit(s, 0, zone);
	}
}

static void read_laid_out(struct ts_study *s)
{
	static const char *const which = "which of its figures is the result?";
	static const char *const look = "look at the headings of its columns in the report";

	ts_study_group(s);
	for (size_t g = 0; g < s->groups; g++) {
		if (!ts_study_lay_out(s, g)) {
			if (g == 0) /* what is stated once more in another unit may go */
				ts_study_gap(s, which, look);
			continue;
		}
		ts_study_learn(s);
		ts_study_emit(s, g, s->entry->zone);
	}
}

static bool any_torn(const struct ts_entry *e)
{
	for (size_t i = 0; i < e->count; i++) {
		if (e->parts[i].token.torn)
			return true;
	}
	return false;
}

static bool any_figure(const struct ts_study *s)
{
	for (size_t i = 0; i < s->count; i++) {
		if (!s->figures[i].dropped)
			return true;
	}
	return false;
}

void ts_entry_close(struct ts_intake *in, struct ts_entry *entry)
{
	struct ts_study s = {.in = in, .entry = entry, .rule = ""};

	if (!entry->label)
		return;
	s.field = ts_field_of(entry->label, NULL);
	if (s.field) {
		gather(&s);
		if (!entry->headed && units_lead(entry))
			lead_units(&s);
		spread_form(&s);
		if (!any_figure(&s))
			; /* a label in a sentence: nothing was stated */
		else if (any_torn(entry))
			ts_study_gap(&s, "a blank stands inside its figure, or between two",
				"look at the report and use a flag or the file");
		else if (entry->overfull || s.alike || (s.torn && !s.figures[0].unit))
			ts_study_gap(&s, "other words stand between its figures",
				"look at the report and use a flag or the file");
		else if (s.other && !entry->headed)
			ts_study_gap(&s, "words of another time or place stand beside it",
				"look at the line and use a flag or the file");
		else if (entry->headed)
			read_headed(&s);
		else
			read_laid_out(&s);
		if (s.emitted) {
			settle_figures(&s);
			settle_restated(&s);
		} else if (!entry->headed) {
			ask_lone_limit(&s);
		}
	}
	entry->label = NULL;
	entry->count = 0;
	entry->overfull = entry->headed = entry->implied = entry->goes_on = false;
}
