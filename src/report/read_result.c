/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of read.
 */
#include "report/read_result.h"

#include <math.h>
#include <string.h>

#include "chem/hardness.h"
#include "chem/ions.h"

#include "intake/report.h"

/* clang-format off */
static const struct ts_result_field taken_fields[] = {
	TS_R_ROW_TEXT(struct ts_read_taken_result, "key", key, "key of a reading"),
	TS_R_ROW_TEXT(struct ts_read_taken_result, "unit", unit, "unit of the numbers; null for pH"),
	TS_R_ROW_NUMBER(struct ts_read_taken_result, "value", value, 4, "the value, or the mean, or the middle of its range"),
	TS_R_ROW_NUMBER(struct ts_read_taken_result, "low", low, 4, "lowest; null = open"),
	TS_R_ROW_NUMBER(struct ts_read_taken_result, "high", high, 4, "highest; null = open"),
	TS_R_ROW_NUMBER(struct ts_read_taken_result, "mean", mean, 4, "mean as printed; null = none"),
	TS_R_ROW_COUNT(struct ts_read_taken_result, "line", line, "first line that gave a figure"),
	TS_R_ROW_COUNT(struct ts_read_taken_result, "last_line", last_line, "last such line"),
	TS_R_ROW_COUNT(struct ts_read_taken_result, "statements", statements, "entries of the report behind it"),
	TS_R_ROW_TEXT(struct ts_read_taken_result, "printed", printed, "figures and unit of the first line"),
	TS_R_ROW_TEXT(struct ts_read_taken_result, "rule", rule, "layout by which it was taken"),
	TS_R_ROW_TEXT(struct ts_read_taken_result, "assumed", assumed, "what was concluded or assumed; null = nothing"),
};
static const struct ts_result_shape taken_shape = TS_R_SHAPE("taken", taken_fields, struct ts_read_taken_result);

static const struct ts_result_field figure_fields[] = {
	TS_R_ROW_TEXT(struct ts_read_figure_result, "key", key, "key of a reading"),
	TS_R_ROW_TEXT(struct ts_read_figure_result, "unit", unit, "unit of the numbers; null for pH"),
	TS_R_ROW_NUMBER(struct ts_read_figure_result, "value", value, 4, "the figure"),
	TS_R_ROW_NUMBER(struct ts_read_figure_result, "low", low, 4, "lower end; null = open"),
	TS_R_ROW_NUMBER(struct ts_read_figure_result, "high", high, 4, "upper end; null = open"),
	TS_R_ROW_WORD(struct ts_read_figure_result, "column", column, ts_column_words, "what it was held for"),
	TS_R_ROW_WORD(struct ts_read_figure_result, "statistic", statistic, ts_statistic_words, "what it is of the samples"),
	TS_R_ROW_COUNT(struct ts_read_figure_result, "line", line, "its line"),
	TS_R_ROW_TEXT(struct ts_read_figure_result, "printed", printed, "figure and unit as printed"),
	TS_R_ROW_TEXT(struct ts_read_figure_result, "rule", rule, "layout by which it was told"),
	TS_R_ROW_TEXT(struct ts_read_figure_result, "assumed", assumed, "what was concluded or assumed; null = nothing"),
	TS_R_ROW_TEXT(struct ts_read_figure_result, "zone", zone, "supply zone; null = none named"),
};
static const struct ts_result_shape figure_shape = TS_R_SHAPE("figure", figure_fields, struct ts_read_figure_result);

static const struct ts_result_field gap_fields[] = {
	TS_R_ROW_COUNT(struct ts_read_gap_result, "line", line, "the line"),
	TS_R_ROW_TEXT(struct ts_read_gap_result, "text", text, "its text, or the beginning"),
	TS_R_ROW_TEXT(struct ts_read_gap_result, "why", why, "why nothing was taken"),
	TS_R_ROW_TEXT(struct ts_read_gap_result, "remedy", remedy, "what to look for"),
};
static const struct ts_result_shape gap_shape = TS_R_SHAPE("gap", gap_fields, struct ts_read_gap_result);

static const struct ts_result_field clash_fields[] = {
	TS_R_ROW_COUNT(struct ts_read_clash_result, "line", line, "the line of what was kept"),
	TS_R_ROW_COUNT(struct ts_read_clash_result, "other_line", other_line, "the line against it; the same where both stand in one"),
	TS_R_ROW_TEXT(struct ts_read_clash_result, "says", says, "the contradiction in words"),
};
static const struct ts_result_shape clash_shape = TS_R_SHAPE("contradiction", clash_fields, struct ts_read_clash_result);

