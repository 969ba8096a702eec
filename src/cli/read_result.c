/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answer of read for programs: what was taken, every figure with what it was held for, what
 * was not understood and what contradicts.
 */
#include <math.h>
#include <string.h>

#include "base/arena.h"
#include "cli/read.h"
#include "cli/results.h"

struct taken {
	const char *key, *unit, *printed, *rule, *assumed;
	double value, low, high, mean;
	size_t line, last_line, statements;
};

struct figure {
	const char *key, *unit, *column, *statistic, *printed, *rule, *assumed, *zone;
	double value, low, high;
	size_t line;
};

struct gap {
	size_t line;
	const char *text, *why, *remedy;
};

struct clash {
	size_t line, other_line; /* the same where there is no other */
	const char *says;
};

struct result {
	const char *file, *zone;
	struct ts_texts zones;
	bool choose_zone, class_only;
	size_t lines;
	struct taken *taken;
	size_t taken_count;
	struct figure *figures;
	size_t figure_count, figures_more;
	struct gap *gaps;
	size_t gap_count, gaps_more;
	struct clash *clashes;
	size_t clash_count;
};

/* clang-format off */
static const struct ts_result_field taken_fields[] = {
	TS_R_ROW_TEXT(struct taken, "key", key, "key of a reading"),
	TS_R_ROW_TEXT(struct taken, "unit", unit, "unit of the numbers; null for pH"),
	TS_R_ROW_NUMBER(struct taken, "value", value, 4, "the value, or the mean, or the middle of its range"),
	TS_R_ROW_NUMBER(struct taken, "low", low, 4, "lowest; null = open"),
	TS_R_ROW_NUMBER(struct taken, "high", high, 4, "highest; null = open"),
	TS_R_ROW_NUMBER(struct taken, "mean", mean, 4, "mean as printed; null = none"),
	TS_R_ROW_COUNT(struct taken, "line", line, "first line that gave a figure"),
	TS_R_ROW_COUNT(struct taken, "last_line", last_line, "last such line"),
	TS_R_ROW_COUNT(struct taken, "statements", statements, "entries of the report behind it"),
	TS_R_ROW_TEXT(struct taken, "printed", printed, "figures and unit of the first line"),
	TS_R_ROW_TEXT(struct taken, "rule", rule, "layout by which it was taken"),
	TS_R_ROW_TEXT(struct taken, "assumed", assumed, "what was concluded or assumed; null = nothing"),
};
static const struct ts_result_shape taken_shape = TS_R_SHAPE("taken", taken_fields, struct taken);

static const struct ts_result_field figure_fields[] = {
	TS_R_ROW_TEXT(struct figure, "key", key, "key of a reading"),
	TS_R_ROW_TEXT(struct figure, "unit", unit, "unit of the numbers; null for pH"),
	TS_R_ROW_NUMBER(struct figure, "value", value, 4, "the figure"),
	TS_R_ROW_NUMBER(struct figure, "low", low, 4, "lower end; null = open"),
	TS_R_ROW_NUMBER(struct figure, "high", high, 4, "upper end; null = open"),
	TS_R_ROW_WORD(struct figure, "column", column, ts_column_words, "what it was held for"),
	TS_R_ROW_WORD(struct figure, "statistic", statistic, ts_statistic_words, "what it is of the samples"),
	TS_R_ROW_COUNT(struct figure, "line", line, "its line"),
	TS_R_ROW_TEXT(struct figure, "printed", printed, "figure and unit as printed"),
	TS_R_ROW_TEXT(struct figure, "rule", rule, "layout by which it was told"),
	TS_R_ROW_TEXT(struct figure, "assumed", assumed, "what was concluded or assumed; null = nothing"),
	TS_R_ROW_TEXT(struct figure, "zone", zone, "supply zone; null = none named"),
};
static const struct ts_result_shape figure_shape = TS_R_SHAPE("figure", figure_fields, struct figure);

static const struct ts_result_field gap_fields[] = {
	TS_R_ROW_COUNT(struct gap, "line", line, "the line"),
	TS_R_ROW_TEXT(struct gap, "text", text, "its text, or the beginning"),
	TS_R_ROW_TEXT(struct gap, "why", why, "why nothing was taken"),
	TS_R_ROW_TEXT(struct gap, "remedy", remedy, "what to look for"),
};
static const struct ts_result_shape gap_shape = TS_R_SHAPE("gap", gap_fields, struct gap);

