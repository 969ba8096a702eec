/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Which figure is the result, which are limits, what is mean, lowest and highest: one letter a
 * figure against the rows of layouts.c.
 */
#include <math.h>
#include <string.h>

#include "intake/study.h"

/* 1, 2 or 5 times a power of ten, and small: how laboratories round what they cannot see. */
static bool like_detection(const struct ts_study *s, double value)
{
	double limit = s->field->quantity == TS_Q_CONDUCTIVITY ? 10 : 1;
	double lead = value;

	if (!(value > 0) || value > limit)
		return false;
	while (lead < 0.9999)
		lead *= 10;
	while (lead > 9.9999)
		lead /= 10;
	return fabs(lead - 1) < 1e-6 || fabs(lead - 2) < 1e-6 || fabs(lead - 5) < 1e-6;
}

const struct ts_legal *ts_study_legal(
	const struct ts_study *s, const struct ts_term *unit, double v)
{
	for (size_t i = 0; unit && i < ts_legals_count; i++) {
		const struct ts_legal *l = &ts_legals[i];

		if (strcmp(l->key, s->entry->label->key) == 0 && strcmp(l->unit, unit->unit) == 0 &&
			fabs(l->value - v * unit->scale) < 1e-9)
			return l;
	}
	return NULL;
}

/* A unit behind the last of several figures is that of all, where no other is printed. */
static const struct ts_term *only_unit(const struct ts_study *s)
{
	const struct ts_term *only = NULL;

	for (size_t i = 0; i < s->count; i++) {
		const struct ts_term *unit = s->figures[i].dropped ? NULL : s->figures[i].unit;

		if (unit && only && !ts_same_unit(unit, only))
			return NULL;
		only = unit ? unit : only;
	}
	return only;
}

const struct ts_term *ts_study_unit(const struct ts_study *s, const struct ts_figure *f)
{
	if (s->field->quantity == TS_Q_PH)
		return NULL;
	if (f->unit && !(f->part->role && s->lead_count))
		return f->unit;
	return s->lead_count ? s->leads[0] : only_unit(s);
}

/* True for a range that a rule names; `f` has the unit of both ends. */
static bool legal_range(
	const struct ts_study *s, const struct ts_figure *f, double low, double high)
{
	const struct ts_term *unit = ts_study_unit(s, f);

	if (s->field->quantity == TS_Q_PH && high - low >= 2)
		return true; /* two units of pH are a rule, not a supply */
	for (size_t i = 0; i < ts_legal_ranges_count; i++) {
		const struct ts_legal_range *r = &ts_legal_ranges[i];
		bool same_unit = !r->unit || (unit && strcmp(r->unit, unit->unit) == 0);

		if (strcmp(r->key, s->entry->label->key) == 0 && same_unit &&
			fabs(r->low - low) < 1e-9 && fabs(r->high - high) < 1e-9)
			return true;
	}
	return false;
}

/* 2000 uS/cm and more is what limits say, not what taps give. */
static bool undrinkable(const struct ts_study *s, const struct ts_figure *f)
{
	const struct ts_term *unit = ts_study_unit(s, f);

	if (!unit || s->field->quantity != TS_Q_CONDUCTIVITY)
		return false;
	return (strcmp(unit->unit, "us/cm") == 0 && f->part->token.first * unit->scale >= 2000) ||
	       (strcmp(unit->unit, "ms/m") == 0 && f->part->token.first >= 200);
}

static int letter_of(
	const struct ts_study *s, const struct ts_figure *f, const struct ts_figure *before)
{
	const struct ts_token *t = &f->part->token;

	if (f->role)
		return f->role;
	switch (t->kind) {
	case TS_TOKEN_RANGE:
		return legal_range(s, f, t->first, t->second) ? 'G' : 'r';
	case TS_TOKEN_BELOW:
		if (ts_study_legal(s, ts_study_unit(s, f), t->first))
			return 'h';
		return before && fabs(before->part->token.first - t->first) < 1e-12 &&
				       like_detection(s, t->first)
			       ? 'v'
			       : 'b';
	case TS_TOKEN_ABOVE:
		return 'a';
	default:
		break;
	}
	if (ts_study_legal(s, ts_study_unit(s, f), t->first) || undrinkable(s, f))
		return 'g';
	return like_detection(s, t->first) ? 'q' : 'n';
}

