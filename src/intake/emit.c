/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Figures whose role is known to measures, lists and slots; and the contradictions inside one
 * entry.
 */
#include <math.h>
#include <string.h>

#include "base/text.h"
#include "intake/convert.h"
#include "intake/study.h"

static void show_figure(const struct ts_figure *f, const struct ts_term *unit, struct ts_text *text)
{
	ts_text_puts(text, f->part->token.figure, unit ? " " : NULL, NULL);
	if (unit)
		ts_text_put(text, unit->says);
}

/* Forms and reference temperatures that a legal limit on the same line proves. */
void ts_study_learn(struct ts_study *s)
{
	const char *form = s->form ? s->form : s->entry->label->form;

	/* What the language makes likely a limit on the line may prove. */
	if (form && strcmp(form, "ion") == 0)
		form = NULL;
	for (size_t i = 0; i < s->count; i++) {
		const struct ts_figure *f = &s->figures[i];
		const struct ts_legal *legal;

		if (f->dropped || (f->role != 'L' && f->role != 'l'))
			continue;
		legal = ts_study_legal(s, ts_study_unit(s, f), f->part->token.first);
		if (!legal && !ts_study_unit(s, f) && s->entry->headed) {
			const struct ts_term bare = {.unit = "mg/l", .scale = 1};

			legal = ts_study_legal(s, &bare, f->part->token.first);
		}
		if (!legal || !legal->form)
			continue;
		if (s->field->quantity == TS_Q_CONDUCTIVITY && s->reference_c <= 0) {
			s->reference_c = legal->form[0] == '2' && legal->form[1] == '5' ? 25 : 20;
			s->by_legal = true;
		} else if (s->field->quantity != TS_Q_CONDUCTIVITY && !form) {
			s->form = legal->form;
			s->by_legal = true;
		}
	}
}

/* Two figures with decimals, none otherwise, show how this report writes them. */
static char decimal_sign(const struct ts_intake *in)
{
	if (in->points >= 2 && !in->commas)
		return '.';
	return in->commas >= 2 && !in->points ? ',' : 0;
}

static bool convert(const struct ts_study *s, const struct ts_figure *f, struct ts_converted *ret)
{
	struct ts_figure_context context = {s->entry->label, ts_study_unit(s, f), f->form,
		s->reference_c, s->by_legal && !f->form, s->entry->headed, decimal_sign(s->in)};

	if (!context.form && context.unit)
		context.form = context.unit->form;
	if (!context.form)
		context.form = s->form ? s->form : s->entry->label->form;
	return ts_convert(&context, f->part->token.figure, ret);
}

static enum ts_column column_of(int role)
{
	return role == 'L' || role == 'l'   ? TS_COLUMN_LEGAL
	       : role == 'D' || role == 't' ? TS_COLUMN_DETECTION
					    : TS_COLUMN_RESULT;
}

static enum ts_statistic statistic_of(const struct ts_figure *f)
{
	if (f->part->token.kind == TS_TOKEN_RANGE)
		return TS_STATISTIC_RANGE;
	return f->role == 'M' || f->role == 'm' ? TS_STATISTIC_MEAN
	       : f->role == 'i'                 ? TS_STATISTIC_LOWEST
	       : f->role == 'x'                 ? TS_STATISTIC_HIGHEST
						: TS_STATISTIC_SINGLE;
}

size_t ts_study_zone(const struct ts_study *s, const struct ts_figure *f)
{
	return f->part->zone ? f->part->zone : s->entry->zone;
}

/* Lists the figure; every figure, also limits, so that the answer can tell them. */
static void list(const struct ts_study *s, const struct ts_figure *f, const struct ts_converted *c)
{
	struct ts_report_value value = {c->field, c->measure, column_of(f->role), statistic_of(f),
		f->part->line, NULL, s->rule, c->assumed, ts_study_zone(s, f)};
	struct ts_text text;

	ts_sweep_settle(s->in, f->part->line, f->part->token.start);
	ts_text_open(&text, &s->in->allocator);
	show_figure(f, ts_study_unit(s, f), &text);
	value.printed = ts_text_get(&text);
	s->in->arena.failed |= text.failed;
	ts_collect_value(s->in, &value);
	ts_text_drop(&text);
}

static double least(double a, double b)
{
	return isnan(a) ? b : isnan(b) ? a : fmin(a, b);
}

static double most(double a, double b)
{
	return isnan(a) ? b : isnan(b) ? a : fmax(a, b);
}

/* What the figures of one entry have said so far. */
struct said {
	struct ts_measure first;
	size_t figures, middles; /* of them: means and plain results */
	double low, high, mean;
	bool all_below;
};

static double top(const struct ts_measure *m)
{
	return isfinite(m->high) ? m->high : m->value;
}

