/* SPDX-License-Identifier: Apache-2.0 */
/*
 * read for programs: fills the rows of report/read_result.h.
 */
#include <math.h>
#include <string.h>

#include "base/arena.h"
#include "cli/read.h"
#include "cli/results.h"
#include "report/read_result.h"

static const char *unit_of(const struct ts_field *field)
{
	const char *unit = ts_quantities[field->quantity].unit;

	return *unit ? unit : NULL;
}

static void list_taken(
	struct ts_arena *arena, const struct ts_report *r, struct ts_read_result *ret)
{
	ret->taken = ts_arena_array(arena, ts_shape_reading.count, sizeof *ret->taken);
	for (size_t i = 0; i < ts_shape_reading.count && ret->taken; i++) {
		const struct ts_field *f = &ts_shape_reading.fields[i];
		const struct ts_report_origin *o = &r->origins[i];
		struct ts_measure m;

		if (f->kind != TS_MEASURE)
			continue;
		memcpy(&m, (const char *)&r->reading + f->offset, sizeof m);
		if (m.kind == TS_MEASURE_NONE)
			continue;
		ret->taken[ret->taken_count++] = (struct ts_read_taken_result){f->key, unit_of(f),
			o->printed, o->rule, o->assumed, m.value, m.low, m.high, o->mean, o->line,
			o->last, o->count};
	}
}

static void list_figures(
	struct ts_arena *arena, const struct ts_report *r, struct ts_read_result *ret)
{
	ret->figures = ts_arena_array(arena, r->value_count, sizeof *ret->figures);
	for (size_t i = 0; i < r->value_count && ret->figures; i++) {
		const struct ts_report_value *v = &r->values[i];

		ret->figures[ret->figure_count++] = (struct ts_read_figure_result){v->field->key,
			unit_of(v->field), ts_column_words[v->column],
			ts_statistic_words[v->statistic], v->printed, v->rule, v->assumed,
			v->zone && v->zone <= r->zone_count ? r->zones[v->zone - 1] : NULL,
			v->measure.value, v->measure.low, v->measure.high, v->line};
	}
	ret->figures_more = r->value_more;
}

static void list_doubts(
	struct ts_arena *arena, const struct ts_report *r, struct ts_read_result *ret)
{
	ret->gaps = ts_arena_array(arena, r->gap_count, sizeof *ret->gaps);
	ret->clashes = ts_arena_array(arena, r->clash_count, sizeof *ret->clashes);
	for (size_t i = 0; i < r->gap_count && ret->gaps; i++)
		ret->gaps[ret->gap_count++] = (struct ts_read_gap_result){
			r->gaps[i].line, r->gaps[i].text, r->gaps[i].why, r->gaps[i].remedy};
	for (size_t i = 0; i < r->clash_count && ret->clashes; i++)
		ret->clashes[ret->clash_count++] = (struct ts_read_clash_result){r->clashes[i].line,
			r->clashes[i].other ? r->clashes[i].other : r->clashes[i].line,
			r->clashes[i].says};
	ret->gaps_more = r->gap_more;
}

void read_json(struct session *s, const struct ts_report *r, const char *file)
{
	struct ts_read_result result = {.file = file,
		.zone = r->zone ? r->zones[r->zone - 1] : NULL,
		.zones = {r->zones, r->zone_count},
		.choose_zone = r->choose,
		.class_only = r->class_only,
		.lines = r->lines};

	list_taken(s->arena, r, &result);
	list_figures(s->arena, r, &result);
	list_doubts(s->arena, r, &result);
	session_json(s, "read", &ts_result_read, &result);
}