bool ts_study_is_rule(const struct ts_study *s, const struct ts_figure *f)
{
	const struct ts_token *t = &f->part->token;

	return ts_study_legal(s, ts_study_unit(s, f), t->first) || undrinkable(s, f) ||
	       (t->kind == TS_TOKEN_RANGE && legal_range(s, f, t->first, t->second));
}

static void mark_legal_pair(struct ts_study *s, size_t i)
{
	struct ts_event *a = &s->events[i], *b = &s->events[i + 1];

	if (a->figure == TS_NO_FIGURE || b->figure == TS_NO_FIGURE ||
		s->figures[a->figure].part->token.kind != TS_TOKEN_NUMBER ||
		s->figures[b->figure].part->token.kind != TS_TOKEN_NUMBER)
		return;
	if (legal_range(s, &s->figures[a->figure], s->figures[a->figure].part->token.first,
		    s->figures[b->figure].part->token.first))
		a->letter = b->letter = 'p';
}

static void remove_events(struct ts_study *s, size_t at, size_t count)
{
	memmove(&s->events[at], &s->events[at + count],
		(s->event_count - at - count) * sizeof *s->events);
	s->event_count -= count;
}

/* A figure beside the word for a limit is that limit. */
static void take_named_limits(struct ts_study *s)
{
	for (size_t i = 0; i < s->event_count;) {
		int word = s->events[i].letter;
		bool behind = i + 1 < s->event_count && s->events[i + 1].figure != TS_NO_FIGURE;
		bool before = i > 0 && s->events[i - 1].figure != TS_NO_FIGURE;

		if (word != 'l' && word != 't' && word != 'c') {
			i++;
		} else if (word != 'c' && behind) {
			s->figures[s->events[i + 1].figure].role = word;
			remove_events(s, i, 2);
		} else if (word != 'c' && before) {
			s->figures[s->events[i - 1].figure].role = word;
			remove_events(s, i - 1, 2);
			i--;
		} else {
			remove_events(s, i, 1);
		}
	}
}

static void write_letters(struct ts_study *s)
{
	const struct ts_figure *before = NULL;

	for (size_t i = 0; i < s->event_count; i++) {
		if (s->events[i].figure == TS_NO_FIGURE)
			continue;
		s->events[i].letter = letter_of(s, &s->figures[s->events[i].figure], before);
		before = &s->figures[s->events[i].figure];
	}
	for (size_t i = 0; i + 1 < s->event_count; i++)
		mark_legal_pair(s, i);
}

/* Both figures have their unit behind them. */
static bool states_alike(
	const struct ts_study *s, const struct ts_figure *a, const struct ts_figure *b)
{
	const char *form_a = a->form ? a->form : s->form, *form_b = b->form ? b->form : s->form;

	return ts_same_unit(a->unit, b->unit) &&
	       (form_a == form_b || (form_a && form_b && strcmp(form_a, form_b) == 0));
}

/* Units behind the figures: each unit, and each form, is a statement of its own. */
static void group_by_unit(struct ts_study *s)
{
	const struct ts_figure *firsts[TS_PARTS_MOST];

	s->groups = 0;
	for (size_t i = 0; i < s->count; i++) {
		size_t g = 0;

		if (!s->figures[i].unit || s->figures[i].dropped || s->figures[i].role)
			continue;
		while (g < s->groups && !states_alike(s, firsts[g], &s->figures[i]))
			g++;
		if (g == s->groups)
			firsts[s->groups++] = &s->figures[i];
		s->figures[i].group = g;
	}
}

/* Several units before the figures: cells belong to them in turn. */
static bool group_by_turn(struct ts_study *s)
{
	size_t cells = 0;

	for (size_t i = 0; i < s->event_count; i++)
		cells += s->events[i].figure != TS_NO_FIGURE || s->events[i].letter == 'd';
	if (s->lead_count < 2 || cells % s->lead_count)
		return false;
	for (size_t i = 0, cell = 0; i < s->event_count; i++) {
		if (s->events[i].figure != TS_NO_FIGURE) {
			s->figures[s->events[i].figure].unit = s->leads[cell % s->lead_count];
			s->figures[s->events[i].figure].group = cell % s->lead_count;
		}
		cell += s->events[i].figure != TS_NO_FIGURE || s->events[i].letter == 'd';
	}
	s->groups = s->lead_count;
	return true;
}

static void pair_names(struct ts_study *s, const size_t *at, size_t count, int side)
{
	for (size_t i = 0; i < count; i++) {
		size_t named = side < 0 ? i - 1 : i + 1;

		if (s->events[at[i]].figure == TS_NO_FIGURE || named >= count)
			continue;
		s->figures[s->events[at[i]].figure].role = s->events[at[named]].letter;
	}
}