static void merge(struct said *said, const struct ts_figure *f, const struct ts_measure *m)
{
	if (!said->figures++)
		said->first = *m;
	said->all_below &= m->kind == TS_MEASURE_BELOW;
	if (m->kind == TS_MEASURE_RANGE || f->role == 'W' || f->role == 'w') {
		said->low = least(said->low, m->low);
		said->high = most(said->high, top(m));
	} else if (f->role == 'i') {
		said->low = least(said->low, m->low);
	} else if (f->role == 'x') {
		said->high = most(said->high, top(m));
	} else if (!said->middles++) {
		said->mean = m->value;
	} else { /* two results side by side: the water is both */
		said->low = least(least(said->low, said->mean), m->low);
		said->high = most(most(said->high, said->mean), top(m));
		said->mean = (double)NAN;
	}
}

/* What cannot be: the mean outside its ends. The mean is kept, the end is not. */
static void settle_ends(const struct ts_study *s, struct ts_slot *slot)
{
	if (slot->low > slot->high) {
		ts_collect_clash(s->in, slot->line, 0, "the lowest is printed above the highest");
		slot->low = slot->high = (double)NAN;
	}
	if (slot->high < slot->mean) {
		ts_collect_clash(s->in, slot->line, 0,
			"the highest is printed below the mean; the mean was kept");
		slot->high = (double)NAN;
	}
	if (slot->low > slot->mean) {
		ts_collect_clash(s->in, slot->line, 0,
			"the lowest is printed above the mean; the mean was kept");
		slot->low = (double)NAN;
	}
}

static void settle(const struct ts_study *s, const struct said *said, struct ts_slot *slot)
{
	slot->kind = TS_MEASURE_VALUE;
	slot->low = said->low;
	slot->high = said->high;
	slot->mean = said->mean;
	slot->single = (said->figures == 1 && said->middles == 1) || said->all_below;
	if (said->all_below) { /* "<0.01" three times is "<0.01" */
		slot->kind = TS_MEASURE_BELOW;
		slot->mean = slot->high = most(said->high, said->mean);
		slot->low = said->first.low;
		slot->single = !isnan(slot->mean);
	} else if (slot->single) {
		slot->kind = said->first.kind;
		slot->low = said->first.low;
		slot->high = said->first.high;
	} else {
		settle_ends(s, slot);
	}
}

/* Figures of this group and zone that say something. */
static bool counts(const struct ts_study *s, const struct ts_figure *f, size_t group, size_t zone)
{
	return !f->dropped && f->group == group && ts_study_zone(s, f) == zone && f->role &&
	       !strchr("cse", f->role);
}

/* An entry is taken whole or not at all: one result that cannot be read makes a gap of it. */
static bool all_readable(const struct ts_study *s, size_t group, size_t zone)
{
	struct ts_converted c;

	for (size_t i = 0; i < s->count; i++) {
		const struct ts_figure *f = &s->figures[i];

		if (!counts(s, f, group, zone) || column_of(f->role) != TS_COLUMN_RESULT ||
			convert(s, f, &c))
			continue;
		ts_study_gap(s, c.why, c.remedy);
		return false;
	}
	return true;
}

/* "0.02  not detected": what can be detected, and no result. */
static bool is_found(const struct ts_study *s, size_t group, size_t zone)
{
	if (!s->unfound || s->entry->headed)
		return true;
	for (size_t i = 0; i < s->count; i++) {
		const struct ts_figure *f = &s->figures[i];

		if (!counts(s, f, group, zone) || column_of(f->role) != TS_COLUMN_RESULT ||
			f->part->token.kind == TS_TOKEN_BELOW)
			continue;
		ts_study_gap(s, "it says of nothing found, and prints a figure beside it",
			"is the figure what can be detected? Then write it with '<' before it");
		return false;
	}
	return true;
}

void ts_study_emit(struct ts_study *s, size_t group, size_t zone)
{
	struct ts_slot slot = {.zone = zone,
		.restated = group > 0 && s->lead_count < 2,
		.count = 1,
		.rule = s->rule};
	struct said said = {
		.low = (double)NAN, .high = (double)NAN, .mean = (double)NAN, .all_below = true};
	struct ts_text printed;
	struct ts_converted c;

	if (!all_readable(s, group, zone) || !is_found(s, group, zone))
		return;
	ts_text_open(&printed, &s->in->allocator);
	for (size_t i = 0; i < s->count; i++) {
		const struct ts_figure *f = &s->figures[i];

		if (!counts(s, f, group, zone) || !convert(s, f, &c))
			continue;
		list(s, f, &c);
		if (column_of(f->role) != TS_COLUMN_RESULT)
			continue;
		merge(&said, f, &c.measure);
		slot.line = slot.field ? slot.line : f->part->line;
		slot.last = f->part->line;
		slot.field = c.field;
		slot.unit = ts_study_unit(s, f);
		slot.assumed = c.assumed;
		slot.by_order = s->by_order;
		slot.part = (s->entry->label->marks & TS_TERM_PART) != 0;
		slot.rank = (int)s->entry->label->scale + c.rank;
		ts_text_put(&printed, printed.len ? "; " : NULL);
		show_figure(f, slot.unit, &printed);
	}
	slot.printed = ts_text_get(&printed);
	s->in->arena.failed |= printed.failed;
	if (slot.field) {
		s->value = s->emitted ? s->value : said.first.value;
		s->emitted = true;
		settle(s, &said, &slot);
		ts_collect_slot(s->in, &slot);
	}
	ts_text_drop(&printed);
}