static const struct ts_result_field clash_fields[] = {
	TS_R_ROW_COUNT(struct clash, "line", line, "the line of what was kept"),
	TS_R_ROW_COUNT(struct clash, "other_line", other_line, "the line against it; the same where both stand in one"),
	TS_R_ROW_TEXT(struct clash, "says", says, "the contradiction in words"),
};
static const struct ts_result_shape clash_shape = TS_R_SHAPE("contradiction", clash_fields, struct clash);

static const struct ts_result_field result_fields[] = {
	TS_R_ROW_TEXT(struct result, "file", file, "the report; - is standard input"),
	TS_R_ROW_COUNT(struct result, "lines", lines, "lines of the report"),
	TS_R_ROW_TEXT(struct result, "zone", zone, "supply zone that was read; null = none"),
	TS_R_ROW_TEXTS(struct result, "zones", zones, "supply zones met"),
	TS_R_ROW_BOOL(struct result, "choose_zone", choose_zone, "nothing was taken, since a zone must be chosen"),
	TS_R_ROW_BOOL(struct result, "class_only", class_only, "classes of hardness were met; they are no values"),
	TS_R_ROW_LIST(struct result, "taken", taken, taken_count, struct taken, &taken_shape, "the reading"),
	TS_R_ROW_LIST(struct result, "figures", figures, figure_count, struct figure, &figure_shape, "every figure, limits too"),
	TS_R_ROW_COUNT(struct result, "figures_more", figures_more, "figures beyond the list; they count in taken"),
	TS_R_ROW_LIST(struct result, "not_understood", gaps, gap_count, struct gap, &gap_shape, "what looked relevant and was not taken"),
	TS_R_ROW_COUNT(struct result, "not_understood_more", gaps_more, "further ones"),
	TS_R_ROW_LIST(struct result, "contradictions", clashes, clash_count, struct clash, &clash_shape, "what cannot both hold"),
};
/* clang-format on */
const struct ts_result_shape read_result_shape = TS_R_SHAPE("read", result_fields, struct result);

static const char *unit_of(const struct ts_field *field)
{
	const char *unit = ts_quantities[field->quantity].unit;

	return *unit ? unit : NULL;
}

static void list_taken(struct ts_arena *arena, const struct ts_report *r, struct result *ret)
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
		ret->taken[ret->taken_count++] =
			(struct taken){f->key, unit_of(f), o->printed, o->rule, o->assumed, m.value,
				m.low, m.high, o->mean, o->line, o->last, o->count};
	}
}

static void list_figures(struct ts_arena *arena, const struct ts_report *r, struct result *ret)
{
	ret->figures = ts_arena_array(arena, r->value_count, sizeof *ret->figures);
	for (size_t i = 0; i < r->value_count && ret->figures; i++) {
		const struct ts_report_value *v = &r->values[i];

		ret->figures[ret->figure_count++] = (struct figure){v->field->key,
			unit_of(v->field), ts_column_words[v->column],
			ts_statistic_words[v->statistic], v->printed, v->rule, v->assumed,
			v->zone && v->zone <= r->zone_count ? r->zones[v->zone - 1] : NULL,
			v->measure.value, v->measure.low, v->measure.high, v->line};
	}
	ret->figures_more = r->value_more;
}

static void list_doubts(struct ts_arena *arena, const struct ts_report *r, struct result *ret)
{
	ret->gaps = ts_arena_array(arena, r->gap_count, sizeof *ret->gaps);
	ret->clashes = ts_arena_array(arena, r->clash_count, sizeof *ret->clashes);
	for (size_t i = 0; i < r->gap_count && ret->gaps; i++)
		ret->gaps[ret->gap_count++] = (struct gap){
			r->gaps[i].line, r->gaps[i].text, r->gaps[i].why, r->gaps[i].remedy};
	for (size_t i = 0; i < r->clash_count && ret->clashes; i++)
		ret->clashes[ret->clash_count++] = (struct clash){r->clashes[i].line,
			r->clashes[i].other ? r->clashes[i].other : r->clashes[i].line,
			r->clashes[i].says};
	ret->gaps_more = r->gap_more;
}

void read_json(struct session *s, const struct ts_report *r, const char *file)
{
	struct result result = {.file = file,
		.zone = r->zone ? r->zones[r->zone - 1] : NULL,
		.zones = {r->zones, r->zone_count},
		.choose_zone = r->choose,
		.class_only = r->class_only,
		.lines = r->lines};

	list_taken(s->arena, r, &result);
	list_figures(s->arena, r, &result);
	list_doubts(s->arena, r, &result);
	session_json(s, "read", &read_result_shape, &result);
}