/* Three not in order, a mean outside its range or a result under what could be detected is another
 * layout. */
static bool sensible(struct ts_study *s, const char *roles, const size_t *figures)
{
	const struct ts_token *mean = NULL, *range = NULL, *detection = NULL, *result = NULL;
	const struct ts_token *three = NULL;

	for (size_t i = 0; roles[i]; i++) {
		const struct ts_token *t = &s->figures[figures[i]].part->token;

		mean = roles[i] == 'M' ? t : mean;
		range = roles[i] == 'W' ? t : range;
		detection = roles[i] == 'D' ? t : detection;
		if (roles[i] == 'T' && three && three->first > t->first) {
			s->in->unordered = true;
			return false;
		}
		three = roles[i] == 'T' ? t : three;
		result = roles[i] == 'R' && t->kind == TS_TOKEN_NUMBER ? t : result;
	}
	if (mean && range && (mean->first < range->first || mean->first > range->second))
		return false;
	for (size_t i = 0; roles[i] && result; i++) {
		const struct ts_token *t = &s->figures[figures[i]].part->token;

		/* "0.31  <0.02": no limit, but another result */
		if (roles[i] == 'L' &&
			((t->kind == TS_TOKEN_BELOW && t->first < result->first) ||
				(t->kind == TS_TOKEN_ABOVE && t->first > result->first)))
			return false;
	}
	if (!detection || !result)
		return true;
	if (like_detection(s, detection->first))
		return detection->first <= result->first;
	return (detection->first <= 1 && detection->first * 5 <= result->first) ||
	       (detection->first <= 5 && detection->first * 20 <= result->first);
}

static bool try_layout(struct ts_study *s, size_t row, const char *letters, const size_t *at,
	size_t count, bool *ret_fits)
{
	const struct ts_layout *layout = &ts_layouts[row];
	const size_t *spans;
	size_t groups, figures[8] = {0};

	groups = ts_patterns_match(s->in->layouts, row, letters, count, 0, &spans);
	*ret_fits = groups > 0;
	if (!groups)
		return false;
	if (layout->named) {
		pair_names(s, at, count, layout->named);
		return true;
	}
	for (size_t g = 1; g < groups; g++) {
		if (spans[2 * g] != TS_NO_FIGURE)
			figures[g - 1] = s->events[at[spans[2 * g]]].figure;
	}
	if (!sensible(s, layout->roles, figures))
		return false;
	for (size_t g = 1; g < groups; g++) {
		if (spans[2 * g] != TS_NO_FIGURE)
			s->figures[figures[g - 1]].role = (unsigned char)layout->roles[g - 1];
	}
	return true;
}

/* Three figures side by side, which sensible() has found in order. */
static void name_three(struct ts_study *s, size_t group)
{
	static const char in_order[] = "imx";
	size_t count = 0;

	for (size_t i = 0; i < s->count; i++) {
		if (s->figures[i].role == 'T' && s->figures[i].group == group && count < 3)
			s->figures[i].role = (unsigned char)in_order[count++];
	}
}

void ts_study_group(struct ts_study *s)
{
	take_named_limits(s);
	if (!group_by_turn(s))
		group_by_unit(s);
	write_letters(s);
	s->groups += s->groups == 0;
}

/* The letters of one group against the layouts; false when none fits. */
bool ts_study_lay_out(struct ts_study *s, size_t group)
{
	char letters[TS_PARTS_MOST + 1];
	size_t at[TS_PARTS_MOST], count = 0;

	for (size_t i = 0; i < s->event_count; i++) {
		size_t f = s->events[i].figure;
		bool turn = s->lead_count > 1 && f == TS_NO_FIGURE;

		if (f != TS_NO_FIGURE ? s->figures[f].group != group : turn && s->groups > 1)
			continue;
		letters[count] = (char)s->events[i].letter;
		at[count++] = i;
	}
	letters[count] = '\0';
	if (!count && s->count) { /* every figure is a limit by its word */
		s->rule = "named-limits";
		return true;
	}
	for (size_t row = 0; row < ts_layouts_count; row++) {
		bool fits;

		if (try_layout(s, row, letters, at, count, &fits)) {
			s->rule = ts_layouts[row].id;
			s->by_order = strchr(ts_layouts[row].roles, 'T') != NULL;
			name_three(s, group);
			return true;
		}
	}
	return false;
}
