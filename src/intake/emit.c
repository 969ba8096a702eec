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

static bool convert(const struct ts_study *s, const struct ts_figure *f, struct ts_converted *ret)
{
	struct ts_figure_context context = {s->entry->label, ts_study_unit(s, f),
		s->form ? s->form : s->entry->label->form, s->reference_c, s->by_legal,
		s->entry->headed};

	if (context.unit && context.unit->form && !f->unit)
		context.form = context.unit->form;
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

	ts_text_open(&text, &s->in->allocator);
	show_figure(f, ts_study_unit(s, f), &text);
	value.printed = ts_text_get(&text);
	s->in->arena.failed |= text.failed;
	ts_collect_value(s->in, &value);
	ts_text_drop(&text);
}

/* Puts one converted figure into what the entry says. */
static void merge(struct ts_slot *slot, const struct ts_figure *f, const struct ts_measure *m)
{
	int role = f->role;

	if (m->kind == TS_MEASURE_RANGE || role == 'W' || role == 'w') {
		slot->low = m->low;
		slot->high = m->high;
	} else if (role == 'M' || role == 'm') {
		slot->mean = m->value;
	} else if (role == 'i') {
		slot->low = m->value;
	} else if (role == 'x') {
		slot->high = m->value;
	} else {
		slot->low = m->low;
		slot->high = m->high;
		slot->mean = m->value;
		slot->single = true;
		slot->kind = m->kind;
	}
}

/* What cannot be: the mean outside its ends. The mean is kept, the end is not. */
static void settle(const struct ts_study *s, struct ts_slot *slot)
{
	if (slot->single)
		return;
	if (!isnan(slot->low) && !isnan(slot->high) && slot->low > slot->high) {
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

/* The figures of one group and zone to one slot. */
void ts_study_emit(struct ts_study *s, size_t group, size_t zone)
{
	struct ts_slot slot = {.zone = zone,
		.restated = group > 0 && s->lead_count < 2,
		.low = (double)NAN,
		.high = (double)NAN,
		.mean = (double)NAN,
		.kind = TS_MEASURE_VALUE,
		.count = 1,
		.rule = s->rule,
		.rank = (int)s->entry->label->scale};
	struct ts_text printed;
	struct ts_converted c;

	ts_text_open(&printed, &s->in->allocator);
	for (size_t i = 0; i < s->count; i++) {
		const struct ts_figure *f = &s->figures[i];
		bool limit = column_of(f->role) != TS_COLUMN_RESULT;

		if (f->dropped || f->group != group || ts_study_zone(s, f) != zone || !f->role ||
			strchr("cs", f->role))
			continue;
		if (!convert(s, f, &c)) {
			if (!limit)
				ts_study_gap(s, c.why, c.remedy);
			continue;
		}
		list(s, f, &c);
		if (limit)
			continue;
		merge(&slot, f, &c.measure);
		slot.line = slot.field ? slot.line : f->part->line;
		slot.last = f->part->line;
		slot.field = c.field;
		slot.unit = ts_study_unit(s, f);
		slot.assumed = c.assumed;
		ts_text_put(&printed, printed.len ? "; " : NULL);
		show_figure(f, slot.unit, &printed);
		slot.rank = (int)s->entry->label->scale + c.rank;
	}
	slot.printed = ts_text_get(&printed);
	s->in->arena.failed |= printed.failed;
	if (slot.field) {
		settle(s, &slot);
		ts_collect_slot(s->in, &slot);
	}
	ts_text_drop(&printed);
}