static const struct ts_result_field result_fields[] = {
	TS_R_ROW_TEXT(struct ts_read_result, "file", file, "the report; - is standard input"),
	TS_R_ROW_COUNT(struct ts_read_result, "lines", lines, "lines of the report"),
	TS_R_ROW_TEXT(struct ts_read_result, "zone", zone, "supply zone that was read; null = none"),
	TS_R_ROW_TEXTS(struct ts_read_result, "zones", zones, "supply zones met"),
	TS_R_ROW_BOOL(struct ts_read_result, "choose_zone", choose_zone, "nothing was taken, since a zone must be chosen"),
	TS_R_ROW_BOOL(struct ts_read_result, "class_only", class_only, "classes of hardness were met; they are no values"),
	TS_R_ROW_TEXT(struct ts_read_result, "others", others, "lines with a figure and a unit of which no word was known"),
	TS_R_ROW_TEXTS(struct ts_read_result, "missing", missing, "what the report leaves open: to be asked of the supplier, or measured"),
	TS_R_ROW_LIST(struct ts_read_result, "taken", taken, taken_count, struct ts_read_taken_result, &taken_shape, "the reading"),
	TS_R_ROW_LIST(struct ts_read_result, "figures", figures, figure_count, struct ts_read_figure_result, &figure_shape, "every figure, limits too"),
	TS_R_ROW_COUNT(struct ts_read_result, "figures_more", figures_more, "figures beyond the list; they count in taken"),
	TS_R_ROW_LIST(struct ts_read_result, "not_understood", gaps, gap_count, struct ts_read_gap_result, &gap_shape, "what looked relevant and was not taken"),
	TS_R_ROW_COUNT(struct ts_read_result, "not_understood_more", gaps_more, "further ones"),
	TS_R_ROW_LIST(struct ts_read_result, "contradictions", clashes, clash_count, struct ts_read_clash_result, &clash_shape, "what cannot both hold"),
};
/* clang-format on */
const struct ts_result_shape ts_result_read =
	TS_R_SHAPE("read", result_fields, struct ts_read_result);

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

static bool has(const struct ts_measure *m)
{
	return m->kind != TS_MEASURE_NONE;
}

static void ask(struct ts_arena *arena, struct ts_texts *list, struct ts_text *text)
{
	list->items[list->count++] = ts_arena_text(arena, ts_text_get(text), text->len);
	arena->failed |= text->failed;
	ts_text_clear(text);
}

/* What the report leaves open and any answer will ask for. */
static void list_missing(struct ts_arena *arena, const struct ts_reading *r, struct ts_texts *ret)
{
	bool gh = has(&r->gh_dh) || (has(&r->ca_mg_l) && has(&r->mg_mg_l));
	struct ts_text text;

	ret->items = ts_arena_array(arena, 2, sizeof *ret->items);
	if (!ret->items)
		return;
	ts_text_open(&text, &arena->allocator);
	if (!gh && has(&r->ca_mg_l)) {
		ts_text_put(&text, "GH is missing: calcium alone makes ");
		ts_text_number_short(
			&text, ts_chem_dh_from_mmol_l(r->ca_mg_l.value / TS_WEIGHT_CA), 1);
		ts_text_put(&text, " dH, magnesium adds to it. Measure GH with drops.");
		ask(arena, ret, &text);
	} else if (!gh) {
		ts_text_put(&text, "GH is missing: ask for the total hardness with its unit, or "
				   "measure it with drops.");
		ask(arena, ret, &text);
	}
	if (!has(&r->kh_dh) && !has(&r->alkalinity_meq_l)) {
		ts_text_put(&text, "KH is missing: ask for alkalinity, acid capacity or "
				   "bicarbonate, or measure it with drops.");
		ask(arena, ret, &text);
	}
	ts_text_drop(&text);
}

/* Whoever reads it sees at once whether a value of theirs is among them. */
static const char *say_others(struct ts_arena *arena, const struct ts_report *r)
{
	struct ts_text text;
	const char *kept;

	if (!r->other_count)
		return NULL;
	ts_text_open(&text, &arena->allocator);
	ts_text_put(&text, "Of nothing that a water file holds, or under a name that is not known: "
			   "line ");
	for (size_t i = 0; i < r->other_count; i++) {
		ts_text_put(&text, i ? ", " : "");
		ts_text_number(&text, r->others[i], 0);
	}
	ts_text_put(&text, r->other_more ? " and more." : ".");
	kept = ts_arena_text(arena, ts_text_get(&text), text.len);
	arena->failed |= text.failed;
	ts_text_drop(&text);
	return kept;
}

void ts_read_result_make(struct ts_arena *arena, const struct ts_report *r, const char *file,
	struct ts_read_result *ret)
{
	*ret = (struct ts_read_result){.file = file,
		.zone = r->zone ? r->zones[r->zone - 1] : NULL,
		.zones = {r->zones, r->zone_count},
		.choose_zone = r->choose,
		.class_only = r->class_only,
		.lines = r->lines,
		.report = r};
	list_taken(arena, r, ret);
	list_figures(arena, r, ret);
	list_doubts(arena, r, ret);
	ret->others = say_others(arena, r);
	if (r->taken)
		list_missing(arena, &r->reading, &ret->missing);
}
